"""Primitives: what is refused when one is made, and what can be asked of a recording."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchjoin.drafting.primitives import Disc, Fill, Line, Text, bounds, figure_middle, shift, text_box
from benchjoin.drafting.sheets.arrange import place_in
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.errors import PaperError

BAD = [math.nan, math.inf, -math.inf]
SAMPLE = (
    Line(((0, 0), (10, 0), (10, 5)), "visible"),
    Fill((((1, 1), (2, 1), (2, 2)),)),
    Disc((3, 3), 1.5),
    Text((0, -4), "57 1/2", 3.5, "middle", 90),
)


@pytest.mark.parametrize("bad", BAD)
@pytest.mark.parametrize(
    "make",
    [
        lambda v: Line(((0, 0), (v, 1))),
        lambda v: Fill((((0, 0), (1, v), (1, 1)),)),
        lambda v: Disc((v, 0), 1),
        lambda v: Disc((0, 0), v),
        lambda v: Text((0, v), "a"),
        lambda v: Text((0, 0), "a", v),
        lambda v: Text((0, 0), "a", turn=v),
    ],
)
def test_a_place_that_is_not_a_finite_number_is_refused(make, bad):
    with pytest.raises(PaperError):
        make(bad)


def test_infinities_that_cancel_are_refused_too():
    with pytest.raises(PaperError):
        Line(((math.inf, 0), (-math.inf, 0)))


@pytest.mark.parametrize("make", [lambda: Disc((0, 0), 0), lambda: Text((0, 0), "a", -2.5)])
def test_a_size_of_nothing_is_refused(make):
    with pytest.raises(PaperError, match="more than nothing"):
        make()


def test_an_unknown_kind_of_line_is_answered_with_those_there_are():
    with pytest.raises(PaperError, match=r"'dotted'.*thin, shade, hidden, .*centre, phantom, visible, cut, border"):
        Line(((0, 0), (1, 1)), "dotted")


@pytest.mark.parametrize("make", [lambda: Text((0, 0), "a", anchor="left"), lambda: Fill((), "grey")])
def test_an_unknown_anchor_or_tone_is_refused(make):
    with pytest.raises(ValueError, match="must be in"):
        make()


@given(dx=st.floats(-1e3, 1e3), dy=st.floats(-1e3, 1e3))
def test_a_shifted_drawing_has_shifted_bounds(dx, dy):
    x0, y0, x1, y1 = bounds(SAMPLE)
    assert bounds(shift(SAMPLE, dx, dy)) == pytest.approx((x0 + dx, y0 + dy, x1 + dx, y1 + dy), abs=1e-6)


def test_a_shift_keeps_everything_but_the_place():
    back = shift(shift(SAMPLE, 64, 32), -64, -32)
    assert back == SAMPLE


def test_nothing_has_no_bounds():
    with pytest.raises(PaperError, match="empty"):
        bounds(())


def test_a_turned_text_stands_left_of_its_baseline():
    x0, y0, x1, y1 = text_box(Text((100, 50), "57", turn=90)).bounds
    assert x1 == pytest.approx(100 + 2.5 * 426 / 1493)  # what hangs below the baseline
    assert y0 == pytest.approx(50)
    assert y1 - y0 > x1 - x0


@pytest.mark.parametrize("anchor, share", [("start", 0), ("middle", 0.5), ("end", 1)])
def test_an_anchor_is_where_the_text_is_held(anchor, share):
    x0, _, x1, _ = text_box(Text((100, 50), "57 1/2", anchor=anchor)).bounds
    assert x0 + share * (x1 - x0) == pytest.approx(100)


def test_figures_are_centred_by_their_height():
    assert figure_middle(10, 2.5) == 8.75


def test_texts_on_each_other_and_on_lines_are_found():
    apart = (Text((0, 0), "57"), Text((20, 0), "58"), Line(((0, 5), (30, 5))))
    assert clashes(apart) == []
    assert [str(c) for c in clashes((*apart, Text((1, 0.5), "59")))] == ["'57' at (0.0, 0.0) lies on '59'"]
    assert len(clashes((*apart, Line(((21, -3), (21, 3)))))) == 1
    assert len(clashes((*apart, Disc((21, 1), 0.5, filled=True)))) == 1
    assert len(clashes((*apart, Fill((((20, 0), (22, 0), (22, 2)),))))) == 1
    assert clashes((*apart, Fill((((20, 0), (22, 0), (22, 2)),), "white"))) == []
    assert clashes((Text((0, 0), "57"),), lines=(Line(((0, 9), (5, 9))),)) == []


def test_a_text_inside_a_closed_box_touches_nothing():
    box = Line(((-5, -5), (20, -5), (20, 10), (-5, 10)), closed=True)
    assert clashes((Text((0, 0), "57"), box)) == []
    assert len(clashes((Text((-6, 0), "57"), box))) == 1  # the side that closing adds


@pytest.mark.parametrize(
    "align, corner",
    [("centre", (100, 100)), ("below left", (0, 0)), ("above right", (200, 200)), ("left", (0, 100))],
)
def test_a_drawing_is_placed_in_its_room(align, corner):
    x0, y0, x1, y1 = bounds(place_in(SAMPLE, (0, 0, 200, 200), align))
    share = {0: 0.0, 100: 0.5, 200: 1.0}
    assert x0 + (x1 - x0) * share[corner[0]] == pytest.approx(corner[0])
    assert y0 + (y1 - y0) * share[corner[1]] == pytest.approx(corner[1])


def test_a_drawing_larger_than_its_room_is_refused():
    with pytest.raises(PaperError, match=r"does not fit a room of 5\.0 × 200\.0 mm"):
        place_in(SAMPLE, (0, 0, 5, 200))
