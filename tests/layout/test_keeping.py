"""Keeping and releasing: how far a part is, what is written down with it, and what cannot be kept."""

from __future__ import annotations

import attrs
import pytest
from stand import CUT, STAND, about, kept, told

from benchjoin import alter, keep, lay_out, release
from benchjoin.errors import AddressError, BenchjoinError, DescriptionError, NotLaidOut
from benchjoin.frame.finished import Finished


class TestStates:
    def test_a_sized_part_keeps_its_length_and_section_and_its_marks_follow(self):
        layout = lay_out(
            alter(kept("1/front left leg", state="sized"), {"low/front rail.width": 58, "front.height": 520})
        )
        leg = layout.part("1/front left leg")
        assert leg.size == (500, 60, 40)
        assert [(n.bottom, n.top) for n in leg.notches] == [(100, 158), (440, 500)]
        assert told(layout, "finished length", "1/front left leg") == {"length": 500, "wanted": 520}
        assert about(layout, "front left leg") == {"finished length", "wider than the leg can take"}

    def test_a_sized_rail_is_not_ripped_to_the_narrowest_again_and_the_others_follow_it(self):
        layout = lay_out(alter(kept("1/low/front rail", state="sized"), {"low/back rail.width": 57}))
        assert [layout.part(f"{n}/low/front rail").size[1] for n in (1, 2)] == [60, 57]
        assert [layout.part(f"{n}/low/left rail").size[1] for n in (1, 2)] == [60, 57]
        assert [layout.part(f"{n}/low/back rail").size[1] for n in (1, 2)] == [57, 57]

    def test_a_rail_that_measured_wider_is_kept_as_it_was_sized_to_the_narrowest(self):
        wide = {"1/low/front rail.width": 59, "1/low/front rail.thickness": 19, "1/low/back rail.width": 57}
        frame = keep(lay_out(alter(STAND, wide)), "1/low/front rail", state="sized")
        assert lay_out(frame).part("1/low/front rail").size[1:] == (57, 19)
        assert frame.measured["1/low/front rail"] == {"thickness": 19}  # 59 is true no more
        assert lay_out(release(frame, "1/low/front rail")).part("1/low/front rail").size[1:] == (57, 19)

    def test_what_measured_wider_in_every_piece_still_does_where_it_is_not_sized_yet(self):
        wide = {"low/front rail.width": 59, "low/front rail.thickness": 19, "1/low/back rail.width": 57}
        frame = keep(lay_out(alter(STAND, wide)), "1/low/front rail", state="sized")
        layout = lay_out(frame)
        assert [layout.part(f"{n}/low/front rail").size[1:] for n in (1, 2)] == [(57, 19), (59, 19)]
        assert not [f for f in layout.findings if f.kind == "measure not taken"]
        both = keep(layout, "low/front rail", state="sized")
        assert [lay_out(both).part(f"{n}/low/front rail").size[1:] for n in (1, 2)] == [(57, 19), (59, 19)]

    def test_a_rail_that_measured_wider_than_notches_of_its_own_stays_so(self):
        wide = {"1/low/front rail.width": 59, "1/low/back rail.width": 57, "uneven": "own"}
        frame = keep(lay_out(alter(STAND, wide)), "1/low/front rail", state="sized")
        assert frame.measured["1/low/front rail"] == {"width": 59}

    def test_without_a_piece_it_is_finished_in_all_of_them(self):
        assert set(kept("low/left rail").finished) == {"1/low/left rail", "2/low/left rail"}

    def test_a_part_goes_on_from_sized_to_cut_and_never_back(self):
        frame = kept("1/front left leg", state="sized")
        frame = keep(lay_out(alter(frame, {"low/front rail.width": 58})), "1/front left leg")
        frame = keep(lay_out(alter(frame, {"low/front rail.width": 56})), "1/front left leg", state="sized")
        assert frame.finished["1/front left leg"].state == "cut"
        assert [(n.bottom, n.top) for n in lay_out(frame).part("1/front left leg").notches] == [(100, 158), (420, 500)]

    def test_keeping_twice_is_keeping_once(self):
        frame = kept("front left leg", "low/left rail")
        assert keep(lay_out(frame), "front left leg", "low/left rail") == frame

    def test_the_wood_as_it_measured_is_kept_with_it(self):
        frame = keep(lay_out(alter(STAND, {"1/front left leg.size": (39, 58.5)})), "front left leg")
        later = lay_out(alter(frame, {"front left leg.size": (36, 55)}))
        assert [later.part(f"{n}/front left leg").size[1:] for n in (1, 2)] == [(58.5, 39), (60, 40)]

    def test_a_part_that_is_made_again_is_released(self):
        frame = alter(kept("front left leg"), {"low/front rail.width": 58})
        free = lay_out(release(frame, "2/front left leg"))
        assert [free.part(f"{n}/front left leg").notches[0].top for n in (1, 2)] == [160, 158]
        assert release(frame, "front left leg").finished == {}


class TestErrors:
    LAYOUT = lay_out(STAND)

    @pytest.mark.parametrize(
        "act, said",
        [
            (lambda lay: keep(lay), "Write keep(layout, 'back left leg', state='cut')"),
            (
                lambda lay: keep(lay, "bench/front rail"),
                "'1/bench/front rail' is no part of this layout, which has 2 of each",
            ),
            (lambda lay: keep(lay, "3/front left leg"), "'3/front left leg' is no part of this layout"),
            (lambda lay: keep(lay, None), "is no part of this layout"),
            (
                lambda lay: keep(lay, "front left leg", state="sawn"),
                "state is 'sawn'. Choose one of sized, marked, cut.",
            ),
            (lambda lay: release(lay.frame, "front left leg"), "'front left leg' is not finished. Nothing is finished"),
            (lambda lay: release(keep(lay, CUT), "2/front left leg"), "Finished are 1/front left leg."),
            (lambda lay: alter(lay.frame, None), "alter was given None for changes. Write values by their addresses"),
            (lambda lay: alter(lay.frame, ["length"]), "alter was given ['length'] for changes"),
            (lambda lay: alter("x", {"length": 1}), "alter was given 'x', not a Frame"),
            (lambda lay: alter(lay, {"length": 1}), "Of a layout it is layout.frame."),
        ],
    )
    def test_it_says_what_is_there_and_what_to_write(self, act, said):
        with pytest.raises(AddressError) as caught:
            act(self.LAYOUT)
        assert said in str(caught.value)

    def test_a_frame_that_is_not_laid_out_holds_nothing_to_keep(self):
        with pytest.raises(NotLaidOut, match=r"layout = lay_out\(frame\)"):
            keep(STAND, "front left leg")

    @pytest.mark.parametrize(
        "changes, said",
        [
            ({"low.name": "under"}, '"1/low/left rail" is no part of this frame'),
            (
                {"low.left": 60, "low.right": 60, "low.ends": None, "quantity": 1},
                '"2/low/left rail" is of piece 2, and the quantity is 1',
            ),
            ({"low.ends": None}, '"2/low/left rail" is no part of this frame'),
        ],
    )
    def test_a_finished_part_that_vanishes_from_the_description(self, changes, said):
        with pytest.raises(DescriptionError) as caught:
            alter(kept("low/left rail"), changes)
        assert said in str(caught.value)
        assert "Release it first, or leave the part in the design." in str(caught.value)
        assert {fault.field for fault in caught.value.faults} == {"finished"}

    def test_once_it_is_released_it_may_go(self):
        frame = alter(
            release(kept("low/left rail"), "low/left rail"), {f"{n}/low/left rail.size": None for n in (1, 2)}
        )
        assert "low/left rail" not in alter(frame, {"low.ends": None}).part_names()

    @pytest.mark.parametrize(
        "given",
        [None, {"1/front left leg": "cut"}, ["front left leg"], {"front left leg": Finished("cut", 500, (60, 40))}],
    )
    def test_what_is_finished_is_written_by_keep(self, given):
        with pytest.raises(BenchjoinError, match="finished"):
            attrs.evolve(STAND, finished=given)
