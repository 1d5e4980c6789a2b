"""Figures one below the other, from page to page; what does not end on a page goes on on the next.

A figure goes on below the one before it. It is begun where its first two stretches go on the page, a low one where all
of it does; the last two stay together. Where it goes on, its heading is drawn again.

>>> from ..primitives import Line
>>> rows = Figure(name="Rows", drawing=[Line(((0, -n), (9, -n))) for n in range(7)], breaks=(0, -2, -4, -6))
>>> [[(piece.name, piece.bounds[3]) for piece in page] for page in flow([rows], (0, 0, 10, 5), 1.0)]
[[('Rows', 5.0)], [('Rows', 4.0)]]
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import attrs

from ...errors import PaperError
from ..primitives import Box, Drawing, Line, Primitive, bounds, shift
from .figure import Figure

LOW = 50.0
"""A figure that is no higher is not broken. [mm]"""
_SLACK = 1e-6


def flow(figures: Iterable[Figure], room: Box, gap: float) -> Iterator[list[Figure]]:
    """Pages of figures at their places, the first from the top of the room, so far apart. [mm]

    Raises
    ------
    PaperError
        If a stretch of a figure is higher than the room.
    """
    page: list[Figure] = []
    y = room[3]
    for figure in figures:
        places = _places(figure)
        if page and y - _least(places) < room[1] - _SLACK:
            yield page
            page, y = [], room[3]
        start, last = 0, len(places) - 1
        while start < last:
            head = _height(figure.again) if start else 0.0
            end = _reached(places, start, y - room[1] - head)
            if end == last - 1 and end - start > 2:
                end -= 1
            if end == start:
                raise PaperError(f"A row of {figure.name!r} does not fit the paper. Take larger paper.")
            piece = _piece(figure, places, start, end)
            page.append(attrs.evolve(piece, drawing=shift(piece.drawing, room[0], y - head - places[start])))
            y -= head + places[start] - places[end]
            start = end
            if start < last:
                yield page
                page, y = [], room[3]
        y -= gap
    yield page


def _places(figure: Figure) -> tuple[float, ...]:
    return figure.breaks or (figure.bounds[3], figure.bounds[1])


def _height(drawing: Drawing) -> float:
    return bounds(drawing)[3] - bounds(drawing)[1] if drawing else 0.0


def _least(places: tuple[float, ...]) -> float:
    """Height that a figure needs to begin. [mm]"""
    whole = places[0] - places[-1]
    return whole if whole <= LOW else places[0] - places[min(2, len(places) - 1)]


def _reached(places: tuple[float, ...], start: int, height: float) -> int:
    """The last place that a height reaches down to from another place."""
    return max((n for n in range(start, len(places)) if places[start] - places[n] <= height + _SLACK), default=start)


def _piece(figure: Figure, places: tuple[float, ...], start: int, end: int) -> Figure:
    """What lies between two places of a figure, with its heading where it goes on."""
    high = places[start] if start else float("inf")
    low = places[end] if end < len(places) - 1 else -float("inf")
    heading = shift(figure.again, 0.0, places[start] + _height(figure.again)) if start else ()
    found = (_between(item, low, high) for item in figure.drawing)
    drawn = (*heading, *(item for item in found if item))
    return attrs.evolve(figure, drawing=drawn, breaks=(), again=())


def _between(item: Primitive, low: float, high: float) -> Primitive | None:
    """A primitive if it lies between two heights, a line on the lower one too; of an upright line what lies there."""
    _, foot, _, top = bounds((item,))
    if isinstance(item, Line) and top - foot > _SLACK and len(item.points) == 2:
        foot, top = max(foot, low), min(top, high)
        points = tuple((x, min(max(y, low), high)) for x, y in item.points)
        return Line(points, item.kind) if top - foot > _SLACK else None
    return item if low - _SLACK <= foot and foot < high - _SLACK else None
