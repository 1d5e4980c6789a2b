"""Plain ways to hidden lines, for scripts/bench: subtracting intervals, and a depth grid in numpy.

Both are given boxes that are already split where cuts are (`boxes_seen`), which is work that the library does when it
paints a view, and they are held against. Edges between two boxes of one part are among the intervals too.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from benchjoin.layout.parts import Part
from benchjoin.lengths import TOUCH
from benchjoin.solids import boxes

Interval = tuple[float, float]
Points = Sequence[tuple[float, float]]
Seen = tuple[float, float, float, float, float, int]
"""A box as an eye sees it: how far its face is, left, low, right, high [mm], and the number of its part."""


def boxes_seen(parts: Sequence[Part], across: int, away: int) -> list[Seen]:
    """The boxes that all parts are of, the nearest first, seen along an axis; up is z."""
    return sorted(
        (b.low[away], b.low[across], b.low[2], b.high[across], b.high[2], number)
        for number, part in enumerate(parts)
        for b in boxes(part.blank, [cut.box for cut in part.cuts])
    )


def by_intervals(wood: Sequence[Seen]) -> tuple[list[Points], list[Points]]:
    """Visible and covered pieces of the edges of all boxes: each edge is an interval less those that cover it."""
    seen: list[Points] = []
    covered: list[Points] = []
    for near, x0, y0, x1, y1, _ in wood:
        before = [b for b in wood if b[0] < near - TOUCH and b[1] < x1 and b[3] > x0 and b[2] < y1 and b[4] > y0]
        for y in (y0, y1):
            cover = [(b[1], b[3]) for b in before if b[2] < y < b[4]]
            for kept, (low, high) in _less((x0, x1), cover):
                (seen if kept else covered).append(((low, y), (high, y)))
        for x in (x0, x1):
            cover = [(b[2], b[4]) for b in before if b[1] < x < b[3]]
            for kept, (low, high) in _less((y0, y1), cover):
                (seen if kept else covered).append(((x, low), (x, high)))
    return seen, covered


def _less(edge: Interval, cover: list[Interval]) -> Iterator[tuple[bool, Interval]]:
    """Pieces of an edge, and whether they are left when all that covers it is taken away."""
    at, end = edge
    for low, high in sorted(cover):
        if low > at:
            yield True, (at, min(low, end))
        if high > at:
            yield False, (max(at, low), min(high, end))
            at = high
        if at >= end:
            return
    yield True, (at, end)


def by_grid(wood: Sequence[Seen]) -> tuple[np.ndarray, np.ndarray]:
    """Visible and covered lines, shape (n, 2, 2): boxes painted from the farthest to the nearest on a grid.

    The grid has the edges of the boxes for lines; where two cells differ in part or distance, a line is seen.
    """
    told = np.array(wood)
    (x, columns), (y, rows) = (np.unique(told[:, n].round(6), return_inverse=True) for n in ([1, 3], [2, 4]))
    columns, rows = columns.reshape(-1, 2), rows.reshape(-1, 2)
    owner, depth = np.full((len(y) + 1, len(x) + 1), -1), np.zeros((len(y) + 1, len(x) + 1))
    level, upright = np.zeros((len(y), len(x) - 1), dtype=bool), np.zeros((len(y) - 1, len(x)), dtype=bool)
    places = np.concatenate([columns, rows], axis=1).tolist()
    for (near, *_, part), (left, right, low, high) in zip(reversed(wood), reversed(places), strict=True):
        owner[low + 1 : high + 1, left + 1 : right + 1] = part
        depth[low + 1 : high + 1, left + 1 : right + 1] = near
        level[[low, high], left:right] = True
        upright[low:high, [left, right]] = True
    edge = (owner[:-1, 1:-1] != owner[1:, 1:-1]) | (abs(depth[:-1, 1:-1] - depth[1:, 1:-1]) > TOUCH)
    side = (owner[1:-1, :-1] != owner[1:-1, 1:]) | (abs(depth[1:-1, :-1] - depth[1:-1, 1:]) > TOUCH)
    return _lines(edge, side, x, y), _lines(level & ~edge, upright & ~side, x, y)


def _lines(level: np.ndarray, upright: np.ndarray, x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Marked edges of the grid, as long as they run."""
    row, start, end = _runs(level)
    column, low, high = _runs(upright.T)
    ends = [(x[start], y[row], x[end], y[row]), (x[column], y[low], x[column], y[high])]
    return np.concatenate([np.stack(own, axis=-1) for own in ends]).reshape(-1, 2, 2)


def _runs(marked: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Runs of marked places in each row: the row, where the run begins and where it ends."""
    steps = np.diff(np.pad(marked.astype(np.int8), ((0, 0), (1, 1))), axis=1)
    row, start = np.nonzero(steps == 1)
    return row, start, np.nonzero(steps == -1)[1]
