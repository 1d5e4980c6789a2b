"""A leg a hair long or short, a rail cut short: heights stay from the foot, no rail slopes, and what is off is told."""

import pytest
from stand import STAND, told

from benchjoin import alter, keep, lay_out, release
from benchjoin.frame.address import value


def tops(layout, piece, level):
    return {
        part.identity: (part.blank.low[2], part.blank.high[2]) for part in layout.piece(piece) if part.level == level
    }


def test_a_long_leg_moves_no_height_and_is_trimmed():
    plain, long = lay_out(STAND), lay_out(alter(STAND, {"1/front left leg.length": 503}))
    assert tops(long, 1, "top") == tops(plain, 1, "top")
    assert tops(long, 1, "low") == tops(plain, 1, "low")
    assert long.part("1/front left leg").length == 503
    assert told(long, "trim", "1/front left leg") == {"length": 503, "top": 500, "over": 3}
    assert not any(f.kind in ("sliver", "short land", "measured length") for f in long.findings)


def test_at_a_short_leg_the_level_comes_down_for_all_legs_of_its_piece_and_none_slopes():
    short = lay_out(alter(STAND, {"2/front right leg.length": 496}))
    assert set(tops(short, 2, "top").values()) == {(416.0, 496.0)}
    assert set(tops(short, 1, "top").values()) == {(420.0, 500.0)}
    assert set(tops(short, 2, "low").values()) == {(100.0, 160.0)}
    assert told(short, "trim", "2/front left leg")["over"] == 4
    assert told(short, "measured length", "2/front right leg") == {"length": 496, "wanted": 500}


def test_the_stops_at_the_saw_stay_for_a_leg_that_is_long():
    def shoulders(frame):
        return [[(n.bottom, n.top) for n in leg.notches] for leg in lay_out(frame).legs(1)]

    long = alter(STAND, {"1/front left leg.length": 502, "1/back right leg.length": 505})
    assert shoulders(long) == shoulders(STAND)


def test_a_rail_that_was_cut_short_is_told_and_drawn_as_it_is():
    short = lay_out(alter(STAND, {"1/low/left rail.length": 217}))
    assert short.part("1/low/left rail").length == 217
    assert short.part("2/low/left rail").length == 220
    found = told(short, "measured length", "1/low/left rail")
    assert found == {"length": 217, "wanted": 220}


def test_a_length_measured_for_all_holds_where_none_was_measured_alone():
    frame = alter(STAND, {"front left leg.length": 498, "2/front left leg.length": 499})
    layout = lay_out(frame)
    assert [layout.part(f"{n}/front left leg").length for n in (1, 2)] == [498, 499]
    assert [tops(layout, n, "top")["top/front rail"][1] for n in (1, 2)] == [498, 499]


def test_length_and_section_are_measured_and_taken_away_one_by_one():
    frame = alter(STAND, {"1/low/left rail.length": 217, "1/low/left rail.size": (19, 58)})
    assert value(frame, "1/low/left rail.length") == 217
    assert value(frame, "1/low/left rail.size") == (19, 58)
    assert value(alter(frame, {"1/low/left rail.size": None}), "1/low/left rail.length") == 217
    assert value(alter(frame, {"1/low/left rail.length": None}), "1/low/left rail.size") == (19, 58)


@pytest.mark.parametrize("order", [("measure", "keep"), ("keep", "measure")])
def test_measuring_before_or_after_keeping_gives_the_same_length(order):
    frame = STAND
    for step in order:
        if step == "measure":
            frame = alter(frame, {"1/low/left rail.length": 217})
        else:
            frame = keep(lay_out(frame), "1/low/left rail", state="sized")
    assert lay_out(frame).part("1/low/left rail").length == 217


def test_what_is_kept_is_no_measurement_and_goes_with_release():
    kept = keep(lay_out(STAND), "low/front rail", state="sized")
    assert kept.measured == {}
    later = lay_out(alter(kept, {"low/front rail.width": 58}))
    assert [later.part(f"{n}/low/front rail").size[1] for n in (1, 2)] == [60, 60]
    assert {f.where for f in later.findings if f.kind == "measure not taken"} == {"low/front rail"}
    freed = lay_out(release(alter(kept, {"low/front rail.width": 58}), "low/front rail"))
    assert [freed.part(f"{n}/low/front rail").size[1] for n in (1, 2)] == [58, 58]


def test_a_kept_part_that_is_measured_anew_by_its_name_is_what_was_measured():
    kept = keep(lay_out(STAND), "1/low/front rail", state="sized")
    later = lay_out(alter(kept, {"1/low/front rail.width": 59, "low/front rail.width": 58}))
    assert [later.part(f"{n}/low/front rail").size[1] for n in (1, 2)] == [59, 58]
    assert not [f for f in later.findings if f.kind == "measure not taken"]
