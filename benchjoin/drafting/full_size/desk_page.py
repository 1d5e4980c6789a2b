"""A desk page at full size: margins that a printer reaches, check bars on two sides, a head of words, the room left.

Tiles, story sticks and lay-on patterns are all printed on such pages. What is drawn into the room at full size is
stretched by the printer's factors, the bars as well; the head is not, since nobody lays a rule on words.

>>> page = desk_page((279.4, 215.9), ("Set A", "Trim, and join by the crosses."))
>>> [round(edge, 1) for edge in page.room], page.factors
([19.6, 19.6, 269.4, 182.3], (1.0, 1.0))
"""

from __future__ import annotations

from collections.abc import Sequence

import attrs

from ...errors import PaperError
from ...lengths import Length, mm
from ..lettering import ascent, descent, shorten, wrap
from ..primitives import Box, Drawing, Text, shift, stretch
from ..sheets.figure import Figure
from .check_bars import BESIDE, CheckBars, check_bars
from .correction import PrinterScale, factors, promise

MARGIN = 10.0
"""What every desk printer leaves blank at most, 6 mm as a rule, with some to spare. Common practice, no source. [mm]"""
TITLE, TEXT, PITCH = 3.5, 2.5, 4.0
LEAST = 40.0
"""A room smaller than this is not worth its page. [mm]"""


@attrs.frozen(kw_only=True)
class DeskPage:
    """Size of the page, the room for what is drawn, the printer's factors, and what stands round the room. [mm]

    room is on the paper; at full size it holds room over factors. aside is the box beside the head.
    """

    width: float
    height: float
    room: Box
    aside: Box
    factors: tuple[float, float]
    bars: CheckBars
    furniture: Drawing

    @property
    def holds(self) -> tuple[float, float]:
        """Width and height that the room has at full size. [mm]"""
        (x0, y0, x1, y1), (across, up) = self.room, self.factors
        return (x1 - x0) / across, (y1 - y0) / up

    def lay(self, figure: Figure) -> Figure:
        """What is drawn at full size from the room's lower left corner, as it goes on the page."""
        return figure.stretched(*self.factors).moved(*self.room[:2])


def desk_page(
    size: tuple[float, float],
    head: Sequence[str],
    *,
    printer: PrinterScale | None = None,
    margin: Length = MARGIN,
    aside: float = 0.0,
) -> DeskPage:
    """A page of some size: the first line of the head is its title; aside keeps a width beside the head free. [mm]

    Raises
    ------
    LengthError
        If the margin is no length.
    PaperError
        If margins and head leave too little of the page.
    """
    width, height = size
    edge = mm(margin, zero=True, what="a margin")
    if 2 * edge >= min(width, height):
        raise PaperError(
            f"Margins of {edge:g} mm on both sides leave nothing of a page of {width:g} × {height:g} mm. "
            f"{MARGIN:g} mm is enough for desk printers."
        )
    x0, y0, x1, y1 = edge, edge, width - edge, height - edge
    scale = factors(printer, width, height)
    corner = (x0 + BESIDE, y0 + BESIDE)
    bars = check_bars((x1 - corner[0]) / scale[0], (y1 - corner[1]) / scale[1])
    left = corner[0] + BESIDE  # the head begins beside the upright bar, so that the bar is as long as the page allows
    told = [head[0], *_told(head[1:], bars, printer, x1 - left - aside)]
    words = _head(told, left, y1, x1 - left - aside)
    top = y1 - _height(len(told))
    if top - corner[1] - BESIDE < LEAST or x1 - left - aside < LEAST:
        raise PaperError(
            f"A page of {width:g} × {height:g} mm with margins of {edge:g} mm leaves too little for anything at full "
            f"size. Take larger paper or narrower margins."
        )
    furniture = (*words, *shift(stretch(bars.drawing, *scale), *corner))
    return DeskPage(
        width=width,
        height=height,
        room=(left, corner[1] + BESIDE, x1, top),
        aside=(x1 - aside, top + 2.0, x1, y1),
        factors=scale,
        bars=bars,
        furniture=furniture,
    )


def _told(more: Sequence[str], bars: CheckBars, printer: PrinterScale | None, wide: float) -> list[str]:
    """What the head says below its title, in lines."""
    promised = promise(printer, bars.lying.millimetres)
    said = f"Full size, print at 100 %. {bars.sentence()}. {promised} Where paper and tape disagree, trust the tape."
    return [line for text in (*more, said) for line in wrap(text, TEXT, wide)]


def _height(lines: int) -> float:
    """What a head of so many lines takes, its title among them. [mm]"""
    return ascent(TITLE) + descent(TITLE) + PITCH * (lines - 1) + 3.0


def _head(told: Sequence[str], left: float, top: float, wide: float) -> Drawing:
    high = top - ascent(TITLE)
    title = Text((left, high), shorten(told[0], TITLE, wide, bold=True), TITLE, bold=True)
    first = high - descent(TITLE) - ascent(TEXT) - 0.5
    return (title, *(Text((left, first - PITCH * n), line, TEXT) for n, line in enumerate(told[1:])))
