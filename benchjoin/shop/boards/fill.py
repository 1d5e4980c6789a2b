"""Fill: the best that goes side by side in a room, when each item has a size and a value and may be taken again.

>>> best_fill(10.0, [3.0, 4.0], [2.0, 3.0])
Filled(value=7.0, counts=(2, 1), exact=True)
"""

from __future__ import annotations

from collections.abc import Sequence
from heapq import heappop, heappush

import attrs

from ...lengths import TOUCH

MOST = 60_000
"""Sums that are looked at: few jobs of a workshop come near."""


@attrs.frozen
class Filled:
    """The value of what fills a room, how many of each item it is, and whether all sums were looked at."""

    value: float
    counts: tuple[int, ...]
    exact: bool


def best_fill(room: float, sizes: Sequence[float], values: Sequence[float]) -> Filled:
    """The largest value of items whose sizes add up to no more than a room, and how many of each.

    Parameters
    ----------
    room : float
        [mm]
    sizes : sequence of float
        Each more than nothing. [mm]
    values : sequence of float
        Items that are worth nothing are left out.

    Notes
    -----
    Sums that can be made are gone through rising, and of two the longer is kept only if it is worth more: exact, and
    short where few sizes go into a board.
    """
    items = [n for n, value in enumerate(values) if value > 1e-12 and sizes[n] <= room + TOUCH]
    best: dict[float, tuple[float, int, float]] = {0.0: (0.0, -1, 0.0)}
    queue, top, at, seen = [0.0], 0.0, 0.0, 0
    worth = -1.0
    while queue and seen < MOST:
        here = heappop(queue)
        value = best[here][0]
        if value <= worth + 1e-12:
            continue
        worth, seen = value, seen + 1
        if value > top + 1e-12:
            top, at = value, here
        for n in items:
            there = round(here + sizes[n], 6)
            if there <= room + TOUCH:
                more = value + values[n]
                old = best.get(there)
                if old is None:
                    heappush(queue, there)
                if old is None or more > old[0] + 1e-12:
                    best[there] = (more, n, here)
    counts = [0] * len(sizes)
    while at > 0.0:
        _, n, before = best[at]
        counts[n] += 1
        at = before
    return Filled(top, tuple(counts), not queue or seen < MOST)
