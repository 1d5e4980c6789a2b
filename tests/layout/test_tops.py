"""Tops, panels, ledgers, trays and bins, worked by hand; and what may move when a maker varies one.

Gallery bench (inches): the top's rails are 3 1/2 from 32 to 35 1/2, its boards 7/8. It covers 0 to 57; the drip section
is 16, and with 3 mm on both sides the fixed ones share 57 − 16 − 2 × 3 mm: 20 1/2 less 3 mm each. A fixed section holds
7 boards of 2 3/4 (eight take 22), the drip section 5.

Stand (mm): the seat's boards end at 470, so its rails do at 450; lids lie between legs of 70: from 73 to 1067 and from
1143 to 1727. Rack: runners end 13 under the end rails' tops, 160 + 90 − 13 = 237; trays lie there, between posts of 45.
"""

from fractions import Fraction

import attrs
import pytest
from designs import bench, rack, stand
from topped import CURVES, DRIP, LIDS, TRAYS

from benchjoin import Clear, alter, keep, lay_out
from benchjoin.errors import DescriptionError, RunError
from benchjoin.frame.address import addresses, value
from benchjoin.layout.bodies import bodies
from benchjoin.layout.lifting import lift_outs

INCH = 25.4
BENCH, RACK, STAND = (lay_out(frame) for frame in (bench, rack, stand))


def ends(layout, name, axis):
    blank = layout.part(name).blank
    return [blank.low[axis], blank.high[axis]]


def mm(*values):
    return pytest.approx([float(value) for value in values], abs=1e-9)


def inches(*values):
    return mm(*(Fraction(value) * Fraction(254, 10) for value in values))


class TestSections:
    def test_fixed_sections_share_what_the_drip_section_leaves(self):
        wide = (Fraction(57 - 16) * Fraction(254, 10) - 6) / 2
        gap = (wide - 7 * Fraction(11, 4) * Fraction(254, 10)) / 6
        step = gap + Fraction(11, 4) * Fraction(254, 10)
        for number in range(1, 8):
            assert ends(BENCH, f"bench/section 1 board {number}", 0)[0] == pytest.approx(float(step * (number - 1)))
        assert ends(BENCH, "bench/panel 1 board 1", 0)[0] == pytest.approx(float(wide + 3))
        assert ends(BENCH, "bench/panel 1 board 5", 0)[1] == pytest.approx(float(wide + 3) + 16 * INCH)
        assert ends(BENCH, "bench/section 2 board 7", 0)[1] == pytest.approx(57 * INCH)

    def test_boards_lie_on_the_rails_and_reach_over_the_front(self):
        assert ends(BENCH, "bench/panel 1 board 2", 2) == inches(Fraction(71, 2), Fraction(291, 8))
        assert ends(BENCH, "bench/panel 1 board 2", 1) == inches(Fraction(-3, 4), 23)

    def test_a_board_that_a_leg_takes_whole_ends_at_it(self):
        """The back leg is 3 1/4 wide, the board 2 3/4, and the leg's face lies at 23 − 1 5/16."""
        assert ends(BENCH, "bench/section 1 board 1", 1) == inches(Fraction(-3, 4), Fraction(347, 16))
        assert BENCH.part("bench/section 1 board 1").cuts == ()

    def test_supports_stand_under_the_joints(self):
        """Each is 5/8, its middle in the middle of the 3 mm, its top at 35 1/2, from rail to rail."""
        for number, panel_edge in ((1, 0), (2, 1)):
            joint = ends(BENCH, f"bench/panel 1 board {1 if number == 1 else 5}", 0)[panel_edge]
            middle = joint - 1.5 if number == 1 else joint + 1.5
            half = Fraction(5, 16) * Fraction(254, 10)
            name = f"bench/deck support {number}"
            assert ends(BENCH, name, 0) == mm(middle - float(half), middle + float(half))
            assert ends(BENCH, name, 2) == inches(34, Fraction(71, 2))
            assert ends(BENCH, name, 1) == inches(Fraction(5, 8), Fraction(179, 8))

    def test_cleats_stand_inside_the_rails_and_between_the_supports(self):
        """2 mm off the rails at 5/8 and 22 3/8, and 3 mm off the supports; 5/8 thick under the boards."""
        near, far = (ends(BENCH, f"bench/panel 1 cleat {n}", 1) for n in (1, 2))
        assert near == mm(0.625 * INCH + 2, 2.125 * INCH + 2)
        assert far == mm(20.875 * INCH - 2, 22.375 * INCH - 2)
        between = ends(BENCH, "bench/deck support 1", 0)[1] + 3, ends(BENCH, "bench/deck support 2", 0)[0] - 3
        assert ends(BENCH, "bench/panel 1 cleat 1", 0) == mm(*between)
        assert ends(BENCH, "bench/panel 1 cleat 1", 2) == inches(Fraction(279, 8), Fraction(71, 2))

    def test_lids_lie_between_the_legs_on_front_rail_and_ledger(self):
        assert ends(STAND, "seat/panel 1 board 1", 0)[0] == pytest.approx(73)
        assert ends(STAND, "seat/panel 2 board 1", 0)[0] == pytest.approx(1143)
        assert ends(STAND, "seat/panel 1 board 1", 2) == mm(450, 470)
        assert ends(STAND, "seat/panel 1 board 2", 1) == mm(0, 420 - 18 - 6 - 2)
        assert ends(STAND, "seat/ledger 1", 1) == mm(420 - 18 - 20, 420 - 18)
        assert ends(STAND, "seat/ledger 1", 2) == mm(450 - 45, 450)
        assert [len(lift.parts) for lift in lift_outs(STAND.piece(1), STAND.joints_of(1))] == [12 + 2, 7 + 2]


class TestHeights:
    def test_the_upper_face_is_pinned_and_the_legs_follow(self):
        """Washing-up stand: boards of 3/4 end at 34, rails at 33 1/4, and so do the front legs."""
        layout = lay_out(DRIP)
        assert ends(layout, "top/section 1 board 2", 2) == inches(Fraction(133, 4), 34)
        assert ends(layout, "top/front rail", 2)[1] == pytest.approx(33.25 * INCH)
        assert layout.leg("front left").length == pytest.approx(33.25 * INCH)
        assert layout.leg("front left").notches[-1].open_top

    def test_a_clear_may_begin_on_the_boards(self):
        """10 over 34 begins the rail."""
        assert ends(lay_out(DRIP), "rail/back rail", 2)[0] == pytest.approx(44 * INCH)

    def test_boards_that_come_out_thicker_lower_the_rails_and_nothing_else_stands_higher(self):
        thicker = alter(DRIP, {"top.section 1.stock.thickness": 22, "top.drip board.boards.stock.thickness": 22})
        thicker = alter(thicker, {"top.section 2.stock.thickness": 22})
        moved = lay_out(thicker)
        assert ends(moved, "top/section 1 board 2", 2)[1] == pytest.approx(34 * INCH)
        assert ends(moved, "top/front rail", 2)[1] == pytest.approx(34 * INCH - 22)
        assert moved.leg("front left").length == pytest.approx(34 * INCH - 22)
        for name in ("rail/back rail", "shelf/front rail", "shelf/board 3"):
            assert ends(moved, name, 2) == mm(*ends(lay_out(DRIP), name, 2))

    def test_measured_boards_lower_them_too(self):
        names = [p.identity for p in lay_out(DRIP).piece(1) if p.level == "top" and p.slot.role.word == "board"]
        measured = alter(DRIP, {f"{name}.thickness": 20.05 for name in names})
        assert lay_out(measured).leg("front left").length == pytest.approx(34 * INCH - 20.05)

    def test_a_height_that_disagrees_is_told_with_both_numbers(self):
        with pytest.raises(RunError, match=r"ends at 34 in.*flush with the front leg top at 33 in.*1/4 in apart"):
            lay_out(alter(DRIP, {"front.height": "33 in"}))

    def test_a_height_that_nothing_gives_is_refused(self):
        with pytest.raises(DescriptionError, match=r"its height is open, and no level is flush with it"):
            alter(DRIP, {"top.flush": None})
        with pytest.raises(DescriptionError, match=r'nothing says how high "top" is'):
            alter(DRIP, {"top.top_at": None, "clear above shelf.size": None, "clear above top.at": None})


class TestTrays:
    def test_a_tray_lies_on_its_runners_between_the_posts(self):
        for number in range(1, 7):
            bottom = 160 + (number - 1) * 300 + 90 - 13
            side = f"tray {number}/tray long side 1"
            assert ends(RACK, side, 2) == mm(bottom, bottom + 32)
            assert ends(RACK, side, 0) == mm(45 + 5, 855 - 5)
            assert ends(RACK, f"tray {number}/tray slat 1", 2) == mm(bottom + 32, bottom + 48)

    def test_it_ends_2_before_its_stop_which_lies_on_the_back_rail(self):
        assert ends(RACK, "tray 1/tray stop 1", 1) == mm(480, 500)
        assert ends(RACK, "tray 1/tray stop 1", 2) == mm(205, 250)
        assert ends(RACK, "tray 1/tray short side 1", 1) == mm(0, 478)

    def test_its_corners_are_half_lapped(self):
        """Both give 16 of 32 over 45 × 45."""
        for name in ("long side 1", "long side 2", "short side 1", "short side 2"):
            cuts = RACK.part(f"tray 1/tray {name}").cuts
            assert [cut.box.size() for cut in cuts] == [pytest.approx((45, 45, 16))] * 2

    def test_it_comes_out_as_it_says(self):
        ways = [(lift.name, lift.moves.toward) for lift in lift_outs(RACK.piece(1), RACK.joints_of(1))]
        assert ways == [(f"tray {number}/tray", "front") for number in range(1, 7)]
        trays = lay_out(TRAYS)
        assert [lift.moves.toward for lift in lift_outs(trays.piece(1), trays.joints_of(1))] == ["back", "up"]


class TestBins:
    def test_the_bin_stands_on_the_foot_shelf_in_the_middle_of_its_lid(self):
        (body,) = bodies(bench, {part.identity: part for part in BENCH.piece(1)})
        assert [body.box.low[2], body.box.high[2]] == inches(Fraction(21, 2), Fraction(41, 2))
        assert (body.box.low[0] + body.box.high[0]) / 2 == pytest.approx(57 * INCH / 2)
        assert body.moves.toward == "up"

    def test_a_bin_that_hangs_ends_at_the_rails(self):
        layout = lay_out(LIDS)
        (body,) = bodies(LIDS, {part.identity: part for part in layout.piece(1)})
        assert [body.box.low[2], body.box.high[2]] == mm(200, 420)

    def test_its_sizes_have_addresses(self):
        assert "bin.depth" in addresses(bench)
        assert value(alter(bench, {"bin.depth": "15 in"}), "bin.depth") == pytest.approx(381)


class TestVariations:
    """Each lists what may move; nothing else does."""

    def test_drop_a_section(self):
        """The other sections of the top, its supports and cleats, and the bin; no rail, no leg, no shelf."""
        top = value(bench, "bench.deck")
        less = alter(bench, {"bench.deck": attrs.evolve(top, sections=top.sections[:2])})
        before, after = lay_out(bench), lay_out(less)
        names = {part.identity for part in before.piece(1)} & {part.identity for part in after.piece(1)}
        moved = {name for name in names if before.part(name).blank != after.part(name).blank}
        assert moved
        assert all(name.startswith(("bench/section", "bench/panel", "bench/deck")) for name in moved)

    def test_a_wider_tray(self):
        """Nearer to the posts: its sides and slats, of one level."""
        wider = alter(rack, {"tray 2.tray.clear": 2})
        before, after = lay_out(rack), lay_out(wider)
        names = {part.identity for part in before.piece(1)} & {part.identity for part in after.piece(1)}
        moved = {name for name in names if before.part(name).blank != after.part(name).blank}
        own = ("tray 2/tray long", "tray 2/tray short", "tray 2/tray slat")
        assert moved == {name for name in names if name.startswith(own)} - {"tray 2/tray slat 5"}  # the middle one

    def test_a_deeper_arc(self):
        """The outline of one rail, and nothing moves."""
        deeper = alter(bench, {"head rail.back.lower_edge.rise": "2 in"})
        before, after = lay_out(bench), lay_out(deeper)
        assert [part.blank for part in before.parts] == [part.blank for part in after.parts]
        other = [a.identity for a, b in zip(before.piece(1), after.piece(1), strict=True) if a.volume != b.volume]
        assert other == ["head rail/back rail"]

    def test_the_number_of_boards_of_a_section_is_kept_with_its_boards(self):
        kept = keep(BENCH, "1/bench/section 1 board 1", "1/bench/panel 1 board 1")
        assert (value(kept, "bench.section 1.count"), value(kept, "bench.panel 1.boards.count")) == (7, 5)
        kept = keep(RACK, "tray 1/tray slat 1")
        assert value(kept, "tray 1.tray.boards.count") == 9
        assert lay_out(kept).errors() == ()


class TestBadInput:
    def test_sections_wider_than_the_top(self):
        with pytest.raises(RunError, match=r"sections of the deck: .*the top is 57 in long: 4.236 in too much"):
            lay_out(alter(bench, {"bench.panel 1.width": "61 in"}))

    def test_sections_that_do_not_fill_it(self):
        top = value(bench, "bench.deck")
        with pytest.raises(RunError, match=r"sections of the deck"):
            lay_out(alter(bench, {"bench.deck": attrs.evolve(top, sections=[Clear("3 in"), top.sections[1]])}))

    def test_a_lid_for_a_bin_that_is_not_there(self):
        with pytest.raises(DescriptionError, match=r'covers "bin", and there is none'):
            attrs.evolve(bench, bins=())

    @pytest.mark.parametrize("edge", ["lower_edge", "upper_edge"])
    def test_a_curve_that_is_none(self, edge):
        with pytest.raises(DescriptionError, match=rf"{edge} is 'wavy'.*Write Arc\(40\)"):
            alter(CURVES, {f"seat.front.{edge}": "wavy"})
