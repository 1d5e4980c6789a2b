"""The order that moves the stop least often: held against every order there is."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchjoin.shop.settings.ordering import MOST, fewest_stops

GROUPS = st.lists(st.sets(st.integers(1, 5), max_size=3), min_size=1, max_size=3)


def changes(order):
    """How often the stop is set when it is moved through these places."""
    stands, count = None, 0
    for place in order:
        count += place != stands
        stands = place
    return count


def fewest_of_all(groups, before):
    best = None
    for order in itertools.permutations(range(len(groups))):
        if any(order.index(first) > order.index(later) for first, later in before):
            continue
        for stops in itertools.product(*(itertools.permutations(groups[n]) for n in order)):
            count = changes(itertools.chain(*stops))
            best = count if best is None else min(best, count)
    return best


def checked(groups, before=()):
    order = fewest_stops(groups, before=before)
    numbers = [number for number, _ in order.heights]
    assert sorted(numbers) == list(range(len(groups)))
    assert all(numbers.index(first) < numbers.index(later) for first, later in before)
    assert all(sorted(stops) == sorted(groups[number]) for number, stops in order.heights)
    assert changes(place for _, stops in order.heights for place in stops) == order.stops
    return order


@given(GROUPS)
def test_no_order_sets_the_stop_less_often(groups):
    assert checked(groups).stops == fewest_of_all(groups, ())


@given(GROUPS)
def test_no_order_that_keeps_deep_cuts_last_sets_the_stop_less_often(groups):
    before = {(n, n + 1) for n in range(len(groups) - 1)}
    assert checked(groups, before).stops == fewest_of_all(groups, before)


@given(st.lists(st.sets(st.integers(1, 6), max_size=2), min_size=4, max_size=4))
def test_four_heights(groups):
    assert checked(groups).stops == fewest_of_all(groups, ())


def test_many_heights_stay_rising_and_say_that_not_every_order_was_tried():
    groups = [{n, n + 1} for n in range(MOST + 4)]
    order = checked(groups)
    assert not order.exact
    assert [number for number, _ in order.heights] == list(range(MOST + 4))
    assert order.stops == len(groups) + 1


@pytest.mark.parametrize("groups", [[], [set()], [set(), set()]])
def test_nothing_to_set(groups):
    assert fewest_stops(groups).stops == 0
