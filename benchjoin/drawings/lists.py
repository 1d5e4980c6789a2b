"""Lists on paper: a Table as ruled rows under its headings, over as many sheets as it takes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs

from ..drafting.lettering import text_width, wrap
from ..drafting.primitives import Box, Drawing, Line, Primitive, Text
from ..drafting.sheet import Sheet
from ..errors import PaperError
from ..layout.layout import Layout
from ..tables import Table
from ..trade.paper import landscape, paper_size
from .page import PLAIN, House, block, default_paper, room

TEXT = 2.5
PITCH = 4.0
PAD = 1.2
INSET = 5.0


@attrs.frozen
class _Row:
    """A row set in lines: for each column the lines of its cell, and the height of the whole. [mm]"""

    cells: tuple[tuple[str, ...], ...]
    height: float
    bold: bool = False


def list_sheets(
    layout: Layout, table: Table, *, name: str, kind: str, paper: str | None = None, house: House | None = None
) -> tuple[Sheet, ...]:
    """Sheets of a table, lying, as many as it takes.

    Raises
    ------
    PaperError
        If a row is taller than the paper.
    """
    size = paper or default_paper(layout.frame)
    width, height = landscape(paper_size(size))
    words = block(layout.frame, house or PLAIN, kind=kind, piece=table.title, scale="")
    x0, y0, x1, y1 = room(width, height, words)
    inside = (x0 + INSET, y0 + INSET, x1 - INSET, y1 - INSET)
    pages = list(_pages(table, inside))
    return tuple(
        Sheet(
            name=name if len(pages) == 1 else f"{name}-{number}",
            title=kind if len(pages) == 1 else f"{kind} {number}",
            width=width,
            height=height,
            drawing=drawing,
            block=words,
            scale="",
        )
        for number, drawing in enumerate(pages, 1)
    )


def _pages(table: Table, inside: Box) -> Iterator[Drawing]:
    widths = _widths(table, inside[2] - inside[0])
    head = _set(table.columns, widths, bold=True)
    rows = [_set(row, widths) for row in table.rows]
    notes = [line for note in table.notes for line in wrap(note, TEXT, inside[2] - inside[0])]
    below = len(notes) * PITCH + (PITCH if notes else 0.0)
    while True:
        page, used = [head], head.height
        while rows and used + rows[0].height <= inside[3] - inside[1] - below:
            used += rows[0].height
            page.append(rows.pop(0))
        if rows and len(page) == 1:
            raise PaperError(f"A row of {table.title!r} does not fit the paper. Take larger paper.")
        yield tuple(_drawn(page, widths, table.aligned(), inside, () if rows else notes))
        if not rows:
            return


def _widths(table: Table, room: float) -> list[float]:
    """Widths of the columns: what they need, the widest giving way where that is too much. [mm]"""
    cells = (table.columns, *table.rows)
    wanted = [
        max(text_width(row[i], TEXT, bold=row is table.columns) for row in cells) + 2 * PAD + 0.1
        for i in range(len(table.columns))
    ]
    while sum(wanted) > room:
        widest = max(range(len(wanted)), key=lambda i: wanted[i])
        second = max((w for i, w in enumerate(wanted) if i != widest), default=0.0)
        wanted[widest] = max(min(second, wanted[widest] * 0.95), wanted[widest] - (sum(wanted) - room))
    return wanted


def _set(row: Sequence[str], widths: Sequence[float], *, bold: bool = False) -> _Row:
    cells = tuple(
        tuple(wrap(cell, TEXT, width - 2 * PAD, bold=bold) or ("",)) for cell, width in zip(row, widths, strict=True)
    )
    return _Row(cells, max(len(cell) for cell in cells) * PITCH + 2 * PAD, bold)


def _drawn(
    rows: Sequence[_Row], widths: Sequence[float], align: str, inside: Box, notes: Sequence[str]
) -> Iterator[Primitive]:
    left, top = inside[0], inside[3]
    right = left + sum(widths)
    yield Line(((left, top), (right, top)), "visible")
    for row in rows:
        x = left
        for cell, width, side in zip(row.cells, widths, align, strict=True):
            yield from _cell(cell, x, top, width, side, bold=row.bold)
            x += width
        top -= row.height
        yield Line(((left, top), (right, top)), "visible" if row.bold else "thin")
    for number, note in enumerate(notes, 1):
        yield Text((left, top - PITCH * number - PAD), note, TEXT)


def _cell(lines: Sequence[str], x: float, top: float, width: float, side: str, *, bold: bool) -> Iterator[Text]:
    anchor, place = {"l": ("start", x + PAD), "r": ("end", x + width - PAD), "c": ("middle", x + width / 2)}[side]
    for number, line in enumerate(lines, 1):
        yield Text((place, top - PAD - PITCH * number + (PITCH - TEXT) / 2), line, TEXT, anchor, bold=bold)  # type: ignore[arg-type]
