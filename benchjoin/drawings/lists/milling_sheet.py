"""The milling lists: what one takes to the machines.

Cautions first, then the blanks by batch, what to think of before, the order of work, and a line for each part to write
its size on, by its mark. Everything is the milling plan's; here it is only set on paper.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Unpack

import attrs

from ...drafting.lettering import ascent, descent, wrap
from ...drafting.primitives import Line, Primitive, Text
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import PITCH, TEXT
from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ...phrases import runs
from ...shop.marks import in_row
from ...shop.milling.milling import CAUTIONS, Milling, MillingPlan
from ...tables import Table
from ..making.asked import Asked, Milled, ask
from ..making.flowing import Listed, flowing_sheets
from ..making.notes import pointed
from .table_figure import TITLE, in_columns, titled

TO_WRITE_ON = (2, 3)
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
    asked = attrs.evolve(ask(layout, Milled, options), milling=practice)
    return flowing_sheets(asked, list(milling_lists(layout, asked)))


def milling_lists(layout: Layout, asked: Asked) -> Iterator[Listed]:
    """The milling plan; no list where all parts are done."""
    plan = asked.milled
    if not plan.batches:
        return

    def figures(wide: float) -> Sequence[Figure]:
        table = attrs.evolve(plan.table(), title="Milling plan")
        before: Sequence[Table] = ()
        if plan.findings and asked.numbered:
            table = attrs.evolve(
                table, notes=(*table.notes, f"Before you begin: {' '.join(pointed(asked, plan.findings))}")
            )
        elif plan.findings:
            before = (_findings(plan),)
        tables = (figure for own in (table, *before, _steps(plan)) for figure in titled(own, wide))
        return [_cautions(wide), *tables, in_columns(_sizes(plan), wide, written=TO_WRITE_ON)]

    yield Listed(name="milling", title="Milling", figures=figures)


def _findings(plan: MillingPlan) -> Table:
    rows = tuple((finding.severity, finding.where, finding.sentence) for finding in plan.findings)
    return Table("Before you begin", ("What", "Stock", "Finding"), rows)


def _steps(plan: MillingPlan) -> Table:
    """The order of work; what is done with several batches alike stands once."""
    table = plan.steps()
    found: dict[tuple[str, str], list[int]] = {}
    for batch, step, told in table.rows:
        found.setdefault((step, told), []).append(int(batch))
    rows = sorted(found.items(), key=lambda row: int(row[0][0]))
    notes = ("Each batch goes through all steps before the next one.",) if len(plan.batches) > 1 else ()
    return Table(
        table.title,
        ("Step", "Batch", "What to do"),
        tuple((step, runs(batches), told) for (step, told), batches in rows),
        (*notes, " ".join(table.notes)) if table.notes else notes,
        "ccl",
    )


def _sizes(plan: MillingPlan) -> Table:
    """The list of sizes by the marks on the wood; what has none, a spare or a test piece, comes last.

    Parts that share a mark have one row: which of them is which, nobody sees.
    """
    table = plan.measuring()
    unit = plan.tape.unit
    marked = {row[0] for row in table.rows}
    alike: dict[tuple[str, ...], int] = {}
    for row in table.rows:
        own = (row[0] or row[1], *row[3:])
        alike[own] = alike.get(own, 0) + 1
    rows = sorted(alike.items(), key=lambda row: in_row(row[0][0] if row[0][0] in marked else ""))
    columns = ("Mark", f"Drawn ({unit})", f"Thick ({unit})", f"Width ({unit})")
    return Table(
        f"{table.title}, to be written in as they are found",
        columns,
        tuple(
            (f"{mark} ({count})" if count > 1 else mark, f"{thick} × {wide}", *found)
            for (mark, thick, wide, *found), count in rows
        ),
        table.notes,
        "llrr",
    )


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
