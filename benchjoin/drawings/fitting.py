"""Fitting a view to its paper: the largest standard scale at which it goes on, upright or lying."""

from __future__ import annotations

from collections.abc import Callable

from ..drafting.arrange import place_in
from ..drafting.primitives import Drawing, bounds
from ..drafting.sheet import Sheet
from ..errors import PaperError
from ..layout.layout import Layout
from ..trade.drawing import SCALES
from .page import PLAIN, House, block, both_ways, first_that_fits, papers_from, room, system

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
) -> Sheet:
    """A sheet of a view, on the paper asked for, or on the desk paper of the design's tape, or the next larger one.

    Parameters
    ----------
    layout : Layout
    draw : callable
        The drawing at a scale, anywhere on the page.
    name, kind, title : str
        The sheet's name for files, the kind of drawing, and its title.
    free : bool
        A picture, which is not measured and may be of any size.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """

    def on(size: str) -> Sheet:
        for ratio, label in FREE if free else view_scales(layout):
            drawing = draw(ratio)
            words = block(layout.frame, house or PLAIN, kind=kind, piece=title, scale=label)
            for width, height in both_ways(size):
                x0, y0, x1, y1 = room(width, height, words)
                inside = (x0 + INSET, y0 + INSET, x1 - INSET, y1 - INSET)
                a, b, c, d = bounds(drawing)
                if c - a <= inside[2] - inside[0] and d - b <= inside[3] - inside[1]:
                    return Sheet(
                        name=name,
                        title=title,
                        width=width,
                        height=height,
                        drawing=place_in(drawing, inside),
                        block=words,
                        scale=label,
                    )
        raise PaperError(f"{title} does not fit {size} at any scale. Take larger paper.")

    return first_that_fits(on, papers_from(layout.frame, paper))
