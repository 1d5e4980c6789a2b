"""Clears on elevations: in brackets beside the running heights that they lie between, so that nobody subtracts.

They stand between the view and its running heights, where there is room already, and have no line of figures of their
own. A clear whose figure has no room between the heights that cross it is left out; the running heights still say it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from ...drafting.dimensions.span import above, bracketed, extension
from ...drafting.dimensions.style import STYLE, arrows
from ...drafting.lettering import text_width
from ...drafting.primitives import Line, Primitive
from ...layout.clears import Opening, openings
from ...layout.parts import Part
from ...lengths import TOUCH
from ..making.house import Reader
from .view import View
from .view_sizes import Column, columns
from .wall import one_row

LINE = {"left": -4.5, "right": 5.5}
"""Where a clear stands beside the view: its figure is always on the left of its line. [mm]"""
LEAST = 2.5
"""Room that a figure needs more than it is long. [mm]"""
OTHER = {"front": "back", "back": "front"}


def clear_sizes(parts: Sequence[Part], seen: View, scale: float, read: Reader) -> Iterator[Primitive]:
    """The clears of an elevation: those of the near rails in their column, of the far side and the ends in the other.

    Seen from an end, those of its own rails.
    """
    eye = seen.eye.name
    found, told = openings(parts), set[tuple[float, float]]()
    sides = [("front",)] if one_row(parts) else [(eye,), (OTHER.get(eye, ""), "left", "right")]
    for column, own in zip(columns(parts, seen.eye), sides, strict=False):
        edge = seen.bounds[0 if column.side == "left" else 2] * scale
        for opening in _apart([opening for side in own for opening in found.get(side, ())], told):
            yield from _one(opening, column, edge, scale, read)


def _apart(found: Sequence[Opening], told: set[tuple[float, float]]) -> Iterator[Opening]:
    """Those that are not told yet, none beside another."""
    here: list[tuple[float, float]] = []
    for opening in found:
        low, high = ends = (opening.low, opening.high)
        if not any(low < b - TOUCH and a < high - TOUCH for a, b in here):
            if not any(abs(low - a) <= TOUCH and abs(high - b) <= TOUCH for a, b in told):
                yield opening
            here.append(ends)
            told.add(ends)


def _one(opening: Opening, column: Column, edge: float, scale: float, read: Reader) -> Iterator[Primitive]:
    """One clear with its arrows and its figure, if that has room."""
    label = bracketed(read(opening.size), auxiliary=True)
    ends = (opening.low, opening.high)
    crossing = sorted({*ends, *(z for z in column.heights if opening.low < z < opening.high)})
    low, high = max(pairwise(crossing), key=lambda gap: gap[1] - gap[0])
    if (high - low) * scale < text_width(label, STYLE.text) + LEAST or opening.size * scale < 3 * STYLE.arrow:
        return
    line = edge + LINE[column.side]
    for end in ends:
        if all(abs(end - z) > TOUCH for z in column.heights):
            yield from filter(None, [extension("y", end * scale, edge, line, STYLE)])
    yield Line(((line, opening.low * scale), (line, opening.high * scale)))
    yield from arrows("y", opening.low * scale, opening.high * scale, line, STYLE)
    yield above("y", (low + high) / 2 * scale, line, label, STYLE)
