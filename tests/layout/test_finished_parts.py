"""Cut wood stays cut: what is sized, marked or cut does not move, and what no longer fits it is told with its size.

The stand stands in stand.py: its lower level is notched from 100 to 160, the upper one from 420 to 500.
"""

from __future__ import annotations

import re

import attrs
import pytest
from solid_wood import carved, solid
from stand import CUT, LAPPED, STAND, about, kept, look, near, told

from benchjoin import (
    Clear,
    HalfLap,
    Level,
    Notch,
    Rail,
    alter,
    bind,
    cut_list,
    error_budget,
    keep,
    lay_out,
    milling_plan,
    set_page,
    settings,
    templates,
)
from benchjoin.binding import sheets
from benchjoin.drawings.views.joint.pages import joint_details
from benchjoin.drawings.views.part_drawing import part_drawings
from benchjoin.shop.seasons import seasons


def lines(layout, name):
    """The lines of a set that a part takes: band, place, mate and edge."""
    return {
        (band.title, near(line.at), taker.mate, taker.edge)
        for one in layout.sets
        for band in one.bands
        for line in band.lines
        for taker in line.takers
        if one.members[taker.member].name == name
    }


CHANGES = {
    "all rails measured narrower and thinner": {
        f"{level}/{side} rail.size": (19, width)
        for level, width in (("low", 58.5), ("top", 78))
        for side in ("front", "back")
    },
    "legs measured, piece by piece": {
        "front right leg.size": (38, 57),
        "1/back right leg.size": (39, 58),
        "2/back left leg.width": 57,
    },
    "the levels moved": {"clear below low.size": 120, "top.flush": None, "top.bottom": 400},
    "the frame longer, deeper and higher": {"length": 640, "depth": 320, "front.height": 540, "back.height": 520},
    "another fit": {"fit": 0.8},
    "rails elsewhere": {"low.front": None, "low.ends": Rail(60, joint=Notch(), raised=70), "top.front.joint": Notch(8)},
    "sized to the widest": {"uneven": "widest", "low/back rail.width": 63},
}


@pytest.mark.parametrize("changes", CHANGES.values(), ids=CHANGES)
@pytest.mark.parametrize("state", ["marked", "cut"])
class TestNothingMovesOnIt:
    def layouts(self, changes, state):
        before = lay_out(STAND)
        return before, lay_out(alter(keep(before, CUT, "1/top/back rail", state=state), changes))

    def test_its_length_section_shoulders_and_depths(self, changes, state):
        before, after = self.layouts(changes, state)
        size, cuts = look(before.part(CUT))
        assert look(after.part(CUT))[0] == size
        assert [cut for cut in look(after.part(CUT))[1] if cut in cuts] == cuts
        assert look(after.part("1/top/back rail")) == look(before.part("1/top/back rail"))

    def test_its_notches_and_its_lines_across_the_set(self, changes, state):
        before, after = self.layouts(changes, state)
        assert [n for n in after.part(CUT).notches if n in before.part(CUT).notches] == list(before.part(CUT).notches)
        assert lines(before, CUT) <= lines(after, CUT)
        added = {mate for _, _, mate, _ in lines(after, CUT) - lines(before, CUT)}
        assert added <= {mate for kind, mate in self.findings(after) if kind == "another cut"}

    def findings(self, layout):
        return {(f.kind, f.parts[-1]) for f in layout.findings if f.where == CUT}

    def test_its_line_in_the_cut_list(self, changes, state):
        before, after = self.layouts(changes, state)
        (old,), (new,) = ([row for row in cut_list(x).rows if re.search(r"\bA1\b", row[6])] for x in (before, after))
        assert old[2:5] == new[2:5] == ("500", "60", "40")

    def test_other_parts_do_move(self, changes, state):
        before, after = self.layouts(changes, state)
        names = {part.name for part in before.parts} & {part.name for part in after.parts}
        assert any(look(before.part(name)) != look(after.part(name)) for name in names)


@pytest.mark.parametrize("changes", CHANGES.values(), ids=CHANGES)
def test_every_page_is_drawn(changes):
    layout = lay_out(alter(kept(CUT, "1/top/back rail"), changes))
    assert layout.errors() == ()
    bound = sheets(layout)
    assert {"set-a", "set-b", "elevation-front"} <= {sheet.name for sheet in bound}
    assert "Settings" in {chapter for sheet in bound for chapter in sheet.chapters}


@pytest.mark.parametrize(
    "name", ["all rails measured narrower and thinner", "the frame longer, deeper and higher", "another fit"]
)
def test_the_wood_of_a_cut_leg_is_drawn_stroke_for_stroke_as_it_was(name):
    frame = kept("front left leg")
    before, after = lay_out(frame), lay_out(alter(frame, CHANGES[name]))

    def alone(layout):
        """The part drawing of the leg, whatever number its kind has by now and whatever rail comes to it."""
        part = attrs.evolve(layout.part(CUT), kind=1, handed="", mark="A1", meets=())
        return part_drawings(attrs.evolve(layout, parts=(part,), findings=()))[0].drawing

    assert alone(before) == alone(after)


@pytest.mark.parametrize("piece, reading", [(1, "160 low top"), (2, "161 scant low top")])
def test_the_page_of_its_set_keeps_its_readings(piece, reading):
    # piece 1 was cut without fit; the legs of piece 2 take the 0.8 that was added since
    layout = lay_out(
        alter(
            kept(*(f"1/{leg}" for leg in ("front left leg", "front right leg", "back left leg", "back right leg"))),
            {"fit": 0.8},
        )
    )
    page = set_page(layout, "AB"[piece - 1])
    words = " ".join(getattr(primitive, "string", "") for primitive in page.whole)
    assert reading in words
    assert ("Already cut, and to be left as they are: A1, A2, A3, A4." in words) == (piece == 1)


def test_the_details_of_its_joints_say_how_high_its_notches_were_cut():
    legs = ("front left leg", "front right leg", "back left leg", "back right leg")
    layout = lay_out(alter(kept(*legs), {f"low/{side} rail.width": 58 for side in ("front", "back", "left", "right")}))
    words = " ".join(getattr(primitive, "string", "") for sheet in joint_details(layout) for primitive in sheet.whole)
    assert re.search(r"h = 60 at [^;]*; h = 80 at ", words)
    assert "58 high" not in words


class TestMeasuredAgainAfterItWasCut:
    """The wood itself was measured wrongly: shoulders and depths stay, cuts that ran out at a face still do."""

    @pytest.mark.parametrize("thickness, width", [(39, 59), (41, 61), (40, 60)])
    def test_a_leg_that_is_notched_from_its_outer_face_and_its_edge(self, thickness, width):
        frame = alter(STAND, {"low.ends": Rail(60, joint=Notch(12), raised=60)})
        layout = lay_out(alter(kept(CUT, frame=frame), {f"{CUT}.size": (thickness, width)}))
        leg = layout.part(CUT)
        assert leg.size == (500, width, thickness)
        found = {n.rail: (n.bottom, n.top, n.depth, n.right - n.left) for n in leg.notches}
        assert found == {
            "low/front rail": (100, 160, 20, width),
            "low/left rail": (160, 220, 12, thickness),
            "top/front rail": (420, 500, 20, width),
        }

    @pytest.mark.parametrize("thickness", [39, 41])
    def test_a_notch_in_the_inner_face_keeps_its_depth(self, thickness):
        frame = alter(STAND, {"low.front": Rail(60, joint=Notch(12), face="inner"), "low.ends": None})
        layout = lay_out(alter(kept(CUT, frame=frame), {f"{CUT}.thickness": thickness}))
        assert [n.depth for n in layout.part(CUT).notches] == [12, 20]


class TestTheGapIsTold:
    """Numbers by hand: the notches for the lower rails are 100 to 160, those for the upper ones 420 to 500."""

    def after(self, changes, *names, frame=STAND):
        return lay_out(alter(kept(*names, frame=frame), changes))

    def test_shim_below_a_rail_that_hangs_from_the_top(self):
        layout = self.after({"top/front rail.width": 78.5}, "front left leg")  # 421.5 to 500
        assert told(layout, "gap", "front left leg") == pytest.approx({"gap": 1.5, "near": 1.5, "far": 0})

    def test_shim_above_a_rail_that_stands_on_its_shoulder(self):
        layout = self.after({"low/front rail.width": 58.5}, "front left leg")
        assert told(layout, "gap", "front left leg") == pytest.approx({"gap": 1.5, "near": 0, "far": 1.5})

    def test_a_narrower_rail_that_went_up_lies_in_its_notch_all_the_same(self):
        layout = self.after({"low/front rail.width": 57, "clear below low.size": 101}, "front left leg")  # 101 to 158
        assert told(layout, "gap", "front left leg") == pytest.approx({"gap": 3, "near": 1, "far": 2})
        assert about(layout, "front left leg") == {"gap"}

    def test_a_narrower_rail_that_went_too_far_up_must_come_down(self):
        layout = self.after({"low/front rail.width": 57, "clear below low.size": 105}, "front left leg")  # 105 to 162
        assert told(layout, "cut elsewhere", "front left leg") == pytest.approx({"shift": -2})
        assert told(layout, "gap", "front left leg") == pytest.approx({"gap": 3, "near": 3, "far": 0})

    def test_re_rip_a_rail_that_is_too_wide(self):
        layout = self.after(
            {
                "low/front rail.width": 61.5,
                "low/back rail.width": 61.5,
                "low/left rail.width": 61.5,
                "low/right rail.width": 61.5,
            },
            "front left leg",
        )
        assert told(layout, "does not go in", "front left leg") == pytest.approx({"gap": -1.5, "to": 60})
        assert {finding.severity for finding in layout.errors()} == {"error"}

    def test_the_depth_of_a_thicker_rail(self):
        layout = self.after({f"low/{side} rail.thickness": 21.5 for side in ("front", "back")}, "front left leg")
        assert told(layout, "depth is off", "front left leg") == pytest.approx({"depth": 1.5})

    def test_a_hair_is_no_gap(self):
        layout = self.after(
            {f"low/{side} rail.size": (19.9, 59.9) for side in ("front", "back", "left", "right")}, "front left leg"
        )
        assert about(layout, "front left leg") == set()

    def test_a_lapped_rail_that_is_cut_and_a_leg_that_measured_narrower(self):
        # the lap at the right end starts at 600 - 60; the right leg is 57 wide and starts at 543
        layout = self.after({"front right leg.width": 57}, "low/front rail", frame=LAPPED)
        assert told(layout, "gap", "low/front rail") == pytest.approx({"gap": 3, "near": 3, "far": 0})
        assert look(layout.part("low/front rail")) == look(lay_out(LAPPED).part("low/front rail"))

    def test_a_lapped_rail_that_is_cut_and_a_leg_that_measured_wider(self):
        layout = self.after({"front right leg.width": 62}, "low/front rail", frame=LAPPED)
        assert told(layout, "does not go in", "low/front rail") == pytest.approx({"gap": -2, "to": 60})

    def test_a_lapped_rail_that_is_cut_and_a_frame_that_became_longer(self):
        layout = self.after({"length": 603}, "low/front rail", frame=LAPPED)
        assert told(layout, "finished length", "low/front rail") == {"length": 600, "wanted": 603}
        assert told(layout, "cut elsewhere", "low/front rail") == pytest.approx({"shift": -3})

    def test_the_laps_of_a_cut_rail_and_another_rail_that_came_out_thinner(self):
        # laps of 10 in rails of 20; the thinnest of the level is 18: the legs keep 9, the cut rail should lose 11
        layout = self.after({"low/back rail.thickness": 18}, "low/front rail", frame=LAPPED)
        depths = [
            f.numbers["depth"] for f in layout.findings if f.kind == "depth is off" and f.where == "low/front rail"
        ]
        assert depths == pytest.approx([1, 1])

    @pytest.mark.parametrize("depth, off", [(310, -10), (296, 4)])
    def test_an_end_rail_that_was_cut_too_short_or_too_long(self, depth, off):
        layout = self.after({"depth": depth}, "low/left rail")
        assert layout.part("1/low/left rail").length == 220
        assert told(layout, "finished length", "low/left rail") == {"length": 220, "wanted": 220 - off}
        assert about(layout, "low/left rail") == {"finished length"}  # no clash, no leg missed: this says it all
        assert {joint.host for joint in layout.joints if joint.guest == "low/left rail"} == {
            "front left leg",
            "back left leg",
        }

    def test_a_rail_too_long_by_more_than_its_excess_still_clashes(self):
        # raised into the way of the front rail of the upper level, which nobody has cut for it
        layout = self.after(
            {"depth": 296, "top.left": Rail(80, joint=Notch()), "corners": "staggered"}, "low/left rail"
        )
        assert {f.parts for f in layout.findings if f.kind == "clash"} == {
            ("top/front rail", "top/left rail"),
            ("top/back rail", "top/left rail"),
        }

    def test_finished_parts_are_told_to_share_no_stop(self):
        layout = self.after({"depth": 310}, "low/left rail")
        assert [f for f in layout.findings if f.kind == "lengths differ"] == []


class TestTheRailIsGone:
    FRAME = alter(kept("front left leg", state="marked"), {"low.front": None})

    def test_its_cut_stays_and_is_told(self):
        layout = lay_out(self.FRAME)
        assert [n.rail for n in layout.part(CUT).notches] == ["low/front rail", "top/front rail"]
        assert about(layout, "front left leg") == {"cut without a mate"}

    def test_nothing_that_is_worked_out_later_stumbles_over_it(self, tmp_path):
        layout = lay_out(self.FRAME)
        bind(layout, tmp_path / "binder.pdf")
        templates(layout, tmp_path / "templates.pdf")
        assert not any("low" in str(row) and "1/front left leg" in str(row) for row in settings(layout).table().rows)
        assert {n.rail.identity for n in seasons(layout, made=12, driest=8, wettest=16).notches} == {"low/back rail"}
        assert milling_plan(layout).table().rows
        assert error_budget(layout) is not None

    def test_nor_does_a_lap_beside_which_another_lap_is_made(self):
        frame = attrs.evolve(
            STAND,
            stack=[
                Clear(100),
                Level("low", front=Rail(60, joint=HalfLap()), left=Rail(60, joint=HalfLap(), raised=60)),
            ],
        )
        layout = lay_out(alter(kept(CUT, frame=frame), {"low.front": None, "low.left.raised": 0}))
        assert about(layout, "front left leg") == {"cut without a mate", "cut elsewhere"}

    def test_another_in_its_place_is_a_cut_still_to_make(self):
        layout = lay_out(alter(self.FRAME, {"low.front": Rail(40, face="inner")}))
        assert about(layout, "front left leg") >= {"cut without a mate", "another cut"}
        assert [(n.face, n.bottom, n.top) for n in layout.part(CUT).notches] == [
            ("front", 100, 160),
            ("back", 100, 140),
            ("front", 420, 500),
        ]
        again = keep(layout, "front left leg")
        assert "another cut" not in {finding.kind for finding in lay_out(again).findings}


def test_a_rail_that_goes_in_with_a_gap_fills_its_cut_but_for_the_gap():
    layout = lay_out(alter(kept("front left leg"), {"low/front rail.width": 58.5}))
    leg, rail = carved(layout.part(CUT)), solid(layout.part("1/low/front rail").blank)
    hole = solid(next(c.box for c in layout.part(CUT).cuts if c.mate == "low/front rail")) ^ solid(
        layout.part(CUT).blank
    )
    assert (leg ^ rail).volume() == pytest.approx(0, abs=1e-3)
    assert (hole - rail).volume() == pytest.approx(1.5 * 60 * 20, abs=1e-3)
