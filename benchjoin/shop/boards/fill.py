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
    Sums that can be made are gone through rising. Of two the longer is kept only if it is worth more, and one only if
    it could still beat the best so far, were the rest of the room filled at the best rate: exact, and short.
    """
    items = [n for n, value in enumerate(values) if value > 1e-12 and sizes[n] <= room + TOUCH]
    items.sort(key=lambda n: (-values[n] / sizes[n], n))
    if not items:
        return Filled(0.0, (0,) * len(sizes), True)
    first, counts = _in_order(room, items, sizes, values)
    top, found, exact = _better(room, items, sizes, values, first)
    return Filled(top, tuple(counts if found is None else found), exact)


def _better(
    room: float, items: Sequence[int], sizes: Sequence[float], values: Sequence[float], top: float
) -> tuple[float, list[int] | None, bool]:
    """The best filling that is worth more than one that is known, if there is any; and whether all were looked at."""
    rate, end, at = values[items[0]] / sizes[items[0]], room + TOUCH, -1.0
    best: dict[float, tuple[float, int, float]] = {0.0: (0.0, -1, 0.0)}
    queue, worth, seen = [0.0], -1.0, 0
    while queue and seen < MOST:
        here = heappop(queue)
        value = best[here][0]
        if value <= worth + 1e-12 or value + (end - here) * rate <= top + 1e-12:
            continue
        worth, seen = value, seen + 1
        for n in items:
            there, more = round(here + sizes[n], 6), value + values[n]
            if there > end or more + (end - there) * rate <= top - 1e-12:
                continue
            if there not in best:
                heappush(queue, there)
            if more > best.get(there, (-1.0,))[0] + 1e-12:
                best[there] = (more, n, here)
                if more > top + 1e-12:
                    top, at = more, there
    counts = None if at < 0.0 else [0] * len(sizes)
    while counts is not None and at > 0.0:
        _, n, before = best[at]
        counts[n] += 1
        at = before
    return top, counts, not queue or seen < MOST


def _in_order(
    room: float, items: Sequence[int], sizes: Sequence[float], values: Sequence[float]
) -> tuple[float, list[int]]:
    """What is worth most for its size first, as often as it goes, then the next: a filling to begin with."""
    counts, left, total = [0] * len(sizes), room + TOUCH, 0.0
    for n in items:
        times = int(left / sizes[n])
        counts[n] += times
        left -= times * sizes[n]
        total += times * values[n]
    return total, counts
