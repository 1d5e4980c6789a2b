"""Ordering, height by height: the order of heights, and of the stops at each, that sets the stop least often.

Every height is set once; what is left to choose is the order of the heights, and at which stop each begins and ends: a
stop that stays where it is from one height to the next is not set again. `cheapest_order` asks here first.

Notes
-----
A height g with the stops S(g) costs |S(g)| settings of the stop, less one where it begins at the stop that stands; two
heights can hand one stop on only if they share it, and a height with several stops cannot both begin and end at the
same one. `fewest_stops` tries all orders by dynamic programming over the heights that are done and the stop that stands
(Held and Karp's way for a round trip); with more than MOST heights it keeps them rising and is exact for that alone.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from typing import Any

import attrs

MOST = 10
"""Heights up to which every order is tried."""

State = tuple[int, Any]


@attrs.frozen
class Order:
    """Heights by their number, each with its stops in order; how often a stop is set; whether every order was tried."""

    heights: tuple[tuple[int, tuple[Any, ...]], ...]
    stops: int
    exact: bool


def fewest_stops(groups: Sequence[Collection[Any]], *, before: Collection[tuple[int, int]] = ()) -> Order:
    """The order of heights, and of the stops at each, that sets the stop least often.

    Parameters
    ----------
    groups : sequence of collections
        The places of the stop at each height; places must be sortable. A height that needs no stop leaves it alone.
    before : collection of pairs, optional
        Which height, by number, must come before which.

    Examples
    --------
    >>> fewest_stops([{1, 2}, {5}, {2, 5}])
    Order(heights=((0, (1, 2)), (2, (2, 5)), (1, (5,))), stops=3, exact=True)
    """
    exact = len(groups) <= MOST
    needs = [sum(1 << first for first, later in before if later == number) for number in range(len(groups))]
    if not exact:
        needs = [(1 << number) - 1 for number in range(len(groups))]
    best: dict[State, tuple[int, tuple[int, ...], tuple[Any, ...]]] = {(0, None): (0, (), ())}
    for _ in groups:
        step: dict[State, tuple[int, tuple[int, ...], tuple[Any, ...]]] = {}
        for (done, stands), (cost, order, ends) in sorted(best.items(), key=lambda item: item[1][:2]):
            for number, group in enumerate(groups):
                if done >> number & 1 or needs[number] & ~done:
                    continue
                spent = cost + len(group) - (stands in group)
                for end in _ends(groups, number, stands):
                    state, found = (done | 1 << number, end), (spent, (*order, number), (*ends, end))
                    if state not in step or found[:2] < step[state][:2]:
                        step[state] = found
        best = step
    cost, order, ends = min(best.values(), key=lambda found: found[:2])
    return Order(tuple(_told(groups, order, ends)), cost, exact)


def _ends(groups: Sequence[Collection[Any]], number: int, stands: Any) -> Collection[Any]:
    """Where a stop may stand after a height: at one that another height shares, or at its last."""
    group = groups[number]
    if not group:
        return (stands,)
    free = [place for place in group if place != stands] if len(group) > 1 else list(group)
    shared = {place for other, places in enumerate(groups) if other != number for place in places}
    return sorted({*(place for place in free if place in shared), max(free)})


def _told(
    groups: Sequence[Collection[Any]], order: Sequence[int], ends: Sequence[Any]
) -> Iterator[tuple[int, tuple[Any, ...]]]:
    stands: Any = None
    for number, end in zip(order, ends, strict=True):
        group = sorted(groups[number])
        first = [place for place in group if place == stands and place != end]
        last = [end] if group else []
        yield number, (*first, *(place for place in group if place not in (*first, *last)), *last)
        stands = end
