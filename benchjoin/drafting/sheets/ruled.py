"""Ruled tables: a Table set in rows under its headings, cells wrapped, columns as wide as they need to be.

>>> from ...tables import Table
>>> head, rows, widths = set_table(Table("Parts", ("Part", "Make"), (("front leg", "6"),)), 100.0)
>>> head.bold, rows[0].cells
(True, (('front leg',), ('6',)))
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs

from ...tables import Table
from ..lettering import text_width, wrap
from ..primitives import Line, Point, Primitive, Text

TEXT = 2.5
PITCH = 4.2
PAD = 1.2


@attrs.frozen
class Row:
    """A row set in lines: for each column the lines of its cell, and the height of the whole. [mm]"""

    cells: tuple[tuple[str, ...], ...]
    height: float
    bold: bool = False


def set_table(table: Table, room: float) -> tuple[Row, list[Row], list[float]]:
    """Heading, rows and widths of the columns for a table that may be so wide. [mm]"""
    widths = _widths(table, room)
    return _set(table.columns, widths, bold=True), [_set(row, widths) for row in table.rows], widths


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


def _set(row: Sequence[str], widths: Sequence[float], *, bold: bool = False) -> Row:
    cells = tuple(
        tuple(wrap(cell, TEXT, width - 2 * PAD, bold=bold) or ("",)) for cell, width in zip(row, widths, strict=True)
    )
    return Row(cells, max(len(cell) for cell in cells) * PITCH + 2 * PAD, bold)


def draw_rows(rows: Sequence[Row], widths: Sequence[float], align: str, at: Point) -> Iterator[Primitive]:
    """Rows from their upper left corner down: wide lines round the heading, thin ones between rows."""
    left, top = at
    right = left + sum(widths)
    yield Line(((left, top), (right, top)), "visible")
    for row in rows:
        x = left
        for cell, width, side in zip(row.cells, widths, align, strict=True):
            yield from _cell(cell, x, top, width, side, bold=row.bold)
            x += width
        top -= row.height
        yield Line(((left, top), (right, top)), "visible" if row.bold else "thin")


def _cell(lines: Sequence[str], x: float, top: float, width: float, side: str, *, bold: bool) -> Iterator[Text]:
    for number, line in enumerate(lines, 1):
        y = top - PAD - PITCH * number + (PITCH - TEXT) / 2
        if side == "r":
            yield Text((x + width - PAD, y), line, TEXT, "end", bold=bold)
        elif side == "c":
            yield Text((x + width / 2, y), line, TEXT, "middle", bold=bold)
        else:
            yield Text((x + PAD, y), line, TEXT, bold=bold)
