"""The title block: what a sheet says about itself, and how that is set out on general arrangements and full-size pages.

Fields after ISO 7200, at the bottom right and 180 mm wide at most. Narrow sheets get the same fields in narrower or
more rows. What is read at the desk has a slim strip instead (`strip`), with the same words.

>>> block_size(1000.0), block_size(140.0)
((180.0, 36.0), (140.0, 63.0))
"""

from __future__ import annotations

from typing import Literal

import attrs

from ...trade.standards import TITLE_BLOCK_WIDTH
from ..lettering import ascent, shorten
from ..primitives import Drawing, Line, Text
from .cells import INSET, SMALLEST, Cell, fill_cell
from .projection import projection_sign

ROW = 9.0  # mm, height of a row of cells
NARROW = 150.0  # mm, a block narrower than this is stacked


@attrs.frozen(kw_only=True)
class TitleBlock:
    """What the block says, all of it words; an empty field leaves an empty cell to write in.

    fingerprint stands in the cell of the title and has none of its own. form says how it is set out: "iso", or "slim"
    for a strip along the foot; punched, that the page keeps a margin for holes.
    """

    owner: str = ""
    title: str = ""
    piece: str = ""  # supplementary title
    number: str = ""
    revision: str = ""
    date: str = ""
    sheet: str = ""
    drawn_by: str = ""
    approved_by: str = ""
    document_type: str = ""
    scale: str = ""
    units: str = ""
    fingerprint: str = ""
    projection: Literal["", "first angle", "third angle"] = attrs.field(
        default="", validator=attrs.validators.in_(("", "first angle", "third angle"))
    )
    form: Literal["iso", "slim"] = "iso"
    punched: bool = False


# field, heading, x, y, width, height: x and width in 180ths of the block, y and height in rows
_Place = tuple[str, str, float, float, float, float]
_WIDE: tuple[_Place, ...] = (
    ("owner", "Shop", 0, 3, 62, 1),
    ("document_type", "Kind of drawing", 0, 2, 62, 1),
    ("drawn_by", "Drawn by", 0, 1, 31, 1),
    ("approved_by", "Approved by", 31, 1, 31, 1),
    ("scale", "Scale", 0, 0, 31, 1),
    ("units", "Units", 31, 0, 31, 1),
    ("title", "Title", 62, 2, 118, 2),
    ("piece", "Part of the work", 62, 1, 118, 1),
    ("number", "Drawing no.", 62, 0, 41, 1),
    ("revision", "Rev.", 103, 0, 11, 1),
    ("date", "Date", 114, 0, 26, 1),
    ("sheet", "Sheet", 140, 0, 20, 1),
    ("projection", "", 160, 0, 20, 1),
)
_STACKED: tuple[_Place, ...] = (
    ("title", "Title", 0, 5, 180, 2),
    ("piece", "Part of the work", 0, 4, 180, 1),
    ("owner", "Shop", 0, 3, 100, 1),
    ("date", "Date", 100, 3, 80, 1),
    ("drawn_by", "Drawn by", 0, 2, 100, 1),
    ("approved_by", "Approved by", 100, 2, 80, 1),
    ("document_type", "Kind of drawing", 0, 1, 100, 1),
    ("number", "Drawing no.", 100, 1, 50, 1),
    ("revision", "Rev.", 150, 1, 30, 1),
    ("scale", "Scale", 0, 0, 55, 1),
    ("units", "Units", 55, 0, 45, 1),
    ("sheet", "Sheet", 100, 0, 36, 1),
    ("projection", "", 136, 0, 44, 1),
)
_UNDER_WALL = 0.9  # mm between a wall and the tallest letter below it
_TITLE_LETTERING, _PIECE_LETTERING = 5.0, 3.5


def block_size(width: float) -> tuple[float, float]:
    """Width and height of a title block of at most this width. [mm]"""
    places = _places(width)
    return min(width, TITLE_BLOCK_WIDTH), ROW * max(y + h for _, _, _, y, _, h in places)


def title_block(block: TitleBlock, width: float, x: float, y: float) -> Drawing:
    """The block alone, its lower left corner at (x, y): thin walls inside, one wide outline."""
    unit = width / 180
    drawn: list[Drawing] = []
    for field, label, left, row, share, rows in _places(width):
        value = getattr(block, field)
        cell = Cell(
            x=x + left * unit,
            y=y + row * ROW,
            width=share * unit,
            height=rows * ROW,
            label=label,
            value="" if field == "projection" else value,
            largest={"title": _TITLE_LETTERING, "piece": _PIECE_LETTERING}.get(field, 2.5),
            bold=field == "title",
        )
        drawn.append(fill_cell(cell))
        if field == "title" and block.fingerprint:
            drawn.append((_in_the_corner(cell, f"FINGERPRINT {block.fingerprint}"),))
        if field == "projection" and value:
            room = (cell.x + 1, cell.y + 0.8, cell.x + cell.width - 1, cell.y + cell.height - 0.8)
            drawn.append(projection_sign(value, room))
    tall = block_size(width)[1]
    edge = Line(((x, y), (x + width, y), (x + width, y + tall), (x, y + tall)), "visible", closed=True)
    return (*(item for part in drawn for item in part), edge)


def _in_the_corner(cell: Cell, words: str) -> Text:
    """Words in the upper right corner of a cell, beside its heading."""
    at = (cell.x + cell.width - INSET, cell.y + cell.height - _UNDER_WALL - ascent(SMALLEST))
    return Text(at, shorten(words, SMALLEST, cell.width * 0.8), SMALLEST, "end")


def _places(width: float) -> tuple[_Place, ...]:
    return _STACKED if width < NARROW else _WIDE
