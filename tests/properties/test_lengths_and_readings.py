"""Rules of lengths and readings, each with many lengths that try to break it."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from benchjoin.errors import LengthError
from benchjoin.lengths import LONGEST, mm, signed_mm
from benchjoin.readings import DIVISIONS, Tape

TAPES = st.sampled_from(sorted(DIVISIONS)).map(Tape)
LENGTHS = st.floats(0, 20_000)

TAPE_WORDS = ["57", "2", "7/16", "7/0", "0", ".5", "1.45", "⅞", "-", "−", " ", "in", '"', "'", "″", "ft", "m", ","]
TYPED = st.one_of(
    st.text(),
    st.text(alphabet="0123456789 /.,-−'\"′″’½⅞⁄inchftomINıſ\u00a0"),
    st.lists(st.sampled_from(TAPE_WORDS), max_size=7).map("".join),
)
"""What hurried fingers may type where a length is asked for."""

GIVEN = st.one_of(
    TYPED,
    st.floats(),
    st.integers(),
    st.fractions(),
    st.decimals(),
    st.complex_numbers(),
    st.booleans(),
    st.none(),
    st.binary(),
    st.lists(st.integers(), max_size=2),
)
"""What a program may hand over where a length is asked for."""


def exact(tape):
    """The tape's division worked from its name. [mm]"""
    number, unit = tape.name.split()
    return Fraction(number) * {"in": Fraction("25.4"), "mm": 1}[unit]


def marks(figures, tape):
    """The number of marks that figures without full or scant say."""
    return sum(map(Fraction, figures.split())) / Fraction(tape.name.split()[0])


def answer(door, value, **how):
    """What comes through a door, or the LengthError that does; any other error is not caught."""
    try:
        return door(value, **how)
    except LengthError as error:
        return error


class TestTheDoor:
    """design, lengths: "A bare string such as "57" is refused … So are NaN, infinity, a negative size, and text
    that only starts well." A length comes through the door, or a LengthError does; nothing else."""

    @settings(max_examples=400)
    @given(TYPED, st.booleans())
    def test_text_is_a_length_or_a_length_error(self, text, zero):
        found = answer(mm, text, zero=zero)
        assert isinstance(found, LengthError) or (isinstance(found, float) and found <= LONGEST)
        assert isinstance(found, LengthError) or found > 0 or (zero and found == 0)

    @settings(max_examples=200)
    @given(GIVEN)
    def test_anything_is_a_length_or_a_length_error(self, value):
        found = answer(mm, value)
        assert isinstance(found, LengthError) or (isinstance(found, float) and 0 < found <= LONGEST)

    @settings(max_examples=200)
    @given(GIVEN)
    def test_anything_is_a_signed_length_or_a_length_error(self, value):
        found = answer(signed_mm, value)
        assert isinstance(found, LengthError) or (isinstance(found, float) and abs(found) <= LONGEST)

    @settings(max_examples=200)
    @given(GIVEN)
    def test_a_length_error_says_what_it_is_about_and_shows_a_good_example(self, value):
        found = answer(mm, value, what="the shelf")
        if isinstance(found, LengthError):
            assert "given for the shelf" in str(found)
            assert ' in"' in str(found)
            assert len(str(found)) < 400

    @given(st.from_regex(r"[0-9]{1,4}( [1-9]/[1-9]{1,2}|\.[0-9]{1,4})?", fullmatch=True))
    def test_digits_without_a_unit_never_come_through(self, digits):
        with pytest.raises(LengthError, match="says no unit"):
            mm(digits)

    @given(
        st.integers(0, 200), st.integers(1, 63), st.sampled_from([2, 4, 8, 16, 32, 64]), st.sampled_from([" in", '"'])
    )
    def test_whole_and_fraction_are_added_exactly(self, whole, top, bottom, unit):
        inches = whole + Fraction(top, bottom)
        assert mm(f"{whole} {top}/{bottom}{unit}") == float(inches * Fraction("25.4"))

    @given(st.integers(0, 50), st.integers(0, 11), st.integers(1, 15))
    def test_feet_are_twelve_inches(self, feet, inches, sixteenths):
        assert mm(f"{feet}' {inches} {sixteenths}/16\"") == mm(f"{12 * feet + inches} {sixteenths}/16 in")


class TestAReadingIsTheNearestMark:
    """readings: "A reading is the nearest mark of the tape, reduced, followed by *full* or *scant* when the true length
    lies off that mark by more than a hair: an eighth of the tape's division." """

    @given(TAPES, LENGTHS)
    def test_a_reading_lies_within_half_a_division(self, tape, length):
        read = marks(tape.figures(length), tape) * exact(tape)
        assert abs(read - Fraction(length)) <= exact(tape) / 2 + Fraction(1, 10**8)

    @given(TAPES, LENGTHS)
    def test_full_is_over_the_mark_and_scant_is_under_it(self, tape, length):
        over = Fraction(length) - marks(tape.figures(length), tape) * exact(tape)
        assume(abs(abs(over) - exact(tape) / 8) > Fraction(1, 10**8))
        expected = "" if abs(over) < exact(tape) / 8 else "full" if over > 0 else "scant"
        assert tape.off(length) == expected
        assert tape.read(length) == f"{tape.figures(length)} {expected}".strip()

    @given(TAPES, LENGTHS)
    def test_a_fraction_is_reduced(self, tape, length):
        assume(tape.unit == "in")
        for word in tape.figures(length).split():
            top, _, bottom = word.partition("/")
            assert not bottom or (math.gcd(int(top), int(bottom)) == 1 and int(top) < int(bottom))

    @given(TAPES, st.integers(1, 10_000))
    def test_a_mark_is_read_and_parsed_back_as_itself(self, tape, count):
        mark = float(count * exact(tape))
        assert mm(tape.say(mark)) == pytest.approx(mark, abs=1e-9)
        assert tape.off(mark) == ""
        assert tape.marks(mark) == count

    @given(TAPES, st.floats(0.001, 20_000))
    def test_below_zero_reads_as_above_it(self, tape, length):
        half_way = abs(length / tape.division % 1 - 0.5)
        assume(half_way > 1e-6)  # half-way between two marks goes up on either side
        assert tape.marks(-length) == -tape.marks(length)
        if tape.marks(length):
            assert tape.read(-length) == f"-{tape.read(length)}"


class TestAMarkIsReadOnceFromTheExactSum:
    """design, lengths: "A mark is rounded once, from the exact sum: rounded widths are never added up, so the error of
    the tenth mark is no larger than that of the first." """

    @given(TAPES, st.lists(st.floats(1, 400), min_size=1, max_size=40))
    def test_the_reading_of_a_long_sum_is_within_half_a_division_of_it(self, tape, sizes):
        total = sum(map(Fraction, sizes))
        read = marks(tape.figures(float(total)), tape) * exact(tape)
        assert abs(read - total) <= exact(tape) / 2 + Fraction(1, 10**8)
