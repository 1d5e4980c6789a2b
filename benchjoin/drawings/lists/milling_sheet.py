"""The milling sheet: what one takes to the machines, as many upright pages as it needs.

Cautions first, then the blanks by batch, what to think of before, the order of work, and from a page of its own on a
line for each part to write its size on. Everything on it is the milling plan's; here it is only set on paper.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Unpack

import attrs

from ...drafting.lettering import ascent, descent, wrap
from ...drafting.primitives import Line, Primitive, Text
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import PITCH, TEXT
from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ...shop.milling.milling import CAUTIONS, Milling, MillingPlan, milling_plan
from ...tables import Table
from ..making.asked import Asked, Milled, ask
from ..making.flowing import flowing_sheets
from ..making.maker import ruled
from .table_figure import TITLE, titled

TO_WRITE_ON = (5, 6)
"""Columns of the list of sizes."""


def milling_sheets(layout: Layout, *, practice: Milling | None = None, **options: Unpack[Milled]) -> tuple[Sheet, ...]:
    """The milling plan of a layout on paper; none where no part is still to be made.

    Parameters
    ----------
    layout : Layout
    practice : Milling, optional
        As `milling_plan` takes it.
    **options
        starts, paper and house, as `Asked` has them.

    Raises
    ------
    PaperError
        If a row does not fit the paper.
    """
    return milling_pages(layout, attrs.evolve(ask(layout, Milled, options), milling=practice))


def milling_pages(layout: Layout, asked: Asked) -> tuple[Sheet, ...]:
    """The milling plan; the list to write sizes on begins on a page of its own. No sheet where all parts are done."""
    plan = milling_plan(layout, practice=asked.milling, starts=asked.starts)
    if not plan.batches:
        return ()
    page = ruled(asked, kind="Milling", piece="Milling plan and sizes on the wood", upright=True)
    wide = page.inside[2] - page.inside[0]
    tables = [plan.table(), *([_findings(plan)] if plan.findings else []), plan.steps()]
    told = [_cautions(wide), *(titled(table, wide) for table in tables)]
    sizes = [titled(plan.measuring(), wide, written=TO_WRITE_ON)]
    return flowing_sheets(asked, page, told, sizes, name="milling", title="Milling")


def _findings(plan: MillingPlan) -> Table:
    rows = tuple((finding.severity, finding.where, finding.sentence) for finding in plan.findings)
    return Table("Before you begin", ("What", "Stock", "Finding"), rows)


def _cautions(wide: float) -> Figure:
    """The cautions in a frame of wide lines."""
    lines = [line for caution in CAUTIONS for line in wrap(caution, TEXT, wide - 6.0)]
    return Figure(name="Take care", drawing=_framed(lines, wide))


def _framed(lines: list[str], wide: float) -> Iterator[Primitive]:
    first = -2.0 - ascent(TITLE)
    places = [first - PITCH * (n + 1) - 1.0 for n in range(len(lines))]
    foot = places[-1] - descent(TEXT) - 1.5
    yield Line(((0.0, foot), (wide, foot), (wide, 0.0), (0.0, 0.0)), "visible", closed=True)
    yield Text((3.0, first), "Take care", TITLE, bold=True)
    yield from (Text((3.0, y), line, TEXT) for y, line in zip(places, lines, strict=True))
