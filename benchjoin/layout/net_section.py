"""Net sections: what is left of a part across its length, stretch by stretch between the places where that changes.

Checks ask it what notches leave of a leg; whoever reckons with bending asks it for the wood at a place.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator
from functools import cached_property
from typing import Any

import attrs

from ..lengths import TOUCH
from ..runs import larger, smaller
from ..solids import Box, boxes
from .on_face import OnFace
from .parts import Part

CURVED = 1.0
"""A shaped edge is told in stretches between which it is no farther than this from straight. [mm]"""


@attrs.frozen(eq=False, repr=False, slots=False)
class Stretch:
    """A part from one place to another along it, and the cuts that are in it. [mm]"""

    part: Part
    start: float
    end: float
    cuts: tuple[OnFace, ...]

    @cached_property
    def section(self) -> tuple[Box, ...]:
        """What is left, as boxes in the part's own frame beside each other; the least of it where an edge is shaped."""
        (_, width, thick), outline = self.part.size, self.part.outline
        low, high = 0.0, width
        if not outline.plain:
            low = max(outline.low_at(self.start), outline.low_at(self.end))
            high = min(outline.high_at(self.start), outline.high_at(self.end))
        whole = Box((self.start, low, 0.0), (self.end, high, thick))
        return boxes(whole, [self.part.placement.local(seen.cut.box) for seen in self.cuts])

    @property
    def area(self) -> Any:
        """Area of what is left. [mm²]"""
        return sum(box.size()[1] * box.size()[2] for box in self.section)


def stretches(part: Part) -> list[Stretch]:
    """Stretches of a part from its datum end, in each of which its section does not change."""
    seen = sorted(map(part.on_face, part.cuts), key=lambda cut: (cut.start, cut.face != part.marked, cut.face))
    curved = () if part.outline.plain else part.outline.places(CURVED, part.outline.low, part.outline.high)
    ends = sorted([0.0, part.length, *(at for cut in seen for at in (cut.start, cut.end)), *curved])
    pairs = [(a, b) for a, b in itertools.pairwise(ends) if b - a > TOUCH]
    return [Stretch(part, start, end, cuts) for start, end, cuts in _with_cuts(pairs, seen)]


def _with_cuts(
    pairs: Iterable[tuple[float, float]], cuts: list[OnFace]
) -> Iterator[tuple[float, float, tuple[OnFace, ...]]]:
    """Stretches with what is cut in them; cuts rise along the part."""
    place = 0
    inside: list[OnFace] = []
    for start, end in pairs:
        inside = [cut for cut in inside if cut.end > start + TOUCH]
        while place < len(cuts) and cuts[place].start < end - TOUCH:
            inside.append(cuts[place])
            place += 1
        yield start, end, tuple(inside)


def shared(one: Stretch, other: Stretch) -> Any:
    """Area that two sections share, which holds one stretch to the other. [mm²]"""
    return sum(_over(a, b, 1) * _over(a, b, 2) for a, b in itertools.product(one.section, other.section))


def _over(a: Box, b: Box, axis: int) -> Any:
    """How far two boxes overlap along an axis. [mm]"""
    return larger(smaller(a.high[axis], b.high[axis]) - larger(a.low[axis], b.low[axis]), 0.0)
