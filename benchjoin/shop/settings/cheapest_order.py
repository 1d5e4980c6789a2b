"""The cheapest order: the settings of one tool in the order that takes the least time to set.

A setting is a height and a stop. From one setting to the next the height is set, or the stop, or both; what stays
where it is costs nothing. Tools share neither, so each is done with before the next, and a deep cut at a stop comes
after the shallower one there.

Notes
-----
Let n settings have H heights and P places of the stop, and let an order set the height x times and the stop y times.
Every step moves one of them at least and the first moves both, so x + y ≥ n + 1, x ≥ H and y ≥ P: no order costs less
than `least_cost`. Mostly an order that takes each height once (`ordering.fewest_stops`) reaches that, and then it is
the best. Where it does not, every order is tried by what is done and how the machine stands, leaving those that cannot
beat it; with more than MOST settings the order height by height is kept, and the route says that others were not tried.
Stops that only one height has are one in that: to scatter them never helps.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Hashable, Sequence
from typing import Any

import attrs

from .ordering import fewest_stops

MOST = 14
"""Settings up to which every order is tried."""
CLOSE = 1e-9


@attrs.frozen
class Stand:
    """One setting of a machine: the height by its number, and where its stop stands, None where there is none."""

    height: int
    stop: Any


Block = tuple[int, ...]
State = tuple[int, Stand]


@attrs.frozen
class Route:
    """An order of settings by their numbers, and whether none costs less."""

    order: tuple[int, ...]
    exact: bool


def least_cost(heights: int, places: int, settings: int, *, height: float, stop: float) -> float:
    """No order costs less that has so many heights, places of the stop, and settings with a stop.

    height and stop are what it costs to set one.

    >>> least_cost(3, 4, 5, height=10.0, stop=1.0)
    34.0
    """
    more = max(0, settings + 1 - heights - places) if settings else 0
    return heights * height + places * stop + more * min(height, stop)


def cheapest(stands: Sequence[Stand], *, before: Collection[tuple[int, int]] = (), height: float, stop: float) -> Route:
    """The order of settings that costs least.

    Parameters
    ----------
    stands : sequence of Stand
        Different settings of one tool.
    before : collection of pairs, optional
        Which setting, by number, must come before which.
    height, stop : float
        What it costs to set a height, and a stop. The first setting sets both.
    """
    order = _height_by_height(stands, before)
    cost = _cost(stands, order, height, stop)
    heights, stops = {stand.height for stand in stands}, [s.stop for s in stands if s.stop is not None]
    if cost <= least_cost(len(heights), len(set(stops)), len(stops), height=height, stop=stop) + CLOSE:
        return Route(order, exact=True)
    blocks = _blocks(stands, before)
    if len(blocks) > MOST:
        return Route(order, exact=False)
    needs = [
        sum(1 << n for n, other in enumerate(blocks) if any((a, b) in before for a in other for b in block))
        for block in blocks
    ]
    return Route(_best_of_all(stands, blocks, needs, cost, (height, stop)) or order, exact=True)


def _height_by_height(stands: Sequence[Stand], before: Collection[tuple[int, int]]) -> tuple[int, ...]:
    """The order that sets the stop least often of those that set every height once."""
    count = max((stand.height for stand in stands), default=-1) + 1
    groups = [{s.stop for s in stands if s.height == number and s.stop is not None} for number in range(count)]
    rising = {(stands[first].height, stands[later].height) for first, later in before}
    found: list[int] = []
    for number, stops in fewest_stops(groups, before=rising).heights:
        own = [place for place, stand in enumerate(stands) if stand.height == number]
        at = {stands[place].stop: place for place in own if stands[place].stop is not None}
        found += [*(at[stop] for stop in stops), *(place for place in own if stands[place].stop is None)]
    return tuple(found)


def _cost(stands: Sequence[Stand], order: Sequence[int], height: float, stop: float) -> float:
    stand, cost = Stand(-1, None), 0.0
    for number in order:
        cost += _step(stand, stands[number], height, stop)
        stand = _after(stand, stands[number])
    return cost


def _step(one: Stand, other: Stand, height: float, stop: float) -> float:
    moved = other.stop is not None and one.stop != other.stop
    return (height if one.height != other.height else 0.0) + (stop if moved else 0.0)


def _after(one: Stand, other: Stand) -> Stand:
    """How the machine stands after a setting: one that needs no stop leaves it where it is."""
    return other if other.stop is not None else Stand(other.height, one.stop)


def _blocks(stands: Sequence[Stand], before: Collection[tuple[int, int]]) -> list[Block]:
    """Settings that may be done one after the other: those of a height whose stops no other height has, or none."""
    tied = {number for pair in before for number in pair}
    shared = Counter(stand.stop for stand in stands)
    found: dict[Hashable, list[int]] = {}
    for number, stand in enumerate(stands):
        alone = stand.stop is None or shared[stand.stop] == 1
        key = number if number in tied or not alone else (stand.height, stand.stop is None)
        found.setdefault(key, []).append(number)
    return [tuple(block) for block in found.values()]


def _best_of_all(
    stands: Sequence[Stand], blocks: Sequence[Block], needs: Sequence[int], most: float, costs: tuple[float, float]
) -> Block | None:
    """The best order of the blocks that costs less than most, by what is done and how the machine stands.

    needs says which blocks, as bits, come before each.
    """
    best: dict[State, tuple[float, Block]] = {(0, Stand(-1, None)): (0.0, ())}
    for _ in blocks:
        step: dict[State, tuple[float, Block]] = {}
        for (done, stand), (cost, order) in best.items():
            for number, block in enumerate(blocks):
                if done >> number & 1 or needs[number] & ~done:
                    continue
                spent, after = _through(stands, block, cost, stand, costs)
                state, found = (done | 1 << number, after), (spent, (*order, *block))
                if state not in step or found < step[state]:
                    step[state] = found
        best = {
            (done, stand): found
            for (done, stand), found in step.items()
            if found[0] + _rest(stands, blocks, done, stand, costs) < most - CLOSE
        }
    return min(best.values())[1] if best else None


def _through(
    stands: Sequence[Stand], block: Block, spent: float, stand: Stand, costs: tuple[float, float]
) -> tuple[float, Stand]:
    """What is spent when a block is done as well, and how the machine stands then."""
    for number in block:
        spent += _step(stand, stands[number], *costs)
        stand = _after(stand, stands[number])
    return spent, stand


def _rest(
    stands: Sequence[Stand], blocks: Sequence[Block], done: int, stand: Stand, costs: tuple[float, float]
) -> float:
    """No way to do the other blocks costs less: each setting moves something, every other height and place is set."""
    left = [stands[number] for place, block in enumerate(blocks) if not done >> place & 1 for number in block]
    stops = [other.stop for other in left if other.stop is not None]
    heights, places = {other.height for other in left} - {stand.height}, set(stops) - {stand.stop}
    more = max(0, len(stops) - len(heights) - len(places))
    return len(heights) * costs[0] + len(places) * costs[1] + more * min(costs)
