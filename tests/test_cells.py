"""Lists that go through a spreadsheet: nothing in them is worked out as a formula, and what went out comes back."""

from __future__ import annotations

import csv
import io
import re

import attrs
import pytest
from designs import plain_bench as bench
from hypothesis import given
from hypothesis import strategies as st

from benchjoin import cells, cut_list, lay_out, milling_plan, read_measurements
from benchjoin.shop.overview import marks_list
from benchjoin.tables import Table

STARTS = ("=", "+", "-", "@", "\t", "\r")
"""OWASP, CSV Injection: cells that begin so are taken for formulas (from memory)."""
EVIL = ['=HYPERLINK("http://x.example","y")', "+1+cmd|' /C calc'!A0", "-2+3+cmd|x", "@SUM(1+1)*cmd|x", "\t=1+1"]


@pytest.mark.parametrize("name", EVIL)
def test_no_cell_of_any_list_begins_as_a_formula(name):
    table = Table(name, (name, "b"), ((name, "-3"), ("front rail", "3 1/4")))
    rows = list(csv.reader(io.StringIO(table.csv(), newline="")))
    assert not [cell for line in rows for cell in line if cell.startswith(STARTS) and cell != "-3"]
    assert rows[1][1] == "-3"  # a number stays one
    assert [cells.back(cell) for cell in rows[0]] == [name, "b"]


@given(st.text(max_size=40))
def test_what_went_out_comes_back(text):
    sent = cells.out(text)
    assert not sent.startswith(STARTS) or re.fullmatch(r"[+-]?[\d.,/ ]+", text)
    assert cells.back(sent) == text or (text.startswith("'") and text[1:].startswith(STARTS))


def test_a_level_that_is_called_like_a_formula_is_measured_all_the_same():
    levels = [
        attrs.evolve(own, name="=shelf") if getattr(own, "name", "") == "foot shelf" else own for own in bench.stack
    ]
    frame = attrs.evolve(bench, stack=levels)
    layout = lay_out(frame)
    lines = milling_plan(layout).csv().splitlines()
    assert any(line.startswith("1/=shelf") for line in lines)  # the piece stands before it, so that it is no formula
    filled = [f"{line.rsplit(',', 2)[0]},,2.7" if line.startswith("1/=shelf/front rail,") else line for line in lines]
    measured = read_measurements("\r\n".join(filled) + "\r\n", frame)
    assert measured.measured["1/=shelf/front rail"]["width"] == pytest.approx(2.7 * 25.4)
    for table in (cut_list(layout), marks_list(layout)):
        for line in csv.reader(io.StringIO(table.csv(), newline="")):
            assert not [cell for cell in line if cell.startswith(STARTS)]


@pytest.mark.parametrize(
    "cell", [" " * 200_000, "a " * 100_000, "(" * 100_000, "(a" * 50_000, "\t" * 9 + "(mm" * 60_000]
)
def test_a_heading_of_blanks_and_brackets_is_read_at_once(cell):
    """Steps, not seconds: the whole text is looked at once, for which Python's own split is the measure."""
    name, unit = cells.heading(cell)
    assert unit == ""
    assert name == " ".join(cell.split())


@pytest.mark.parametrize(
    "cell, name, unit",
    [("Width (in)", "width", "in"), (" WIDTH[mm] ", "width", "mm"), ("part", "part", ""), ("to  (  cm )", "to", "cm")],
)
def test_headings_say_their_units(cell, name, unit):
    assert cells.heading(cell) == (name, unit)


def test_markdown_is_left_no_markup():
    table = Table("<b>*x*</b>", ("a_b", "[x](http://y.example)"), (("<script>", "line\nbreak | bar"),), ("`note`",))
    text = table.markdown()
    assert "<" not in text.replace("&lt;", "")
    assert not re.search(r"(?<!\\)\]\(", text)
    assert len(text.split("\n\n")[1].splitlines()) == 3
    assert r"line break \| bar" in text
    assert r"\`note\`" in text
