"""The settings sheet: what is carried to the machine, cautions first, then one line a setting with its boxes to tick.

Notches come first, then the stops for the lengths and the fence for the widths of the cut list. The words and figures
are those of the settings; nothing is worked out here. What must be thought about again stands under the table.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

import attrs

from ...drafting.sheets.sheet import Sheet
from ...errors import CannotDraw
from ...layout.layout import Layout
from ...shop.settings.settings import Settings, settings
from ...shop.settings.shop import Shop
from ...tables import Table
from ...trade.cautions import Work, cautions
from ..making.house import House
from .table_sheets import list_sheets


def settings_sheets(
    layout: Layout,
    shop: Shop | None = None,
    *,
    letter: str | None = None,
    from_top: Collection[str] = (),
    paper: str | None = None,
    house: House | None = None,
) -> tuple[Sheet, ...]:
    """Sheets of the settings of a batch, or of one set: notches, lengths, widths; what has no settings has no sheet.

    Parameters
    ----------
    layout : Layout
    shop, letter, from_top
        As for `settings`.
    paper : str, optional
        The desk paper of the design's tape if not given.
    house : House, optional
        Shop, names, date, revision and the like for the title blocks.

    Raises
    ------
    CannotDraw
        If the layout has errors: nothing is cut for a frame that cannot be built.
    AddressError
        If there is no such set or level.
    PaperError
        If a row is taller than the paper.
    """
    if layout.errors():
        told = "\n".join(f"  {finding.sentence}" for finding in layout.errors())
        raise CannotDraw(
            f"No settings are printed, because the frame cannot be built:\n{told}", findings=layout.errors()
        )
    found = settings(layout, shop, letter=letter, from_top=from_top)
    return tuple(
        sheet
        for name, kind, table, works in _lists(found)
        if table.rows
        for sheet in list_sheets(layout, table, name=name, kind=kind, paper=paper, house=house, first=cautions(*works))
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
