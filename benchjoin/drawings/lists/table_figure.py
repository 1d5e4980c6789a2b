"""A table as figures that run on down the pages: its heading is drawn again, its notes stay with its last rows.

A cell that is to be ticked is drawn as a box; columns that are written on with a pencil have walls, and rows that are
high enough for it. What is only read in short lines stands in columns beside each other.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import accumulate, chain, pairwise

import attrs

from ...drafting.lettering import ascent, wrap
from ...drafting.primitives import Drawing, Line, Point, Primitive, Text, shift
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import PAD, PITCH, TEXT, Row, draw_rows, set_table, side_by_side
from ...shop.settings.sizing import TICK
from ...tables import Table

TITLE = 3.5
"""Lettering of a table's title. [mm]"""
TITLE_PITCH = 5.6
BOX = 3.2
"""Side of a box to tick. [mm]"""
TO_WRITE = 6.4
"""Height of a row that is written on, as that of narrow ruled paper. [mm]"""
GUTTER = 8.0
"""Between columns of the page. [mm]"""
TALL = 60.0
"""A row that is higher may go on on another page. [mm]"""
FEWEST = 2
"""So many rows of a table stand together before and after a page ends."""
FEW = 5
"""A table of no more rows stays together."""
TOGETHER = 150.0
"""A table that is higher may break below any row. [mm]"""
KEPT = 10
"""So many lines of notes stay together with the last row."""


def titled(table: Table, width: float, *, written: Sequence[int] = (), first: Sequence[str] = ()) -> list[Figure]:
    """A table of some width below its title, as several where it has too many columns for it. [mm]

    written are the columns to write on; first is read before the first row, a point a line.
    """
    return [
        _one(own, width, written=written, first=first if number == 0 else ())
        for number, own in enumerate(side_by_side(table, width))
    ]


def _one(table: Table, width: float, *, written: Sequence[int], first: Sequence[str]) -> Figure:
    title, start = title_lines(table.title, width)
    points, height = points_in_two(first, width)
    above = (*title, *shift(points, 0.0, start))
    return _ruled(table, width, above=above, start=start - height, written=written)


def title_lines(title: str, width: float) -> tuple[Drawing, float]:
    """A title from nought down, and where what stands below it begins. [mm]"""
    lines = wrap(title, TITLE, width, bold=True)
    drawn = tuple(
        Text((0.0, -ascent(TITLE) - TITLE_PITCH * number), line, TITLE, bold=True) for number, line in enumerate(lines)
    )
    return drawn, -2 * TITLE - TITLE_PITCH * (len(lines) - 1)


def _ruled(table: Table, width: float, *, above: Drawing, start: float, written: Sequence[int]) -> Figure:
    """A table, its heading from a height down, below what stands above it from nought on. [mm]"""
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
        breaks=(0.0, *_breaks(rows, edges), *_breaks_of_notes(len(notes), edges[-1])),
        again=draw_rows([head], widths, align, (0.0, 0.0)),
    )


def _breaks(rows: Sequence[Row], edges: Sequence[float]) -> Iterator[float]:
    """Below rows with a few before and after them, and between the lines of one that is tall.

    A table of few rows stays together, if it is not very high.
    """
    high_table = edges[0] - edges[-1] > TOGETHER
    for number, (row, (high, low)) in enumerate(zip(rows, pairwise(edges), strict=True), 1):
        if row.height > TALL:
            lines = max(len(cell) for cell in row.cells)
            yield from (high - PAD - PITCH * line for line in range(2, lines - 1))
        apart = len(rows) > FEW and FEWEST <= number <= len(rows) - FEWEST
        if number < len(rows) and (high_table or apart):
            yield low


def _breaks_of_notes(count: int, edge: float) -> Iterator[float]:
    """Below the lines of notes that need not stay with the last row, and below all."""
    yield from (edge - 1.0 - PITCH * line - (PITCH - TEXT) / 2 for line in range(KEPT, count - 1))
    yield edge - 1.0 - PITCH * count - (PITCH - TEXT) / 2 if count else edge


def in_columns(table: Table, width: float, *, written: Sequence[int] = ()) -> Figure:
    """A table in columns of the page below its title, two or as many as go in; its rows are all of one height. [mm]"""
    title, start = title_lines(table.title, width)
    columns = max(2, int((width + GUTTER) / (sum(set_table(table, width)[2]) + GUTTER)))
    share = (width - (columns - 1) * GUTTER) / columns
    count = -(-len(table.rows) // columns)
    head, rows, widths = set_table(table, share)
    widths = [own * share / sum(widths) for own in widths]
    tall = max([TO_WRITE if written else 0.0, *(row.height for row in rows)])
    align, top = table.aligned(), start - head.height
    edges = [top - tall * number for number in range(count + 1)]
    places = [number * (share + GUTTER) for number in range(columns)]
    drawing: list[Primitive] = list(title)
    for number, place in enumerate(places):
        even = [attrs.evolve(row, height=tall) for row in rows[number * count : (number + 1) * count]]
        drawn = draw_rows([head, *even], widths, align, (0.0, start))
        drawing += shift((*drawn, *_walls(written, widths, top, edges[len(even)])), place, 0.0)
    heads = tuple(draw_rows([head], widths, align, (0.0, 0.0)))
    notes = [line for note in table.notes for line in wrap(note, TEXT, width)]
    drawing += lines_below(notes, (0.0, edges[-1] - 1.0))
    return Figure(
        name=table.title,
        drawing=drawing,
        breaks=(0.0, *edges[FEWEST:-FEWEST], *_breaks_of_notes(len(notes), edges[-1])),
        again=[stroke for place in places for stroke in shift(heads, place, 0.0)],
    )


def lines_below(lines: Sequence[str], at: Point) -> Iterator[Text]:
    """Lines of writing one below the other, from a place down."""
    for number, line in enumerate(lines, 1):
        yield Text((at[0], at[1] - PITCH * number), line, TEXT)


def points_in_two(points: Sequence[str], wide: float) -> tuple[Drawing, float]:
    """Points in two columns of lines, each with a dash before it, as short as they can be, and how high. [mm]"""
    if not points:
        return (), 0.0
    lines = [_point(point, (wide - GUTTER) / 2) for point in points]
    splits = [([*chain(*lines[:n])], [*chain(*lines[n:])]) for n in range(len(points) + 1)]
    columns = min(splits, key=lambda columns: (max(map(len, columns)), len(columns[1])))
    places = [(place * (wide + GUTTER) / 2, PITCH - TEXT - 0.5) for place in (0, 1)]
    drawn = [text for column, at in zip(columns, places, strict=True) for text in lines_below(column, at)]
    return tuple(drawn), (max(map(len, columns)) + 1) * PITCH - TEXT


def _point(point: str, width: float) -> list[str]:
    lines = wrap(f"– {point}", TEXT, width)
    return [lines[0], *(f"   {line}" for line in wrap(" ".join(lines[1:]), TEXT, width - 3.0))]


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
