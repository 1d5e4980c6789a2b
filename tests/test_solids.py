"""Boxes, placements and slabs: what is left and what is cut make the blank."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from benchjoin.solids import Box, Placement, boxes, cross, left_over, placement, slabs, volume

SIZE = (9, 7, 5)  # the blank of the grid checks, in cells
AXES = [(1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1)]
TURNS = [(a, b) for a, b in itertools.product(AXES, AXES) if not any(x * y for x, y in zip(a, b, strict=True))]


@st.composite
def blocks(draw):
    """Boxes with whole-numbered corners, some of them beyond the blank."""
    spans = [sorted(draw(st.tuples(st.integers(-2, n + 2), st.integers(-2, n + 2)))) for n in SIZE]
    return Box(tuple(s[0] for s in spans), tuple(s[1] for s in spans))


def cells(cuts):
    """How many unit cells of the blank lie in none of the boxes, counted one by one."""
    return sum(
        not any(all(low <= n < high for low, n, high in zip(cut.low, cell, cut.high, strict=True)) for cut in cuts)
        for cell in itertools.product(*map(range, SIZE))
    )


class TestWhatIsLeftAndWhatIsCutMakeTheBlank:
    """design, rules of layout 3: "each part is its blank less the union of its cuts"."""

    @given(st.lists(blocks(), max_size=5))
    def test_slabs_hold_the_cells_that_no_cut_takes(self, cuts):
        left = slabs(shapely.box(0, 0, *SIZE[:2]), SIZE[2], cuts)
        assert volume(left) == pytest.approx(cells(cuts), abs=1e-9)

    @given(st.lists(blocks(), max_size=5))
    def test_left_over_counts_the_same_cells(self, cuts):
        assert left_over(Box((0, 0, 0), SIZE), cuts) == pytest.approx(cells(cuts), abs=1e-9)

    @given(st.lists(blocks(), max_size=5))
    def test_boxes_hold_each_of_these_cells_once(self, cuts):
        found = boxes(Box((0, 0, 0), SIZE), cuts)
        assert sum(box.volume() for box in found) == cells(cuts)
        assert all(one.meet(other) is None for one, other in itertools.combinations(found, 2))
        assert all(box.meet(cut) is None for box in found for cut in cuts)

    @given(st.lists(blocks(), max_size=5))
    def test_slabs_stand_on_each_other_from_the_marked_face_to_the_other(self, cuts):
        found = slabs(shapely.box(0, 0, *SIZE[:2]), SIZE[2], cuts)
        assert (found[0].low, found[-1].high) == (0, SIZE[2])
        assert all(below.high == above.low for below, above in itertools.pairwise(found))

    @given(blocks(), blocks())
    def test_two_cuts_take_both_less_what_they_share(self, one, other):
        blank = Box((0, 0, 0), SIZE)
        inside = [blank.meet(one), blank.meet(other)]
        shared = inside[0].meet(inside[1]) if all(inside) else None
        taken = sum(box.volume() for box in inside if box) - (shared.volume() if shared else 0)
        assert left_over(blank, [one, other]) == pytest.approx(9 * 7 * 5 - taken, abs=1e-9)


def test_a_notched_leg_keeps_its_wood_by_hand():
    # by hand: 900 × 80 × 35 = 2 520 000 less two notches 70 × 80 × 16 = 89 600 each
    notches = [Box((100, 0, 0), (170, 80, 16)), Box((500, -1, -1), (570, 81, 16))]
    found = slabs(shapely.box(0, 0, 900, 80), 35, notches)
    assert [(slab.low, slab.high) for slab in found] == [(0, 16), (16, 35)]
    assert volume(found) == pytest.approx(2_520_000 - 2 * 89_600)


def test_a_shaped_outline_loses_only_what_is_inside_it():
    # by hand: a triangle of 100 × 40 / 2 = 2000 on 20; a cut over its right half takes a triangle of 50 × 20 / 2
    triangle = shapely.Polygon([(0, 0), (100, 0), (0, 40)])
    found = slabs(triangle, 20, [Box((50, 0, 0), (100, 40, 20))])
    assert volume(found) == pytest.approx((2000 - 500) * 20)


def test_cuts_that_end_a_breath_apart_make_one_slab():
    found = slabs(shapely.box(0, 0, 10, 10), 10, [Box((0, 0, 0), (5, 5, 4)), Box((5, 5, 0), (9, 9, 4 + 5e-7))])
    assert [slab.low for slab in found] == [0, 4]


def test_touching_is_not_sharing():
    box = Box((0, 0, 0), (10, 10, 10))
    assert box.meet(Box((10, 0, 0), (20, 10, 10))) is None
    assert box.meet(Box((10 - 5e-7, 0, 0), (20, 10, 10))) is None
    assert box.meet(Box((9, 8, 7), (20, 20, 20))) == Box((9, 8, 7), (10, 10, 10))


def test_a_box_is_clipped_along_one_axis_only():
    assert Box((0, 0, 0), (10, 20, 30)).within(1, 5, 99) == Box((0, 5, 0), (10, 20, 30))


def test_a_box_turned_inside_out_holds_nothing():
    assert Box((0, 0, 0), (10, -1, 10)).volume() == 0
    assert Box((0, 0, 0), (2, 3, 4)).volume() == 24
    assert Box((1, 1, 1), (3, 4, 5)).size() == (2, 3, 4)


def test_every_turn_of_a_part_is_tried():
    assert len(TURNS) == 24  # six faces, four ways up


class TestTheFrameOfAPart:
    """solids: "seen with the marked face up and u to the right, v points up the page"."""

    @pytest.mark.parametrize("along, out", TURNS)
    def test_u_and_v_turn_towards_you_out_of_the_marked_face(self, along, out):
        place = placement(Box((10, 20, 30), (110, 60, 50)), along=along, out=out)
        assert tuple(np.cross(place.u, place.v)) == out
        assert cross(place.u, place.v) == out
        assert place.u == along
        assert tuple(-c for c in place.w) == out

    @pytest.mark.parametrize("along, out", TURNS)
    def test_the_blank_lies_at_zero_in_its_own_frame(self, along, out):
        world = Box((10, 20, 30), (110, 60, 50))  # 100 × 40 × 20
        local = placement(world, along=along, out=out).local(world)
        assert local.low == (0, 0, 0)
        assert sorted(local.high) == [20, 40, 100]
        assert local.high[0] == sum(abs(a) * size for a, size in zip(along, (100, 40, 20), strict=True))

    @pytest.mark.parametrize("along, out", TURNS)
    def test_the_marked_face_is_the_one_that_looks_out(self, along, out):
        world = Box((10, 20, 30), (110, 60, 50))
        place = placement(world, along=along, out=out)
        axis = next(i for i, c in enumerate(out) if c)
        assert place.point((1, 1, 0))[axis] == (world.high if sum(out) > 0 else world.low)[axis]

    @given(st.sampled_from(TURNS), blocks())
    def test_there_and_back_again(self, turn, box):
        place = placement(Box((0, 0, 0), SIZE), along=turn[0], out=turn[1])
        assert place.world(place.local(box)) == box
        assert place.local(place.world(box)) == box


def test_a_leg_seen_from_the_front_is_measured_from_its_foot():
    # by hand: front face out (−y), foot down; v points left to right turned round: u up, out towards you, so v is −x
    place = placement(Box((100, 0, 0), (145, 20, 900)), along=(0, 0, 1), out=(0, -1, 0))
    assert place == Placement(origin=(145, 0, 0), u=(0, 0, 1), v=(-1, 0, 0), w=(0, 1, 0))
    assert place.point((0, 0, 0)) == (145, 0, 0)
    assert place.point((900, 45, 20)) == (100, 20, 900)
