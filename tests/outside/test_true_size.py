"""Full-size pages read back from their files by other people's readers: pdfium, pdfminer, and svgelements for SVG.

The reader is given no drawing: it takes the strokes of the file, finds the outlines of the parts by their common datum
edge on the left, and the shoulder lines by where they stand. What it measures is held against sums done by hand.
"""

from __future__ import annotations

import ctypes
import io
from itertools import pairwise
from typing import NamedTuple

import pypdf
import pypdfium2
import pypdfium2.raw as raw
import pytest
from by_hand import (
    BENCH_BACK_HEIGHT,
    BENCH_BACK_LEG,
    BENCH_FRONT_HEIGHT,
    BENCH_FRONT_LEG,
    BENCH_LEG_WIDTH,
    RACK_END,
    RACK_HEIGHT,
    RACK_LEG_WIDTH,
    RACK_LONG,
    struck,
)
from designs import plain_bench as bench
from designs import plain_rack as rack
from read_paper import read_by_pdfminer
from svgelements import SVG, Close, Path

from benchjoin import bind, lay_out, set_page

MARK = 0.02  # mm that a line may be off, anywhere on the page
PAGE = 0.01  # mm that a page may be off
POINT = 25.4 / 72
WIDE, NARROW = 0.5, 0.25  # mm, the two line widths of a page


class Stroke(NamedTuple):
    """A polyline of the file: its line width and its points, in mm from the lower left corner of the page."""

    width: float
    points: list[tuple[float, float]]


# --- readers: from bytes to page size and strokes ---


def read_pdf(sheet, folder):
    document = pypdfium2.PdfDocument(sheet.save(folder / "page.pdf"))
    assert len(document) == 1
    page = document[0]
    strokes = [stroke for item in page.get_objects(filter=[raw.FPDF_PAGEOBJ_PATH]) for stroke in _of_path(item)]
    return tuple(side * POINT for side in page.get_size()), strokes


def _of_path(item):
    fill, stroked = ctypes.c_int(), ctypes.c_int()
    assert raw.FPDFPath_GetDrawMode(item, fill, stroked)
    if not stroked.value:
        return
    matrix, width = item.get_matrix(), ctypes.c_float()
    assert raw.FPDFPageObj_GetStrokeWidth(item, width)
    points = []
    for n in range(raw.FPDFPath_CountSegments(item)):
        segment = raw.FPDFPath_GetPathSegment(item, n)
        x, y = ctypes.c_float(), ctypes.c_float()
        assert raw.FPDFPathSegment_GetPoint(segment, x, y)
        if raw.FPDFPathSegment_GetType(segment) == raw.FPDF_SEGMENT_MOVETO and points:
            yield Stroke(width.value * matrix.a * POINT, _once(points))
            points = []
        across, up = matrix.on_point(x.value, y.value)
        points.append((across * POINT, up * POINT))
        if raw.FPDFPathSegment_GetClose(segment):
            points.append(points[0])
    yield Stroke(width.value * matrix.a * POINT, _once(points))


def _once(points):
    """Points without those that repeat the one before, as a closed path in PDF does."""
    return [point for before, point in zip([None, *points], points, strict=False) if point != before]


def read_pdf_by_pdfminer(sheet, folder):
    (page,) = read_by_pdfminer(sheet.save(folder / "page.pdf"))
    return page.size, page.strokes


def read_svg(sheet, folder):
    page = SVG.parse(sheet.save(folder / "page.svg"), ppi=25.4, reify=True)
    strokes = [stroke for path in page.select(lambda item: isinstance(item, Path)) for stroke in _of_svg(path, page)]
    return (page.width, page.height), strokes


def _of_svg(path, page):
    if path.stroke.value is None:
        return
    for part in path.as_subpaths():
        segments = list(part)
        ends = [s.end for s in segments if not isinstance(s, Close)]
        ends += ends[:1] * any(isinstance(s, Close) for s in segments)
        yield Stroke(path.stroke_width, [(end.x, page.height - end.y) for end in ends])


READERS = {"pdf by pdfium": read_pdf, "pdf by pdfminer": read_pdf_by_pdfminer, "svg": read_svg}


# --- what is found on the page ---


def verticals(strokes, width):
    """Upright single lines of a width: x, lower end, upper end."""
    for stroke in strokes:
        if abs(stroke.width - width) < 0.01 and len(stroke.points) == 2:
            (x0, y0), (x1, y1) = stroke.points
            if abs(x0 - x1) < 1e-3 < abs(y0 - y1):
                yield (x0 + x1) / 2, min(y0, y1), max(y0, y1)


def flats(strokes, width):
    turned = [Stroke(stroke.width, [(y, x) for x, y in stroke.points]) for stroke in strokes]
    return verticals(turned, width)


def outlines(strokes):
    """Wide rectangles whose left edge is the leftmost: left, lower, right, upper; the top one first."""
    boxes = []
    for stroke in strokes:
        if abs(stroke.width - WIDE) < 0.01 and len(stroke.points) == 5 and stroke.points[0] == stroke.points[-1]:
            xs, ys = zip(*stroke.points, strict=True)
            boxes.append((min(xs), min(ys), max(xs), max(ys)))
    datum = min(box[0] for box in boxes)
    return sorted((box for box in boxes if box[0] - datum < 1e-3), key=lambda box: -box[1])


def parts_on_page(strokes):
    """Of each outline from the top: its length, its width, and the distances of its shoulder lines from the datum."""
    lines = list(verticals(strokes, WIDE))
    for left, low, right, high in outlines(strokes):
        middle = (low + high) / 2
        mine = [(x, y0, y1) for x, y0, y1 in lines if y0 < middle < y1]
        for _, y0, y1 in mine:  # struck over the whole face and no further
            assert (y0, y1) == (pytest.approx(low, abs=MARK), pytest.approx(high, abs=MARK))
        yield right - left, high - low, sorted(x - left for x, _, _ in mine)


def bars(flat_lines, upright_lines):
    """Rows of ticks that stand on one line: distances of the ticks from its start, of either side of it."""
    uprights = list(upright_lines)
    for level, start, end in flat_lines:
        over = sorted(x - start for x, y0, _ in uprights if abs(y0 - level) < 1e-3 and start - 1 < x < end + 1)
        under = sorted(x - start for x, _, y1 in uprights if abs(y1 - level) < 1e-3 and start - 1 < x < end + 1)
        if len(over) > 9 and len(under) > 9:
            yield end - start, over, under


# --- by hand ---

FRONT_LEG = (BENCH_FRONT_HEIGHT, BENCH_LEG_WIDTH, struck(BENCH_FRONT_LEG, BENCH_FRONT_HEIGHT))
BACK_LEG = (BENCH_BACK_HEIGHT, BENCH_LEG_WIDTH, struck(BENCH_BACK_LEG, BENCH_BACK_HEIGHT))
RACK_OUTER = (RACK_HEIGHT, RACK_LEG_WIDTH, struck(RACK_LONG, RACK_HEIGHT))
RACK_ENDS = (RACK_HEIGHT, RACK_LEG_WIDTH, struck(RACK_END, RACK_HEIGHT))

PAGES = {
    "bench legs": (bench, "A", [FRONT_LEG, FRONT_LEG, BACK_LEG, BACK_LEG]),
    "rack legs": (rack, "A", [RACK_OUTER] * 4 + [RACK_ENDS] * 4),
    "rack long rails": (rack, "B", [(900, 45, [45, 855])] * 12),
    "rack end rails": (rack, "C", [(500, 45, [45, 455])] * 12),
}


@pytest.fixture(scope="module", params=[(page, reader) for page in PAGES for reader in READERS], ids=" as ".join)
def page(request, tmp_path_factory):
    name, reader = request.param
    frame, letter, by_hand = PAGES[name]
    sheet = set_page(lay_out(frame), letter)
    size, strokes = READERS[reader](sheet, tmp_path_factory.mktemp("page"))
    return sheet, size, strokes, by_hand


def test_a_page_is_as_large_as_its_sheet(page):
    sheet, size, _, _ = page
    assert size == (pytest.approx(sheet.width, abs=PAGE), pytest.approx(sheet.height, abs=PAGE))


def test_shoulder_lines_are_true_over_the_whole_length_of_the_parts(page):
    _, _, strokes, by_hand = page
    found = list(parts_on_page(strokes))
    assert len(found) == len(by_hand)
    for (length, width, lines), (its_length, its_width, its_lines) in zip(found, by_hand, strict=True):
        assert length == pytest.approx(its_length, abs=MARK)
        assert width == pytest.approx(its_width, abs=MARK)
        assert lines == [pytest.approx(line, abs=MARK) for line in its_lines]


def test_feet_are_flush_and_parts_lie_side_by_side_as_they_are_clamped(page):
    _, _, strokes, by_hand = page
    boxes = outlines(strokes)
    assert max(box[0] for box in boxes) - min(box[0] for box in boxes) < 1e-3
    gaps = [above[1] - below[3] for above, below in pairwise(boxes)]
    breaks = [gap for gap in gaps if abs(gap) > MARK]
    assert len(breaks) == (len(by_hand) == 8)  # legs marked on two faces lie in two bands


def test_everything_is_on_the_page(page):
    _, (width, height), strokes, _ = page
    points = [point for stroke in strokes for point in stroke.points]
    assert len(points) > 100
    assert all(0 < x < width and 0 < y < height for x, y in points)


@pytest.mark.parametrize("way", ["lying", "upright"])
def test_the_check_bar_is_ten_inches_and_250_mm(page, way):
    strokes = page[2]
    if way == "upright":  # over the diagonal, so that it lies
        strokes = [Stroke(stroke.width, [(y, x) for x, y in stroke.points]) for stroke in strokes]
    found = list(bars(flats(strokes, NARROW), verticals(strokes, NARROW)))
    assert len(found) == 1
    base, inch_ticks, mm_ticks = found[0]
    assert base == pytest.approx(254, abs=MARK)
    assert inch_ticks == [pytest.approx(12.7 * n, abs=MARK) for n in range(21)]  # at 0 stands the other bar
    assert mm_ticks == [pytest.approx(10.0 * n, abs=MARK) for n in range(1, 26) if n != 24]


@pytest.mark.parametrize("frame", [bench, rack], ids=["bench", "rack"])
def test_print_scaling_is_off(frame, tmp_path):
    layout = lay_out(frame)
    for path in (set_page(layout, "A").save(tmp_path / "a.pdf"), bind(layout, tmp_path / "binder.pdf")):
        assert not raw.FPDF_VIEWERREF_GetPrintScaling(pypdfium2.PdfDocument(path))


def test_a_plain_pdf_would_be_scaled_by_the_printer():
    writer, file = pypdf.PdfWriter(), io.BytesIO()
    writer.add_blank_page(595, 842)
    writer.write(file)
    assert raw.FPDF_VIEWERREF_GetPrintScaling(pypdfium2.PdfDocument(file.getvalue()))


@pytest.mark.parametrize("frame", [bench, rack], ids=["bench", "rack"])
def test_full_size_pages_keep_their_size_in_the_binder(frame, tmp_path):
    layout = lay_out(frame)
    document = pypdfium2.PdfDocument(bind(layout, tmp_path / "binder.pdf"))
    sizes = [tuple(side * POINT for side in page.get_size()) for page in document]
    for letter in dict.fromkeys(one.alike[0] for one in layout.sets):
        sheet = set_page(layout, letter)
        near = (pytest.approx(sheet.width, abs=PAGE), pytest.approx(sheet.height, abs=PAGE))
        assert sum(size == near for size in sizes) == 1
