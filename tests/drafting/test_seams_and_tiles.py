"""Seams and tiles: whole steps from the datum, within reach, and nothing of the drawing lost between them."""

from __future__ import annotations

from itertools import pairwise

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from benchjoin.drafting.full_size.desk_page import desk_page
from benchjoin.drafting.full_size.key_map import key_map
from benchjoin.drafting.full_size.seams import seams
from benchjoin.drafting.full_size.strip import TAB, Strip, cut_strip, joints
from benchjoin.drafting.full_size.tiling import LEAD, Tile, row_name
from benchjoin.drafting.full_size.windows import Face, Pane, cover, windows
from benchjoin.drafting.primitives import Fill, Line, Text, bounds
from benchjoin.errors import LengthError, PaperError

places = st.lists(st.floats(-100, 3000), max_size=12)


class TestSeams:
    """Every seam lies whole steps from the datum, and no page reaches farther than it can."""

    @given(
        st.floats(-100, 0),
        st.floats(300, 4000),
        st.floats(60, 400),
        st.sampled_from([5, 10, 12.7]),
        places,
        st.booleans(),
    )
    def test_seams_rise_in_reach_at_whole_steps(self, start, end, reach, step, avoid, even):
        found = seams(start, end, datum=0.0, reach=reach, step=step, avoid=avoid, even=even)
        assert (found[0], found[-1]) == (start, end)
        assert all(0 < b - a <= reach + 1e-6 for a, b in pairwise(found))
        assert all(abs(at / step - round(at / step)) < 1e-9 for at in found[1:-1])

    def test_a_seam_keeps_clear_of_a_shoulder_line(self):
        found = seams(0, 1000, datum=0, reach=300, step=10, avoid=[300, 600])
        assert found == (0, 290, 590, 890, 1000)  # by hand: 300 is a line; 290 + 300 = 590 is 10 from one; 890 in reach

    def test_even_pages_take_no_page_more(self):
        assert seams(0, 1000, datum=0, reach=300, step=10, even=True) == (0, 250, 500, 750, 1000)

    def test_where_lines_are_everywhere_there_is_a_seam_all_the_same(self):
        assert len(seams(0, 500, datum=0, reach=200, step=10, avoid=range(0, 500, 2))) == 4

    @pytest.mark.parametrize("reach", [24, 0, -5])
    def test_a_page_that_reaches_nothing_is_refused(self, reach):
        with pytest.raises(PaperError, match="larger paper"):
            seams(0, 1000, datum=0, reach=reach, step=10)


marks = st.lists(st.floats(0, 3000), min_size=1, max_size=14)
stacks = st.lists(
    st.tuples(st.floats(15, 400), st.floats(300, 2500), st.lists(st.floats(0.0, 1.0), max_size=6)),
    min_size=1,
    max_size=9,
)


class TestWindows:
    """All marks are shown, in reach, from seams at whole steps, and nothing where nothing is marked."""

    @given(marks, st.floats(60, 400), st.sampled_from([5, 10, 12.7]))
    def test_every_mark_is_shown_once_by_a_window_that_a_page_holds(self, at, reach, step):
        found = windows(at, reach=reach, step=step, last=3000)
        for place in at:
            assert sum(left - 1e-6 <= place < right + 1e-6 for left, right in found) in (1, 2)
        assert all(0 < right - left <= reach + 1e-6 for left, right in found)
        assert all(a[1] <= b[0] + 1e-6 for a, b in pairwise(found))
        for end in (end for ends in found for end in ends):
            assert abs(end / step - round(end / step)) < 1e-6
        for left, right in found:
            assert any(left - 1e-6 <= place <= right + 1e-6 for place in at)

    def test_ends_keep_clear_of_marks_and_of_what_else_is_to_be_avoided(self):
        found = windows([178, 248, 700, 704], reach=235, step=10, last=1000, avoid=[720, 0])
        for end in (end for ends in found for end in ends):
            assert all(abs(end - line) >= 4 for line in (178, 248, 700, 704, 720))

    def test_marks_that_go_on_a_page_with_the_datum_are_shown_with_it(self):
        assert windows([178, 190], reach=235, step=10, last=1000)[0][0] == -10

    def test_as_few_as_it_takes(self):
        """By hand, windows of 230 mm: 0 to 100 and 200, then 300 to 500, then 1000."""
        assert len(windows([10, 100, 200, 300, 400, 500, 1000], reach=230, step=10, last=1100)) == 3

    def test_windows_whose_marks_are_close_share_a_seam(self):
        found = windows([100.0 * n for n in range(8)], reach=235, step=10, last=800)
        assert any(a[1] == b[0] for a, b in pairwise(found))

    @pytest.mark.parametrize("reach", [24, 0, -5])
    def test_a_page_that_reaches_nothing_is_refused(self, reach):
        with pytest.raises(PaperError, match="larger paper"):
            windows([100], reach=reach, step=10, last=200)


class TestPanes:
    """Faces lie whole on a page, or in rows that join where one is higher than a page."""

    @given(stacks, st.tuples(st.floats(120, 300), st.floats(120, 300)))
    def test_all_marks_of_all_faces_are_shown_by_panes_that_a_page_holds(self, sizes, reach):
        stack = faces(sizes)
        found = cover(stack, reach, step=10.0, base=stack[-1].low)
        assert len({Tile(pane).key for pane in found}) == len(found)
        for pane in found:
            left, low, right, high = pane.cut
            assert right - left <= reach[0] + 1e-6
            assert high - low <= reach[1] + 1e-6
        for face in stack:
            for at, low, high in face.marks:
                shown = [pane.cut for pane in found if pane.cut[0] - 1e-6 <= at <= pane.cut[2] + 1e-6]
                pieces = shapely.union_all([shapely.LineString([(0, cut[1]), (0, cut[3])]) for cut in shown])
                assert shapely.LineString([(0, low), (0, high)]).within(pieces.buffer(1e-3))

    def test_a_face_without_a_mark_takes_no_page(self):
        plain, marked = faces([(80, 1000, []), (80, 1000, [0.5])])
        assert len(cover([plain, marked], (250, 100), step=10.0)) == 1
        assert cover([plain], (250, 100), step=10.0) == ()

    def test_faces_share_a_page_only_where_that_takes_no_page_more(self):
        """Two short faces with 2 places each, two long ones with 4: 2 and 4 pages, and not 4 and 4."""
        short, long = (80.0, 900.0, [0.2, 0.9]), (80.0, 1800.0, [0.1, 0.4, 0.7, 0.97])
        assert len(cover(faces([short, short, long, long]), (170, 260), step=10.0)) == 6

    def test_a_face_higher_than_a_page_is_shown_in_rows_that_join(self):
        found = cover(faces([(300, 500, [0.5])]), (200, 150), step=10.0)
        assert len(found) == 3
        assert [pane.joins[1] for pane in found] == [False, True, True]

    def test_neighbours_overlap_by_what_is_glued(self):
        joined = Pane(row=0, column=0, cut=(0, 0, 200, 100), joins=(True, True))
        alone = Pane(row=0, column=0, cut=(0, 0, 200, 100))
        assert Tile(joined, 12.0).window == (-LEAD, -LEAD, 212.0, 112.0)
        assert Tile(alone, 12.0).window == (-LEAD, -LEAD, 200 + LEAD, 100 + LEAD)

    def test_rows_are_lettered_from_the_top_and_columns_numbered_from_the_datum(self):
        found = cover(faces([(80, 900, [0.1, 0.9]), (80, 900, [0.1])]), (150, 100), step=10.0)
        assert [Tile(pane).key for pane in found] == ["a1", "a2", "b1"]
        assert found[0].cut[3] > found[2].cut[3]
        assert [row_name(n) for n in (0, 25, 26, 51, 52, 701, 702)] == ["a", "z", "aa", "az", "ba", "zz", "aaa"]


def faces(sizes):
    """Faces one below the other: height, length, and places of marks in parts of the length."""
    found, top = [], 0.0
    for high, long, at in sizes:
        found.append(Face(low=top - high, high=top, length=long, marks=tuple((p * long, top - high, top) for p in at)))
        top -= high
    return found


@pytest.mark.parametrize("rows, columns", [(1, 1), (4, 8), (4, 12), (3, 30)])
def test_a_key_map_keeps_to_its_room_fills_one_place_and_is_blank_where_there_is_no_tile(rows, columns):
    stack = [(0.0, 90.0 * n, 200.0 * columns, 90.0 * n + 80) for n in range(rows)]
    tiles = [
        (f"{row_name(r)}{c + 1}", (200.0 * c, 90.0 * r, 200.0 * c + 150, 90.0 * r + 80))
        for r in range(rows)
        for c in range(columns)
        if (r + c) % 3 or (r, c) == (0, 0)
    ]
    drawn = key_map(stack, tiles, "a1", (46, 20))
    x0, y0, x1, y1 = bounds(drawn)
    assert x0 >= -46 - 1e-9
    assert y0 >= -1e-9
    assert x1 <= 1e-9
    assert y1 <= 20 + 1e-9
    assert sum(isinstance(item, Fill) and item.tone == "black" for item in drawn) == 1
    assert sum(isinstance(item, Line) and item.closed for item in drawn) == len(tiles) - 1
    assert all(item.height >= 2.5 for item in drawn if isinstance(item, Text))


@given(st.floats(100, 3000), st.floats(100, 1200))
def test_pieces_of_a_strip_follow_each_other_with_a_tab_that_goes_on(length, reach):
    found = joints(length, reach, step=10, avoid=[])
    pieces = cut_strip(Strip(name="c", drawing=(Line(((0, 0), (length, 0))),), height=15, places=found, words=7.5))
    assert [p.key for p in pieces] == [f"c{n}" for n in range(1, len(pieces) + 1)]
    assert (pieces[0].start, pieces[-1].end) == (0, length)
    assert all(a.end == b.start for a, b in pairwise(pieces))
    for piece in pieces:
        _, _, right, _ = bounds(piece.drawing)
        tab = 0 if piece is pieces[-1] else TAB
        assert right == pytest.approx(piece.end - piece.start + tab, abs=0.3)
        assert right <= reach + 0.3


@pytest.mark.parametrize("margin", [105, 200, 108.0])
def test_margins_wider_than_the_page_are_refused(margin):
    with pytest.raises(PaperError, match="leave nothing of a page of 210 × 297"):
        desk_page((210, 297), ("Title",), margin=margin)


@pytest.mark.parametrize("margin", [-1, "wide", "10", float("nan"), None])
def test_a_margin_that_is_no_length_is_refused(margin):
    with pytest.raises(LengthError, match="margin"):
        desk_page((210, 297), ("Title",), margin=margin)


@pytest.mark.parametrize("size, margin", [((210, 297), 80), ((75, 120), 10), ((50, 50), 5)])
def test_a_page_with_too_little_left_is_refused(size, margin):
    with pytest.raises(PaperError, match="larger paper"):
        desk_page(size, ("Title",), margin=margin)
