"""Story sticks on desk paper: each cut into page-long pieces, as many side by side on a page as go on it.

A whole set takes one to three pages this way. Pieces are cut out, glued end to end by their keys and checked against
a tape by the distances at their joints; or each piece is laid at its own distance, and nothing is glued at all.
"""

from __future__ import annotations

from collections.abc import Sequence

import attrs

from ....drafting.full_size.correction import PrinterScale
from ....drafting.full_size.desk_page import MARGIN, DeskPage, desk_page
from ....drafting.full_size.strip import cut_strip
from ....drafting.full_size.tiling import row_name
from ....drafting.primitives import Drawing
from ....drafting.sheets.packing import pack
from ....drafting.sheets.sheet import Sheet
from ....layout.layout import Layout
from ....layout.sticks import Stick, sticks
from ....lengths import Length
from ...making.house import House, both_ways, default_paper
from ..pattern.draw import ranges
from ..set.page import must_be_buildable
from .draw import draw_stick

GAP = 2.5
"""Between two pieces. [mm]"""


def story_sticks(
    layout: Layout,
    *,
    paper: str | None = None,
    margin: Length = MARGIN,
    printer: PrinterScale | None = None,
    house: House | None = None,
) -> tuple[Sheet, ...]:
    """Pages of story sticks, one for each kind of leg and of half-lapped rail; none where no part is cut.

    Parameters
    ----------
    layout : Layout
    paper : str, optional
        The desk paper of the design's tape if not given.
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
        If there is no such paper, margins leave too little of it, or a stick has more lanes than go on a page.
    """
    must_be_buildable(layout, "A story stick")
    made = sticks(layout)
    if not made:
        return ()
    size = both_ways(default_paper(layout.frame) if paper is None else paper)[1]
    lines = _legend(made)
    page = desk_page(size, _head(layout, lines, 1, 1), printer=printer, margin=margin)
    reach, read = page.holds[0] - 1.0, layout.frame.tape.read
    strips = [draw_stick(layout, stick, row_name(number), reach) for number, stick in enumerate(made)]
    pieces = [page.draw(piece.drawing) for strip in strips for piece in cut_strip(strip, read=read)]
    x0, y0, x1, y1 = page.room
    pages = pack(pieces, (x0 + 0.5, y0 + 0.5, x1, y1 - 0.5), GAP)
    sheets = tuple(_sheet(layout, size, lines, n, pages, printer, margin) for n in range(1, len(pages) + 1))
    return tuple(attrs.evolve(sheet, linework=house.linework) for sheet in sheets) if house else sheets


def _legend(made: Sequence[Stick]) -> list[str]:
    """What each stick is for: 'a, make 6: A1 A2 B1 …, front left leg, front right leg.'"""
    return [_one(stick, row_name(number)) for number, stick in enumerate(made)]


def _one(stick: Stick, name: str) -> str:
    marks = [part.mark for part in stick.parts]
    names = list(dict.fromkeys(part.identity for part in stick.parts))
    told = f"{name}, make {len(marks)}: {ranges(marks)}; {_first(names, 4, ', ')}."
    if len(stick.lanes) == 1:
        return told
    lanes = (
        f"{lane.called}{'' if len(lane.marks) == len(marks) else f' (only {ranges(lane.marks)})'}"
        for lane in stick.lanes
    )
    return f"{told} Lanes from above: {', '.join(lanes)}."


def _first(words: Sequence[str], most: int, between: str) -> str:
    return between.join(words[:most]) + (" …" if len(words) > most else "")


def _head(layout: Layout, lines: Sequence[str], number: int, pages: int) -> tuple[str, ...]:
    of = f" {number} of {pages}" if pages > 1 else ""
    unit = "inches" if layout.frame.tape.unit == "in" else "millimetres"
    return (
        f"Story sticks{of}. {layout.frame.name}",
        *lines,
        f"Cut out; glue each piece on the tab of the one before, its left line on that one's last line, and check the "
        f"distances from the foot, in {unit}, with a tape. Lay the left end flush with the foot, or with the datum end "
        f"of a rail; prick the lines.",
    )


def _sheet(
    layout: Layout,
    size: tuple[float, float],
    lines: Sequence[str],
    number: int,
    pages: Sequence[Sequence[Drawing]],
    printer: PrinterScale | None,
    margin: Length,
) -> Sheet:
    page: DeskPage = desk_page(size, _head(layout, lines, number, len(pages)), printer=printer, margin=margin)
    return Sheet(
        name=f"story-sticks-{number}",
        title=f"Story sticks {number}" if len(pages) > 1 else "Story sticks",
        width=page.width,
        height=page.height,
        drawing=(*page.furniture, *(item for piece in pages[number - 1] for item in piece)),
        full_size=True,
    )
