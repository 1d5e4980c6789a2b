"""Sitting: a kept notch no longer fits its rail, and the maker says on which shoulder the rail sits.

The stand stands in stand.py: its lower level is notched from 100 to 160, the upper one from 420 to 500.
"""

from __future__ import annotations

import attrs
import pytest
from stand import CUT, LAPPED, STAND, about, kept, told

from benchjoin import alter, keep, lay_out, release, sit
from benchjoin.errors import AddressError, DesignFileError
from benchjoin.frame.design.file import read_design, write_design

ONE = attrs.evolve(STAND, quantity=1)
LEG, RAIL = "front left leg", "low/front rail"
NARROW = alter(kept(LEG, frame=ONE), {"low/front rail.width": 58.5})


def gap(frame, where=LEG):
    return pytest.approx(told(lay_out(frame), "gap", where), abs=1e-9)


def sentence(frame, kind="gap"):
    (found,) = [f for f in lay_out(frame).findings if f.kind == kind and f.where == LEG]
    return found.sentence


class TestWhereTheShimGoes:
    def test_nobody_said_so_it_lies_as_its_level_has_it_and_the_maker_is_asked(self):
        assert gap(NARROW) == {"gap": 1.5, "near": 0, "far": 1.5}
        asked = "sit(frame, 'front left leg', on={'low/front rail': 'bottom'}), or 'top'."
        assert f"Which shoulder does it sit on? Say {asked}" in sentence(NARROW)

    @pytest.mark.parametrize("word, below", [("bottom", 0), ("top", 1.5), ("near", 0), ("far", 1.5)])
    def test_it_goes_to_the_other_side(self, word, below):
        frame = sit(NARROW, LEG, on={RAIL: word})
        assert gap(frame) == {"gap": 1.5, "near": below, "far": 1.5 - below}
        assert "Which shoulder" not in sentence(frame)

    def test_it_says_how_far_the_rail_leaves_its_level_by_that(self):
        assert "It sits on the top shoulder, 1.5 mm above where its level has it." in sentence(
            sit(NARROW, LEG, on={RAIL: "top"})
        )
        assert "It sits on the bottom shoulder." in sentence(sit(NARROW, LEG, on={RAIL: "bottom"}))

    def test_a_rail_that_floats_in_its_notch_may_sit_on_either(self):
        frame = alter(kept(LEG, frame=ONE), {"low/front rail.width": 57, "clear below low.size": 101})  # 101 to 158
        assert gap(frame) == {"gap": 3, "near": 1, "far": 2}
        assert gap(sit(frame, LEG, on={RAIL: "bottom"})) == {"gap": 3, "near": 0, "far": 3}
        assert gap(sit(frame, LEG, on={RAIL: "top"})) == {"gap": 3, "near": 3, "far": 0}
        assert about(lay_out(sit(frame, LEG, on={RAIL: "top"})), LEG) == {"gap"}

    def test_the_rail_itself_stays_at_the_height_of_its_level(self):
        frame = sit(NARROW, LEG, on={RAIL: "top"})
        assert lay_out(frame).part(RAIL).blank.low[2] == 100

    def test_a_lapped_rail_says_left_and_right(self):
        frame = alter(kept(RAIL, frame=LAPPED), {"front right leg.width": 57})
        assert told(lay_out(frame), "gap", RAIL) == pytest.approx({"gap": 3, "near": 3, "far": 0})
        frame = sit(frame, RAIL, on={"front right leg": "left"})
        assert told(lay_out(frame), "gap", RAIL) == pytest.approx({"gap": 3, "near": 0, "far": 3})

    def test_where_it_does_not_go_in_there_is_nothing_to_sit_on(self):
        frame = alter(kept(LEG, frame=ONE), {"low.front.width": 60, "1/low/front rail.width": 61.5, "uneven": "own"})
        before, after = (lay_out(f) for f in (frame, sit(frame, LEG, on={RAIL: "top"})))
        assert told(before, "does not go in", LEG) == told(after, "does not go in", LEG)


class TestItIsKept:
    def test_keeping_again_remembers_it_and_releasing_forgets_it(self):
        frame = sit(NARROW, LEG, on={RAIL: "top"})
        assert keep(lay_out(frame), LEG) == frame
        assert keep(lay_out(release(frame, LEG)), LEG).finished[CUT].cuts[0].sits == ""

    def test_it_may_be_taken_back(self):
        assert sit(sit(NARROW, LEG, on={RAIL: "top"}), LEG, on={RAIL: ""}) == NARROW

    def test_in_one_piece_or_in_all(self):
        frame = kept(LEG)
        both, second = (sit(frame, name, on={RAIL: "top"}) for name in (LEG, f"2/{LEG}"))
        found = [
            [cut.sits for n in (1, 2) for cut in frame.finished[f"{n}/{LEG}"].cuts if cut.mate == RAIL]
            for frame in (both, second)
        ]
        assert found == [["far", "far"], ["", "far"]]

    def test_a_design_file_writes_and_reads_it_and_says_nothing_where_nobody_did(self):
        frame = sit(NARROW, LEG, on={RAIL: "top"})
        text = write_design(frame)
        assert text.startswith("format = 1\n")
        assert 'sits = "far"' in text
        assert read_design(text) == frame
        assert "sits" not in write_design(NARROW)

    def test_a_word_that_is_no_shoulder_is_refused_in_a_file(self):
        with pytest.raises(DesignFileError, match=r"sits.*'upper'"):
            read_design(write_design(sit(NARROW, LEG, on={RAIL: "top"})).replace('sits = "far"', 'sits = "upper"'))


@pytest.mark.parametrize(
    "act, said",
    [
        (lambda: sit(NARROW, "front right leg", on={RAIL: "top"}), "'front right leg' is not marked or cut. Marked or"),
        (lambda: sit(ONE, LEG, on={RAIL: "top"}), "Nothing is marked or cut in this frame."),
        (lambda: sit(kept(LEG, state="sized"), LEG, on={RAIL: "top"}), "Nothing is marked or cut in this frame."),
        (lambda: sit(NARROW, None, on={RAIL: "top"}), "None is not marked or cut"),
        (lambda: sit(NARROW, LEG, on={RAIL: "left"}), "on says 'left'. Choose one of bottom, top."),
        (lambda: sit(NARROW, LEG, on={"low/back rail": "top"}), "1/front left leg has no cut for 'low/back rail'."),
        (lambda: sit(NARROW, LEG, on="top"), "on is 'top'. Write on={'bench/front rail': 'top'}."),
    ],
)
def test_it_says_what_is_there_and_what_to_write(act, said):
    with pytest.raises(AddressError) as caught:
        act()
    assert said in str(caught.value)
