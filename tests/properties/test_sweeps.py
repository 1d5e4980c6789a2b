"""A sweep is a short way to what laying out each variant by itself gives, for any frame and any of its addresses."""

from __future__ import annotations

import numpy as np
import one_by_one
import pytest
from hypothesis import given
from hypothesis import strategies as st
from samples import SAMPLES
from strategies import frames

from benchjoin.frame.address import addresses, value
from benchjoin.sweep import sweep

WANT = ("marks", "places", "counts", "lengths", "volumes", "findings")
FACTORS = (0.4, 0.9, 1.0, 1.02, 1.1, 1.7)


def numbers(frame):
    """Addresses of a frame whose values are numbers that a maker might change."""
    return [a for a in addresses(frame) if isinstance(value(frame, a), float)]


def disagreements(frame, over, piece=1):
    """Where a sweep and layouts one by one differ, in words."""
    swept = sweep(frame, over, WANT, piece=piece)
    told = []
    for place, layout in one_by_one.laid_out(frame, over, piece):
        if swept.built[place] != (layout is not None):
            told.append(f"{place}: built is {swept.built[place]}; {swept.why(*place)}")
            continue
        for name in WANT[:-1]:
            wanted = getattr(one_by_one, name)(layout) if layout else {}
            absent = 0.0 if name == "counts" else np.nan
            for words, array in swept[name].items():
                expected = wanted.get(words, absent)
                if not np.isclose(array[place], expected, rtol=1e-9, atol=1e-6, equal_nan=True):
                    told.append(f"{place}: {name} {words}: {array[place]} and not {expected}")
            told += [f"{place}: {name} {words}: not there" for words in wanted if words not in swept[name]]
        found = {words for words, array in swept["findings"].items() if array[place]}
        expected = one_by_one.findings(layout) if layout else set()
        told += [f"{place}: finding {words}" for words in found ^ expected]
    return told, swept


@pytest.mark.parametrize("frame", SAMPLES.values(), ids=SAMPLES)
def test_numbers_of_every_sample_can_be_swept(frame):
    sweep_each(frame, numbers(frame)[:: len(numbers(frame)) // 3])


@pytest.mark.slow
@pytest.mark.parametrize("frame", SAMPLES.values(), ids=SAMPLES)
def test_every_number_of_every_sample_can_be_swept(frame):
    sweep_each(frame, numbers(frame))


def sweep_each(frame, chosen):
    for address in chosen:
        over = {address: [value(frame, address) * factor for factor in FACTORS]}
        told, swept = disagreements(frame, over)
        assert told == [], address
        assert swept.one_by_one == 0, address


@given(st.data())
def test_a_sweep_agrees_with_layouts_one_by_one(data):
    frame = data.draw(frames())
    chosen = data.draw(st.lists(st.sampled_from(numbers(frame)), min_size=1, max_size=2, unique=True))
    over = {}
    for address in chosen:
        factors = data.draw(st.lists(st.sampled_from(FACTORS), min_size=1, max_size=3, unique=True))
        over[address] = [value(frame, address) * factor for factor in factors]
    told, swept = disagreements(frame, over, data.draw(st.integers(1, frame.quantity)))
    assert told == []
    assert swept.one_by_one == 0
