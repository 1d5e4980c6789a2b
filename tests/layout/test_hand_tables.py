"""The gallery designs against the sums a maker does with a tape, to a millionth of a micrometre (1e-9 mm)."""

from __future__ import annotations

import os
import subprocess
import sys
from itertools import pairwise
from pathlib import Path

import attrs
import pytest
from by_hand import (
    BENCH_BACK_HEIGHT,
    BENCH_BACK_LEG,
    BENCH_FRONT_HEIGHT,
    BENCH_FRONT_LEG,
    BENCH_LEG_WIDTH,
    RACK_END,
    RACK_LONG,
    inches,
    struck,
)
from designs import plain_bench as bench
from designs import plain_rack as rack

from benchjoin import alter, lay_out

ROOT = Path(__file__).parents[2]
LEGS = ("front left", "front right", "back left", "back right")


def near(value):
    return pytest.approx(value, abs=1e-9)


def edges(notches):
    return [(notch.bottom, notch.top) for notch in notches]


def all_near(pairs):
    return [(near(low), near(high)) for low, high in pairs]


@pytest.fixture(scope="module")
def laid_bench():
    return lay_out(bench)


@pytest.fixture(scope="module")
def laid_rack():
    return lay_out(rack)


class TestHoneyHouseBench:
    @pytest.mark.parametrize("piece", [1, 2, 3])
    @pytest.mark.parametrize("leg", LEGS)
    def test_notches_stand_where_the_tape_says(self, laid_bench, leg, piece):
        by_hand = BENCH_FRONT_LEG if leg.startswith("front") else BENCH_BACK_LEG
        assert edges(laid_bench.leg(leg, piece).notches) == all_near(by_hand)

    @pytest.mark.parametrize("leg", LEGS)
    def test_front_and_back_rails_are_let_in_flush(self, laid_bench, leg):
        row = leg.partition(" ")[0]
        for notch in laid_bench.leg(leg).notches:
            assert notch.depth == near(inches("5/8"))
            assert notch.face == row
            assert (notch.left, notch.right) == (near(0), near(inches("3 1/4")))
            assert not notch.open_foot

    @pytest.mark.parametrize("leg", LEGS)
    def test_only_the_highest_notch_is_open_at_the_top_of_its_leg(self, laid_bench, leg):
        *lower, highest = laid_bench.leg(leg).notches
        assert highest.open_top
        assert highest.rail == ("bench/front rail" if leg.startswith("front") else "head rail/back rail")
        assert not any(notch.open_top for notch in lower)

    @pytest.mark.parametrize(
        "rail, bottom, top",
        [
            ("foot shelf/front rail", "7", "9 3/4"),
            ("foot shelf/back rail", "7", "11 1/4"),
            ("foot shelf/left rail", "7", "9 3/4"),
            ("foot shelf/right rail", "7", "9 3/4"),
            ("bench/front rail", "32", "35 1/2"),
            ("bench/back rail", "32", "35 1/2"),
            ("bench/left rail", "32", "35 1/2"),
            ("bench/right rail", "32", "35 1/2"),
            ("hook rail/back rail", "48 3/8", "51 7/8"),
            ("head rail/back rail", "64 3/4", "70"),
        ],
    )
    def test_rails_stand_where_the_tape_says(self, laid_bench, rail, bottom, top):
        for piece in (1, 2, 3):
            box = laid_bench.part(f"{piece}/{rail}").blank
            assert (box.low[2], box.high[2]) == (near(inches(bottom)), near(inches(top)))

    def test_the_two_clears_around_the_hook_rail_are_alike(self, laid_bench):
        foot_shelf, bench_level, hook, head = laid_bench.leg("back left").notches
        assert bench_level.bottom - foot_shelf.top == near(inches("20 3/4"))
        assert hook.bottom - bench_level.top == near(inches("12 7/8"))
        assert head.bottom - hook.top == near(inches("12 7/8"))

    def test_long_rails_run_over_the_legs_and_end_rails_butt_between_them(self, laid_bench):
        rails = [part for part in laid_bench.piece(1) if part.role == "rail"]
        lengths = {part.identity: part.length for part in rails}
        long = [name for name in lengths if name.endswith(("front rail", "back rail"))]
        short = [name for name in lengths if name.endswith(("left rail", "right rail"))]
        assert (len(long), len(short)) == (6, 4)
        assert [lengths[name] for name in long] == [near(inches("57"))] * 6
        assert [lengths[name] for name in short] == [near(inches("23") - 2 * inches("1 5/16"))] * 4
        assert inches("20 3/8") == near(inches("23") - 2 * inches("1 5/16"))
        assert not any(part.cuts for part in rails)

    @pytest.mark.parametrize(
        "part, x, y",
        [
            ("front left leg", ("0", "3 1/4"), ("0", "1 5/16")),
            ("front right leg", ("53 3/4", "57"), ("0", "1 5/16")),
            ("back left leg", ("0", "3 1/4"), ("21 11/16", "23")),
            ("back right leg", ("53 3/4", "57"), ("21 11/16", "23")),
            ("bench/front rail", ("0", "57"), ("0", "5/8")),
            ("bench/back rail", ("0", "57"), ("22 3/8", "23")),
            ("bench/left rail", ("0", "5/8"), ("1 5/16", "21 11/16")),
            ("bench/right rail", ("56 3/8", "57"), ("1 5/16", "21 11/16")),
        ],
    )
    def test_parts_stand_over_the_floor_where_the_tape_says(self, laid_bench, part, x, y):
        box = laid_bench.part(part).blank
        assert (box.low[0], box.high[0]) == tuple(near(inches(edge)) for edge in x)
        assert (box.low[1], box.high[1]) == tuple(near(inches(edge)) for edge in y)

    @pytest.mark.parametrize("leg", LEGS)
    def test_legs_have_their_size(self, laid_bench, leg):
        height = BENCH_FRONT_HEIGHT if leg.startswith("front") else BENCH_BACK_HEIGHT
        part = laid_bench.leg(leg)
        assert (part.length, part.width) == (near(height), near(BENCH_LEG_WIDTH))
        assert part.thickness == near(inches("1 5/16"))

    def test_nothing_is_wrong_with_it(self, laid_bench):
        assert laid_bench.findings == ()


class TestSetsOfTheHoneyHouseBench:
    def test_three_pieces_are_three_sets_that_are_alike(self, laid_bench):
        assert [one.letter for one in laid_bench.sets] == ["A", "B", "C"]
        assert [one.alike for one in laid_bench.sets] == [("A", "B", "C")] * 3

    def test_a_piece_has_four_legs_and_ten_rails(self, laid_bench):
        assert len(laid_bench.parts) == 3 * 14
        for piece in (1, 2, 3):
            roles = [part.role for part in laid_bench.piece(piece)]
            assert (roles.count("leg"), roles.count("rail")) == (4, 10)

    def test_marks_count_the_legs_from_the_front_left(self, laid_bench):
        for letter, piece in zip("ABC", (1, 2, 3), strict=True):
            assert [part.mark for part in laid_bench.set(letter).members] == [f"{letter}{n}" for n in (1, 2, 3, 4)]
            assert [part.name for part in laid_bench.set(letter).members] == [f"{piece}/{leg} leg" for leg in LEGS]

    def test_a_line_is_struck_once_across_all_legs_that_take_it(self, laid_bench):
        (band,) = laid_bench.set("A").bands
        assert band.faces == ("front", "front", "back", "back")
        found = [(line.at, sorted({taker.member for taker in line.takers})) for line in band.lines]
        assert found == [
            (near(inches("7")), [0, 1, 2, 3]),
            (near(inches("9 3/4")), [0, 1]),
            (near(inches("11 1/4")), [2, 3]),
            (near(inches("32")), [0, 1, 2, 3]),
            (near(inches("35 1/2")), [2, 3]),  # of the front legs it is the top
            (near(inches("48 3/8")), [2, 3]),
            (near(inches("51 7/8")), [2, 3]),
            (near(inches("64 3/4")), [2, 3]),
        ]

    def test_left_and_right_legs_are_alike(self, laid_bench):
        legs = [laid_bench.leg(leg) for leg in LEGS]
        assert [leg.handed for leg in legs] == [""] * 4
        assert legs[0].kind == legs[1].kind != legs[2].kind == legs[3].kind


NARROWER = "3 7/16 in"
BY_DESCRIPTION = {
    "bench.front.width": NARROWER,
    "bench.back.width": NARROWER,
    "bench.ends.width": NARROWER,
    "hook rail.back.width": NARROWER,
}
BY_MEASURE = {
    "bench/front rail.width": NARROWER,
    "bench/back rail.width": NARROWER,
    "bench/left rail.width": NARROWER,
    "bench/right rail.width": NARROWER,
    "hook rail/back rail.width": NARROWER,
}
# 35 1/2 - 3 7/16 = 32 1/16. From 35 1/2 to 64 3/4 there are 29 1/4; less 3 7/16 that is 25 13/16, half of it 12 29/32.
# The hook rail: 35 1/2 + 12 29/32 = 48 13/32, and 3 7/16 more are 51 27/32.
NARROWER_FRONT = [("7", "9 3/4"), ("32 1/16", "35 1/2")]
NARROWER_BACK = [("7", "11 1/4"), ("32 1/16", "35 1/2"), ("48 13/32", "51 27/32"), ("64 3/4", "70")]


@pytest.mark.parametrize("changes", [BY_DESCRIPTION, BY_MEASURE], ids=["described", "measured"])
class TestRailsThatMillNarrower:
    def test_the_bench_still_ends_at_the_top_of_the_front_legs(self, changes):
        layout = lay_out(alter(bench, changes))
        for piece in (1, 2, 3):
            for leg in LEGS:
                by_hand = NARROWER_FRONT if leg.startswith("front") else NARROWER_BACK
                found = layout.leg(leg, piece).notches
                assert edges(found) == all_near([(inches(low), inches(high)) for low, high in by_hand])
                assert [notch.open_top for notch in found] == [False] * (len(found) - 1) + [True]
        assert layout.findings == ()

    def test_the_clears_around_the_hook_rail_share_what_is_left(self, changes):
        foot_shelf, bench_level, hook, head = lay_out(alter(bench, changes)).leg("back right").notches
        assert bench_level.bottom - foot_shelf.top == near(inches("20 13/16"))
        assert hook.bottom - bench_level.top == near(inches("12 29/32"))
        assert head.bottom - hook.top == near(inches("12 29/32"))

    def test_end_rails_follow(self, changes):
        layout = lay_out(alter(bench, changes))
        for side in ("left", "right"):
            box = layout.part(f"bench/{side} rail").blank
            assert (box.low[2], box.high[2]) == (near(inches("32 1/16")), near(inches("35 1/2")))


def test_what_is_measured_on_one_piece_moves_that_piece_alone():
    layout = lay_out(alter(bench, {f"2/{address}": size for address, size in BY_MEASURE.items()}))
    assert edges(layout.leg("front left", 1).notches) == all_near(BENCH_FRONT_LEG)
    assert edges(layout.leg("back left", 3).notches) == all_near(BENCH_BACK_LEG)
    assert edges(layout.leg("back left", 2).notches) == all_near([(inches(a), inches(b)) for a, b in NARROWER_BACK])
    assert [one.alike for one in layout.sets] == [("A", "C"), ("B",), ("A", "C")]


class TestPrintRoomRack:
    @pytest.mark.parametrize("leg", LEGS)
    def test_laps_stand_where_the_tape_says(self, laid_rack, leg):
        row, pair = leg.split()
        notches = laid_rack.leg(leg).notches
        assert edges(n for n in notches if n.face == row) == all_near(RACK_LONG)
        assert edges(n for n in notches if n.face == pair) == all_near(RACK_END)
        assert len(notches) == 12

    @pytest.mark.parametrize("leg", LEGS)
    def test_only_the_last_end_rail_is_open_at_the_top(self, laid_rack, leg):
        *lower, last = laid_rack.leg(leg).notches
        assert last.open_top
        assert last.top == near(1750)
        assert last.rail == f"tray 6/{leg.split()[1]} rail"
        assert not any(notch.open_top for notch in lower)

    def test_clears_are_210(self, laid_rack):
        trays = [[laid_rack.part(f"tray {n}/{side} rail").blank for side in ("front", "left")] for n in range(1, 7)]
        assert trays[0][0].low[2] == near(160)
        for (_, end_below), (front_above, _) in pairwise(trays):
            assert front_above.low[2] - end_below.high[2] == near(210)

    def test_end_rails_are_raised_by_45(self, laid_rack):
        for number in range(1, 7):
            bottoms = [laid_rack.part(f"tray {number}/{side} rail").blank.low[2] for side in ("front", "left", "right")]
            assert bottoms == [near(300 * number - 140), near(300 * number - 95), near(300 * number - 95)]

    @pytest.mark.parametrize(
        "leg, x, y",
        [
            ("front left", (0, 45), (0, 45)),
            ("front right", (855, 900), (0, 45)),
            ("back left", (0, 45), (455, 500)),
            ("back right", (855, 900), (455, 500)),
        ],
    )
    def test_legs_stand_at_the_corners(self, laid_rack, leg, x, y):
        box = laid_rack.leg(leg).blank
        assert box.low == (near(x[0]), near(y[0]), near(0))
        assert box.high == (near(x[1]), near(y[1]), near(1750))

    def test_every_lap_takes_ten_from_the_leg_and_ten_from_the_rail(self, laid_rack):
        legs = [part for part in laid_rack.parts if part.role == "leg"]
        rails = [part for part in laid_rack.parts if part.role == "rail"]
        assert [notch.depth for leg in legs for notch in leg.notches] == [near(10)] * 48
        assert [len(rail.cuts) for rail in rails] == [2] * 24
        for part in (*legs, *rails):
            for cut in part.cuts:
                assert sorted(cut.box.size()) == [near(10), near(45), near(45)]

    def test_leg_keeps_the_inner_half_of_a_lap_and_the_rail_the_outer_one(self, laid_rack):
        (leg,) = [c.box for c in laid_rack.leg("front left").cuts if c.mate == "tray 1/front rail"]
        (rail,) = [c.box for c in laid_rack.part("tray 1/front rail").cuts if c.mate == "front left leg"]
        assert (leg.low, leg.high) == ((near(0), near(0), near(160)), (near(45), near(10), near(205)))
        assert (rail.low, rail.high) == ((near(0), near(10), near(160)), (near(45), near(20), near(205)))

    def test_rails_run_over_the_legs(self, laid_rack):
        lengths = sorted(part.length for part in laid_rack.parts if part.role == "rail")
        assert lengths == [near(500)] * 12 + [near(900)] * 12

    def test_nothing_is_wrong_with_it(self, laid_rack):
        assert laid_rack.findings == ()


class TestSetsOfThePrintRoomRack:
    def test_there_are_legs_long_rails_and_end_rails(self, laid_rack):
        assert [(one.letter, one.title, len(one.members)) for one in laid_rack.sets] == [
            ("A", "legs", 4),
            ("B", "long rails", 12),
            ("C", "end rails", 12),
        ]
        assert [one.alike for one in laid_rack.sets] == [("A",), ("B",), ("C",)]
        assert len(laid_rack.parts) == 28

    def test_legs_are_marked_on_two_faces(self, laid_rack):
        outer, end = laid_rack.set("A").bands
        assert outer.faces == ("front", "front", "back", "back")
        assert end.faces == ("left", "right", "left", "right")
        assert [line.at for line in outer.lines] == [near(at) for at in struck(RACK_LONG, 1750)]
        assert [line.at for line in end.lines] == [near(at) for at in struck(RACK_END, 1750)]
        for line in (*outer.lines, *end.lines):
            assert [taker.member for taker in line.takers] == [0, 1, 2, 3]

    def test_rails_bear_the_letter_of_their_piece(self):
        layout = lay_out(attrs.evolve(rack, quantity=2))
        assert [(one.letter, one.title, one.members[0].mark, one.members[-1].mark) for one in layout.sets] == [
            ("A", "legs", "A1", "A4"),
            ("B", "legs", "B1", "B4"),
            ("C", "long rails", "A5", "A16"),
            ("D", "end rails", "A17", "A28"),
            ("E", "long rails", "B5", "B16"),
            ("F", "end rails", "B17", "B28"),
        ]
        assert {part.mark[0] for part in layout.piece(2)} == {"B"}

    @pytest.mark.parametrize("letter, shoulders", [("B", [45, 855]), ("C", [45, 455])])
    def test_rails_have_a_shoulder_at_each_leg(self, laid_rack, letter, shoulders):
        (band,) = laid_rack.set(letter).bands
        assert [line.at for line in band.lines] == [near(at) for at in shoulders]
        for line in band.lines:
            assert [taker.member for taker in line.takers] == list(range(12))

    def test_two_legs_of_each_hand(self, laid_rack):
        a1, a2, a3, a4 = laid_rack.set("A").members
        assert (a1.kind, a1.handed) == (a4.kind, a4.handed)
        assert (a2.kind, a2.handed) == (a3.kind, a3.handed)
        assert {a1.handed, a2.handed} == {"left", "right"}
        assert a1.kind != a2.kind

    def test_rails_of_one_length_are_all_alike(self, laid_rack):
        long, end = laid_rack.set("B").members, laid_rack.set("C").members
        assert len({part.kind for part in long}) == len({part.kind for part in end}) == 1
        assert long[0].kind != end[0].kind
        assert {part.handed for part in (*long, *end)} == {""}


ORDER = """
from designs import plain_bench as bench, plain_rack as rack
from benchjoin import cut_list, lay_out
for frame in (bench, rack):
    layout = lay_out(frame)
    print([(p.name, p.mark, p.kind, p.handed, [c.mate for c in p.cuts]) for p in layout.parts])
    print([(j.piece, j.host, j.guest) for j in layout.joints], layout.sets, cut_list(layout))
"""


def test_parts_joints_and_sets_come_in_the_same_order_whatever_python_hashes_to():
    outputs = []
    for seed in ("1", "2"):
        env = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": os.pathsep.join(sys.path), "PYTHONUTF8": "1"}
        done = subprocess.run([sys.executable, "-c", ORDER], env=env, capture_output=True, text=True, check=True)
        outputs.append(done.stdout)
    assert outputs[0] == outputs[1]
    assert outputs[0].index("1/front left leg") < outputs[0].index("2/front left leg")


@pytest.mark.parametrize("frame", [bench, rack], ids=["bench", "rack"])
def test_laying_out_twice_gives_the_same_layout(frame):
    one, two = lay_out(frame), lay_out(frame)
    assert one == two
    assert one is not two
