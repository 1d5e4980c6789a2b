"""Sheets of tables that run on down the pages, and of what is read beside them."""

from __future__ import annotations

from collections.abc import Sequence

from ...drafting.sheets.figure import Figure
from ...drafting.sheets.flow import flow
from ...drafting.sheets.sheet import Sheet
from .asked import Asked
from .maker import Ruled, make_all

GAP = 5.0
"""Between one table and the next. [mm]"""


def flowing_sheets(asked: Asked, page: Ruled, *parts: Sequence[Figure], name: str, title: str) -> tuple[Sheet, ...]:
    """Sheets of figures one below the other; each part of them begins on a page of its own.

    Raises
    ------
    PaperError
        If a row is taller than the paper.
    """
    pages = [laid for figures in parts for laid in flow(figures, page.inside, GAP)]
    return make_all(pages, house=asked.house, name=name, title=title, size=page.size, words=page.words)
