"""Faces: the sides of one part that look at an eye, each with how far it is and its region on the page.

A straight part shows slabs of wood, one behind the other. Of a shaped edge one sees the curve itself from the side, and
along the edge a row of narrow bits that together are one surface, with no line between them.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator

import attrs
import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.base import BaseGeometry

from ...layout.parts import Part
from ...lengths import TOUCH
from ...outlines import SAG
from ...solids import Box, Placement, along, boxes, less, slabs


@attrs.frozen
class Face:
    """A face of a part that looks at the eye: its distance and its region on the page, in mm at full size.

    A bit of a shaped edge belongs to a surface and is tilted: its distance is that of its middle, and grows by so much
    along the page and up it.
    """

    part: str
    distance: float
    region: BaseGeometry = attrs.field(eq=False)
    surface: str = ""
    tilt: tuple[float, float] = (0.0, 0.0)


def faces_of(part: Part, frame: Placement) -> Iterable[Face]:
    """The faces of one part that look at the eye whose page is a frame, the nearest first."""
    flat = part.outline.plain or abs(along(frame.w, part.placement.w)) > 0.5
    return _slabs(part, frame) if flat else _bits(part, frame)


def _slabs(part: Part, frame: Placement) -> Iterator[Face]:
    """Wood that has none of its own right before it."""
    blank = frame.local(part.blank)
    near, far = blank.low[2], blank.high[2]
    cuts = [frame.local(cut.box).shifted((0.0, 0.0, -near)) for cut in part.cuts]
    before: BaseGeometry = shapely.Polygon()
    for slab in slabs(_outline(part, frame), far - near, cuts):
        region = less(slab.region, before)
        if region.area > TOUCH:
            yield Face(part.name, near + slab.low, region)
        before = slab.region


def _outline(part: Part, frame: Placement) -> BaseGeometry:
    """The outline of a part on the page of an eye; of a straight one from whichever side."""
    if part.outline.plain:
        blank = frame.local(part.blank)
        return shapely.box(*blank.low[:2], *blank.high[:2])
    return on_page(part.outline.polygon, part, frame)


def on_page(region: BaseGeometry, part: Part, frame: Placement) -> BaseGeometry:
    """A region of a part's own length × width plane on the page of an eye that looks at it."""
    place, page = part.placement, np.array([frame.u, frame.v]).T

    def put(points: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
        world = np.asarray(place.origin) + points[:, :1] * np.asarray(place.u) + points[:, 1:] * np.asarray(place.v)
        return np.asarray(world @ page)

    return shapely.normalize(shapely.transform(region, put))


@attrs.frozen
class _Cell:
    """Wood between two places along a part: from and to, its low and high edge at both, near and far. [mm]

    across is from where to where it would go if no edge were shaped; first, whether a box of wood begins with it.
    """

    start: float
    end: float
    low: tuple[float, float]
    high: tuple[float, float]
    near: float
    far: float
    across: tuple[float, float]
    first: bool

    @property
    def box(self) -> Box:
        """The box that holds it."""
        return Box((self.start, min(self.low), self.near), (self.end, max(self.high), self.far))


def _cells(part: Part) -> Iterator[_Cell]:
    """What is left of a part, in columns from place to place of its shaped edges."""
    outline = part.outline
    places = outline.places(SAG, outline.low, outline.high)
    for box in boxes(Box((0.0, 0.0, 0.0), part.size), part.local_cuts):
        (u0, v0, w0), (u1, v1, w1) = box.low, box.high
        ends = [u0, *(u for u in places if u0 + TOUCH < u < u1 - TOUCH), u1]
        for a, b in itertools.pairwise(ends):
            low = (max(v0, outline.low_at(a)), max(v0, outline.low_at(b)))
            high = (min(v1, outline.high_at(a)), min(v1, outline.high_at(b)))
            if high[0] - low[0] > TOUCH or high[1] - low[1] > TOUCH:
                yield _Cell(a, b, low, high, w0, w1, (v0, v1), first=a == u0)


def _bits(part: Part, frame: Placement) -> Iterator[Face]:
    """The faces of a shaped part as one sees them along its length or across it."""
    endwise = abs(along(frame.w, part.placement.u)) > 0.5
    found = [(_endwise if endwise else _edgewise)(part, cell, frame) for cell in _cells(part)]
    before: BaseGeometry = shapely.Polygon()
    for face in sorted(_whole(found), key=lambda face: face.distance):
        region = less(face.region, before)
        if region.area > TOUCH:
            yield attrs.evolve(face, region=region)
            before = before.union(face.region)


def _whole(bits: Iterable[Face]) -> Iterator[Face]:
    """Bits that lie in one plane as one face; those of a curve stay as they are."""
    flat: dict[float, list[Face]] = {}
    for face in bits:
        if face.surface:
            yield face
        else:
            flat.setdefault(round(face.distance, 6), []).append(face)
    for own in flat.values():
        region = shapely.union_all([face.region for face in own])
        yield attrs.evolve(own[0], region=shapely.simplify(region, 0.0))


def _endwise(part: Part, cell: _Cell, frame: Placement) -> Face:
    """A column seen along the part: its end, or what of the curve rises behind the one before."""
    laid = frame.local(part.placement.world(cell.box))
    surface = "" if _is_end(part, cell, frame) else "edge"
    return Face(part.name, laid.low[2], shapely.box(*laid.low[:2], *laid.high[:2]), surface)


def _is_end(part: Part, cell: _Cell, frame: Placement) -> bool:
    """Whether a column begins a box of wood, seen from the datum end; from the other one the last of each ends it."""
    return cell.first if along(frame.w, part.placement.u) > 0 else cell.end >= part.length - TOUCH


def _edgewise(part: Part, cell: _Cell, frame: Placement) -> Face:
    """A column seen across the part: a bit of the edge that looks at the eye."""
    place = part.placement
    edge, straight = (cell.low, cell.across[0]) if along(frame.w, place.v) > 0 else (cell.high, cell.across[1])
    ends = zip((cell.start, cell.end), edge, strict=True)
    (x0, y0, z0), (x1, y1, z1) = (frame.local(Box(p, p)).low for p in (place.point((u, v, 0.0)) for u, v in ends))
    laid = frame.local(place.world(cell.box))
    tilt = ((z1 - z0) / (x1 - x0), 0.0) if abs(x1 - x0) > abs(y1 - y0) else (0.0, (z1 - z0) / (y1 - y0))
    curved = any(abs(at - straight) > TOUCH for at in edge)
    region = shapely.box(*laid.low[:2], *laid.high[:2])
    return Face(part.name, (z0 + z1) / 2, region, "edge" if curved else "", tilt if curved else (0.0, 0.0))
