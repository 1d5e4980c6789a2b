"""Hours: how long each operation takes, for one piece and for several at once, days with their drying, what it costs.

All minutes are habits of a workshop, to be said otherwise and kept: ``Hands(screw=0.8)``.
"""

from __future__ import annotations

import math
from typing import Any

import attrs

from ...frame.doors import a_number, refuse
from ...layout.layout import Layout
from ...phrases import counted
from ...sources import COMMON_PRACTICE, Source
from ...tables import Table
from ..fasteners.fasten import Fastening
from ..supplies import supplies
from .steps import Step


def _minutes(default: float) -> Any:
    return lambda field: attrs.field(default=default, converter=a_number(field, 0.0, 600.0, f"{default:g}"))


@attrs.frozen(kw_only=True)
class Hands:
    """How long handwork takes. [min] Habits of a workshop, without a source: put in your own, and keep them.

    sheet: read and set up a marking page; line: strike one line; notch: cut one shoulder and its waste; board: crosscut
    and rip one part; hole: drill one; stop: set a drill and its stop; dry: try one joint dry; part: bring one into its
    place; screw: drive one; clamp: set one; check: measure a pair of diagonals; coat: one square metre of finish; ease:
    break the edges of one part and sand it. drying is hours between coats, glue hours in the clamps, day hours of work.
    """

    sheet: float = _minutes(10.0)("sheet")
    line: float = _minutes(0.5)("line")
    notch: float = _minutes(6.0)("notch")
    board: float = _minutes(4.0)("board")
    hole: float = _minutes(0.5)("hole")
    stop: float = _minutes(3.0)("stop")
    dry: float = _minutes(1.5)("dry")
    part: float = _minutes(2.0)("part")
    screw: float = _minutes(0.6)("screw")
    clamp: float = _minutes(1.5)("clamp")
    check: float = _minutes(4.0)("check")
    coat: float = _minutes(12.0)("coat")
    ease: float = _minutes(3.0)("ease")
    drying: float = _minutes(12.0)("drying")
    glue: float = _minutes(4.0)("glue")
    day: float = attrs.field(default=6.0, converter=a_number("day", 0.5, 24.0, "6"))
    source: Source = COMMON_PRACTICE

    def __attrs_post_init__(self) -> None:
        refuse(self, "Hands")


@attrs.frozen(kw_only=True)
class Operation:
    """One operation: how often it is set up for a batch, how often it is done for a piece, and minutes for each."""

    name: str
    setting: float
    each: float

    def minutes(self, pieces: int) -> float:
        """For so many pieces at once. [min]"""
        return self.setting + pieces * self.each


@attrs.frozen(kw_only=True, repr=False)
class Hours:
    """What a batch takes, operation by operation.

    coats are put on in as many rounds of drying; glued tells that something stands in clamps.
    """

    layout: Layout
    hands: Hands
    operations: tuple[Operation, ...]
    coats: int
    glued: bool
    pieces: int

    def total(self, pieces: int | None = None) -> float:
        """Hours for so many at once, the quantity of the design if not given."""
        count = self.pieces if pieces is None else pieces
        return sum(one.minutes(count) for one in self.operations) / 60

    def table(self) -> Table:
        """Operation by operation: one piece alone, one of the batch, and the batch."""
        rows = []
        for one in self.operations:
            alone, together = one.minutes(1), one.minutes(self.pieces)
            rows.append((one.name, _hours(alone), _hours(together / self.pieces), _hours(together)))
        batch = self.total()
        rows.append(("together", f"{self.total(1):.1f}", f"{batch / self.pieces:.1f}", f"{batch:.1f}"))
        notes = (
            "Hours of hands, without milling and drying; minutes are habits of a workshop, no source: put in your own.",
        )
        columns = ("Operation", "One alone (h)", f"Each of {self.pieces} (h)", f"All {self.pieces} (h)")
        return Table(f"Hours: {self.layout.frame.name}", columns, tuple(rows), notes, "lrrr")

    def days(self) -> Table:
        """Days of work with good places to stop: drying runs overnight."""
        rows, day, left = [], 1, self.hands.day
        for one in self.operations:
            need = one.minutes(self.pieces) / 60
            first = day
            while need > left + 1e-9:
                need, day, left = need - left, day + 1, self.hands.day
            left -= need
            rows.append((one.name, str(first) if first == day else f"{first} to {day}", self._stop(one.name)))
        rounds = max(self.coats - 1, 0)
        nights = math.ceil(rounds * self.hands.drying / 24)
        more = counted(nights, "night")
        notes = (
            f"Between coats {self.hands.drying:g} h, {counted(rounds, 'time')}: {more} more"
            + (f"; glue stands {self.hands.glue:g} h in its clamps." if self.glued else "."),
            "A good place to stop is a whole set cut, a sub-assembly screwed, a coat put on.",
        )
        return Table(f"Days: {self.layout.frame.name}", ("Operation", "Day", "Stop when"), tuple(rows), notes, "lrl")

    def _stop(self, name: str) -> str:
        return {
            "cut notches": "a set is cut to its last leg",
            "finish": "a coat is on and dries",
            "put together": "a sub-assembly is screwed",
        }.get(name, "")

    def cost(self, rate: float, wood: float = 0.0) -> float:
        """What one of the batch costs: hours at a rate, and what its wood and supplies cost."""
        return self.total() / self.pieces * rate + wood

    def __repr__(self) -> str:
        return (
            f"<Hours of {self.layout.frame.name}: {self.total(1):.1f} h alone, {self.total():.1f} h for {self.pieces}>"
        )


def _hours(minutes: float) -> str:
    return f"{minutes / 60:.1f}"


def hours(
    layout: Layout,
    steps: tuple[Step, ...],
    work: Fastening | None,
    *,
    hands: Hands | None = None,
    coats: int = 2,
    pieces: int | None = None,
) -> Hours:
    """How long a layout takes.

    Parameters
    ----------
    layout : Layout
    steps : tuple of Step
    work : Fastening or None
    hands : Hands, optional
        The maker's own minutes.
    coats : int
        Coats of finish.
    pieces : int, optional
        How many at once; the quantity of the design if not given.
    """
    own = Hands() if hands is None else hands
    parts = layout.piece(1)
    cuts = sum(len(part.cuts) for part in parts)
    driven = sum(len(fixing.driven) for step in steps for fixing in step.fixings for _ in step.names)
    sizes = {fixing.size.name for step in steps for fixing in step.fixings if fixing.driven}
    clamps = sum(len(step.clamps) * len(step.names) for step in steps)
    area = supplies(layout, work, coats=max(coats, 1)).painted / layout.frame.quantity
    found = (
        Operation(name="cut parts to size", setting=0.0, each=own.board * len(parts)),
        Operation(name="mark sets", setting=own.sheet * len(layout.sets), each=own.line * 2 * cuts),
        Operation(name="cut notches", setting=0.0, each=own.notch * cuts),
        Operation(name="drill", setting=2 * own.stop * len(sizes), each=2 * own.hole * driven),
        Operation(name="ease and sand", setting=0.0, each=own.ease * len(parts)),
        Operation(name="dry fit", setting=0.0, each=own.dry * len(layout.joints_of(1))),
        Operation(
            name="put together",
            setting=0.0,
            each=own.part * len(parts) + own.screw * driven + own.clamp * clamps + own.check * 3,
        ),
        Operation(name="finish", setting=0.0, each=own.coat * area * coats),
    )
    return Hours(
        layout=layout,
        hands=own,
        operations=found,
        coats=coats,
        glued=any(step.glue for step in steps),
        pieces=layout.frame.quantity if pieces is None else pieces,
    )
