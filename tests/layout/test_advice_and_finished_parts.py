"""Advice never fights what is finished: nobody is told to plane away what was kept, and what is to be made follows it.

The stand stands in stand.py: legs of 60 × 40, rails 20 thick, levels of 60 and 80.
"""

from __future__ import annotations

import attrs
import pytest
from stand import LEGS, STAND, kept

from benchjoin import alter, keep, lay_out
from benchjoin.frame.finished import STATES

ONE = attrs.evolve(STAND, quantity=1)


def of_kind(layout, kind):
    return [finding for finding in layout.findings if finding.kind == kind]


def done_legs(*names, thickness, state, frame=ONE):
    """The stand with some legs measured and finished at a thickness."""
    wood = alter(frame, {f"{name}.thickness": thickness for name in names})
    return alter(keep(lay_out(wood), *names, state=state), {f"{name}.thickness": None for name in names})


@pytest.mark.parametrize("state", STATES)
class TestLegs:
    def test_two_legs_finished_and_two_that_came_out_thinner(self, state):
        frame = done_legs("front left leg", "front right leg", thickness=33.3, state=state)
        layout = lay_out(alter(frame, {"back left leg.thickness": 33.0, "back right leg.thickness": 33.0}))
        (found,) = of_kind(layout, "legs differ")
        assert "Plane" not in found.sentence
        assert "front left leg and front right leg stay as finished: let the inner faces differ by" in found.sentence
        assert found.numbers == pytest.approx({"spread": 0.3, "least": 33.0, "rest": 0.3})

    def test_a_leg_that_is_thicker_is_planed_to_those_that_are_finished(self, state):
        frame = done_legs("front left leg", "front right leg", thickness=33.3, state=state)
        layout = lay_out(alter(frame, {"back left leg.thickness": 33.3, "back right leg.thickness": 34.0}))
        (found,) = of_kind(layout, "legs differ")
        assert "Plane back right leg to" in found.sentence
        assert found.numbers == pytest.approx({"spread": 0.7, "least": 33.3, "to": 33.3})

    def test_of_three_kinds_the_thick_one_is_planed_and_the_rest_is_let_be(self, state):
        frame = done_legs("front left leg", "front right leg", thickness=33.3, state=state)
        layout = lay_out(alter(frame, {"back left leg.thickness": 33.0, "back right leg.thickness": 34.0}))
        (found,) = of_kind(layout, "legs differ")
        assert found.numbers == pytest.approx({"spread": 1.0, "least": 33.0, "to": 33.3, "rest": 0.3})

    def test_no_finding_tells_to_plane_any_finished_leg(self, state):
        frame = done_legs(*LEGS[:3], thickness=38, state=state)
        for thickness in (36, 38, 39, 41):
            layout = lay_out(alter(frame, {"back right leg.thickness": thickness}))
            for found in of_kind(layout, "legs differ"):
                planed = found.sentence.partition("Plane ")[2].partition(" to ")[0]
                assert not any(leg in planed for leg in (*LEGS[:3], "all"))


def test_legs_that_are_all_marked_are_let_be():
    layout = lay_out(alter(kept(*LEGS, frame=ONE), {"1/front left leg.thickness": 41}))
    assert of_kind(layout, "legs differ") == []


@pytest.mark.parametrize("state", STATES)
class TestRails:
    SIDES = ("front", "back", "left", "right")

    def widths(self, frame):
        layout = lay_out(frame)
        return [layout.part(f"1/low/{side} rail").size[1] for side in self.SIDES]

    def test_a_wider_rail_is_ripped_to_the_finished_ones(self, state):
        frame = alter(kept("low/front rail", state=state, frame=ONE), {"low/back rail.width": 63})
        assert self.widths(frame) == [60] * 4
        (found,) = of_kind(lay_out(frame), "size to the narrowest")
        assert found.parts == ("low/back rail",)
        assert "size it to 60 mm like what is finished of its level (low/front rail)" in found.sentence

    def test_a_narrower_one_does_not_take_the_others_away_from_the_finished_ones(self, state):
        frame = alter(
            kept("low/front rail", state=state, frame=ONE), {"low/back rail.width": 58, "low/left rail.width": 61}
        )
        assert self.widths(frame) == [60, 58, 60, 60]
        (found,) = of_kind(lay_out(frame), "stays wider")
        assert (found.parts, found.numbers) == (("low/front rail",), {"width": 60, "narrowest": 58})

    def test_where_finished_ones_differ_the_others_follow_the_narrower_and_the_wider_stays(self, state):
        frame = keep(lay_out(alter(ONE, {"low/front rail.width": 61})), "low/front rail", state=state)
        narrow = keep(lay_out(ONE), "low/back rail", state=state).finished["1/low/back rail"]
        frame = attrs.evolve(
            frame,
            measured={},
            finished={
                "1/low/front rail": attrs.evolve(narrow, section=(61, 20), length=600),
                "1/low/back rail": attrs.evolve(narrow, section=(59, 20)),
            },
        )
        assert self.widths(frame) == [61, 59, 59, 59]
        layout = lay_out(frame)
        assert [f.parts for f in of_kind(layout, "stays wider")] == [("low/front rail",)]
        assert {f.parts[0] for f in of_kind(layout, "size to the narrowest")} == {"low/left rail", "low/right rail"}

    def test_a_finished_rail_that_stands_proud_is_not_planed(self, state):
        frame = alter(kept("low/front rail", state=state, frame=ONE), {"low/back rail.thickness": 18})
        (found,) = of_kind(lay_out(frame), "stands proud")
        assert found.parts == ("low/front rail",)
        assert "It is finished: accept it." in found.sentence
        assert "Plane" not in found.sentence


def test_end_rails_between_finished_legs_do_not_ask_to_plane_the_legs():
    frame = done_legs("front left leg", thickness=38, state="cut")
    found = of_kind(lay_out(frame), "lengths differ")
    assert found
    assert not any("plane the legs" in finding.sentence for finding in found)
    assert all("cut both at the shorter length" in finding.sentence for finding in found)


def test_the_top_of_a_cut_leg_is_not_trimmed():
    layout = lay_out(alter(kept("front left leg", frame=ONE), {"1/front left leg.length": 503}))
    (found,) = of_kind(layout, "trim")
    assert "it is cut: let its top stand 3 mm over" in found.sentence
