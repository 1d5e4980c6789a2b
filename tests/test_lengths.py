"""Lengths at the door: what is read as a length, what is refused, and what the refusal says."""

from __future__ import annotations

import math
import re
from fractions import Fraction

import numpy as np
import pytest

from benchjoin.errors import LengthError, typed
from benchjoin.lengths import FOOT, INCH, LONGEST_TEXT, Inches, distinct, mm, signed_mm, steady

# by hand: an inch is 25.4 mm, a foot 12 inches
TAPE_STRINGS = {
    "57 in": 1447.8,
    "57in": 1447.8,
    "57 IN": 1447.8,
    "57 in.": 1447.8,
    '57"': 1447.8,
    "57″": 1447.8,
    "57”": 1447.8,
    "57 inches": 1447.8,
    "1 inch": 25.4,
    "57\u00a0in": 1447.8,
    "57\u202fin": 1447.8,
    "  57 in  ": 1447.8,
    "3/4 in": 19.05,
    "3⁄4 in": 19.05,
    "⅞ in": 22.225,
    "2⅞ in": 73.025,
    "2 ⅞ in": 73.025,
    "2-⅞ in": 73.025,
    "2 7/16 in": 61.9125,
    '2 7/16"': 61.9125,
    '2-7/16"': 61.9125,
    "2 - 7/16 in": 61.9125,
    ".5 in": 12.7,
    "0.5 in": 12.7,
    "5 ft": 1524.0,
    "1 foot": 304.8,
    "5 feet": 1524.0,
    "1 1/2 ft": 457.2,
    "5'": 1524.0,
    "5′": 1524.0,
    "5’": 1524.0,
    "4' 9 1/2\"": 1460.5,
    "4'9 1/2\"": 1460.5,
    "4'-9 1/2\"": 1460.5,
    "4' - 9 1/2\"": 1460.5,
    "4′ 9½″": 1460.5,
    "4’ 9½”": 1460.5,
    "4 ft 9 1/2 in": 1460.5,
    "4 feet 9.5 inches": 1460.5,
    "1450 mm": 1450.0,
    "1450mm": 1450.0,
    "0.5 mm": 0.5,
    "145 cm": 1450.0,
    "1.45 m": 1450.0,
    "100 m": 100_000.0,
}


@pytest.mark.parametrize("text, length", TAPE_STRINGS.items())
def test_a_tape_string_is_read_to_the_nearest_float(text, length):
    assert mm(text) == length


@pytest.mark.parametrize(
    "number, length",
    [(60, 60.0), (0.25, 0.25), (Fraction(127, 5), 25.4), (np.float64(61.5), 61.5), (np.int64(3), 3.0)],
)
def test_a_bare_number_is_millimetres(number, length):
    found = mm(number)
    assert found == length
    assert type(found) is float


def test_a_foot_is_twelve_inches_to_the_last_digit():
    assert mm("1 ft") == mm("12 in") == FOOT == float(Fraction("25.4") * 12)
    assert mm("1 in") == INCH


@pytest.mark.parametrize("text", ["57", " 57 ", "2 7/16", "7/16", "2⅞", "1450.5"])
def test_a_bare_number_in_quotes_is_refused_and_told_how_to_write_it(text):
    with pytest.raises(LengthError, match=r"says no unit\. Write \".* in\" or \".* mm\"") as caught:
        mm(text)
    assert repr(text) in str(caught.value)
    assert caught.value.value == text


REFUSED = [
    ("57 in x", "starts well, but 'x' is left over"),
    ("2 7/16 in long", "'long' is left over"),
    ("5 mm 3", "'3' is left over"),
    ("4' 9", "'9' is left over"),
    ("57 in -", "' -' is left over"),
    ("57 in..", "'.' is left over"),
    ("57 in\0", "is left over"),
    ("1,5 mm", "has a comma in it. Write a decimal point"),
    ("1,450 mm", "has a comma in it"),
    ("57 inn", "does not read as a length"),
    ("57 \N{LATIN SMALL LETTER DOTLESS I}n", "does not read as a length"),
    ("57 inche\N{LATIN SMALL LETTER LONG S}", "does not read as a length"),
    ("in", "does not read as a length"),
    ("a", "does not read as a length"),
    ("1e3 mm", "does not read as a length"),
    ("1 450 mm", "does not read as a length"),
    ("1.2.3 mm", "does not read as a length"),
    ("1.5/2 in", "does not read as a length"),
    ("2² in", "does not read as a length"),
    ("57 furlongs", "does not read as a length"),
    ("", "is empty"),
    ("   ", "is empty"),
    ("-", "is empty"),
    ("3 in 2 ft", "is not one length"),
    ("1 m 20 cm", "is not one length"),
    ("5 in 3 in", "is not one length"),
    ("1 ft 2 in 3 in", "is not one length"),
    ("2 ft 3 mm", "is not one length"),
    ("1/0 in", "divides by zero"),
    ("2 1/0 in", "divides by zero"),
    ("0 in", "must be more than zero"),
    ("0' 0\"", "must be more than zero"),
    ("-1 in", "must be more than zero"),
    ("\N{MINUS SIGN}1 in", "must be more than zero"),
    ("- 2 7/16 in", "must be more than zero"),
    ("--1 in", "must be more than zero"),
    (0, "must be more than zero"),
    (-0.0, "must be more than zero"),
    (-60, "must be more than zero"),
    (float("nan"), "is not a finite number"),
    (float("inf"), "is not a finite number"),
    (-float("inf"), "is not a finite number"),
    (1e12, "is longer than 100 m; a plain number is read as mm"),
    ("100.1 m", "is longer than 100 m"),
    (10**400, "is longer than 100 m"),
    (10**5000, "is longer than 100 m"),
    ("9" * 70 + " m", "is longer than 100 m"),
    ("9" * 5000 + " in", "is not one length"),
    (None, "is not a length"),
    (True, "is not a length"),
    (np.True_, "is not a length"),
    (57j, "is not a length"),
    (b"57 in", "is not a length"),
    ([57], "is not a length"),
    ((57, "in"), "is not a length"),
    (np.array([57.0]), "is not a length"),
    ({"in": 57}, "is not a length"),
]


@pytest.mark.parametrize("value, said", REFUSED, ids=[str(place) for place in range(len(REFUSED))])
def test_what_is_no_length_is_refused_with_the_reason_and_a_good_example(value, said):
    with pytest.raises(LengthError) as caught:
        mm(value, what="the height of the back leg")
    sentence = str(caught.value)
    assert said in sentence
    assert "given for the height of the back leg" in sentence
    assert 'for example "57 in", "2 7/16 in", "4\' 9 1/2\\"", "1450 mm" or "1.45 m"' in sentence
    assert len(sentence) < 400


def test_every_good_example_of_the_refusals_is_read():
    assert [mm(text) for text in ("57 in", "2 7/16 in", "4' 9 1/2\"", "1450 mm", "1.45 m")] == [
        1447.8,
        61.9125,
        1460.5,
        1450.0,
        1450.0,
    ]


@pytest.mark.parametrize("value", [0, 0.0, "0 in", "0 mm", "0' 0\"", -0.0, "-0 in"])
def test_zero_is_a_length_only_where_it_is_allowed(value):
    assert str(mm(value, zero=True)) == "0.0"
    with pytest.raises(LengthError, match="must be more than zero"):
        mm(value)


def test_less_than_nothing_is_refused_even_where_zero_is_allowed():
    with pytest.raises(LengthError, match="must be zero or more"):
        mm("-1 in", zero=True)


@pytest.mark.parametrize("text", TAPE_STRINGS)
def test_a_length_once_read_is_read_again_as_itself(text):
    assert mm(mm(text)) == mm(text)
    assert signed_mm(signed_mm(f"-{text}")) == signed_mm(f"-{text}") == -mm(text)


@pytest.mark.parametrize(
    "value, length",
    [("-1 in", -25.4), ("\N{MINUS SIGN}1 in", -25.4), ("- 1 in", -25.4), (-12, -12.0), (12, 12.0), ("1 in", 25.4)],
)
def test_an_overhang_may_stop_short(value, length):
    assert signed_mm(value) == length


@pytest.mark.parametrize("value", [0, -0.0, "0 in", "-0 in"])
def test_no_overhang_is_plain_zero(value):
    assert str(signed_mm(value)) == "0.0"


@pytest.mark.parametrize(
    "value", ["-57", "--1 in", "-1 in x", "-", -1e12, -(10**400), float("nan"), -float("inf"), True, None, ["-1 in"]]
)
def test_a_signed_length_is_refused_like_any_other(value):
    with pytest.raises(LengthError):
        signed_mm(value)


class TestWhatIsTold:
    """An error holds the value as it was typed, and says what it was given for."""

    REFUSED = (
        "x" * 300,
        "  ",
        "3/0 in",
        "5 in 4 in",
        "57",
        "1,5 m",
        "2 in and",
        -1,
        "-1 mm",
        math.nan,
        None,
        [],
        10**400,
    )

    @pytest.mark.parametrize("value", [*REFUSED, "200000000 mm", 2e6])
    def test_mm_gives_back_what_was_typed(self, value):
        with pytest.raises(LengthError) as told:
            mm(value)
        assert told.value.value is value
        assert "given for a length " in str(told.value)

    @pytest.mark.parametrize("value", [*REFUSED, 0, "0 in"])
    def test_it_says_what_it_was_given_for(self, value):
        with pytest.raises(LengthError, match=re.escape(f"{typed(value)} given for the depth ")):
            mm(value, what="the depth")

    @pytest.mark.parametrize("value", ["x", "-x", "-300000000 mm", -1e9, True, None])
    def test_a_signed_length_says_so_too(self, value):
        with pytest.raises(LengthError, match="given for the overhang "):
            signed_mm(value, what="the overhang")
        with pytest.raises(LengthError, match="given for a length "):
            signed_mm(value)

    @pytest.mark.parametrize("truth", [True, False, np.True_, np.False_])
    def test_yes_and_no_are_no_lengths(self, truth):
        for read in (mm, signed_mm):
            with pytest.raises(LengthError, match="is not a length"):
                read(truth)

    def test_the_longest_text_is_read(self):
        text = "1" + " " * (LONGEST_TEXT - 3) + "mm"
        assert len(text) == LONGEST_TEXT
        assert mm(text) == 1.0


class TestKeysOfSizes:
    def test_sizes_that_touch_are_one(self):
        assert distinct([3.0, 1.0, 2.0, 1.0 + 0.9e-6, 2.0 + 1.1e-6]) == [1.0, 2.0, 2.0 + 1.1e-6, 3.0]

    def test_a_key_tells_a_micrometre_of_a_micrometre_but_not_less(self):
        assert steady(1.2345674, 2.5, -0.0) == (1.234567, 2.5, 0.0)
        assert str(steady(-0.0)[0]) == "0.0"
        assert steady(1.000001) != steady(1.000002)

    def test_inches_stay_inches(self):
        assert isinstance(mm(mm("3 in")), Inches)
        assert not isinstance(mm("3 mm"), Inches)
