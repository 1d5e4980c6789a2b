"""Solving: which patterns to cut so often that every blank is made, at the least cost.

Patterns are made where they pay (columns, priced by the duals of the linear programme), then the best whole numbers of
them are found by HiGHS, stopped by its nodes and never by the clock, so that the same job gives the same plan. The
bound is that of the linear programme when no pattern pays any more; a programme over patterns that happen to be there
bounds nothing. For boards with knots the bound looks past them: it holds for the job without them, and so for the job.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

import attrs
import numpy as np

from .pattern import Cutter, Floats, Pattern, trimmed

LEFT_OUT = 1e5
"""What a blank costs that is not made: more than any board."""
NODES, WORK = 3000, 200_000
"""The solver looks at no more nodes, and at fewer where there are many patterns: nodes × patterns."""
ROUNDS = 400
MANY = 1500
"""Of more patterns the solver does not choose: the dive is what there is."""
NEARLY = 0.6
"""What is taken so often or more is taken once, when nothing is taken whole."""
SAME = 1e-7

Cuts = tuple[tuple[Pattern, int], ...]
"""Patterns, each with how often it is cut."""
Progress = Callable[[str, float], bool | None]
"""Told what is done, and the cost so far; whoever answers False stops the search."""


@attrs.frozen(kw_only=True)
class Solved:
    """Patterns, each with how often it is cut; kinds that could not be made, the bound, and whether it was stopped."""

    patterns: Cuts
    left: tuple[int, ...]
    cost: float
    heuristic: float
    bound: float | None
    stopped: bool = False


@attrs.frozen(eq=False, kw_only=True)
class Job:
    """Boards as they can be cut, what each costs, how many there are, and how many blanks of each kind to make."""

    cutters: tuple[Cutter, ...]
    costs: tuple[float, ...]
    counts: tuple[int | None, ...]
    demand: tuple[int, ...]


def solve(job: Job, progress: Progress | None = None) -> Solved:
    """The best patterns that were found, with a bound on the cost of any.

    Parameters
    ----------
    job : Job
    progress : callable, optional
        Is told what is done, and the cost so far; what it has when it answers False is given back.
    """
    tell = progress or (lambda words, cost: None)
    first = greedy(job)
    left = _left(job, first)
    cost = _cost(job, first, left)
    found = Solved(patterns=first, left=left, cost=cost, heuristic=cost, bound=None)
    if tell("by a plain rule", cost) is False:
        return attrs.evolve(found, stopped=True)
    own = _columns(job, [pattern for pattern, _ in first])
    dived, pool = _dive(job, own)
    if all(cutter.plain for cutter in job.cutters):
        bound = _bound(job, own)
    else:
        relaxed = _columns(job, [pattern for pattern, _ in first], relaxed=True)
        bound = _bound(job, relaxed)
    if tell("patterns made", cost) is False:
        return attrs.evolve(found, bound=bound, stopped=True)
    found = _better(job, found, dived)
    if len(pool) <= MANY and (bound is None or found.cost > bound + SAME):
        found = _better(job, found, _whole(job, pool))
    tell("whole numbers", found.cost)
    return attrs.evolve(found, bound=bound)


def _better(job: Job, found: Solved, patterns: Cuts | None) -> Solved:
    """Whichever costs less."""
    if patterns is None:
        return found
    left = _left(job, patterns)
    cost = _cost(job, patterns, left)
    return attrs.evolve(found, patterns=patterns, left=left, cost=cost) if cost < found.cost - SAME else found


def _dive(job: Job, master: _Master) -> tuple[Cuts, tuple[Pattern, ...]]:
    """Whole numbers by fixing what the linear programme takes whole, or the most of, and pricing anew for the rest."""
    found: dict[Pattern, int] = {}
    pool, rest = dict.fromkeys(master.patterns), job
    while any(rest.demand):
        taken = [(times, pattern) for times, pattern in zip(master.times, master.patterns, strict=True) if times > SAME]
        whole = [(int(times + SAME), pattern) for times, pattern in taken if times >= 1 - SAME]
        if not whole and taken:
            nearly = [(1, pattern) for times, pattern in taken if times >= NEARLY]
            whole = nearly or [(1, max(taken, key=lambda own: own[0])[1])]
        left, used = list(rest.demand), [0] * len(job.cutters)
        for times, pattern in whole:
            for _ in range(times):
                own = trimmed(pattern, left)
                if own.sections:
                    found[own] = found.get(own, 0) + 1
                    used[own.board] += 1
                    left = [n - made for n, made in zip(left, own.counts, strict=True)]
        if not any(used):
            break
        counts = tuple(None if c is None else c - n for c, n in zip(rest.counts, used, strict=True))
        rest = attrs.evolve(rest, demand=tuple(left), counts=counts)
        if any(left):
            master = _columns(rest, [own for own in (trimmed(p, left) for p in pool) if own.sections], wanted=True)
            pool |= dict.fromkeys(master.patterns)
    return tuple(found.items()), tuple(pool)


def greedy(job: Job) -> Cuts:
    """A plain rule: the board and pattern that use the most wood for their cost, again and again."""
    left, used = list(job.demand), [0] * len(job.cutters)
    found: dict[Pattern, int] = {}
    while any(left):
        best: tuple[float, Pattern] | None = None
        areas = [b.length * b.width * (n > 0) for b, n in zip(job.cutters[0].blanks, left, strict=True)]
        for number, cutter in enumerate(job.cutters):
            if job.counts[number] is not None and used[number] >= (job.counts[number] or 0):
                continue
            pattern = cutter.within(areas, left)
            worth = sum(areas[n] * count for n, count in enumerate(pattern.counts))
            rate = worth / (job.costs[number] * cutter.board.length * cutter.board.width)
            if worth > SAME and (best is None or rate > best[0] + 1e-12):
                best = (rate, pattern)
        if best is None:
            break
        pattern = best[1]
        found[pattern] = found.get(pattern, 0) + 1
        used[pattern.board] += 1
        left = [n - own for n, own in zip(left, pattern.counts, strict=True)]
    return tuple(found.items())


@attrs.frozen(eq=False)
class _Master:
    """The patterns of a linear programme, its value, and whether it was priced out with nothing left unlooked at."""

    patterns: tuple[Pattern, ...]
    times: tuple[float, ...]
    value: float
    exact: bool


def _bound(job: Job, master: _Master) -> float | None:
    """The least cost that any plan can have; none where the pricing was cut short, or not all blanks can be made."""
    if not master.exact or master.value >= LEFT_OUT:
        return None
    whole = all(abs(cost - round(cost)) < SAME for cost in job.costs)
    return float(np.ceil(master.value - 1e-6)) if whole else master.value


def _columns(job: Job, first: Sequence[Pattern], *, relaxed: bool = False, wanted: bool = False) -> _Master:
    """Patterns priced by the duals until none pays; wanted makes those only that make no more than is wanted."""
    from scipy.optimize import linprog  # loaded by those who plan boards only

    patterns = list(dict.fromkeys(first))
    exact, worth, times = True, 0.0, tuple[float, ...]()
    for _ in range(ROUNDS):
        matrix, costs, limits, most = _programme(job, patterns)
        upper = np.vstack([-matrix, limits]) if len(limits) else -matrix
        room = (
            np.concatenate([-np.array(job.demand, dtype=float), most]) if len(limits) else -np.array(job.demand, float)
        )
        solved = linprog(costs, A_ub=upper, b_ub=room, bounds=(0, None), method="highs")
        worth, times = float(solved.fun), tuple(solved.x[: len(patterns)].tolist())
        duals = -np.asarray(solved.ineqlin.marginals)
        prices = np.maximum(duals[: len(job.demand)], 0.0)
        rents = dict(zip([n for n, c in enumerate(job.counts) if c is not None], duals[len(job.demand) :], strict=True))
        new = []
        for number, cutter in enumerate(job.cutters):
            pattern, value, sure = _priced(cutter, prices, job.demand, relaxed=relaxed, wanted=wanted)
            exact = exact and sure
            if value > job.costs[number] + rents.get(number, 0.0) + 1e-6 and pattern not in patterns:
                new.append(pattern)
        if not new:
            return _Master(tuple(patterns), times, worth, exact)
        patterns += new
    return _Master(tuple(patterns[: len(times)]), times, worth, False)


def _priced(
    cutter: Cutter, prices: Floats, demand: Sequence[int], *, relaxed: bool, wanted: bool
) -> tuple[Pattern, float, bool]:
    """The pattern of a board that pays most, what it pays, and whether none pays more."""
    if wanted:
        own = cutter.within(prices.tolist(), demand)
        return own, float(np.dot(prices, own.counts)), False
    best = cutter.best(prices.tolist(), relaxed=relaxed)
    return best.pattern, best.value, best.exact


def _programme(job: Job, patterns: Sequence[Pattern]) -> tuple[Floats, Floats, Floats, Floats]:
    """What each pattern makes, what it costs, which board it takes, and how many there are; blanks may be left out."""
    kinds = len(job.demand)
    made = np.array([p.counts for p in patterns], dtype=float).reshape(-1, kinds).T
    matrix = np.hstack([made, np.eye(kinds)])
    costs = np.array([*(job.costs[p.board] for p in patterns), *[LEFT_OUT] * kinds])
    limited = [n for n, count in enumerate(job.counts) if count is not None]
    limits = np.zeros((len(limited), len(patterns) + kinds))
    for row, number in enumerate(limited):
        for column, pattern in enumerate(patterns):
            limits[row, column] = pattern.board == number
    most = np.array([job.counts[n] or 0 for n in limited], dtype=float)
    return matrix, costs, limits, most


def _whole(job: Job, patterns: Sequence[Pattern]) -> Cuts | None:
    """The best whole numbers of patterns, as far as so many nodes go."""
    from scipy.optimize import LinearConstraint, milp

    matrix, costs, limits, most = _programme(job, patterns)
    rules = [LinearConstraint(matrix, lb=np.array(job.demand, dtype=float))]
    if len(limits):
        rules.append(LinearConstraint(limits, ub=most))
    nodes = max(20, min(NODES, WORK // max(len(patterns), 1)))
    solved = milp(costs, constraints=rules, integrality=np.ones(len(costs)), options={"node_limit": nodes})
    if solved.x is None:
        return None
    left = list(job.demand)
    found: dict[Pattern, int] = {}
    for pattern, times in zip(patterns, np.round(solved.x).astype(int).tolist(), strict=False):
        for _ in range(times):
            own = trimmed(pattern, left)
            if own.sections:
                found[own] = found.get(own, 0) + 1
                left = [n - made for n, made in zip(left, own.counts, strict=True)]
    return tuple(found.items())


def _left(job: Job, patterns: Cuts) -> tuple[int, ...]:
    made = [sum(times * pattern.counts[n] for pattern, times in patterns) for n in range(len(job.demand))]
    return tuple(max(want - own, 0) for want, own in zip(job.demand, made, strict=True))


def _cost(job: Job, patterns: Cuts, left: Sequence[int]) -> float:
    return sum(job.costs[pattern.board] * times for pattern, times in patterns) + LEFT_OUT * sum(left)
