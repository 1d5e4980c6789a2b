"""Border and title block: on every paper, nothing leaves its cell, and room is left for views."""

from __future__ import annotations

import attrs
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchjoin.drafting.lettering import text_width
from benchjoin.drafting.primitives import Disc, Line, Text, bounds
from benchjoin.drafting.sheets.border import frame_sheet
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drafting.sheets.title_block import TitleBlock, block_size, title_block
from benchjoin.errors import PaperError
from benchjoin.trade.paper import PAPERS, landscape

FULL = TitleBlock(
    owner="Upper Valley Beekeepers",
    title="Honey-house bench",
    piece="Front elevation",
    number="HHB-02",
    revision="A",
    date="2025-03-14",
    sheet="2 of 12",
    drawn_by="M. Okafor",
    approved_by="S. Lindqvist",
    document_type="Dimensioned elevation",
    scale='1 1/2" = 1\'-0"',
    units="inches",
    projection="third angle",
)
SIZES = [(p.width, p.height) for p in PAPERS] + [landscape((p.width, p.height)) for p in PAPERS] + [(120, 400)]
FIELDS = ["owner", "title", "piece", "number", "revision", "date", "sheet", "drawn_by", "scale", "units"]


def texts(drawing):
    return [item for item in drawing if isinstance(item, Text)]


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("punched", [False, True])
def test_a_block_stands_at_the_bottom_right_of_every_paper(size, punched):
    drawing, (x0, y0, x1, y1) = frame_sheet(*size, attrs.evolve(FULL, punched=punched))
    left, low, right, high = bounds(drawing)
    lies_on_desk_paper = size[0] > size[1] and size[1] < 220
    assert left == (20 if punched and not lies_on_desk_paper else 10)
    assert size[1] - high == pytest.approx(20 if punched and lies_on_desk_paper else 10)
    assert (low, right) == pytest.approx((10, size[0] - 10))
    assert (x0, x1, y1) == pytest.approx((left, right, high))
    assert y0 - low == pytest.approx(block_size(right - left)[1])
    assert clashes(drawing) == []


@pytest.mark.parametrize("size", SIZES)
def test_ordinary_values_are_written_in_full(size):
    written = {text.string for text in texts(frame_sheet(*size, FULL)[0])}
    for field in (*FIELDS, "approved_by", "document_type"):
        assert getattr(FULL, field) in written


def test_a_block_is_180_mm_wide_at_most():
    x0, _, x1, _ = bounds(title_block(FULL, 180, 0, 0))
    assert x1 - x0 == 180
    assert block_size(1000)[0] == 180


@given(
    values=st.fixed_dictionaries({}, optional={field: st.text(max_size=300) for field in FIELDS}),
    width=st.sampled_from([80, 100, 149, 150, 180]),
)
@settings(max_examples=80, deadline=None)
def test_no_value_however_long_leaves_its_cell_or_shrinks_too_far(values, width):
    drawing = title_block(TitleBlock(**values), width, 0, 0)
    assert clashes(drawing) == []
    x0, y0, x1, y1 = bounds(drawing)
    assert (x0, y0, x1, y1) == pytest.approx((0, 0, width, block_size(width)[1]))
    assert {text.height for text in texts(drawing)} <= {1.8, 2.5, 3.5, 5}


def test_a_long_title_is_broken_before_it_is_cut():
    title = "Honey-house bench with a foot shelf, two hook rails and a head rail"
    block = TitleBlock(title=title)
    lines = [text for text in texts(title_block(block, 180, 0, 0)) if text.bold]
    assert " ".join(text.string for text in lines) == title
    assert len(lines) == 2
    cut = [text for text in texts(title_block(TitleBlock(title=title * 9), 180, 0, 0)) if text.bold]
    assert cut[-1].string.endswith("…")
    assert all(text_width(text.string, text.height, bold=True) <= 118 for text in cut)


def test_the_view_from_the_left_is_drawn_left_in_third_angle_and_right_in_first():
    def places(projection):
        drawing = title_block(TitleBlock(projection=projection), 180, 0, 0)
        circle = next(item.centre[0] for item in drawing if isinstance(item, Disc))
        walls = [item for item in drawing if isinstance(item, Line) and item.closed and len(item.points) == 4]
        cone = next(item for item in walls if len({y for _, y in item.points}) == 4)
        return circle, cone.points

    circle, cone = places("third angle")
    assert circle < cone[0][0]
    circle, cone = places("first angle")
    assert circle > cone[1][0]
    assert cone[3][1] - cone[0][1] < cone[2][1] - cone[1][1]  # the small end is on the left


def test_without_a_projection_there_is_no_sign():
    assert not [item for item in title_block(TitleBlock(), 180, 0, 0) if isinstance(item, Disc)]
    with pytest.raises(ValueError, match="must be in"):
        TitleBlock(projection="second angle")


@pytest.mark.parametrize("size", [(90, 300), (210, 40)])
def test_a_sheet_too_small_for_a_block_is_refused(size):
    with pytest.raises(PaperError, match="no room"):
        frame_sheet(*size, FULL)
