"""Windows over what is marked, as few as it takes: long faces one above the other, each with marks here and there.

A desk page is a window. It shows whole faces, as many as it is high, and from seam to seam as many of their marks as
it is long; where nothing is marked there is no window. Seams lie whole steps from the datum, keep clear of marks, and
two windows whose marks are close share one.

>>> windows([178.0, 248.0, 813.0], reach=235.0, step=10.0, last=910.0)
((50.0, 280.0), (610.0, 840.0))
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from itertools import pairwise

import attrs

from ...errors import PaperError
from ..primitives import Box
from .seams import CLEAR, seams

LEAST = 25.0
"""A window smaller than this is not worth its page. [mm]"""
RIM = 5.0
"""Below its lowest face a row shows so much at least, for what is written along the seam. [mm]"""
_AFTER = 16.0
"""After its last mark a window shows so much, for a reading; what else it holds is shown before. [mm]"""
_SAME = 1e-6

Mark = tuple[float, float, float]
"""A mark across a face: its place along it, and from where to where it goes. [mm]"""


@attrs.frozen(kw_only=True)
class Face:
    """What is laid on: lower and upper edge, length from the datum at x = 0, and its marks. [mm]"""

    low: float
    high: float
    length: float
    marks: tuple[Mark, ...]


@attrs.frozen(kw_only=True)
class Pane:
    """What a page shows from seam to seam, in which row and column, and whether the next one joins right or above."""

    row: int
    column: int
    cut: Box
    joins: tuple[bool, bool] = (False, False)


def windows(
    marks: Sequence[float],
    *,
    reach: float,
    step: float,
    last: float,
    clear: float = CLEAR,
    avoid: Sequence[float] = (),
) -> tuple[tuple[float, float], ...]:
    """Ends of as few windows as show all marks of a line, rising. [mm]

    Parameters
    ----------
    marks : sequence of float
        Places from the datum.
    reach : float
        How long a window can be.
    step : float
        Windows begin and end whole steps from the datum.
    last : float
        Nothing past the step after this is shown; nor before the step before the datum.
    clear : float
        How far both ends keep from marks, where a step does.
    avoid : sequence of float
        What else they keep from.

    Raises
    ------
    PaperError
        If a window is less than 25 mm long.
    """
    must_reach(reach)
    todo, lines = sorted(marks), sorted([*marks, *avoid])
    found: list[tuple[float, float]] = []
    while todo:
        open_ = found[-1][1] if found else -step
        least = max(_down(todo[0] - clear, step), open_)
        far = _best(least + reach / 2, least + reach, lines, step, clear)
        held = [at for at in todo if at <= far] or todo[:1]
        todo = todo[len(held) :]
        found.append(_placed(least, far, held, open_, lines, reach=reach, step=step, last=last, clear=clear))
    return tuple(found)


def must_reach(reach: float) -> None:
    """Refuse pages that show next to nothing."""
    if reach < LEAST:
        raise PaperError(
            f"Between margins, head and overlap a page has {max(reach, 0.0):.0f} mm left, and a tile needs {LEAST:g}. "
            "Take larger paper, narrower margins or less overlap."
        )


def _placed(
    least: float,
    far: float,
    held: Sequence[float],
    open_: float,
    lines: Sequence[float],
    *,
    reach: float,
    step: float,
    last: float,
    clear: float,
) -> tuple[float, float]:
    """Where a window that must hold some marks begins and ends: from the datum on, or with room for words before."""
    need = min(_up(held[-1] + clear, step), far)
    slack = max(reach - (need - least), 0.0)
    after = min(slack / 2, _AFTER) if need < _up(last, step) - _SAME else 0.0
    start = open_ if open_ < 0 and need - open_ <= reach + _SAME else max(open_, _up(least - slack + after, step))
    start = next((at for at in _steps(start, least, step) if at == open_ or _is_clear(at, lines, clear)), least)
    end = _best(need, min(start + reach, _up(last, step)), lines, step, clear)
    return start, max(end, need)


def _best(first: float, final: float, lines: Sequence[float], step: float, clear: float) -> float:
    """The farthest clear step between two places, or else the one that is farthest from a line."""
    steps = list(_steps(_up(first, step), final, step))[::-1]
    clear_ones = (at for at in steps if _is_clear(at, lines, clear))
    freest = max(steps, key=lambda at: min((abs(at - line) for line in lines), default=0.0), default=_down(final, step))
    return next(clear_ones, freest)


def _steps(first: float, final: float, step: float) -> Iterator[float]:
    n = round(first / step)
    while n * step <= final + _SAME:
        yield n * step
        n += 1


def _down(at: float, step: float) -> float:
    return math.floor(at / step + _SAME) * step


def _up(at: float, step: float) -> float:
    return math.ceil(at / step - _SAME) * step


def _is_clear(at: float, lines: Sequence[float], clear: float) -> bool:
    n = bisect_left(lines, at - clear + _SAME)
    return n == len(lines) or lines[n] > at + clear - _SAME


def cover(
    faces: Sequence[Face],
    reach: tuple[float, float],
    *,
    step: float,
    base: float = 0.0,
    clear: float = CLEAR,
    glued: float = 0.0,
) -> tuple[Pane, ...]:
    """As few panes as show all marks of faces that lie one above the other, the highest first; row by row.

    Faces are shown whole, several in a row where they go in; one that is higher than a pane is shown in several rows
    that join, each lower by what is glued. Rows of seams lie whole steps from the base. [mm]

    Raises
    ------
    PaperError
        If a pane is less than 25 mm long or high.
    """
    must_reach(min(reach))
    best: list[tuple[int, tuple[tuple[Box, ...], ...]]] = [(0, ())]
    for end in range(1, len(faces) + 1):
        tried = []
        for begin in range(end - 1, -1, -1):
            rows = _rows(faces, begin, end, reach, step, base, clear, glued)
            if rows is None:
                break
            tried.append((best[begin][0] + sum(map(len, rows)), (*best[begin][1], *rows)))
        best.append(min(tried, key=lambda one: one[0]))
    shown = [row for row in best[-1][1] if row]
    return tuple(
        Pane(row=n, column=column, cut=box, joins=(_joins_right(row, box), _joins_above(shown, box)))
        for n, row in enumerate(shown)
        for column, box in enumerate(row)
    )


def _joins_right(row: Sequence[Box], box: Box) -> bool:
    return any(abs(other[0] - box[2]) < _SAME for other in row)


def _joins_above(rows: Sequence[Sequence[Box]], box: Box) -> bool:
    return any(
        abs(o[1] - box[3]) < _SAME and o[0] < box[2] - _SAME and o[2] > box[0] + _SAME for row in rows for o in row
    )


def _rows(
    faces: Sequence[Face],
    begin: int,
    end: int,
    reach: tuple[float, float],
    step: float,
    base: float,
    clear: float,
    glued: float,
) -> tuple[tuple[Box, ...], ...] | None:
    """Panes over some faces, in rows from the top; None where they do not go in one row and are several."""
    own = faces[begin:end]
    edges = sorted({y - base for face in faces for y in (face.low, face.high)})
    low = _outer(own[-1].low - base - RIM, -step, edges, step, clear)
    high = _outer(own[0].high - base + clear, step, edges, step, clear)
    if high - low <= reach[1] + _SAME:
        levels: tuple[float, ...] = (low, high)
    elif len(own) > 1:
        return None
    else:
        levels = seams(low, high, datum=0.0, reach=reach[1] - glued, step=step, avoid=edges)
    ends = [face.length for face in own]
    return tuple(
        _panes(own, (a + base, b + base), reach[0], step, ends, clear) for a, b in reversed([*pairwise(levels)])
    )


def _outer(at: float, way: float, edges: Sequence[float], step: float, clear: float) -> float:
    """The step at a place or past it, one or two farther where only those keep clear of edges."""
    first = _up(at, step) if way > 0 else _down(at, step)
    return next((first + n * way for n in range(3) if _is_clear(first + n * way, edges, clear)), first)


def _panes(
    own: Sequence[Face], row: tuple[float, float], reach: float, step: float, ends: Sequence[float], clear: float
) -> tuple[Box, ...]:
    met = {at for face in own for at, low, high in face.marks if low < row[1] - _SAME and high > row[0] + _SAME}
    found = windows(sorted(met), reach=reach, step=step, last=max(ends) + clear, clear=clear, avoid=[0.0, *ends])
    return tuple((left, row[0], right, row[1]) for left, right in found)
