"""Hands go by which faces are notched: tenths of a millimetre that were measured do not change them."""

from __future__ import annotations

import attrs
import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from samples import SAMPLES

from benchjoin import alter, cut_list, keep, lay_out

TWO = attrs.evolve(rack, quantity=2)


def hands(layout):
    return {part.name: part.handed for part in layout.parts}


@pytest.mark.parametrize(
    "measured",
    [
        {"1/front left leg.width": 44.9},
        {"2/back right leg.thickness": 44.4},
        {"1/front left leg.width": 44.9, "1/front right leg.width": 44.7, "1/back left leg.thickness": 44.8},
        {"2/tray 1/front rail.width": 44.5},
        {"1/tray 3/left rail.thickness": 19.5, "2/front left leg.width": 44.2},
    ],
)
def test_a_leg_that_measures_a_little_less_keeps_its_hand(measured):
    assert hands(lay_out(alter(TWO, measured))) == hands(lay_out(TWO))


def test_the_cut_list_still_says_which_hand_it_is():
    notes = [row[-1] for row in cut_list(lay_out(alter(rack, {"front left leg.width": 44.9}))).rows[:3]]
    assert sorted(note.partition(",")[0] for note in notes) == ["left hand", "left hand", "right hand"]


def test_a_leg_that_is_finished_keeps_its_hand():
    cut = alter(keep(lay_out(rack), "front left leg"), {"tray 2/front rail.width": 44})
    assert hands(lay_out(cut)) == hands(lay_out(rack))


def test_a_leg_whose_mirror_image_is_another_wood_has_no_hand():
    narrow = lay_out(alter(rack, {"front left leg.width": 38, "back right leg.width": 38}))
    assert narrow.part("front left leg").handed == narrow.part("back right leg").handed == ""
    assert narrow.part("front right leg").handed == narrow.part("back left leg").handed == ""


@pytest.mark.parametrize("frame", [bench, SAMPLES["left and right differ"]], ids=["bench", "unlike ends"])
def test_what_had_no_hand_gets_none_by_measuring(frame):
    assert set(hands(lay_out(frame)).values()) == {""}
    legs = {f"1/{leg.identity}.width": leg.width - n / 10 for n, leg in enumerate(lay_out(frame).legs())}
    assert set(hands(lay_out(alter(frame, legs))).values()) == {""}
