"""A table as a figure that runs on down the pages: its heading is drawn again, its notes stay with its last row.

A cell that is to be ticked is drawn as a box; columns that are written on with a pencil have walls, and rows that are
high enough for it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import accumulate

import attrs

from ...drafting.lettering import ascent, wrap
from ...drafting.primitives import Drawing, Line, Point, Primitive, Text
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import PITCH, TEXT, draw_rows, set_table
from ...shop.settings.sizing import TICK
from ...tables import Table

TITLE = 3.5
"""Lettering of a table's title. [mm]"""
BOX = 3.2
"""Side of a box to tick. [mm]"""
TO_WRITE = 8.0
"""Height of a row that is written on. [mm]"""


def titled(table: Table, width: float, *, written: Sequence[int] = ()) -> Figure:
    """A table of some width below its title; written are the columns to write on. [mm]"""
    title = Text((0.0, -ascent(TITLE)), table.title, TITLE, bold=True)
    return table_figure(table, width, above=(title,), start=-2 * TITLE, written=written)


def table_figure(
    table: Table, width: float, *, above: Drawing = (), start: float = 0.0, written: Sequence[int] = ()
) -> Figure:
    """A table of some width, its heading from a height down, below what stands above it from nought on. [mm]"""
    head, rows, widths = set_table(_unticked(table), width)
    if written:
        rows = [attrs.evolve(row, height=max(row.height, TO_WRITE)) for row in rows]
    align, top = table.aligned(), start - head.height
    edges = [*accumulate((row.height for row in rows), lambda edge, height: edge - height, initial=top)]
    notes = [line for note in table.notes for line in wrap(note, TEXT, width)]
    drawing = (
        *above,
        *draw_rows([head, *rows], widths, align, (0.0, start)),
        *_boxes(table, widths, edges),
        *_walls(written, widths, top, edges[-1]),
        *lines_below(notes, (0.0, edges[-1] - 1.0)),
    )
    return Figure(
        name=table.title,
        drawing=drawing,
        breaks=(0.0, *edges[1:-1], edges[-1] - PITCH * len(notes)),
        again=draw_rows([head], widths, align, (0.0, 0.0)),
    )


def lines_below(lines: Sequence[str], at: Point) -> Iterator[Text]:
    """Lines of writing one below the other, from a place down."""
    for number, line in enumerate(lines, 1):
        yield Text((at[0], at[1] - PITCH * number), line, TEXT)


def _unticked(table: Table) -> Table:
    """The table with nothing written where a box is drawn."""
    rows = tuple(tuple("" if cell == TICK else cell for cell in row) for row in table.rows)
    return attrs.evolve(table, rows=rows)


def _boxes(table: Table, widths: Sequence[float], edges: Sequence[float]) -> Iterator[Line]:
    """Boxes to tick in the middle of their cells."""
    half = BOX / 2
    for row, high, low in zip(table.rows, edges, edges[1:], strict=False):
        for place, cell in enumerate(row):
            if cell == TICK:
                x, y = sum(widths[:place]) + widths[place] / 2, (high + low) / 2
                corners = ((x - half, y - half), (x + half, y - half), (x + half, y + half), (x - half, y + half))
                yield Line(corners, closed=True)


def _walls(written: Sequence[int], widths: Sequence[float], top: float, foot: float) -> Iterator[Primitive]:
    """Upright lines on both sides of the cells that are written on."""
    for edge in sorted({place + by for place in written for by in (0, 1)}):
        x = sum(widths[:edge])
        yield Line(((x, top), (x, foot)), "thin")
