"""Curves of shaped edges: how far an edge stands back along a stretch of a part, for one variant or many.

Each begins and ends flush with the straight edge. What a maker says of an edge is in frame/edges; where it lies on a
part is worked out in layout.

>>> arc = ArcCurve(0.0, 1000.0, 50.0)
>>> round(arc.depth(500.0), 6), round(arc.depth(0.0), 6), arc.radius
(50.0, 0.0, 2525.0)
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from typing import Any, Protocol

import attrs
import numpy as np

from .lengths import TOUCH
from .outlines import Profile, added_up
from .runs import larger, smaller


class Curve(Profile, Protocol):
    """A profile that lies between two places of a part, with what a maker needs to know of it. [mm]"""

    @property
    def start(self) -> Any:
        """Where it begins."""

    @property
    def end(self) -> Any:
        """Where it ends."""

    @property
    def deepest(self) -> Any:
        """How far it stands back at most."""

    @property
    def radius(self) -> Any:
        """The smallest radius of its hollows, in which a cutter must turn."""


def radius_of(chord: Any, rise: Any) -> Any:
    """Radius of an arc over a chord: c²/8h + h/2. [mm] Geometry of the circle."""
    return chord**2 / (8 * rise) + rise / 2


def _chords(rise: Any, sag: float) -> int:
    """Even chords along a flat arc that lie no farther off than sag: the rise over a chord goes with its square."""
    return max(2, math.ceil(1.2 * math.sqrt(float(np.max(np.asarray(rise))) / sag)))


def _between(start: Any, end: Any, count: int) -> list[Any]:
    return [start + (end - start) * n / count for n in range(count + 1)]


@attrs.frozen(eq=False)
class ArcCurve:
    """An arc of a circle: its middle stands back by its rise. [mm]"""

    start: Any
    end: Any
    rise: Any

    @property
    def deepest(self) -> Any:
        """Its rise."""
        return self.rise

    @property
    def radius(self) -> Any:
        """By chord and rise."""
        return radius_of(self.end - self.start, self.rise)

    def depth(self, at: Any) -> Any:
        """Nothing outside its chord."""
        off = at - (self.start + self.end) / 2
        return larger(larger(self.radius**2 - off**2, 0.0) ** 0.5 - (self.radius - self.rise), 0.0)

    def area(self, start: Any, end: Any) -> Any:
        """Area of the segment between two places, in closed form where both lie on the chord."""
        a, b = (smaller(larger(at, self.start), self.end) - (self.start + self.end) / 2 for at in (start, end))
        return self._below(b) - self._below(a)

    def _below(self, off: Any) -> Any:
        r = self.radius
        return (off * (r**2 - off**2) ** 0.5 + r**2 * np.arcsin(off / r)) / 2 - off * (r - self.rise)

    def points(self, sag: float) -> list[Any]:
        """Rising places."""
        return _between(self.start, self.end, _chords(self.rise, sag))


@attrs.frozen(eq=False)
class OgeeCurve:
    """Two S-curves of two equal arcs each, straight between them: it stands back by its fall in the middle. [mm]"""

    start: Any
    end: Any
    fall: Any
    run: Any

    @property
    def deepest(self) -> Any:
        """Its fall."""
        return self.fall

    @property
    def radius(self) -> Any:
        """Of both arcs, (run² + fall²) / 4 fall: each has half the run as half a chord, half the fall as its rise."""
        return (self.run**2 + self.fall**2) / (4 * self.fall)

    def depth(self, at: Any) -> Any:
        """Down over the run, level, and up again."""
        into = smaller(larger(smaller(at - self.start, self.end - at), 0.0), self.run)
        first, last = smaller(into, self.run / 2), smaller(self.run - into, self.run / 2)
        r = self.radius
        return (r - (r**2 - first**2) ** 0.5) + self.fall / 2 - (r - (r**2 - last**2) ** 0.5)

    def area(self, start: Any, end: Any) -> Any:
        """Added up between the places where its arcs meet."""
        return _added(self.depth, self._joints(), start, end)

    def _joints(self) -> tuple[Any, ...]:
        half = self.run / 2
        near = [self.start + half * n for n in range(3)]
        return (*near, *(self.end - half * n for n in (2, 1, 0)))

    def points(self, sag: float) -> list[Any]:
        """Rising places: chords along each S, one over what is straight."""
        count = 2 * _chords(self.fall / 2, sag)
        near = _between(self.start, self.start + self.run, count)
        return [*near, *_between(self.end - self.run, self.end, count)]


@attrs.frozen(eq=False)
class PointsCurve:
    """A cubic between each two points, with the slopes given there. [mm, and mm to a mm]

    points are (place, depth, slope before it, slope after it), rising, the first and the last flush.
    """

    start: Any
    end: Any
    points_: tuple[tuple[Any, Any, float, float], ...]

    @property
    def deepest(self) -> Any:
        """Of a fine row of places."""
        return self._most(self.depth(at) for at in self._fine())

    @property
    def radius(self) -> Any:
        """The smallest of its hollows, at a fine row of places: 1 / curvature where it turns back."""
        found: list[Any] = [math.inf]
        for (a, d0, _, m0), (b, d1, m1, _) in itertools.pairwise(self.points_):
            for n in range(33):
                slope, bend = _bend(larger(b - a, TOUCH), d0, d1, m0, m1, n / 32)
                found.append(np.where(bend < -1e-12, (1 + slope**2) ** 1.5 / np.maximum(-bend, 1e-12), math.inf))
        return np.min(np.broadcast_arrays(*found), axis=0)[()]

    def depth(self, at: Any) -> Any:
        """Nothing outside its points."""
        found: Any = 0.0
        for (a, d0, _, m0), (b, d1, m1, _) in itertools.pairwise(self.points_):
            t = smaller(larger((at - a) / larger(b - a, TOUCH), 0.0), 1.0)  # no curve fits into no room at all
            inside = np.where((at >= a) & (at < b), 1.0, 0.0)
            found = found + inside * _cubic(b - a, d0, d1, m0, m1, t)
        return found if isinstance(found, np.ndarray) and np.ndim(found) else float(found)

    def area(self, start: Any, end: Any) -> Any:
        """Added up between its points."""
        return _added(self.depth, tuple(p[0] for p in self.points_), start, end)

    def points(self, sag: float) -> list[Any]:
        """Rising places: so many chords to a cubic that its greatest depth is told to the sag."""
        count = 2 * _chords(max(float(np.max(np.asarray(p[1]))) for p in self.points_), sag)
        found = [self.points_[0][0]]
        for (a, *_), (b, *_) in itertools.pairwise(self.points_):
            found += _between(a, b, count)[1:]
        return found

    def _fine(self) -> list[Any]:
        return [at for (a, *_), (b, *_) in itertools.pairwise(self.points_) for at in _between(a, b, 32)]

    @staticmethod
    def _most(values: Any) -> Any:
        most: Any = 0.0
        for value in values:
            most = larger(most, value)
        return most


def _cubic(wide: Any, d0: Any, d1: Any, m0: Any, m1: Any, t: Any) -> Any:
    """Cubic with given ends and slopes (Hermite's form)."""
    return (
        (2 * t**3 - 3 * t**2 + 1) * d0
        + (t**3 - 2 * t**2 + t) * wide * m0
        + (3 * t**2 - 2 * t**3) * d1
        + (t**3 - t**2) * wide * m1
    )


def _bend(wide: Any, d0: Any, d1: Any, m0: Any, m1: Any, t: float) -> tuple[Any, Any]:
    """Slope and second derivative of that cubic."""
    slope = ((6 * t**2 - 6 * t) * (d0 - d1)) / wide + (3 * t**2 - 4 * t + 1) * m0 + (3 * t**2 - 2 * t) * m1
    bend = ((12 * t - 6) * (d0 - d1)) / wide**2 + ((6 * t - 4) * m0 + (6 * t - 2) * m1) / wide
    return slope, bend


@attrs.frozen(eq=False)
class Beside:
    """Curves one after the other along one edge: scallops, or one in each bay. [mm]"""

    each: tuple[Curve, ...]

    @property
    def start(self) -> Any:
        """Where the first begins."""
        return self.each[0].start

    @property
    def end(self) -> Any:
        """Where the last ends."""
        return self.each[-1].end

    @property
    def deepest(self) -> Any:
        """Of the deepest."""
        return PointsCurve._most(one.deepest for one in self.each)

    @property
    def radius(self) -> Any:
        """Of the tightest."""
        found = self.each[0].radius
        for one in self.each[1:]:
            found = smaller(found, one.radius)
        return found

    def depth(self, at: Any) -> Any:
        """Of the one that lies there."""
        return sum((one.depth(at) for one in self.each[1:]), self.each[0].depth(at))

    def area(self, start: Any, end: Any) -> Any:
        """Of all that lie between."""
        return sum((one.area(start, end) for one in self.each[1:]), self.each[0].area(start, end))

    def points(self, sag: float) -> list[Any]:
        """Rising places of all."""
        return list(dict.fromkeys(at for one in self.each for at in one.points(sag)))


def _added(depth: Any, joints: Sequence[Any], start: Any, end: Any) -> Any:
    """Area between two places, added up from joint to joint."""
    found: Any = 0.0
    for a, b in itertools.pairwise(joints):
        low, high = smaller(larger(a, start), end), smaller(larger(b, start), end)
        found = found + added_up(depth, low, high)
    return found
