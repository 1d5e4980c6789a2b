"""Measured wood wins: what the planer left is typed in, and every notch, depth and length follows. Numbers by hand.

The stand stands in stand.py: legs of 60 × 40, 600 × 300 over them, its levels from 100 to 160 and from 420 to 500.
"""

from __future__ import annotations

import attrs
import pytest
from by_hand import inches
from designs import plain_bench as bench
from stand import LEGS, STAND

from benchjoin import (
    Butt,
    Clear,
    EndRails,
    HalfLap,
    Leg,
    Level,
    Notch,
    Overall,
    Planted,
    Rail,
    Stock,
    alter,
    cut_list,
    lay_out,
    set_page,
)
from benchjoin.drawings.views.joint.pages import joint_details
from benchjoin.errors import DescriptionError, NotLaidOut
from benchjoin.frame.fit import Fit


def measured(sizes, frame=STAND, **more):
    return lay_out(attrs.evolve(alter(frame, sizes), **more))


def notch(layout, leg, rail, piece=1):
    return next(n for n in layout.part(f"{piece}/{leg}").notches if n.rail == rail)


def edges(layout, leg, rail, piece=1):
    found = notch(layout, leg, rail, piece)
    return found.bottom, found.top


def of_kind(layout, kind):
    return [finding for finding in layout.findings if finding.kind == kind]


def drawn_text(*sheets):
    return " ".join(getattr(primitive, "string", "") for sheet in sheets for primitive in sheet.whole)


class TestMostSpecificWins:
    def test_a_size_of_a_part_holds_in_every_piece(self):
        layout = measured({"back left leg.size": (38, 57)})
        assert [layout.part(f"{n}/back left leg").size for n in (1, 2)] == [(500, 57, 38)] * 2
        assert layout.part("1/back right leg").size == (500, 60, 40)

    def test_a_size_of_one_piece_holds_over_that_of_all(self):
        layout = measured({"back left leg.size": (38, 57), "2/back left leg.width": 58})
        assert layout.part("1/back left leg").size == (500, 57, 38)
        assert layout.part("2/back left leg").size == (500, 58, 38)

    def test_width_and_thickness_come_one_by_one(self):
        layout = measured({"low/front rail.thickness": 19, "1/low/front rail.width": 59}, uneven="own")
        assert layout.part("1/low/front rail").size == (600, 59, 19)
        assert layout.part("2/low/front rail").size == (600, 60, 19)

    def test_a_measurement_that_is_taken_away_leaves_what_was_drawn(self):
        sizes = {"back left leg.size": (38, 57), "low/front rail.width": 59}
        typed = alter(STAND, sizes)
        assert alter(typed, dict.fromkeys(sizes)) == STAND
        assert alter(typed, {"back left leg.thickness": None, "low/front rail.width": None}).measured == {
            "back left leg": {"width": 57}
        }
        assert alter(typed, {"back left leg.size": (None, None), "low/front rail.width": None}) == STAND
        assert alter(STAND, {"back left leg.width": None}) == STAND

    def test_outer_faces_are_held_where_legs_measured_thinner(self):
        # 600 over the legs and 300 deep: the wood is missing inside
        layout = measured({f"{leg}.size": (38, 57) for leg in LEGS})
        boxes = {leg: layout.part(f"1/{leg}").blank for leg in LEGS}
        assert (boxes["front left leg"].low, boxes["front left leg"].high) == ((0, 0, 0), (57, 38, 500))
        assert (boxes["back right leg"].low, boxes["back right leg"].high) == ((543, 262, 0), (600, 300, 500))
        assert layout.overall() == (600, 300, 500)
        assert layout.part("1/low/left rail").length == 300 - 2 * 38


class TestHoneyHouseBench:
    """Inches. "When all the 3 1/2 rails measure 3 7/16, the bench level becomes 32 1/16 to 35 1/2 and still ends at the
    leg's top." The hook rail's clears share 64 3/4 - 35 1/2 - 3 7/16 = 25 13/16: 12 29/32 each, so 48 13/32.
    """

    RAILS = ("bench/front", "bench/back", "bench/left", "bench/right", "hook rail/back")
    LAYOUT = lay_out(alter(bench, {f"{rail} rail.width": "3 7/16 in" for rail in RAILS}))

    @pytest.mark.parametrize("piece", [1, 2, 3])
    @pytest.mark.parametrize(
        "leg, rail", [("front left leg", "bench/front rail"), ("back right leg", "bench/back rail")]
    )
    def test_the_bench_moves_up_and_still_ends_at_the_front_legs_top(self, piece, leg, rail):
        assert edges(self.LAYOUT, leg, rail, piece) == pytest.approx((inches("32 1/16"), inches("35 1/2")))

    def test_no_sliver_is_left_above_the_bench(self):
        assert notch(self.LAYOUT, "front left leg", "bench/front rail").open_top
        assert self.LAYOUT.findings == ()

    def test_the_hook_rail_stays_half_way(self):
        found = edges(self.LAYOUT, "back left leg", "hook rail/back rail")
        assert found == pytest.approx((inches("48 13/32"), inches("51 27/32")))

    def test_what_was_not_measured_stays(self):
        assert edges(self.LAYOUT, "front left leg", "foot shelf/front rail") == pytest.approx(
            (inches("7"), inches("9 3/4"))
        )
        assert edges(self.LAYOUT, "back left leg", "head rail/back rail") == pytest.approx(
            (inches("64 3/4"), inches("70"))
        )


UNEVEN = {"low/front rail.width": 58, "low/left rail.width": 59}  # the others 60


class TestUnevenRails:
    def widths(self, layout, piece=1):
        return [layout.part(f"{piece}/low/{side} rail").size[1] for side in ("front", "back", "left", "right")]

    def test_all_are_sized_to_the_narrowest_if_nothing_is_said(self):
        layout = measured(UNEVEN)
        assert self.widths(layout) == [58] * 4
        assert edges(layout, "front left leg", "low/front rail") == (100, 158)
        assert edges(layout, "back left leg", "low/back rail") == (100, 158)
        less = {f.parts[0]: f.numbers["found"] - f.numbers["width"] for f in of_kind(layout, "size to the narrowest")}
        assert less == {"low/back rail": 2, "low/left rail": 1, "low/right rail": 2}

    def test_the_cut_list_says_the_width_that_is_ripped(self):
        layout = measured(UNEVEN, quantity=1)
        rows = {row[0]: row for row in cut_list(layout).rows}
        assert rows["low: front and back rail"][3] == rows["low: end rail"][3] == "58"

    def test_each_is_marked_from_its_own_if_the_maker_says_so(self):
        layout = measured(UNEVEN, uneven="own")
        assert self.widths(layout) == [58, 60, 59, 60]
        assert edges(layout, "front left leg", "low/front rail") == (100, 158)
        assert edges(layout, "back left leg", "low/back rail") == (100, 160)
        assert layout.findings == ()

    def test_all_notches_are_cut_to_the_widest_and_the_gaps_are_told(self):
        layout = measured(UNEVEN, uneven="widest")
        assert self.widths(layout) == [58, 60, 59, 60]
        assert edges(layout, "front left leg", "low/front rail") == (100, 160)
        assert edges(layout, "back left leg", "low/back rail") == (100, 160)
        (gap,) = of_kind(layout, "gap accepted")  # the left rail has no notch to be loose in
        assert (gap.parts, gap.numbers) == (("low/front rail",), {"gap": 2})
        assert layout.part("1/low/front rail").blank.low[2] == 100

    def test_rails_that_hang_from_their_tops_have_the_gap_below(self):
        layout = measured(UNEVEN, alter(STAND, {"low.align": "tops"}), uneven="widest")
        rail = layout.part("1/low/front rail").blank
        assert edges(layout, "front left leg", "low/front rail") == (100, 160)
        assert (rail.low[2], rail.high[2]) == (102, 160)

    def test_a_lap_is_as_wide_as_its_leg_however_loose_the_notch_of_the_leg(self):
        # what the notch of the leg is wider adds nothing to the lap of the rail, which lets in a leg of 60
        lapped = alter(STAND, {"low.front": Rail(60, joint=HalfLap()), "low.back": Rail(60, joint=HalfLap())})
        layout = measured({"low/front rail.width": 58}, lapped, uneven="widest")
        assert edges(layout, "front left leg", "low/front rail") == (100, 160)
        assert [box.size()[0] for box in layout.part("1/low/front rail").local_cuts] == [60, 60]

    def test_only_the_rails_of_one_level_of_one_piece_are_sized_together(self):
        layout = measured({"2/low/front rail.width": 58})
        assert self.widths(layout, 1) == [60] * 4
        assert self.widths(layout, 2) == [58] * 4
        assert layout.part("2/top/front rail").size[1] == 80
        assert {finding.where for finding in layout.findings} == {f"2/low/{s} rail" for s in ("back", "left", "right")}

    def test_rails_that_were_drawn_at_other_widths_are_let_be(self):
        layout = measured({"low/front rail.width": 58}, alter(STAND, {"low.back.width": 70}))
        assert self.widths(layout) == [58, 70, 58, 58]

    def test_the_level_above_keeps_its_clear(self):
        # a fixed clear of 50 above the level: it follows the band, which is as wide as its widest rail
        stack = (*STAND.stack[:2], Clear(50), Level("mid", front=40), Clear(), STAND.stack[-1])
        frame = attrs.evolve(STAND, stack=stack)
        for uneven, bottom in {"narrowest": 100 + 58 + 50, "own": 210, "widest": 210}.items():
            layout = measured({"low/front rail.width": 58}, frame, uneven=uneven)
            assert edges(layout, "front left leg", "mid/front rail")[0] == bottom, uneven


class TestFlushDepth:
    def test_it_follows_the_thinnest_rail_of_the_level(self):
        layout = measured({"low/back rail.thickness": 18.5})
        assert notch(layout, "front left leg", "low/front rail").depth == 18.5
        assert notch(layout, "back left leg", "low/back rail").depth == 18.5
        assert notch(layout, "front left leg", "top/front rail").depth == 20
        (proud,) = of_kind(layout, "stands proud")
        assert (proud.parts, proud.numbers) == (("low/front rail",), {"proud": 1.5})
        assert layout.part("1/low/front rail").blank.low[1] == -1.5

    def test_a_depth_that_the_maker_gave_stays_while_the_rails_are_thicker(self):
        part_way = {f"low.{side}.joint": Notch(12) for side in ("front", "back")}
        layout = measured({"low/back rail.thickness": 18.5}, alter(STAND, part_way))
        assert {notch(layout, f"{row} left leg", f"low/{row} rail").depth for row in ("front", "back")} == {12}
        assert of_kind(layout, "stands proud") == []

    def test_a_lap_is_cut_to_half_of_the_thinnest_and_all_finish_flush(self):
        lapped = alter(STAND, {"low.front": Rail(60, joint=HalfLap()), "low.back": Rail(60, joint=HalfLap())})
        layout = measured({"low/back rail.thickness": 18}, lapped)
        assert [notch(layout, f"{row} left leg", f"low/{row} rail").depth for row in ("front", "back")] == [9, 9]
        laps = {row: layout.part(f"1/low/{row} rail").local_cuts[0].size()[2] for row in ("front", "back")}
        assert laps == {"front": 11, "back": 9}
        assert [layout.part("1/low/front rail").blank.low[1], layout.part("1/low/back rail").blank.high[1]] == [0, 300]
        assert of_kind(layout, "stands proud") == []


class TestLegsThatDiffer:
    def test_more_than_a_hair_is_told_once_for_each_way(self):
        layout = measured({"1/front right leg.size": (39, 58.5)})
        found = of_kind(layout, "legs differ")
        assert [(f.parts, f.numbers) for f in found] == [
            (("front left leg", "front right leg"), {"spread": 1, "least": 39}),
            (("front left leg", "front right leg"), {"spread": 1.5, "least": 58.5}),
        ]
        assert "Plane all to 39 mm" in found[0].sentence

    def test_a_hair_is_no_difference(self):  # an eighth of 1 mm
        assert of_kind(measured({"front right leg.size": (39.88, 60.12)}), "legs differ") == []

    def test_legs_that_were_drawn_differently_may_differ(self):
        frame = attrs.evolve(STAND, back=Leg(Stock("ash, thin", thickness=30, width=60), height=500))
        assert of_kind(lay_out(frame), "legs differ") == []


class TestOneStop:
    def test_end_rails_of_a_level_that_come_out_differently(self):
        layout = measured({"front left leg.thickness": 38})  # 300 - 38 - 40 and 300 - 40 - 40
        found = of_kind(layout, "lengths differ")
        assert [(f.parts, f.numbers) for f in found] == [
            ((f"{level}/left rail", f"{level}/right rail"), {"long": 222, "short": 220}) for level in ("low", "top")
        ]

    def test_long_rails_between_the_legs_that_come_out_differently(self):
        butted = alter(STAND, {"low.front": Rail(60, joint=Butt()), "low.back": Rail(60, joint=Butt())})
        layout = measured({"back left leg.width": 59}, butted, quantity=1)
        (found,) = of_kind(layout, "lengths differ")
        assert (found.parts, found.numbers) == (("low/back rail", "low/front rail"), {"long": 481, "short": 480})

    def test_long_rails_of_each_bay_are_compared_with_the_one_across(self):
        # 1200 over three pairs of 60: bays of 510; the back left leg is 2 narrower, and bays are run by the wider legs
        frame = attrs.evolve(
            alter(STAND, {"low.front": Rail(60, joint=Butt()), "low.back": Rail(60, joint=Butt()), "length": 1200}),
            bays=[Clear(), Clear()],
            quantity=1,
        )
        (found,) = of_kind(measured({"back left leg.width": 58}, frame), "lengths differ")
        assert (found.parts, found.numbers) == (("low/back rail 1", "low/front rail 1"), {"long": 512, "short": 510})

    def test_through_rails_do_not_feel_their_legs(self):
        assert of_kind(measured({"back left leg.width": 57}, quantity=1), "lengths differ") == []


THIN = {f"{leg}.thickness": 38 for leg in LEGS}


class TestWhatIsHeld:
    """The size over the legs, the size over all, or the length of the end rails: the other two give way."""

    @pytest.mark.parametrize(
        "depth, over_legs, rail",
        [
            (300, 300, 300 - 2 * 38),
            (Overall(300), 300, 300 - 2 * 38),
            (EndRails(220), 220 + 2 * 38, 220),
        ],
    )
    def test_when_the_legs_are_planed_thinner(self, depth, over_legs, rail):
        layout = measured(THIN, attrs.evolve(STAND, depth=depth))
        assert layout.part("1/low/left rail").length == pytest.approx(rail)
        assert layout.part("1/back left leg").blank.high[1] == pytest.approx(over_legs)

    def test_over_all_holds_what_planted_rails_add(self):
        planted = alter(STAND, {"top.front": Rail(80, joint=Planted()), "top.back": Rail(80, joint=Planted())})
        thin = {f"top/{side} rail.thickness": 17 for side in ("front", "back")}
        over_legs = measured(thin, planted).overall()[1]
        over_all = measured(thin, attrs.evolve(planted, depth=Overall(300)))
        assert over_legs == 300 + 2 * 17
        assert over_all.overall()[1] == pytest.approx(300)
        assert over_all.part("1/low/left rail").length == pytest.approx(300 - 2 * 17 - 2 * 40)

    def test_the_shorter_end_rail_is_held_where_one_leg_is_thicker(self):
        # the left pair takes 41 + 40 of the depth, the right pair 40 + 40: 220 between the left legs, 221 on the right
        layout = measured({"front left leg.thickness": 41}, attrs.evolve(STAND, depth=EndRails(220), quantity=1))
        assert [layout.part(f"low/{side} rail").length for side in ("left", "right")] == pytest.approx([220, 221])
        longer = [f.numbers["long"] - f.numbers["short"] for f in of_kind(layout, "lengths differ")]
        assert longer == pytest.approx([1, 1])

    def test_each_piece_is_held_by_itself(self):
        layout = measured({f"2/{leg}.thickness": 38 for leg in LEGS}, attrs.evolve(STAND, depth=EndRails(220)))
        assert [layout.part(f"{n}/low/left rail").length for n in (1, 2)] == pytest.approx([220, 220])
        assert [layout.part(f"{n}/back left leg").blank.high[1] for n in (1, 2)] == pytest.approx([300, 296])

    def test_end_rails_that_were_drawn_differently_cannot_give_the_depth(self):
        frame = alter(STAND, {"low.ends": Rail(60, joint=Notch()), "depth": EndRails(220)})
        with pytest.raises(DescriptionError, match="the end rails are of different lengths"):
            measured(THIN, frame)


class TestFit:
    def test_it_goes_on_the_top_shoulder_where_bottoms_are_shared(self):
        layout = lay_out(attrs.evolve(STAND, fit=0.5))
        assert edges(layout, "front left leg", "low/front rail") == (100, 160.5)

    def test_it_goes_on_the_bottom_shoulder_where_tops_are_shared(self):
        layout = lay_out(alter(STAND, {"fit": 0.5, "low.align": "tops"}))
        assert edges(layout, "front left leg", "low/front rail") == (99.5, 160)

    def test_a_notch_that_is_open_at_the_top_needs_none(self):
        layout = lay_out(attrs.evolve(STAND, fit=0.5))
        assert edges(layout, "front left leg", "top/front rail") == (420, 500)

    def test_it_is_applied_once_over_the_measured_rail(self):
        layout = measured({"low/front rail.width": 58, "low/back rail.width": 58}, attrs.evolve(STAND, fit=0.5))
        assert edges(layout, "front left leg", "low/front rail") == (100, 158.5)
        widest = measured({"low/front rail.width": 58}, attrs.evolve(STAND, fit=0.5), uneven="widest")
        assert edges(widest, "front left leg", "low/front rail") == (100, 160.5)

    @pytest.mark.parametrize("word, clearance", [("snug", 0), ("easy", 0.4), ("outdoor", 0.8)])  # common practice
    def test_words_stand_for_clearances(self, word, clearance):
        layout = lay_out(attrs.evolve(STAND, fit=word))
        assert edges(layout, "front left leg", "low/front rail") == (100, 160 + clearance)

    def test_each_kind_of_joint_may_have_its_own(self):
        frame = alter(STAND, {"fit": {"notch": "1/64 in", "half-lap": 1}, "low.back.joint": HalfLap()})
        layout = lay_out(frame)
        assert edges(layout, "front left leg", "low/front rail") == (100, pytest.approx(160 + 25.4 / 64))
        assert edges(layout, "back left leg", "low/back rail") == (100, 161)
        assert frame.fit == Fit(notch=25.4 / 64, half_lap=1)

    def test_it_moves_no_rail_and_widens_no_end_rail(self):
        tight, loose = lay_out(STAND), lay_out(attrs.evolve(STAND, fit=0.8))
        assert [p.blank for p in tight.parts] == [p.blank for p in loose.parts]

    @pytest.mark.parametrize(
        "fit, said",
        [
            ("loose", "fit is 'loose'. Choose one of snug, easy, outdoor, or write a length."),
            ({"butt": 1}, 'Joints that take a fit are "notch", "half-lap", "over-notch" and "cut round".'),
            ({"notch": "loose"}, "Choose one of snug"),
            (-1, "must be zero or more"),
            ("0.5", "no unit"),
            (None, "None given for fit is not a length"),
        ],
    )
    def test_what_is_no_fit_is_refused(self, fit, said):
        with pytest.raises(DescriptionError) as caught:
            attrs.evolve(STAND, fit=fit)
        assert said in str(caught.value)

    def test_it_stands_in_words_on_the_pages_that_the_maker_marks_from(self):
        layout = lay_out(attrs.evolve(STAND, fit="outdoor"))
        words = drawn_text(set_page(layout, "A"))
        assert "The lines hold 0.80 mm of fit for each notch: add none." in words
        assert "0.80 mm of fit" in drawn_text(*joint_details(layout))

    def test_where_there_is_none_no_page_speaks_of_it(self):
        layout = lay_out(STAND)
        assert " fit" not in drawn_text(set_page(layout, "A"))
        assert "without fit" in drawn_text(*joint_details(layout))


@pytest.mark.parametrize("asked", [cut_list, joint_details, lambda frame: set_page(frame, "A")])
def test_a_frame_where_a_layout_is_meant_is_told_to_be_laid_out(asked):
    with pytest.raises(NotLaidOut, match=r'Frame "Stand" is a description, .* layout = lay_out\(frame\)'):
        asked(STAND)
