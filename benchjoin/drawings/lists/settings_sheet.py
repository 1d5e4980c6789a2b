"""The settings lists: what is carried to the machine, cautions first, then one line a setting with its boxes to tick.

Notches come first, then the stops for the lengths and the fence for the widths of the cut list. The words and figures
are those of the settings; nothing is worked out here. What must be thought about again stands under the table.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Unpack

import attrs

from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...findings import Finding
from ...layout.layout import Layout
from ...shop.settings.settings import Settings
from ...shop.settings.shop import Shop
from ...tables import Table
from ...trade.cautions import Work, cautions
from ..making.asked import Asked, AtTheMachine, ask
from ..making.buildable import must_be_buildable
from ..making.flowing import Listed, flowing_sheets
from ..making.notes import pointed
from .table_figure import titled


def settings_sheets(layout: Layout, shop: Shop | None = None, **options: Unpack[AtTheMachine]) -> tuple[Sheet, ...]:
    """Sheets of the settings of a batch, or of one set: notches, lengths, widths; what has no settings has no sheet.

    Parameters
    ----------
    layout : Layout
    shop : Shop, optional
        The maker's machines.
    **options
        letter, from_top, paper and house, as `Asked` has them.

    Raises
    ------
    CannotDraw
        If the layout has errors: nothing is cut for a frame that cannot be built.
    AddressError
        If there is no such set or level.
    PaperError
        If a row is taller than the paper.
    """
    asked = attrs.evolve(ask(layout, AtTheMachine, options), shop=shop)
    return flowing_sheets(asked, list(settings_lists(layout, asked)))


def settings_lists(layout: Layout, asked: Asked) -> Iterator[Listed]:
    """The settings of the shop: notches, lengths and widths; what has no settings has no table."""
    must_be_buildable(layout, "No settings are printed")
    tables = [*_tables(asked.settings, asked), *_drilling(asked)]

    def figures(wide: float) -> Sequence[Figure]:
        return [figure for table, first in tables for figure in titled(table, wide, first=first)]

    if tables:
        yield Listed(name="settings", title="Settings", figures=figures)


def _drilling(asked: Asked) -> Iterator[tuple[Table, Sequence[str]]]:
    """The drills and their stops, where the fastening is known."""
    if asked.fastening is not None and asked.fastening.driven:
        yield attrs.evolve(asked.fastening.drilling(), title="Settings, drilling"), cautions("drill and driver")[3:]


def _tables(found: Settings, asked: Asked) -> Iterator[tuple[Table, Sequence[str]]]:
    """The tables, each with the cautions that no table before it has."""
    warnings = [f for f in found.findings if f.severity != "note"]
    short = [f for f in warnings if f.kind == "short blank"]
    others = [f for f in warnings if f.kind != "short blank"]
    works: tuple[tuple[Work, ...], ...] = (
        tuple(dict.fromkeys(setting.tool.way for setting in found.notching)),
        ("crosscut",),
        ("rip",),
    )
    tables = (_once(found.table()), found.crosscut_table(), found.rip_table())
    said: set[str] = set()
    for table, own, more, what in zip(
        tables, works, (others, short, ()), ("notches", "lengths", "widths"), strict=True
    ):
        if table.rows:
            first = [words for words in cautions(*own) if words not in said]
            said.update(first)
            yield _noted(attrs.evolve(table, title=f"Settings, {what}"), more, asked), first


def _once(table: Table) -> Table:
    """Settings with each tool in the first of its rows only, as it stays on the machine until another one is named."""
    tool = table.columns.index("Tool")
    before = ("", *(row[tool] for row in table.rows))
    rows = tuple(
        (*row[:tool], "" if row[tool] == last else row[tool], *row[tool + 1 :])
        for row, last in zip(table.rows, before, strict=False)
    )
    notes = ("The tool stays until another one is named.", *table.notes)
    return attrs.evolve(table, rows=rows, notes=notes if len(rows) > 1 else table.notes)


def _noted(table: Table, more: Sequence[Finding], asked: Asked) -> Table:
    """A table with what must be thought about again below it: in full, or where it stands."""
    if not more:
        return table
    said = pointed(asked, more) if asked.numbered else [finding.sentence for finding in more]
    return attrs.evolve(table, notes=(*table.notes, *said))
