"""Outlines, boxes and slabs: the wood that is left.

A part is an outline in its length × width plane, pushed through its thickness, less boxes. It has a frame of its
own: u runs along its length from the datum end, v across its width, w through its thickness from the marked face
inwards; seen with the marked face up and u to the right, v points up the page. Whatever is drawn or weighed reads
one thing: its slabs, intervals of thickness with a polygon each.

Nothing here knows what a leg is; layout/ hands in boxes and outlines, drawings/ reads slabs.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Sequence
from functools import cached_property
from typing import TYPE_CHECKING

import attrs

from .lengths import TOUCH, distinct
from .runs import larger, smaller

if TYPE_CHECKING:
    from shapely.geometry import Polygon
    from shapely.geometry.base import BaseGeometry

Vector = tuple[float, float, float]


@attrs.frozen(slots=False)
class Box:
    """An axis-aligned box from its low corner to its high corner. [mm]"""

    low: Vector
    high: Vector

    def size(self) -> Vector:
        """Extent along each axis. [mm]"""
        return vector(b - a for a, b in zip(self.low, self.high, strict=True))

    def volume(self) -> float:
        """Volume, zero for a box without one. [mm³]"""
        x, y, z = vector(larger(s, 0.0) for s in self.size())
        return x * y * z

    def ending(self, axis: int, *, low: float | None = None, high: float | None = None) -> Box:
        """The box with another low or high end along one axis."""
        a, b = list(self.low), list(self.high)
        a[axis] = a[axis] if low is None else low
        b[axis] = b[axis] if high is None else high
        return Box((a[0], a[1], a[2]), (b[0], b[1], b[2]))

    def within(self, axis: int, low: float, high: float) -> Box:
        """The box cut down to an interval of one axis."""
        return self.ending(axis, low=larger(self.low[axis], low), high=smaller(self.high[axis], high))

    def mirrored(self, axis: int, size: float) -> Box:
        """The box in something that is turned over: from 0 to a size along an axis, from the other end."""
        return self.ending(axis, low=size - self.high[axis], high=size - self.low[axis])

    def shifted(self, by: Vector) -> Box:
        """The box somewhere else."""
        return Box(
            vector(a + b for a, b in zip(self.low, by, strict=True)),
            vector(a + b for a, b in zip(self.high, by, strict=True)),
        )

    def inside(self, size: Vector) -> Box:
        """The box cut down to what lies between nought and a size along each axis."""
        return Box(
            vector(larger(a, 0.0) for a in self.low),
            vector(smaller(b, most) for b, most in zip(self.high, size, strict=True)),
        )

    def meet(self, other: Box) -> Box | None:
        """The box that two boxes share, or None where they share no volume (touching is not sharing)."""
        lows, highs = list(self.low), list(self.high)
        arrays = []
        for axis, (a, b, c, d) in enumerate(zip(self.low, self.high, other.low, other.high, strict=True)):
            if type(a) is type(b) is type(c) is type(d) is float:
                lows[axis], highs[axis] = (a if a > c else c), (b if b < d else d)
                if not highs[axis] - lows[axis] > TOUCH:
                    return None
            else:
                arrays.append(axis)
        for axis in arrays:  # last: where plain numbers do not meet already, variants need not be asked
            lows[axis] = low = larger(self.low[axis], other.low[axis])
            highs[axis] = high = smaller(self.high[axis], other.high[axis])
            if not high - low > TOUCH:
                return None
        return Box(vector(lows), vector(highs))


def vector(values: Iterable[float]) -> Vector:
    """Three numbers as a point or a way."""
    x, y, z = values
    return (x, y, z)


def along(point: Sequence[float], way: Vector) -> float:
    """How far a point lies along one of the world's axes, or against it. [mm]"""
    return next(a * b for a, b in zip(point, way, strict=True) if b)


def cross(a: Vector, b: Vector) -> Vector:
    """Vector product."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


@attrs.frozen(slots=False)
class Placement:
    """Where a part's own frame stands in the world: origin, and the world directions of u, v and w.

    Directions are unit vectors along the world's axes. u × v points out of the marked face, so w = −(u × v).
    """

    origin: Vector
    u: Vector
    v: Vector
    w: Vector

    def world(self, box: Box) -> Box:
        """A box of the part in the world's axes."""
        corners = [self.point(corner) for corner in (box.low, box.high)]
        return Box(vector(map(smaller, *corners)), vector(map(larger, *corners)))

    def local(self, box: Box) -> Box:
        """A box of the world in the part's own frame."""
        lows, highs, origin = box.low, box.high, self.origin
        (a, b), (c, d), (e, f) = (
            (lows[n] - origin[n], highs[n] - origin[n]) if way > 0 else (origin[n] - highs[n], origin[n] - lows[n])
            for n, way in self._axes
        )
        return Box((a, c, e), (b, d, f))

    @cached_property
    def _axes(self) -> tuple[tuple[int, float], ...]:
        """For u, v and w: the axis of the world that it runs along, and whether with it or against it."""
        return tuple(next((n, way) for n, way in enumerate(axis) if way) for axis in (self.u, self.v, self.w))

    def point(self, p: Vector) -> Vector:
        """A point of the part in the world's axes."""
        u, v, w = p
        return vector(o + u * a + v * b + w * c for o, a, b, c in zip(self.origin, self.u, self.v, self.w, strict=True))


def placement(world: Box, *, along: Vector, out: Vector) -> Placement:
    """Frame of a blank that fills a world box: u along *along*, marked face looking *out*.

    >>> place = placement(Box((0, 0, 0), (45, 20, 900)), along=(0, 0, 1), out=(0, -1, 0))
    >>> place.origin, place.v
    ((45, 0, 0), (-1, 0, 0))
    """
    v = cross(out, along)
    w = vector(-c for c in out)
    origin = vector(
        low if a + b + c > 0 else high for low, high, a, b, c in zip(world.low, world.high, along, v, w, strict=True)
    )
    return Placement(origin, along, v, w)


@attrs.frozen(slots=False)
class Slab:
    """An interval of thickness and the polygon of wood in it."""

    low: float
    high: float
    region: BaseGeometry = attrs.field(eq=attrs.cmp_using(eq=lambda a, b: a.equals_exact(b, 0.0)), hash=False)


def slabs(outline: Polygon, thickness: float, cuts: Sequence[Box]) -> tuple[Slab, ...]:
    """Slabs of an outline pushed through a thickness, less boxes, from the marked face inwards.

    Parameters
    ----------
    outline : Polygon
        In the length × width plane. [mm]
    thickness : float
        [mm]
    cuts : sequence of Box
        Boxes in the part's own frame; what lies outside the blank takes nothing.

    Examples
    --------
    >>> import shapely
    >>> half = slabs(shapely.box(0, 0, 100, 40), 20, [Box((0, 0, 10), (30, 40, 20))])
    >>> [(slab.low, slab.high, slab.region.area) for slab in half]
    [(0.0, 10.0, 4000.0), (10.0, 20.0, 2800.0)]
    """
    import shapely  # only who asks for polygons waits for it

    faces = {0.0, float(thickness)}
    faces.update(float(w) for cut in cuts for w in (cut.low[2], cut.high[2]) if TOUCH < w < thickness - TOUCH)
    levels = distinct(faces)
    found = []
    for low, high in itertools.pairwise(levels):
        middle = (low + high) / 2
        holes = [shapely.box(*c.low[:2], *c.high[:2]) for c in cuts if c.low[2] < middle < c.high[2]]
        found.append(Slab(low, high, less(outline, shapely.union_all(holes)) if holes else outline))
    return tuple(found)


def less(region: BaseGeometry, other: BaseGeometry) -> BaseGeometry:
    """A region less another, areas alone; on a fine grid where edges lie so close that rounding crosses them."""
    import shapely

    try:
        return areas(region.difference(other))
    except shapely.errors.GEOSException:
        sound = (own if own.is_valid else own.buffer(0.0) for own in (region, other))
        return areas(shapely.difference(*sound, grid_size=TOUCH))


def areas(region: BaseGeometry) -> BaseGeometry:
    """What a region has of areas: lines and points, where edges only touch, are no wood."""
    return region if region.geom_type in ("Polygon", "MultiPolygon") else region.buffer(0.0)


def volume(parts: Iterable[Slab]) -> float:
    """Volume of slabs. [mm³]"""
    return float(sum((slab.high - slab.low) * slab.region.area for slab in parts))


def boxes(box: Box, cuts: Sequence[Box]) -> tuple[Box, ...]:
    """Boxes that touch and do not overlap and together are a box less its cuts.

    The box is split where cuts begin and end, first along its longest axis, and neighbours that are alike are kept
    as one.

    >>> [piece.size() for piece in boxes(Box((0, 0, 0), (9, 2, 2)), [Box((3, 0, 1), (6, 2, 2))])]
    [(3.0, 2.0, 2.0), (3.0, 2.0, 1.0), (3.0, 2.0, 2.0)]
    """
    inside = [met for met in map(box.meet, cuts) if met is not None]
    return tuple(_split(box, inside, sorted(range(3), key=lambda axis: -box.size()[axis])))


def _split(box: Box, cuts: Sequence[Box], axes: Sequence[int]) -> Iterable[Box]:
    if not cuts:
        yield Box(vector(x + 0.0 for x in box.low), vector(x + 0.0 for x in box.high))
    elif axes:
        axis, rest = axes[0], axes[1:]
        ends = distinct([box.low[axis], box.high[axis], *(e for c in cuts for e in (c.low[axis], c.high[axis]))])
        waiting, through = sorted(cuts, key=lambda c: c.low[axis], reverse=True), list[Box]()
        for low, high in itertools.pairwise(ends):
            middle = (low + high) / 2
            while waiting and waiting[-1].low[axis] < middle:
                through.append(waiting.pop())
            through = [c for c in through if c.high[axis] > middle]
            yield from _split(box.within(axis, low, high), through, rest)


def left_over(box: Box, cuts: Iterable[Box]) -> float:
    """Volume of a box that none of the cuts takes. [mm³]

    >>> left_over(Box((0, 0, 0), (2, 2, 2)), [Box((0, 0, 0), (1, 1, 1)), Box((-9, -9, 1), (9, 9, 9))])
    3.0
    """
    return sum(piece.volume() for piece in boxes(box, list(cuts)))
