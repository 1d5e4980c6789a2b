"""Dimensions of a view on paper: running, overall, chain and leader.

A drawing hands in positions that are already on paper and the words to write; what comes back is recorded
strokes. Each kind has its own file beside this one; this one holds the leader and is the door to all of them.
"""

from __future__ import annotations

from ...errors import PaperError
from ..lettering import ascent, descent
from ..primitives import Drawing, Line, Point, Text, figure_middle
from ..sheets.clashes import Clash, clashes
from .chain import chain
from .running import running
from .span import overall
from .style import STYLE, DimensionStyle, arrow

__all__ = ["STYLE", "Clash", "DimensionStyle", "chain", "clashes", "leader", "overall", "row_line", "running"]


def row_line(outline: float, row: int, out: int, style: DimensionStyle = STYLE) -> float:
    """Where the dimension line of a row lies, row 0 next to the view; `out` is 1 above or right, else -1."""
    return outline + out * (style.first_row + row * style.next_row)


def leader(at: Point, to: Point, label: str, *, style: DimensionStyle = STYLE) -> Drawing:
    """A note that points: an arrow at `at`, a line to `to`, a level landing, and words beside its end.

    The words stand on the far side of `to` from `at`; lines of the label are stacked about the landing.
    """
    if at == to:
        raise PaperError("A leader needs two different points.")
    way = 1 if to[0] >= at[0] else -1
    end = (to[0] + way * style.landing, to[1])
    pitch = (ascent(style.text) + descent(style.text)) * 1.15
    lines = label.splitlines()
    top = to[1] + pitch * (len(lines) - 1) / 2
    words = tuple(
        Text(
            (end[0] + way * style.text_gap, figure_middle(top - pitch * i, style.text)),
            line,
            style.text,
            "start" if way > 0 else "end",
        )
        for i, line in enumerate(lines)
    )
    return (arrow(at, (at[0] - to[0], at[1] - to[1]), style), Line((at, to, end)), *words)
