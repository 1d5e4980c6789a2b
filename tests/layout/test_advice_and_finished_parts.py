"""Advice never fights what is finished: nobody is told to plane away what was kept, and what is to be made follows it.

The stand stands in stand.py: legs of 60 × 40, rails 20 thick, levels of 60 and 80.
"""

from __future__ import annotations

import attrs
import pytest
from check_frames import CASES
from hypothesis import given
from hypothesis import strategies as st
from stand import LEGS, STAND, kept
from strategies import frames, measures

from benchjoin import alter, keep, lay_out
from benchjoin.frame.finished import STATES
from benchjoin.layout.checks.ways_out import CHEAPEST_FIRST

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
        assert "plane" not in found.sentence.lower()
        assert "front left leg and front right leg stay as finished" in found.sentence
        assert [(way.what, way.cost) for way in found.ways] == [
            ("let the inner faces differ by 0.30 mm", "nothing to cut")
        ]
        assert found.numbers == pytest.approx({"spread": 0.3, "least": 33.0, "rest": 0.3})

    def test_a_leg_that_is_thicker_is_planed_to_those_that_are_finished(self, state):
        frame = done_legs("front left leg", "front right leg", thickness=33.3, state=state)
        layout = lay_out(alter(frame, {"back left leg.thickness": 33.3, "back right leg.thickness": 34.0}))
        (found,) = of_kind(layout, "legs differ")
        assert "plane back right leg to" in found.sentence
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
                planed = found.sentence.lower().partition("plane ")[2].partition(" to ")[0]
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


def ways(layout, kind, where):
    """What can be done and what it costs, of the one finding of a kind at a part; it stands in its sentence, too."""
    (found,) = [f for f in layout.findings if f.kind == kind and f.where == where]
    told = "; ".join(f"{way.what} ({way.cost})" for way in found.ways)
    assert found.sentence.endswith(f" Ways out: {told}.")
    return [(way.what, way.cost) for way in found.ways]


class TestWaysOut:
    """One cut leg is off: the ways out are weighed, the cheapest first. Its notches: 100 to 160 and 420 to 500."""

    def test_a_notch_too_narrow_for_a_rail_that_is_still_to_be_made(self):
        # the rail came out at 61.5; the notch is 60: 1.5 off the rail, off the notch, or two notches in the spare leg
        wide = {f"low/{side} rail.width": 61.5 for side in ("front", "back", "left", "right")}
        layout = lay_out(alter(kept("front left leg", frame=ONE), wide))
        assert ways(layout, "does not go in", "front left leg") == [
            ("re-rip low/front rail to 60 mm", "1.5 mm off one rail"),
            ("pare the shoulder", "1.5 mm off one notch"),
            ("make front left leg again from the spare leg", "2 notches to mark and cut"),
        ]

    def test_a_rail_that_is_finished_is_no_cheaper_than_the_shoulder_and_says_that_it_is_done(self):
        own = attrs.evolve(ONE, uneven="own")
        frame = keep(lay_out(alter(own, {"low/front rail.width": 61.5})), "low/front rail", state="sized")
        legs = kept("front left leg", frame=ONE).finished
        frame = attrs.evolve(frame, measured={}, finished={**frame.finished, **legs})
        rail, shoulder, again = ways(lay_out(frame), "does not go in", "front left leg")
        assert rail == ("re-rip low/front rail to 60 mm", "1.5 mm off one rail that is sized")
        assert shoulder == ("pare the shoulder", "1.5 mm off one notch")
        assert again[1] == "2 notches to mark and cut"

    def test_a_gap(self):
        layout = lay_out(alter(kept("front left leg", frame=ONE), {"low/front rail.width": 58.5}))
        assert ways(layout, "gap", "front left leg") == [
            ("shim low/front rail", "1.5 mm above"),
            ("make low/front rail wider", "another rail"),
            ("make front left leg again from the spare leg", "2 notches to mark and cut"),
        ]

    def test_a_marked_leg_has_only_its_marks_to_make_again(self):
        layout = lay_out(alter(kept("front left leg", state="marked", frame=ONE), {"clear below low.size": 105}))
        assert ways(layout, "cut elsewhere", "front left leg") == [
            ("move low/front rail there", "5 mm for all that it meets"),
            ("make front left leg again from the spare leg", "2 notches to mark"),
        ]

    def test_one_cut_leg_that_is_thinner_than_those_still_to_be_marked(self):
        layout = lay_out(done_legs("front left leg", thickness=38, state="cut"))
        (found,) = of_kind(layout, "legs differ")
        assert ways(layout, "legs differ", found.where) == [
            ("let the inner faces differ by 2 mm", "nothing to cut"),
            (
                "plane front right leg, back left leg and back right leg to 38 mm before they are clamped and marked",
                "2 mm off 3 legs",
            ),
            ("make front left leg again from the spare leg", "2 notches to mark and cut"),
        ]

    def test_one_cut_leg_that_is_thicker(self):
        layout = lay_out(done_legs("front left leg", thickness=42, state="cut"))
        assert ways(layout, "legs differ", "front left leg") == [
            ("let the inner faces differ by 2 mm", "nothing to cut"),
            ("make front left leg again from the spare leg", "2 notches to mark and cut"),
        ]

    @pytest.mark.parametrize("name", sorted(CASES))
    def test_what_costs_less_comes_first(self, name):
        for found in lay_out(CASES[name][-2]).findings:
            places = [CHEAPEST_FIRST.index(way.kind) for way in found.ways]
            assert places == sorted(places)


@given(frames(), st.data())
def test_no_advice_takes_wood_off_what_is_finished_before_it_says_so(frame, data):
    """Kept in random states, then measured again: only ways out may touch what is done, and they say that it is."""
    layout = lay_out(frame)
    names = data.draw(st.lists(st.sampled_from([part.name for part in layout.parts]), max_size=5, unique=True))
    frame = attrs.evolve(frame, measured={})
    for name in names:
        frame = keep(lay_out(frame), name, state=data.draw(st.sampled_from(STATES)))
    layout = lay_out(attrs.evolve(frame, measured=data.draw(measures(frame))))
    for found in layout.findings:
        done = [part for part in found.parts for n in found.pieces or (1,) if f"{n}/{part}" in frame.finished]
        if found.kind == "size to the narrowest":
            assert done == []
        if found.kind == "legs differ":
            assert not (done and "Plane all" in found.sentence)
            planed = " ".join(way.what for way in found.ways if way.kind == "take off").partition("plane ")[2]
            assert not any(part in planed.partition(" to ")[0].split(" and ") for part in done)
