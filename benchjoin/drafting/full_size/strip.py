"""A strip cut into page-long pieces, their ends keyed and marked with the distance from the datum, glued end to end.

A piece is cut along its line on the left and laid on the tab that the one before shows past its own last line. Keys
and distances stand on both sides of every joint, so a piece can be laid against a tape by itself.

>>> from ..primitives import Line
>>> places = joints(600.0, 250.0, step=10.0, avoid=[200.0])
>>> strip = Strip(name="a", drawing=(Line(((0, 0), (600, 0))),), height=18.0, places=places, words=9.0)
>>> [(piece.key, piece.start, piece.end) for piece in cut_strip(strip)]
[('a1', 0.0, 180.0), ('a2', 180.0, 390.0), ('a3', 390.0, 600.0)]
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

import attrs

from ..lettering import ascent
from ..primitives import Clipped, Drawing, Line, Primitive, Text, bounds, shift
from .seams import seams

TAB = 12.0
"""What a piece shows past its last line, to be glued under the next. [mm]"""
CLEAR = 16.0
"""How far a joint keeps from the marks of the strip, for its own words. [mm]"""
WORDS = (9.5, TAB + 1.0)
"""What is kept clear before and after a joint, for its own words and the end of the tab. [mm]"""
SEEN = 5.0
"""How far past the end of a piece what stands there is kept: more than any pen is wide. [mm]"""
_WORDS = 2.5


@attrs.frozen(kw_only=True)
class Strip:
    """A strip from its datum at x = 0, y from 0 to its height, its joints and both ends, and where words stand. [mm]"""

    name: str
    drawing: Drawing
    height: float
    places: tuple[float, ...]
    words: float


@attrs.frozen(kw_only=True)
class Piece:
    """A piece of a strip: its key, what it covers, and what is drawn on it, its cutting line at x = 0. [mm]"""

    key: str
    start: float
    end: float
    drawing: Drawing


def joints(length: float, reach: float, *, step: float, avoid: Sequence[float]) -> tuple[float, ...]:
    """Where a strip is cut for pages on which a piece reaches so far, tab and all; both ends among them. [mm]

    Raises
    ------
    PaperError
        If a page reaches less than a piece needs.
    """
    return seams(0.0, length, datum=0.0, reach=reach - TAB, step=step, avoid=avoid, clear=CLEAR, even=True)


def cut_strip(strip: Strip, *, read: Callable[[float], str] = str) -> tuple[Piece, ...]:
    """Pieces of a strip, from the datum on; read says how a joint's distance is written."""
    whole = (*strip.drawing, *_joints(strip, read))
    reach = [(item, *bounds((item,))[::2]) for item in whole]
    return tuple(_piece(strip, reach, n) for n in range(1, len(strip.places)))


def _joints(strip: Strip, read: Callable[[float], str]) -> Iterator[Primitive]:
    """A line across the strip at each joint, which pieces meet there and how far it lies from the datum."""
    for n, at in enumerate(strip.places[1:-1], 1):
        yield Line(((at, 0.0), (at, strip.height)), "centre")
        key, far = f"{strip.name}{n}\N{EN DASH}{strip.name}{n + 1}", read(at)
        yield Text((at - 1.2, strip.words), key, _WORDS, "middle", 90.0)
        yield Text((at + 1.2 + ascent(_WORDS), strip.words), key, _WORDS, "middle", 90.0)
        yield Text((at - 5.2, strip.words), far, _WORDS, "middle", 90.0)
        yield Text((at + 5.2 + ascent(_WORDS), strip.words), far, _WORDS, "middle", 90.0)


def _piece(strip: Strip, reach: Sequence[tuple[Primitive, float, float]], n: int) -> Piece:
    """A piece with what reaches into it, of items with their left and right ends."""
    start, end = strip.places[n - 1], strip.places[n]
    last = n == len(strip.places) - 1
    right = end if last else end + TAB
    pen = 0.25  # both ends show their lines whole
    window = (start - pen, -pen, right + pen, strip.height + pen)
    edges = Line(((start, 0.0), (right, 0.0), (right, strip.height), (start, strip.height)), "thin", closed=True)
    near = tuple(item for item, left, far in reach if left <= right + SEEN and far >= start - SEEN)
    drawing = shift((Clipped(near, window), edges), -start, 0.0)
    return Piece(key=f"{strip.name}{n}", start=start, end=end, drawing=drawing)
