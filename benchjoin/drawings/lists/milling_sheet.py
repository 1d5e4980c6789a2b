"""The milling sheet: what one takes to the machines, as many upright pages as it needs.

Cautions first, then the blanks by batch, what to think of before, the order of work, and from a page of its own on a
line for each part to write its size on. Everything on it is the milling plan's; here it is only set on paper.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import attrs

from ...drafting.lettering import ascent, descent, wrap
from ...drafting.primitives import Box, Drawing, Line, Point, Primitive, Text
from ...drafting.sheets.ruled import PITCH, TEXT, Row, draw_rows, set_table
from ...drafting.sheets.sheet import Sheet
from ...errors import PaperError
from ...frame.stock import Stock
from ...layout.layout import Layout
from ...shop.milling.milling import CAUTIONS, Milling, MillingPlan, milling_plan
from ...tables import Table
from ...trade.paper import paper_size
from ..making.house import PLAIN, House, block, default_paper, room

INSET = 5.0
"""Between the border and what is written. [mm]"""
TITLE = 3.5
"""Lettering of a table's title. [mm]"""
TO_WRITE = 8.0
"""Height of a row that is written on with a pencil. [mm]"""
GAP = 5.0
"""Between one table and the next. [mm]"""


def milling_sheets(
    layout: Layout,
    *,
    practice: Milling | None = None,
    starts: Mapping[str, Stock] | None = None,
    paper: str | None = None,
    house: House | None = None,
) -> tuple[Sheet, ...]:
    """The milling plan of a layout on paper.

    Parameters
    ----------
    layout : Layout
    practice, starts
        As `milling_plan` takes them.
    paper : str, optional
        The desk paper of the design's tape, if not given.
    house : House, optional
        What all sheets of the shop have in common.

    Raises
    ------
    PaperError
        If a row does not fit the paper.
    """
    plan = milling_plan(layout, practice=practice, starts=starts)
    width, height = paper_size(paper or default_paper(layout.frame))
    words = block(layout.frame, house or PLAIN, kind="Milling", piece="Milling plan and sizes on the wood", scale="")
    x0, y0, x1, y1 = room(width, height, words)
    pages = tuple(_pages(plan, (x0 + INSET, y0 + INSET, x1 - INSET, y1 - INSET)))
    return tuple(
        Sheet(
            name="milling" if len(pages) == 1 else f"milling-{number}",
            title="Milling" if len(pages) == 1 else f"Milling {number}",
            width=width,
            height=height,
            drawing=page,
            block=words,
            scale="",
        )
        for number, page in enumerate(pages, 1)
    )


@attrs.frozen(kw_only=True)
class _Chapter:
    """A table set in rows, with the columns that are written on."""

    title: str
    head: Row
    rows: tuple[Row, ...]
    widths: tuple[float, ...]
    align: str
    notes: tuple[str, ...]
    written: tuple[int, ...] = ()


def _chapter(table: Table, width: float, written: tuple[int, ...] = ()) -> _Chapter:
    head, rows, widths = set_table(table, width)
    if written:
        rows = [attrs.evolve(row, height=max(row.height, TO_WRITE)) for row in rows]
    return _Chapter(
        title=table.title,
        head=head,
        rows=tuple(rows),
        widths=tuple(widths),
        align=table.aligned(),
        notes=tuple(line for note in table.notes for line in wrap(note, TEXT, width)),
        written=written,
    )


def _findings(plan: MillingPlan) -> Table:
    rows = tuple((finding.severity, finding.where, finding.sentence) for finding in plan.findings)
    return Table("Before you begin", ("What", "Stock", "Finding"), rows)


def _pages(plan: MillingPlan, inside: Box) -> Iterator[Drawing]:
    """The pages, filled from the top; a table that is broken has its heading again on the next page."""
    width = inside[2] - inside[0]
    tables = [plan.table(), *([_findings(plan)] if plan.findings else []), plan.steps()]
    chapters = [*(_chapter(table, width) for table in tables), _chapter(plan.measuring(), width, written=(5, 6))]
    page, y = _cautions(inside)
    for chapter in chapters:
        if y < inside[3] and (chapter.written or y - _least(chapter, inside[3] - inside[1]) < inside[1]):
            yield tuple(page)
            page, y = [], inside[3]
        page.append(Text((inside[0], y - ascent(TITLE)), chapter.title, TITLE, bold=True))
        y -= TITLE * 2
        rows = list(chapter.rows)
        while rows:
            taken = _taken(chapter, rows, y - inside[1])
            page += draw_rows(taken, chapter.widths, chapter.align, (inside[0], y))
            page += _walls(chapter, taken, (inside[0], y))
            y -= sum(row.height for row in taken)
            if rows:
                yield tuple(page)
                page, y = [], inside[3]
        if y - PITCH * len(chapter.notes) < inside[1]:
            yield tuple(page)
            page, y = [], inside[3]
        page += [Text((inside[0], y - PITCH * n - 1.0), note, TEXT) for n, note in enumerate(chapter.notes, 1)]
        y -= PITCH * len(chapter.notes) + GAP
    yield tuple(page)


def _least(chapter: _Chapter, page: float) -> float:
    """Height that a chapter needs to begin: all of it where it goes on one page, or else its first two rows. [mm]"""
    above = TITLE * 2 + chapter.head.height
    whole = above + sum(row.height for row in chapter.rows) + PITCH * len(chapter.notes)
    return whole if whole <= page else above + sum(row.height for row in chapter.rows[:2])


def _taken(chapter: _Chapter, rows: list[Row], height: float) -> list[Row]:
    """The heading and as many rows as go into a height; they are taken off the list."""
    taken, used = [chapter.head], chapter.head.height
    while rows and used + rows[0].height <= height:
        used += rows[0].height
        taken.append(rows.pop(0))
    if len(taken) == 1:
        raise PaperError(f"A row of {chapter.title!r} does not fit the paper. Take larger paper.")
    return taken


def _walls(chapter: _Chapter, rows: Sequence[Row], at: Point) -> Iterator[Primitive]:
    """Upright lines on both sides of the cells that are written on."""
    top = at[1] - chapter.head.height
    foot = at[1] - sum(row.height for row in rows)
    edges = {place + by for place in chapter.written for by in (0, 1)}
    for edge in sorted(edges):
        x = at[0] + sum(chapter.widths[:edge])
        yield Line(((x, top), (x, foot)), "thin")


def _cautions(inside: Box) -> tuple[list[Primitive], float]:
    """The cautions in a frame of wide lines at the top of the first page, and where the rest begins."""
    left, _, right, top = inside
    lines = [line for caution in CAUTIONS for line in wrap(caution, TEXT, right - left - 6.0)]
    first = top - 2.0 - ascent(TITLE)
    places = [first - PITCH * (n + 1) - 1.0 for n in range(len(lines))]
    foot = places[-1] - descent(TEXT) - 1.5
    frame = Line(((left, foot), (right, foot), (right, top), (left, top)), "visible", closed=True)
    words = [Text((left + 3.0, y), line, TEXT) for y, line in zip(places, lines, strict=True)]
    return [frame, Text((left + 3.0, first), "Take care", TITLE, bold=True), *words], foot - GAP
