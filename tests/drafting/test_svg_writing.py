"""SVG: true millimetres, clean numbers, few elements, the same bytes each time."""

from __future__ import annotations

import base64
import io
import math
import re
import xml.etree.ElementTree as ET

import attrs
import pytest
import svgelements
from hypothesis import given, settings
from hypothesis import strategies as st

from benchjoin.drafting.lettering import font_size, text_width
from benchjoin.drafting.linework import KINDS, Linework
from benchjoin.drafting.primitives import Disc, Fill, Line, Text
from benchjoin.drafting.sheets.sheet import Sheet
from benchjoin.drafting.writers.fonts import font_file
from benchjoin.drafting.writers.svg import filled, number, svg_text
from benchjoin.errors import PaperError

SVG = "{http://www.w3.org/2000/svg}"


def sheet(*drawing, width=215.9, height=279.4):
    return Sheet(name="test", title="Test", width=width, height=height, drawing=drawing)


def paths(*drawing):
    """Every path but the paper."""
    return ET.fromstring(sheet(*drawing).svg()).findall(f"{SVG}path")[1:]


def test_one_unit_is_one_millimetre():
    root = ET.fromstring(sheet().svg())
    assert root.get("width") == "215.9mm"
    assert root.get("height") == "279.4mm"
    assert root.get("viewBox") == "0 0 215.9 279.4"


def test_y_is_turned_over_once():
    (path,) = paths(Line(((10, 20), (30, 40))))
    assert path.get("d") == "M10 259.4L30 239.4"


def test_an_independent_reader_finds_the_marks_in_millimetres():
    text = sheet(Line(((10, 20), (110, 20)), "visible"), height=1830).svg()
    parsed = svgelements.SVG.parse(io.StringIO(text), ppi=25.4, reify=True)
    box = [e for e in parsed.elements() if isinstance(e, svgelements.Path)][1].bbox(with_stroke=False)
    assert box == pytest.approx((10, 1810, 110, 1810))


def test_all_lines_of_a_kind_share_one_path():
    drawing = [Line(((i, 0), (i, 5)), kind) for i in range(100) for kind in KINDS]
    found = paths(*drawing)
    assert len(found) == len(KINDS)


def test_weights_and_dashes_come_from_the_table():
    found = {
        p.get("stroke-width") + " " + p.get("stroke-dasharray", "")
        for p in paths(*(Line(((0, 0), (1, 1)), k) for k in KINDS))
    }
    assert found == {
        "0.13 ",
        "0.25 ",
        "0.25 3 0.75",
        "0.25 1.5 0.75",
        "0.25 6 0.75 0.125 0.75",
        "0.25 6 0.75 0.125 0.75 0.125 0.75",
        "0.5 ",
        "0.7 ",
    }


def test_another_group_of_weights_may_be_taken():
    drawn = sheet(Line(((0, 0), (1, 1)), "visible"), Line(((0, 0), (1, 1)), "hidden"))
    found = [
        (path.get("stroke-width"), path.get("stroke-dasharray"))
        for path in ET.fromstring(attrs.evolve(drawn, linework=Linework(wide=0.7, narrow=0.35)).svg())
        if path.get("stroke")
    ]
    assert found == [("0.35", "4.2 1.05"), ("0.7", None)]


def test_blanks_lie_lowest_then_lines_then_black_then_text():
    root = ET.fromstring(
        sheet(
            Text((5, 5), "a"),
            Fill((((0, 0), (1, 0), (1, 1)),)),
            Line(((0, 0), (1, 1))),
            Fill((((0, 0), (1, 0), (1, 1)),), "white"),
        ).svg()
    )
    order = [(e.tag.removeprefix(SVG), e.get("fill"), e.get("stroke")) for e in root if not e.tag.endswith("defs")]
    assert order == [
        ("path", "#fff", None),
        ("path", "#fff", None),
        ("path", "none", "#000"),
        ("path", "#000", None),
        ("g", "#000", None),
    ]


def test_a_region_with_a_hole_is_filled_even_odd_and_overlapping_arrows_never_cancel():
    ring, hole = ((0, 0), (9, 0), (9, 9), (0, 9)), ((3, 3), (6, 3), (6, 6), (3, 6))
    (path,) = paths(Fill((ring, hole)))
    assert path.get("fill-rule") == "evenodd"
    (path,) = paths(Fill((ring,)), Fill((hole[::-1],)))
    assert path.get("fill-rule") is None
    assert path.get("d").count("Z") == 2


def test_discs_are_stroked_or_filled():
    stroked, filled = paths(Disc((5, 5), 2), Disc((15, 5), 2, filled=True))
    assert stroked.get("fill") == "none"
    assert filled.get("fill") == "#000"


@pytest.mark.parametrize(
    "words", ["a < b & c > d", "\"3/4\" & 'x'", "5′ 3″ × ½ ⌀ ≤ 木", "]]>", "&amp;", "12 % %s {0} ~"]
)
def test_words_come_back_as_they_were_written(words):
    root = ET.fromstring(sheet(Text((5, 5), words)).svg())
    assert "".join(text.text for text in root.iter(f"{SVG}text")) == words


@pytest.mark.parametrize("control", ["\x00", "\x07", "\n", "\x1b", "\ud800", "\x85"])
def test_control_characters_become_question_marks(control):
    root = ET.fromstring(sheet(Text((5, 5), f"a{control}b")).svg())
    assert root.find(f".//{SVG}text").text == "a?b"


def test_a_text_carries_its_own_size_anchor_and_turn():
    text = ET.fromstring(sheet(Text((10, 20), "57", 2.5, "middle", 90, bold=True)).svg()).find(f".//{SVG}text")
    assert float(text.get("font-size")) == pytest.approx(2.5 / 0.729, rel=1e-3)
    assert text.get("text-anchor") == "middle"
    assert text.get("transform") == "rotate(-90 10 259.4)"
    assert text.get("font-weight") == "bold"


def test_a_fraction_is_a_run_of_its_own_each_figure_in_its_place():
    root = ET.fromstring(sheet(Text((100, 20), "48 3/8 full", 2.5, "end")).svg())
    whole, fraction, after = root.iter(f"{SVG}text")
    assert [run.text for run in (whole, fraction, after)] == ["48", " 3/8", " full"]
    assert {run.get("text-anchor") for run in (whole, fraction, after)} == {None}
    assert float(whole.get("x")) == pytest.approx(100 - text_width("48 3/8 full", 2.5), abs=1e-3)
    _, three, stroke, eight = (259.4 - float(y) for y in fraction.get("y").split())
    assert eight < stroke < three
    assert eight < 0 < three
    assert sorted(fraction.get("x").split(), key=float) == fraction.get("x").split()
    assert float(fraction.get("font-size")) == pytest.approx(font_size(2.5), abs=1e-3)


def test_runs_that_begin_or_end_in_a_space_keep_it():
    kept = "{http://www.w3.org/XML/1998/namespace}space"
    root = ET.fromstring(sheet(Text((9, 9), "48 3/8 full")).svg())
    assert [run.get(kept) for run in root.iter(f"{SVG}text")] == [None, "preserve", "preserve"]


def test_a_turned_fraction_turns_about_where_its_text_is_held():
    root = ET.fromstring(sheet(Text((100, 20), "48 3/8", 2.5, "middle", 90)).svg())
    assert {run.get("transform") for run in root.iter(f"{SVG}text")} == {"rotate(-90 100 259.4)"}


def test_the_font_is_carried_only_when_asked_for_and_only_in_the_weights_that_are_written():
    plain, bold = Text((5, 5), "a"), Text((5, 9), "a", bold=True)
    assert "@font-face" not in sheet(plain, bold).svg()
    assert svg_text(sheet(plain), embed=True).count("@font-face") == 1
    assert "font-weight:bold" in svg_text(sheet(bold), embed=True)
    assert svg_text(sheet(plain, bold), embed=True).count("@font-face") == 2
    assert "@font-face" not in svg_text(sheet(Line(((0, 0), (1, 1)))), embed=True)


def test_a_carried_font_is_the_packages_own_and_small():
    text = svg_text(sheet(Text((5, 5), "a")), embed=True)
    (data,) = re.findall(r"url\(data:font/woff;base64,([^)]*)\)", text)
    assert base64.b64decode(data) == font_file(bold=False, ending="woff").read_bytes()
    assert len(data) < 20_000


@pytest.mark.parametrize(
    "value, written",
    [
        (0.1 + 0.2, "0.3"),
        (-0.0001, "0"),
        (-0.0, "0"),
        (1600.0, "1600"),
        (2.00049, "2"),
        (-1.5, "-1.5"),
        (1e-9, "0"),
    ],
)
def test_numbers_are_short_and_plain(value, written):
    assert number(value) == written


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_a_number_that_is_not_finite_is_refused_at_the_door(value):
    with pytest.raises(PaperError):
        number(value)


@given(st.lists(st.floats(-1e6, 1e6) | st.integers(-(10**6), 10**6).map(lambda n: n / 1000), min_size=1))
def test_numbers_trimmed_together_are_those_trimmed_one_by_one(values):
    assert filled(" ".join(["%.3f\0"] * len(values)), values) == " ".join(number(value) for value in values)


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
@pytest.mark.parametrize("made", [lambda points: Line(points), lambda points: Fill((points,))])
def test_a_number_among_many_that_is_not_finite_is_refused(value, made):
    item = made(((0, 0), (1, 1), (2, 2)))
    spoilt = ((0, 0), (1, value), (2, 2))  # behind the door of the drawing, which would have refused it
    object.__setattr__(item, *(("points", spoilt) if isinstance(item, Line) else ("rings", (spoilt,))))
    with pytest.raises(PaperError, match="finite"):
        sheet(item).svg()


@given(st.lists(st.tuples(st.floats(-1e4, 1e4), st.floats(-1e4, 1e4)), min_size=2, max_size=8))
@settings(max_examples=50, deadline=None)
def test_no_number_has_more_than_three_decimals_or_an_exponent(points):
    (path,) = paths(Line(points))
    for written in re.findall(r"-?[\d.e+-]+", path.get("d")):
        assert re.fullmatch(r"-?\d+(\.\d{1,3})?", written)
        assert written != "-0"


def test_the_same_sheet_gives_the_same_text():
    drawing = (Line(((0, 0), (1, 1))), Text((1, 1), "a"), Disc((3, 3), 1))
    assert sheet(*drawing).svg() == sheet(*drawing).svg()
    assert " id=" not in sheet(*drawing).svg()


def test_an_empty_text_and_a_single_point_are_not_written():
    assert paths(Line(((1, 1),)), Text((0, 0), "")) == []
