"""Putting it together: an order that can be done, its steps, what is square, carried and mended, how long it takes."""

from __future__ import annotations

import random

import attrs
import pytest
from designs import DESIGNS
from paper_reader.checking import faults

from benchjoin import Hands, alter, assembly, bind, fasten, lay_out
from benchjoin.drafting.primitives import Line, Text
from benchjoin.drawings.lists.assembly_sheet import assembly_sheets
from benchjoin.errors import AddressError, AssemblyError, DescriptionError, LengthError
from benchjoin.frame.design.file import read_design, write_design
from benchjoin.shop.assembly.carrying import passes
from benchjoin.shop.budget.error_budget import error_budget
from benchjoin.solids import Box

LAYOUT = lay_out(DESIGNS["bench"])
WORK = fasten(LAYOUT, wood="western larch")
PLAN = assembly(LAYOUT, fastening=WORK)


def order_of(plan):
    return [move.parts for move in plan.moves]


def singly(plan):
    """Parts that go into the piece one by one."""
    return [move.parts[0] for move in plan.moves if move.into == "the piece" and len(move.parts) == 1]


class TestOrder:
    def test_the_same_frame_gives_the_same_order(self):
        again = assembly(lay_out(DESIGNS["bench"]), fastening=fasten(lay_out(DESIGNS["bench"]), wood="western larch"))
        assert order_of(again) == order_of(PLAN)

    def test_what_does_not_touch_the_blocking_does_not_touch_the_order(self):
        longer = assembly(lay_out(alter(DESIGNS["bench"], {"length": "58 in"})), wood="western larch")
        assert order_of(longer) == order_of(PLAN)
        assert PLAN.moved_from(longer).rows == ()

    def test_ends_are_put_together_and_the_long_rails_close_them(self):
        plan = assembly(LAYOUT, "ends first", fastening=WORK)
        left = [move.parts[0] for move in plan.moves if move.into == "left end"]
        assert sorted(left) == ["back left leg", "bench/left rail", "foot shelf/left rail", "front left leg"]
        place = {name: n for n, move in enumerate(plan.moves) for name in move.parts if move.into == "the piece"}
        assert place["right end" if "right end" in place else "front right leg"] < place["bench/front rail"]

    def test_heads_that_a_rail_covers_are_driven_before_it(self):
        """Screws through the leg into an end rail lie in the floor of the front rail's notch."""
        step = PLAN.step_of("bench/front rail")
        fixing = next(f for f in WORK.fixings if (f.guest, f.host) == ("bench/left rail", "front left leg"))
        assert "bench/front rail" in fixing.before
        driven = next(one for one in PLAN.steps if fixing in one.fixings)
        assert driven.number < step.number
        assert not [one for one in PLAN.findings if one.severity == "warning"]

    def test_what_the_maker_prescribes_wins(self):
        names = singly(assembly(LAYOUT, "part by part", fastening=WORK))
        plan = assembly(LAYOUT, names, fastening=WORK)
        assert singly(plan) == names
        assert plan.begin == "as prescribed"

    def test_a_prescribed_order_that_cannot_be_names_the_first_part_that_is_blocked(self):
        names = singly(assembly(LAYOUT, "part by part", fastening=WORK))
        late = [*(name for name in names if name != "foot shelf/board 1"), "foot shelf/board 1"]
        with pytest.raises(AssemblyError, match=rf"foot shelf/board 1 is number {len(late)} .* cannot go in") as error:
            assembly(LAYOUT, late, fastening=WORK)
        assert error.value.part == "foot shelf/board 1"
        assert error.value.blocked

    def test_an_order_names_every_part_once(self):
        with pytest.raises(
            AssemblyError, match=r"'sofa' is no part of it; front left leg is there twice; .* are missing"
        ):
            assembly(LAYOUT, ["front left leg", "front left leg", "sofa"])
        with pytest.raises(AssemblyError, match="ends first, rows first, part by part"):
            assembly(LAYOUT, "top first")

    def test_ends_that_cannot_be_closed_say_who_is_in_the_way(self):
        """The stand's middle rails stand over boards that are cut round its legs."""
        with pytest.raises(AssemblyError, match=r"boot rack/board 1 cannot be put in.*seat/cross rail 1"):
            assembly(lay_out(DESIGNS["stand"]), "ends first", wood="western larch")

    def test_a_rail_with_heads_behind_both_legs_is_trapped_and_the_way_out_is_told(self):
        with pytest.raises(AssemblyError, match=r"cannot be put in.*Make its joint .* a notch that is open") as error:
            assembly(locked(LAYOUT))
        assert error.value.blocked

    def test_the_frame_and_its_file_prescribe_how_it_is_begun(self, tmp_path):
        frame = attrs.evolve(DESIGNS["bench"], order="rows first")
        assert assembly(lay_out(frame), fastening=fasten(lay_out(frame))).begin == "rows first"
        path = tmp_path / "bench.toml"
        path.write_text(write_design(frame), encoding="utf-8")
        assert 'order = "rows first"' in path.read_text(encoding="utf-8")
        assert read_design(path) == frame
        with pytest.raises(DescriptionError, match="order"):
            attrs.evolve(frame, order="sideways")

    def test_another_order_is_told_part_by_part(self):
        other = assembly(LAYOUT, "rows first", fastening=WORK)
        moved = PLAN.moved_from(other)
        assert moved.rows
        assert moved.columns == ("Part", "Was", "Is")


def locked(layout):
    """A layout whose upper front rail goes through holes of both front legs and is thicker on all sides of them."""
    rail, left, right = (layout.part(name) for name in ("bench/front rail", "front left leg", "front right leg"))
    z0, z1 = rail.blank.low[2], rail.blank.high[2]
    y = (left.blank.low[1] + left.blank.high[1]) / 2
    hole = {"y": (y - 5, y + 5), "z": (z0 + 30, z0 + 50)}
    blank = Box((left.blank.low[0] - 60, y - 15, z0), (right.blank.high[0] + 60, y + 15, z1))
    cut = next(own for own in left.cuts if own.mate == rail.identity)
    waist, bored = [], {}
    for leg in (left, right):
        a, b = leg.blank.low[0], leg.blank.high[0]
        through = Box((a, hole["y"][0], hole["z"][0]), (b, hole["y"][1], hole["z"][1]))
        kept = tuple(own for own in leg.cuts if own.mate != rail.identity)
        bored[leg.name] = attrs.evolve(leg, cuts=(*kept, attrs.evolve(cut, part=leg.identity, box=through)))
        for low, high in (
            ((a, y - 15, z0), (b, y + 15, hole["z"][0])),
            ((a, y - 15, hole["z"][1]), (b, y + 15, z1)),
            ((a, y - 15, z0), (b, hole["y"][0], z1)),
            ((a, hole["y"][1], z0), (b, y + 15, z1)),
        ):
            waist.append(attrs.evolve(cut, part=rail.identity, mate=leg.identity, box=Box(low, high)))
    own = attrs.evolve(rail.standing(blank), cuts=tuple(waist))
    parts = tuple({rail.name: own, **bored}.get(part.name, part) for part in layout.parts)
    return attrs.evolve(layout, parts=parts)


class TestSquare:
    def test_diagonals_are_those_of_the_outer_corners(self):
        """By Pythagoras: 57 in over the legs, front legs 35 1/2 in; the plan 57 by 23."""
        inch = 25.4
        found = {one.face: one for one in PLAN.diagonals()}
        assert found["front"].reads == pytest.approx((57**2 + 35.5**2) ** 0.5 * inch)
        assert found["left end"].reads == pytest.approx((23**2 + 35.5**2) ** 0.5 * inch, rel=2e-3)
        assert found["plan, at the feet"].reads == pytest.approx((57**2 + 23**2) ** 0.5 * inch, rel=2e-3)

    def test_what_they_may_differ_by_holds_the_differences_of_a_thousand_benches(self):
        """Marks off by up to what the error budget says, each by itself: none differs by more than the worst."""
        budget = error_budget(LAYOUT)
        terms = [term.size for term in budget.ways["tape, mark to mark"][-1].terms if not term.shared]
        front = next(one for one in PLAN.diagonals() if one.face == "front")
        dice = random.Random(7)
        seen = []
        for _ in range(1000):
            off = sum(dice.uniform(-own, own) for own in terms) - sum(dice.uniform(-own, own) for own in terms)
            seen.append(abs((front.wide**2 + (front.high + off) ** 2) ** 0.5 - front.reads))
        assert max(seen) <= front.worst
        assert front.likely < front.worst
        assert sum(own > front.likely for own in seen) < 120  # of uniform errors one in twelve is beyond

    def test_the_list_has_room_to_write(self):
        assert PLAN.square().columns[-2:] == ("One", "Other")


class TestCarrying:
    def test_sub_assemblies_and_the_whole_weigh_what_their_parts_do(self):
        whole = {one.name: one for one in PLAN.carried(wood="western larch")}
        ends = [own for name, own in whole.items() if name.endswith("end")]
        assert 0 < sum(own.weight for own in ends) < whole["the piece"].weight
        assert whole["the piece"].people == 2
        assert all(own.people == 1 for own in ends)

    def test_a_door_takes_what_two_of_its_sides_pass(self):
        assert passes((1800.0, 400.0, 1680.0), (750.0, 2000.0))
        assert not passes((1800.0, 800.0, 1680.0), (750.0, 1600.0))
        told = PLAN.delivery(door=("20 in", "60 in"), wood="western larch").text()
        assert "does not pass the door" in told
        assert "left end" in told
        with pytest.raises(LengthError):
            PLAN.delivery(door=("20", "60 in"), wood="western larch")

    def test_what_comes_off_first_can_come_off_in_that_order(self):
        """Each that is named leaves before the part does, and meets nothing when it is its turn."""
        plan = assembly(lay_out(DESIGNS["stand"]), wood="western larch")
        groups = [
            {p.identity for p in plan.layout.piece(1) if p.slot.group == g}
            for g in {p.slot.group for p in plan.layout.piece(1)}
            if g
        ]
        names = [part.identity for part in plan.layout.piece(1)]
        for part in names:
            there = next((set(own) for own in groups if part in own), set(names))
            for gone in (*plan.comes_off(part), part):
                assert plan._blocking.free_ways([gone], there - {gone}), (part, gone)
                there.discard(gone)

    def test_no_such_part(self):
        with pytest.raises(AddressError):
            PLAN.comes_off("sofa")


class TestHours:
    def test_the_maker_s_own_minutes_are_taken(self):
        slow = PLAN.hours(Hands(screw=2.0)).total() - PLAN.hours(Hands(screw=1.0)).total()
        driven = sum(len(f.driven) for f in WORK.fixings)
        assert slow == pytest.approx(driven / 60)

    def test_several_at_once_share_what_is_set_up(self):
        hours = PLAN.hours()
        assert hours.total(3) < 3 * hours.total(1)
        assert hours.total(3) == pytest.approx(hours.total())

    def test_minutes_that_are_none_are_refused(self):
        with pytest.raises(DescriptionError):
            Hands(screw=-1)

    def test_days_go_on_until_all_is_done(self):
        rows = PLAN.hours(Hands(day=4.0)).days().rows
        last = int(rows[-1][1].split()[-1])
        assert last == -(-PLAN.hours().total() // 4)


class TestOnPaper:
    def test_every_step_has_its_figure_a_box_to_tick_and_its_marks(self):
        sheets = assembly_sheets(PLAN)
        titles = [item.string for sheet in sheets for item in sheet.drawing if isinstance(item, Text) and item.bold]
        for step in PLAN.steps:
            assert any(title.startswith(f"{step.number}. ") for title in titles)
        boxes = [
            item
            for sheet in sheets
            for item in sheet.drawing
            if isinstance(item, Line) and item.closed and len(item.points) == 4
        ]
        assert len(boxes) >= len(PLAN.steps)

    @pytest.mark.parametrize(
        "name", ["tools", *(pytest.param(n, marks=pytest.mark.slow) for n in ("bench", "stand", "rack"))]
    )
    def test_paper_of_the_steps_has_no_clash(self, name, tmp_path):
        layout = lay_out(DESIGNS[name])
        plan = assembly(layout, wood="western larch")
        path = bind(layout, tmp_path / "binder.pdf", only=["assembly", "findings"], assembly=plan, appendix=None)
        assert not list(faults(path.read_bytes()))

    def test_a_slider_goes_over_the_steps(self):
        from benchjoin.notebook import step_through

        shown = step_through(PLAN)
        first = shown.view.value
        shown.slider.value = 5
        assert shown.view.value != first
        assert "5." in shown.view.value
