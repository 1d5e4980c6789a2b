"""Lists on paper: a Table as ruled rows under its headings, over as many sheets as it takes.

What must be read before the first row (cautions) stands above the table; a cell that is to be ticked is drawn as a box.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain

import attrs

from ...drafting.lettering import wrap
from ...drafting.primitives import Box, Drawing, Line, Point, Primitive, Text
from ...drafting.sheets.ruled import PITCH, TEXT, draw_rows, set_table
from ...drafting.sheets.sheet import Sheet
from ...errors import PaperError
from ...layout.layout import Layout
from ...shop.settings.sizing import TICK
from ...tables import Table
from ...trade.paper import landscape, paper_size
from ..making.house import PLAIN, House, block, default_paper, room

INSET = 5.0
GUTTER = 6.0
"""Between the two columns of what stands above a table. [mm]"""
BOX = 3.2
"""Side of a box to tick. [mm]"""


def list_sheets(
    layout: Layout,
    table: Table,
    *,
    name: str,
    kind: str,
    paper: str | None = None,
    house: House | None = None,
    first: Sequence[str] = (),
    upright: bool = False,
) -> tuple[Sheet, ...]:
    """Sheets of a table, lying or upright, as many as it takes; first stands above it, a point a line.

    Raises
    ------
    PaperError
        If a row is taller than the paper.
    """
    size = paper or default_paper(layout.frame)
    width, height = paper_size(size) if upright else landscape(paper_size(size))
    words = block(layout.frame, house or PLAIN, kind=kind, piece=table.title, scale="")
    x0, y0, x1, y1 = room(width, height, words)
    inside = (x0 + INSET, y0 + INSET, x1 - INSET, y1 - INSET)
    pages = list(_pages(table, inside, first))
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


def _pages(table: Table, inside: Box, first: Sequence[str]) -> Iterator[Drawing]:
    head, rows, widths = set_table(_unticked(table), inside[2] - inside[0])
    boxes = [[place for place, cell in enumerate(row) if cell == TICK] for row in table.rows]
    notes = [line for note in table.notes for line in wrap(note, TEXT, inside[2] - inside[0])]
    below = len(notes) * PITCH + (PITCH if notes else 0.0)
    above = _in_two(first, inside)
    top = inside[3] - (max(map(len, above)) + 1) * PITCH if first else inside[3]
    while True:
        page, ticks, used = [head], [], head.height
        while rows and used + rows[0].height <= top - inside[1] - (below if len(rows) == 1 else 0.0):
            middle = top - used - rows[0].height / 2
            ticks += [_box(widths, place, (inside[0], middle)) for place in boxes.pop(0)]
            used += rows[0].height
            page.append(rows.pop(0))
        if rows and len(page) == 1:
            raise PaperError(f"A row of {table.title!r} does not fit the paper. Take larger paper.")
        drawn = tuple(draw_rows(page, widths, table.aligned(), (inside[0], top)))
        under = () if rows else tuple(_lines(notes, (inside[0], top - used - 1.0)))
        over = [text for place, column in enumerate(above) for text in _lines(column, _column(inside, place))]
        yield (*over, *drawn, *ticks, *under)
        above, top = ([], []), inside[3]
        if not rows:
            return


def _unticked(table: Table) -> Table:
    """The table with nothing written where a box is drawn."""
    rows = tuple(tuple("" if cell == TICK else cell for cell in row) for row in table.rows)
    return attrs.evolve(table, rows=rows)


def _box(widths: Sequence[float], place: int, at: Point) -> Line:
    """A box to tick in the middle of a column."""
    x, y, half = at[0] + sum(widths[:place]) + widths[place] / 2, at[1], BOX / 2
    return Line(((x - half, y - half), (x + half, y - half), (x + half, y + half), (x - half, y + half)), closed=True)


def _in_two(first: Sequence[str], inside: Box) -> tuple[list[str], list[str]]:
    """Points in two columns of lines, each with a dash before it, as short as they can be side by side."""
    points = [_point(point, (inside[2] - inside[0] - GUTTER) / 2) for point in first]
    splits = [([*chain(*points[:n])], [*chain(*points[n:])]) for n in range(len(points) + 1)]
    return min(splits, key=lambda columns: (max(map(len, columns)), len(columns[1])))


def _point(point: str, width: float) -> list[str]:
    lines = wrap(f"– {point}", TEXT, width)
    return [lines[0], *(f"   {line}" for line in wrap(" ".join(lines[1:]), TEXT, width - 3.0))]


def _column(inside: Box, place: int) -> Point:
    return inside[0] + place * (inside[2] - inside[0] + GUTTER) / 2, inside[3] + PITCH - TEXT - 0.5


def _lines(lines: Sequence[str], at: Point) -> Iterator[Primitive]:
    for number, line in enumerate(lines, 1):
        yield Text((at[0], at[1] - PITCH * number), line, TEXT)
