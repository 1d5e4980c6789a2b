"""Spacing: members of one run that lie side by side with one gap between them, so that they are told once.

Eight boards with even gaps are no sixteen places: the edges of the first one, the far edge of the last, and how many
and how wide boards and gaps are between. Members that are not spaced evenly have no spacing: each is told by itself.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from itertools import pairwise

import attrs

from ..lengths import TOUCH, steady
from .parts import Part

FEWEST = 3
"""Members that are worth telling together: two have but one gap."""

Ends = tuple[float, float]


@attrs.frozen(slots=False)
class Spacing:
    """Members of a run in order across it: the axis of the world, where each begins and ends, and the gap. [mm]"""

    members: tuple[Part, ...]
    axis: int
    lines: tuple[Ends, ...]

    @property
    def gap(self) -> float:
        """Between one and the next. [mm]"""
        return self.lines[1][0] - self.lines[0][1]

    @property
    def widths(self) -> tuple[float, float, float]:
        """Of the first, of those between, and of the last. [mm]"""
        first, between, last = (self.lines[n] for n in (0, 1, -1))
        return first[1] - first[0], between[1] - between[0], last[1] - last[0]

    @property
    def told(self) -> tuple[float, ...]:
        """Places that say where it all lies: both edges of the first, the far edge of the last, its near one if odd."""
        return told_of(self.lines)

    @property
    def untold(self) -> tuple[float, ...]:
        """The edges that follow from these, the widths and the gap. [mm]"""
        return tuple(at for ends in self.lines for at in ends if at not in self.told)


def told_of(lines: Sequence[Ends]) -> tuple[float, ...]:
    """Of members side by side the edges that are told: of the first, the far one of the last, its near one if odd. [mm]

    >>> told_of([(0, 60), (70, 130), (140, 200)]), told_of([(0, 60), (70, 130), (140, 180)])
    ((0, 60, 200), (0, 60, 140, 180))
    """
    (a, b), (c, d) = lines[0], lines[-1]
    return (a, b, d) if abs((b - a) - (d - c)) <= TOUCH else (a, b, c, d)


def are_even(lines: Sequence[Ends]) -> bool:
    """Whether members lie one gap apart, and all but the first and the last are as wide. [mm]

    >>> are_even([(0, 60), (70, 130), (140, 180)]), are_even([(0, 60), (70, 130), (150, 210)])
    (True, False)
    """
    if len(lines) < FEWEST:
        return False
    gaps = [after[0] - before[1] for before, after in pairwise(lines)]
    between = [high - low for low, high in lines[1:-1]]
    return min(gaps) >= -TOUCH and all(max(sizes) - min(sizes) <= TOUCH for sizes in (gaps, between))


def spacings(parts: Iterable[Part]) -> tuple[Spacing, ...]:
    """The runs of one piece whose members are spaced evenly, in the order of the parts."""
    runs: dict[tuple[str | None, str], list[Part]] = {}
    for part in parts:
        if part.slot.run:
            runs.setdefault((part.level, part.slot.run), []).append(part)
    return tuple(_found(runs.values()))


def _found(runs: Collection[Sequence[Part]]) -> Iterator[Spacing]:
    for members in runs:
        slot = members[0].slot
        axis = slot.axes[1] if slot.upright else 1 - slot.axes[0]
        places: dict[Ends, Part] = {}
        for part in sorted(members, key=lambda one: one.blank.low[axis]):
            ends = (part.blank.low[axis], part.blank.high[axis])
            if not any(abs(ends[0] - low) <= TOUCH and abs(ends[1] - high) <= TOUCH for low, high in places):
                places[ends] = part
        if are_even(tuple(places)):
            yield Spacing(tuple(members), axis, tuple(places))


@attrs.frozen(slots=False)
class CommonLine:
    """Where a carrying member is clamped beside others of another length to be marked with them: not on its end.

    first is the member of the run whose near edge is the line, others are the parts that lie another way on it, and
    beyond is how far the datum end of this one lies beyond the line, negative where it reaches past. [mm]
    """

    first: Part
    others: tuple[Part, ...]
    beyond: float


def common_lines(parts: Iterable[Part]) -> dict[str, tuple[CommonLine, ...]]:
    """Common lines by the names of parts that one run comes to and that do not agree in their ends."""
    members: dict[tuple[int, str | None, str], dict[str, Part]] = {}
    carriers: dict[tuple[tuple[int, str | None, str], int], dict[str, Part]] = {}
    every = {part.name: part for part in parts}
    for part in every.values():
        for touch in part.touches:
            mate = every.get(f"{part.piece}/{touch.mate}")
            if mate is not None and mate.slot.run and mate.slot.axes[0] != part.slot.axes[0]:
                key = (part.piece, mate.level, mate.slot.run)
                members.setdefault(key, {})[mate.name] = mate
                carriers.setdefault((key, part.slot.axes[0]), {})[part.name] = part
    found: dict[str, list[CommonLine]] = {}
    for (run, axis), marked in carriers.items():
        first = min(members[run].values(), key=lambda part: part.blank.low[axis])
        line = first.blank.low[axis]
        ends = {name: steady(part.blank.low[axis] - line, part.length) for name, part in marked.items()}
        for name, part in marked.items():
            others = tuple(other for key, other in marked.items() if ends[key] != ends[name])
            if others:
                found.setdefault(name, []).append(CommonLine(first, others, part.blank.low[axis] - line))
    return {name: tuple(lines) for name, lines in found.items()}
