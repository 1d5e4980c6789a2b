"""Lengths held against the pint library's own conversion of units."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchjoin.lengths import mm
from benchjoin.readings import DIVISIONS, Tape

UNITS = pint.UnitRegistry()
WORDS = {
    "in": "inch",
    "inch": "inch",
    "inches": "inch",
    '"': "inch",
    "ft": "foot",
    "foot": "foot",
    "feet": "foot",
    "'": "foot",
    "mm": "mm",
    "cm": "cm",
    "m": "m",
}


def by_pint(number, unit):
    return UNITS.Quantity(number, unit).to("mm").magnitude


@pytest.mark.parametrize("word, unit", WORDS.items())
@pytest.mark.parametrize("number", ["1", "2.5", "0.0625", "57", "99.99"])
def test_every_unit_matches_pint(word, unit, number):
    assert mm(f"{number} {word}") == pytest.approx(by_pint(float(number), unit), rel=1e-13)


@given(st.sampled_from(sorted(WORDS)), st.integers(0, 90), st.integers(1, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_wholes_and_fractions_match_pint(word, whole, top, bottom):
    number = float(whole + Fraction(top, bottom))
    assert mm(f"{whole} {top}/{bottom} {word}") == pytest.approx(by_pint(number, WORDS[word]), rel=1e-13)


@given(st.integers(1, 90), st.decimals(0, 11, places=3))
def test_feet_and_inches_match_pint(feet, inches):
    both = UNITS.Quantity(feet, "foot") + UNITS.Quantity(float(inches), "inch")
    assert mm(f"{feet}' {inches}\"") == pytest.approx(both.to("mm").magnitude, rel=1e-13)


@pytest.mark.parametrize("name", DIVISIONS)
def test_every_tape_counts_in_the_unit_that_pint_knows(name):
    number, unit = name.split()
    assert Tape(name).division == pytest.approx(by_pint(float(Fraction(number)), unit), rel=1e-13)
