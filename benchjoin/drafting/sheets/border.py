"""The border of a page with its title block or strip, and the room that is left.

Borders after ISO 5457, with 20 mm for holes where a page is bound: on its left, and along its upper long edge where
desk paper lies, since such a page is turned by a quarter into a binder whose other pages stand. Larger sheets are
folded, and are bound on their left.

>>> from .title_block import TitleBlock
>>> frame, room = frame_sheet(210, 297, TitleBlock(title="Honey-house bench", sheet="1 of 3"))
>>> [round(edge, 1) for edge in room]
[10.0, 46.0, 200.0, 287.0]
>>> frame, room = frame_sheet(210, 297, TitleBlock(form="slim", punched=True))
>>> [round(edge, 1) for edge in room]
[20.0, 22.0, 200.0, 287.0]
"""

from __future__ import annotations

from ...errors import PaperError
from ...trade.standards import BINDING_MARGIN, MARGIN, TITLE_BLOCK_WIDTH
from ..primitives import Box, Drawing, Line
from .strip import strip, strip_height
from .title_block import TitleBlock, block_size, title_block

LEAST_WIDTH = 80.0
"""In a block or strip that is narrower no field can be read. [mm]"""
DESK = 216.0
"""Paper whose short side is no longer goes into a binder as it is: Letter and A4. [mm]"""


def frame_sheet(width: float, height: float, block: TitleBlock) -> tuple[Drawing, Box]:
    """Border and title block of a sheet, and the room left for views inside the border and above the block. [mm]

    Raises
    ------
    PaperError
        If the sheet is too small to hold the block.
    """
    x0, y0, x1, y1 = border_of(width, height, punched=block.punched)
    room = room_over(width, height, block)
    wide = x1 - x0 if block.form == "slim" else min(TITLE_BLOCK_WIDTH, x1 - x0)
    drawn = (strip if block.form == "slim" else title_block)(block, wide, x1 - wide, y0)
    border = Line(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), "border", closed=True)
    return (border, *drawn), room


def room_over(width: float, height: float, block: TitleBlock) -> Box:
    """The room left for views inside the border and above the block, which is not drawn for it. [mm]

    Raises
    ------
    PaperError
        If the sheet is too small to hold the block.
    """
    x0, y0, x1, y1 = border_of(width, height, punched=block.punched)
    wide = x1 - x0 if block.form == "slim" else min(TITLE_BLOCK_WIDTH, x1 - x0)
    tall = strip_height(block) if block.form == "slim" else block_size(wide)[1]
    if wide < LEAST_WIDTH or y0 + tall >= y1:
        raise PaperError(f"A sheet of {width:g} × {height:g} mm has no room for a title block.")
    return x0, y0 + tall, x1, y1


def beside_block(width: float, height: float, block: TitleBlock) -> Box:
    """The room between the border and the block on its left, which is nothing beside a strip. [mm]"""
    x0, y0, x1, _ = border_of(width, height, punched=block.punched)
    wide, tall = block_size(x1 - x0) if block.form == "iso" else (x1 - x0, 0.0)
    return x0, y0, x1 - wide, y0 + tall


def border_of(width: float, height: float, *, punched: bool) -> Box:
    """The border of a sheet, away from the edge that is punched. [mm]"""
    at_the_head = width > height and height <= DESK
    left = BINDING_MARGIN if punched and not at_the_head else MARGIN
    head = BINDING_MARGIN if punched and at_the_head else MARGIN
    return left, MARGIN, width - MARGIN, height - head
