"""Repeated members in words, once for all of a run: "foot shelf: 8 boards 2 1/2 (D1, F, D2), 7 gaps 5/16 full: …"."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence

import attrs

from ...drafting.primitives import bounds, shift
from ...drafting.sheets.figure import Figure
from ...frame.slots import Slot
from ...layout.on_face import OnFace
from ...layout.parts import Part
from ...layout.spacing import CommonLine, Spacing, are_even, spacings, told_of
from ...lengths import TOUCH, steady
from ...phrases import listed
from ...readings import Tape
from ...shop.called import several
from ...shop.marks import marks
from ..making.asked import Asked
from ..making.house import Reader, reader
from ..making.notes import written
from .view import View

LEAST_WIDE = 60.0
"""The words below a view are written at least so wide. [mm]"""
BELOW = 4.0
"""From a view to its words. [mm]"""


def spacing_notes(parts: Sequence[Part], read: Reader, axes: Collection[int], shown: Collection[str]) -> list[str]:
    """What a view says of the runs that it shows across their members, levels that are alike in one note.

    axes are those of the world that lie in the view, shown the identities of what is seen.
    """
    found: dict[str, list[str]] = {}
    for spacing in spacings(parts):
        if spacing.axis in axes and any(part.identity in shown for part in spacing.members):
            words = run_told(spacing, read, own=marks(part.mark for part in spacing.members))
            found.setdefault(words, []).append(spacing.members[0].level or "")
    return [f"{several(levels)}: {words}." for words, levels in found.items()]


def with_words(figure: Figure, asked: Asked, parts: Sequence[Part], look: View, scale: float) -> Figure:
    """A view with the words for its repeated members below it."""
    read, eye = reader(asked.frame, asked.house), look.eye
    axes = [axis for axis in (0, 1, 2) if eye.right[axis] or eye.up[axis]]
    notes = spacing_notes(parts, read, axes, look.shows)
    if not notes:
        return figure
    left, low, right, _ = figure.bounds
    middle, wide = (look.bounds[0] + look.bounds[2]) / 2 * scale, max(right - left, LEAST_WIDE)
    told = written(notes, wide)
    at = middle - (bounds(told)[2] + bounds(told)[0]) / 2
    return attrs.evolve(figure, drawing=(*figure.drawing, *shift(told, at, low - BELOW)))


def run_told(spacing: Spacing, read: Reader, own: str = "") -> str:
    """'8 boards 2 1/2 (D1, F, D2), 7 gaps 5/16 full: 20 + 2 3/8 = 22 3/8'; own are their marks.

    The sum at the end is the proof: all boards, all gaps, and from the first edge to the last, each read once from its
    exact value.
    """
    first, between, last = spacing.widths
    odd = {"first": first, "last": last}
    odd = {which: width for which, width in odd.items() if abs(width - between) > TOUCH}
    said = told_once(spacing.members[0].slot, len(spacing.lines), read(between), read(spacing.gap), own=own)
    if len(odd) == 2 and abs(first - last) <= TOUCH:
        said = f"{said}, the first and the last {read(first)}"
    elif odd:
        said = listed([said, *(f"the {which} {read(width)}" for which, width in odd.items())])
    over = spacing.lines[-1][1] - spacing.lines[0][0]
    gaps = spacing.gap * (len(spacing.lines) - 1)
    return f"{said}: {read(over - gaps)} + {read(gaps)} = {read(over)}"


def lines_told(lines: Iterable[CommonLine], tape: Tape) -> list[str]:
    """'Clamp beside E on a common line, where D1 begins: 0 is 1 5/16 in beyond it.' for each common line."""
    return [
        f"Clamp beside {marks(part.mark for part in line.others)} on a common line, where {line.first.mark} begins: "
        f"0 is {_from_line(line.beyond, tape)}."
        for line in lines
    ]


def _from_line(beyond: float, tape: Tape) -> str:
    if abs(beyond) <= TOUCH:
        return "on it"
    return f"{tape.amount(abs(beyond))} {'beyond' if beyond > 0 else 'before'} it"


def told_once(slot: Slot, count: int, width: str, gap: str, own: str = "") -> str:
    """How many members of a run there are, how wide, and the gaps between them."""
    marked = f" ({own})" if own else ""
    return f"{count} {plural(slot)} {width}{marked}, {count - 1} gaps {gap}"


@attrs.frozen
class Together:
    """Cuts on a face that are told in one: of all members of a run that come to it evenly, or a single one."""

    cuts: tuple[OnFace, ...]
    slot: Slot | None = None

    @property
    def middle(self) -> float:
        """Where its words stand over. [mm]"""
        return (self.cuts[0].start + self.cuts[-1].end) / 2

    @property
    def edges(self) -> tuple[float, ...]:
        """The shoulders that are given. [mm]"""
        inside = [edge for cut in self.cuts for edge in cut.edges]
        told = told_of([(cut.start, cut.end) for cut in self.cuts])
        return tuple(edge for edge in inside if edge in told)

    def told(self, read: Reader) -> list[str]:
        """'8 boards 2 1/2, 7 gaps 5/16 full' and 'laid, no waste'; of a single one how deep it is."""
        cut = self.cuts[0]
        lines = [cut.told(read)]
        if not cut.across:
            lines.append(f"{read(cut.low)} to {read(cut.high)} up")
        if self.slot is None:
            return lines
        first, second = self.cuts[:2]
        width, gap = read(second.length), read(second.start - first.end)
        count = len(self.cuts)
        if cut.wood:
            return [f"{count} notches {width}, {count - 1} lands {gap}", *lines]
        return [told_once(self.slot, count, width, gap), *lines]


def together(cuts: Sequence[OnFace], runs: Mapping[str, Slot]) -> tuple[Together, ...]:
    """Cuts on a face from the datum end, those of a run in one where they are alike and even; runs are by identity."""
    found: dict[object, list[OnFace]] = {}
    for number, cut in enumerate(cuts):
        slot = runs.get(cut.mate)
        level = slot.level.name if slot and slot.level else ""
        alike = (level, slot.run, cut.kind, *steady(cut.low, cut.high, cut.depth)) if slot else number
        found.setdefault(alike, []).append(cut)
    told: list[Together] = []
    for own in found.values():
        if are_even([(cut.start, cut.end) for cut in own]):
            told.append(Together(tuple(own), runs[own[0].mate]))
        else:
            told += [Together((cut,)) for cut in own]
    return tuple(sorted(told, key=lambda one: one.middle))


def plural(slot: Slot) -> str:
    """What several of a run are called: boards, or by a name of their own, back slats."""
    called = getattr(slot.of, "called", slot.role.word)
    return slot.role.plural if called == slot.role.word else f"{called}s"


def untold(parts: Iterable[Part], axis: int) -> dict[str, tuple[float, ...]]:
    """The edges along an axis of the world that no view gives, by the names of the members that have them. [mm]"""
    return {
        part.name: spacing.untold for spacing in spacings(parts) if spacing.axis == axis for part in spacing.members
    }
