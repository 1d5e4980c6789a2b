"""Ruled tables: a Table set in rows under its headings, cells wrapped, columns as wide as they need to be.

Nothing leaves the width that there is: cells are broken at spaces, words that are wider than their column between
letters, and a table of more columns than go beside each other is broken into tables that have its first column each.

>>> from ...tables import Table
>>> head, rows, widths = set_table(Table("Parts", ("Part", "Make"), (("front leg", "6"),)), 100.0)
>>> head.bold, rows[0].cells
(True, (('front leg',), ('6',)))
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs

from ...tables import Table
from ..lettering import wrap
from ..primitives import Line, Point, Primitive, Text
from .columns import column_widths

TEXT = 2.5
PITCH = 4.2
PAD = 1.2
LEAST = 12.0
"""A column is not made narrower than this to spare width. [mm]"""


_MORE = 2 * PAD + 0.1


@attrs.frozen
class Row:
    """A row set in lines: for each column the lines of its cell, and the height of the whole. [mm]"""

    cells: tuple[tuple[str, ...], ...]
    height: float
    bold: bool = False


def side_by_side(table: Table, room: float) -> list[Table]:
    """A table, or as many as it takes to have its columns beside each other in a width. [mm]"""
    most = max(int(room / LEAST), 2)
    if len(table.columns) <= most:
        return [table]
    taken = [(0, *range(n, min(n + most - 1, len(table.columns)))) for n in range(1, len(table.columns), most - 1)]
    return [
        Table(
            table.title if number == 1 else f"{table.title}, {number}",
            tuple(table.columns[n] for n in own),
            tuple(tuple(row[n] for n in own) for row in table.rows),
            table.notes if number == len(taken) else (),
            "".join(table.aligned()[n] for n in own),
        )
        for number, own in enumerate(taken, 1)
    ]


def set_table(table: Table, room: float) -> tuple[Row, list[Row], list[float]]:
    """Heading, rows and widths of the columns for a table that may be so wide. [mm]"""
    widths = column_widths(table.columns, table.rows, room, TEXT, _MORE)
    return _set(table.columns, widths, bold=True), [_set(row, widths) for row in table.rows], widths


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
