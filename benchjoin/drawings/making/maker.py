"""The maker of sheets: whatever is drawn becomes a sheet here, and nowhere else.

Drawings give figures. There are five ways to lay them on sheets, a file each: one view at the largest scale that goes
on (`fitting`), many figures packed at one scale (`packed`), tables that run on down the pages (`flowing`), desk pages
at full size (`desk`), and a page as large as it needs to be (`rolled`). All of them hand the figures at their places
to this file, which sees to it that every sheet has the shop's linework, and that sheets of one kind are numbered.
"""

from __future__ import annotations

from collections.abc import Sequence

import attrs

from ...drafting.primitives import Box, Drawing
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...drafting.sheets.title_block import TitleBlock
from ...trade.paper import paper_size
from .asked import Asked
from .house import House, block, room

Item = Figure | Drawing
"""What goes on a page: a figure, or what stands about it."""


def make(
    *items: Item,
    house: House,
    name: str,
    title: str,
    size: tuple[float, float],
    words: TitleBlock | None = None,
    full_size: bool = False,
    chapters: tuple[str, ...] = (),
) -> Sheet:
    """A sheet of a size, with items in the order in which they are drawn; the contents call it by chapters. [mm]"""
    return Sheet(
        name=name,
        title=title,
        width=size[0],
        height=size[1],
        drawing=[stroke for item in items for stroke in (item.drawing if isinstance(item, Figure) else item)],
        figures=tuple(item for item in items if isinstance(item, Figure)),
        block=words,
        scale=words.scale if words else "1:1",
        full_size=full_size,
        linework=house.linework,
        chapters=chapters or (title,),
    )


def make_all(
    pages: Sequence[Sequence[Item]],
    *,
    house: House,
    name: str,
    title: str,
    size: tuple[float, float],
    words: TitleBlock | None = None,
    counted: bool = False,
    full_size: bool = False,
) -> tuple[Sheet, ...]:
    """Sheets of one kind: "x", or "x-1", "x-2"; pages for the wood are numbered even where there is one.

    counted has the title block say which of how many it is.
    """
    several = len(pages) > 1
    sheets = []
    for number, items in enumerate(pages, 1):
        own = words
        if words and counted and several:
            own = attrs.evolve(words, piece=f"{words.piece}, {number} of {len(pages)}")
        sheet = make(
            *items,
            house=house,
            name=f"{name}-{number}" if several or full_size else name,
            title=f"{title} {number}" if several else title,
            size=size,
            words=own,
            full_size=full_size,
            chapters=(title,),
        )
        sheets.append(sheet)
    return tuple(sheets)


@attrs.frozen(kw_only=True)
class Ruled:
    """A page for what is read: its size, its title block, and the room within. [mm]"""

    size: tuple[float, float]
    words: TitleBlock
    inside: Box


INSET = 5.0
"""Between the border and what is written. [mm]"""


def ruled(asked: Asked, paper: str) -> Ruled:
    """An upright page of a paper, for lists."""
    size = paper_size(paper)
    words = block(asked.frame, asked.house, kind="", piece="", scale="")
    return Ruled(size=size, words=words, inside=within(room(*size, words), INSET))


def within(box: Box, by: float) -> Box:
    """A box less a rim. [mm]"""
    return (box[0] + by, box[1] + by, box[2] - by, box[3] - by)
