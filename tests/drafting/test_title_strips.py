"""The slim strip along the foot: little of the page, all that is given, and nothing on anything else."""

from __future__ import annotations

import attrs
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchjoin.drafting.primitives import Disc, Text, bounds, text_box
from benchjoin.drafting.sheets.border import frame_sheet
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drafting.sheets.strip import strip, strip_height
from benchjoin.drafting.sheets.title_block import TitleBlock
from benchjoin.trade.paper import landscape, paper_size

PLAIN = TitleBlock(
    form="slim",
    punched=True,
    title="Honey-house bench",
    piece="Set A, legs, for pieces A, B, C",
    document_type="Set page",
    scale='1 1/2" = 1\'-0"',
    units="inches",
    sheet="12 of 14",
    fingerprint="07C1F39A2E",
    projection="third angle",
)
SIGNED = attrs.evolve(
    PLAIN, owner="Linden Lane shop", revision="C", date="2031-03-04", drawn_by="M. Reed", approved_by="T. Ash"
)
SIZES = [way(paper_size(paper)) for paper in ("Letter", "A4", "Tabloid", "A3") for way in (tuple, landscape)]
FIELDS = ("owner", "title", "piece", "number", "revision", "date", "sheet", "drawn_by", "scale", "units", "fingerprint")


def words(drawing):
    return [item.string for item in drawing if isinstance(item, Text)]


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("block", [PLAIN, SIGNED], ids=["plain", "signed"])
def test_a_strip_takes_no_more_than_eight_hundredths_of_the_page(size, block):
    drawing, (x0, y0, x1, _) = frame_sheet(*size, block)
    assert (x1 - x0) * (y0 - 10) <= 0.08 * size[0] * size[1]
    assert clashes(drawing) == []


@pytest.mark.parametrize("size", SIZES)
def test_all_that_is_given_is_written_in_full(size):
    told = words(frame_sheet(*size, SIGNED)[0])
    for field in ("owner", "title", "revision", "date", "sheet", "drawn_by", "approved_by", "scale", "units"):
        assert getattr(SIGNED, field) in told
    assert "Set page: Set A, legs, for pieces A, B, C" in told
    assert "FINGERPRINT 07C1F39A2E" in told


def test_what_is_not_given_has_no_field():
    assert "Rev." not in words(strip(PLAIN, 180, 0, 0))
    assert "Drawn by" not in words(strip(PLAIN, 180, 0, 0))
    assert strip_height(PLAIN) < strip_height(SIGNED)
    assert not [item for item in strip(attrs.evolve(PLAIN, projection=""), 180, 0, 0) if isinstance(item, Disc)]


@given(
    values=st.fixed_dictionaries({}, optional={field: st.text(max_size=300) for field in FIELDS}),
    width=st.sampled_from([80, 100, 186, 259.4]),
    projection=st.sampled_from(["", "first angle"]),
)
@settings(max_examples=80, deadline=None)
def test_no_value_however_long_leaves_the_strip(values, width, projection):
    block = TitleBlock(form="slim", projection=projection, **values)
    drawing = strip(block, width, 0, 0)
    assert clashes(drawing) == []
    assert bounds(drawing) == pytest.approx((0, 0, width, strip_height(block)))
    for text in drawing:
        if isinstance(text, Text):
            assert 0 < text_box(text).bounds[0] <= text_box(text).bounds[2] < width
