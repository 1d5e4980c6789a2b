"""Draw a sheet with cairo on the page of a PDF: the recorded lines as they are, in mm, y up.

The layers are those of every file (`layers`). All lines of a kind are one path and one stroke, and a font is chosen
when it changes. Hundreds of strokes go to cairo's own functions, not through the wrapper's, which asks after each
whether all is well; here that is asked once a page.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any

from ...lengths import INCH
from ..lettering import font_size
from ..linework import Linework
from ..primitives import Clipped, Disc, Fill, Line, Point, Text
from .cairo import Fonts, cairo
from .layers import TONES, counter_clockwise, ends_round, lies_before, paint, runs_of

if TYPE_CHECKING:
    from ..sheets.sheet import Sheet

POINT = INCH / 72  # mm
_ROUND = 2 * math.pi


def draw_page(surface: Any, sheet: Sheet, fonts: Fonts) -> None:
    """Draw a sheet on the page that a PDF surface has open, which is as large as the sheet."""
    context = cairo().Context(surface)
    context.scale(1 / POINT, -1 / POINT)
    context.translate(0, -sheet.height)
    paint(sheet.whole, _Page(context, sheet.linework, fonts))
    context._check_status()


class _Page:
    """Puts layers down on a page."""

    def __init__(self, context: Any, linework: Linework, fonts: Fonts) -> None:
        self.context, self.linework, self.fonts = context, linework, fonts
        self.own, self.at = cairo().cairo, context._pointer
        self.font: tuple[bool, float] | None = None
        self.upright = cairo().Matrix()  # a font where y goes up, in its size

    def cut_out(self, item: Clipped) -> None:
        left, low, right, high = item.box
        self.context.save()
        self.context.rectangle(left, low, right - left, high - low)
        self.context.clip()
        paint(item.drawing, self)
        self.context.restore()
        self.font = None

    def stroke(self, kind: str, lines: Sequence[Line | Disc]) -> None:
        for line in lines:
            if isinstance(line, Line):
                self._ring(line.points, closed=line.closed)
            else:
                self._circle(line)
        library, pen = cairo(), self.linework.pen(kind)
        self.context.set_source_rgb(0, 0, 0)
        self.context.set_line_width(pen.width)
        self.context.set_dash(list(pen.dashes))
        self.context.set_line_cap(library.LINE_CAP_ROUND if ends_round(pen) else library.LINE_CAP_BUTT)
        self.context.set_line_join(library.LINE_JOIN_MITER if pen.dashes else library.LINE_JOIN_ROUND)
        self.context.stroke()

    def fill(self, tone: str, whole: Sequence[Fill | Disc], holed: Sequence[Fill]) -> None:
        library = cairo()
        self.context.set_source_rgb(*[TONES[tone]] * 3)
        for item in whole:
            if isinstance(item, Fill):
                self._ring(counter_clockwise(item.rings[0]), closed=True)
            else:
                self._circle(item)
        self.context.set_fill_rule(library.FILL_RULE_WINDING)
        self.context.fill()
        self.context.set_fill_rule(library.FILL_RULE_EVEN_ODD)
        for item in holed:
            for ring in item.rings:
                self._ring(ring, closed=True)
            self.context.fill()

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
        self.context.set_source_rgb(0, 0, 0)
        for text in texts:
            x, y = text.at
            if not text.turn % 360:
                self._text(text, x, y)
                continue
            self.context.save()
            self.context.translate(x, y)
            self.context.rotate(math.radians(text.turn))
            self._text(text, 0.0, 0.0)
            self.context.restore()
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
        """The font in a weight and height."""
        self.font = bold, height
        self.upright.xx = font_size(height)
        self.upright.yy = -self.upright.xx
        self.own.cairo_set_font_face(self.at, (self.fonts.bold if bold else self.fonts.plain)._pointer)
        self.own.cairo_set_font_matrix(self.at, self.upright._pointer)


def _level(words: str, places: Sequence[Point]) -> Iterator[tuple[str, float, float]]:
    """The letters of a run that follow each other on one level, with the place of the first."""
    begin = 0
    for end in range(1, len(places) + 1):
        if end == len(places) or places[end][1] != places[begin][1]:
            yield words[begin:end], *places[begin]
            begin = end
