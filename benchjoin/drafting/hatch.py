"""Hatching and outlines of a region: explicit lines, clipped, the same every time.

Hatch lines are counted from the paper's origin, so that two regions that touch are hatched as one and a
region that is drawn twice is drawn alike.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np
import shapely

from ..errors import PaperError
from .primitives import Drawing, Line, Point

WASTE_ANGLE = 120.0
"""Waste slants the other way than cut sections, and steeper. [degrees]"""
_STITCH, _SKIP = 2.0, 1.0  # of a stroke of waste and of the gap after it, in spacings
_SHORTEST = 0.05  # mm; a shorter stroke is only a blot in a corner


def hatch(polygon: shapely.Geometry, spacing: float = 2.0, angle: float = 45.0, *, start: float = 0.0) -> Drawing:
    """Thin parallel lines across a region.

    Parameters
    ----------
    polygon : shapely Polygon or MultiPolygon
        The region, on paper. [mm]
    spacing : float
        Distance between lines, square to them. [mm]
    angle : float
        Direction of the lines, counter-clockwise from the right. [degrees]
    start : float
        How far from the paper's origin one of the lines lies, square to them. [mm]
    """
    if not spacing > 0 or not math.isfinite(spacing + angle + start):
        raise PaperError(f"Hatching needs a spacing above nothing and an angle, not {spacing!r} and {angle!r}.")
    if polygon.is_empty:
        return ()
    along = np.array([math.cos(math.radians(angle)), math.sin(math.radians(angle))])
    across = np.array([-along[1], along[0]])
    x0, y0, x1, y1 = polygon.bounds
    corners = np.array([(x0, y0), (x1, y0), (x1, y1), (x0, y1)])
    u, v = corners @ along, corners @ across
    number = np.arange(math.ceil((v.min() - start) / spacing), math.floor((v.max() - start) / spacing) + 1)
    feet = (start + number[:, None] * spacing) * across
    ends = np.stack([feet + (u.min() - 1) * along, feet + (u.max() + 1) * along], axis=1)
    strokes = shapely.get_parts(shapely.intersection(shapely.linestrings(ends), polygon))
    kept = [s for s in strokes if s.geom_type == "LineString" and s.length >= _SHORTEST]
    return tuple(Line(tuple((x, y) for x, y in stroke.coords)) for stroke in kept)


def waste(polygon: shapely.Geometry, spacing: float = 2.0) -> Drawing:
    """Short steep strokes in ranks, each rank set off by half: wood that is cut out, told from a section in black only.

    Where touching regions are both waste, their strokes run on.
    """
    lines = hatch(polygon, spacing, WASTE_ANGLE)
    return tuple(stitch for line in lines if isinstance(line, Line) for stitch in _stitches(line, spacing))


def _stitches(line: Line, spacing: float) -> Iterator[Line]:
    """A hatch line in strokes; where they begin is counted from the paper's origin, set off on every other line."""
    along = (math.cos(math.radians(WASTE_ANGLE)), math.sin(math.radians(WASTE_ANGLE)))
    (x0, y0), (x1, y1) = line.points[0], line.points[-1]
    start, end = sorted((x0 * along[0] + y0 * along[1], x1 * along[0] + y1 * along[1]))
    across = x0 * -along[1] + y0 * along[0]
    pitch = (_STITCH + _SKIP) * spacing
    at = math.floor(start / pitch) * pitch + (round(across / spacing) % 2) * pitch / 2 - pitch
    while at < end:
        low, high = max(at, start), min(at + _STITCH * spacing, end)
        if high - low >= _SHORTEST:
            foot = (-along[1] * across, along[0] * across)
            yield Line(tuple((foot[0] + along[0] * u, foot[1] + along[1] * u) for u in (low, high)))
        at += pitch


def outline(polygon: shapely.Geometry, kind: str = "visible") -> Drawing:
    """The rings of a region as closed lines, outer rings and holes."""
    rings = []
    for part in shapely.get_parts(polygon):
        if part.geom_type == "Polygon" and not part.is_empty:
            rings.extend([part.exterior, *part.interiors])
    return tuple(Line(_ring(ring), kind, closed=True) for ring in rings)


def _ring(ring: shapely.LinearRing) -> tuple[Point, ...]:
    return tuple((x, y) for x, y in list(ring.coords)[:-1])
