"""The key map: the wood of a set in small, the tiles that there are over it, and which of them a page is.

Where nothing is marked there is no tile, and the map shows wood alone. Edges that would run together in small are one
line, so tiles that lap over each other are drawn side by side.

>>> drawn = key_map([(0.0, 0.0, 1000.0, 80.0)], [("a1", (0.0, -10.0, 200.0, 90.0))], "a1", (40.0, 20.0))
>>> sum(isinstance(item, Fill) for item in drawn)
1
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from typing import TypeAlias

import numpy as np
import numpy.typing as npt
import shapely

from ..lettering import text_width
from ..primitives import Box, Drawing, Fill, Line, Primitive, Text, figure_middle, text_box

Numbers: TypeAlias = npt.NDArray[np.float64]
Shapes: TypeAlias = npt.NDArray[np.object_]

TEXT = 2.5
PLACES = tuple(itertools.product((0.5, 0.0, 1.0), repeat=2))
"""Where a key may stand in its tile, as shares of its room up and along: in its middle first."""
ONE_LINE = 0.8
"""Edges on the map that are closer than this are drawn as one. [mm]"""


def key_map(faces: Sequence[Box], tiles: Sequence[tuple[str, Box]], here: str, room: tuple[float, float]) -> Drawing:
    """Wood and tiles by their keys, the lower right corner of the map in (0, 0), in a room of some size. [mm]"""
    boxes = np.array([*faces, *(box for _, box in tiles)])
    (left, low), (right, high) = boxes[:, :2].min(axis=0), boxes[:, 2:].max(axis=0)
    scale = min(room[0] / (right - left), room[1] / (high - low))
    shapes = shapely.box(*((boxes - (right, low, right, low)) * scale).T)
    wood, own = _snapped(shapely.union_all(shapes[: len(faces)]), shapes[len(faces) :])
    shown = shapely.union_all([tile for (key, _), tile in zip(tiles, own, strict=True) if key == here])
    drawn: list[Primitive] = list(_beside(wood, own))
    for (key, _), tile in zip(tiles, own, strict=True):
        x0, y0, x1, y1 = tile.bounds
        corners = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
        if key == here:
            drawn.append(Fill((corners,)))
        else:
            others = [other for other in own if other is not tile]
            drawn += [Line(corners, closed=True), *_name(key, tile, others, shown)]
    return tuple(drawn)


def _snapped(wood: shapely.Geometry, tiles: Shapes) -> tuple[shapely.Geometry, Shapes]:
    """Wood and tiles with edges that are as good as one in the same place; no tile is lost by it."""
    shapes, near = np.array([wood, *tiles], dtype=object), ONE_LINE
    coords = shapely.get_coordinates(shapes)
    while True:
        moved = np.stack([_one_for_all(coords[:, axis], near) for axis in (0, 1)], axis=1)
        found = shapely.set_coordinates(shapes.copy(), moved)
        if (shapely.area(found[1:]) > 0).all():
            return shapely.make_valid(found[0]), found[1:]
        near /= 2


def _one_for_all(values: Numbers, near: float) -> Numbers:
    """Numbers, the nearest of them replaced by their mean until none are nearer to each other than so much."""
    places, which = np.unique(values, return_inverse=True)
    counts = np.ones(len(places))
    while len(places) > 1 and (gaps := np.diff(places)).min() < near:
        n = int(gaps.argmin())
        places[n] = np.average(places[n : n + 2], weights=counts[n : n + 2])
        counts[n] += counts[n + 1]
        places, counts = np.delete(places, n + 1), np.delete(counts, n + 1)
        which = np.where(which > n, which - 1, which)
    return places[which]


def _beside(wood: shapely.Geometry, tiles: Shapes) -> Iterator[Line]:
    """The outline of the wood where no tile lies."""
    left = shapely.line_merge(shapely.difference(shapely.boundary(wood), shapely.union_all(tiles)))
    for part in shapely.get_parts(left):
        if part.geom_type == "LineString":
            yield Line(tuple((x, y) for x, y in part.coords))


def _name(key: str, tile: shapely.Geometry, others: Sequence[shapely.Geometry], shown: shapely.Geometry) -> list[Text]:
    """The key in its tile, where it goes in: in its middle, or in the middle of what no other tile laps over."""
    x0, y0, x1, y1 = tile.bounds
    wide, high = text_width(key, TEXT) + 0.6, TEXT * 1.5
    if wide > x1 - x0 or high > y1 - y0:
        return []
    keep_off = [shown, *(other.boundary for other in others)]
    alone = tile.difference(shapely.union_all(others))
    places = [(x0 + wide / 2 + a * (x1 - x0 - wide), y0 + high / 2 + b * (y1 - y0 - high)) for b, a in PLACES]
    for x, y in (places[0], *((at.x, at.y) for at in [alone.centroid] if not alone.is_empty), *places[1:]):
        text = Text((x, figure_middle(y, TEXT)), key, TEXT, "middle")
        if not shapely.intersects(keep_off, text_box(text)).any():
            return [text]
    return []
