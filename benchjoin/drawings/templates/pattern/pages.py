"""Pages of lay-on patterns: each distinct notch and lap once, as many on a page as go on it.

A pattern is cut out, folded over the edge, laid with its near shoulder at the height it states, and pricked through:
face and edges come from one piece of paper, so the depth is marked where the shoulder is.
"""

from __future__ import annotations

from collections.abc import Sequence

import attrs

from ....drafting.full_size.correction import PrinterScale
from ....drafting.full_size.desk_page import MARGIN, DeskPage, desk_page
from ....drafting.primitives import Drawing, bounds, shift
from ....drafting.sheets.packing import pack
from ....drafting.sheets.sheet import Sheet
from ....errors import PaperError
from ....layout.layout import Layout
from ....layout.patterns import lay_ons
from ....lengths import Length
from ...making.house import House, both_ways, papers_from
from ..set.page import must_be_buildable
from .draw import draw_lay_on, uses_list

GAP = 4.0
"""Between two patterns. [mm]"""
LIST = 42.0
"""Width of the lists of places beside the patterns. [mm]"""


def notch_patterns(
    layout: Layout,
    *,
    paper: str | None = None,
    margin: Length = MARGIN,
    printer: PrinterScale | None = None,
    house: House | None = None,
) -> tuple[Sheet, ...]:
    """Pages of lay-on patterns; none where no wood is cut.

    Parameters
    ----------
    layout : Layout
    paper : str, optional
        The desk paper of the design's tape, or the next larger one that takes them all, if not given.
    margin : length
        What the printer leaves blank at each edge.
    printer : PrinterScale, optional
        What the printer does to lengths, to be taken back.
    house : House, optional
        Its linework goes on the pages.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    PaperError
        If there is no such paper, margins leave too little of it, or a pattern does not fit.
    """
    must_be_buildable(layout, "A pattern")
    blocks, lists = _blocks(layout)
    if not blocks:
        return ()
    papers = papers_from(layout.frame, paper)
    for size in papers:
        tried = [made for way in both_ways(size) if (made := _pages(layout, blocks, lists, way, printer, margin))]
        if tried:
            sheets = min(tried, key=len)
            return tuple(attrs.evolve(sheet, linework=house.linework) for sheet in sheets) if house else sheets
    raise PaperError(f"A pattern does not fit {papers[-1]} at full size. Take larger paper, or tiles of the set.")


def _blocks(layout: Layout) -> tuple[list[list[Drawing]], list[Drawing]]:
    """Patterns in order, both halves of a lap together, and the lists of all places of each."""
    blocks: list[list[Drawing]] = []
    lists: list[Drawing] = []
    number = 0
    for group in lay_ons(layout):
        numbers = [number + n for n in range(1, len(group) + 1)]
        mates = numbers[::-1] if len(group) > 1 else [None]
        blocks.append([draw_lay_on(layout, *which) for which in zip(group, numbers, mates, strict=True)])
        lists += [uses_list(layout, *which, LIST) for which in zip(group, numbers, mates, strict=True)]
        number = numbers[-1]
    return blocks, lists


def _pages(
    layout: Layout,
    blocks: Sequence[Sequence[Drawing]],
    lists: Sequence[Drawing],
    size: tuple[float, float],
    printer: PrinterScale | None,
    margin: Length,
) -> tuple[Sheet, ...]:
    """The pages on a paper one way up; none if a pattern is larger."""
    page = desk_page(size, _head(layout, 1, 1), printer=printer, margin=margin)
    x0, y0, x1, y1 = page.room
    room = (x0 + 0.5, y0 + 0.5, x1 - 0.5, y1)
    drawn = [item for block in blocks for item in _together(page, block, room[2] - room[0], room[3] - room[1])]
    drawn.sort(key=lambda item: bounds(item)[1] - bounds(item)[3])
    try:
        pages = pack([*drawn, *lists], room, GAP)
    except PaperError:
        return ()
    return tuple(_sheet(layout, size, n, pages, printer, margin) for n in range(1, len(pages) + 1))


def _together(page: DeskPage, block: Sequence[Drawing], wide: float, high: float) -> list[Drawing]:
    """Both halves of a lap beside each other, or one above the other, or by themselves."""
    drawn = [page.draw(item) for item in block]
    if len(drawn) < 2:
        return drawn
    (a0, b0, a1, b1), (c0, d0, c1, d1) = bounds(drawn[0]), bounds(drawn[1])
    if a1 - a0 + c1 - c0 + GAP <= wide:
        return [(*drawn[0], *shift(drawn[1], a1 + GAP - c0, b0 - d0))]
    if b1 - b0 + d1 - d0 + GAP <= high:
        return [(*drawn[0], *shift(drawn[1], a0 - c0, b0 - GAP - d1))]
    return drawn


def _head(layout: Layout, number: int, pages: int) -> tuple[str, ...]:
    of = f" {number} of {pages}" if pages > 1 else ""
    unit = "inches" if layout.frame.tape.unit == "in" else "millimetres"
    return (
        f"Lay-on patterns{of}. {layout.frame.name}",
        f"Cut out, fold down along the dashed lines, lay on the face that is cut, near shoulder at the height stated "
        f"({unit} from the foot), and prick the lines. Hatched wood is waste: saw on its side of the line.",
    )


def _sheet(
    layout: Layout,
    size: tuple[float, float],
    number: int,
    pages: Sequence[Sequence[Drawing]],
    printer: PrinterScale | None,
    margin: Length,
) -> Sheet:
    page = desk_page(size, _head(layout, number, len(pages)), printer=printer, margin=margin)
    several = len(pages) > 1
    return Sheet(
        name=f"patterns-{number}",
        title=f"Lay-on patterns {number}" if several else "Lay-on patterns",
        width=page.width,
        height=page.height,
        drawing=(*page.furniture, *(item for drawn in pages[number - 1] for item in drawn)),
        full_size=True,
    )
