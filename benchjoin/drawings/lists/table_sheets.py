"""Lists on paper: a Table as ruled rows under its headings, which runs on down the pages and shares them with others.

What must be read before the first row (cautions) stands above the table. Here are also the lists of the binder that are
a table and nothing else.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from typing import Unpack

import attrs

from ...drafting.sheets.sheet import Sheet
from ...errors import AssemblyError
from ...findings import Finding
from ...layout.layout import Layout
from ...layout.moved import what_moved
from ...shop.assembly.assembly import assembly
from ...shop.cut_list import cut_list
from ...shop.settings.sizing import TICK
from ...shop.weighed import weighed
from ...sources import COMMON_PRACTICE
from ...tables import Table
from ..making.asked import Asked, OnPaper, ask
from ..making.flowing import Listed, flowing_sheets
from .table_figure import titled

DONE = "done"


def list_sheets(
    layout: Layout, table: Table, *, name: str, kind: str, first: Sequence[str] = (), **options: Unpack[OnPaper]
) -> tuple[Sheet, ...]:
    """Upright sheets of a table, as many as it takes; first stands above it, a point a line.

    Raises
    ------
    PaperError
        If the paper is too small for a title strip.
    """
    asked = ask(layout, OnPaper, options)
    return flowing_sheets(asked, [list_of(asked, table, name=name, title=kind, first=first)])


def list_of(asked: Asked, table: Table, *, name: str, title: str, first: Sequence[str] = ()) -> Listed:
    """A table as a list of the binder; the strip of every page names the design, so the table does not."""
    own = attrs.evolve(table, title=table.title.replace(f": {asked.frame.name}", "") or title)
    return Listed(name=name, title=title, figures=lambda wide: titled(own, wide, first=first))


def findings_lists(layout: Layout, asked: Asked) -> Iterator[Listed]:
    """All findings of the job, numbered, each in full; no list where there are none."""
    if asked.findings:
        yield list_of(asked, numbered_findings(asked.findings), name="findings", title="Findings")


def numbered_findings(findings: Sequence[Finding]) -> Table:
    """Findings by the numbers that other sheets point to; a source stands behind a sentence where there is one."""
    rows = tuple((str(number), finding.severity, _in_full(finding)) for number, finding in enumerate(findings, 1))
    plain = any(finding.source == COMMON_PRACTICE for finding in findings)
    notes = (f"Where no source stands in brackets: {COMMON_PRACTICE}.",) if plain else ()
    return Table("Findings", ("No.", "What", "Finding"), rows, notes, "rll")


def _in_full(finding: Finding) -> str:
    """The sentence, with the place where it does not name it, and with its source."""
    told = finding.sentence
    if finding.where.lower() not in told.lower():
        told = f"{finding.where}: {told}"
    return told if finding.source == COMMON_PRACTICE else f"{told} [{finding.source}]"


def moved_lists(layout: Layout, asked: Asked) -> Iterator[Listed]:
    """What moved since an earlier layout; no list where none is given."""
    if asked.before is None:
        return
    yield list_of(asked, what_moved(asked.before, layout).table(), name="what-moved", title="What moved")
    if asked.assembly is not None:
        with suppress(AssemblyError):  # an earlier one that cannot be put together has no order to compare
            moved = asked.assembly.moved_from(assembly(asked.before, piece=asked.assembly.piece))
            if moved.rows:
                yield list_of(asked, moved, name="order-moved", title="Order that moved")


def cut_lists(layout: Layout, asked: Asked) -> Iterator[Listed]:
    """The cut list, by the marks on the wood, with a box to tick; what is finished says so in its place."""
    table = cut_list(layout)
    part, make, *sizes, stock, marks, note = range(len(table.columns))
    order = (marks, part, make, *sizes, stock, note)
    rows = tuple((*(row[n] for n in order), TICK if row[make] != "0" else DONE) for row in table.rows)
    columns = (*(table.columns[n] for n in order), "Done")
    notes = (*table.notes, f"Weight: {weighed(layout)}.")
    yield list_of(asked, Table(table.title, columns, rows, notes, "llrrrrllc"), name="cut-list", title="Cut list")
