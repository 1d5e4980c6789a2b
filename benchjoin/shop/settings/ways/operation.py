"""Operations: what a way of cutting asks of the machine for one shoulder of one notch.

An operation names its tool, the height or depth it is set to, and where the stop or guide stands; or, where no stop
can stand, the line that it is cut to. Settings gather the operations that share all of these. `place` is a place as
the tape reads it, so that two which print alike are one.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Sequence
from typing import Literal, Protocol

import attrs

from ....lengths import TOUCH
from ....readings import Tape
from ..heads import Stack
from ..notching import Notching
from ..shop import Shop, Way

Edge = Literal["near", "far", "both", "through"]
Place = tuple[int, int]


@attrs.frozen(kw_only=True)
class Tool:
    """What cuts: a stacked head, a bit, or the hand saw before the chisel; width is its groove. [mm]"""

    way: Way
    width: float
    stack: Stack | None = None

    def told(self, tape: Tape) -> str:
        """The tool in words, sized in the unit of the tape: '13/16 in head'."""
        if self.way == "saw and chisel":
            return "saw and chisel"
        return f"{said(self.width, tape)} {'head' if self.way == 'dado head' else 'bit'}"


def said(size: float, tape: Tape) -> str:
    """A size of a tool: in 64ths of an inch, or in tenths of a millimetre."""
    return Tape("1/64 in").say(size) if tape.unit == "in" else f"{size:.1f} mm"


@attrs.frozen(kw_only=True)
class Operation:
    """One shoulder of one notch (or both, or the wood between two open ends) at one position of the machine. [mm]

    stop is the distance from the stop to the near side of the head, or from the end of the part to the edge of the near
    guide; other that of the far guide. Without either the tool follows the lines that are struck on the wood, at the
    distances in lines. passes are all cuts made here, steps how often the depth is set on the way down.
    """

    notch: Notching
    tool: Tool
    height: float
    edge: Edge
    passes: int
    stop: float | None = None
    other: float | None = None
    lines: tuple[float, ...] = ()
    steps: int = 1

    @property
    def rough(self) -> bool:
        """Whether it is on the way to the full depth."""
        return self.height < self.notch.depth - TOUCH


class Cutting(Protocol):
    """A way of cutting; a file of this folder is one."""

    def why_not(self, notch: Notching, shop: Shop, tape: Tape) -> str | None:
        """Why a notch cannot be cut this way; None where it can."""

    def operations(self, notches: Sequence[Notching], shop: Shop, tape: Tape) -> tuple[Operation, ...]:
        """What the machine is asked for."""


def edge_of(notch: Notching) -> Edge:
    """Which shoulders a notch has, counted from the end against the stop."""
    if notch.open_near:
        return "through" if notch.open_far else "far"
    return "near" if notch.open_far else "both"


def place(length: float, tape: Tape) -> Place:
    """A length as the tape reads it, to sort and compare: the mark, and whether scant (-1) or full (1)."""
    marks = tape.marks(length)
    return marks, {"scant": -1, "": 0, "full": 1}[tape.off(length)] * (-1 if marks < 0 else 1)


def passes_for(width: float, groove: float, overlap: float = 0.0) -> int:
    """Passes that cover a notch when each lies over the one before by at least the overlap.

    n grooves g that lie over each other by o cover n g − (n − 1) o, so n is the least whole number of at least
    (w − o) / (g − o); 1 where w ≤ g.

    Raises
    ------
    ValueError
        If the overlap is not less than the groove.

    Examples
    --------
    >>> [passes_for(w * 25.4, 13 / 16 * 25.4) for w in (0.8125, 1.5, 3.5, 5.5)]
    [1, 2, 5, 7]
    """
    if width <= groove + TOUCH:
        return 1
    if overlap >= groove:
        raise ValueError(f"passes that lie over each other by {overlap:g} mm with a groove of {groove:g} mm never end")
    return math.ceil((width - overlap) / (groove - overlap) - TOUCH)


def heights(depths: Iterable[float], bite: float, tape: Tape) -> tuple[float, ...]:
    """The fewest heights at which every depth can be reached by bites: all depths, and what must lie between. [mm]

    Depths that read alike are one height. Between two neighbours that are g apart at least ⌈g / bite⌉ − 1 more are
    needed; they are spaced evenly, on marks of the tape where that keeps to the bite.

    >>> heights([10.0, 28.0, 28.01], 12.0, Tape("1 mm"))
    (10.0, 19.0, 28.01)
    """
    finals = sorted({place(depth, tape): depth for depth in sorted(depths)}.values())
    found: list[float] = []
    low = 0.0
    for final in finals:
        count = max(math.ceil((final - low) / bite - TOUCH), 1)
        between = [low + (final - low) * n / count for n in range(1, count)]
        marked = [tape.nearest(height) for height in between]
        ends = [low, *marked, final]
        on_marks = all(TOUCH < b - a <= bite + TOUCH for a, b in itertools.pairwise(ends))
        found += [*(marked if on_marks else between), final]
        low = final
    return tuple(found)


def way_down(depth: float, ladder: Iterable[float], bite: float, tape: Tape) -> tuple[float, ...]:
    """The fewest of some heights at which one notch is cut to its depth, the lowest first. [mm]"""
    reading = place(depth, tape)
    rungs = [h for h in ladder if place(h, tape) <= reading]
    chain = [rungs[-1]]
    while chain[0] > bite + TOUCH:
        chain.insert(0, min(h for h in rungs if chain[0] - h <= bite + TOUCH))
    return tuple(chain)
