"""Fitting a view to its paper: the largest standard scale at which it goes on, upright or lying."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Sequence
from functools import cache

from ...drafting.primitives import Box, Drawing, bounds, shift
from ...drafting.sheets.arrange import place_in
from ...drafting.sheets.sheet import Sheet
from ...drafting.sheets.title_block import TitleBlock
from ...errors import PaperError
from ...layout.layout import Layout
from ...trade.standards import SCALES
from .house import PLAIN, House, block, both_ways, papers_from, room, system
from .notes import counted, written

LARGEST = 0.2
"""A view is drawn at 1:5 at most: larger paper does not make it read better."""
INSET = 4.0
"""Between the border and the drawing. [mm]"""
FREE = tuple((1 / n, "not to scale") for n in (5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24, 28, 32, 40, 50, 60, 80, 100))
"""Sizes to try for a picture."""
NARROWEST = 45.0
"""A column of notes beside a view is at least so wide. [mm]"""
CROWDED = 10.0
"""Figures that stand farther from their places than this are hard to follow. [mm]"""


def view_scales(layout: Layout, largest: float = LARGEST) -> list[tuple[float, str]]:
    """Standard scales of the design's tape, the largest first."""
    scales = [s for s in SCALES if s.system in (system(layout.frame), "both") and s.ratio <= largest]
    return [(s.ratio, s.label) for s in sorted(scales, key=lambda s: -s.ratio)]


def _calm(scale: float) -> float:
    """Of a drawing without sizes: no figure is shifted."""
    return 0.0


def fit_view(
    layout: Layout,
    draw: Callable[[float], Drawing],
    *,
    name: str,
    kind: str,
    title: str,
    paper: str | None,
    house: House | None,
    free: bool = False,
    notes: Sequence[str] = (),
    shifted: Callable[[float], float] = _calm,
) -> Sheet:
    """A sheet of a view, on the paper asked for, or on the desk paper of the design's tape, or a larger one.

    The largest standard scale at which the view goes on is taken. Figures that crowd are staggered; where that shifts
    them farther than can be followed, larger paper is taken, and the sheet says so. Where no paper helps, the sheet
    sends the reader to the part drawings.

    Parameters
    ----------
    layout : Layout
    draw : callable
        The drawing at a scale, anywhere on the page.
    name, kind, title : str
        The sheet's name for files, the kind of drawing, and its title.
    paper : str or None
        The paper asked for.
    house : House or None
        Shop, names, date, revision and the like for the title block.
    free : bool
        A picture, which is not measured and may be of any size.
    notes : sequence of str
        What is written below the view.
    shifted : callable
        How far figures are shifted at a scale. [mm]

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    shown = house or PLAIN
    scales = FREE if free else view_scales(layout)
    drawn = cache(draw)

    def words_at(label: str) -> TitleBlock:
        return block(layout.frame, shown, kind=kind, piece=title, scale=label)

    def goes_on(size: str, number: int) -> bool:
        ratio, label = scales[number]
        rooms = [_inside(room(*way, words_at(label))) for way in both_ways(size)]
        return any(_goes_in(bounds(drawn(ratio)), inside) for inside in rooms)

    def on(size: str, crowded_on: str) -> tuple[Sheet, float]:
        first = bisect_left(range(len(scales)), True, key=lambda number: goes_on(size, number)) if free else 0
        for ratio, label in scales[first:]:
            drawing, off = drawn(ratio), shifted(ratio)
            about, words = _about_room(off, size, crowded_on), words_at(label)
            ways = [about + list(notes)] if free or not notes else [about + list(notes), about + counted(notes)]
            for width, height in both_ways(size):
                placed = _placed(drawing, ways, _inside(room(width, height, words)))
                if placed:
                    sheet = Sheet(
                        name=name,
                        title=title,
                        width=width,
                        height=height,
                        drawing=placed,
                        block=words,
                        scale=label,
                        linework=shown.linework,
                    )
                    return sheet, off
        raise PaperError(f"{title} does not fit {size} at any scale. Take larger paper.")

    return _calmest(on, papers_from(layout.frame, paper))


def _calmest(on: Callable[[str, str], tuple[Sheet, float]], papers: Sequence[str]) -> Sheet:
    """The sheet on the first paper where figures can be followed, or else where they are shifted least."""
    tried: list[tuple[float, int, Sheet]] = []
    crowded_on = ""
    for number, paper in enumerate(papers):
        try:
            sheet, off = on(paper, crowded_on)
        except PaperError:
            if number == len(papers) - 1 and not tried:
                raise
            continue
        if off <= CROWDED:
            return sheet
        crowded_on = crowded_on or paper
        tried.append((off, number, sheet))
    return min(tried, key=lambda one: one[:2])[2]


def _about_room(off: float, paper: str, crowded_on: str) -> list[str]:
    """What a sheet says of itself where figures crowd."""
    if off > CROWDED:
        return ["Figures stand away from their edges here; the part drawings show these places larger."]
    return [f"On {paper}, since the figures would crowd on {crowded_on}."] if crowded_on else []


def _inside(free: Box) -> Box:
    return (free[0] + INSET, free[1] + INSET, free[2] - INSET, free[3] - INSET)


def _placed(drawing: Drawing, ways: Sequence[Sequence[str]], inside: Box) -> Drawing | None:
    """The drawing in the middle of its room with the notes below or beside it; None where it does not go in.

    Notes do not make a view smaller: where they have no room they are told in a shorter way, the next one of `ways`. A
    picture, which is not to scale, makes room for them.
    """
    size = bounds(drawing)
    if not _goes_in(size, inside):
        return None
    for told in ways:
        for place in (_below, _beside):
            placed = place(drawing, size, told, inside)
            if placed:
                return placed
    return None


def _below(drawing: Drawing, size: Box, notes: Sequence[str], inside: Box) -> Drawing | None:
    """The drawing, and notes at the foot of its room."""
    x0, y0, x1, y1 = inside
    told, low = written(notes, x1 - x0), y0
    if told:
        foot = y0 - bounds(told)[1]
        told, low = shift(told, x0, foot), foot + INSET
    return (*place_in(drawing, (x0, low, x1, y1)), *told) if _goes_in(size, (x0, low, x1, y1)) else None


def _beside(drawing: Drawing, size: Box, notes: Sequence[str], inside: Box) -> Drawing | None:
    """The drawing, and a column of notes on its right, from the top down."""
    x0, y0, x1, y1 = inside
    right = x0 + (size[2] - size[0]) + 2 * INSET
    if not notes or x1 - right < NARROWEST:
        return None
    told = shift(written(notes, x1 - right), right, y1)
    room_left = (x0, y0, right - 2 * INSET, y1)
    return (*place_in(drawing, room_left), *told) if bounds(told)[1] >= y0 else None


def _goes_in(size: Box, inside: Box) -> bool:
    a, b, c, d = size
    return c - a <= inside[2] - inside[0] + 1e-9 and d - b <= inside[3] - inside[1] + 1e-9
