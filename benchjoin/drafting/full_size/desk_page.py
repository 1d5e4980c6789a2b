"""A desk page at full size: margins that a printer reaches, check bars on two sides, a head of words, the room left.

Tiles, story sticks and lay-on patterns are all printed on such pages. What is drawn into the room at full size is
stretched by the printer's factors, the bars as well; the head is not, since nobody lays a rule on words. What names
this state of the paper is stamped in the head when it is known what lies on the page.

>>> page = desk_page((279.4, 215.9), ("Set A", "Trim, and join by the crosses."))
>>> [round(edge, 1) for edge in page.room], page.factors
([19.6, 19.6, 269.4, 182.3], (1.0, 1.0))
"""

from __future__ import annotations

from collections.abc import Sequence

import attrs

from ...errors import PaperError
from ...lengths import Length, mm
from ..lettering import ascent, descent, shorten, text_width, wrap
from ..primitives import Box, Drawing, Point, Text, shift, stretch
from ..sheets.figure import Figure
from .check_bars import BESIDE, CheckBars, check_bars
from .correction import PrinterScale, factors, promise

MARGIN = 10.0
"""What every desk printer leaves blank at most, 6 mm as a rule, with some to spare. Common practice, no source. [mm]"""
TITLE, TEXT, PITCH = 3.5, 2.5, 4.0
APART = 2.5
"""Between the words of a line and the stamp after them. [mm]"""
LEAST = 40.0
"""A room smaller than this is not worth its page. [mm]"""


@attrs.frozen(kw_only=True)
class DeskPage:
    """Size of the page, the room for what is drawn, the printer's factors, and what stands round the room. [mm]

    room is on the paper; at full size it holds room over factors. aside is the box beside the head, stamp where the
    stamp ends, and how long it may be.
    """

    width: float
    height: float
    room: Box
    aside: Box
    factors: tuple[float, float]
    bars: CheckBars
    furniture: Drawing
    stamp: tuple[Point, float]

    @property
    def holds(self) -> tuple[float, float]:
        """Width and height that the room has at full size. [mm]"""
        (x0, y0, x1, y1), (across, up) = self.room, self.factors
        return (x1 - x0) / across, (y1 - y0) / up

    def stamped(self, words: str) -> Drawing:
        """The stamp in the head."""
        at, wide = self.stamp
        return (Text(at, shorten(words, TEXT, wide), TEXT, "end"),) if words else ()

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
    stamp: str = "",
) -> DeskPage:
    """A page of some size: the first line of the head is its title; aside keeps a width beside the head free. [mm]

    stamp is what will be stamped on it, or words as long: beside the title, or in the first line that has room.

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
    line, long = _line_for(stamp, told, x1 - left - aside)
    lines = max(len(told), line + 1)
    levels = _levels(y1, lines)
    words = _head(told, left, levels, x1 - left - aside)
    top = y1 - _height(lines)
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
        stamp=((x1 - aside, levels[line]), long),
    )


def _told(more: Sequence[str], bars: CheckBars, printer: PrinterScale | None, wide: float) -> list[str]:
    """What the head says below its title, in lines."""
    promised = promise(printer, bars.lying.millimetres)
    said = f"Full size, print at 100 %. {bars.sentence()}. {promised} Where paper and tape disagree, trust the tape."
    return [line for text in (*more, said) for line in wrap(text, TEXT, wide)]


def _height(lines: int) -> float:
    """What a head of so many lines takes, its title among them. [mm]"""
    return ascent(TITLE) + descent(TITLE) + PITCH * (lines - 1) + 3.0


def _levels(top: float, lines: int) -> list[float]:
    """Where the lines of a head stand, its title among them. [mm]"""
    high = top - ascent(TITLE)
    first = high - descent(TITLE) - ascent(TEXT) - 0.5
    return [high, *(first - PITCH * n for n in range(lines - 1))]


def _head(told: Sequence[str], left: float, levels: Sequence[float], wide: float) -> Drawing:
    title = Text((left, levels[0]), shorten(told[0], TITLE, wide, bold=True), TITLE, bold=True)
    return (title, *(Text((left, y), line, TEXT) for y, line in zip(levels[1:], told[1:], strict=False)))


def _line_for(stamp: str, told: Sequence[str], wide: float) -> tuple[int, float]:
    """The line of the head that a stamp goes on, a new one if need be, and the room that it has there. [mm]"""
    title = wide - text_width(told[0], TITLE, bold=True) - APART
    after = [wide - text_width(line, TEXT) - APART for line in told[1:]]
    long = text_width(stamp, TEXT)
    ways = ((0, title), *enumerate(after, 1), (len(told), wide))
    return next(((line, room) for line, room in ways if room >= long), ways[-1])
