"""Packing figures onto pages: in rows from the top left, each into the first row that takes it.

>>> from ..primitives import Line
>>> box = Figure(name="box", drawing=(Line(((0, 0), (40, 10))),))
>>> [[figure.bounds[:2] for figure in page] for page in pack([box] * 3, (0, 0, 100, 12), 5)]
[[(0.0, 2.0), (45.0, 2.0)], [(0.0, 2.0)]]
"""

from __future__ import annotations

from collections.abc import Iterable

import attrs

from ...errors import PaperError
from ..primitives import Box
from .figure import Figure


@attrs.define
class _Row:
    """A row on a page: its top, its height, and how far to the right it is filled. [mm]"""

    page: int
    top: float
    height: float
    filled: float


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
    rows: list[_Row] = []
    pages: list[list[Placed]] = []
    for figure in figures:
        (left, _, _, top), (wide, high) = figure.bounds, figure.size
        if wide > room[2] - room[0] + 1e-6 or high > room[3] - room[1] + 1e-6:
            raise PaperError(f"A drawing of {wide:.1f} × {high:.1f} mm does not fit its page. Take larger paper.")
        row = next((r for r in rows if r.height >= high - 1e-6 and r.filled + wide <= room[2] + 1e-6), None)
        row = row or _new_row(rows, room, high, gap)
        if row.page == len(pages):
            pages.append([])
        pages[row.page].append((figure, row.filled - left, row.top - top))
        row.filled += wide + gap
    return pages


def _new_row(rows: list[_Row], room: Box, high: float, gap: float) -> _Row:
    """A row below the last one of the first page that has the height left, or on a new page."""
    pages = 1 + max((row.page for row in rows), default=-1)
    for page in range(pages):
        low = min(row.top - row.height for row in rows if row.page == page) - gap
        if low - high >= room[1] - 1e-6:
            rows.append(_Row(page, low, high, room[0]))
            return rows[-1]
    rows.append(_Row(pages, room[3], high, room[0]))
    return rows[-1]
