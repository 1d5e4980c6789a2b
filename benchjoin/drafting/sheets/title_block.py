"""Border and title block: what stands round every drawing and says what it is.

Borders after ISO 5457, fields after ISO 7200, at the bottom right and 180 mm wide at most. Narrow sheets get
the same fields in narrower or more rows. What comes back is the drawing and the room that is left for views.

>>> frame, room = frame_sheet(210, 297, TitleBlock(title="Honey-house bench", sheet="1 of 3"))
>>> [round(edge, 1) for edge in room]
[10.0, 46.0, 200.0, 287.0]
"""

from __future__ import annotations

from typing import Literal

import attrs

from ...errors import PaperError
from ...trade.standards import BINDING_MARGIN, MARGIN, TITLE_BLOCK_WIDTH
from ..lettering import ascent, shorten
from ..primitives import Box, Drawing, Line, Text
from .cells import INSET, SMALLEST, Cell, fill_cell
from .projection import projection_sign

ROW = 9.0  # mm, height of a row of cells
NARROW = 150.0  # mm, a block narrower than this is stacked
LEAST_WIDTH = 80.0  # mm, below that no field can be read


@attrs.frozen(kw_only=True)
class TitleBlock:
    """What the block says, all of it words; an empty field leaves an empty cell to write in.

    fingerprint stands in the cell of the title and has none of its own.
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
_UNDER_WALL = 0.4  # mm between a wall and the tallest letter below it
_TITLE_LETTERING, _PIECE_LETTERING = 5.0, 3.5


def frame_sheet(
    width: float,
    height: float,
    block: TitleBlock,
    *,
    binding: bool = False,
    margin: float = MARGIN,
) -> tuple[Drawing, Box]:
    """Border and title block of a sheet, and the room left for views inside the border and above the block.

    Parameters
    ----------
    width, height : float
        Size of the sheet. [mm]
    block : TitleBlock
        What is written in the block.
    binding : bool
        Keep 20 mm at the left edge, for holes.
    margin : float
        Width of the other edges. [mm]

    Raises
    ------
    PaperError
        If the sheet is too small to hold the block.
    """
    x0, y0 = (max(margin, BINDING_MARGIN) if binding else margin), margin
    x1, y1 = width - margin, height - margin
    block_width = min(TITLE_BLOCK_WIDTH, x1 - x0)
    block_height = block_size(block_width)[1]
    if block_width < LEAST_WIDTH or y0 + block_height >= y1:
        raise PaperError(f"A sheet of {width:g} × {height:g} mm has no room for a title block.")
    drawn = title_block(block, block_width, x1 - block_width, y0)
    border = Line(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), "border", closed=True)
    return (border, *drawn), (x0, y0 + block_height, x1, y1)


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
