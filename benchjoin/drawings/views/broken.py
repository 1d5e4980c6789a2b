"""Broken views: a long part with its empty stretches shortened, so that its joints are drawn large enough to read.

Where nothing happens for longer than a stretch of paper is worth, the view is broken: drawn short, with two thin
zigzag lines across. Readings stay true; only the drawing is shortened. `Broken` maps places along the part to paper.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

import attrs
import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.base import BaseGeometry

from ...drafting.primitives import Line, Point

SHORTEN_OVER = 34.0
"""A stretch that is longer than this on paper is broken. [mm]"""
SHORTENED = 22.0
"""What is drawn of it. [mm]"""
GAP = 2.0
"""Between the two zigzag lines. [mm]"""
TOOTH = 1.2


@attrs.frozen
class Broken:
    """Places along a part, their places on paper, and the middle of each break on paper. [mm]"""

    places: tuple[float, ...]
    paper: tuple[float, ...]
    breaks: tuple[float, ...]

    def at(self, place: npt.ArrayLike) -> npt.NDArray[np.float64]:
        """Where places along the part lie on paper, linear between its features."""
        return np.asarray(np.interp(np.asarray(place, dtype=float), self.places, self.paper))

    @property
    def length(self) -> float:
        """Length of the part on paper. [mm]"""
        return self.paper[-1]


def broken(features: Sequence[float], scale: float) -> Broken:
    """Places of a part's features, first 0 and last its length, drawn at a scale with long stretches shortened.

    >>> broken((0.0, 100.0, 1000.0), 0.1).paper
    (0.0, 10.0, 32.0)
    """
    paper, breaks = [0.0], []
    for low, high in pairwise(features):
        stretch = (high - low) * scale
        if stretch > SHORTEN_OVER:
            breaks.append(paper[-1] + SHORTENED / 2)
            stretch = SHORTENED
        paper.append(paper[-1] + stretch)
    return Broken(tuple(features), tuple(paper), tuple(breaks))


def lay(lines: BaseGeometry, along: Broken, scale: float) -> BaseGeometry:
    """Lines of a view (along, across) on paper, with the breaks left open."""

    def put(points: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
        return np.stack([along.at(points[:, 0]), points[:, 1] * scale], axis=-1)

    laid = shapely.transform(lines, put)
    low, high = laid.bounds[1] - 1.0 if not laid.is_empty else 0.0, laid.bounds[3] + 1.0 if not laid.is_empty else 0.0
    gaps = [shapely.box(x - GAP / 2, low, x + GAP / 2, high) for x in along.breaks]
    return laid.difference(shapely.union_all(gaps)) if gaps else laid


def break_line(start: Point, end: Point) -> Line:
    """A thin line across an end that goes on, a little past its edges, with a zigzag in the middle."""
    long = math.hypot(end[0] - start[0], end[1] - start[1])
    u = ((end[0] - start[0]) / long, (end[1] - start[1]) / long)
    middle, tooth = long / 2, min(TOOTH, long / 6)
    places = (
        (-TOOTH, 0.0),
        (middle - tooth, 0.0),
        (middle - tooth / 3, tooth),
        (middle + tooth / 3, -tooth),
        (middle + tooth, 0.0),
        (long + TOOTH, 0.0),
    )
    return Line(tuple((start[0] + a * u[0] - b * u[1], start[1] + a * u[1] + b * u[0]) for a, b in places))


def zigzags(along: Broken, low: float, high: float) -> Iterator[Line]:
    """The two thin zigzag lines of every break, a little past the edges of the view."""
    middle = (low + high) / 2
    for x in along.breaks:
        for side in (x - GAP / 2, x + GAP / 2):
            yield Line(
                (
                    (side, low - TOOTH),
                    (side, middle - TOOTH),
                    (side - TOOTH / 2, middle - TOOTH / 3),
                    (side + TOOTH / 2, middle + TOOTH / 3),
                    (side, middle + TOOTH),
                    (side, high + TOOTH),
                )
            )
