"""A bar of known length on a full-size page, to lay a tape on before the page is trusted.

Six inches on one side and 150 mm on the other, from one common zero; across and, where a printer may stretch
one way only, upright as well.

>>> from benchjoin.drafting.primitives import bounds
>>> x0, y0, x1, y1 = bounds(check_bar((0, 0)))
>>> x1 - x0 <= 170, y1 - y0 <= 16
(True, True)
"""

from __future__ import annotations

from typing import Literal

from .primitives import Disc, Drawing, Fill, Line, Point, Primitive, Text, shift

INCHES, INCH = 6, 25.4
MILLIMETRES = 150
ROOM = (170.0, 16.0)  # what a bar takes, lying
SENTENCE = "Measure this bar before you trust the page"

_BASE = 8.0  # height of the line that both scales hang on
_LONG, _MIDDLE, _SHORT = 4.0, 2.6, 1.6  # ticks
_FIFTY = 3.2  # the long ticks of the other side, which end above the sentence


def check_bar(at: Point, along: Literal["x", "y"] = "x") -> Drawing:
    """The bar, its lower left corner at `at`: lying (170 × 16 mm), or upright and read from the right."""
    bar = _lying()
    if along == "y":
        bar = tuple(_upright(item) for item in bar)
    return shift(bar, *at)


def check_bars(x: float, y: float) -> Drawing:
    """A lying and an upright bar, in an L from the corner (x, y)."""
    thick = ROOM[1]
    return (*check_bar((x + thick, y), "x"), *check_bar((x, y + thick), "y"))


def _lying() -> Drawing:
    ends = INCHES * INCH
    ticks = [_tick(n * INCH / 2, _LONG if n % 2 == 0 else _MIDDLE) for n in range(2 * INCHES + 1)]
    ticks += [_tick(float(n), -(_FIFTY if n % 50 == 0 else _SHORT)) for n in range(0, MILLIMETRES + 1, 10)]
    return (
        Line(((0, _BASE), (ends, _BASE))),
        *ticks,
        Text((ends + 1.5, _BASE + 1.0), f"{INCHES} in"),
        Text((ends + 1.5, _BASE - 3.5), f"{MILLIMETRES} mm"),
        Text((0, 0.8), SENTENCE),
    )


def _tick(x: float, height: float) -> Line:
    return Line(((x, _BASE), (x, _BASE + height)))


def _upright(item: Primitive) -> Primitive:
    """A quarter turn counter-clockwise, moved back to the right of the corner."""

    def turned(point: Point) -> Point:
        return ROOM[1] - point[1], point[0]

    if isinstance(item, Line):
        return Line(tuple(map(turned, item.points)), item.kind, item.closed)
    if isinstance(item, Fill):
        return Fill(tuple(tuple(map(turned, ring)) for ring in item.rings), item.tone)
    if isinstance(item, Disc):
        return Disc(turned(item.centre), item.radius, item.kind, item.filled)
    return Text(turned(item.at), item.string, item.height, item.anchor, item.turn + 90.0, item.bold)
