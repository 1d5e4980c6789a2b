"""Story sticks on desk paper: each cut into page-long pieces, as many side by side on a page as go on it.

A whole set takes one to three pages this way. Pieces are cut out, glued end to end by their keys and checked against
a tape by the distances at their joints; or each piece is laid at its own distance, and nothing is glued at all.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Unpack

from ....drafting.full_size.desk_page import DeskPage
from ....drafting.full_size.strip import cut_strip
from ....drafting.full_size.tiling import row_name
from ....drafting.primitives import Box
from ....drafting.sheets.figure import Figure
from ....drafting.sheets.sheet import Sheet
from ....layout.layout import Layout
from ....layout.sticks import Stick, sticks
from ....phrases import counted
from ....shop.done import marked_notes
from ...making.asked import Asked, OnDeskPaper, ask
from ...making.buildable import must_be_buildable
from ...making.desk import packed_on_desks
from ...making.house import both_ways
from ..marking import ranges
from .draw import draw_stick

GAP = 2.5
"""Between two pieces. [mm]"""
RIM = (0.5, 0.5, 0.0, 0.5)
"""What stays free at the sides of the room. [mm]"""


def story_sticks(layout: Layout, **options: Unpack[OnDeskPaper]) -> tuple[Sheet, ...]:
    """Pages of story sticks, one for each kind of leg and of half-lapped rail; none where no part is cut.

    Parameters
    ----------
    layout : Layout
    **options
        paper, margin, printer and house, as `Asked` has them.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    PaperError
        If there is no such paper, margins leave too little of it, or a stick has more lanes than go on a page.
    """
    return stick_pages(layout, ask(layout, OnDeskPaper, options))


def stick_pages(layout: Layout, asked: Asked) -> tuple[Sheet, ...]:
    """The story sticks, always on lying paper."""
    must_be_buildable(layout, "A story stick is not drawn")
    made = sticks(layout)
    if not made:
        return ()
    lines = [*_legend(made), *marked_notes(layout.frame, layout.parts)]

    def head(number: int, pages: int) -> tuple[str, ...]:
        return _head(layout, lines, number, pages)

    def figures(page: DeskPage, _: Box) -> list[Figure]:
        return [page.lay(piece) for number, one in enumerate(made) for piece in _pieces(layout, one, number, page)]

    lying = [both_ways(asked.papers[0])[1:]]
    return packed_on_desks(asked, lying, head, figures, name="story-sticks", title="Story sticks", rim=RIM, gap=GAP)


def _pieces(layout: Layout, stick: Stick, number: int, page: DeskPage) -> list[Figure]:
    strip = draw_stick(layout, stick, row_name(number), page.holds[0] - 1.0)
    shows = tuple(dict.fromkeys(part.identity for part in stick.parts))
    pieces = cut_strip(strip, read=layout.frame.tape.read)
    return [Figure(name=f"Stick {piece.key}", drawing=piece.drawing, shows=shows) for piece in pieces]


def _legend(made: Sequence[Stick]) -> list[str]:
    """What each stick is for: 'a, for 6 legs: A1 A2 B1 …; front left leg, front right leg.'"""
    return [_one(stick, row_name(number)) for number, stick in enumerate(made)]


def _one(stick: Stick, name: str) -> str:
    marks = [part.mark for part in stick.parts]
    names = list(dict.fromkeys(part.identity for part in stick.parts))
    told = (
        f"{name}, for {counted(len(marks), stick.parts[0].slot.role.word)}: {ranges(marks)}; {_first(names, 4, ', ')}."
    )
    told += "".join(
        f" On the {called} the same lines, no waste: {', '.join(mates)}."
        for lane in stick.lanes
        for called, mates in lane.also
    )
    if len(stick.lanes) == 1:
        return told
    lanes = (
        f"{lane.title}{'' if len(lane.marks) == len(marks) else f' (only {ranges(lane.marks)})'}"
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
