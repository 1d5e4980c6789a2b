"""What the drawing standards print, held against the tables of trade/ and the drawings of drafting/."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from benchjoin.drafting.dimensions.style import STYLE
from benchjoin.drafting.linework import Linework
from benchjoin.drafting.sheets.border import frame_sheet
from benchjoin.drafting.sheets.title_block import TitleBlock
from benchjoin.errors import PaperError
from benchjoin.trade.paper import PAPERS, PDF_LONGEST, PDF_SHORTEST, ROLLS, paper_size
from benchjoin.trade.standards import (
    ARROW_ANGLE_LEAST,
    ARROW_ANGLE_MOST,
    BINDING_MARGIN,
    DATA_FIELDS,
    EXTENSION_OVERSHOOT,
    FIRST_ROW_LEAST,
    LETTERING,
    LINE_PITCH,
    LINE_PITCH_CLOSE,
    LINE_TYPES,
    LINE_WIDTHS,
    MARGIN,
    NEXT_ROW_LEAST,
    SCALES,
    TITLE_BLOCK_WIDTH,
    WIDE_TO_NARROW,
    fitting_scale,
)

# ISO 216, A series, in mm
A_SERIES = {"A0": (841, 1189), "A1": (594, 841), "A2": (420, 594), "A3": (297, 420), "A4": (210, 297)}
# ASME Y14.1, in inches
ANSI = {"A": (8.5, 11), "B": (11, 17), "C": (17, 22), "D": (22, 34), "E": (34, 44)}
# ISO 5457:1999 Table 1, drawing space inside the border with a 20 mm binding edge, in mm; from memory
DRAWING_SPACE = {"A0": (821, 1159), "A1": (574, 811), "A2": (400, 564), "A3": (277, 390), "A4": (180, 277)}


@pytest.mark.parametrize("name, size", A_SERIES.items())
def test_a_series_matches_iso_216(name, size):
    assert paper_size(name) == size


def test_a0_is_a_square_metre_and_each_sheet_is_half_the_one_before():
    assert 841 * 1189 == 999_949
    sizes = [paper_size(name) for name in A_SERIES]
    for (width, height), (half_width, half_height) in pairwise(sizes):
        assert half_height == width
        assert abs(half_width - height / 2) <= 0.5  # rounded down to the whole millimetre
        assert height / width == pytest.approx(math.sqrt(2), rel=0.005)


@pytest.mark.parametrize("letter, inches", ANSI.items())
def test_flat_sheets_match_asme_y14_1(letter, inches):
    width, height = paper_size(f"ANSI {letter}")
    assert (width / 25.4, height / 25.4) == pytest.approx(inches, abs=1e-9)


def test_letter_and_tabloid_are_the_first_two_flat_sheets_whatever_their_case():
    assert paper_size("Letter") == paper_size("ansi a") == (215.9, 279.4)
    assert paper_size("TABLOID") == paper_size("ANSI  B") == (279.4, 431.8)


def test_an_unknown_paper_is_answered_with_those_there_are():
    with pytest.raises(PaperError, match=r"'A9'.*A0, A1.*ANSI E, Letter, Tabloid"):
        paper_size("A9")


def test_rolls_are_as_wide_as_they_are_sold():
    widths = {roll.name: roll.width for roll in ROLLS}
    assert widths["24 in"] == 609.6
    assert widths["36 in"] == 914.4
    assert widths["914 mm"] == 914


def test_a_pdf_page_ends_at_200_inches():
    # PDF Reference 1.6, Appendix H: 14,400 units of 1/72 in
    assert pytest.approx(5080.0, abs=1e-9) == PDF_LONGEST


@pytest.mark.parametrize("name, space", DRAWING_SPACE.items())
def test_border_matches_iso_5457_from_memory(name, space):
    width, height = paper_size(name)
    if name != "A4":  # larger sheets lie on their side, and the bound edge is a short one
        width, height, space = height, width, space[::-1]
    drawing, _ = frame_sheet(width, height, TitleBlock(punched=True))
    border = next(item for item in drawing if getattr(item, "kind", "") == "border")
    xs, ys = zip(*border.points, strict=True)
    assert (max(xs) - min(xs), max(ys) - min(ys)) == pytest.approx(space)
    assert min(xs) == 20


def test_line_widths_match_iso_128_2_and_step_by_the_root_of_two():
    widths = [row.width for row in LINE_WIDTHS]
    assert widths == [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0]
    for narrow, wide in pairwise(widths):
        assert wide / narrow == pytest.approx(math.sqrt(2), rel=0.03)


@pytest.mark.parametrize("group", [Linework(), Linework(wide=0.7, narrow=0.35)])
def test_a_group_of_lines_is_two_to_one(group):
    assert group.pen("visible").width == 2 * group.pen("thin").width


@pytest.mark.parametrize(
    "kind, lengths",
    [("hidden", (12, 3)), ("centre", (24, 3, 0.5, 3)), ("phantom", (24, 3, 0.5, 3, 0.5, 3))],
)
@pytest.mark.parametrize("narrow", [0.25, 0.35])
def test_dashes_match_iso_128_2_in_line_widths_from_memory(kind, lengths, narrow):
    pen = Linework(wide=2 * narrow, narrow=narrow).pen(kind)
    assert pen.dashes == pytest.approx([length * narrow for length in lengths], abs=5e-4)


def test_line_types_carry_the_numbers_of_iso_128_2():
    assert [row.number for row in LINE_TYPES] == ["01.1", "01.2", "02.1", "04.1", "05.1"]


def test_lettering_heights_match_iso_3098_1():
    assert LETTERING == (1.8, 2.5, 3.5, 5, 7, 10, 14, 20)


def test_scales_match_iso_5455():
    metric = [scale.label for scale in SCALES if scale.system != "inch"]
    assert metric[:6] == ["50:1", "20:1", "10:1", "5:1", "2:1", "1:1"]
    assert metric[6:12] == ["1:2", "1:5", "1:10", "1:20", "1:50", "1:100"]
    assert "1:2.5" not in metric


@pytest.mark.parametrize(
    "label, under",
    [
        ('6" = 1\'-0"', 2),
        ('3" = 1\'-0"', 4),
        ('1 1/2" = 1\'-0"', 8),
        ('1" = 1\'-0"', 12),
        ('3/4" = 1\'-0"', 16),
        ('1/4" = 1\'-0"', 48),
        ('1/8" = 1\'-0"', 96),
    ],
)
def test_inch_scales_match_the_table_of_architectural_scales(label, under):
    assert next(scale.ratio for scale in SCALES if scale.label == label) == pytest.approx(1 / under)


def test_a_metre_at_one_to_ten_is_a_hundred_millimetres():
    scale = next(scale for scale in SCALES if scale.label == "1:10")
    assert 1000 * scale.ratio == pytest.approx(100)


@pytest.mark.parametrize(
    "model, system, label",
    [
        ((150, 200), "metric", "1:1"),
        ((180, 260), "metric", "1:1"),  # just fits
        ((180.1, 260), "metric", "1:2"),
        ((1450, 1780), "metric", "1:10"),
        ((1450, 1780), "inch", '1" = 1\'-0"'),
        ((10, 10), "inch", "1:1"),  # nothing is enlarged unless it is asked for
    ],
)
def test_the_largest_standard_scale_that_fits_is_taken(model, system, label):
    assert fitting_scale(*model, 180, 260, system).label == label


def test_a_detail_may_be_enlarged():
    assert fitting_scale(10, 10, 180, 260, largest=5).label == "5:1"


def test_what_fits_no_scale_is_refused():
    with pytest.raises(PaperError, match="larger paper"):
        fitting_scale(1e6, 10, 180, 260)
    with pytest.raises(PaperError, match="larger paper"):
        fitting_scale(10, 10, 0, 260)


def test_rows_of_dimensions_keep_the_distances_of_asme_y14_5():
    assert STYLE.first_row >= FIRST_ROW_LEAST == 10
    assert STYLE.next_row >= NEXT_ROW_LEAST == 6


def test_data_fields_match_iso_7200():
    letters = {field.name: field.letters for field in DATA_FIELDS}
    assert letters["identification number"] == 16
    assert letters["date of issue"] == 10
    assert letters["title"] == 25
    assert {field.name for field in DATA_FIELDS if field.mandatory} == {
        "legal owner",
        "identification number",
        "date of issue",
        "sheet number",
        "title",
        "approval person",
        "creator",
        "document type",
    }


def test_every_row_names_its_source():
    for row in (*PAPERS, *ROLLS, *LINE_WIDTHS, *LINE_TYPES, *SCALES, *DATA_FIELDS):
        assert str(row.source)


# ISO 7200:2004 Table: how many characters each data field should hold; the legal owner's is not said
CHARACTERS = {
    "legal owner": None,
    "identification number": 16,
    "date of issue": 10,
    "sheet number": 4,
    "title": 25,
    "approval person": 20,
    "creator": 20,
    "document type": 30,
    "revision index": 2,
    "number of sheets": 4,
    "supplementary title": 25,
}


def test_data_fields_hold_as_many_characters_as_iso_7200_says():
    assert {field.name: field.letters for field in DATA_FIELDS} == CHARACTERS


def test_widths_go_two_to_one():
    """ISO 128-2: two widths on a drawing, 2 : 1."""
    assert WIDE_TO_NARROW == 2


def test_lines_of_text_stand_as_far_apart_as_iso_3098_has_them():
    """Type B at a height of 3.5 mm: 6.65, or 5.25 mm without marks over the letters."""
    assert pytest.approx((6.65, 5.25)) == (LINE_PITCH * 3.5, LINE_PITCH_CLOSE * 3.5)


def test_reductions_roughly_match_iso_5455_from_memory():
    under = (2, 5, 10, 20, 50, 100, 200, 500)
    found = [scale for scale in SCALES if scale.system == "metric" and scale.ratio < 1]
    assert [(scale.label, scale.ratio) for scale in found] == [(f"1:{n}", 1 / n) for n in under]


def test_arrows_extension_lines_borders_and_title_blocks_roughly_match_from_memory():
    """ISO 129-1: 15 to 30 degrees, about eight widths of 0.25 past; ISO 5457: 10 and 20 mm; ISO 7200: 180 mm."""
    assert (ARROW_ANGLE_LEAST, ARROW_ANGLE_MOST) == (15, 30)
    assert pytest.approx(2.0) == EXTENSION_OVERSHOOT
    assert (MARGIN, BINDING_MARGIN) == (10, 20)
    assert TITLE_BLOCK_WIDTH == 180


def test_pdf_pages_match_the_pdf_reference():
    """PDF Reference 1.6, Appendix H: 3 to 14,400 points of 1/72 in, 200 in at most."""
    assert pytest.approx(200 * 25.4) == PDF_LONGEST
    assert pytest.approx(3 / 72 * 25.4) == PDF_SHORTEST
