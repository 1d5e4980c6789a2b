"""Running dimensions: figures rise from the origin and never lie on each other nor on a line."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchjoin.drafting.dimensions.running import place_running, running
from benchjoin.drafting.dimensions.spread import spread
from benchjoin.drafting.dimensions.style import STYLE, DimensionStyle
from benchjoin.drafting.primitives import Disc, Fill, Line, Text, bounds, text_box
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.errors import PaperError

SIDES = [("y", "left"), ("y", "right"), ("x", "above"), ("x", "below")]
LABELS = ["7", "11 1/4", "35 1/2 full", "127 15/16 scant", "(3)", "902.5"]
marks = st.lists(st.tuples(st.floats(-40, 200), st.sampled_from(LABELS)), min_size=0, max_size=40)


def texts(drawing):
    return [item for item in drawing if isinstance(item, Text)]


@given(values=marks, side=st.sampled_from(SIDES), row=st.integers(0, 3))
@settings(max_examples=200, deadline=None)
def test_no_figure_ever_lies_on_another_or_on_a_line(values, side, row):
    drawing = running(values, origin=(20, 10), axis=side[0], side=side[1], outline=30, row=row)
    assert clashes(drawing) == []


@given(values=marks, side=st.sampled_from(SIDES))
@settings(max_examples=100, deadline=None)
def test_every_value_is_written_and_in_rising_order(values, side):
    axis = 0 if side[0] == "x" else 1
    drawing = running(values, origin=(0, 0), axis=side[0], side=side[1], outline=0)
    found = sorted(texts(drawing), key=lambda t: text_box(t).centroid.coords[0][axis])
    wanted = sorted({*((float(at), label) for at, label in values), (0.0, "0")})
    assert {t.string for t in found} == {label for _, label in wanted}
    if len({at for at, _ in wanted}) == len(wanted) and all(b - a > 1e-5 for (a, _), (b, _) in pairwise(wanted)):
        assert [t.string for t in found] == [label for _, label in wanted]


def test_figures_with_room_stand_at_their_extension_lines():
    values = [(30, "7"), (60, "11 1/4"), (100, "32")]
    placed = place_running(values, origin=(0, 0), axis="y", side="right", outline=50)
    assert [figure.place for figure in placed.figures] == [0, 30, 60, 100]
    assert placed.bend == 0
    assert placed.line == 60


def test_crowded_figures_move_apart_and_their_lines_follow():
    values = [(30, "7"), (31, "7 1/8"), (32, "7 1/4")]
    placed = place_running(values, origin=(0, 0), axis="y", side="right", outline=50)
    places = [figure.place for figure in placed.figures]
    assert places[2] == pytest.approx(31)  # the middle one stays
    assert places[3] - places[2] == pytest.approx(places[2] - places[1])
    assert placed.bend > 0


def test_the_origin_has_a_circle_and_a_nought():
    drawing = running([(50, "20")], origin=(5, 9), axis="y", side="left", outline=0)
    circles = [item for item in drawing if isinstance(item, Disc) and not item.filled]
    assert [circle.centre for circle in circles] == [(-10, 9)]
    assert [t.string for t in texts(drawing)] == ["0", "20"]


def test_arrows_point_away_from_the_origin_and_give_way_to_dots():
    drawing = running([(-30, "a"), (30, "b"), (31, "c")], origin=(0, 0), axis="x", side="below", outline=0)
    tips = [item.rings[0][0] for item in drawing if isinstance(item, Fill)]
    assert sorted(tips) == [(-30, -10), (30, -10)]
    for item in drawing:
        if isinstance(item, Fill):
            (tip, left, right) = item.rings[0]
            assert abs(left[0]) < abs(tip[0])  # the body lies on the origin's side
            assert math.dist(left, right) < STYLE.arrow
    assert [item.centre for item in drawing if isinstance(item, Disc) and item.filled] == [(31, -10)]


def test_extension_lines_start_off_the_outline():
    drawing = running([(50, "20")], origin=(0, 0), axis="y", side="right", outline=40)
    assert min(x for item in drawing if isinstance(item, Line) for x, _ in item.points) == 41


def test_figures_along_y_are_level_and_crowded_ones_along_x_are_turned():
    crowded = [(i * 3.0, f"{i} 15/16") for i in range(1, 9)]
    assert {t.turn for t in texts(running(crowded, origin=(0, 0), axis="y", side="left"))} == {0}
    assert {t.turn for t in texts(running(crowded, origin=(0, 0), axis="x", side="below"))} == {90}
    roomy = [(i * 30.0, f"{i} 15/16") for i in range(1, 9)]
    assert {t.turn for t in texts(running(roomy, origin=(0, 0), axis="x", side="below"))} == {0}


def test_a_value_said_twice_is_written_once():
    drawing = running([(50, "20"), (50.0, "20"), (0, "0")], origin=(0, 0), axis="y", side="left")
    assert [t.string for t in texts(drawing)] == ["0", "20"]


@given(values=marks, side=st.sampled_from(SIDES))
@settings(max_examples=60, deadline=None)
def test_figures_stay_within_the_limits(values, side):
    axis = 0 if side[0] == "x" else 1
    drawing = running(values, origin=(0, 0), axis=side[0], side=side[1], outline=0, within=(-50, 110))
    assert clashes(drawing) == []
    for text in texts(drawing):
        box = text_box(text).bounds
        assert box[axis] >= -50 - 1
        assert box[axis + 2] <= 110 + 1


def test_more_figures_than_the_limits_hold_are_refused():
    values = [(i * 1.0, "7") for i in range(1, 40)]
    with pytest.raises(PaperError, match="larger paper"):
        running(values, origin=(0, 0), axis="y", side="left", within=(-50, 50))


@pytest.mark.parametrize("axis, side", [("y", "above"), ("x", "left")])
def test_a_side_that_is_not_beside_the_axis_is_refused(axis, side):
    with pytest.raises(PaperError, match="do not stand"):
        running([], origin=(0, 0), axis=axis, side=side)


def test_a_value_that_is_no_number_is_refused():
    with pytest.raises(PaperError):
        running([(math.nan, "7")], origin=(0, 0), axis="y", side="left")


def test_larger_figures_take_more_room():
    small = running([(30, "20")], origin=(0, 0), axis="y", side="right")
    large = running([(30, "20")], origin=(0, 0), axis="y", side="right", style=DimensionStyle(text=5))
    assert bounds(large)[2] > bounds(small)[2]


@pytest.mark.parametrize("wrong", [{"text": 1.8}, {"text": 2.6}, {"arrow_angle": 10}, {"arrow_angle": 40}])
def test_a_style_that_cannot_be_read_is_refused(wrong):
    with pytest.raises(PaperError):
        DimensionStyle(**wrong)


@given(st.lists(st.floats(-1e3, 1e3), min_size=1, max_size=30).map(sorted), st.floats(0.1, 20))
def test_figures_that_are_spread_keep_their_distance_and_their_order(wanted, apart):
    places = spread(wanted, [apart] * (len(wanted) - 1))
    assert all(b - a >= apart - 1e-6 for a, b in pairwise(places))
    assert sum(places) == pytest.approx(sum(wanted), abs=1e-3)  # shifts cancel out
