"""Fasteners of a frame: which, how long, where, what is told, and what happens when wood is measured or altered."""

from __future__ import annotations

import itertools

import attrs
import pytest
from designs import DESIGNS
from hypothesis import given
from hypothesis import strategies as st

from benchjoin import Boards, Clear, Frame, HalfLap, Leg, Level, Planted, Rail, Stock, alter, lay_out
from benchjoin.errors import FastenerError, LumberError
from benchjoin.shop.fasteners.butts import butt_ways
from benchjoin.shop.fasteners.fasten import fasten
from benchjoin.shop.fasteners.fastener import fastener, screw
from benchjoin.shop.supplies import area, supplies
from benchjoin.trade.spacing import bolts, lead_holes, no_lead_holes
from benchjoin.wood.holding import screw_withdrawal, yield_modes

INCH = 25.4
BENCH = lay_out(DESIGNS["bench"])
WORK = fasten(BENCH, wood="western larch")


def fixing(work, guest, host):
    return next(f for f in work.fixings if (f.piece, f.guest, f.host) == (1, guest, host))


def rack(**more):
    """A print-room rack of planted rails: they hang on their screws."""
    return Frame(
        name="Planted rack",
        length=900,
        depth=400,
        front=Leg(Stock("ash", thickness=45, width=70), height=900),
        back=Leg(Stock("ash", thickness=45, width=70), height=900),
        rail_stock=Stock("ash rail", thickness=20),
        stack=[
            Clear(200),
            Level("shelf", front=Rail(90, joint=Planted()), back=Rail(90, joint=Planted()), ends=70, **more),
        ],
    )


def test_a_let_in_rail_has_two_screws_on_a_diagonal_that_stay_inside_the_leg():
    """Leg 1 5/16, notch 5/8: 11/16 is left, so a screw through the 5/8 rail is at most 1 in with 3 mm to spare."""
    one = fixing(WORK, "foot shelf/front rail", "front left leg")
    assert [d.length / INCH for d in one.driven] == [1.0, 1.0]
    assert one.driven[0].thick == pytest.approx(5 / 8 * INCH)
    assert one.driven[0].inside == pytest.approx(3 / 8 * INCH)
    (a, b) = one.driven
    assert a.at[0] != b.at[0]
    assert a.at[2] != b.at[2]
    assert a.at[1] == b.at[1] == 0.0
    assert all(d.way == (0.0, 1.0, 0.0) for d in one.driven)


def test_mirrored_rails_are_drilled_alike_from_their_own_ends():
    length = 57 * INCH
    left = fixing(WORK, "bench/front rail", "front left leg").driven
    right = fixing(WORK, "bench/front rail", "front right leg").driven
    found = sorted((round(d.at[0], 6), round(d.at[2], 6)) for d in left)
    mirrored = sorted((round(length - d.at[0], 6), round(d.at[2], 6)) for d in right)
    assert found == mirrored


def test_pieces_that_are_alike_are_fastened_alike():
    first, third = ([f for f in WORK.fixings if f.piece == n] for n in (1, 3))
    assert [[d.at for d in f.driven] for f in first] == [[d.at for d in f.driven] for f in third]
    assert {d.piece for f in third for d in f.driven} == {3}


def test_a_screw_through_a_notch_floor_is_told_to_go_in_first():
    told = [f for f in WORK.findings if f.kind == "under another part"]
    assert any("foot shelf/front rail" in f.sentence and "foot shelf/left rail" in f.sentence for f in told)
    one = fixing(WORK, "foot shelf/left rail", "front left leg")
    assert one.driven[0].at[1] == pytest.approx(5 / 8 * INCH)  # the head stands on the floor of the notch
    assert "foot shelf/front rail" in one.before


def test_screws_into_the_thin_end_grain_of_a_rail_are_counted_as_carrying_nothing():
    one = fixing(WORK, "foot shelf/left rail", "front left leg")
    assert (one.lateral, one.withdrawal) == (0.0, 0.0)
    (told,) = [f for f in WORK.findings if f.kind == "too near an edge to carry"]
    assert told.severity == "warning"
    assert "corner block" in told.sentence


def test_a_let_in_rail_with_little_thread_is_only_a_note():
    told = [f for f in WORK.findings if f.kind == "short thread" and "shoulder" in f.sentence]
    assert told
    assert all(f.severity == "note" for f in told)


@pytest.mark.parametrize("size", ["No. 8", "No. 6"])
def test_neither_a_no_8_nor_a_no_6_has_six_diameters_in_14_mm(size):
    """14 less 3 mm are left, from behind 20 less 3: 6 × 4.17 and 6 × 3.51 are more, and it hangs on them."""
    thin = lay_out(thin_legs())
    work = fasten(thin, {"planted": size}, wood="white oak")
    (told,) = [f for f in work.findings if f.kind == "too short to carry"]
    assert told.severity == "warning"
    assert told.numbers["inside"] <= 20 - 3
    assert told.numbers["asked"] == pytest.approx(6 * fastener(size).diameter)
    one = next(f for f in work.fixings if f.drive.joint.kind == "planted")
    assert one.lateral == 0.0


def thin_legs():
    leg = Leg(Stock("thin leg", thickness=14, width=70), height=900)
    return attrs.evolve(rack(), front=leg, back=leg)


def test_a_planted_rail_on_thick_legs_carries():
    work = fasten(lay_out(rack()), wood="white oak")
    planted = [f for f in work.fixings if f.drive.joint.kind == "planted"]
    assert planted
    assert all(f.full and f.lateral > 200 and len(f.driven) == 2 for f in planted)
    assert all(d.inside >= 6 * d.size.diameter - 1e-6 for f in planted for d in f.driven)


def test_the_most_specific_choice_wins():
    choices = {"notch": "No. 6", "bench": "No. 10", "bench/front rail": "glue", "butt": "nothing"}
    work = fasten(BENCH, choices)
    names = {f.guest: f.size.name for f in work.fixings if f.drive.joint.kind == "notch"}
    assert names["head rail/back rail"] == "No. 6 screw"
    assert names["bench/back rail"] == "No. 10 screw"
    assert names["bench/front rail"] == "glue"
    assert not any(f.driven for f in work.fixings if f.drive.joint.kind == "butt" and f.drive.guest.level != "bench")


def test_glue_alone_on_end_grain_is_warned_of_where_it_carries():
    work = fasten(BENCH, {"butt": "glue"})
    (told,) = [f for f in work.findings if f.kind == "glue alone"]
    assert "end grain" in told.sentence


def test_bolts_go_right_through_with_a_nut_to_spare():
    work = fasten(lay_out(rack()), {"planted": "bolt M8"})
    bolted = [d for d in work.driven if d.size.kind == "bolt"]
    assert bolted
    assert all(d.length >= d.thick + d.inside + 2 * 8 for d in bolted)
    holes = [hole for hole in work.holes("front left leg") if hole.kind == "bolt"]
    assert {round(hole.diameter, 3) for hole in holes} == {round(8 + INCH / 32, 3)}


def test_a_length_and_a_count_are_kept():
    work = fasten(lay_out(rack()), {"planted": "3 x 4.5 mm screw x 50 mm"})
    planted = [f for f in work.fixings if f.drive.joint.kind == "planted"]
    assert all(len(f.driven) == 3 and f.length == 50 for f in planted)


def test_a_screw_that_would_come_out_is_not_driven():
    work = fasten(lay_out(rack()), {"planted": "No. 8 x 4 in"})
    assert not [f for f in work.fixings if f.drive.joint.kind == "planted" and f.driven]
    assert any(f.kind == "no room for a fastener" and f.severity == "warning" for f in work.findings)


@pytest.mark.parametrize(
    ("choices", "words"),
    [
        ({"bencch": "No. 8"}, "Did you mean 'bench'"),
        ({"notch": "No. 3"}, "no wood screw No. 3"),
        ({"notch": "8"}, "is no fastener"),
        ({"notch": "No. 8 x 2"}, "says no unit"),
        ({"notch": "4.4 mm screw"}, "screws come in"),
        ({7: "No. 8"}, "7 is no joint"),
        ({"notch": None}, "None is no fastener"),
        ({"notch": "nail 9d"}, "no common nail"),
    ],
)
def test_bad_choices_are_told(choices, words):
    with pytest.raises(FastenerError, match=words):
        fasten(BENCH, choices)


def test_all_bad_choices_are_told_at_once():
    with pytest.raises(FastenerError) as caught:
        fasten(BENCH, {"notch": "x", "bencch": "No. 8"})
    assert len(caught.value.faults) == 2


def test_a_wood_that_nobody_knows_is_refused_and_none_leaves_loads_unsaid():
    with pytest.raises(LumberError):
        fasten(BENCH, wood="walnut burl")
    work = fasten(BENCH)
    assert {f.lateral for f in work.fixings} == {None}
    assert any(f.kind == "wood not said" for f in work.findings)


def test_a_frame_with_errors_is_not_fastened():
    lap = Rail(90, joint=HalfLap())
    bad = attrs.evolve(rack(), stack=[Clear(200), Level("shelf", front=lap, back=lap, left=lap, right=lap)])
    with pytest.raises(FastenerError, match="nothing is fastened"):
        fasten(lay_out(bad))


def test_measured_wood_moves_its_screws_and_no_others():
    """Measured, altered back, measured again: the same wood is fastened the same."""
    frame = DESIGNS["bench"]
    thinner = alter(frame, {"back left leg.thickness": "1 1/4 in"})
    again = alter(alter(frame, {"back left leg.thickness": "1 1/4 in"}), {})
    work, same = fasten(lay_out(thinner)), fasten(lay_out(again))
    assert [d.at for d in work.driven] == [d.at for d in same.driven]
    plain = fasten(BENCH)
    moved = {
        (old.guest, old.host)
        for old, new in zip(plain.fixings, work.fixings, strict=True)
        if [d.length for d in old.driven] != [d.length for d in new.driven]
    }
    assert all("back left leg" in host or "left rail" in guest for guest, host in moved)


def test_holes_of_a_part_are_those_of_its_fasteners():
    holes = WORK.holes("1/front left leg")
    assert {hole.part for hole in holes} == {"1/front left leg"}
    leads = [hole for hole in holes if hole.kind == "lead"]
    through = [hole for hole in holes if hole.kind == "clearance"]
    assert len(leads) == 4
    assert len(through) == 4


def test_a_wide_board_has_one_round_hole_and_one_slot_across():
    frame = Frame(
        name="Wide",
        length=900,
        depth=400,
        front=Leg(Stock("ash", thickness=45, width=70), height=500),
        back=Leg(Stock("ash", thickness=45, width=70), height=500),
        rail_stock=Stock("rail", thickness=40),
        stack=[
            Clear(),
            Level(
                "seat",
                front=90,
                back=90,
                ends=90,
                flush="front leg top",
                carries=[
                    Boards(Stock("board", thickness=20, width=100), run="across", gap=4, front=60, back=60),
                ],
            ),
        ],
    )
    work = fasten(lay_out(frame), wood="white oak")
    boards = [f for f in work.fixings if f.duty == "holds down" and len(f.driven) == 2]
    assert boards
    for own in boards:
        assert [bool(d.slot) for d in own.driven] == [False, True]
        away = abs(own.driven[1].at[0] - own.driven[0].at[0])
        # white oak, 9 to 18 %: 0.00365 each % (Wood Handbook, Table 13-5), or by Eq. 13-3 a little more
        assert own.driven[1].slot >= own.driven[1].size.clearance() + 0.00365 * 9 * away * 0.95


def test_the_schedule_counts_the_batch_with_spares():
    rows = WORK.schedule().rows
    assert sum(int(row[2]) for row in rows) == len(WORK.driven)
    assert all(int(row[3]) >= int(row[2]) * 1.1 for row in rows)
    assert "Eye protection" in " ".join(WORK.schedule().notes)
    assert "No engineering design" in " ".join(WORK.table().notes)


def test_drill_stops_add_up_to_all_holes():
    assert sum(int(row[3]) for row in WORK.drilling().rows) == 2 * len(WORK.driven)


def test_ways_to_hold_a_butted_rail_are_compared():
    ways = butt_ways(BENCH, "foot shelf/left rail", wood="western larch").ways
    by_name = {one.name: one for one in ways}
    assert by_name["screws into the end grain"].down == 0.0  # 5/8 in of wood keeps no three diameters
    assert by_name["corner block"].down > 0
    assert by_name["corner block"].off > 0
    assert by_name["dowels"].down is None
    with pytest.raises(FastenerError, match="no butt to hold"):
        butt_ways(BENCH, "foot shelf/front rail", wood="western larch")


def test_area_of_a_plain_board_and_of_a_notched_leg():
    """A board's by its three sizes; a notch open to two sides adds its two shoulders and takes its ends."""
    board = BENCH.part("head rail/board 1")
    a, b, c = board.size
    assert area(board) == pytest.approx(2 * (a * b + b * c + c * a))
    leg = BENCH.part("front left leg")
    a, b, c = leg.size
    deep, width = 5 / 8 * INCH, 3.25 * INCH
    shelf, bench = 2.75 * INCH, 3.5 * INCH
    # foot shelf: two shoulders more, two side strips less; bench: one shoulder more, two strips and a piece of end less
    expected = 2 * (a * b + b * c + c * a) + 2 * deep * width - 2 * shelf * deep
    expected += deep * width - 2 * bench * deep - deep * width
    assert area(leg) == pytest.approx(expected)


def test_supplies_take_more_finish_for_more_coats_and_refuse_none():
    one, two = (supplies(BENCH, WORK, coats=n).finish for n in (1, 2))
    assert one < two < 2 * one + 1e-9
    assert any("No. 8 screw" in row[0] for row in supplies(BENCH, WORK).table().rows)
    for bad in ({"coats": 0}, {"coats": True}, {"coverage": 0}, {"coverage": float("nan")}):
        with pytest.raises(FastenerError):
            supplies(BENCH, WORK, **bad)


GRAVITIES = st.floats(0.30, 0.70)


@given(st.lists(GRAVITIES, min_size=2, max_size=2).map(sorted), st.floats(2, 9), st.floats(5, 60))
def test_denser_wood_never_holds_less_and_a_longer_thread_never_less(gravities, diameter, thread):
    light, heavy = screw_withdrawal(gravities, diameter, thread)
    assert light <= heavy
    assert screw_withdrawal(gravities[0], diameter, thread) <= screw_withdrawal(gravities[0], diameter, thread + 5)
    a, b = (yield_modes(diameter, thread, g, g, 600.0).min() for g in gravities)
    assert a <= b + 1e-9


@given(st.floats(2, 9))
def test_no_rule_lets_what_is_pushed_stand_nearer_than_what_is_not(diameter):
    for rule in (lead_holes(diameter), bolts(diameter), no_lead_holes(diameter, 400), no_lead_holes(diameter, 480)):
        assert rule.loaded_edge >= rule.edge
        assert rule.loaded_end >= rule.end
        assert rule.edge > 0
        assert rule.in_row >= rule.rows - 1e-9


def test_slimmer_screws_come_after_the_usual_one():
    sizes = [screw(n).diameter for n in (4, 6, 8, 10, 12)]
    assert all(a < b for a, b in itertools.pairwise(sizes))
