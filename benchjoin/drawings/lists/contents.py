"""The contents of a binder: every sheet with its number, its title, its scale and its paper."""

from __future__ import annotations

from collections.abc import Sequence

from ...drafting.sheets.sheet import Sheet
from ...tables import Table
from ...trade.paper import PAPERS, SOLD_AS
from ..making.asked import Asked
from .table_sheets import list_pages


def contents_pages(asked: Asked, sheets: Sequence[Sheet], first: int) -> tuple[Sheet, ...]:
    """Contents of sheets that are numbered from first on.

    Raises
    ------
    PaperError
        If a row does not fit the paper.
    """
    rows = tuple(
        (str(number), sheet.title, sheet.scale or "–", paper_name(sheet)) for number, sheet in enumerate(sheets, first)
    )
    table = Table("Contents", ("Sheet", "What", "Scale", "Paper"), rows, (), "rlll")
    return list_pages(asked, table, name="contents", kind="Contents", upright=True)


def paper_name(sheet: Sheet) -> str:
    """The name that a sheet's paper is sold under, or its size in mm."""
    size = tuple(sorted((sheet.width, sheet.height)))
    sold = {proper: name for name, proper in SOLD_AS.items()}
    for paper in PAPERS:
        if max(abs(a - b) for a, b in zip(size, (paper.width, paper.height), strict=True)) < 0.01:
            return sold.get(paper.name, paper.name)
    return f"{sheet.width:.0f} × {sheet.height:.0f} mm"
