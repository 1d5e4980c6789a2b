"""Hatching and outlines of a region: explicit lines, clipped, the same every time.

Hatch lines are counted from the paper's origin, so that two regions that touch are hatched as one and a
region that is drawn twice is drawn alike.
"""

from __future__ import annotations

import math

import numpy as np
import numpy.typing as npt
import shapely

from ..errors import PaperError
from .primitives import Drawing, Line, Point

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
    if _is_box(polygon) and (abs(along) > 1e-9).all():
        return _across_a_box(ends, along, np.array([(x0, y0), (x1, y1)]))
    strokes = shapely.get_parts(shapely.intersection(shapely.linestrings(ends), polygon))
    kept = [s for s in strokes if s.geom_type == "LineString" and s.length >= _SHORTEST]
    return tuple(Line(tuple((x, y) for x, y in stroke.coords)) for stroke in kept)


def _is_box(polygon: shapely.Geometry) -> bool:
    """Whether a region fills the upright box round it."""
    x0, y0, x1, y1 = polygon.bounds
    whole = (x1 - x0) * (y1 - y0)
    return polygon.geom_type == "Polygon" and bool(abs(polygon.area - whole) <= 1e-9 * whole)


def _across_a_box(
    ends: npt.NDArray[np.float64], along: npt.NDArray[np.float64], box: npt.NDArray[np.float64]
) -> Drawing:
    """What lies in a box of lines that all go one way, none of them level or upright."""
    reach = np.sort((box[:, None] - ends[None, :, 0]) / along, axis=0)  # from the start of each to the box's edges
    first, last = reach[0].max(axis=1), reach[1].min(axis=1)
    shown = last - first >= _SHORTEST
    from_, to = (np.clip(ends[shown, 0] + at[shown, None] * along, *box).tolist() for at in (first, last))
    return tuple(Line((a, b)) for a, b in zip(from_, to, strict=True))


def outline(polygon: shapely.Geometry, kind: str = "visible") -> tuple[Line, ...]:
    """The rings of a region as closed lines, outer rings and holes."""
    rings = []
    for part in shapely.get_parts(polygon):
        if part.geom_type == "Polygon" and not part.is_empty:
            rings.extend([part.exterior, *part.interiors])
    return tuple(Line(_ring(ring), kind, closed=True) for ring in rings)


def _ring(ring: shapely.LinearRing) -> tuple[Point, ...]:
    return tuple((x, y) for x, y in list(ring.coords)[:-1])
