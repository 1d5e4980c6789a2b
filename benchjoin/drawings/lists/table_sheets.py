"""Lists on paper: a Table as ruled rows under its headings, over as many sheets as it takes.

What must be read before the first row (cautions) stands above the table. Here are also the lists of the binder that are
a table and nothing else.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain
from typing import Unpack

from ...drafting.lettering import wrap
from ...drafting.primitives import Drawing
from ...drafting.sheets.ruled import PITCH, TEXT
from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ...layout.moved import what_moved
from ...shop.cut_list import cut_list
from ...shop.found import findings_table
from ...tables import Table
from ..making.asked import Asked, OnPaper, ask
from ..making.flowing import flowing_sheets
from ..making.maker import ruled
from .table_figure import lines_below, table_figure

GUTTER = 6.0
"""Between the two columns of what stands above a table. [mm]"""


def list_sheets(
    layout: Layout,
    table: Table,
    *,
    name: str,
    kind: str,
    first: Sequence[str] = (),
    upright: bool = False,
    **options: Unpack[OnPaper],
) -> tuple[Sheet, ...]:
    """Sheets of a table, lying or upright, as many as it takes; first stands above it, a point a line.

    Raises
    ------
    PaperError
        If a row is taller than the paper.
    """
    return list_pages(ask(layout, OnPaper, options), table, name=name, kind=kind, first=first, upright=upright)


def list_pages(
    asked: Asked, table: Table, *, name: str, kind: str, first: Sequence[str] = (), upright: bool = False
) -> tuple[Sheet, ...]:
    """The sheets of a table."""
    page = ruled(asked, kind=kind, piece=table.title, upright=upright)
    wide = page.inside[2] - page.inside[0]
    above, start = _in_two(first, wide)
    return flowing_sheets(asked, page, [table_figure(table, wide, above=above, start=start)], name=name, title=kind)


def findings_pages(layout: Layout, asked: Asked) -> tuple[Sheet, ...]:
    """All findings of the job; no sheet where there are none."""
    table = findings_table(layout, asked.findings)
    return list_pages(asked, table, name="findings", kind="Findings") if table.rows else ()


def moved_pages(layout: Layout, asked: Asked) -> tuple[Sheet, ...]:
    """What moved since an earlier layout; no sheet where none is given."""
    if asked.before is None:
        return ()
    return list_pages(asked, what_moved(asked.before, layout).table(), name="what-moved", kind="What moved")


def cut_list_pages(layout: Layout, asked: Asked) -> tuple[Sheet, ...]:
    """The cut list."""
    return list_pages(asked, cut_list(layout), name="cut-list", kind="Cut list")


def _in_two(first: Sequence[str], wide: float) -> tuple[Drawing, float]:
    """Points in two columns of lines, each with a dash before it, as short as they can be, and where they end. [mm]"""
    points = [_point(point, (wide - GUTTER) / 2) for point in first]
    splits = [([*chain(*points[:n])], [*chain(*points[n:])]) for n in range(len(points) + 1)]
    columns = min(splits, key=lambda columns: (max(map(len, columns)), len(columns[1])))
    places = [(place * (wide + GUTTER) / 2, PITCH - TEXT - 0.5) for place in (0, 1)]
    drawn = [text for column, at in zip(columns, places, strict=True) for text in lines_below(column, at)]
    return tuple(drawn), -(max(map(len, columns)) + 1) * PITCH if first else 0.0


def _point(point: str, width: float) -> list[str]:
    lines = wrap(f"– {point}", TEXT, width)
    return [lines[0], *(f"   {line}" for line in wrap(" ".join(lines[1:]), TEXT, width - 3.0))]
