"""The settings sheet: what is carried to the machine, cautions first, then one line a setting with its boxes to tick.

Notches come first, then the stops for the lengths and the fence for the widths of the cut list. The words and figures
are those of the settings; nothing is worked out here. What must be thought about again stands under the table.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Unpack

import attrs

from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ...shop.settings.settings import Settings, settings
from ...shop.settings.shop import Shop
from ...tables import Table
from ...trade.cautions import Work, cautions
from ..making.asked import Asked, AtTheMachine, ask
from ..making.buildable import must_be_buildable
from .table_sheets import list_pages


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
    return settings_pages(layout, attrs.evolve(ask(layout, AtTheMachine, options), shop=shop))


def settings_pages(layout: Layout, asked: Asked) -> tuple[Sheet, ...]:
    """The settings of the shop."""
    must_be_buildable(layout, "No settings are printed")
    found = settings(layout, asked.shop, letter=asked.letter, from_top=asked.from_top)
    return tuple(
        sheet
        for name, kind, table, works in _lists(found)
        if table.rows
        for sheet in list_pages(asked, table, name=name, kind=kind, first=cautions(*works))
    )


def _lists(found: Settings) -> Iterator[tuple[str, str, Table, tuple[Work, ...]]]:
    ways = tuple(dict.fromkeys(setting.tool.way for setting in found.notching))
    warnings = [f for f in found.findings if f.severity != "note"]
    short = [f.sentence for f in warnings if f.kind == "short blank"]
    others = [f.sentence for f in warnings if f.kind != "short blank"]
    yield "settings-notches", "Settings, notches", _noted(found.table(), others), ways
    yield "settings-lengths", "Settings, lengths", _noted(found.crosscut_table(), short), ("crosscut",)
    yield "settings-widths", "Settings, widths", found.rip_table(), ("rip",)


def _noted(table: Table, more: Sequence[str]) -> Table:
    return attrs.evolve(table, notes=(*table.notes, *more))
