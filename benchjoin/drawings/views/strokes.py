"""Lines of a view at a scale: wide where an edge is seen, dashed where a joint lies behind, none that cannot be read.

Wide lines that lie so close that they would run together take a thinner group of lines for the whole view, and where
the finest is still too wide, the shorter of two is thin. Dashes are shown where there are two of them and a gap.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from operator import itemgetter

import numpy as np
import shapely
from shapely import get_coordinates, get_parts, length
from shapely.geometry.base import BaseGeometry

from ...drafting.hatch import outline
from ...drafting.linework import Linework
from ...drafting.primitives import Line
from .parallel import close
from .view import View

_RUN = 0.5
"""Lines beside each other for no longer do not run together. [mm on paper]"""


def strokes(lines: BaseGeometry, kind: str, scale: float) -> Iterator[Line]:
    """Lines of a view, of one kind."""
    each = get_parts(lines)
    points, owners = get_coordinates(each[length(each) > 0], return_index=True)
    for _, own in groupby(zip(owners.tolist(), (points * scale).tolist(), strict=True), key=itemgetter(0)):
        yield Line(tuple((x, y) for _, (x, y) in own), kind)


def drawn(look: View, scale: float, linework: Linework, *, cut: Sequence[BaseGeometry] = ()) -> Iterator[Line]:
    """All lines of a view with a group of lines; cut are faces of wood that is cut, full size.

    These are outlined as wide as what is seen, and nothing is dashed in them.
    """
    edges = [line for lines in (look.visible, *(face.boundary for face in cut)) for line in get_parts(lines)]
    thin = _crowded(shapely.multilinestrings(edges), scale, linework)
    yield from _wide(look.visible, thin, scale, "visible")
    yield from _thin(thin, scale)
    for face in cut:
        if thin is None or not face.boundary.intersects(thin):
            yield from outline(shapely.transform(face, lambda points: points * scale), "cut")
        else:
            yield from _wide(face.boundary, thin, scale, "cut")
    yield from dashed(look.hidden.difference(shapely.union_all(cut)) if cut else look.hidden, scale, linework)


def group(look: View, scale: float, house: Linework) -> Linework:
    """The group of lines in which a view at a scale is drawn, so that its wide lines stand apart."""
    return house.fitted(look.apart * scale)


def solid(lines: BaseGeometry, scale: float, linework: Linework) -> Iterator[Line]:
    """Lines that are seen; the shorter of two that would run together is thin."""
    thin = _crowded(lines, scale, linework)
    yield from _wide(lines, thin, scale, "visible")
    yield from _thin(thin, scale)


def _crowded(lines: BaseGeometry, scale: float, linework: Linework) -> BaseGeometry | None:
    """Lines that give way to longer ones, full size, since wide ones would run together; None where all stand apart."""
    return close(lines, 2 * linework.wide / scale, _RUN / scale)


def _wide(lines: BaseGeometry, thin: BaseGeometry | None, scale: float, kind: str) -> Iterator[Line]:
    """Lines of a wide kind, without those that give way."""
    if thin is not None:
        lines = shapely.line_merge(lines.difference(thin.buffer(1e-3 / scale, quad_segs=1)))
    yield from strokes(lines, kind, scale)


def _thin(thin: BaseGeometry | None, scale: float) -> Iterator[Line]:
    if thin is not None:
        yield from strokes(shapely.line_merge(thin), "thin", scale)


def dashed(lines: BaseGeometry, scale: float, linework: Linework) -> Iterator[Line]:
    """Lines that lie behind, in dashes that suit the shortest of them, without what is too short for any."""
    each = get_parts(lines)
    runs = np.array([_longest(line) for line in each]) * scale
    shown = runs >= linework.readable("hidden short") - 1e-9
    if shown.any():
        fits = runs[shown].min() >= linework.readable("hidden") - 1e-9
        yield from strokes(shapely.multilinestrings(each[shown]), "hidden" if fits else "hidden short", scale)


def _longest(line: BaseGeometry) -> float:
    """The longest straight stretch of a line: there its dashes are told. [mm]"""
    points = get_coordinates(line)
    return float(np.hypot(*np.diff(points, axis=0).T).max(initial=0.0))
