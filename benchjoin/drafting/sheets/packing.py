"""Packing figures onto pages: each beside or below one that is placed, as far up and then as far left as it goes.

>>> from ..primitives import Line
>>> box = Figure(name="box", drawing=(Line(((0, 0), (40, 10))),))
>>> [[figure.bounds[:2] for figure in page] for page in pack([box] * 3, (0, 0, 100, 12), 5)]
[[(0.0, 2.0), (45.0, 2.0)], [(0.0, 2.0)]]
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from ...errors import PaperError
from ..primitives import Box
from .figure import Figure

HAIR = 1e-6


Placed = tuple[Figure, float, float]
"""A figure, and how far it is moved to the right and up. [mm]"""


def pack(figures: Iterable[Figure], room: Box, gap: float) -> list[list[Figure]]:
    """Figures moved to their places, page by page; errors as for `places`."""
    return [[figure.moved(dx, dy) for figure, dx, dy in page] for page in places(figures, room, gap)]


def places(figures: Iterable[Figure], room: Box, gap: float) -> list[list[Placed]]:
    """Figures with the ways to their places, page by page.

    Raises
    ------
    PaperError
        If one of them is larger than the room.
    """
    pages: list[list[Placed]] = []
    filled: list[list[Box]] = []
    for figure in figures:
        (left, _, _, top), (wide, high) = figure.bounds, figure.size
        if wide > room[2] - room[0] + HAIR or high > room[3] - room[1] + HAIR:
            raise PaperError(f"A drawing of {wide:.1f} × {high:.1f} mm does not fit its page. Take larger paper.")
        page, (x, y) = next(
            ((number, place) for number, own in enumerate(filled) for place in _places(own, wide, high, room, gap)),
            (len(pages), (room[0], room[3])),
        )
        if page == len(pages):
            pages.append([])
            filled.append([])
        pages[page].append((figure, x - left, y - top))
        filled[page].append((x, y - high, x + wide, y))
    return pages


def _places(filled: Sequence[Box], wide: float, high: float, room: Box, gap: float) -> Iterator[tuple[float, float]]:
    """Free places for the upper left corner of a figure: beside what is there, or below it, the upper ones first."""
    corners = {(x1 + gap, y1) for _, _, x1, y1 in filled} | {(x0, y0 - gap) for x0, y0, _, _ in filled}
    for x, y in sorted(corners, key=lambda at: (-at[1], at[0])):
        inside = x + wide <= room[2] + HAIR and y - high >= room[1] - HAIR
        if inside and all(
            x + wide + gap <= x0 + HAIR or x1 + gap <= x + HAIR or y - high - gap >= y1 - HAIR or y0 - gap >= y - HAIR
            for x0, y0, x1, y1 in filled
        ):
            yield x, y
