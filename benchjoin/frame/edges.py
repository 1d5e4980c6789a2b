"""Shaped edges, as the maker describes them: an arc, scallops, an ogee, or points with tangents.

Each takes wood off the middle of the edge that it is named for, on a rail once in each bay, and leaves the edge
straight where the rail is joined.

>>> Arc("2 in"), Scallop(3, 12)
(Arc(rise=50.8), Scallop(count=3, depth=12.0))
"""

from __future__ import annotations

import itertools
from typing import Any, cast

import attrs

from ..curves import ArcCurve, Beside, Curve, OgeeCurve, PointsCurve
from ..errors import BenchjoinError, typed
from .doors import Door, Fault, a_length, a_number, kept, one_of, refuse

FLAT = 12.0
"""Straight before each shoulder. [mm] Common practice, no source."""
TOOL = 6.0
"""Radius of the cutter that follows a template, no hollow is tighter: a straight bit of half an inch. [mm] Common
practice, no source."""


@attrs.frozen(kw_only=True)
class Shape:
    """What every shape has. [mm]

    flat is left straight before each shoulder, leave is the least width that must be left, half of the part's if not
    given, tool the radius of the cutter that follows its template.
    """

    flat: float = attrs.field(default=FLAT, converter=a_length("flat", zero=True), repr=False)
    leave: float | None = attrs.field(default=None, converter=a_length("leave", optional=True), repr=False)
    tool: float = attrs.field(default=TOOL, converter=a_length("tool", zero=True), repr=False)


@attrs.frozen
class Arc(Shape):
    """An arc of a circle that rises into the edge by its rise in the middle. [mm]

    length is its chord, in the middle of the bay; the whole bay but for its flats if not given.
    """

    rise: float = attrs.field(converter=a_length("rise"))
    length: float | None = attrs.field(
        kw_only=True, default=None, converter=a_length("length", optional=True), repr=False
    )

    def __attrs_post_init__(self) -> None:
        refuse(self, "Arc")

    @property
    def called(self) -> str:
        """What it is called."""
        return "arc"

    def curve(self, start: Any, end: Any) -> Curve:
        """The curve between two shoulders. [mm]"""
        if self.length is None:
            return ArcCurve(start + self.flat, end - self.flat, self.rise)
        middle = (start + end) / 2
        return ArcCurve(middle - self.length / 2, middle + self.length / 2, self.rise)


@attrs.frozen
class Scallop(Shape):
    """So many arcs side by side, each as deep as said in its middle, that meet in points on the straight edge. [mm]"""

    count: int = attrs.field(converter=a_number("count", 1, 100, "3", whole=True))
    depth: float = attrs.field(converter=a_length("depth"))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Scallop")

    @property
    def called(self) -> str:
        """What it is called."""
        return f"{self.count} scallops" if self.count > 1 else "scallop"

    def curve(self, start: Any, end: Any) -> Curve:
        """The curves between two shoulders. [mm]"""
        first, wide = start + self.flat, (end - start - 2 * self.flat) / self.count
        return Beside(tuple(ArcCurve(first + wide * n, first + wide * (n + 1), self.depth) for n in range(self.count)))


@attrs.frozen
class Ogee(Shape):
    """An S-curve of two equal arcs down from each shoulder over a run, and the edge straight between them. [mm]"""

    depth: float = attrs.field(converter=a_length("depth"))
    run: float = attrs.field(converter=a_length("run"))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Ogee", self._faults)

    def _faults(self) -> list[Fault]:
        if self.depth > self.run:
            return [
                Fault("depth", f"{self.depth:g} mm over a run of {self.run:g} mm is too steep. Make the run longer.")
            ]
        return []

    @property
    def called(self) -> str:
        """What it is called."""
        return "ogee"

    def curve(self, start: Any, end: Any) -> Curve:
        """The curve between two shoulders. [mm]"""
        return OgeeCurve(start + self.flat, end - self.flat, self.depth, self.run)


def _points(value: Any) -> Any:
    """Points as (place, depth) or (place, depth, slope), or with two slopes where the edge has a cusp."""
    if isinstance(value, str) or not hasattr(value, "__iter__"):
        raise BenchjoinError(f"points is {typed(value)}. Write places and depths: [(0.2, 10), (0.5, 40)].")
    found = []
    for place, item in enumerate(value):
        numbers = tuple(item) if isinstance(item, tuple | list) else ()
        if not 2 <= len(numbers) <= 4:
            raise BenchjoinError(f"points[{place}] is {typed(item)}. Write a place from 0 to 1, a depth, and a slope.")
        at = a_number("place", 0.0, 1.0, "0.25")(numbers[0])
        depth = a_length("depth", zero=True)(numbers[1])
        slopes = tuple(a_number("slope", -100.0, 100.0, "0.2")(slope) for slope in numbers[2:])
        for own in (at, depth, *slopes):
            if not isinstance(own, int | float):
                raise BenchjoinError(f"points[{place}]: {own.of[0].what}")
        found.append((float(at), float(depth), *map(float, slopes)))
    if any(b[0] <= a[0] for a, b in itertools.pairwise(found)) or not found:
        raise BenchjoinError("points do not rise along the edge. Write their places in order, each once.")
    return tuple(found)


@attrs.frozen
class Points(Shape):
    """A smooth edge through points, each with its tangent. [mm]

    A point is a place along what lies between the flats, from 0 to 1, and how far the edge stands back there; then how
    much deeper it gets to each mm there, nothing if not said, or two such slopes, before and after, where it has a
    cusp. The ends are flush with the straight edge. If it is symmetrical, points are told up to the middle, 0.5.
    """

    points: tuple[tuple[float, ...], ...] = attrs.field(converter=kept("points", _points))
    symmetrical: bool = attrs.field(kw_only=True, default=True, converter=one_of("symmetrical", True, False))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Points", self._faults)

    def _faults(self) -> list[Fault]:
        faults = []
        if self.symmetrical and self.points[-1][0] > 0.5:
            what = (
                f"a place is {self.points[-1][0]:g}, and a symmetrical edge is told up to 0.5. Write symmetrical=False."
            )
            faults.append(Fault("points", what))
        ends = [point for point in self.points if point[0] in (0.0, 1.0) and point[1] > 0.0]
        if ends:
            faults.append(Fault("points", "an end stands back. The ends are flush with the edge: write a depth of 0."))
        middle = [
            point for point in self.points if self.symmetrical and point[0] == 0.5 and len(point) == 3 and point[2]
        ]
        if middle:
            faults.append(
                Fault("points", "the middle of a symmetrical edge is level. Write two slopes for a cusp there.")
            )
        return faults

    @property
    def called(self) -> str:
        """What it is called."""
        return "curve through points"

    def curve(self, start: Any, end: Any) -> Curve:
        """The curve between two shoulders. [mm]"""
        low, wide = start + self.flat, end - start - 2 * self.flat
        own = [self._sloped(point) for point in self.points]
        if self.symmetrical:
            own += [(1 - at, deep, -after, -before) for at, deep, before, after in reversed(own) if at < 0.5]
        own = own if own[0][0] == 0.0 else [(0.0, 0.0, 0.0, 0.0), *own]
        own = own if own[-1][0] == 1.0 else [*own, (1.0, 0.0, 0.0, 0.0)]
        placed = tuple((low + wide * at, deep, before, after) for at, deep, before, after in own)
        return PointsCurve(low, low + wide, placed)

    @staticmethod
    def _sloped(point: tuple[float, ...]) -> tuple[float, float, float, float]:
        at, deep, *slopes = point
        before, after = (slopes * 2)[:2] if slopes else (0.0, 0.0)
        return at, deep, before, after


Edge = Arc | Scallop | Ogee | Points
"""What an edge may be shaped to."""


def an_edge(field: str) -> Door[Edge | None, Edge | None]:
    """Converter for an edge: straight, or one of the shapes."""

    def convert(value: Any) -> Any:
        if value is None or isinstance(value, Edge):
            return value
        raise BenchjoinError(f"{field} is {typed(value)}. Write Arc(40), Scallop(3, 12), Ogee(30, 90) or Points([…]).")

    return cast("Door[Edge | None, Edge | None]", kept(field, convert, takes="Edge | None"))
