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
from benchjoin.drafting.full_size.tiling import ARM, LEAD, Tile, row_name, tile
from benchjoin.drafting.primitives import Clipped, Disc, Fill, Line, Text, bounds, flat
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


class TestTiles:
    """All that is drawn is seen on some tile, between its seams."""

    @given(
        st.lists(st.tuples(st.floats(0, 1500), st.floats(0, 600), st.floats(1, 200)), min_size=1, max_size=8),
        st.tuples(st.floats(120, 300), st.floats(120, 300)),
    )
    def test_nothing_is_lost_between_tiles(self, marks, room):
        drawing = tuple(Line(((x, y), (x + long, y + long / 3))) for x, y, long in marks)
        plan = tile(drawing, room, datum=(0, 0), step=10)
        cells = [inner(plan, one) for one in plan.tiles]
        whole = shapely.union_all(cells)
        for line in drawing:
            assert shapely.LineString(line.points).within(whole.buffer(1e-6))
        assert len({one.key for one in plan.tiles}) == len(plan.tiles)
        for one, cell in zip(plan.tiles, cells, strict=True):
            left, low, right, high = one.window
            assert shapely.box(left + LEAD, low + LEAD, right - LEAD, high - LEAD).buffer(1e-6).contains(cell)
            assert right - left <= room[0] + 1e-6
            assert high - low <= room[1] + 1e-6

    def test_neighbours_overlap_by_what_is_glued_and_show_whole_crosses(self):
        plan = tile((Line(((0, 0), (600, 300))),), (250, 180), datum=(0, 0), step=10)
        for one in plan.tiles:
            shown = plan.shown(one)
            assert isinstance(shown[0], Clipped)
            _, _, wide, high = shown[0].box
            assert wide <= 250 + 1e-6
            assert high <= 180 + 1e-6
            for disc in (item for item in flat(shown) if isinstance(item, Disc)):
                x, y = disc.centre
                if LEAD - 1 < x < wide - LEAD + 1 and LEAD - 1 < y < high - LEAD + 1:
                    assert x - ARM >= -1e-9
                    assert y - ARM >= -1e-9
                    assert x + ARM <= wide + 1e-9
                    assert y + ARM <= high + 1e-9

    def test_a_tile_on_which_nothing_is_drawn_is_left_out(self):
        drawing = (Line(((0, 0), (900, 0))), Line(((0, 0), (0, 500))))  # an L
        plan = tile(drawing, (250, 180), datum=(0, 0), step=10)
        rows, columns = len(plan.rows) - 1, len(plan.columns) - 1
        assert len(plan.tiles) == rows + columns - 1

    def test_rows_are_lettered_from_the_top_and_columns_numbered_from_the_left(self):
        plan = tile(
            (
                Line(
                    ((0, 0), (500, 300)),
                ),
            ),
            (300, 200),
            datum=(0, 0),
            step=10,
        )
        first = next(one for one in plan.tiles if one.key == "b1")
        assert first.window[0] < 0
        assert first.window[1] < 0
        assert [row_name(n) for n in (0, 25, 26, 51, 52, 701, 702)] == ["a", "z", "aa", "az", "ba", "zz", "aaa"]


def inner(plan, one):
    n = len(plan.rows) - 2 - one.row
    return shapely.box(plan.columns[one.column], plan.rows[n], plan.columns[one.column + 1], plan.rows[n + 1])


@pytest.mark.parametrize("rows, columns", [(1, 1), (4, 8), (4, 12), (3, 30)])
def test_a_key_map_keeps_to_its_room_and_fills_one_place(rows, columns):
    used = [Tile(r, c, (0, 0, 1, 1)) for r in range(rows) for c in range(columns) if (r + c) % 3 or (r, c) == (0, 0)]
    drawn = key_map((rows, columns), used, used[0], (46, 20))
    x0, y0, x1, y1 = bounds(drawn)
    assert x0 >= -46
    assert y0 >= -1e-9
    assert x1 <= 1e-9
    assert y1 <= 20
    assert sum(isinstance(item, Fill) for item in drawn) == 1
    crossed = sum(isinstance(item, Line) and not item.closed for item in drawn)
    assert crossed == rows * columns - len(used)
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
