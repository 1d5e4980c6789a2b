"""The reader of finished paper finds each fault that is planted in a PDF, and none where there is none.

The pages are drawn by hand with cairocffi: 150 mm square, in mm from the lower left corner.
"""

from __future__ import annotations

import io
import math

import cairocffi
import pytest
from paper_reader.checking import faults
from paper_reader.page import read_pages
from paper_reader.writing import lines_of

SIDE = 150.0
POINT = 25.4 / 72
NARROW, WIDE = 0.25, 0.5
CAPITAL = 0.729
"""Height of capitals in DejaVu Sans, of its size: 1493 of 2048 units, from the font."""


class Sheet:
    """A page under the pen, y up."""

    def __init__(self):
        self.file = io.BytesIO()
        self.surface = cairocffi.PDFSurface(self.file, SIDE / POINT, SIDE / POINT)
        self.pen = cairocffi.Context(self.surface)
        self.pen.scale(1 / POINT, 1 / POINT)
        self.pen.select_font_face("DejaVu Sans")
        options = cairocffi.FontOptions(hint_metrics=cairocffi.HINT_METRICS_OFF)
        self.pen.set_font_options(options)

    def line(self, *points, width=NARROW, dashes=(), closed=False):
        self.pen.new_path()
        for x, y in points:
            self.pen.line_to(x, SIDE - y)
        if closed:
            self.pen.close_path()
        self.pen.set_line_width(width)
        self.pen.set_dash(list(dashes))
        self.pen.stroke()

    def box(self, x0, y0, x1, y1, **how):
        self.line((x0, y0), (x1, y0), (x1, y1), (x0, y1), closed=True, **how)

    def hatch(self, x0, y0, x1, y1):
        for n in range(int((x1 - x0) / 2)):
            self.line((x0 + 2 * n, y0), (x0 + 2 * n + (y1 - y0), y1))

    def patch(self, x0, y0, x1, y1, tone=1.0):
        self.pen.set_source_rgb(tone, tone, tone)
        self.pen.rectangle(x0, SIDE - y1, x1 - x0, y1 - y0)
        self.pen.fill()
        self.pen.set_source_rgb(0, 0, 0)

    def text(self, x, y, words, height=2.5, turn=0.0):
        """Write a text and give where it ends."""
        self.pen.set_font_size(height / CAPITAL)
        self.pen.save()
        self.pen.translate(x, SIDE - y)
        self.pen.rotate(-math.radians(turn))
        self.pen.move_to(0, 0)
        self.pen.show_text(words)
        self.pen.restore()
        return x + self.pen.text_extents(words)[4]

    def clip(self, x0, y0, x1, y1):
        self.pen.rectangle(x0, SIDE - y1, x1 - x0, y1 - y0)
        self.pen.clip()

    def bytes(self):
        self.surface.finish()
        return self.file.getvalue()


def found_on(draw):
    """What the reader says of a page, numbered at its upper left corner: rules, places and words."""
    sheet = Sheet()
    draw(sheet)
    if draw is not letters_as_outlines:
        sheet.pen.reset_clip()
        sheet.text(2, 146, "1 of 1")
    return faults(sheet.bytes())


def texts_on_each_other(sheet):
    sheet.text(40, 60, "HEAD RAIL")
    sheet.text(44, 61, "FOOT SHELF")


def text_under_turned_text(sheet):
    sheet.text(40, 60, "HEAD RAIL")
    sheet.text(45, 55, "FOOT SHELF", turn=90.0)


def text_running_into_text(sheet):
    end = sheet.text(40, 60, "HEAD")
    sheet.text(end + 0.3, 60, "RAIL")


def text_twice(sheet):
    sheet.text(40, 60, "HEAD RAIL")
    sheet.text(40, 60, "HEAD RAIL")


def text_cut_by_a_clip(sheet):
    sheet.clip(30, 30, 52, 70)
    sheet.text(40, 60, "HEAD RAIL")


def text_cut_by_a_clip_of_a_group(sheet):
    sheet.clip(30, 30, 52, 70)
    sheet.pen.push_group()
    sheet.text(40, 60, "HEAD RAIL")
    sheet.pen.pop_group_to_source()
    sheet.pen.paint_with_alpha(0.99)


def text_off_the_page(sheet):
    sheet.text(40, 60, "HEAD")
    sheet.text(SIDE - 8, 60, "HEAD RAIL")


def text_under_a_patch(sheet):
    sheet.line((0, 1), (SIDE, 1))
    sheet.text(40, 60, "HEAD RAIL")
    sheet.patch(47, 59, 60, 63)


def line_through_text(sheet):
    sheet.text(40, 60, "HEAD RAIL")
    sheet.line((30, 61), (80, 61))


def line_between_words(sheet):
    end = sheet.text(40, 60, "HEAD")
    sheet.text(40, 60, "HEAD RAIL")
    sheet.line((end + 0.6, 50), (end + 0.6, 70), width=0.1)


def hatching_through_text(sheet):
    sheet.hatch(30, 50, 80, 70)
    sheet.text(40, 60, "HEAD RAIL")


def hatching_over_a_patch(sheet):
    sheet.patch(38, 58, 62, 64)
    sheet.hatch(30, 50, 80, 70)
    sheet.text(40, 60, "HEAD RAIL")


def dot_on_text(sheet):
    sheet.text(40, 60, "HEAD RAIL")
    sheet.patch(41, 60.5, 42, 61.5, tone=0.0)


def one_dash(sheet):
    sheet.line((40, 60), (46, 60), dashes=(3, 0.75))


def chain_without_a_dot(sheet):
    sheet.line((40, 60), (46, 60), dashes=(6, 0.75, 0.1, 0.75))


def dashes_in_a_corner_of_two_lines(sheet):
    sheet.line((40, 60), (44, 60), dashes=(3, 0.75))
    sheet.line((44, 60), (44, 80), dashes=(3, 0.75))


def wide_lines_together(sheet):
    sheet.line((20, 20), (20, 40))
    sheet.line((40, 60), (80, 60), width=WIDE)
    sheet.line((50, 60.9), (70, 60.9), width=WIDE)


def wide_slanting_lines_together(sheet):
    sheet.line((20, 20), (20, 40))
    sheet.line((40, 60), (60, 80), width=WIDE)
    sheet.line((40, 61), (60, 81), width=WIDE)


def wide_lines_of_a_thin_group(sheet):
    for n in range(5):
        sheet.line((20 + 5 * n, 20), (20 + 5 * n, 40), width=0.18)
    for off in (0.0, 0.6):
        sheet.line((40, 60 + off), (80, 60 + off), width=0.35)
    sheet.box(5, 5, 145, 145, width=0.7)


def height_between_the_series(sheet):
    sheet.text(40, 60, "HEAD RAIL", height=3.0)


def low_fraction(sheet):
    end = sheet.text(40, 60, "H 48")
    end = sheet.text(end, 60.7, " 3", height=1.8)
    end = sheet.text(end - 0.2, 60.2, "/", height=1.8)
    sheet.text(end - 0.2, 59.6, "8", height=1.8)


def letters_as_outlines(sheet):
    sheet.pen.set_font_size(5)
    sheet.pen.move_to(40, 60)
    sheet.pen.text_path("HEAD RAIL")
    sheet.pen.fill()


PLANTED = [
    (letters_as_outlines, {"nothing written"}, "no letter"),
    (texts_on_each_other, {"text on text"}, "'HEAD RAIL' and 'FOOT SHELF'"),
    (text_under_turned_text, {"text on text"}, "FOOT SHELF"),
    (text_running_into_text, {"text on text"}, "'HEAD' runs into 'RAIL'"),
    (text_twice, {"text on text"}, "'HEAD RAIL' and 'HEAD RAIL'"),
    (text_cut_by_a_clip, {"text cut"}, "HEAD R"),
    (text_cut_by_a_clip_of_a_group, {"text cut"}, "HEAD R"),
    (text_off_the_page, {"text cut"}, "HEAD"),
    (text_under_a_patch, {"text cut"}, "HEAD RAIL"),
    (line_through_text, {"line through text"}, "HEAD RAIL"),
    (line_between_words, {"line through text"}, "HEAD RAIL"),
    (hatching_through_text, {"line through text"}, "HEAD RAIL"),
    (hatching_over_a_patch, {"line through text"}, "HEAD RAIL"),
    (dot_on_text, {"line through text"}, "HEAD RAIL"),
    (one_dash, {"short dashes"}, "6.00 mm long, two dashes and a gap take 6.75"),
    (chain_without_a_dot, {"short dashes"}, "6.00 mm long, two dashes and a gap take 6.85"),
    (dashes_in_a_corner_of_two_lines, {"short dashes"}, "4.00 mm long"),
    (wide_lines_together, {"wide lines close"}, "0.90 mm apart for 20.0 mm, less than 1.00"),
    (wide_slanting_lines_together, {"wide lines close"}, "0.71 mm apart"),
    (wide_lines_of_a_thin_group, {"wide lines close"}, "0.60 mm apart for 40.0 mm, less than 0.70"),
    (height_between_the_series, {"height off the series"}, "'HEAD RAIL' is 3.00 mm high"),
    (low_fraction, {"low fraction"}, "'3/8' in 'H 48 3/8' is 1.80 mm high"),
]


@pytest.mark.parametrize("draw, rules, words", PLANTED, ids=lambda one: getattr(one, "__name__", None))
def test_a_planted_fault_is_found_and_no_other(draw, rules, words):
    found = found_on(draw)
    assert {fault.rule for fault in found} == rules, [str(fault) for fault in found]
    assert any(words in fault.words for fault in found), [str(fault) for fault in found]


def test_a_fault_says_where_it_is():
    (fault,) = found_on(line_through_text)
    assert 40 < fault.x < 60
    assert 60 < fault.y < 62.5
    assert fault.page == 1
    assert str(fault).startswith("page 1 ()")


def text_by_text(sheet):
    sheet.text(40, 60, "HEAD RAIL")
    sheet.text(40, 56.2, "FOOT gypsum SHELF")
    sheet.text(40, 52.4, "HEAD RAIL")
    end = sheet.text(40, 40, "FOOT")
    sheet.text(end + 2.0, 40, "SHELF")


def hatching_cleared_by_a_patch(sheet):
    sheet.hatch(30, 50, 80, 70)
    sheet.patch(39, 59, 70, 64)
    sheet.text(40, 60, "HEAD RAIL")


def text_on_a_tint(sheet):
    sheet.line((0, 1), (SIDE, 1))
    sheet.patch(30, 50, 80, 70, tone=0.8)
    sheet.text(40, 60, "HEAD RAIL")


def line_broken_for_text(sheet):
    end = sheet.text(40, 60, "HEAD RAIL")
    sheet.line((20, 61.25), (39, 61.25))
    sheet.line((end + 1, 61.25), (80, 61.25))


def line_under_text(sheet):
    sheet.text(40, 60, "HEAD RAIL")
    sheet.line((30, 59.5), (80, 59.5), width=WIDE)
    sheet.line((30, 50), (80, 50))


def clip_that_leaves_text_whole(sheet):
    sheet.pen.save()
    sheet.clip(30, 30, 90, 70)
    sheet.text(40, 60, "HEAD RAIL")
    sheet.line((20, 80), (95, 68.0))
    sheet.pen.restore()
    sheet.text(20, 80.5, "FOOT")


def line_that_a_clip_keeps_from_text(sheet):
    sheet.text(40, 60, "HEAD RAIL")
    sheet.clip(0, 0, SIDE, 55)
    sheet.line((45, 30), (45, 90))


def two_dashes_and_a_gap(sheet):
    sheet.line((40, 60), (46.75, 60), dashes=(3, 0.75))
    sheet.line((40, 50), (80, 50))
    sheet.clip(0, 0, 43, SIDE)
    sheet.line((40, 40), (80, 40), dashes=(3, 0.75))


def wide_lines_apart(sheet):
    sheet.line((20, 20), (20, 40))
    sheet.box(40, 60, 80, 61.0, width=WIDE)
    sheet.line((40, 60), (80, 60), width=WIDE)
    sheet.line((90, 60), (91, 80), width=WIDE)
    sheet.line((90, 60), (89, 80), width=WIDE)


def picture_with_close_lines(sheet):
    sheet.line((20, 20), (20, 40))
    c, s = math.cos(math.radians(30)), math.sin(math.radians(30))
    for off in (0.0, 0.8):
        sheet.line((40, 60 + off), (40 + 30 * c, 60 + off + 30 * s), width=WIDE)
        sheet.line((40 + off, 60), (40 + off, 40), width=WIDE)
    sheet.line((40, 40), (40 + 0.8 * c, 40 + 0.8 * s), width=WIDE)


def all_heights_of_the_series(sheet):
    for n, height in enumerate((1.8, 2.5, 3.5, 5.0, 7.0, 10.0)):
        sheet.text(20, 20 + 15 * n, "HEAD 48", height=height)


def high_fraction(sheet):
    end = sheet.text(40, 60, "H 48", height=3.5)
    end = sheet.text(end, 61.0, " 3", height=2.5)
    end = sheet.text(end - 0.2, 60.3, "/", height=2.5)
    sheet.text(end - 0.2, 59.5, "8", height=2.5)
    sheet.text(40, 40, "A4/A3, 1/front, 4711/16", height=1.8)


SOUND = [
    text_by_text,
    hatching_cleared_by_a_patch,
    text_on_a_tint,
    line_broken_for_text,
    line_under_text,
    clip_that_leaves_text_whole,
    line_that_a_clip_keeps_from_text,
    two_dashes_and_a_gap,
    wide_lines_apart,
    picture_with_close_lines,
    all_heights_of_the_series,
    high_fraction,
]


@pytest.mark.parametrize("draw", SOUND)
def test_a_sound_page_has_no_fault(draw):
    assert [str(fault) for fault in found_on(draw)] == []


def pieces(sheet, captions):
    """Two pieces to be cut out beside each other, under a head."""
    sheet.text(10, 140, "Patterns to be cut out", height=5.0)
    sheet.text(10, 134, "Pattern of the head; cut along the thin line")
    for x in (10, 80):
        sheet.box(x, 50, x + 50, 120)
        sheet.line((x, 100), (x + 50, 100), dashes=(3, 0.75))
        sheet.box(x + 5, 55, x + 20, 60)
    sheet.box(10, 20, 60, 30)
    sheet.text(12, 22, "a frame round words")
    for x, y, words in captions:
        sheet.text(x, y, words)
        sheet.text(x, y - 4, "HEAD RAIL at 48")


OWN = (15, 90, "Pattern 1, make 6")
CAPTIONS = {
    "each in its own": ([OWN, (85, 90, "Pattern 2")], []),
    "one beside": ([OWN, (75, 40, "Pattern 2")], ["'Pattern 2' and its 1 lines", "an outline holds 0"]),
    "one over the edge": ([OWN, (110, 90, "Pattern 2, half of a lap")], ["its 1 lines stand in no", "holds 0"]),
    "a line of it over the edge": ([OWN, (85, 52, "Pattern 2")], ["its 1 lines stand in no", "holds 0"]),
    "both in one": ([OWN, (15, 75, "Pattern 2")], ["holds 2", "holds 0"]),
}


@pytest.mark.parametrize("captions, words", CAPTIONS.values(), ids=CAPTIONS)
def test_a_caption_stands_in_its_own_outline(captions, words):
    found = [fault for fault in found_on(lambda s: pieces(s, captions)) if "caption" in fault.rule]
    assert len(found) == len(words)
    for fault, told in zip(found, words, strict=True):
        assert told in fault.words


def test_places_widths_and_dashes_are_read_in_millimetres():
    sheet = Sheet()
    sheet.pen.translate(10, -20)
    sheet.pen.scale(2, 2)
    sheet.line((40, 100), (50, 100), dashes=(3, 0.75))
    (page,) = read_pages(sheet.bytes())
    (stroke,) = page.strokes
    assert stroke.width == pytest.approx(0.5, abs=1e-3)
    assert stroke.dashes == pytest.approx((6.0, 1.5), abs=1e-3)
    assert stroke.points[0] == pytest.approx((90.0, SIDE - 80.0), abs=2e-3)
    assert stroke.points[1] == pytest.approx((110.0, SIDE - 80.0), abs=2e-3)


def test_a_line_of_writing_is_read_whole_level_and_turned():
    def draw(sheet):
        sheet.text(40, 60, "front rail, 48 in")
        sheet.text(60, 80, "back rail", turn=90.0)

    sheet = Sheet()
    draw(sheet)
    (page,) = read_pages(sheet.bytes())
    assert [line.text for line in lines_of(page.letters)] == ["front rail, 48 in", "back rail"]
