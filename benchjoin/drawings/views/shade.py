"""Light and shade on pictures: fine parallel lines on the faces that look away from the light.

The light comes from above and from the front right, so tops and fronts are bright and what looks to the left lies in
shade. A black-only printer holds it: lines of the finest width, so far apart that they read as a tint, and slanting as
no edge of the picture does.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
import numpy.typing as npt
import shapely

from ...drafting.primitives import Line
from ...solids import Vector, along

SPACING = 1.0
"""Between lines of shade. [mm]"""
ANGLE = 120.0
"""Their slant; edges of a picture stand at 30, 90 and 150 degrees."""
FINEST = 0.4
"""Faces that come out narrower stay bright: two edges are all they have room for. [mm]"""
LIGHT: Vector = (0.5, -0.7, 0.8)
"""Where the light comes from: the right, the front, above."""


def in_shade(away: Vector) -> bool:
    """Whether a face that looks at an eye, whose way of looking is given, gets no light.

    >>> [in_shade(EYES[name].frame.w) for name in ("above", "front", "left")]
    [False, False, True]
    """
    return along(LIGHT, away) > 0


def shaded(regions: Sequence[shapely.Geometry], scale: float) -> Iterator[Line]:
    """Lines of shade on regions of a picture, full size, drawn at a scale."""
    if not len(regions):
        return
    scaled = shapely.transform(np.asarray(regions, dtype=object), lambda at: at * scale)
    wide = 2 * shapely.area(scaled) / np.maximum(shapely.length(scaled), 1e-9)
    each = shapely.get_parts(scaled[wide >= FINEST])
    for start, end in _across(each).tolist():
        yield Line((tuple(start), tuple(end)), "shade")


def _across(regions: npt.NDArray[np.object_]) -> npt.NDArray[np.float64]:
    """Ends of the lines that cross each region, shape (n, 2, 2); they are counted from the paper's origin. [mm]"""
    way = np.array([np.cos(np.radians(ANGLE)), np.sin(np.radians(ANGLE))])
    square = np.array([-way[1], way[0]])
    points, owner = shapely.get_coordinates(regions, return_index=True)
    if not len(points):
        return np.empty((0, 2, 2))
    u, v = points @ way, points @ square
    first = np.flatnonzero(np.r_[True, owner[1:] != owner[:-1]])
    ends = [f.reduceat(x, first) for f, x in ((np.minimum, u), (np.maximum, u), (np.minimum, v), (np.maximum, v))]
    low, high = np.ceil(ends[2] / SPACING).astype(int), np.floor(ends[3] / SPACING).astype(int)
    counts = np.maximum(high - low + 1, 0)
    which = np.repeat(np.arange(len(regions)), counts)
    rank = np.arange(counts.sum()) - np.repeat(np.cumsum(counts) - counts, counts) + low[which]
    feet = (rank * SPACING)[:, None] * square
    starts, stops = (feet + (ends[n][which] + more)[:, None] * way for n, more in ((0, -1.0), (1, 1.0)))
    lines = shapely.linestrings(np.stack([starts, stops], axis=1))
    met = shapely.get_parts(shapely.intersection(lines, regions[which]))
    met = met[(shapely.get_type_id(met) == 1) & (shapely.length(met) > 0.1)]
    return shapely.get_coordinates(met).reshape(-1, 2, 2)
