"""The one accumulator: members and clears laid out in order from a datum, as a maker does it with a tape.

A run does not know what its members are: rails and clears up a leg, legs and bays along a frame, slats across a
shelf. Sizes are known or open, edges free or pinned; open sizes between two pins share what is left. `edges` is the
pure function over arrays (last axis the members, leading axes the variants); `lay_run` is the door for runs that must
come out, with the names that its errors need.
"""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence

import attrs
import numpy as np
import numpy.typing as npt

from .errors import RunError, RunMismatch, RunOverfull
from .lengths import TOUCH
from .readings import Tape

Array = npt.NDArray[np.float64]


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
    sizes : array_like, shape (..., m)
        Size of each member or clear, in order. [mm] NaN where it is open.
    shares : array_like, shape (m,), optional
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
        between two pins (too much, or fixed sizes that do not fill it) is NaN from the lower pin on.

    Notes
    -----
    Edges are sums of exact lengths; nothing is rounded here. Common practice, no source.

    Examples
    --------
    >>> edges([177.8, 69.85, np.nan, 88.9], pins={4: 901.7}).round(2).tolist()
    [0.0, 177.8, 247.65, 812.8, 901.7]
    """
    given = np.asarray(sizes, dtype=float)
    fixed, weights = _fixed_and_shares(given, shares, less)
    known = {0: np.zeros(()), **{n: np.asarray(at, dtype=float) for n, at in (pins or {}).items()}}
    lead = np.broadcast_shapes(fixed.shape[:-1], *(at.shape for at in known.values()))
    found = np.empty((*lead, given.shape[-1] + 1))
    stops = sorted(known)
    for lower, upper in itertools.pairwise(stops):
        _fill(found, fixed, weights, lower, upper, known[lower], known[upper])
    last = stops[-1]
    found[..., last] = np.where(np.isnan(found[..., last]), np.nan, known[last]) if last else known[last]
    rest = np.where(weights[..., last:] > 0, np.nan, fixed[..., last:])
    found[..., last + 1 :] = found[..., last, None] + np.cumsum(rest, axis=-1)
    return found


def _fixed_and_shares(given: Array, shares: npt.ArrayLike | None, less: npt.ArrayLike | None) -> tuple[Array, Array]:
    """Known part of every size, and the share of every open one (0 for known ones)."""
    opened = np.isnan(given)
    weights = np.where(opened, 1.0 if shares is None else np.asarray(shares, dtype=float), 0.0)
    taken = 0.0 if less is None else -np.asarray(less, dtype=float)
    return np.where(opened, taken, given), weights


def _fill(found: Array, fixed: Array, weights: Array, lower: int, upper: int, start: Array, end: Array) -> None:
    """Edges of the members between two pins, in place; NaN where they do not come out."""
    span = slice(lower, upper)
    left = end - start - fixed[..., span].sum(axis=-1)
    total = weights[..., span].sum(axis=-1)
    each = np.divide(left, total, out=np.zeros(np.broadcast_shapes(left.shape, total.shape)), where=total > 0)
    sizes = fixed[..., span] + weights[..., span] * each[..., None]
    wrong = np.where(total > 0, (sizes < -TOUCH).any(axis=-1), np.abs(left) > TOUCH)
    sound = np.where(wrong | (np.isnan(found[..., lower]) if lower else False), np.nan, start)
    found[..., lower] = sound
    found[..., lower + 1 : upper + 1] = sound[..., None] + np.cumsum(sizes, axis=-1)
    found[..., upper] = np.where(np.isnan(sound), np.nan, end)


@attrs.frozen(kw_only=True)
class Member:
    """One member or clear of a run: its name, its size (None where it is open), its share, what it is less by.

    size and less are floats or arrays over the leading axes. [mm]
    """

    name: str
    size: float | Array | None = None
    share: float = 1.0
    less: float | Array = 0.0


@attrs.frozen(kw_only=True)
class Pin:
    """An edge held at a position, and the words for it: 'bench (top at 35 1/2 in)'. [mm]"""

    edge: int
    at: float | Array
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
    sizes = _stack([np.nan if m.size is None else m.size for m in members])
    found = edges(
        sizes,
        shares=[m.share for m in members],
        pins={pin.edge: pin.at for pin in held},
        less=_stack([m.less for m in members]),
    )
    stops = [pin for pin in held if pin.edge]
    datum = next((pin for pin in held if not pin.edge), Pin(edge=0, at=0.0, name="the foot"))
    for lower, upper in zip([datum, *stops], stops, strict=False):
        wrong = np.isnan(found[..., lower.edge])  # the first room that does not come out is unsound from its lower pin
        if wrong.any():
            raise _does_not_fit(name, members[lower.edge : upper.edge], lower, upper, wrong, tape)
    return found


def _stack(values: Sequence[float | Array]) -> Array:
    """Values of the members on the last axis, leading axes broadcast."""
    return np.stack(np.broadcast_arrays(*(np.asarray(v, dtype=float) for v in values)), axis=-1)


def _in_order(name: str, pins: Sequence[Pin], tape: Tape) -> list[Pin]:
    """Pins by edge, each edge once; contradictions and falling positions are errors."""
    held: list[Pin] = []
    for pin in sorted(pins, key=lambda p: p.edge):
        before = held[-1] if held else Pin(edge=0, at=0.0, name="the foot")
        fields = {"run": name, "lower_pin": before.name, "upper_pin": pin.name}
        step = float(np.min(np.asarray(pin.at) - np.asarray(before.at)))
        if pin.edge == before.edge and (held or pin.edge == 0):
            most = float(np.max(np.abs(np.asarray(pin.at) - np.asarray(before.at))))
            if most > TOUCH:
                said = f"{name}: {before.name} and {pin.name} hold one edge at two places, {tape.say(most)} apart."
                raise RunError(f"{said} Take one of them away.", **fields, over=most)
            continue
        if step < -TOUCH:
            said = f"{name}: {pin.name} lies {tape.say(-step)} below {before.name}, but comes after it."
            raise RunError(f"{said} Reorder the stack, or move a pin.", **fields, over=-step)
        held.append(pin)
    return held


def _does_not_fit(
    name: str, between: Sequence[Member], lower: Pin, upper: Pin, wrong: npt.NDArray[np.bool_], tape: Tape
) -> RunError:
    """The error for members that do not come out between two pins, for the worst of the wrong variants."""
    room = np.asarray(upper.at) - np.asarray(lower.at)
    need = sum(np.asarray(-np.asarray(m.less) if m.size is None else m.size, dtype=float) for m in between)
    over = np.broadcast_to(need - room, wrong.shape)
    worst = np.unravel_index(np.argmax(np.where(wrong, np.abs(over), -1.0)), wrong.shape)
    amount, space = float(over[worst]), float(np.broadcast_to(room, wrong.shape)[worst])
    piece = f" (piece {int(worst[0]) + 1})" if wrong.ndim and (not wrong.all() or np.ptp(over) > TOUCH) else ""
    where = f"{name}{piece}, between {lower.name} and {upper.name}"
    sums = f"{where}: members and clears add up to {tape.say(amount + space)}, but there is room for {tape.say(space)}"
    fields = {"run": name, "lower_pin": lower.name, "upper_pin": upper.name, "over": amount}
    if amount > 0:
        return RunOverfull(f"{sums}: {_amount(amount, tape)} too much. Lower a fixed clear, or move a pin.", **fields)
    clears = [m for m in between if m.size is None]
    if clears:
        share = -amount / sum(m.share for m in clears)
        below = max(float(np.broadcast_to(m.less, wrong.shape)[worst]) - m.share * share for m in clears)
        said = f"{where}: a clear comes out {_amount(below, tape)} below nothing. Lower a fixed clear, or move a pin."
        return RunOverfull(said, **{**fields, "over": below})
    return RunMismatch(
        f"{sums}: {_amount(-amount, tape)} are left. Leave one clear open, or take a pin away.", **fields
    )


def _amount(length: float, tape: Tape) -> str:
    """A difference in words: the tape's reading, or mm where that reads as nothing."""
    return tape.say(length) if tape.marks(length) else f"{length:.3g} mm"
