"""Overall dimensions, chains and leaders."""

from __future__ import annotations

from itertools import accumulate

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchjoin.drafting.dimensions.chain import chain
from benchjoin.drafting.dimensions.leader import leader, row_line
from benchjoin.drafting.dimensions.span import overall
from benchjoin.drafting.primitives import Disc, Fill, Line, Text, text_box
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.errors import PaperError

LABELS = ["7", "11 1/4", "127 15/16 scant", "902.5", ""]
ways = st.sampled_from([("x", 10), ("x", -10), ("y", 10), ("y", -10)])


def texts(drawing):
    return [item for item in drawing if isinstance(item, Text)]


def tips(drawing):
    return sorted(item.rings[0][0] for item in drawing if isinstance(item, Fill))


@given(size=st.floats(0.2, 200), label=st.sampled_from(LABELS[:-1]), way=ways)
@settings(max_examples=100, deadline=None)
def test_a_figure_never_lies_on_its_own_lines(size, label, way):
    assert clashes(overall(3, 3 + size, label, axis=way[0], at=way[1], outline=0)) == []


@given(
    pieces=st.lists(st.tuples(st.floats(0.3, 60), st.sampled_from(LABELS)), min_size=1, max_size=25),
    way=ways,
)
@settings(max_examples=200, deadline=None)
def test_no_figure_of_a_chain_lies_on_another_or_on_a_line(pieces, way):
    points = list(accumulate((size for size, _ in pieces), initial=5.0))
    drawing = chain(points, [label for _, label in pieces], axis=way[0], at=way[1], outline=0)
    assert clashes(drawing) == []
    assert sorted(t.string for t in texts(drawing)) == sorted(label for _, label in pieces if label)


def test_a_long_size_has_its_arrows_inside_and_its_figure_above_the_middle():
    drawing = overall(10, 110, "57", axis="x", at=20, outline=0)
    assert tips(drawing) == [(10, 20), (110, 20)]
    (text,) = texts(drawing)
    assert text.at[0] == 60
    assert text_box(text).bounds[1] > 20
    bodies = [x for item in drawing if isinstance(item, Fill) for x, _ in item.rings[0]]
    assert min(bodies) == 10
    assert max(bodies) == 110


def test_a_short_size_has_its_arrows_outside_pointing_in():
    drawing = overall(10, 13, "1/8", axis="x", at=20, outline=0)
    assert tips(drawing) == [(10, 20), (13, 20)]
    bodies = [x for item in drawing if isinstance(item, Fill) for x, _ in item.rings[0]]
    assert min(bodies) < 10
    assert max(bodies) > 13


def test_an_upright_size_is_read_from_the_right():
    (text,) = texts(overall(10, 110, "57", axis="y", at=20, outline=0))
    assert text.turn == 90
    assert text_box(text).bounds[2] < 20


def test_start_and_end_may_come_in_any_order():
    assert overall(110, 10, "57", axis="x", at=20, outline=(0, 5)) == overall(
        10, 110, "57", axis="x", at=20, outline=(5, 0)
    )


def test_a_size_that_repeats_another_stands_in_brackets():
    assert texts(overall(0, 100, "57", axis="x", at=20, outline=0, auxiliary=True))[0].string == "(57)"
    words = [t.string for t in texts(chain([0, 40, 90], ["7", "8"], axis="x", at=20, outline=0, auxiliary=True))]
    assert words == ["(7)", "(8)"]


def test_extension_lines_leave_a_gap_and_pass_the_dimension_line():
    drawing = overall(0, 100, "57", axis="x", at=20, outline=5)
    extension = drawing[0]
    assert isinstance(extension, Line)
    assert [y for _, y in extension.points] == [6, 22]


def test_a_dimension_on_the_outline_itself_has_no_extension_lines():
    drawing = overall(0, 100, "57", axis="x", at=5, outline=5)
    assert sum(isinstance(item, Line) for item in drawing) == 1


def test_neighbours_in_a_chain_share_an_extension_line_and_short_ones_take_dots():
    drawing = chain([0, 30, 32, 70], ["7", "1/2", "9"], axis="x", at=20, outline=0)
    ends = [item for item in drawing if isinstance(item, Line) and item.points[0][1] == 1]
    assert len(ends) == 4
    assert {item.centre for item in drawing if isinstance(item, Disc)} == {(30, 20), (32, 20)}


@pytest.mark.parametrize("points, labels", [([0, 1], ["a", "b"]), ([0, 5, 3], ["a", "b"])])
def test_a_chain_that_does_not_add_up_is_refused(points, labels):
    with pytest.raises(PaperError):
        chain(points, labels, axis="x", at=20, outline=0)


def test_rows_are_counted_away_from_the_view():
    assert [row_line(100, row, 1) for row in range(3)] == [110, 117, 124]
    assert row_line(0, 1, -1) == -17


@pytest.mark.parametrize("to", [(20, 20), (-20, 20), (-20, -20), (20, -20), (0, 20)])
def test_a_leader_points_and_its_words_stand_clear(to):
    drawing = leader((0, 0), to, "rail let in flush,\n5/8 deep")
    assert tips(drawing) == [(0, 0)]
    assert [t.string for t in texts(drawing)] == ["rail let in flush,", "5/8 deep"]
    assert clashes(drawing) == []


def test_a_leader_to_itself_is_refused():
    with pytest.raises(PaperError):
        leader((1, 1), (1, 1), "here")
