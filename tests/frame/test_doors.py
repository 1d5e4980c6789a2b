"""The door of a description: every fault at once, with its field; and sound values that pass again as themselves."""

from __future__ import annotations

from fractions import Fraction

import attrs
import numpy as np
import pytest

from benchjoin.errors import DescriptionError
from benchjoin.frame.frame import Frame
from benchjoin.frame.joints import Butt, HalfLap, Notch, Planted
from benchjoin.frame.leg import Leg
from benchjoin.frame.rail import Rail
from benchjoin.frame.stack import Clear, Level
from benchjoin.frame.stock import Stock

POST = Stock("ash 2x3", thickness="1 1/2 in", width="2 1/2 in")
BOARD = Stock("ash 1x4", thickness="3/4 in")


def faults_of(build):
    """The faults by field, and the sentence."""
    with pytest.raises(DescriptionError) as caught:
        build()
    return {fault.field: fault.what for fault in caught.value.faults}, str(caught.value)


def test_all_faults_of_the_fields_are_told_at_once():
    faults, sentence = faults_of(
        lambda: Frame(
            name="",
            length="57",
            depth=float("nan"),
            front=POST,
            back="post",
            rail_stock="ash",
            stack="bench",
            corners="mitred",
            fit=-1,
            tape="1/8 in",
            quantity=0,
            measured=["leg"],
        )
    )
    assert set(faults) == {
        "name",
        "length",
        "depth",
        "front",
        "back",
        "rail_stock",
        "stack",
        "corners",
        "fit",
        "tape",
        "quantity",
        "measured",
    }
    assert sentence.startswith("Frame without a name cannot be built as described:\n")
    for field, what in faults.items():
        assert f"\n  {field}: {what}" in sentence


def test_a_fault_says_what_was_given_and_shows_a_good_example():
    faults, _ = faults_of(lambda: Stock("ash", thickness="38", width=True))
    assert faults["thickness"] == '\'38\' given for thickness says no unit. Write "38 in" or "38 mm".'
    assert "True given for width is not a length" in faults["width"]
    assert '"57 in"' in faults["width"]


def test_a_fault_inside_a_rail_is_told_by_its_way():
    faults, sentence = faults_of(lambda: Level("bench", front="3 1/2", ends=-5))
    assert set(faults) == {"front.width", "ends.width"}
    assert sentence.startswith('Level "bench" cannot be built')


def test_faults_of_the_whole_are_asked_only_when_every_field_is_sound():
    faults, _ = faults_of(lambda: Level("bench", flush="front leg top"))
    assert set(faults) == {"front", "flush"}
    faults, _ = faults_of(lambda: Level("bench", flush="front leg top", top="57"))
    assert set(faults) == {"top"}


SOUND = [
    POST,
    BOARD,
    Leg(POST, height="36 in", wide="end"),
    Notch("1/2 in"),
    Notch(),
    HalfLap(0.4),
    Butt(),
    Planted(),
    Rail("3 in", stock=BOARD, joint=HalfLap(), face="inner", overhang="-1 in", raised="-2 in"),
    Clear(),
    Clear("7 in", weight=2, at="front"),
    Level("bench", front="3 in", back=Rail("4 in"), ends=75, bottom=0, align="tops"),
]


@pytest.mark.parametrize("thing", SOUND, ids=lambda thing: type(thing).__name__)
def test_sound_values_pass_the_door_again_as_themselves(thing):
    again = attrs.evolve(thing)
    assert again == thing
    assert repr(again) == repr(thing)


def test_tape_strings_become_millimetres_and_stay_so():
    leg = Leg(POST, height="36 in")
    assert (leg.stock.thickness, leg.stock.width, leg.height) == (38.1, 63.5, 914.4)
    assert attrs.evolve(leg, height=leg.height) == leg


@pytest.mark.parametrize("share", [0.5, 1 / 2, Fraction(1, 2), np.float64(0.5), np.float32(0.5)])
def test_a_number_may_come_from_anywhere(share):
    assert HalfLap(share) == HalfLap(0.5)
    assert type(HalfLap(share).share) is float


@pytest.mark.parametrize(
    "share", ["0.5", None, True, 0, 1, 0.95001, float("nan"), float("inf"), 10**400, 1j, [0.5], np.array([0.1, 0.2])]
)
def test_a_share_that_is_no_number_within_its_limits_is_refused(share):
    faults, _ = faults_of(lambda: HalfLap(share))
    assert "Give a number from 0.05 to 0.95, for example 0.5" in faults["share"]


@pytest.mark.parametrize("quantity", [0, 1001, 2.5, 3.0, "3", True, None, np.float64(3)])
def test_how_many_are_made_is_a_whole_number(quantity):
    faults, _ = faults_of(lambda: frame(quantity=quantity))
    assert "Give a whole number from 1 to 1000, for example 3" in faults["quantity"]


@pytest.mark.parametrize("quantity", [1, 1000, np.int64(3)])
def test_one_to_a_thousand_are_made(quantity):
    assert frame(quantity=quantity).quantity == quantity


def frame(**changed):
    plain = {
        "name": "Saw bench",
        "length": "40 in",
        "depth": "16 in",
        "front": Leg(POST, height="24 in"),
        "back": Leg(POST, height="24 in"),
        "rail_stock": BOARD,
        "stack": [Clear("6 in"), Level("stretcher", front="2 in", ends="2 in")],
    }
    return Frame(**{**plain, **changed})


@pytest.mark.parametrize("name", ["", "   ", None, 7, "two\nlines", "tab\there", "x" * 81, "bell\a", b"bench"])
def test_a_name_is_words_on_one_line(name):
    faults, _ = faults_of(lambda: Stock(name, thickness=20))
    assert set(faults) == {"name"}


@pytest.mark.parametrize("name", ["bench.top", "bench/top"])
def test_a_level_cannot_be_named_with_the_signs_of_addresses(name):
    faults, _ = faults_of(lambda: Level(name, front=70))
    assert f"It may not hold {name[5]!r}, which addresses use" in faults["name"]


def test_spaces_around_a_name_are_not_part_of_it():
    assert Level("  foot shelf ", front=70).name == "foot shelf"


@pytest.mark.parametrize("face", ["outside", "", None, 1])
def test_a_choice_lists_what_may_be_chosen(face):
    faults, _ = faults_of(lambda: Rail(70, face=face))
    assert faults["face"].endswith("Choose one of 'outer', 'middle', 'inner', 'left', 'right'.")


def test_a_kind_of_joint_may_stand_for_itself():
    assert Rail(70, joint=HalfLap).joint == HalfLap()
    faults, _ = faults_of(lambda: Rail(70, joint="half-lap"))
    assert "Choose Notch(), HalfLap(), Butt() or Planted()" in faults["joint"]


def test_a_leg_needs_stock_with_a_width():
    faults, sentence = faults_of(lambda: Leg(BOARD, height=600))
    assert faults["stock"] == '"ash 1x4" has no width, and a leg needs one. Give the stock a width.'
    assert sentence.startswith("Leg cannot be built")


def test_a_rail_that_butts_has_no_overhang_and_one_in_the_middle_only_butts():
    assert set(faults_of(lambda: Rail(70, joint=Butt(), overhang=5))[0]) == {"overhang"}
    assert set(faults_of(lambda: Rail(70, joint=Notch(), face="middle"))[0]) == {"face"}
    assert Rail(70, joint=Butt(), face="middle").overhang == 0
