"""Operations: what a way of cutting asks of the machine for one shoulder of one notch.

An operation names its tool, the height or depth it is set to, and where the stop or guide stands; or, where no stop
can stand, the line that it is cut to. Settings gather the operations that share all of these. `one_place` says which
lengths are one place on the machine: those that a tape cannot tell apart, whatever they are rounded to.
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


@attrs.frozen(kw_only=True)
class Tool:
    """What cuts: a stacked head, a bit, or the hand saw before the chisel; width is its groove. [mm]"""

    way: Way
    width: float
    stack: Stack | None = None

    def fits(self, width: float) -> bool:
        """Whether it goes into a notch; a saw always does."""
        return self.way == "saw and chisel" or self.width <= width + TOUCH

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
    distances in lines. passes are those side by side that cover it, steps the depths that each goes down by here.
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
    def cuts(self) -> int:
        """How often the tool goes through the wood: every pass at every depth."""
        return self.passes * self.steps

    @property
    def rough(self) -> bool:
        """Whether it is on the way to the full depth."""
        return self.height < self.notch.depth - TOUCH


class Cutting(Protocol):
    """A way of cutting; a file of this folder is one."""

    def why_not(self, notch: Notching, shop: Shop, tape: Tape) -> str | None:
        """Why a notch cannot be cut this way; None where it can."""

    def tools(self, notches: Sequence[Notching], shop: Shop) -> tuple[Tool, ...]:
        """The tools that may be worth taking for some notches; each notch goes with at least one."""

    def operations(self, notches: Sequence[Notching], tool: Tool, shop: Shop, tape: Tape) -> tuple[Operation, ...]:
        """What the machine is asked for where one tool cuts these notches; none is narrower than the tool."""


def edge_of(notch: Notching) -> Edge:
    """Which shoulders a notch has, counted from the end against the stop."""
    if notch.open_near:
        return "through" if notch.open_far else "far"
    return "near" if notch.open_far else "both"


def one_place(lengths: Iterable[float], tape: Tape) -> dict[float, float]:
    """The lengths, each with the least of those that are one place with it.

    Lengths are one place where the same mark of the tape is nearest and all lie within its hair of each other. So two
    that read alike and lie further apart (7 full may be 7.15 or 7.45) are two places, and so are 7 and 7 full.

    >>> one_place([7.0, 7.1, 7.2, 7.45, 7.55], Tape("1 mm"))
    {7.0: 7.0, 7.1: 7.0, 7.2: 7.2, 7.45: 7.45, 7.55: 7.55}
    """
    found: dict[float, float] = {}
    least = -math.inf
    for length in sorted(set(lengths)):
        if length - least > tape.hair + TOUCH or tape.marks(length) != tape.marks(least):
            least = length
        found[length] = least
    return found


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

    Depths that are one place are one height. Between two neighbours that are g apart at least ⌈g / bite⌉ − 1 more are
    needed; they are spaced evenly, on marks of the tape where that keeps to the bite.

    >>> heights([10.0, 28.0, 28.01], 12.0, Tape("1 mm"))
    (10.0, 19.0, 28.01)
    """
    finals = {least: depth for depth, least in one_place(depths, tape).items()}
    found: list[float] = []
    low = 0.0
    for final in finals.values():
        count = max(math.ceil((final - low) / bite - TOUCH), 1)
        between = [low + (final - low) * n / count for n in range(1, count)]
        marked = [tape.nearest(height) for height in between]
        ends = [low, *marked, final]
        on_marks = all(TOUCH < b - a <= bite + TOUCH for a, b in itertools.pairwise(ends))
        found += [*(marked if on_marks else between), final]
        low = final
    return tuple(found)


def way_down(depth: float, ladder: Sequence[float], bite: float) -> tuple[float, ...]:
    """The fewest of some heights at which one notch is cut to its depth, the lowest first. [mm]"""
    last = next(number for number, height in enumerate(ladder) if height >= depth - TOUCH)
    chain = [ladder[last]]
    while chain[0] > bite + TOUCH:
        chain.insert(0, next(height for height in ladder if chain[0] - height <= bite + TOUCH))
    return tuple(chain)
