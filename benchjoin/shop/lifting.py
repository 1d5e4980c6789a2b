"""Lifting: what each panel and tray weighs, how it comes out, what is left beside it, and which press tips it.

lifting(layout, wood="western larch", laid=12, wettest=18, driest=9).table()
"""

from __future__ import annotations

from collections.abc import Iterator

import attrs

from ..findings import Finding
from ..layout.laid_out import of_a_layout
from ..layout.layout import Layout
from ..layout.lifting import LiftOut, lift_outs
from ..layout.parts import Part
from ..lengths import TOUCH
from ..sources import COMMON_PRACTICE, STATICS
from ..tables import ShownAsTable, Table
from ..trade.practice import LEAST_GAP
from ..trade.species import Species, species
from .seasons import FINE
from .swelling import Grain, board_change
from .weights import POUND, weights, wood_of

GRAVITY = 9.80665
"""Standard gravity. [m/s²]"""
PRESS = 100.0
"""A hand that leans on an edge presses so much: what tips at less is told. [N] Common practice, no source."""


@attrs.frozen(kw_only=True)
class Lifted:
    """One panel or tray.

    Its weight [kg], the least clear beside it as laid and at the wettest [mm], and the press at its worst edge that
    tips it [N], without end where it reaches nowhere over its seats.
    """

    lift: LiftOut
    weight: float
    laid: float
    wettest: float
    press: float

    @property
    def way(self) -> str:
        """How it comes out."""
        steps, toward = self.lift.moves.steps, self.lift.moves.toward
        if not steps:
            return "does not come out"
        return (
            f"lifted, then to the {toward}" if len(steps) > 1 else {"up": "straight up"}.get(toward, f"to the {toward}")
        )


@attrs.frozen(kw_only=True, repr=False)
class Lifting(ShownAsTable):
    """What comes out of one piece of a layout; contents are the moisture as laid and at the wettest. [%]"""

    layout: Layout
    contents: tuple[float, float]
    each: tuple[Lifted, ...]
    findings: tuple[Finding, ...]

    def table(self) -> Table:
        """One line for each."""
        tape = self.layout.frame.tape
        unit, factor = ("lb", POUND) if tape.unit == "in" else ("kg", 1.0)
        fine = FINE[tape.unit]
        laid, wettest = self.contents
        columns = (
            "Part",
            f"Weight ({unit})",
            "Comes out",
            f"Clear, {laid:g} % ({tape.unit})",
            f"Clear, {wettest:g} %",
            "Tips at (N)",
        )
        rows = tuple(
            (
                one.lift.name,
                f"{one.weight / factor:.1f}",
                one.way,
                fine.read(one.laid),
                fine.read(one.wettest),
                "–" if one.press == float("inf") else f"{one.press:.0f}",
            )
            for one in self.each
        )
        notes = (
            "Clear beside its boards, which are fixed about their middles. Tips: a press at the edge that reaches "
            "furthest over its seats, against its own weight. Averages of clear wood.",
        )
        return Table(f"What lifts out: {self.layout.frame.name}", columns, rows, notes, "lrlrrr")

    def __repr__(self) -> str:
        return f"<Lifting of {self.layout.frame.name}: {len(self.each)} lift out, {len(self.findings)} findings>"


@of_a_layout
def lifting(
    layout: Layout,
    *,
    laid: float = 12.0,
    wettest: float = 18.0,
    wood: str | Species | None = None,
    grain: Grain = "unknown",
) -> Lifting:
    """What lifts or slides out of the first piece of a layout.

    Parameters
    ----------
    layout : Layout
    laid, wettest : float
        Moisture contents of the boards when they are laid, and at the wettest. [%]
    wood : str or Species, optional
        The wood of all stock that does not say its own.
    grain : "flat", "quarter" or "unknown"
        How the boards are sawn; the larger movement where nobody knows.

    Raises
    ------
    LumberError
        If a stock does not say its species and none is given, or the tables have none of that name.
    MoistureError
        If a content is none.
    """
    otherwise = species(wood) if isinstance(wood, str) else wood
    heavy = weights(layout, moisture=laid, wood=otherwise).parts
    each = []
    for lift in lift_outs(layout.piece(1), layout.joints_of(1)):
        kept = lift.ease[0 if _across(lift) else 1]
        grows = max((_grows(part, otherwise, laid, wettest, grain) for part in lift.parts), default=0.0)
        weight = sum(heavy[part.name] for part in lift.parts)
        each.append(
            Lifted(lift=lift, weight=weight, laid=kept, wettest=kept - grows, press=_press(lift, weight * GRAVITY))
        )
    findings = tuple(finding for one in each for finding in _told(layout, one))
    return Lifting(layout=layout, contents=(laid, wettest), each=tuple(each), findings=findings)


def _across(lift: LiftOut) -> bool:
    """Whether its boards lie side by side along the length."""
    boards = lift.of.boards
    return boards is not None and boards.run == "across"


def _grows(part: Part, wood: Species | None, laid: float, wettest: float, grain: Grain) -> float:
    """How much of the clear beside a board goes: half of what it swells, and half of its neighbour. [mm]"""
    if not part.slot.role.surface:
        return 0.0
    return board_change(part.size[1], wood_of(part.slot, wood), laid, wettest, grain)


def _press(lift: LiftOut, weight: float) -> float:
    """The least press at an edge that lifts the other side: weight × arm = press × reach over the seats. [N]"""
    box, found = lift.box, float("inf")
    for axis in (0, 1):
        if not lift.seats:
            return 0.0
        low = min(joint.contact.low[axis] for joint in lift.seats)
        high = max(joint.contact.high[axis] for joint in lift.seats)
        middle = (box.low[axis] + box.high[axis]) / 2
        for reach, arm in ((low - box.low[axis], middle - low), (box.high[axis] - high, high - middle)):
            if reach > TOUCH:
                found = min(found, weight * max(arm, 0.0) / reach)
    return found


def _told(layout: Layout, one: Lifted) -> Iterator[Finding]:
    fine, name = FINE[layout.frame.tape.unit], one.lift.name
    parts = tuple(part.identity for part in one.lift.parts)
    if one.wettest < min(LEAST_GAP / 2, one.laid) - TOUCH:
        sentence = (
            f"{name}: of {fine.say(one.laid)} beside it {fine.say(max(one.wettest, 0.0))} is left at its wettest, "
            "and it may stick. Give it more clear, or narrower boards."
        )
        numbers = {"laid": one.laid, "wettest": one.wettest}
        yield Finding(
            severity="warning",
            kind="lift-out sticks",
            where=name,
            parts=parts,
            sentence=sentence,
            numbers=numbers,
            source=COMMON_PRACTICE,
        )
    if one.press < PRESS:
        sentence = (
            f"{name}: a press of {one.press:.0f} N at its edge tips it, and a hand that leans there presses "
            f"{PRESS:.0f}. Let it reach over less, or make it heavier."
        )
        yield Finding(
            severity="warning",
            kind="lift-out tips",
            where=name,
            parts=parts,
            sentence=sentence,
            numbers={"press": one.press},
            source=STATICS,
        )
