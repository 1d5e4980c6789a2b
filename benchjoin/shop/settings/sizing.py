"""Sizing: the stops for the lengths of the cut list, and the fence for its widths.

Parts of one length share one stop, whatever they are, the longest first; parts of one width share one place of the
fence. A length is one where it is one place on the machine. What reaches further than the stop is marked from one
master: the first is measured, the others are struck from it.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from typing import Literal

import attrs

from ...layout.parts import Part
from ...lengths import TOUCH
from ...phrases import counted
from ...readings import Tape
from ...tables import Table
from ...trade.order_of_work import step
from ..called import called
from ..marks import marks
from .minutes import Minutes, told
from .shop import Shop
from .ways.operation import one_place

TICK = "[ ]"
"""A box to tick, in a table; sheets draw it as a box."""


@attrs.frozen(kw_only=True)
class Sizing:
    """One stop or one place of the fence, with the parts that are cut at it. [mm]

    at is the length or width; master says that no stop reaches so far.
    """

    work: Literal["crosscut", "rip"]
    at: float
    parts: tuple[Part, ...]
    master: bool = False

    @property
    def cuts(self) -> int:
        """Parts cut at it."""
        return len(self.parts)

    def takes(self, minutes: Minutes) -> float:
        """To set the stop or the fence, to lay every part (to its line where there is none), and to cut it. [min]"""
        laid = minutes.line if self.master else minutes.turn
        return (0.0 if self.master else minutes.stop) + self.cuts * (laid + minutes.cut)


def crosscuts(parts: Collection[Part], shop: Shop, tape: Tape) -> tuple[Sizing, ...]:
    """One stop for each length, the longest first."""
    return tuple(
        Sizing(work="crosscut", at=same[0].length, parts=same, master=same[0].length > shop.stop_reach + TOUCH)
        for same in _alike(parts, lambda part: part.length, tape)
    )


def rips(parts: Collection[Part], shop: Shop, tape: Tape) -> tuple[Sizing, ...]:
    """One place of the fence for each width that the stock does not come in, the widest first."""
    ripped = [part for part in parts if not _as_bought(part)]
    return tuple(
        Sizing(work="rip", at=same[0].width, parts=same) for same in _alike(ripped, lambda part: part.width, tape)
    )


def _as_bought(part: Part) -> bool:
    """Whether the part is as wide as its stock; a leg always is, its stock is the section it was milled to."""
    width = part.stock.width
    return part.slot.role.sized_stock or (width is not None and abs(part.width - width) <= TOUCH)


def _alike(parts: Collection[Part], size: Callable[[Part], float], tape: Tape) -> Sequence[tuple[Part, ...]]:
    places = one_place(map(size, parts), tape)
    found: dict[float, list[Part]] = {}
    for part in sorted(parts, key=lambda part: -size(part)):
        found.setdefault(places[size(part)], []).append(part)
    return [tuple(same) for same in found.values()]


def sizing_table(title: str, sizings: Sequence[Sizing], tape: Tape, minutes: Minutes) -> Table:
    """One line for each stop: where it stands, which parts, how many cuts, how long it takes, a box to tick."""
    rows = tuple(_row(number, sizing, tape, minutes) for number, sizing in enumerate(sizings, 1))
    what = "Fence" if sizings and sizings[0].work == "rip" else "Stop"
    columns = ("No.", f"{what} ({tape.unit})", "Parts", "Marks", "Cuts", "Minutes", "Done")
    return Table(title, columns, rows, _notes(sizings, tape, minutes), "rrllrrc")


def _row(number: int, sizing: Sizing, tape: Tape, minutes: Minutes) -> tuple[str, ...]:
    at = f"{tape.read(sizing.at)}, from a master" if sizing.master else tape.read(sizing.at)
    own = marks(part.mark for part in sizing.parts)
    return (str(number), at, called(sizing.parts), own, str(sizing.cuts), told(sizing.takes(minutes)), TICK)


def times(count: int) -> str:
    """'once', 'twice', '3 times'."""
    return {1: "once", 2: "twice"}.get(count, f"{count} times")


def _notes(sizings: Sequence[Sizing], tape: Tape, minutes: Minutes) -> tuple[str, ...]:
    if not sizings:
        return ("Nothing to cut here.",)
    rip = sizings[0].work == "rip"
    count = sum(not sizing.master for sizing in sizings)
    cuts, total = sum(sizing.cuts for sizing in sizings), sum(sizing.takes(minutes) for sizing in sizings)
    found = [
        f"{step('width')}: blanks at their rough length; the final length is step {step('final length').number}. "
        "Finished sizes: add what your planer takes."
        if rip
        else f"{step('final length')}: of blanks that are at their width (step {step('width').number}). Square one end "
        "first; that end goes to the stop.",
        f"{'The fence is' if rip else 'The stop is'} set {times(count)}: once for each size that {tape.name} can tell "
        f"apart; no order needs fewer. {counted(cuts, 'cut')}, {told(total)} minutes.",
    ]
    if any(sizing.master for sizing in sizings):
        found.append(
            "Beyond the stop's reach: measure and cut one, mark it master, lay it on each of the others with the "
            "square ends flush, and strike all from it."
        )
    return tuple(found)
