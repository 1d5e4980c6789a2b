"""The check bar: true on the recording and true in the finished PDF."""

from __future__ import annotations

import ctypes

import pypdfium2
import pypdfium2.raw as raw
import pytest

from benchjoin.drafting.checkbar import SENTENCE, check_bar, check_bars
from benchjoin.drafting.clashes import clashes
from benchjoin.drafting.pdf import pdf_bytes
from benchjoin.drafting.primitives import Line, Text, bounds
from benchjoin.drafting.sheet import Sheet

POINT = 25.4 / 72
BASE = 8.0


def ticks(strokes, x0, base):
    """Offsets of the upward and of the downward ticks of a lying bar."""
    up, down = set(), set()
    for (xa, ya), (xb, yb) in strokes:
        if abs(xa - xb) < 0.01 and abs(ya - base) < 0.01:
            (up if yb > ya else down).add(round(xa - x0, 2))
    return sorted(up), sorted(down)


def pdf_strokes(data):
    """Every straight stroke of the first page, in mm, as an independent reader sees it."""
    page = pypdfium2.PdfDocument(data)[0]
    found = []
    for item in page.get_objects(filter=[raw.FPDF_PAGEOBJ_PATH], max_depth=5):
        matrix = item.get_matrix()
        last = None
        for index in range(raw.FPDFPath_CountSegments(item)):
            segment = raw.FPDFPath_GetPathSegment(item, index)
            x, y = ctypes.c_float(), ctypes.c_float()
            raw.FPDFPathSegment_GetPoint(segment, x, y)
            here = tuple(v * POINT for v in matrix.on_point(x.value, y.value))
            if raw.FPDFPathSegment_GetType(segment) == raw.FPDF_SEGMENT_LINETO and last:
                found.append((last, here))
            last = here
    return found


def test_six_inches_and_150_millimetres_are_recorded_true():
    strokes = [
        item.points for item in check_bar((30, 40)) if isinstance(item, Line) and len(item.points) == 2
    ]
    inches, millimetres = ticks(strokes, 30, 40 + BASE)
    assert inches == pytest.approx([n * 12.7 for n in range(13)], abs=1e-6)
    assert millimetres == pytest.approx([n * 10 for n in range(16)], abs=1e-6)
    assert inches[-1] == 152.4
    assert millimetres[-1] == 150


def test_six_inches_and_150_millimetres_are_true_in_the_pdf():
    sheet = Sheet(
        name="bar", title="Bar", width=215.9, height=279.4, drawing=check_bar((30, 40)), full_size=True
    )
    inches, millimetres = ticks(pdf_strokes(pdf_bytes(sheet)), 30, 40 + BASE)
    assert inches[-1] - inches[0] == pytest.approx(152.4, abs=0.02)
    assert millimetres[-1] - millimetres[0] == pytest.approx(150, abs=0.02)
    assert len(inches) == 13
    assert len(millimetres) == 16


def test_an_upright_bar_is_as_long_as_a_lying_one():
    upright = [item for item in check_bar((0, 0), "y") if isinstance(item, Line)]
    base = upright[0].points
    assert abs(base[1][1] - base[0][1]) == pytest.approx(152.4)
    assert all(item.turn == 90 for item in check_bar((0, 0), "y") if isinstance(item, Text))


@pytest.mark.parametrize("along, room", [("x", (170, 16)), ("y", (16, 170))])
def test_a_bar_keeps_to_its_room_and_is_clear_of_itself(along, room):
    bar = check_bar((5, 7), along)
    x0, y0, x1, y1 = bounds(bar)
    assert x0 >= 5
    assert y0 >= 7
    assert x1 <= 5 + room[0]
    assert y1 <= 7 + room[1]
    assert clashes(bar) == []


def test_a_bar_says_what_it_is():
    words = {item.string for item in check_bar((0, 0)) if isinstance(item, Text)}
    assert words == {"6 in", "150 mm", SENTENCE}


def test_bars_both_ways_do_not_meet():
    bars = check_bars(10, 10)
    assert clashes(bars) == []
    assert len(bars) == 2 * len(check_bar((0, 0)))
