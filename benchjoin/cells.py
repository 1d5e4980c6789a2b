"""Cells of lists that go through a spreadsheet: none is taken for a formula, and headings tell their units.

A spreadsheet works out what begins with one of = + - @, a tab or a return. Such a cell goes out behind an apostrophe,
by which spreadsheets say that it is text, and comes back without it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

_STARTS = "=+-@\t\r"
_NUMBER = re.compile(r"[+-]?[\d.,/ ]+")
_HEADING = re.compile(r"([^(\[]*?) ?(?:[(\[] ?([^()\[\]]*?) ?[)\]])?")
LONGEST = 200
"""More letters than these are no heading."""


def out(cell: str) -> str:
    """A cell as it goes into a list.

    >>> print(out("=SUM(A1)"), out("-3"), out("front rail"))
    '=SUM(A1) -3 front rail
    """
    return f"'{cell}" if cell[:1] in _STARTS and cell and not _NUMBER.fullmatch(cell) else cell


def row(cells: Sequence[object]) -> list[str]:
    """A row as it goes into a list."""
    return [out(str(cell)) for cell in cells]


def back(cell: str) -> str:
    """A cell as it is read, without the apostrophe that it went out with.

    >>> back("'=shelf/front rail"), back("'tis")
    ('=shelf/front rail', "'tis")
    """
    return cell[1:] if cell[:1] == "'" and cell[1:2] and cell[1] in _STARTS else cell


def heading(cell: str) -> tuple[str, str]:
    """Name and unit of a heading, both in small letters; the whole of it is the name where it does not read as one.

    >>> heading(" Measured  width (IN) "), heading("Part")
    (('measured width', 'in'), ('part', ''))
    """
    words = " ".join(cell.split()).casefold()
    found = _HEADING.fullmatch(words) if len(words) <= LONGEST else None
    return (found[1], found[2] or "") if found else (words, "")
