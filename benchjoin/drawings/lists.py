"""Lists on paper: a Table as ruled rows under its headings, over as many sheets as it takes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..drafting.lettering import wrap
from ..drafting.primitives import Box, Drawing, Point, Primitive, Text
from ..drafting.ruled import PITCH, TEXT, draw_rows, set_table
from ..drafting.sheet import Sheet
from ..errors import PaperError
from ..layout.layout import Layout
from ..tables import Table
from ..trade.paper import landscape, paper_size
from .page import PLAIN, House, block, default_paper, room

INSET = 5.0


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
    head, rows, widths = set_table(table, inside[2] - inside[0])
    notes = [line for note in table.notes for line in wrap(note, TEXT, inside[2] - inside[0])]
    below = len(notes) * PITCH + (PITCH if notes else 0.0)
    while True:
        page, used = [head], head.height
        while rows and used + rows[0].height <= inside[3] - inside[1] - below:
            used += rows[0].height
            page.append(rows.pop(0))
        if rows and len(page) == 1:
            raise PaperError(f"A row of {table.title!r} does not fit the paper. Take larger paper.")
        drawn = tuple(draw_rows(page, widths, table.aligned(), (inside[0], inside[3])))
        under = () if rows else tuple(_notes(notes, (inside[0], inside[3] - used)))
        yield (*drawn, *under)
        if not rows:
            return


def _notes(notes: Sequence[str], at: Point) -> Iterator[Primitive]:
    for number, note in enumerate(notes, 1):
        yield Text((at[0], at[1] - PITCH * number - 1.0), note, TEXT)
