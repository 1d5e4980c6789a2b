"""PDF and PNG: page boxes read back by an independent reader, print flags, bookmarks, the same bytes."""

from __future__ import annotations

import builtins
import io
import struct
import sys

import pypdf
import pypdfium2
import pypdfium2.raw as raw
import pytest

from benchjoin.drafting.primitives import Line, Text
from benchjoin.drafting.sheets.sheet import Sheet
from benchjoin.drafting.writers import pdf
from benchjoin.drafting.writers.pdf import bind_pdf, pdf_bytes, png_bytes
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
    assert b"CreationDate" not in one
    assert b"ModDate" not in one
    assert png_bytes(sheet()) == png_bytes(sheet())


def test_a_sheet_longer_than_a_pdf_page_is_refused_and_told_to_tile(tmp_path):
    with pytest.raises(PaperError, match=r"5080 mm.*Tile"):
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
    other = pdf._page(sheet(210, 297.05))
    monkeypatch.setattr(pdf, "_page", lambda _: other)
    with pytest.raises(PaperError, match="its page came out"):
        pdf_bytes(sheet(210, 297))


@pytest.mark.parametrize("error", [OSError('no library called "cairo-2" was found'), ImportError("no module")])
def test_without_cairo_the_error_says_what_to_install(monkeypatch, error):
    real = builtins.__import__

    def refuse(name, *args, **kwargs):
        if name == "cairosvg":
            raise error
        return real(name, *args, **kwargs)

    monkeypatch.delitem(sys.modules, "cairosvg", raising=False)
    monkeypatch.setattr(builtins, "__import__", refuse)
    with pytest.raises(MissingLibrary, match=r"(?s)libcairo2.*dnf.*pacman.*apk.*brew.*GTK"):
        pdf_bytes(sheet())
    with pytest.raises(MissingLibrary):
        png_bytes(sheet())


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
