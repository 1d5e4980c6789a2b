"""The one accumulator: members and clears laid out in order from a datum, as a maker does it with a tape.

A run does not know what its members are: rails and clears up a leg, legs and bays along a frame, slats across a
shelf. Sizes are known or open, edges free or pinned; open sizes between two pins share what is left. `edges` is the
pure function over arrays (last axis the members, leading axes the variants); `lay_run` is the door for runs that must
come out, with the names that its errors need.
"""

from __future__ import annotations

import functools
import itertools
from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, Any, TypeAlias

import attrs
import numpy as np

from .errors import RunError, RunMismatch, RunOverfull
from .lengths import TOUCH
from .readings import Tape

if TYPE_CHECKING:
    import numpy.typing as npt  # slow to load, and only types need it

Array: TypeAlias = "npt.NDArray[np.float64]"
Number: TypeAlias = "float | Array"
"""One number, or one for each piece or variant."""
CLOSED = 0.0
"""Share of a size that is known in every variant."""


def edges(
    sizes: npt.ArrayLike,
    *,
    shares: npt.ArrayLike | None = None,
    pins: Mapping[int, npt.ArrayLike] | None = None,
    less: npt.ArrayLike | None = None,
) -> Array:
    """Edges of an ordered run of members and clears, from its datum.

    Parameters
    ----------
    sizes : array_like, shape (..., m), or list of m arrays that broadcast
        Size of each member or clear, in order. [mm] NaN where it is open.
    shares : array_like, shape (m,) or (..., m), optional
        Share that each open size takes of what is left between two pins; equal if not given.
    pins : mapping of int to array_like, shape (...), optional
        Position of an edge by its number, 0 to m. [mm] Edge 0 is the datum, at 0 unless it is pinned.
    less : array_like, shape (..., m), optional
        Taken off each open size after sharing, and shared out with the rest. [mm] A clear that is measured from
        a lower member than its neighbours' common edge is less than its share by that step.

    Returns
    -------
    edges : ndarray, shape (..., m + 1)
        Position of every edge. [mm] NaN from the first open size that no pin closes. A run that cannot be laid out
        between two pins (too much, or fixed sizes that do not fill it) is NaN from the lower pin on. Variants lie
        side by side in memory: ``edges[..., 3]`` is contiguous.

    Raises
    ------
    RunError
        If a pin holds an edge that the run does not have.

    Notes
    -----
    Edges are sums of exact lengths; nothing is rounded here. Common practice, no source.

    Examples
    --------
    >>> edges([177.8, 69.85, np.nan, 88.9], pins={4: 901.7}).round(2).tolist()
    [0.0, 177.8, 247.65, 812.8, 901.7]
    """
    rows = _rows(sizes)
    known: dict[int, npt.ArrayLike] = {0: 0.0, **(pins or {})}
    _refuse_strange_pins(known, len(rows))
    held = {edge: np.asarray(at, dtype=float) for edge, at in sorted(known.items())}
    taken: Sequence[Number] = [0.0] * len(rows) if less is None else _rows(less)
    wanted: Sequence[Number] = [1.0] * len(rows) if shares is None else _rows(shares)
    items = [_item(row, own, share) for row, own, share in zip(rows, taken, wanted, strict=True)]
    lead = np.broadcast_shapes(*(np.shape(each) for each in (*rows, *held.values(), *taken, *wanted)))
    found = np.empty((len(rows) + 1, *lead))
    found[0] = held[0]
    for lower, upper in itertools.pairwise(held):
        _fill(found[lower : upper + 1], items[lower:upper], held[lower], held[upper])
    last = max(held)
    for place, (fixed, share) in enumerate(items[last:], last):
        rest = fixed if share is CLOSED else np.where(np.asarray(share) > 0, np.nan, fixed)
        np.add(found[place], rest, out=found[place + 1, ...])
    return np.moveaxis(found, 0, -1)


def _rows(values: npt.ArrayLike) -> list[Array]:
    """One array for each member, its variants side by side in memory, where they are quick to add up."""
    if isinstance(values, list | tuple) and any(isinstance(value, np.ndarray) for value in values):
        return [np.asarray(value, dtype=float) for value in values]
    return list(np.ascontiguousarray(np.moveaxis(np.asarray(values, dtype=float), -1, 0)))


def _refuse_strange_pins(pins: Iterable[int], count: int) -> None:
    strange = [edge for edge in pins if edge not in range(count + 1)]
    if strange:
        raise RunError(f"There is no edge {strange[0]} to pin: a run of {count} has the edges 0 to {count}.", run="")


def _item(size: Array, less: Number, share: Number) -> tuple[Number, Number]:
    """Known part of a size in every variant, and its share of what is left: none where it is known."""
    opened = np.isnan(size)
    if not opened.any():
        return size, CLOSED
    if opened.all():
        return np.negative(less), share
    return np.where(opened, np.negative(less), size), np.where(opened, share, 0.0)


def _fill(found: Array, items: Sequence[tuple[Number, Number]], start: Array, end: Array) -> None:
    """Edges of the members between two pins, in place, one row an edge; NaN where they do not come out."""
    left = end - start - sum(fixed for fixed, _ in items)
    total = np.asarray(sum(share for _, share in items), dtype=float)
    each = np.divide(left, total, out=np.zeros(np.broadcast_shapes(left.shape, total.shape)), where=total > 0)
    sizes = [fixed if share is CLOSED else fixed + share * each for fixed, share in items]
    wrong = np.where(total > 0, left < -TOUCH, np.abs(left) > TOUCH)
    found[0] = np.where(wrong | np.isnan(found[0]), np.nan, start)
    for place, size in enumerate(sizes[:-1]):
        np.add(found[place], size, out=found[place + 1, ...])
    found[-1] = np.where(np.isnan(found[0]), np.nan, end)


@attrs.frozen(kw_only=True, eq=False, slots=False)
class Member:
    """One member or clear of a run: its name, its size (None where it is open), its share, what it is less by.

    size, share and less are numbers or arrays over the pieces. [mm for sizes]
    """

    name: str
    size: Number | None = None
    share: Number = 1.0
    less: Number = 0.0


@attrs.frozen(kw_only=True, eq=False, slots=False)
class Pin:
    """An edge held at a position, and the words for it: 'bench (top at 35 1/2 in)'. [mm]"""

    edge: int
    at: Number
    name: str


def lay_run(name: str, members: Sequence[Member], pins: Sequence[Pin], tape: Tape) -> Array:
    """Edges of a run that must come out.

    Parameters
    ----------
    name : str
        What the run is, for errors: "Levels from the foot".
    members : sequence of Member
        In order from the datum.
    pins : sequence of Pin
        Edges that are held. Edges and positions must rise together.
    tape : Tape
        How the errors read.

    Returns
    -------
    edges : ndarray, shape (..., m + 1)
        [mm] As `edges` gives them.

    Raises
    ------
    RunOverfull
        If fixed sizes exceed the room between two pins.
    RunMismatch
        If fixed sizes leave a gap between two pins and nothing between them is open.
    RunError
        If pins are out of order, or contradict each other at one edge.
    """
    held = _in_order(name, pins, tape)
    found = edges(
        [np.asarray(np.nan if m.size is None else m.size, dtype=float) for m in members],
        shares=[np.asarray(m.share, dtype=float) for m in members],
        pins={pin.edge: pin.at for pin in held},
        less=[np.asarray(m.less, dtype=float) for m in members],
    )
    stops = [pin for pin in held if pin.edge]
    datum = next((pin for pin in held if not pin.edge), Pin(edge=0, at=0.0, name="the foot"))
    for lower, upper in zip([datum, *stops], stops, strict=False):
        wrong = np.isnan(found[..., lower.edge])  # the first room that does not come out is unsound from its lower pin
        if wrong.any():
            raise _does_not_fit(name, members[lower.edge : upper.edge], lower, upper, wrong, tape)
    return found


def over_pieces(values: Sequence[Number]) -> Array:
    """One value for each piece of a batch on the last axis; of a single piece, the value may carry variants.

    >>> over_pieces([69.0, 66.0]).tolist(), over_pieces([np.array([[69.0], [66.0]])]).tolist()
    ([69.0, 66.0], [[69.0], [66.0]])
    """
    return np.array(values, dtype=float) if len(values) > 1 else np.atleast_1d(np.asarray(values[0], dtype=float))


def larger(a: Any, b: Any) -> Any:
    """The larger of two numbers; of arrays, variant by variant."""
    return np.maximum(a, b) if isinstance(a, np.ndarray) or isinstance(b, np.ndarray) else max(a, b)


def smaller(a: Any, b: Any) -> Any:
    """The smaller of two numbers; of arrays, variant by variant."""
    return np.minimum(a, b) if isinstance(a, np.ndarray) or isinstance(b, np.ndarray) else min(a, b)


def least(values: Iterable[Number]) -> Array:
    """The least of several sizes, piece by piece (and variant by variant)."""
    return functools.reduce(np.minimum, (np.asarray(value, dtype=float) for value in values))


def most(values: Iterable[Number]) -> Array:
    """The most of several sizes, piece by piece (and variant by variant)."""
    return functools.reduce(np.maximum, (np.asarray(value, dtype=float) for value in values))


def _in_order(name: str, pins: Sequence[Pin], tape: Tape) -> list[Pin]:
    """Pins by edge, each edge once; contradictions and falling positions are errors."""
    held: list[Pin] = []
    for pin in sorted(pins, key=lambda p: p.edge):
        before = held[-1] if held else Pin(edge=0, at=0.0, name="the foot")
        fields = {"run": name, "lower_pin": before.name, "upper_pin": pin.name}
        steps = np.asarray(pin.at, dtype=float) - np.asarray(before.at, dtype=float)
        step = float(np.min(steps))
        if pin.edge == before.edge and (held or pin.edge == 0):
            apart = float(np.max(np.abs(steps)))
            if apart > TOUCH:
                said = f"{name}: {before.name} and {pin.name} hold one edge at two places, {tape.say(apart)} apart."
                raise RunError(f"{said} Take one of them away.", **fields, over=apart, pieces=np.abs(steps) > TOUCH)
            if held:
                continue
        elif step < -TOUCH:
            said = f"{name}: {pin.name} lies {tape.say(-step)} below {before.name}, but comes after it."
            raise RunError(
                f"{said} Put them in the order in which they stand, or change one of the two.",
                **fields,
                over=-step,
                pieces=steps < -TOUCH,
            )
        held.append(pin)
    return held


MOST_ADDED = 8
"""So many sizes are told one by one."""
SMALLER = "Make one of these sizes smaller, or move one of the two that they lie between."
OPEN = "Leave the size of a clear between the two open, so that it takes what is left, or take one of the two away."


def _does_not_fit(
    name: str, between: Sequence[Member], lower: Pin, upper: Pin, wrong: npt.NDArray[np.bool_], tape: Tape
) -> RunError:
    """The error for members that do not come out between two pins, for the worst of the wrong variants."""
    room = np.asarray(upper.at) - np.asarray(lower.at)
    need = sum(np.asarray(-np.asarray(m.less) if m.size is None else m.size, dtype=float) for m in between)
    over = np.broadcast_to(need - room, wrong.shape)
    worst = np.unravel_index(np.argmax(np.where(wrong, np.abs(over), -1.0)), wrong.shape)
    amount, space = float(over[worst]), float(np.broadcast_to(room, wrong.shape)[worst])
    several = wrong.ndim and wrong.shape[-1] > 1 and (not wrong.all() or np.ptp(over) > TOUCH)
    piece = f" (piece {int(worst[-1]) + 1})" if several else ""
    where = f"{name}{piece}, between {lower.name} and {upper.name}"
    sizes = [float(np.broadcast_to(np.asarray(m.size), wrong.shape)[worst]) for m in between if m.size is not None]
    told = 1 < len(sizes) <= MOST_ADDED and abs(sum(sizes) - amount - space) <= TOUCH
    added = f" ({' + '.join(map(tape.read, sizes))})" if told else ""
    sums = f"{where}: sizes add up to {tape.say(amount + space)}{added}, but there is room for {tape.say(space)}"
    fields = {"run": name, "lower_pin": lower.name, "upper_pin": upper.name, "over": amount, "pieces": wrong}
    if amount > 0:
        return RunOverfull(f"{sums}: {_amount(amount, tape)} too much. {SMALLER}", **fields)
    return RunMismatch(f"{sums}: {_amount(-amount, tape)} are left. {OPEN}", **fields)


def _amount(length: float, tape: Tape) -> str:
    """A difference in words: the tape's reading, or decimals where that reads as nothing."""
    return tape.say(length) if tape.marks(length) else f"{tape.decimals(length)} {tape.unit}"
