"""Choosing: which tools cut the notches of one way, so that the whole takes the least time.

A wide head makes few passes and does not go into a narrow notch; a head as wide as two notches differ spares a stop; a
second head spares passes and costs a change. Each tool is weighed by all that it costs: the change to it, heights,
stops, and every cut. Notches that are alike go to one tool, since a second would only set the same stops again.

Notes
-----
Kinds of notches are given to tools one after the other, and a branch is left as soon as it cannot beat the best so far
(branch and bound). No choice costs less than the sum of what each kind costs by itself with its tool, where places of
the stop and heights that others may share are divided among all that may; nor less than what is spent on the kinds
given so far, and the cuts of the others. Beyond MOST branches the best so far is kept, and the choice says so.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence

import attrs

from ...lengths import steady
from ...readings import Tape
from .cheapest_order import least_cost
from .gathering import Gathered, gathered
from .notching import Notching
from .setting import cutting, tool_change
from .shop import Shop
from .ways.operation import Cutting, Tool

MOST = 2000
"""Branches that are looked into."""

Kind = tuple[Notching, ...]
Mark = tuple[int, ...]
NONE = (math.inf,)


@attrs.frozen(kw_only=True)
class Trial:
    """One kind of notches with one tool that goes into them, by itself.

    cutting is what its cuts take [min]; stops and height are the marks of the tape where the machine is set, steps the
    heights on the way down; floor is cutting and its share of setting these [min].
    """

    cutting: float
    stops: frozenset[Mark]
    height: int
    steps: int
    floor: float = 0.0


@attrs.define(kw_only=True)
class Search:
    """The search for the tools of some notches; given are the tools of the first kinds, best and found the best so far.

    trials has for each kind its trials by the number of the tool.
    """

    way: Cutting
    shop: Shop
    tape: Tape
    kinds: Sequence[Kind]
    tools: Sequence[Tool]
    trials: Sequence[Mapping[int, Trial]]
    best: tuple[float, ...] = NONE
    found: tuple[Gathered, ...] = ()
    branches: int = 0
    done: dict[tuple[int, tuple[int, ...]], Gathered] = attrs.field(factory=dict)

    def look(self, given: list[int]) -> None:
        """Weigh every choice that begins with some tools and may beat the best so far."""
        if self.branches >= MOST or self._least(given) >= self.best[0] - 1e-9:
            return
        self.branches += 1
        if len(given) == len(self.kinds):
            self.weigh(given)
            return
        own = self.trials[len(given)]
        for tool in sorted(own, key=lambda tool: (tool not in given, own[tool].floor)):
            self.look([*given, tool])

    def weigh(self, given: Sequence[int]) -> None:
        """Work one choice out where it may be the best, and keep it where it is: the quickest, then the simplest."""
        if self._least(given) > self.best[0] + 1e-9:
            return
        made = tuple(self._with(tool, given) for tool in sorted(set(given)))
        parts = sum(each.tool.stack.parts for each in made if each.tool.stack)
        minutes = round(sum(each.minutes for each in made), 6)
        cost = (minutes, len(made), sum(each.cuts for each in made), parts, -sum(each.tool.width for each in made))
        if cost < self.best:
            self.best, self.found = cost, made

    def _with(self, tool: int, given: Sequence[int]) -> Gathered:
        own = tuple(number for number, each in enumerate(given) if each == tool)
        if (tool, own) not in self.done:
            notches = [notch for number in own for notch in self.kinds[number]]
            made = self.way.operations(notches, self.tools[tool], self.shop, self.tape)
            self.done[tool, own] = gathered(made, self.shop.minutes, self.tape)
        return self.done[tool, own]

    def _least(self, given: Sequence[int]) -> float:
        """No choice that begins with these tools takes less. [min]"""
        changes = [tool_change(tool, self.shop.minutes) for tool in self.tools]
        opened, rest = set(given), self.trials[len(given) :]
        own = list(zip(given, self.trials, strict=False))
        floors = sum(trials[tool].floor for tool, trials in own)
        as_is = sum(min((t.floor for n, t in trials.items() if n in opened), default=math.inf) for trials in rest)
        one_more = min(changes) + sum(min(t.floor for t in trials.values()) for trials in rest)
        cuts = sum(min(t.cutting for t in trials.values()) for trials in rest)
        spent = sum(self._spent([trials[tool] for each, trials in own if each == tool]) for tool in opened)
        return sum(changes[tool] for tool in opened) + max(floors + min(as_is, one_more), spent + cuts)

    def _spent(self, trials: Sequence[Trial]) -> float:
        """Kinds that are cut with one tool: their cuts, and the least to set the machine for them. [min]"""
        steps: dict[Mark, int] = {}
        for trial in trials:
            steps |= {stop: max(trial.steps, steps.get(stop, 0)) for stop in trial.stops}
        heights = max(len({t.height for t in trials}), *(t.steps for t in trials))
        minutes = self.shop.minutes
        least = least_cost(heights, len(steps), sum(steps.values()), height=minutes.height, stop=minutes.stop)
        return sum(t.cutting for t in trials) + least


def chosen(way: Cutting, notches: Sequence[Notching], shop: Shop, tape: Tape) -> tuple[tuple[Gathered, ...], bool]:
    """The settings of some notches, tool by tool, and whether every choice was tried."""
    if not notches:
        return (), True
    kinds = _kinds(notches)
    tools = sorted(way.tools(notches, shop), key=lambda tool: -tool.width)
    trials = [
        {number: _trial(way, own, tool, shop, tape) for number, tool in enumerate(tools) if tool.fits(own[0].width)}
        for own in kinds
    ]
    search = Search(way=way, shop=shop, tape=tape, kinds=kinds, tools=tools, trials=_with_floors(trials, shop))
    for number in range(len(tools)):
        if all(number in own for own in trials):
            search.weigh([number] * len(kinds))
    search.look([])
    return search.found, search.branches < MOST


def _kinds(notches: Sequence[Notching]) -> tuple[Kind, ...]:
    """Notches that are alike for every tool, the narrowest first."""
    found: dict[tuple[object, ...], list[Notching]] = {}
    for notch in notches:
        sizes = steady(notch.low, notch.high, notch.depth)
        found.setdefault((*sizes, notch.open_near, notch.open_far), []).append(notch)
    return tuple(map(tuple, sorted(found.values(), key=lambda own: (own[0].width, own[0].low))))


def _trial(way: Cutting, own: Kind, tool: Tool, shop: Shop, tape: Tape) -> Trial:
    made = way.operations(own[:1], tool, shop, tape)
    pairs = {(o.stop, o.other) for o in made} - {(None, None)}
    return Trial(
        cutting=len(own) * sum(cutting(o, shop.minutes) for o in made),
        stops=frozenset(tuple(tape.marks(at) for at in pair if at is not None) for pair in pairs),
        height=tape.marks(own[0].depth),
        steps=len({o.height for o in made}),
    )


def _with_floors(trials: Sequence[Mapping[int, Trial]], shop: Shop) -> list[dict[int, Trial]]:
    """The trials with what each takes at least: a place that many may share is paid for by all of them.

    With `least_cost` in mind: where setting the cheaper of the two costs c, every setting costs c, and every height and
    every place of the stop what it costs beyond c.
    """
    height, stop = shop.minutes.height, shop.minutes.stop
    least = min(height, stop)
    stops = Counter((tool, mark) for own in trials for tool, t in own.items() for mark in t.stops)
    heights = Counter((tool, t.height) for own in trials for tool, t in own.items())

    def floor(tool: int, t: Trial) -> float:
        shares = sum(1 / stops[tool, mark] for mark in t.stops)
        at_stops = shares * (stop - least + t.steps * least)
        return t.cutting + at_stops + (height - least) / heights[tool, t.height]

    return [{tool: attrs.evolve(t, floor=floor(tool, t)) for tool, t in own.items()} for own in trials]
