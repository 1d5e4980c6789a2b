"""Check bars: true on the recording and in the finished PDF, as long as the page allows, square by their dots."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from read_paper import levels, read_pages, uprights

from benchjoin.drafting.full_size.check_bars import BARS, BESIDE, INCH, PAST, SENTENCE, check_bars
from benchjoin.drafting.primitives import Disc, Line, Text, bounds, shift
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drafting.sheets.sheet import Sheet
from benchjoin.drafting.writers.pdf import pdf_bytes
from benchjoin.errors import PaperError

INCH_TICKS = [n * 12.7 for n in range(1, 21)]
MM_TICKS = [float(n) for n in range(10, 251, 10) if n != 240]  # the place of 240 is taken by the figure


def ticks(strokes):
    """Of a lying bar from (0, 0): where its ticks stand above and below its line."""
    up = sorted(x for x, low, high in strokes if x > 0.1 and abs(low) < 0.01 and high > 0.5)
    down = sorted(x for x, low, high in strokes if x > 0.1 and abs(high) < 0.01 and low < -0.5)
    return up, down


def test_ten_inches_and_250_millimetres_are_recorded_true():
    lines = [item.points for item in check_bars(260, 260).drawing if isinstance(item, Line)]
    strokes = [(a[0], min(a[1], b[1]), max(a[1], b[1])) for a, b in lines if a[0] == b[0] and abs(a[1] - b[1]) < 10]
    up, down = ticks(strokes)
    assert up == pytest.approx(INCH_TICKS, abs=1e-9)
    assert down == pytest.approx(MM_TICKS, abs=1e-9)


@pytest.mark.parametrize("way", ["lying", "upright"])
def test_ten_inches_and_250_millimetres_are_true_in_the_pdf(way, tmp_path):
    sheet = Sheet(name="b", title="Bars", width=300, height=300, drawing=shift(check_bars(260, 260).drawing, 20, 30))
    (tmp_path / "bars.pdf").write_bytes(pdf_bytes(sheet))
    (page,) = read_pages(tmp_path / "bars.pdf")
    if way == "lying":
        strokes = [(x - 20, low - 30, high - 30) for x, low, high in uprights(page.strokes) if high - low < 10]
    else:
        strokes = [(y - 30, low - 20, high - 20) for y, low, high in levels(page.strokes) if high - low < 10]
    up, down = ticks(strokes)
    assert up == pytest.approx(INCH_TICKS, abs=0.02)
    assert down == pytest.approx(MM_TICKS, abs=0.02)


@pytest.mark.parametrize("wide", [60, 120, 190, 260])
@pytest.mark.parametrize("high", [60, 120, 190, 260])
def test_dots_are_three_and_four_parts_from_the_zero_and_five_apart(wide, high):
    bars = check_bars(wide, high)
    (x, zero), (nought, y) = (item.centre for item in bars.drawing if isinstance(item, Disc))
    assert zero == nought == 0
    assert sorted((x, y)) == [pytest.approx(bars.dots * 3 / 5), pytest.approx(bars.dots * 4 / 5)]
    assert math.hypot(x, y) == pytest.approx(bars.dots)
    assert x <= bars.lying.millimetres
    assert y <= bars.upright.millimetres


@given(st.floats(51.4, 500), st.floats(51.4, 500))
def test_bars_keep_to_their_room_are_as_long_as_can_be_and_clear_of_themselves(wide, high):
    bars = check_bars(wide, high)
    x0, y0, x1, y1 = bounds(bars.drawing)
    assert min(x0, y0) >= -BESIDE
    assert x1 <= wide + 1e-9
    assert y1 <= high + 1e-9
    assert clashes(bars.drawing) == []
    for bar, room in ((bars.lying, wide), (bars.upright, high)):
        longer = [other for other in BARS if other.length > bar.length]
        assert all(other.length + PAST > room for other in longer)


def test_bars_say_how_long_they_are():
    bars = check_bars(260, 190)
    told = "250 mm or 10 in along the foot, 180 mm or 7 in up the side, 300 mm from dot to dot"
    assert bars.sentence() == f"{SENTENCE}: {told}"
    words = sorted(item.string for item in bars.drawing if isinstance(item, Text))
    assert words == ["10 in", "180 mm", "250 mm", "7 in"]
    assert {item.turn for item in bars.drawing if isinstance(item, Text)} == {0.0, 90.0}


def test_every_bar_ends_on_a_whole_mark_of_both_rules():
    for bar in BARS:
        assert bar.millimetres % 10 == 0
        assert bar.length == pytest.approx(max(bar.millimetres, bar.inches * INCH))


@pytest.mark.parametrize("room", [(51, 200), (200, 51), (0, 0), (-5, 300)])
def test_a_page_too_small_for_a_bar_is_refused(room):
    with pytest.raises(PaperError, match="check bar of 2 in"):
        check_bars(*room)
