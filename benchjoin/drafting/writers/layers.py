"""In which order a drawing is laid down, for whoever writes it: the one place where that is decided.

Cut-outs of other drawings lie lowest, then white patches, which blank out what cut-outs drew; then lines, a kind at a
time, since readers and writers pay for each path and not for each stroke; then black, and text on top. A `Painter`
says how each of these is put down: as elements of SVG (`svg`), or with cairo on a page of a PDF (`cairo_page`).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Protocol

from ..lettering import Run, set_runs, text_width
from ..linework import KINDS, Pen
from ..primitives import SHARES, Clipped, Disc, Drawing, Fill, Line, Point, Text

# none of these is printable, in Python's own words, so most texts need not be searched
_UNWRITABLE = re.compile("[\x00-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
INK = "black"
TONES = {"white": 1.0, INK: 0.0}
"""How light each tone is, from black to white, in the order of laying down; all but ink lie below lines."""
_ROUND_FROM = 0.5  # mm, lines as wide as this end round


class Painter(Protocol):
    """How the layers of a drawing are put down."""

    def cut_out(self, item: Clipped) -> None:
        """A drawing of which a box is seen."""

    def fill(self, tone: str, whole: Sequence[Fill | Disc], holed: Sequence[Fill]) -> None:
        """Regions of one tone: those of a single ring in one path, and those with holes, each in its own."""

    def stroke(self, kind: str, lines: Sequence[Line | Disc]) -> None:
        """All lines and circles of one kind."""

    def letter(self, texts: Sequence[Text]) -> None:
        """All texts, in the order in which they were recorded."""


class _Layers:
    """A drawing, sorted; what is empty is not drawn."""

    def __init__(self, drawing: Drawing) -> None:
        self.cut_outs: list[Clipped] = []
        self.strokes: dict[str, list[Line | Disc]] = {}
        self.whole: dict[str, list[Fill | Disc]] = {}
        self.holed: dict[str, list[Fill]] = {}
        self.texts: list[Text] = []
        for item in drawing:
            if isinstance(item, Text):
                if item.string:
                    self.texts.append(item)
            elif isinstance(item, Line):
                if len(item.points) > 1:
                    self.strokes.setdefault(item.kind, []).append(item)
            else:
                self._keep(item)

    def _keep(self, item: Fill | Disc | Clipped) -> None:
        if isinstance(item, Clipped):
            self.cut_outs.append(item)
        elif isinstance(item, Fill):
            if len(item.rings) > 1:
                self.holed.setdefault(item.tone, []).append(item)
            elif item.rings:
                self.whole.setdefault(item.tone, []).append(item)
        elif item.filled:
            self.whole.setdefault(INK, []).append(item)
        else:
            self.strokes.setdefault(item.kind, []).append(item)

    def fill(self, tone: str, painter: Painter) -> None:
        if tone in self.whole or tone in self.holed:
            painter.fill(tone, self.whole.get(tone, ()), self.holed.get(tone, ()))


def paint(drawing: Drawing, painter: Painter) -> None:
    """Hand the layers of a drawing to a painter, the lowest first; nothing is called for a layer that is empty."""
    layers = _Layers(drawing)
    for item in layers.cut_outs:
        painter.cut_out(item)
    for tone in TONES:
        if tone != INK:
            layers.fill(tone, painter)
    for kind in KINDS:
        if kind in layers.strokes:
            painter.stroke(kind, layers.strokes[kind])
    layers.fill(INK, painter)
    if layers.texts:
        painter.letter(layers.texts)


def counter_clockwise(ring: tuple[Point, ...]) -> tuple[Point, ...]:
    """Rings that go round one way never cancel where they overlap."""
    x0, y0 = ring[-1]
    area = 0.0
    for x1, y1 in ring:
        area += x0 * y1 - x1 * y0
        x0, y0 = x1, y1
    return ring if area >= 0 else ring[::-1]


def ends_round(pen: Pen) -> bool:
    """Wide lines end round, so that two which meet in a corner close it; the others end square."""
    return not pen.dashes and pen.width >= _ROUND_FROM


def runs_of(text: Text) -> tuple[Run, ...]:
    """Runs of a text that has letters; what no file can hold is a question mark."""
    return set_runs(_writable(text.string), text.height, bold=text.bold)


def lies_before(text: Text) -> float:
    """How far before the place that holds it a text begins. [mm]"""
    share = SHARES[text.anchor]
    return share * text_width(_writable(text.string), text.height, bold=text.bold) if share else 0.0


def _writable(string: str) -> str:
    return string if string.isprintable() else _UNWRITABLE.sub("?", string)
