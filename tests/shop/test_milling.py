"""The milling plan: blanks, batches, what to expect, what the maker is told."""

from __future__ import annotations

import csv
import io
from collections import Counter
from fractions import Fraction

import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from hypothesis import given
from hypothesis import strategies as st
from samples import SAMPLES

from benchjoin import Clear, Frame, Leg, Level, Stock, alter, lay_out, milling_plan
from benchjoin.errors import MillingError
from benchjoin.shop.milling.batches import Item, blank_length, rough_blanks
from benchjoin.shop.milling.milling import Milling
from benchjoin.trade.allowances import INCH_MILLING, METRIC_MILLING

STARTS = {
    "larch 2x4, milled": Stock.dressed("2x4"),
    "larch 1x6, planed": Stock("trim", thickness="7/8 in", width="5 1/2 in", state="rough on one face"),
}
DESIGNS = {"bench": bench, "rack": rack, **SAMPLES}


def inches(text):
    return float(sum(map(Fraction, text.split()))) * 25.4


@pytest.fixture(scope="module")
def plan():
    return milling_plan(lay_out(bench), starts=STARTS)


def kinds(plan):
    return [finding.kind for finding in plan.findings]


# --- batches and blanks ---


def test_what_finishes_at_one_thickness_goes_through_the_planer_together_the_thickest_first(plan):
    assert [(batch.number, batch.thickness) for batch in plan.batches] == [(1, 33.3375), (2, 15.875)]
    assert [round(line.width / 25.4, 6) for line in plan.batches[1].lines] == [5.25, 4.25, 3.5, 2.75]


@pytest.mark.parametrize("name", DESIGNS)
def test_every_part_is_in_one_blank_once(name):
    layout = lay_out(DESIGNS[name])
    plan = milling_plan(layout)
    milled = [
        item.name
        for batch in plan.batches
        for line in batch.lines
        for blank in line.blanks
        for item in blank.items
        if item.part
    ]
    assert sorted(milled) == sorted(part.name for part in layout.parts)


@pytest.mark.parametrize("name", DESIGNS)
def test_no_blank_is_shorter_than_the_machines_allow(name):
    practice = Milling(jointer_least=380, planer_least=450)
    plan = milling_plan(lay_out(DESIGNS[name]), practice=practice)
    lengths = [blank.length for batch in plan.batches for line in batch.lines for blank in line.blanks]
    assert min(lengths) >= 450


def test_the_longer_least_length_of_the_two_machines_counts():
    assert Milling(jointer_least="10 in", planer_least="15 in").least == 15 * 25.4
    assert Milling(jointer_least="20 in", planer_least="15 in").least == 20 * 25.4


def test_a_spare_leg_of_the_longest_is_milled_with_the_legs_and_a_test_piece_with_each_batch(plan):
    spares = [(b.number, i.name, i.length) for b in plan.batches for n in b.lines for i in n.items if not i.part]
    assert spares == [(1, "spare leg", 70 * 25.4), (1, "test piece", 8 * 25.4), (2, "test piece", 8 * 25.4)]
    none = milling_plan(lay_out(bench), practice=Milling(spare_legs=0, test_pieces=0))
    assert all(i.part for b in none.batches for n in b.lines for i in n.items)


def test_rough_lengths_have_the_allowance_at_both_ends(plan):
    # 70 in and 3/4 in at each end; 20 3/8 in end rails
    lengths = Counter(round(k.length / 25.4, 4) for b in plan.batches for n in b.lines for k in n.blanks)
    assert lengths == {71.5: 7, 37.0: 6, 58.5: 18, 21.875: 12, 14.0: 2}


def test_short_parts_stay_together_in_one_blank():
    # five of 6 in under a least length of 14: 6+6 and 1/4 between and 3/4 at each end make 13 3/4, so three: 20 in;
    # the two that are left join them
    items = [Item(name=f"{n}/x", mark=f"A{n}", length=6 * 25.4) for n in range(1, 6)]
    (blank,) = rough_blanks(items, INCH_MILLING)
    assert len(blank.items) == 5
    assert blank.length / 25.4 == pytest.approx(5 * 6 + 4 * 0.25 + 1.5)
    assert not blank.padded


def test_a_short_part_alone_is_left_on_a_piece_that_is_long_enough():
    (blank,) = rough_blanks([Item(name="1/x", mark="A1", length=6 * 25.4)], INCH_MILLING)
    assert blank.length == 14 * 25.4
    assert blank.padded


@given(st.lists(st.floats(10, 1500), max_size=12))
def test_blanks_hold_all_items_and_reach_the_least_length(lengths):
    items = [Item(name=str(n), mark="", length=length) for n, length in enumerate(lengths)]
    blanks = list(rough_blanks(items, METRIC_MILLING))
    assert sorted(item.name for blank in blanks for item in blank.items) == sorted(item.name for item in items)
    for blank in blanks:
        assert blank.length >= METRIC_MILLING.least - 1e-6
        assert blank.length >= blank_length(blank.items, METRIC_MILLING) - 1e-6
        assert len(blank.items) == 1 or all(item.length < METRIC_MILLING.least for item in blank.items)


# --- what to expect ---


def test_clean_sizes_follow_from_the_start_by_common_practice(plan):
    legs, rails = plan.batches
    assert legs.clean == pytest.approx(inches("1 3/8"))
    assert legs.lines[0].clean == pytest.approx(inches("3 3/8"))
    assert rails.clean == pytest.approx(inches("3/4"))
    assert rails.lines[0].clean == pytest.approx(inches("5 3/8"))


def test_a_stock_that_knows_its_start_needs_no_telling():
    leg = Stock.dressed("2x4", species="western larch").milled()
    frame = alter(bench, {"front.stock": leg, "back.stock": leg, "rail_stock": Stock.dressed("1x6")})
    plan = milling_plan(lay_out(frame))
    assert [batch.source.name for batch in plan.batches] == ["western larch 2x4, dressed", "1x6, dressed"]
    assert plan.batches[1].as_bought
    assert plan.findings == ()


def test_a_start_that_is_smaller_than_drawn_is_an_error():
    plan = milling_plan(lay_out(bench), starts={"larch 2x4, milled": Stock("thin", thickness="1 1/4 in", width="4 in")})
    (found,) = [finding for finding in plan.findings if finding.severity == "error"]
    assert found.kind == "not thick enough"
    assert "1/16 in too little" in found.sentence
    assert found.numbers == pytest.approx({"start": 31.75, "drawn": 33.3375})


def test_a_start_that_may_not_clean_up_is_a_warning_with_the_amount():
    # 1 7/16 dressed is clean at 1 5/16: just enough; 1 3/8 at 1 1/4: 1/16 less than drawn
    enough = Stock("x", thickness="1 7/16 in", width="4 in", state="dressed")
    little = Stock("x", thickness="1 3/8 in", width="4 in", state="dressed")
    assert "may not clean up thick" not in kinds(milling_plan(lay_out(bench), starts={"larch 2x4, milled": enough}))
    plan = milling_plan(lay_out(bench), starts={"larch 2x4, milled": little})
    (found,) = [finding for finding in plan.findings if finding.kind == "may not clean up thick"]
    assert (found.severity, "1/16 in less" in found.sentence) == ("warning", True)


def test_where_nobody_said_the_start_the_plan_says_what_would_do():
    plan = milling_plan(lay_out(bench))
    notes = [finding for finding in plan.findings if finding.kind == "start not said"]
    assert [finding.where for finding in notes] == list(STARTS)
    # 1 5/16 and 1/8 for each of two sawn sides
    assert notes[0].numbers["thickness"] == pytest.approx(inches("1 9/16"))


@pytest.mark.parametrize(
    "habit, kind",
    [
        ({"thinnest": "3/4 in"}, "too thin"),
        ({"jointer_width": "5 in"}, "too wide for the jointer"),
        ({"planer_width": "5 in"}, "too wide for the planer"),
        ({"planer_least": "30 in"}, "short parts"),
    ],
)
def test_what_a_machine_does_not_take_is_a_warning(habit, kind, plan):
    assert kind not in kinds(plan)
    assert kind in kinds(milling_plan(lay_out(bench), starts=STARTS, practice=Milling(**habit)))


def test_a_blank_that_is_longer_than_the_wood_is_an_error():
    short = milling_plan(lay_out(bench), starts={"larch 2x4, milled": Stock.dressed("2x4", length="71 in")})
    assert "not long enough" in kinds(short)
    enough = milling_plan(lay_out(bench), starts={"larch 2x4, milled": Stock.dressed("2x4", length="6 ft")})
    assert "not long enough" not in kinds(enough)


@pytest.mark.parametrize("starts", [{"oak": Stock.dressed("2x4")}, {"larch 2x4, milled": "2x4"}])
def test_a_start_of_no_stock_of_the_design_is_refused(starts):
    with pytest.raises(MillingError, match="larch 2x4, milled"):
        milling_plan(lay_out(bench), starts=starts)


# --- what it says ---


def words(plan, number):
    return " ".join(step for batch, _, step in plan.steps().rows if batch == str(number))


def test_faces_and_edges_are_worked_in_the_order_of_the_trade(plan):
    told = words(plan, 1)
    order = ["Cross-cut", "Flatten one face", "Straighten one edge", "Plane the other face", "Rip to width", "Measure"]
    assert [told.index(step) for step in order] == sorted(told.index(step) for step in order)
    assert "down to 1 5/16 in" in told


def test_of_trim_that_is_rough_on_one_face_only_the_rough_face_is_planed(plan):
    assert "Flatten one face" not in words(plan, 2)
    assert "Plane the rough face" in words(plan, 2)


def test_faces_that_are_used_as_bought_are_left_alone():
    plan = milling_plan(lay_out(alter(bench, {"rail_stock": Stock.dressed("1x6")})))
    rails = next(batch for batch in plan.batches if batch.as_bought)
    assert "Plane the" not in words(plan, rails.number)
    assert "Leave the faces" in words(plan, rails.number)


def test_the_table_counts_the_blanks_and_names_their_parts(plan):
    rows = [row for row in plan.table().rows if row[0] == "1"]
    assert [(row[5], row[6], row[7]) for row in rows] == [
        ("6", "71 1/2", "A3, A4, B3, B4, C3, C4"),
        ("1", "71 1/2", "spare leg"),
        ("6", "37", "A1, A2, B1, B2, C1, C2"),
        ("1", "14", "test piece"),
    ]
    assert rows[0][1:5] == ("2x4, dressed", "1 1/2 × 3 1/2", "1 3/8 × 3 3/8", "1 5/16 × 3 1/4")
    assert {row[1:5] for row in rows[1:]} == {("", "", "", "1 5/16 × 3 1/4")}


def test_short_parts_in_one_blank_are_told():
    stand = Frame(
        name="Stand",
        length=1000,
        depth=250,
        front=Leg(Stock("ash", thickness=30, width=50), height=900),
        back=Leg(Stock("ash", thickness=30, width=50), height=900),
        rail_stock=Stock("ash lath", thickness=18),
        stack=[Clear(100), Level("shelf", front=60, back=60, ends=60)],
        tape="1 mm",
    )
    plan = milling_plan(lay_out(stand))
    # end rails of 190 between legs, a test piece of 200: 200 + 190 + 190 and two cuts of 6 and 20 at each end
    row = next(row for row in plan.table().rows if "in one blank" in row[7])
    assert row[5:] == ("1", str(200 + 190 + 190 + 2 * 6 + 2 * 20), "A7, A8, test piece, up to 3 in one blank")
    assert "Cut the short parts apart only after that." in words(plan, 2)


def test_every_part_and_spare_has_a_line_to_write_on(plan):
    rows = plan.measuring().rows
    assert [row[1] for row in rows].count("spare leg") == 1
    assert {row[1] for row in rows} >= {part.name for part in plan.layout.parts}
    assert {row[5:] for row in rows} == {("", "")}


def test_what_was_measured_already_stands_on_its_line():
    plan = milling_plan(lay_out(alter(bench, {"2/back left leg.width": "3 3/16 in", "bench/front rail.width": "3 in"})))
    found = {row[1]: row[5:] for row in plan.measuring().rows}
    assert found["2/back left leg"] == ("", "3 3/16")
    assert [found[f"{n}/bench/front rail"] for n in (1, 2, 3)] == [("", "3")] * 3


def test_the_list_of_sizes_names_its_unit_in_every_heading_of_sizes(plan):
    heads = next(csv.reader(io.StringIO(plan.csv())))
    assert heads[3:] == [
        "Drawn thickness (in)",
        "Drawn width (in)",
        "Measured thickness (in)",
        "Measured width (in)",
    ]
    assert "Measured width (mm)" in milling_plan(lay_out(rack)).csv()
    assert plan.csv().count("\r\n") == len(plan.layout.parts) + 1


def test_a_plan_for_very_many_pieces_still_has_one_row_for_blanks_that_are_alike():
    few, many = (milling_plan(lay_out(alter(bench, {"quantity": n})), starts=STARTS) for n in (3, 60))
    assert len(many.table().rows) == len(few.table().rows)
    assert max(len(row[7]) for row in many.table().rows) < 120
    assert len(many.measuring().rows) == 60 * 14 + 3
