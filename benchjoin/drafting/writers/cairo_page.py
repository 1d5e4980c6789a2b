"""Draw a sheet with cairo on the page of a PDF: the recorded lines as they are, in mm, y up.

The layers are those of every file (`layers`). All lines of a kind are one path and one stroke, and a font is chosen
when it changes. Whether all went well is asked once a page.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any

from ...lengths import INCH
from ..lettering import font_size
from ..linework import Linework
from ..primitives import Clipped, Disc, Fill, Line, Point, Text
from .cairo import Fonts, cairo, check, matrix
from .layers import TONES, counter_clockwise, ends_round, lies_before, paint, runs_of

if TYPE_CHECKING:
    from ..sheets.sheet import Sheet

POINT = INCH / 72  # mm
_ROUND = 2 * math.pi
_BUTT, _ROUND_CAP = 0, 1  # CAIRO_LINE_CAP_BUTT, CAIRO_LINE_CAP_ROUND
_MITER, _ROUND_JOIN = 0, 1  # CAIRO_LINE_JOIN_MITER, CAIRO_LINE_JOIN_ROUND
_WINDING, _EVEN_ODD = 0, 1  # CAIRO_FILL_RULE_WINDING, CAIRO_FILL_RULE_EVEN_ODD


def draw_page(surface: Any, sheet: Sheet, fonts: Fonts) -> None:
    """Draw a sheet on the page that a PDF surface has open, which is as large as the sheet."""
    own = cairo()
    at = own.cairo_create(surface)
    try:
        own.cairo_scale(at, 1 / POINT, -1 / POINT)
        own.cairo_translate(at, 0, -sheet.height)
        paint(sheet.whole, _Page(at, sheet.linework, fonts))
        check(own.cairo_status(at))
    finally:
        own.cairo_destroy(at)


class _Page:
    """Puts layers down on a page."""

    def __init__(self, at: Any, linework: Linework, fonts: Fonts) -> None:
        self.own, self.at, self.linework, self.fonts = cairo(), at, linework, fonts
        self.font: tuple[bool, float] | None = None

    def cut_out(self, item: Clipped) -> None:
        left, low, right, high = item.box
        self.own.cairo_save(self.at)
        self.own.cairo_rectangle(self.at, left, low, right - left, high - low)
        self.own.cairo_clip(self.at)
        paint(item.drawing, self)
        self.own.cairo_restore(self.at)
        self.font = None

    def stroke(self, kind: str, lines: Sequence[Line | Disc]) -> None:
        for line in lines:
            if isinstance(line, Line):
                self._ring(line.points, closed=line.closed)
            else:
                self._circle(line)
        own, at, pen = self.own, self.at, self.linework.pen(kind)
        own.cairo_set_source_rgb(at, 0, 0, 0)
        own.cairo_set_line_width(at, pen.width)
        own.cairo_set_dash(at, list(pen.dashes), len(pen.dashes), 0)
        own.cairo_set_line_cap(at, _ROUND_CAP if ends_round(pen) else _BUTT)
        own.cairo_set_line_join(at, _MITER if pen.dashes else _ROUND_JOIN)
        own.cairo_stroke(at)

    def fill(self, tone: str, whole: Sequence[Fill | Disc], holed: Sequence[Fill]) -> None:
        own, at = self.own, self.at
        own.cairo_set_source_rgb(at, *[TONES[tone]] * 3)
        for item in whole:
            if isinstance(item, Fill):
                self._ring(counter_clockwise(item.rings[0]), closed=True)
            else:
                self._circle(item)
        own.cairo_set_fill_rule(at, _WINDING)
        own.cairo_fill(at)
        own.cairo_set_fill_rule(at, _EVEN_ODD)
        for item in holed:
            for ring in item.rings:
                self._ring(ring, closed=True)
            own.cairo_fill(at)

    def _ring(self, points: Sequence[Point], *, closed: bool) -> None:
        at, line_to = self.at, self.own.cairo_line_to
        x, y = points[0]
        self.own.cairo_move_to(at, x, y)
        for x, y in points[1:]:
            line_to(at, x, y)
        if closed:
            self.own.cairo_close_path(at)

    def _circle(self, disc: Disc) -> None:
        x, y = disc.centre
        self.own.cairo_new_sub_path(self.at)
        self.own.cairo_arc(self.at, x, y, disc.radius, 0.0, _ROUND)
        self.own.cairo_close_path(self.at)

    def letter(self, texts: Sequence[Text]) -> None:
        own, at = self.own, self.at
        own.cairo_set_source_rgb(at, 0, 0, 0)
        for text in texts:
            x, y = text.at
            if not text.turn % 360:
                self._text(text, x, y)
                continue
            own.cairo_save(at)
            own.cairo_translate(at, x, y)
            own.cairo_rotate(at, math.radians(text.turn))
            self._text(text, 0.0, 0.0)
            own.cairo_restore(at)
            self.font = None  # cairo has gone back to the font before

    def _text(self, text: Text, x: float, y: float) -> None:
        x -= lies_before(text)
        for words, height, places in runs_of(text):
            if self.font != (text.bold, height):
                self._choose(text.bold, height)
            if len(places) == 1:
                self._show(words, x + places[0][0], y + places[0][1])
                continue
            for letters, along, up in _level(words, places):
                self._show(letters, x + along, y + up)

    def _show(self, letters: str, x: float, y: float) -> None:
        self.own.cairo_move_to(self.at, x, y)
        self.own.cairo_show_text(self.at, letters.encode())

    def _choose(self, bold: bool, height: float) -> None:
        """The font in a weight and height, where y goes up."""
        self.font = bold, height
        size = font_size(height)
        self.own.cairo_set_font_face(self.at, self.fonts.bold if bold else self.fonts.plain)
        self.own.cairo_set_font_matrix(self.at, matrix(size, -size))


def _level(words: str, places: Sequence[Point]) -> Iterator[tuple[str, float, float]]:
    """The letters of a run that follow each other on one level, with the place of the first."""
    begin = 0
    for end in range(1, len(places) + 1):
        if end == len(places) or places[end][1] != places[begin][1]:
            yield words[begin:end], *places[begin]
            begin = end
