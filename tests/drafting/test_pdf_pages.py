"""PDF and PNG: page boxes read back by independent readers, print flags, bookmarks, the same bytes."""

from __future__ import annotations

import builtins
import importlib
import io
import struct
import subprocess
import sys
from pathlib import Path

import numpy as np
import pypdf
import pypdfium2
import pypdfium2.raw as raw
import pytest

from benchjoin.drafting.primitives import Line, Text
from benchjoin.drafting.sheets.sheet import Sheet
from benchjoin.drafting.writers import cairo, pdf
from benchjoin.drafting.writers.pdf import bind_pdf, pdf_bytes
from benchjoin.drafting.writers.pdf_file import Mark, finish, take_apart
from benchjoin.drafting.writers.png import png_bytes
from benchjoin.errors import MissingLibrary, PaperError

POINT = 25.4 / 72


def sheet(width=210, height=297, name="a", title="Elevation", **more):
    drawing = (Line(((10, 10), (width - 10, 10)), "visible"), Text((20, 20), "57 1/2 full"))
    return Sheet(name=name, title=title, width=width, height=height, drawing=drawing, **more)


THREE = [
    sheet(title="Front elevation"),
    sheet(610, 1830, "set-a", "Set A", full_size=True),
    sheet(279.4, 215.9, "cut-list", "Cut list", number=7),
]


@pytest.mark.parametrize(
    "size", [(210, 297), (215.9, 279.4), (841, 1189), (609.6, 1830.3), (100, 5080), (33.333, 44.444)]
)
def test_a_page_is_as_large_as_its_sheet(size):
    width, height = pypdfium2.PdfDocument(pdf_bytes(sheet(*size)))[0].get_size()
    assert (width * POINT, height * POINT) == pytest.approx(size, abs=0.005)


def test_a4_has_the_box_that_its_millimetres_give():
    box = pypdf.PdfReader(io.BytesIO(pdf_bytes(sheet()))).pages[0].mediabox
    assert [float(v) for v in box] == pytest.approx([0, 0, 595.275591, 841.889764], abs=1e-5)


def test_bound_pages_keep_their_own_sizes():
    document = pypdfium2.PdfDocument(bind_pdf(THREE, title="Bench"))
    sizes = [tuple(v * POINT for v in page.get_size()) for page in document]
    assert sizes == [pytest.approx((s.width, s.height), abs=0.005) for s in THREE]


def test_bookmarks_labels_and_title_are_there():
    reader = pypdf.PdfReader(io.BytesIO(bind_pdf(THREE, title="Honey-house bench")))
    assert [mark.title for mark in reader.outline] == ["Front elevation", "Set A", "Cut list"]
    assert reader.page_labels == ["1", "2", "7"]
    assert reader.metadata.title == "Honey-house bench"


def test_a_title_in_any_words_comes_back_as_it_was_written():
    titles = ["Bank (roh) \\ 1/2", "Ølbænk – ½ ″", "木のベンチ", "plain"]
    reader = pypdf.PdfReader(
        io.BytesIO(bind_pdf([sheet(title=title) for title in titles], title=titles[2])), strict=True
    )
    assert [mark.title for mark in reader.outline] == titles
    assert [reader.get_destination_page_number(mark) for mark in reader.outline] == [0, 1, 2, 3]
    assert reader.metadata.title == titles[2]


def test_a_strict_reader_finds_every_object_where_the_file_says():
    reader = pypdf.PdfReader(io.BytesIO(bind_pdf(THREE, title="Bench")), strict=True)
    numbers = range(1, reader.trailer["/Size"])
    assert all(reader.get_object(number) is not None for number in numbers)
    assert all(page.get_contents().get_data() for page in reader.pages)


def test_a_page_asks_to_be_printed_unscaled_on_paper_of_its_size():
    data = bind_pdf(THREE, title="Bench")
    assert data.startswith(b"%PDF-1.6")
    assert not raw.FPDF_VIEWERREF_GetPrintScaling(pypdfium2.PdfDocument(data))
    assert pypdf.PdfReader(io.BytesIO(data)).viewer_preferences.pick_tray_by_pdfsize.value is True


def test_words_can_be_searched():
    text = pypdfium2.PdfDocument(pdf_bytes(sheet()))[0].get_textpage().get_text_range()
    assert "57 1/2 full" in text


def test_the_same_sheets_give_the_same_bytes_and_no_date():
    one, two = bind_pdf(THREE, title="Bench"), bind_pdf(THREE, title="Bench")
    assert one == two
    for word in (b"CreationDate", b"ModDate", b"(D:", b"/ID", b"airo"):
        assert word not in one
    assert png_bytes(sheet()) == png_bytes(sheet())


def test_a_sheet_longer_than_a_pdf_page_is_refused_and_told_to_tile(tmp_path):
    with pytest.raises(PaperError, match=r"5080 mm.*Tile.*`templates`.*`set_tiles`"):
        pdf_bytes(sheet(100, 5081))
    with pytest.raises(PaperError, match="Tile"):
        sheet(5081, 100).save(tmp_path / "long.pdf")
    assert list(tmp_path.iterdir()) == []


def test_a_sheet_smaller_than_a_pdf_page_is_refused():
    with pytest.raises(PaperError, match="begins at"):
        pdf_bytes(sheet(100, 1))


def test_nothing_cannot_be_bound():
    with pytest.raises(PaperError, match="no sheet"):
        bind_pdf([], title="Bench")


def test_a_page_that_came_out_at_another_size_is_refused(monkeypatch):
    other = pdf._pages([sheet(210, 297.05)])
    monkeypatch.setattr(pdf, "_pages", lambda _: other)
    with pytest.raises(PaperError, match="its page came out"):
        pdf_bytes(sheet(210, 297))


def test_a_page_too_many_is_refused():
    with pytest.raises(PaperError, match="1 sheets came out as 3 pages"):
        pdf._check_boxes(bind_pdf(THREE, title="Bench"), THREE[:1])


@pytest.mark.parametrize("data", [b"", b"%PDF-1.4\nstartxref\n0\n%%EOF\n", b"startxref\nfive", b"startxref\n99999\n"])
def test_what_is_no_pdf_of_a_known_make_is_refused(data):
    with pytest.raises(PaperError, match="not known here"):
        take_apart(data)


def test_a_file_taken_apart_and_finished_again_keeps_its_pages():
    once = bind_pdf(THREE, title="Bench")
    marks = [Mark(one.title, number) for number, one in enumerate(THREE, 5)]
    again = pypdf.PdfReader(io.BytesIO(finish(once, "Rack", marks)), strict=True)
    assert again.page_labels == ["5", "6", "7"]
    assert again.metadata.title == "Rack"
    assert [len(page.get_contents().get_data()) for page in again.pages] == [
        len(page.get_contents().get_data()) for page in pypdf.PdfReader(io.BytesIO(once)).pages
    ]


HOW_TO_INSTALL = r"(?s)libcairo2.*dnf.*pacman.*apk.*brew.*GTK"
NO_LIBRARY = OSError("no library is called cairo")


@pytest.fixture
def without_cairo(monkeypatch):
    """What is loaded once stays; its absence is pretended."""
    png_bytes(sheet())
    monkeypatch.setattr(cairo, "_CAIROS", (("libcairo.so.none",), ("no-such-library",)))
    cairo.cairo.cache_clear()
    yield monkeypatch
    cairo.cairo.cache_clear()


def test_without_cairo_the_error_says_what_to_install(without_cairo):
    with pytest.raises(MissingLibrary, match=HOW_TO_INSTALL):
        pdf_bytes(sheet())


@pytest.mark.parametrize("error", [NO_LIBRARY, ImportError("no module")])
def test_without_cairo_a_picture_says_what_to_install(without_cairo, error):
    real = builtins.__import__

    def refuse(name, *args, **kwargs):
        if name == "cairosvg":
            raise error
        return real(name, *args, **kwargs)

    without_cairo.setattr(builtins, "__import__", refuse)
    with pytest.raises(MissingLibrary, match=HOW_TO_INSTALL):
        png_bytes(sheet())


def test_a_pdf_needs_neither_the_renderer_of_svg_nor_what_writes_it(tmp_path):
    code = f"""
import sys
from pathlib import Path
from benchjoin.drafting.primitives import Text
from benchjoin.drafting.sheets.sheet import Sheet
Sheet(name="a", title="A", width=200, height=200, drawing=[Text((9, 9), "a")]).save({str(tmp_path / "a.pdf")!r})
print(sorted({{"cairosvg", "svgwrite", "pypdf"}} & set(sys.modules)))
"""
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_a_picture_knows_its_size():
    picture = png_bytes(sheet(254, 127), dpi=100)
    width, height = struct.unpack(">II", picture[16:24])
    assert (width, height) == (1000, 500)
    at = picture.index(b"pHYs")
    across, up, unit = struct.unpack(">IIB", picture[at + 4 : at + 13])
    assert (across, up, unit) == (3937, 3937, 1)  # 100 per inch in pixels per metre
    assert at < picture.index(b"IDAT")


def test_a_picture_is_read_by_another_library_with_its_size():
    image = pytest.importorskip("PIL.Image")
    opened = image.open(io.BytesIO(png_bytes(sheet(254, 127), dpi=150)))
    opened.load()
    assert opened.info["dpi"] == pytest.approx((150, 150), abs=0.02)


@pytest.mark.parametrize("dpi", [72, 96, 150, 300])
def test_marks_far_apart_in_a_picture_are_as_far_apart_as_it_says(dpi):
    ticks = (Line(((x, 5), (x, 15)), "visible") for x in (11, 11 + 1778))
    image = pytest.importorskip("PIL.Image")
    data = png_bytes(Sheet(name="a", title="A", width=1800, height=20, drawing=tuple(ticks)), dpi=dpi)
    at = data.index(b"pHYs")
    (per_metre,) = struct.unpack(">I", data[at + 4 : at + 8])
    pixels = np.asarray(image.open(io.BytesIO(data)).convert("RGBA"), dtype=float)
    row = 255 - pixels[pixels.shape[0] // 2, :, :3].mean(axis=1)
    half = len(row) // 2
    left, right = (np.average(np.arange(len(own)), weights=own) for own in (row[:half], row[half:]))
    assert (right + half - left) / per_metre * 1000 == pytest.approx(1778, abs=0.05)
    assert per_metre * 0.0254 == pytest.approx(dpi, abs=0.02)


@pytest.mark.parametrize("dpi", [0, -1, 1e6, float("nan")])
def test_a_picture_too_large_to_draw_is_refused(dpi):
    with pytest.raises(PaperError, match="fewer dots"):
        png_bytes(sheet(), dpi=dpi)


def test_lines_and_words_land_where_they_were_drawn():
    page = pypdfium2.PdfDocument(pdf_bytes(sheet()))[0]
    pixels = page.render(scale=200 / 72, grayscale=True).to_numpy()
    pixels = pixels.reshape(pixels.shape[:2])
    dark = (pixels < 128).any(axis=1).nonzero()[0]
    bottom = (pixels.shape[0] - 1 - dark.max()) / 200 * 25.4
    assert bottom == pytest.approx(10 - 0.25, abs=0.15)  # the wide line at 10 mm, half its width lower


def test_the_plain_way_that_the_bench_measures_paper_against_says_the_same(monkeypatch):
    monkeypatch.syspath_prepend(str(Path(__file__).parents[2] / "scripts"))
    plain = importlib.import_module("plain_paper")
    for data in (plain.cairo_pdf([sheet()]), pdf_bytes(sheet())):
        page = pypdfium2.PdfDocument(data)[0]
        assert page.get_textpage().get_text_range() == "57 1/2 full"
        assert [side * POINT for side in page.get_size()] == pytest.approx([210, 297], abs=0.01)
