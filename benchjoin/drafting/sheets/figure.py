"""A figure: a named block of a drawing, at its paper scale, before it has its place on a page.

Drawings give figures, and whoever makes sheets of them moves them about. A figure knows its size, what it shows, what
was found about it, and where it may go on on another page. Its fingerprint says whether it is still the same figure.

>>> from ..primitives import Line
>>> bar = Figure(name="Bar", drawing=(Line(((0, 0), (40, 10))),))
>>> bar.size, bar.fingerprint == bar.moved(100, 50).fingerprint
((40.0, 10.0), True)
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator, Sequence
from functools import cached_property

import attrs

from ...findings import Finding
from ..primitives import Box, Clipped, Disc, Drawing, Fill, Line, Point, Primitive, bounds, shift, stretch

_FINE = 1000.0
"""Places are told apart by a thousandth of a millimetre."""
LETTERS = 10
"""Of a fingerprint; enough that no two figures of a shop share one by chance."""


def _strokes(value: Iterable[Primitive]) -> Drawing:
    return tuple(value)


@attrs.frozen(kw_only=True)
class Figure:
    """A named block of a drawing. [mm]

    Parameters
    ----------
    name : str
        What it is called, for people.
    drawing : iterable of primitives
        What it draws, anywhere.
    shows : tuple of str
        Names of the parts that it shows.
    findings : tuple of Finding
        What was found about it.
    shifted : float
        How far the size stands that had to leave its place the most.
    breaks : tuple of float
        Heights at which it begins, may go on on another page, and ends, from the top down; none: it stays whole.
    again : iterable of primitives
        What is drawn above the rest where it goes on, such as the heading of a table, its upper left corner at (0, 0).
    """

    name: str
    drawing: Drawing = attrs.field(converter=_strokes)
    shows: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()
    shifted: float = 0.0
    breaks: tuple[float, ...] = ()
    again: Drawing = attrs.field(default=(), converter=_strokes)

    @cached_property
    def bounds(self) -> Box:
        """Smallest box round it: left, bottom, right, top. [mm]"""
        return bounds(self.drawing)

    @property
    def size(self) -> tuple[float, float]:
        """Width and height. [mm]"""
        left, low, right, high = self.bounds
        return right - left, high - low

    @cached_property
    def fingerprint(self) -> str:
        """A short name of what it draws, wherever it stands: the same in every process, another if a line moves."""
        left, low, _, _ = self.bounds
        told = "\n".join(_told(self.drawing, (left, low)))
        return hashlib.sha256(told.encode()).hexdigest()[:LETTERS]

    def moved(self, dx: float, dy: float) -> Figure:
        """The same figure, farther right by dx and up by dy."""
        places = tuple(place + dy for place in self.breaks)
        return attrs.evolve(self, drawing=shift(self.drawing, dx, dy), breaks=places)

    def stretched(self, across: float, up: float) -> Figure:
        """The same figure with every place farther from the origin by two factors."""
        return attrs.evolve(self, drawing=stretch(self.drawing, across, up))


def fingerprint_of(figures: Sequence[Figure]) -> str:
    """The fingerprint of the figures of a page together: that of the one, or one of all of theirs; none without any."""
    if len(figures) == 1:
        return figures[0].fingerprint
    told = "\n".join(figure.fingerprint for figure in figures)
    return hashlib.sha256(told.encode()).hexdigest()[:LETTERS] if told else ""


def stamp(fingerprint: str, *more: str) -> str:
    """What is printed of a fingerprint, and what else names this state of the paper.

    >>> stamp("07c1f39a2e", "", "rev. B")
    '07C1F39A2E · REV. B'
    """
    return " · ".join(word.upper() for word in (fingerprint, *more) if word)


def _told(drawing: Drawing, corner: Point) -> Iterator[str]:
    """Every primitive in words, its places from a corner; of a cut-out what may be seen in it."""
    for item in drawing:
        if isinstance(item, Line):
            yield f"line {item.kind} {item.closed} {_places(item.points, corner)}"
        elif isinstance(item, Fill):
            yield f"fill {item.tone} {' / '.join(_places(ring, corner) for ring in item.rings)}"
        elif isinstance(item, Disc):
            yield f"disc {item.kind} {item.filled} {_count(item.radius)} {_places([item.centre], corner)}"
        elif isinstance(item, Clipped):
            yield f"window {_places([item.box[:2], item.box[2:]], corner)}"
            yield from _told(tuple(own for own in item.drawing if _meets(own, item.box)), corner)
            yield "window closed"
        else:
            how = f"{_count(item.height)} {item.anchor} {item.turn:g} {item.bold}"
            yield f"text {how} {_places([item.at], corner)} {item.string!r}"


def _places(points: Iterable[Point], corner: Point) -> str:
    return " ".join(f"{_count(x - corner[0])},{_count(y - corner[1])}" for x, y in points)


def _count(value: float) -> int:
    """So many thousandths; halves go up, whatever the last bit of a sum says."""
    return round(value * _FINE + 1e-3)


def _meets(item: Primitive, box: Box) -> bool:
    left, low, right, high = bounds((item,))
    return left <= box[2] and right >= box[0] and low <= box[3] and high >= box[1]
