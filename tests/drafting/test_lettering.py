"""Lettering: measured widths against the font itself, fractions, wrapping, cutting."""

from __future__ import annotations

import re

import pytest
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont
from hypothesis import example, given
from hypothesis import strategies as st

from benchjoin.drafting import widths
from benchjoin.drafting.lettering import (
    ELLIPSIS,
    ascent,
    descent,
    font_size,
    mixed_numbers,
    set_runs,
    shorten,
    text_width,
    wrap,
)
from benchjoin.drafting.primitives import Text, text_box
from benchjoin.drafting.writers.fonts import FOLDER, font_file

WORDS = "front and back rails, wide, honey-house"
TABLES = {False: widths.PLAIN, True: widths.BOLD}
TEXTS = st.text(max_size=40) | st.lists(
    st.sampled_from(["48", "3/8", "7/16", "deep", "(", "1/2", "A1", "12/11", " "]), max_size=8
).map(" ".join)


@pytest.mark.parametrize("bold", [False, True])
def test_the_table_matches_the_font(bold):
    font = TTFont(font_file(bold=bold, ending="ttf"))
    metrics = font["hmtx"]
    assert font["head"].unitsPerEm == widths.UNITS_PER_EM
    assert {chr(code): metrics[name][0] for code, name in font.getBestCmap().items()} == TABLES[bold]


@pytest.mark.parametrize("bold", [False, True])
def test_the_small_file_has_the_same_letters_as_far_as_it_goes(bold):
    small, full = (TTFont(font_file(bold=bold, ending=ending)) for ending in ("woff", "ttf"))
    letters = set(small.getBestCmap())
    assert letters < set(full.getBestCmap())
    assert {ord(letter) for letter in "Aag09/½⅞ßé°×–—″′⌀≤□"} <= letters


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("ending", ["ttf", "woff"])
def test_the_font_has_its_own_name_and_keeps_its_notices(bold, ending):
    names = TTFont(font_file(bold=bold, ending=ending))["name"]
    told = " ".join(names.getDebugName(number) for number in (1, 3, 4, 6))
    assert names.getDebugName(1) == widths.FAMILY
    assert not re.search("Bitstream|Vera|Arev|Tavmjong|DejaVu", told)
    assert "Permission is hereby granted" in names.getDebugName(13)
    notice = (FOLDER / "LICENCE.txt").read_text(encoding="utf-8")
    assert " ".join(names.getDebugName(13).split()) in " ".join(notice.split())


@pytest.mark.parametrize("letters", ["¼½¾⅛⅜⅝⅞⅓⅔", "–—″′×°±⌀→←↑↓↔·≤≥−⁄", "⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "☐✓", "äéøßÅ"])
def test_signs_of_the_trade_are_in_the_table(letters):
    assert set(letters) <= set(widths.PLAIN)


def test_a_height_is_that_of_the_capitals():
    assert font_size(2.5) == pytest.approx(2.5 / 0.729, rel=1e-3)
    assert ascent(2.5) > 2.5
    assert 0 < descent(2.5) < 1


def test_figures_are_all_of_one_width_so_that_columns_line_up():
    assert len({widths.PLAIN[figure] for figure in "0123456789"}) == 1


def test_width_grows_with_height_and_weight():
    assert text_width(WORDS, 5) == pytest.approx(2 * text_width(WORDS, 2.5))
    assert text_width("48 3/8", 7) == pytest.approx(2 * text_width("48 3/8", 3.5))
    assert text_width(WORDS, 5, bold=True) > text_width(WORDS, 5)
    assert text_width("", 5) == 0


def test_an_unknown_letter_has_a_width():
    assert text_width("木", 2.5) == pytest.approx(font_size(2.5))


@pytest.mark.parametrize(
    "text, found",
    [
        ("48 3/8", ["48 3/8"]),
        ("5/8 deep", ["5/8"]),
        ("2 7/16 full", ["2 7/16"]),
        ("A1 48 3/8 foot shelf", ["48 3/8"]),
        ("A1 3/8", ["3/8"]),
        ("(53 3/4)", ["53 3/4"]),
        ('1 1/2" = 1\'-0"', ["1 1/2"]),
        ("2-3/4″ x 31/64, 63/64.", ["3/4", "31/64", "63/64"]),
        ("20 3/8 1/2", ["20 3/8", "1/2"]),
    ],
)
def test_inch_fractions_are_found_with_their_whole_number(text, found):
    assert [number[0] for number in mixed_numbers(text)] == found


@pytest.mark.parametrize(
    "text",
    [
        *("2026/11", "2026/8", "A4/A3", "bench/front rail", "1/bench", "2/back left leg", "3/4/2026", "5/4", "8/8"),
        *("1/3", "3/100", "123/128", "0/8", "03/8", "x3/8", "3/8in", "1.3/8", "3/8.5", "/3/8", "3/8/"),
        *("3 /8", "3/ 8", ""),
    ],
)
def test_what_is_no_inch_fraction_stays_on_the_line(text):
    assert list(mixed_numbers(text)) == []
    assert all(run.places == ((0.0, 0.0),) for run in set_runs(text, 2.5))


@given(TEXTS, st.sampled_from([1.8, 2.5, 3.5, 5.0]), st.booleans())
@example("A1 48 3/8 foot shelf", 2.5, False)
def test_the_runs_are_the_text_and_end_where_it_ends(text, height, bold):
    runs = set_runs(text, height, bold=bold)
    assert "".join(run.string for run in runs) == text
    if runs:
        *_, (string, size, places) = runs
        last = string if len(places) == 1 else string[-1]
        assert places[-1][0] + text_width(last, size, bold=bold) == pytest.approx(text_width(text, height, bold=bold))


@pytest.mark.parametrize("height, small", [(2.5, 2.5), (3.5, 2.5), (5, 3.5), (7, 5), (10, 7)])
def test_figures_of_a_fraction_are_of_the_series_and_as_high_as_can_be_read(height, small):
    assert [run.height for run in set_runs("48 3/8 full", height)] == [height, pytest.approx(small), height]
    assert set_runs("3/8", 1.8)[0].height == 1.8  # headings keep their fractions on the line


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("height", [2.5, 3.5, 5, 10])
@pytest.mark.parametrize("fraction", ["1/2", "3/8", "15/16", "47/64"])
def test_a_fraction_keeps_inside_the_box_of_its_text_and_its_figures_apart(fraction, height, bold):
    font = TTFont(font_file(bold=bold, ending="ttf"))
    names, glyphs = font.getBestCmap(), font.getGlyphSet()
    run = set_runs(f"48 {fraction}", height, bold=bold)[1]
    unit = run.height / widths.CAPITAL
    boxes = []
    for letter, (x, y) in zip(run.string, run.places, strict=True):
        pen = BoundsPen(glyphs)
        glyphs[names[ord(letter)]].draw(pen)
        if letter == " ":
            continue
        x0, y0, x1, y1 = (unit * edge for edge in pen.bounds)
        boxes.append((x + x0, y + y0, x + x1, y + y1))
    _, low, right, high = text_box(Text((0, 0), f"48 {fraction}", height, bold=bold)).bounds
    assert min(box[0] for box in boxes) > text_width("48", height, bold=bold) + 0.1 * height
    assert low < min(box[1] for box in boxes) < 0
    assert max(box[3] for box in boxes) <= high + 1e-9
    assert max(box[2] for box in boxes) < right
    stroke = fraction.index("/")
    assert boxes[stroke - 1][1] > boxes[stroke][1] > boxes[stroke + 1][1]  # raised, between, dropped
    assert boxes[stroke + 1][0] > boxes[stroke - 1][2]  # the lower figure begins right of the upper one's end


@given(TEXTS, st.floats(1, 80))
@example("front 48 3/8 and 51 7/8", 12)
def test_wrapped_lines_keep_every_letter_and_the_width(text, width):
    lines = wrap(text, 2.5, width)
    assert "".join("".join(lines).split()) == "".join(text.split())
    for line in lines:
        assert text_width(line, 2.5) <= width or len(line) == 1


MIXED = ["48 3/8", "A1", "front", "deep,", "5/8", "7", "1 15/16"]


@given(st.lists(st.sampled_from(MIXED), min_size=1), st.floats(14, 80))
def test_a_mixed_number_stays_on_its_line(words, width):
    text = " ".join(words)
    numbers = [number[0] for number in mixed_numbers(text)]
    assert [number[0] for line in wrap(text, 2.5, width) for number in mixed_numbers(line)] == numbers


def test_a_mixed_number_wider_than_a_line_is_broken_at_its_space():
    assert wrap("48 3/8", 2.5, text_width("3/8", 2.5)) == ["48", "3/8"]


@given(TEXTS, st.floats(0, 60))
@example("rail 48 3/8 full", 12)
def test_a_shortened_text_fits_and_says_so(text, width):
    cut = shorten(text, 2.5, width)
    assert text_width(cut, 2.5) <= width
    assert cut in (text, "") or cut.endswith(ELLIPSIS)


@given(st.floats(4, 40))
def test_no_mixed_number_is_cut_short(width):
    cut = shorten("rail 48 3/16 and 51 15/16 full", 2.5, width)
    assert [number[0] for number in mixed_numbers(cut)] == ["48 3/16", "51 15/16"][: cut.count("/")]
    assert not re.search(r"(48|51)…", cut)
