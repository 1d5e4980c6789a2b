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

from ...drafting.primitives import Drawing, Line, Text, text_box
from ...solids import Vector, along

SPACING = 1.0
"""Between lines of shade. [mm]"""
ANGLE = 120.0
"""Their slant; edges of a picture stand at 30, 90 and 150 degrees."""
FINEST = 0.4
"""Faces that come out narrower stay bright: two edges are all they have room for. [mm]"""
SHORTEST = 0.1
"""A shorter line is only a blot in a corner. [mm]"""
CLEAR = 0.5
"""Of shade round words. [mm]"""
LIGHT: Vector = (0.5, -0.7, 0.8)
"""Where the light comes from: the right, the front, above."""


def in_shade(away: Vector) -> bool:
    """Whether a face that looks at an eye, whose way of looking is given, gets no light.

    >>> from .view import EYES
    >>> [in_shade(EYES[name].frame.w) for name in ("above", "front", "left")]
    [False, False, True]
    """
    return along(LIGHT, away) > 0


def shaded(regions: npt.NDArray[np.object_], scale: float) -> Iterator[Line]:
    """Lines of shade on regions of a picture, full size, drawn at a scale."""
    if not len(regions):
        return
    scaled = shapely.transform(regions, lambda at: at * scale)
    wide = 2 * shapely.area(scaled) / np.maximum(shapely.length(scaled), 1e-9)
    for start, end in _across(shapely.get_parts(scaled[wide >= FINEST])).tolist():
        yield Line((tuple(start), tuple(end)), "shade")


def bare(drawing: Drawing, words: Sequence[Text]) -> Drawing:
    """A picture with its shade taken off round words that stand on it."""
    if not words:
        return drawing
    clear = shapely.union_all([text_box(text).buffer(CLEAR, join_style="mitre") for text in words])
    lines = [item for item in drawing if isinstance(item, Line) and item.kind == "shade"]
    left = shapely.difference(shapely.linestrings([line.points for line in lines]), clear) if lines else []
    cut = [
        Line(tuple(map(tuple, shapely.get_coordinates(part).tolist())), "shade")
        for part in shapely.get_parts(left)
        if part.length > SHORTEST
    ]
    return (*cut, *(item for item in drawing if not (isinstance(item, Line) and item.kind == "shade")))


def _across(regions: npt.NDArray[np.object_]) -> npt.NDArray[np.float64]:
    """Ends of the lines of shade inside each region, shape (n, 2, 2), counted from the paper's origin. [mm]

    Every edge is met by the lines between its two ends; along each line of a region, crossings go in and out by turns.
    """
    way = np.array([np.cos(np.radians(ANGLE)), np.sin(np.radians(ANGLE))])
    square = np.array([-way[1], way[0]])
    rings, region = shapely.get_rings(regions, return_index=True)
    points, ring = shapely.get_coordinates(rings, return_index=True)
    same = ring[1:] == ring[:-1]
    u, v = points @ way, points @ square / SPACING
    (u0, u1), (v0, v1) = ((x[:-1][same], x[1:][same]) for x in (u, v))
    owner = region[ring[:-1][same]]
    first, last = np.ceil(np.minimum(v0, v1)), np.ceil(np.maximum(v0, v1)) - 1
    counts = np.maximum(last - first + 1, 0).astype(int)
    edge = np.repeat(np.arange(len(counts)), counts)
    rank = np.arange(len(edge)) - np.repeat(np.cumsum(counts) - counts, counts) + first[edge]
    at = u0[edge] + (rank - v0[edge]) / (v1[edge] - v0[edge]) * (u1[edge] - u0[edge])
    order = np.lexsort((at, rank, owner[edge]))
    places = at[order][:, None] * way + (rank[order] * SPACING)[:, None] * square
    lines: npt.NDArray[np.float64] = places.reshape(-1, 2, 2)
    kept: npt.NDArray[np.float64] = lines[np.hypot(*(lines[:, 1] - lines[:, 0]).T) > SHORTEST]
    return kept
