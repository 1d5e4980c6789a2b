"""Every sheet of every design, sample and random frame: texts apart, off all lines, inside the border, large enough.

The quick run meets the drawings of gallery and samples and a few random frames; the slow one whole binders and a dozen.
"""

from __future__ import annotations

import pytest
import shapely
from designs import DESIGNS
from hypothesis import given, settings
from hypothesis import strategies as st
from row_strategies import single_rows
from samples import SAMPLES
from strategies import frames

from benchjoin import lay_out
from benchjoin.binding import sheets
from benchjoin.drafting.primitives import Line, Text, bounds, text_box
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.views.isometric import exploded, isometric
from benchjoin.drawings.views.section import section
from benchjoin.errors import AddressError
from benchjoin.trade.standards import LETTERING

FRAMES = {**DESIGNS, **SAMPLES}
DRAWN = ("cover", "findings", "views", "parts", "part drawings", "joints")
LEAST = 2.5  # mm, of what is read at arm's length
HEADING = 1.8  # mm, of the names of title block fields
SMALLEST_FIGURE = 1.8  # mm, of the figures of a stacked fraction
STACKED = 0.72  # of the lettering; ISO 3098 has 1.8 below 2.5


def texts(drawing):
    return [item for item in drawing if isinstance(item, Text)]


def faults(sheet):
    """What a person would mend on a sheet, in words."""
    found = [str(clash) for clash in clashes(sheet.whole)]
    (border,) = (item for item in sheet.whole if isinstance(item, Line) and item.kind == "border")
    inside = shapely.Polygon(border.points)
    x0, y0, x1, y1 = bounds(sheet.whole)
    if not inside.buffer(1e-6).contains(shapely.box(x0, y0, x1, y1)):
        found.append(f"something reaches over the border: {(x0, y0, x1, y1)}")
    found += [f"{t.string!r} touches the border" for t in texts(sheet.whole) if near_the(inside, t)]
    found += [f"{t.string!r} is {t.height} mm high" for t in texts(sheet.drawing) if t.height < LEAST]
    found += [f"{t.string!r} is {t.height} mm high" for t in texts(sheet.whole) if t.height not in LETTERING]
    found += [f"{t.string!r} is {t.height} mm high" for t in texts(sheet.whole) if t.height < HEADING]
    found += [f"{t.string!r} is upside down" for t in texts(sheet.whole) if t.turn not in (0.0, 90.0)]
    return [f"{sheet.name}: {fault}" for fault in found]


def near_the(border, text):
    box = text_box(text)
    return not border.contains(box) or border.exterior.distance(box) < 0.3


def extra(layout):
    """Sheets that the binder does not hold."""
    yield isometric(layout)
    yield exploded(layout)
    for asked in ({"x": 15}, {"y": 5}, {"y": layout.piece(1)[0].blank.low[1] + 15}, {"at": 45}):
        try:
            yield section(layout, **asked)
        except AddressError:
            continue  # nothing stands there


@pytest.fixture(scope="module", params=FRAMES)
def layout(request):
    return lay_out(FRAMES[request.param])


def test_every_drawing_can_be_read(layout):
    drawn = [*sheets(layout, only=DRAWN), *extra(layout)]
    assert len(drawn) > 11
    assert [fault for sheet in drawn for fault in faults(sheet)] == []


@pytest.mark.slow
def test_every_sheet_of_every_binder_can_be_read(layout):
    full = [sheet for sheet in sheets(layout) if not sheet.full_size]
    assert [fault for sheet in full for fault in faults(sheet)] == []


def any_frame_can_be_read(frame):
    layout = lay_out(frame)
    drawn = [*sheets(layout, only=DRAWN), *extra(layout)]
    assert [fault for sheet in drawn for fault in faults(sheet)] == []


@settings(max_examples=4)
@given(frames())
def test_drawings_of_any_frame_can_be_read(frame):
    any_frame_can_be_read(frame)


@settings(max_examples=4)
@given(single_rows())
def test_drawings_of_any_single_row_can_be_read(frame):
    any_frame_can_be_read(frame)


@pytest.mark.slow
@settings(max_examples=24)
@given(st.one_of(frames(), single_rows()))
def test_drawings_of_many_frames_can_be_read(frame):
    any_frame_can_be_read(frame)


def test_a_text_over_the_border_is_found():
    sheet = isometric(lay_out(DESIGNS["bench"]))
    beyond = Text((sheet.width - 12.0, 150.0), "too far out")
    moved = type(sheet)(
        name="x",
        title="x",
        width=sheet.width,
        height=sheet.height,
        drawing=(*sheet.drawing, beyond),
        block=sheet.block,
    )
    assert any("border" in fault for fault in faults(moved))
