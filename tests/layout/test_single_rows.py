"""A single row of uprights: what it may not be given and what to do instead, and what moves when it is changed."""

from __future__ import annotations

import attrs
import pytest
from designs import plain_bench as bench
from designs import tools
from samples import FLAT, SAMPLES

from benchjoin import (
    Clear,
    EndRails,
    Frame,
    Leg,
    Level,
    Pair,
    Rail,
    alter,
    elevation,
    error_budget,
    keep,
    lay_out,
    plan,
    section,
    what_moved,
)
from benchjoin.binding import sheets
from benchjoin.drafting.primitives import Text
from benchjoin.drawings.lists.cover import key_sizes
from benchjoin.errors import AddressError, DescriptionError, DesignFileError
from benchjoin.frame.design.file import read_design, write_design
from benchjoin.notebook.html_pages import frame_page, layout_page
from benchjoin.shop.overview import key_numbers
from benchjoin.shop.weights import weights

ROW = SAMPLES["single row"]


def faults_of(**changes):
    with pytest.raises(DescriptionError) as caught:
        attrs.evolve(ROW, **changes)
    return [(fault.field, fault.what) for fault in caught.value.faults]


REFUSED = {
    "back legs": (dict(back=Leg(FLAT, height=700)), "back", ["has no back legs", "Leave back out"]),
    "a depth": (dict(depth=300), "depth", ["as deep as its uprights", "Leave depth out"]),
    "a depth by end rails": (dict(depth=EndRails(300)), "depth", ["Leave depth out"]),
    "a back rail": (dict(stack=[Clear(80), Level("low", back=60)]), "stack", ['"low" has back', 'face="inner"']),
    "end rails": (dict(stack=[Clear(80), Level("low", front=60, ends=60)]), "stack", ["has ends", "Leave ends out"]),
    "one end rail": (dict(stack=[Clear(80), Level("low", front=60, left=60)]), "stack", ["has left", "Leave left out"]),
    "a cross rail": (dict(stack=[Clear(80), Level("low", front=60, cross=60)]), "stack", ["has cross"]),
    "a level without a front rail": (dict(stack=[Clear(80), Level("low", ends=60)]), "stack", ["front rails alone"]),
    "a pair with a back leg": (
        dict(bays=[Clear(), Pair(back=Leg(FLAT, height=500)), Clear()]),
        "bays",
        ["back leg of its own", "Leave back out of the Pair"],
    ),
    "a wall that is none": (dict(against="fence"), "against", ["'fence'", "Choose one of 'wall'"]),
    "no wall": (dict(against=None), "depth", ["it has none", 'against="wall"']),
}


@pytest.mark.parametrize("changes, field, words", REFUSED.values(), ids=REFUSED)
def test_what_needs_a_second_row_is_refused_with_a_way_out(changes, field, words):
    found = faults_of(**changes)
    assert any(where == field and all(word in what for word in words) for where, what in found), found


def test_a_frame_on_two_rows_that_lacks_its_back_is_told_both_ways_out():
    with pytest.raises(DescriptionError) as caught:
        attrs.evolve(bench, back=None)
    (fault,) = caught.value.faults
    assert fault.field == "back"
    assert "back=Leg(" in fault.what
    assert 'against="wall"' in fault.what


def test_a_clear_at_the_back_has_no_rail_to_reach_to():
    ((field, what),) = faults_of(stack=[Clear(80), Level("low", front=60), Clear(at="back"), Level("up", front=60)])
    assert field == "stack"
    assert "no level beside it has a rail there" in what


def test_a_design_file_says_where_a_single_row_has_a_back_rail():
    text = write_design(ROW).replace('{ level = "low", front = "60 mm" }', '{ level = "low", back = "60 mm" }')
    with pytest.raises(DesignFileError, match='"low" has back'):
        read_design(text)


def test_against_is_reached_by_its_address_and_all_may_change_at_once():
    upright = {"depth": 300, "back": Leg(FLAT, height=700), "against": None}
    two = alter(ROW, upright)
    assert (two.depth, len(two.legs())) == (300.0, 6)
    assert alter(two, {"depth": None, "back": None, "against": "wall"}) == ROW
    with pytest.raises(AddressError):
        alter(ROW, {"back.height": 700})


def places(layout):
    return {part.identity: (part.blank.low, part.blank.high) for part in layout.piece(1)}


class TestVariations:
    """Of the print room's tool rack, uprights at 0, 665 and 1330, each 70 wide."""

    def test_300_mm_longer_moves_the_middle_by_half_of_it_and_no_height(self):
        before, after = lay_out(tools), lay_out(alter(tools, {"length": 1700}))
        assert after.leg("front middle leg 1").blank.low == pytest.approx((815, 0, 0))  # 665 + 150
        assert after.leg("front right").blank.low == pytest.approx((1630, 0, 0))
        heights = {name: (low[1:], high[1:]) for name, (low, high) in places(before).items()}
        assert {name: (low[1:], high[1:]) for name, (low, high) in places(after).items()} == heights
        assert [n.bottom for n in after.leg("front left").notches] == [
            n.bottom for n in before.leg("front left").notches
        ]

    def test_a_thicker_upright_moves_what_lies_at_the_wall_and_nothing_else(self):
        before, after = places(lay_out(tools)), places(lay_out(alter(tools, {"front.stock.thickness": 50})))
        moved = {name for name in before if before[name] != after[name]}
        walls = {"wall strip/front rail", "wall cleat/front rail"}
        assert moved == walls | {"front left leg", "front middle leg 1", "front right leg"}
        for name in walls:
            assert (after[name][0][1], after[name][1][1]) == (30, 50)  # 50 - 20

    def test_an_upright_that_measured_thinner_keeps_its_front_and_is_short_of_the_wall(self):
        layout = lay_out(attrs.evolve(tools, measured={"2/front right leg.thickness": 43}))
        assert [layout.leg("front right", n).blank.high[1] for n in (1, 2)] == [45, 43]
        (short,) = [found for found in layout.findings if found.kind == "short of the wall"]
        assert (short.pieces, short.parts, short.numbers) == ((2,), ("front right leg",), {"short": pytest.approx(2)})
        assert [layout.part(f"{n}/wall cleat/front rail").blank.high[1] for n in (1, 2)] == [45, 45]

    def test_a_cut_upright_stays_and_the_rest_follows(self):
        kept = keep(lay_out(tools), "1/front left leg")
        after = lay_out(alter(kept, {"spatulas.front.width": 65}))
        moved = what_moved(lay_out(kept), after)
        assert not [change for change in moved.changes if change.part == "front left leg" and 1 in change.pieces]
        assert read_design(write_design(kept)) == kept


def test_the_wall_is_named_where_the_piece_is_told():
    layout = lay_out(ROW)
    assert ("Held by", "the wall") in key_sizes(layout, ROW.tape.read).rows
    assert ("Held by", "the wall") in key_numbers(layout).rows
    assert "against the wall" in repr(ROW)
    (note,) = [found for found in layout.findings if found.kind == "held by the wall"]
    assert note.severity == "note"
    for page in (frame_page(ROW), layout_page(layout)):
        assert "the wall" in page
    assert ("Held by", "the wall") not in key_numbers(lay_out(bench)).rows


def words(sheet):
    return [item.string for item in sheet.drawing if isinstance(item, Text)]


def drawn(frame):
    return {sheet.name: words(sheet) for sheet in sheets(lay_out(frame), only=["views"])}


def test_views_are_those_that_say_something_new():
    plain = attrs.evolve(ROW, stack=[Clear(80), Level("low", front=60)])
    assert list(drawn(plain)) == ["arrangement", "elevation-front", "elevation-left"]
    behind = attrs.evolve(ROW, stack=[Clear(80), Level("low", front=Rail(60, face="inner"))])
    assert list(drawn(behind)) == ["arrangement", "elevation-front", "elevation-left"]  # its marks are on the front's


def test_the_wall_stands_behind_it_in_the_plan_and_beside_it_at_the_end_but_not_at_the_bench():
    told = drawn(ROW)
    assert told["arrangement"].count("wall") == 2  # behind the plan, and beside the end
    for view in (plan(lay_out(ROW)), elevation(lay_out(ROW), "left")):
        assert words(view).count("wall") == 1
    for side in ("front", "back"):
        assert "wall" not in words(elevation(lay_out(ROW), side))
    assert not any("wall" in found for found in drawn(bench).values())


def test_heights_of_what_hangs_count_from_its_feet():
    assert "over the feet" in section(lay_out(ROW), "low").title


def test_it_weighs_what_its_uprights_and_rails_do_without_their_notches():
    # 3 × 40 × 60 × 700, 20 × (60 + 70 + 80) × 900; less notches of
    # 3 × 60 × (20 × 60 + 10 × 70) and laps of the rail, 3 × 60 × 10 × 70
    layout = lay_out(ROW)
    by_hand = 3 * 40 * 60 * 700 + 20 * 210 * 900 - 3 * 60 * (20 * 60 + 10 * 70) - 3 * 60 * 10 * 70
    assert sum(part.volume for part in layout.parts) == pytest.approx(by_hand)
    assert weights(layout, wood="white oak").total > 0


def test_the_budget_speaks_of_the_diagonals_of_its_front_alone():
    budget = error_budget(lay_out(ROW))
    assert budget.span == 900
    assert "Diagonals, worst" in budget.table().columns


def test_a_row_that_stops_short_everywhere_still_lies_on_one_front():
    row = Frame(
        name="Peg row",
        length=600,
        front=Leg(FLAT, height=300),
        against="wall",
        rail_stock=ROW.rail_stock,
        stack=[Clear(100), Level("pegs", front=Rail(60, overhang=-10))],
        tape="1 mm",
    )
    layout = lay_out(row)
    assert layout.part("pegs/front rail").length == 580
    assert layout.overall() == (600, 40, 300)
