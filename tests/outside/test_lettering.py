"""Lettering by other people's readers: what pdfium, pypdf and Pillow find in the files, fonts installed or not."""

from __future__ import annotations

import io
import json
import os
import subprocess
import sys
import warnings

import pypdf
import pypdfium2
import pytest

from benchjoin.drafting.lettering import text_width
from benchjoin.drafting.primitives import Text
from benchjoin.drafting.sheets.sheet import Sheet
from benchjoin.drafting.writers import cairo
from benchjoin.drafting.writers.pdf import bind_pdf, pdf_bytes
from benchjoin.drafting.writers.png import png_bytes
from benchjoin.errors import OtherLettering

POINT = 25.4 / 72
NO_FONTS = '<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig></fontconfig>'
ON_LINUX = pytest.mark.skipif(
    not sys.platform.startswith("linux"), reason="elsewhere fonts are not taken away by fontconfig"
)
READINGS = ["48 3/8", "5/8 deep", "2 7/16 full", "A1 48 3/8 foot shelf", "53 3/4 or 1/2 31/64", "12 13/32 scant"]

# Without a font on the machine: what is drawn, and how wide it was expected to be.
ALONE = """
import json, sys
from benchjoin.drafting.lettering import text_width
from benchjoin.drafting.primitives import Text
from benchjoin.drafting.sheets.sheet import Sheet
lines = json.loads(sys.argv[1])
texts = [Text((20, 20 + 20 * n), line, 10, bold=bold) for n, (line, bold) in enumerate(lines)]
Sheet(name="a", title="a", width=400, height=200, drawing=texts).save(sys.argv[2])
print(json.dumps([text_width(line, 10, bold=bold) for line, bold in lines]))
"""


def page(*texts):
    return Sheet(name="a", title="A", width=300, height=300, drawing=texts)


def beside_an_h(height, bold=False):
    """Between the edge of an H and its straight side: 201 or 188 units, of a letter 1493 high (the font's tables)."""
    return (188 if bold else 201) / 1493 * height


def words(data):
    return pypdfium2.PdfDocument(data)[0].get_textpage().get_text_range()


def saved_without_fonts(tmp_path, lines):
    """A sheet of these lines, saved where fontconfig knows no font; and the widths that were expected. [mm]"""
    settings, file = tmp_path / "fonts.conf", tmp_path / "a.pdf"
    settings.write_text(NO_FONTS)
    done = subprocess.run(
        [sys.executable, "-c", ALONE, json.dumps(lines), str(file)],
        env={**os.environ, "FONTCONFIG_FILE": str(settings), "PYTHONPATH": os.pathsep.join(sys.path)},
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stderr == ""
    return file, json.loads(done.stdout)


def fonts_in(file):
    resources = pypdf.PdfReader(file).pages[0]["/Resources"]["/Font"]
    return {font.get_object()["/BaseFont"].split("+")[-1] for font in resources.values()}


@ON_LINUX
def test_a_machine_without_fonts_gives_our_lettering_as_wide_as_was_said(tmp_path):
    lines = [("HOOK RAIL H", False), ("HOOK 48 3/8 foot shelf, 2 7/16 full H", False), ("HONEY-HOUSE 5/8 H", True)]
    file, expected = saved_without_fonts(tmp_path, lines)

    assert fonts_in(file) == {"BenchjoinSans-Regular", "BenchjoinSans-Bold"}

    read = pypdfium2.PdfDocument(file)[0].get_textpage()
    string = read.get_text_range()
    assert sorted(string.split("\r\n")) == sorted(line for line, _ in lines)
    for (line, bold), width in zip(lines, expected, strict=True):
        first = string.index(line)
        left, right = read.get_charbox(first)[0], read.get_charbox(first + len(line) - 1)[2]
        assert (right - left) * POINT + 2 * beside_an_h(10, bold) == pytest.approx(width, rel=0.01)


@ON_LINUX
def test_the_lettering_does_not_depend_on_the_fonts_of_the_machine(tmp_path):
    file, _ = saved_without_fonts(tmp_path, [(line, False) for line in READINGS])
    texts = [Text((20, 20 + 20 * n), line, 10) for n, line in enumerate(READINGS)]
    assert file.read_bytes() == pdf_bytes(Sheet(name="a", title="a", width=400, height=200, drawing=texts))


@pytest.mark.parametrize("turn", [0, 90])
@pytest.mark.parametrize("height", [1.8, 2.5, 3.5, 5])
@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("anchor", ["start", "middle", "end"])
def test_fractions_are_read_in_order_level_and_turned(turn, height, bold, anchor):
    title = "Honey-house bench, front elevation"
    places = [(150, 20 + 12 * n) if turn == 0 else (20 + 12 * n, 150) for n in range(len(READINGS))]
    texts = [Text(at, reading, height, anchor, turn, bold) for at, reading in zip(places, READINGS, strict=True)]
    found = words(pdf_bytes(page(Text((20, 290), title), *texts)))
    assert sorted(found.split("\r\n")) == sorted([title, *READINGS])


@pytest.mark.parametrize("turn", [0, 90])
@pytest.mark.parametrize("reading", [*READINGS, "(53 3/4)", "5/8, 1/2, 31/64"])
def test_a_lone_reading_is_read_in_order(turn, reading):
    assert words(pdf_bytes(page(Text((150, 150), reading, 2.5, "middle", turn)))).strip() == reading


@pytest.mark.parametrize("anchor, share", [("start", 0.0), ("middle", 0.5), ("end", 1.0)])
@pytest.mark.parametrize("string", ["HH", "H 48 3/8 H"])
def test_a_text_is_held_by_its_anchor_and_as_wide_as_was_said(anchor, share, string):
    read = pypdfium2.PdfDocument(pdf_bytes(page(Text((150, 150), string, 10, anchor))))[0].get_textpage()
    left = read.get_charbox(0)[0] * POINT - beside_an_h(10)
    right = read.get_charbox(len(string) - 1)[2] * POINT + beside_an_h(10)
    assert right - left == pytest.approx(text_width(string, 10), rel=0.01)
    assert left + share * (right - left) == pytest.approx(150, abs=0.05)


def test_figures_of_a_fraction_are_at_least_two_and_a_half_millimetres_high_on_paper():
    read = pypdfium2.PdfDocument(pdf_bytes(page(Text((20, 20), "48 1/4"))))[0].get_textpage()
    string = read.get_text_range()
    for at in (string.index("1"), string.rindex("4")):
        _, low, _, high = read.get_charbox(at)
        assert (high - low) * POINT == pytest.approx(2.5, abs=0.02)


@pytest.mark.parametrize("height, raised", [(2.5, 0.1), (3.5, 1.5), (5, 3.0)])
def test_numerator_and_denominator_stand_above_and_below(height, raised):
    read = pypdfium2.PdfDocument(pdf_bytes(page(Text((20, 20), "48 1/4", height))))[0].get_textpage()
    four, one, lower = (read.get_charbox(index) for index in (0, 3, 5))
    assert one[1] > four[1] + raised  # points
    assert lower[1] < four[1] - 0.5
    assert one[2] < lower[0]


def test_one_and_a_sixteenth_is_not_read_as_eleven_sixteenths():
    read = pypdfium2.PdfDocument(pdf_bytes(page(Text((20, 20), "1 1/16"), Text((60, 20), "11/16"))))[0].get_textpage()
    string = read.get_text_range()
    apart = [read.get_charbox(i + (2 if string[i + 1] == " " else 1))[0] - read.get_charbox(i)[2] for i in (0, 7)]
    assert apart[0] > 2 * apart[1] + 1.0  # points, between the two ones


def test_one_file_of_many_sheets_holds_each_weight_once():
    sheets = [page(Text((20, 20), f"sheet {n}, 3/8"), Text((20, 40), "title", bold=True)) for n in range(6)]
    reader = pypdf.PdfReader(io.BytesIO(bind_pdf(sheets, title="A")))
    fonts = {
        (font.indirect_reference.idnum, font["/BaseFont"].split("+")[-1])
        for one in reader.pages
        for font in (value.get_object() for value in one["/Resources"]["/Font"].values())
    }
    assert len(reader.pages) == 6
    assert len(fonts) == len({name for _, name in fonts}) == 2


@pytest.mark.parametrize("bold", [False, True])
def test_a_picture_is_lettered_as_wide_as_was_said(bold):
    Image = pytest.importorskip("PIL.Image")
    string, dpi = "HOOK 48 3/8 foot shelf H", 254  # 10 pixels a millimetre
    sheet = Sheet(name="a", title="A", width=200, height=30, drawing=[Text((20, 10), string, 10, bold=bold)])
    picture = Image.open(io.BytesIO(png_bytes(sheet, dpi=dpi))).convert("L").point(lambda tone: 255 * (tone < 128))
    left, _, right, _ = picture.getbbox()
    assert (right - left) / 10 + 2 * beside_an_h(10, bold) == pytest.approx(text_width(string, 10, bold=bold), rel=0.01)


# --- where cairo cannot be given our font ---


@pytest.fixture
def fonts_anew():
    """Fonts as they are found for the first time, before and after."""
    cairo._fonts.cache_clear()
    yield
    cairo._fonts.cache_clear()


def refuse(*_):
    raise OSError("no FreeType here")


def test_without_freetype_the_installed_font_is_asked_for_by_its_name(monkeypatch, fonts_anew):
    asked = []

    def found(bold):
        asked.append(bold)
        return own(bold)

    own = cairo._of_file
    monkeypatch.setattr(cairo, "_by_name", found)
    monkeypatch.setattr(cairo, "_of_file", refuse)
    assert words(pdf_bytes(page(Text((20, 20), "57 1/2")))).strip() == "57 1/2"  # as wide as ours: no word is said
    assert asked == [False, True]


@pytest.mark.parametrize("write", [pdf_bytes, png_bytes])
def test_another_font_in_the_place_of_ours_is_told_each_time(monkeypatch, fonts_anew, write):
    own = cairo._of_file
    monkeypatch.setattr(cairo, "_of_file", refuse)
    monkeypatch.setattr(cairo, "_by_name", lambda _: own(True))  # bold where plain was meant: wider than was measured
    for _ in range(2):
        with pytest.warns(OtherLettering, match=r"came out \d+\.\d mm long.*\.svg.*DejaVu Sans"):
            write(page(Text((20, 20), "57 1/2")))


def test_a_cairo_without_freetype_still_letters(monkeypatch, fonts_anew):
    monkeypatch.setattr(cairo, "_freetype", refuse)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", OtherLettering)  # whatever is installed
        assert words(pdf_bytes(page(Text((20, 20), "rail 57")))).strip() == "rail 57"
