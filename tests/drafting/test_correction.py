"""A printer that is off: what is taken back, what is refused, and what is promised."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchjoin.drafting.full_size.correction import PrinterScale, factors, left_over, promise
from benchjoin.errors import LengthError, PaperError

near = st.floats(0.9701, 1.0299)


@given(near, near, st.floats(100, 2000), st.floats(100, 2000))
def test_a_length_drawn_with_the_factors_is_printed_true(along, across, width, height):
    """Printed = drawn × what the printer does; along the long side of the paper, whichever way up the page is."""
    x, y = PrinterScale(250 * along, 180 * across).factors(width, height)
    done = (along, across) if width >= height else (across, along)
    assert (x * done[0], y * done[1]) == (pytest.approx(1), pytest.approx(1))


def test_bars_may_be_measured_in_inches_or_given_as_factors():
    inch = PrinterScale("9 27/32 in", "6 15/16 in", bars=("10 in", "7 in"))
    assert inch.printed == (pytest.approx(9.84375 / 10), pytest.approx(6.9375 / 7))
    assert PrinterScale(0.985, 0.992, bars=1).printed == (pytest.approx(0.985), pytest.approx(0.992))
    assert PrinterScale(250, 180) == PrinterScale("25 cm", "18 cm")
    assert PrinterScale(250, 180).printed == (1, 1)


@pytest.mark.parametrize("along, across", [(242.4, 180), (250, 174.5), (257.6, 180), (250, 185.5), (2, 2), (500, 360)])
def test_more_than_three_in_a_hundred_is_refused_with_the_usual_reason(along, across):
    with pytest.raises(PaperError, match=r"more than 3%.*scales to fit.*100 %"):
        PrinterScale(along, across)


@pytest.mark.parametrize("along, across", [(242.5, 180), (257.5, 180), (250, 174.6), (250, 185.4)])
def test_three_in_a_hundred_is_taken(along, across):
    assert PrinterScale(along, across).factors(2, 1)


@pytest.mark.parametrize("value", [0, -250, float("nan"), float("inf"), "250", "wide", None, True])
def test_what_is_no_length_is_refused(value):
    with pytest.raises(LengthError):
        PrinterScale(value, 180)
    with pytest.raises(LengthError):
        PrinterScale(250, 180, bars=(value, 180))


@pytest.mark.parametrize("factor", [0, 2, 0.5, 1.5, 100])
def test_factors_that_no_printer_has_are_refused(factor):
    with pytest.raises((PaperError, LengthError)):
        PrinterScale(factor, 1, bars=1)


def test_nothing_measured_takes_nothing_back():
    assert factors(None, 100, 200) == (1, 1)


def test_a_bar_of_250_read_to_a_quarter_leaves_1_8_over_1800():
    assert left_over(250) == pytest.approx(0.25 / 250 * 1800) == pytest.approx(1.8)
    assert promise(None, 250) == (
        "Not corrected for a printer; a bar of 250 mm read to 0.25 mm leaves 1.8 mm over 1800."
    )
    told = promise(PrinterScale("246.25 mm", "178.56 mm"), 250)
    assert "along 0.9850, across 0.9920" in told
    assert "bars of 250 and 180 measured 246.25 and 178.56" in told
    assert "leaves 1.8 mm over 1800" in told
