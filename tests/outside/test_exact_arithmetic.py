"""Runs held against an independent solver in exact rational arithmetic.

The solver knows no accumulation: a run is a set of linear equations in its edges, solved by elimination over
fractions. What the equations leave open is open; where they contradict each other, or a clear is negative, the run does
not come out.
"""

from __future__ import annotations

import itertools
from fractions import Fraction

import numpy as np
import pytest
from exact_runs import Run, runs
from hypothesis import given, settings

from benchjoin.runs import edges

AGREE = 1e-9  # mm


def equations(run, stops):
    """Rows of coefficients of the edges, and the right-hand side, of a run that is pinned at some stops only."""
    count = len(run.sizes)

    def row(value, **at):
        found = [Fraction(0)] * (count + 1) + [value]
        for edge, factor in at.items():
            found[int(edge[1:])] += factor
        return found

    rows = [row(run.pins.get(stop, Fraction(0)), **{f"e{stop}": Fraction(1)}) for stop in stops]
    rows += [
        row(size, **{f"e{n + 1}": Fraction(1), f"e{n}": Fraction(-1)})
        for n, size in enumerate(run.sizes)
        if size is not None
    ]
    for lower, upper in itertools.pairwise(stops):
        opened = [n for n in range(lower, upper) if run.sizes[n] is None]
        for one, other in itertools.pairwise(opened):  # (size + less) / share is the same for both
            found = row(run.less[other] / run.shares[other] - run.less[one] / run.shares[one])
            for n, sign in ((one, 1), (other, -1)):
                found[n + 1] += sign / run.shares[n]
                found[n] -= sign / run.shares[n]
            rows.append(found)
    return rows


def eliminated(rows):
    """Reduced rows by Gauss and Jordan, or None where they contradict each other."""
    rows, done = [list(row) for row in rows], 0
    for column in range(len(rows[0]) - 1):
        pivot = next((n for n in range(done, len(rows)) if rows[n][column]), None)
        if pivot is None:
            continue
        rows[done], rows[pivot] = rows[pivot], rows[done]
        rows[done] = [value / rows[done][column] for value in rows[done]]
        for n, row in enumerate(rows):
            if n != done and row[column]:
                rows[n] = [a - row[column] * b for a, b in zip(row, rows[done], strict=True)]
        done += 1
    return None if any(row[-1] for row in rows[done:]) else rows[:done]


def solved(run, stops):
    """Edges by elimination, None for each that is left open; or None where the run does not come out."""
    rows = eliminated(equations(run, stops))
    if rows is None:
        return None
    found = [None] * (len(run.sizes) + 1)
    for row in rows:
        own = [edge for edge, value in enumerate(row[:-1]) if value]
        if len(own) == 1:
            found[own[0]] = row[-1]
    for lower, upper in itertools.pairwise(stops):
        opened = [n for n in range(lower, upper) if run.sizes[n] is None]
        if any(found[n + 1] - found[n] + run.less[n] < 0 for n in opened):  # less than nothing where it is measured
            return None
    return found


def expected(run):
    """Edges pin by pin: from the lower pin of the first room that does not come out, nothing is known."""
    stops = sorted({0, *run.pins})
    for count in range(2, len(stops) + 1):
        if solved(run, stops[:count]) is None:
            lower = stops[count - 2]
            return [*solved(run, stops[: count - 1])[:lower], *[None] * (len(run.sizes) + 1 - lower)]
    return solved(run, stops)


def agrees(run):
    sizes, given_ = run.given()
    found = edges(sizes, **given_)
    exact = expected(run)
    assert [np.isnan(at) for at in found] == [at is None for at in exact]
    for at, by_fractions in zip(found, exact, strict=True):
        assert by_fractions is None or abs(Fraction(float(at)) - by_fractions) < AGREE


@settings(max_examples=400)
@given(runs())
def test_any_run_matches_elimination_over_fractions(run):
    agrees(run)


@pytest.mark.slow
@settings(max_examples=150)
@given(runs(spoiled=False, count=8))
def test_long_runs_match_elimination_over_fractions(run):
    agrees(run)


def test_a_tall_stack_of_thirds_matches_elimination_over_fractions():
    third = Fraction(1, 3)
    run = Run(
        sizes=(Fraction(7), None) * 20,
        shares=(Fraction(1), third, Fraction(1), Fraction(2)) * 10,
        less=(Fraction(0), Fraction(1, 64), Fraction(0), Fraction(0)) * 10,
        pins={20: Fraction(1000), 40: Fraction(2501, 2)},
    )
    agrees(run)


def test_the_solver_itself_agrees_with_a_run_by_hand():
    # by hand: (400 − 100) / 3 = 100: 100, then 100 fixed, then 200
    run = Run(
        sizes=(None, Fraction(100), None),
        shares=(Fraction(1), Fraction(1), Fraction(2)),
        less=(Fraction(0),) * 3,
        pins={3: Fraction(400)},
    )
    assert expected(run) == [0, 100, 200, 400]
    assert expected(Run(sizes=(Fraction(9),), shares=(1,), less=(0,), pins={1: Fraction(8)})) == [None, None]
    assert expected(Run(sizes=(Fraction(9), None), shares=(1, 1), less=(0, 0), pins={})) == [0, 9, None]


@pytest.mark.parametrize("rows, count", [([[1, 0, 5], [1, 0, 6]], None), ([[1, 1, 5], [2, 2, 10]], 1)])
def test_elimination_tells_contradiction_from_repetition(rows, count):
    found = eliminated([[Fraction(value) for value in row] for row in rows])
    assert (found if found is None else len(found)) == count
