"""What a tape says: nearest mark, reduced, full or scant; and why readings are never added up."""

from __future__ import annotations

import math
import pickle
from fractions import Fraction

import pytest

from benchjoin import Clear, Frame, Leg, Level, Stock, alter, elevation, lay_out
from benchjoin.errors import LengthError
from benchjoin.lengths import mm
from benchjoin.readings import DIVISIONS, Tape

# by hand; an inch is 25.4 mm
READINGS = [
    ("1/16 in", 0.0, "0"),
    ("1/16 in", 12.7, "1/2"),
    ("1/16 in", 25.4, "1"),
    ("1/16 in", 61.9125, "2 7/16"),
    ("1/16 in", 1228.725, "48 3/8"),  # 48.375 × 25.4
    ("1/16 in", 304.8, "12"),
    ("1/32 in", 29.36875, "1 5/32"),  # 1.15625 × 25.4
    ("1/32 in", 28.575, "1 1/8"),  # 36/32, reduced
    ("1/64 in", 2.778125, "7/64"),
    ("1/64 in", 3.175, "1/8"),
    ("1 mm", 160.0, "160"),
    ("1 mm", 33.3375, "33 full"),  # 0.3375 over, a hair is 0.125
    ("1 mm", 82.7, "83 scant"),
    ("1 mm", 82.1, "82"),
    ("0.5 mm", 33.3375, "33.5 scant"),  # 0.1625 short, a hair is 0.0625
    ("0.5 mm", 82.55, "82.5"),
    ("0.5 mm", 82.0, "82"),
    # a hair of the inch tape is 1/128 in = 0.1984375 mm
    ("1/16 in", 25.4 + 0.198, "1"),
    ("1/16 in", 25.4 + 0.199, "1 full"),
    ("1/16 in", 25.4 - 0.198, "1"),
    ("1/16 in", 25.4 - 0.199, "1 scant"),
    ("1/16 in", 0.199, "0 full"),
    # half-way between two marks goes up: 1 1/32 in
    ("1/16 in", 26.19375, "1 1/16 scant"),
    ("1 mm", 2.5, "2.5"),
    # below zero, read from zero downwards
    ("1/16 in", -25.8, "-1 full"),
    ("1/16 in", -25.0, "-1 scant"),
    ("1/16 in", -61.9125, "-2 7/16"),
    ("1/16 in", -0.3, "0 scant"),
    ("1/16 in", -0.1, "0"),
]


@pytest.mark.parametrize("tape, length, reading", READINGS)
def test_a_reading_is_the_nearest_mark_reduced_with_full_or_scant_beyond_a_hair(tape, length, reading):
    assert Tape(tape).read(length) == reading


def test_a_sentence_says_the_unit_before_full_or_scant():
    assert Tape("1/16 in").say(62.3125) == "2 7/16 in full"  # 0.4 mm over 2 7/16
    assert Tape("1 mm").say(160.0) == "160 mm"
    assert Tape("0.5 mm").say(81.85) == "82 mm scant"


def test_adding_readings_goes_wrong_where_reading_the_sum_does_not():
    # by hand: eight rails of 3 15/64 in are 25 7/8 in; each reads 3 1/4 scant, and eight times 3 1/4 is 26
    tape, rail = Tape("1/16 in"), mm("3 15/64 in")
    assert tape.read(rail) == "3 1/4 scant"
    assert tape.read(8 * rail) == "25 7/8"
    assert tape.read(8 * tape.nearest(rail)) == "26"


@pytest.mark.parametrize("tape", DIVISIONS)
def test_a_hair_is_an_eighth_of_the_division(tape):
    number, unit = tape.split()
    division = float(Fraction(number)) * {"in": 25.4, "mm": 1.0}[unit]
    assert Tape(tape).division == pytest.approx(division, abs=1e-12)
    assert Tape(tape).hair == pytest.approx(division / 8, abs=1e-12)
    assert Tape(tape).unit == unit


@pytest.mark.parametrize("name", ["1/8 in", "1/16", "", None, 1, ["1/16 in"], {}])
def test_a_tape_that_is_not_read_is_answered_with_those_that_are(name):
    with pytest.raises(LengthError, match=r"1/16 in, 1/32 in, 1/64 in, 0.5 mm, 1 mm"):
        Tape(name)


@pytest.mark.parametrize("length", [float("nan"), float("inf"), -float("inf")])
def test_no_tape_reads_what_is_not_finite(length):
    with pytest.raises(LengthError, match="finite"):
        Tape().read(length)


class TestHowADesignReads:
    """A design reads as it was typed: in inches where any length was, or else in millimetres."""

    def frame(self, **changed):
        stock = Stock("ash", thickness=40, width=60)
        fields = {
            "name": "Stool",
            "length": 400,
            "depth": "30 cm",
            "front": Leg(stock, height=450),
            "back": Leg(stock, height=450),
            "rail_stock": Stock("ash board", thickness=20),
            "stack": [Clear(100), Level("low", front=60)],
        }
        return Frame(**{**fields, **changed})

    def test_numbers_and_metric_strings_read_in_millimetres_on_a4(self):
        frame = self.frame()
        assert frame.tape.name == "1 mm"
        assert elevation(lay_out(frame), "front").height in (297.0, 210.0)

    @pytest.mark.parametrize(
        "changed",
        [
            {"length": "16 in"},
            {"stack": [Clear(100), Level("low", front="2 3/8 in")]},
            {"stack": [Clear("4 in"), Level("low", front=60)]},
            {"rail_stock": Stock("ash board", thickness='3/4"')},
            {"rail_stock": Stock.dressed("1x4").milled()},
            {"bays": [Clear("1' 2 in")]},
            {"fit": "1/64 in"},
        ],
    )
    def test_one_length_in_inches_makes_it_read_in_inches(self, changed):
        assert self.frame(**changed).tape.name == "1/16 in"

    def test_what_is_said_holds(self):
        assert self.frame(tape="1/32 in").tape.name == "1/32 in"
        assert self.frame(length="16 in", tape="0.5 mm").tape.name == "0.5 mm"

    def test_it_stays_when_another_length_is_typed_otherwise(self):
        assert alter(self.frame(), {"length": "20 in"}).tape.name == "1 mm"
        assert alter(self.frame(length="16 in"), {"length": 500}).tape.name == "1/16 in"

    def test_a_length_in_inches_is_a_number_like_any_other(self):
        assert mm("1 in") == 25.4 == mm(25.4)
        assert repr(mm("1 in")) == "25.4"
        assert pickle.loads(pickle.dumps(mm("1 in"))) == 25.4
        assert mm(mm("2 in")) == 50.8


class TestHalfAMillimetre:
    """A rule shows the half between two of its marks; what lies on one is read there, and not as full or scant."""

    def test_a_half_reads_as_a_half(self):
        tape = Tape("1 mm")
        assert [tape.read(size) for size in (58.5, 58.4, 58.6, 58.3, 58.7, 58.0, 0.5, -58.5)] == [
            *("58.5", "58.5", "58.5", "58 full", "59 scant", "58", "0.5", "-58.5")
        ]
        assert tape.say(58.5) == "58.5 mm"

    def test_inches_are_read_as_they_were(self):
        assert Tape("1/16 in").read(25.4 / 32) == "1/16 scant"


class TestBelowZero:
    """A tape is read from zero downwards, so what lies beyond a mark there is full as well."""

    @pytest.mark.parametrize("length, said", [(-25.4, "-1 in"), (-25.9, "-1 in full"), (-25.0, "-1 in scant")])
    def test_in_inches(self, length, said):
        assert Tape("1/16 in").say(length) == said

    def test_in_millimetres(self):
        assert [Tape("1 mm").say(-x) for x in (3.0, 3.3, 2.8)] == ["-3 mm", "-3 mm full", "-3 mm scant"]

    def test_a_trifle_below_zero_is_scant_of_it(self):
        assert Tape("1 mm").say(-0.2) == "0 mm scant"
        assert Tape("1 mm").say(0.2) == "0 mm full"

    def test_under_one_mark_beyond_it(self):
        assert Tape("1 mm").say(1.2) == "1 mm full"


class TestTheHair:
    """An eighth of a division still counts as on the mark."""

    @pytest.mark.parametrize("name", ["1/16 in", "1/64 in", "0.5 mm"])
    def test_at_it_and_past_it(self, name):
        tape = Tape(name)
        assert tape.off(10 * tape.division + tape.hair) == ""
        assert tape.off(10 * tape.division + tape.hair * 1.01) == "full"
        assert tape.off(10 * tape.division - tape.hair * 1.01) == "scant"

    def test_between_two_millimetres(self):
        tape = Tape("1 mm")
        assert tape.figures(7.5 + tape.hair) == "7.5"
        assert tape.figures(7.5 + tape.hair * 1.01) == "8"


class TestHalfWay:
    def test_a_length_half_way_goes_up(self):
        assert Tape("1/16 in").marks(25.4 / 32) == 1
        assert Tape("0.5 mm").marks(0.25) == 1

    @pytest.mark.parametrize("length", [math.nan, math.inf])
    def test_what_no_tape_reads_is_given_back(self, length):
        with pytest.raises(LengthError) as told:
            Tape().marks(length)
        assert told.value.value is length


class TestDifferences:
    """By hand: 0.4 mm is 0.0157 in; 1/16 in is 1.5875 mm."""

    def test_amounts(self):
        inch, metric = Tape("1/16 in"), Tape("1 mm")
        assert [inch.amount(x) for x in (1.5875, 0.4, 2.0, 0.0)] == ["1/16 in", "0.016 in", "0.079 in", "0.000 in"]
        assert [metric.amount(x) for x in (2.0, 0.4, 2.3)] == ["2 mm", "0.40 mm", "2.30 mm"]

    def test_both(self):
        assert Tape("1/16 in").both(247.65) == "9 3/4 in (247.65 mm)"
        assert Tape("1 mm").both(250.0) == "250 mm"
        assert Tape("1 mm").both(247.658) == "248 mm scant (247.66 mm)"

    def test_figures_of_whole_and_half_millimetres(self):
        assert [Tape("0.5 mm").figures(x) for x in (12.0, 12.5, -3.5)] == ["12", "12.5", "-3.5"]
        assert [Tape("1/16 in").figures(x) for x in (0.0, 6.35, 25.4, -31.75)] == ["0", "1/4", "1", "-1 1/4"]
