"""Tapes, by the law: Directive 2014/32/EU Annex X (MI-008), read as UK SI 2016/1153 Schedule 1I, and NIST Handbook 44,
s. 5.52.
"""

import math

import pytest

from benchjoin.errors import LengthError
from benchjoin.trade.tapes import EU_CLASSES, us_most

INCH, FOOT = 25.4, 304.8


# MI-008 ch. I, Table 1: a, b, c in mm; Table 2: neighbouring marks up to 1 mm, and over that up to 1 cm
@pytest.mark.parametrize(
    "name, a, b, c, short, marks",
    [("I", 0.1, 0.1, 0.1, 0.1, 0.2), ("II", 0.3, 0.2, 0.2, 0.2, 0.4), ("III", 0.6, 0.4, 0.3, 0.3, 0.6)],
)
def test_matches_the_tables_of_mi_008(name, a, b, c, short, marks):
    row = EU_CLASSES[name]
    assert (row.a, row.b, row.c, row.short, row.marks) == (a, b, c, short, marks)


# ± (a + b L), L rounded up to the whole metre, c more from a hook or an end: arithmetic on the table
@pytest.mark.parametrize(
    "name, length, between, from_hook",
    [
        ("II", 3000, 0.9, 1.1),
        ("II", 1500, 0.7, 0.9),
        ("I", 1000, 0.2, 0.3),
        ("II", 2000, 0.7, 0.9),
        ("II", 2001, 0.9, 1.1),
        ("III", 1, 1.0, 1.3),
    ],
)
def test_matches_the_formula_of_mi_008(name, length, between, from_hook):
    row = EU_CLASSES[name]
    assert row.most(length) == pytest.approx(between, abs=1e-9)
    assert row.most(length, from_surface=True) == pytest.approx(from_hook, abs=1e-9)


# NIST HB 44 s. 5.52, metal tapes from zero: to 6 ft 1/32; 7-30 ft 1/16; 31-55 ft 1/8; 56-80 ft 3/16; 81-100 ft 1/4 in
@pytest.mark.parametrize(
    "feet, inches",
    [
        *((1, 1 / 32), (6, 1 / 32), (7, 1 / 16), (30, 1 / 16), (31, 1 / 8), (55, 1 / 8)),
        *((56, 3 / 16), (80, 3 / 16), (81, 1 / 4), (100, 1 / 4)),
    ],
)
def test_matches_handbook_44(feet, inches):
    assert us_most(feet * FOOT) == pytest.approx(inches * INCH)


@pytest.mark.parametrize("length", [-1.0, math.nan, math.inf])
def test_what_is_no_length_is_refused(length):
    with pytest.raises(LengthError):
        EU_CLASSES["I"].most(length)
    with pytest.raises(LengthError):
        us_most(length)


def test_the_handbook_ends_at_100_ft():
    with pytest.raises(LengthError, match="100 ft"):
        us_most(101 * FOOT)
