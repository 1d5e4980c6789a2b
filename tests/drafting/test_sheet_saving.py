"""Sheets: sizes, endings, files that are whole or not there."""

from __future__ import annotations

import math
import subprocess
import sys

import attrs
import pytest

from benchjoin.drafting.primitives import Line, Text
from benchjoin.drafting.sheets.sheet import Sheet
from benchjoin.drafting.writers import saving
from benchjoin.drafting.writers.saving import write_whole
from benchjoin.drafting.writers.svg import svg_text
from benchjoin.errors import PaperError

SHEET = Sheet(name="set-a", title="Set A", width=610, height=1830, drawing=(Line(((0, 0), (9, 9))),))


@pytest.mark.parametrize("ending, start", [(".svg", b"<svg"), (".pdf", b"%PDF-1.6"), (".PNG", b"\x89PNG")])
def test_a_sheet_is_saved_by_its_ending(tmp_path, ending, start):
    path = SHEET.save(tmp_path / f"set-a{ending}")
    assert path == tmp_path / f"set-a{ending}"
    assert path.read_bytes().startswith(start)
    assert [p.name for p in tmp_path.iterdir()] == [path.name]


def test_a_path_may_be_a_string(tmp_path):
    assert SHEET.save(str(tmp_path / "a.svg")).exists()


@pytest.mark.parametrize("name", ["a.jpg", "a", "a.svg.bak"])
def test_another_ending_is_answered_with_the_three_there_are(tmp_path, name):
    with pytest.raises(PaperError, match=r"\.svg, \.pdf or \.png"):
        SHEET.save(tmp_path / name)
    assert list(tmp_path.iterdir()) == []


def test_a_save_that_fails_leaves_what_was_there(tmp_path, monkeypatch):
    path = tmp_path / "a.svg"
    path.write_text("before")

    def full(*_):
        raise OSError("No space left on device")

    monkeypatch.setattr(saving.os, "replace", full)
    with pytest.raises(OSError, match="No space"):
        SHEET.save(path)
    assert [p.name for p in tmp_path.iterdir()] == ["a.svg"]
    assert path.read_text() == "before"


def test_a_folder_that_is_not_there_is_an_error(tmp_path):
    with pytest.raises(PaperError, match="no folder"):
        write_whole(tmp_path / "nowhere" / "a.svg", b"")


@pytest.mark.parametrize("bad", [0, -5, math.nan, math.inf])
def test_a_sheet_of_no_size_is_refused(bad):
    with pytest.raises(PaperError):
        attrs.evolve(SHEET, width=bad)
    with pytest.raises(PaperError):
        attrs.evolve(SHEET, height=bad)


def test_a_sheet_shows_itself():
    assert repr(SHEET) == "<Sheet set-a: 610 × 1830 mm, 1:1>"
    assert repr(attrs.evolve(SHEET, name="b", width=215.9, scale="1:10")) == "<Sheet b: 215.9 × 1830 mm, 1:10>"


def test_a_saved_and_a_shown_sheet_carry_their_font(tmp_path):
    words = attrs.evolve(SHEET, drawing=[Text((5, 5), "57 1/2")])
    assert words.save(tmp_path / "a.svg").read_text(encoding="utf-8") == svg_text(words, embed=True) + "\n"
    assert "@font-face" in words._repr_html_()
    assert "@font-face" not in words.svg()
    assert "@font-face" not in SHEET._repr_html_()  # no word, no font


def test_a_drawing_may_come_as_a_list():
    assert attrs.evolve(SHEET, drawing=list(SHEET.drawing)) == SHEET


def test_heavy_libraries_wait_until_a_file_is_written():
    heavy = "{'svgwrite', 'cairosvg', 'cairocffi'}"
    code = f"import sys, benchjoin.drafting.sheets.sheet; print(sorted({heavy} & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
