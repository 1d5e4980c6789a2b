"""Lettering: measured widths against the font itself, wrapping, cutting."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchjoin.drafting import widths
from benchjoin.drafting.lettering import ELLIPSIS, ascent, descent, font_size, shorten, text_width, wrap

FONTS = Path("/usr/share/fonts/truetype/dejavu")
WORDS = "front and back rails, 3 1/2 in wide, honey-house"


@pytest.mark.parametrize(
    "file, table", [("DejaVuSans.ttf", widths.PLAIN), ("DejaVuSans-Bold.ttf", widths.BOLD)]
)
def test_the_table_matches_the_font(file, table):
    fonts = pytest.importorskip("fontTools.ttLib")
    if not (FONTS / file).exists():
        pytest.skip("the font is not installed here")
    font = fonts.TTFont(FONTS / file)
    names = font.getBestCmap()
    assert font["head"].unitsPerEm == widths.UNITS_PER_EM
    assert {letter: font["hmtx"][names[ord(letter)]][0] for letter in table} == table


@pytest.mark.parametrize(
    "letters", ["¼½¾⅛⅜⅝⅞⅓⅔", "–—″′×°±⌀→←↑↓↔·≤≥−⁄", "⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "☐✓", "äéøßÅ"]
)
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
    assert text_width(WORDS, 5, bold=True) > text_width(WORDS, 5)
    assert text_width("", 5) == 0


def test_an_unknown_letter_has_a_width():
    assert text_width("木", 2.5) == pytest.approx(font_size(2.5))


@given(st.text(max_size=60), st.floats(1, 80))
def test_wrapped_lines_keep_every_letter_and_the_width(text, width):
    lines = wrap(text, 2.5, width)
    assert "".join("".join(lines).split()) == "".join(text.split())
    for line in lines:
        assert text_width(line, 2.5) <= width or len(line) == 1


@given(st.text(max_size=40), st.floats(0, 60))
def test_a_shortened_text_fits_and_says_so(text, width):
    cut = shorten(text, 2.5, width)
    assert text_width(cut, 2.5) <= width
    assert cut in (text, "") or cut.endswith(ELLIPSIS)
