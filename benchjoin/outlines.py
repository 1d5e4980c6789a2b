"""Outlines: the face of a part as it is sawn, a rectangle less what its shaped edges lose.

A profile says how far an edge stands back from the straight one along its length. Everything that reads wood reads an
outline through its polygon (what is drawn), its steps (boxes of lost wood, for whoever reckons in boxes) or what its
edges lose in area; so an edge of a new shape is a new profile and nothing else.

           high edge
    ┌──────╮      ╭──────┐      width
    │       ╰────╯       │
    └────────────────────┘ 0
    0     low edge       length
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Iterator, Sequence
from functools import cached_property
from typing import TYPE_CHECKING, Any, Protocol

import attrs
import numpy as np

from .lengths import TOUCH, distinct
from .runs import larger, smaller
from .solids import Box, areas

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

SAG = 0.05
"""A chord of a drawn edge is no farther off than this. [mm]"""
STEPS = 8
"""Boxes of lost wood to a chord at most."""
RISE = 0.25
"""And so many that the edge rises no more than this over one. [mm]"""
FINE = 256
"""Intervals over which a depth that is cut short is added up."""


class Profile(Protocol):
    """The shape of one edge; places run along the part from its datum end. [mm]"""

    def depth(self, at: Any) -> Any:
        """How far the edge stands back at places along it, none where it is straight."""

    def area(self, start: Any, end: Any) -> Any:
        """Area that the edge loses between two places. [mm²]"""

    def points(self, sag: float) -> Any:
        """Rising places from end to end, between which the edge is no farther than sag from a straight line."""


@attrs.frozen(eq=False, repr=False, slots=False)
class Outline:
    """A rectangle less the profiles of its two long edges. [mm]"""

    length: float
    width: float
    low: Profile | None = None
    high: Profile | None = None

    @property
    def plain(self) -> bool:
        """Whether both edges are straight."""
        return self.low is None and self.high is None

    @cached_property
    def polygon(self) -> BaseGeometry:
        """The outline as it is drawn; in several pieces, or empty, where its edges meet."""
        import shapely

        if self.low is None and self.high is None:
            return shapely.box(0.0, 0.0, self.length, self.width)
        low, high = self._drawn(self.low), [(u, self.width - v) for u, v in self._drawn(self.high)]
        whole = shapely.Polygon([*low, *reversed(high)])
        if whole.is_valid:
            return whole
        over, under = 2 * max(self.width, *(v for _, v in low)), -2 * max(self.width, *(-v for _, v in high))
        above = shapely.Polygon([*low, (self.length, over), (0.0, over)])
        return areas(above.intersection(shapely.Polygon([*high, (self.length, under), (0.0, under)])))

    def places(self, sag: float, *profiles: Profile | None) -> list[float]:
        """Rising places along the outline at which its edges are to be told."""
        told = (float(u) for one in profiles if one is not None for u in np.asarray(one.points(sag)))
        inside = (u for u in told if TOUCH < u < self.length - TOUCH)  # a curve may have no room
        return [0.0, *distinct(inside), self.length]

    def _drawn(self, profile: Profile | None) -> list[tuple[float, float]]:
        """An edge as it is drawn: places, and how far it stands back there."""
        places = self.places(SAG, profile)
        back = [0.0] * len(places) if profile is None else depths(profile, places)
        return list(zip(places, back, strict=True))

    def low_at(self, at: float) -> float:
        """Where the low edge lies at a place."""
        return 0.0 if self.low is None else float(self.low.depth(at))

    def high_at(self, at: float) -> float:
        """Where the high edge lies at a place."""
        return self.width - (0.0 if self.high is None else float(self.high.depth(at)))

    def steps(self, thickness: float) -> Iterator[Box]:
        """Boxes that take all that the edges lose, through the thickness, and at a slope a little more."""
        for profile, is_low in ((self.low, True), (self.high, False)):
            if profile is None:
                continue
            places = _in_steps(profile)
            for (start, one), (end, other) in itertools.pairwise(zip(places, depths(profile, places), strict=True)):
                deep = larger(one, other)
                low, high = (0.0, deep) if is_low else (self.width - deep, self.width)
                yield Box((start, low, 0.0), (end, high, thickness))

    def chords(self, profile: Profile) -> Iterator[tuple[float, float, float, float]]:
        """Straight bits of an edge as it is drawn: from, to, and how far it stands back at both ends."""
        for (start, one), (end, other) in itertools.pairwise(self._drawn(profile)):
            yield start, end, one, other

    def lost(self, box: Box) -> Any:
        """Volume that the edges lose of a box of the part. [mm³]"""
        (start, low, near), (end, high, far) = box.low, box.high
        area = self._lost(self.low, start, end, low, high) + self._lost(self.high, start, end, *self._turned(low, high))
        return area * (far - near)

    def _turned(self, low: float, high: float) -> tuple[float, float]:
        return self.width - high, self.width - low

    def _lost(self, profile: Profile | None, start: Any, end: Any, low: Any, high: Any) -> Any:
        """Area that an edge loses of what lies between two distances from it."""
        if profile is None:
            return 0.0
        if low <= 0.0 and high >= self.width:
            return profile.area(start, end)
        return added_up(lambda at: larger(smaller(profile.depth(at), high) - low, 0.0), start, end)


def _in_steps(profile: Profile) -> list[Any]:
    """Places along an edge with each chord in even steps, more where it is steep."""
    places = profile.points(SAG)
    found = [places[0]]
    for (start, one), (end, other) in itertools.pairwise(zip(places, depths(profile, places), strict=True)):
        plain = isinstance(one, float) and isinstance(other, float)
        count = min(max(math.ceil(abs(other - one) / RISE), 1), STEPS) if plain else STEPS
        found += [start + (end - start) * number / count for number in range(1, count)] + [end]
    return found


def depths(profile: Profile, places: Sequence[Any]) -> list[Any]:
    """How far an edge stands back at each of some places; worked out at once where these are plain numbers. [mm]"""
    if any(isinstance(at, np.ndarray) for at in (profile.depth(places[0]), *places)):
        return [profile.depth(at) for at in places]
    found = np.broadcast_to(profile.depth(np.asarray(places)), len(places))
    return found.tolist()  # type: ignore[no-any-return]


@attrs.frozen(eq=False, repr=False, slots=False)
class Cropped:
    """The edge of a part that is cut down: it begins later, ends earlier, and some of it may be gone. [mm]"""

    whole: Profile
    start: float
    length: float
    back: float

    def depth(self, at: Any) -> Any:
        """How far the edge stands back from where the part is cut."""
        return larger(self.whole.depth(at + self.start) - self.back, 0.0)

    def area(self, start: Any, end: Any) -> Any:
        """Area that the edge loses between two places."""
        return added_up(self.depth, start, end)

    def points(self, sag: float) -> list[float]:
        """Rising places from end to end."""
        found = (at - self.start for at in self.whole.points(sag))
        return [0.0, *(at for at in found if 0.0 < at < self.length), self.length]


def added_up(depth: Callable[[Any], Any], start: Any, end: Any) -> Any:
    """Area under depths between two places, in even steps."""
    step = (end - start) / FINE
    if isinstance(step, np.ndarray) or isinstance(depth(start), np.ndarray):
        deep: Any = [depth(start + step * n) for n in range(FINE + 1)]
    else:
        deep = np.broadcast_to(depth(start + step * np.arange(FINE + 1)), FINE + 1)
    return step * (sum(deep) - (deep[0] + deep[-1]) / 2)
