"""Bars of known length on a full-size page, to lay a rule on before the page is trusted.

Two bars from one zero, along the page and up it, inches on one side and millimetres on the other, as long as there is
room for. A dot on each, three parts and four parts from the zero, lie five parts from each other when the page is
square: where both bars are true and that distance is not, the paper ran askew through the printer.

>>> bars = check_bars(260.0, 190.0)
>>> bars.lying, bars.upright, bars.dots
(Bar(millimetres=250, inches=10), Bar(millimetres=180, inches=7), 300)
"""

from __future__ import annotations

from collections.abc import Iterator

import attrs

from ...errors import PaperError
from ...lengths import INCH
from ..primitives import Disc, Drawing, Line, Point, Primitive, Text

SENTENCE = "Measure both bars before you trust the page"
BESIDE = 4.8
"""What a bar takes on either side of its line. [mm]"""
PAST = 0.5
"""What a bar takes past its end. [mm]"""

_LONG, _SHORT = 3.0, 1.6  # ticks
_TEXT = 2.5
_DOT = 0.7
_FIFTHS = (60, 50, 40, 30, 20, 10)  # lengths of one part, of which the dots are 3 and 4 from the zero and 5 apart


@attrs.frozen
class Bar:
    """How long a bar is on either side."""

    millimetres: int
    inches: int

    @property
    def length(self) -> float:
        """The longer of both sides. [mm]"""
        return max(self.millimetres, self.inches * INCH)

    def __str__(self) -> str:
        return f"{self.millimetres} mm or {self.inches} in"


BARS = tuple(Bar(*sides) for sides in ((250, 10), (200, 8), (180, 7), (150, 6), (100, 4), (50, 2)))
"""Lengths that a rule has a mark for, the longest first."""


@attrs.frozen
class CheckBars:
    """A lying and an upright bar with their zero in (0, 0), and how far their dots lie apart. [mm]"""

    lying: Bar
    upright: Bar
    dots: int
    drawing: Drawing

    def sentence(self) -> str:
        """What to measure, for the head of the page."""
        return f"{SENTENCE}: {self.lying} along the foot, {self.upright} up the side, {self.dots} mm from dot to dot"


def check_bars(wide: float, high: float) -> CheckBars:
    """The longest bars that go into a room, measured from their common zero. [mm]

    Raises
    ------
    PaperError
        If there is not even room for 2 in either way.
    """
    lying, upright = _longest(wide), _longest(high)
    three_across = lying.millimetres < upright.millimetres
    across, up = (3, 4) if three_across else (4, 3)
    part = next(n for n in _FIFTHS if across * n <= lying.millimetres and up * n <= upright.millimetres)
    dots = (Disc((across * part, 0.0), _DOT, filled=True), Disc((0.0, up * part), _DOT, filled=True))
    turned = tuple(_upright(item) for item in _bar(upright))
    return CheckBars(lying, upright, 5 * part, (*_bar(lying), *turned, *dots))


def _longest(room: float) -> Bar:
    for bar in BARS:
        if bar.length + PAST <= room:
            return bar
    raise PaperError(
        f"A full-size page needs room for a check bar of 2 in both ways, and there are {max(room, 0.0):.1f} mm. "
        "Take larger paper or narrower margins."
    )


def _bar(bar: Bar) -> Iterator[Line | Text]:
    """Lying from (0, 0): inches above the line, millimetres below it."""
    yield Line(((0.0, 0.0), (bar.length, 0.0)))
    yield Line(((0.0, -_LONG), (0.0, _LONG)))
    for n in range(1, 2 * bar.inches + 1):
        yield Line(((n * INCH / 2, 0.0), (n * INCH / 2, _SHORT if n % 2 else _LONG)))
    for n in range(10, bar.millimetres + 1, 10):
        if n != bar.millimetres - 10:  # its place is that of the figure
            yield Line(((float(n), 0.0), (float(n), -_SHORT if n % 50 and n != bar.millimetres else -_LONG)))
    yield Text((bar.inches * INCH - 1.0, 1.6), f"{bar.inches} in", _TEXT, "end")
    yield Text((bar.millimetres - 1.0, -1.5 - _TEXT), f"{bar.millimetres} mm", _TEXT, "end")


def _upright(item: Line | Text) -> Primitive:
    """The same bar standing, inches on its right, its figures read from the right."""

    def turned(point: Point) -> Point:
        return point[1], point[0]

    if isinstance(item, Line):
        return Line(tuple(map(turned, item.points)), item.kind, item.closed)
    x, y = turned(item.at)
    beside = -0.4 if x > 0 else 0.0  # letters hang below their line only
    return Text((x + item.height + beside, y), item.string, item.height, item.anchor, 90.0)
