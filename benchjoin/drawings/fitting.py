"""Fitting a view to its paper: the largest standard scale at which it goes on, upright or lying."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from ..drafting.arrange import place_in
from ..drafting.primitives import Box, Drawing, bounds, shift
from ..drafting.sheet import Sheet
from ..errors import PaperError
from ..layout.layout import Layout
from ..trade.drawing import SCALES
from .notes import written
from .page import PLAIN, House, block, both_ways, papers_from, room, system

LARGEST = 0.2
"""A view is drawn at 1:5 at most: larger paper does not make it read better."""
INSET = 4.0
"""Between the border and the drawing. [mm]"""


FREE = tuple((1 / n, "not to scale") for n in (5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24, 28, 32, 40, 50, 60, 80, 100))
"""Sizes to try for a picture."""


def view_scales(layout: Layout, largest: float = LARGEST) -> list[tuple[float, str]]:
    """Standard scales of the design's tape, the largest first."""
    scales = [s for s in SCALES if s.system in (system(layout.frame), "both") and s.ratio <= largest]
    return [(s.ratio, s.label) for s in sorted(scales, key=lambda s: -s.ratio)]


CROWDED = 10.0
"""Figures that stand farther from their places than this are hard to follow. [mm]"""


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

    def on(size: str, crowded_on: str) -> tuple[Sheet, float]:
        for ratio, label in scales:
            drawing, off = draw(ratio), shifted(ratio)
            told = [*_about_room(off, size, crowded_on), *notes]
            words = block(layout.frame, shown, kind=kind, piece=title, scale=label)
            for width, height in both_ways(size):
                placed = _placed(drawing, told, room(width, height, words))
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


def _placed(drawing: Drawing, notes: Sequence[str], free: Box) -> Drawing | None:
    """The drawing in the middle of its room and the notes at the foot of it; None where it does not go in."""
    x0, y0, x1, y1 = free[0] + INSET, free[1] + INSET, free[2] - INSET, free[3] - INSET
    low, told = y0, written(notes, x1 - x0)
    if told:
        low -= bounds(told)[1]
        told = shift(told, x0, low)
        low += INSET
    a, b, c, d = bounds(drawing)
    if c - a > x1 - x0 or d - b > y1 - low:
        return None
    return (*place_in(drawing, (x0, low, x1, y1)), *told)
