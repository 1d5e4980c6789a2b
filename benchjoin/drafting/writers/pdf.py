"""Turn sheets into PDF and PNG, each page at its true size or not at all.

Sheets come in as SVG text and leave as bytes, all pages of a binder drawn on one surface, so that the font goes in
once. Every page box is read back from the finished file and compared with its sheet; a page that is off is refused,
since a template that is nearly full size is worse than none. The libraries that do the work are loaded when the first
page is made.
"""

from __future__ import annotations

import io
import struct
import zlib
from collections.abc import Sequence
from functools import cache
from itertools import groupby, islice
from operator import itemgetter
from typing import TYPE_CHECKING, Any

from ...errors import MissingLibrary, PaperError
from ...lengths import INCH
from ...trade.paper import PDF_LONGEST, PDF_SHORTEST
from ..primitives import SHARES
from .fonts import cairo_families
from .svg import svg_text

if TYPE_CHECKING:
    from ..sheets.sheet import Sheet

POINT = INCH / 72  # mm
TOLERANCE = 0.01  # mm by which a page box may be off
_CSS_DPI = 96.0
_MOST_PIXELS = 32_767  # cairo's longest picture

NO_CAIRO = """\
The cairo library is not installed, and PDF and PNG files are drawn with it (SVG files are not). Install it:
  Debian, Ubuntu   apt-get install libcairo2
  Fedora           dnf install cairo
  Arch             pacman -S cairo
  Alpine           apk add cairo
  macOS            brew install cairo; Homebrew's Python finds it, any other is told where it
                   lies: DYLD_FALLBACK_LIBRARY_PATH="$(brew --prefix)/lib"
  Windows          a GTK 3 runtime, with the folder of its libcairo-2.dll on PATH and in
                   CAIROCFFI_DLL_DIRECTORIES"""


def _cairosvg() -> Any:
    """The renderer; without cairo itself, importing it fails with OSError and not with ImportError."""
    try:
        import cairosvg
    except (ImportError, OSError) as error:
        raise MissingLibrary(NO_CAIRO) from error
    return cairosvg


def _pypdf() -> Any:
    try:
        import pypdf
    except ImportError as error:
        raise MissingLibrary("PDF files are bound with the package pypdf. Install it: pip install pypdf") from error
    return pypdf


def pdf_bytes(sheet: Sheet) -> bytes:
    """The sheet as a PDF of one page."""
    return bind_pdf([sheet], title=sheet.title)


def bind_pdf(sheets: Sequence[Sheet], *, title: str) -> bytes:
    """Sheets in order as one PDF: each page its own size, a bookmark each, and a wish to be printed unscaled.

    Holds no dates, so the same sheets give the same bytes.

    Raises
    ------
    PaperError
        If there is no sheet, one is longer than a PDF page may be, or a page box is off.
    MissingLibrary
        If cairo or pypdf is not installed.
    """
    if not sheets:
        raise PaperError("There is no sheet to bind.")
    for sheet in sheets:
        _check_length(sheet)
    writer = _pypdf().PdfWriter()
    writer.pdf_header = "%PDF-1.6"  # print scaling belongs to PDF 1.6
    writer.append(io.BytesIO(_pages(sheets)), import_outline=False)
    for index, sheet in enumerate(sheets):
        writer.add_outline_item(title=sheet.title, page_number=index)
        start = index + 1 if sheet.number is None else sheet.number
        writer.set_page_label(index, index, style="/D", start=start)
    wishes = writer.create_viewer_preferences()
    wishes.print_scaling = "/None"
    wishes.pick_tray_by_pdfsize = True
    writer.metadata = {"/Title": title, "/Producer": "benchjoin"}
    out = io.BytesIO()
    writer.write(out)
    data = out.getvalue()
    _check_boxes(data, sheets)
    return data


def _pages(sheets: Sequence[Sheet]) -> bytes:
    """All sheets on one surface, each page of its own size."""
    out = io.BytesIO()
    cairo = _cairosvg().surface.cairo
    shared = cairo.PDFSurface(out, 1, 1)
    for sheet in sheets:
        _surfaces()["PDF"](_page(sheet), shared, _CSS_DPI)
        shared.show_page()
    shared.finish()
    return out.getvalue()


def _page(sheet: Sheet) -> Any:
    """A sheet as the renderer reads it."""
    return _cairosvg().parser.Tree(bytestring=svg_text(sheet, families=cairo_families()).encode("utf-8"))


@cache
def _surfaces() -> dict[str, type]:
    """The renderer's surfaces, but for texts; and a PDF surface that `output` shares among pages."""
    library = _cairosvg().surface

    def next_page(self: Any, width: float, height: float) -> tuple[Any, float, float]:
        self.output.set_size(width, height)
        return self.output, width, height

    return {
        "PDF": type("PDF", (_Lettered, library.PDFSurface), {"_create_surface": next_page}),
        "PNG": type("PNG", (_Lettered, library.PNGSurface), {}),
    }


class _Lettered:
    """Draws the texts that svg writes; all else is left to the renderer.

    The renderer sets a text letter by letter, twice, leaves its spaces out and holds it by its ink. Here a run goes in
    whole, spaces and all, and is held by its width, as browsers do: faster, and the same in every file.
    """

    context: Any

    def draw(self, node: Any) -> None:
        if node.tag != "text":
            super().draw(node)  # type: ignore[misc]
            return
        cairo, context = _cairosvg().surface.cairo, self.context
        context.save()
        _cairosvg().helpers.transform(self, node.get("transform"))
        context.set_font_options(
            cairo.FontOptions(hint_style=cairo.HINT_STYLE_NONE, hint_metrics=cairo.HINT_METRICS_OFF)
        )
        bold = cairo.FONT_WEIGHT_BOLD if node.get("font-weight") == "bold" else cairo.FONT_WEIGHT_NORMAL
        context.select_font_face(node["font-family"].split(",")[0].strip("'"), cairo.FONT_SLANT_NORMAL, bold)
        context.set_font_size(float(node["font-size"]))
        xs, ys = ([float(value) for value in node[name].split()] for name in "xy")
        before = SHARES[node.get("text-anchor", "start")]
        if before:
            xs[0] -= before * context.text_extents(node.text)[4]
        letters = iter(node.text)
        for y, level in groupby(zip(xs, ys, strict=True), key=itemgetter(1)):  # letters on one level follow each other
            places = list(level)
            context.move_to(places[0][0], y)
            context.show_text("".join(islice(letters, len(places) if len(ys) > 1 else None)))
        context.restore()


def _check_length(sheet: Sheet) -> None:
    longest, shortest = max(sheet.width, sheet.height), min(sheet.width, sheet.height)
    if longest > PDF_LONGEST + TOLERANCE:
        raise PaperError(
            f"Sheet {sheet.name} is {longest:.1f} mm long, and a PDF page ends at {PDF_LONGEST:.0f} mm: "
            "beyond that some readers show it blank or at another size. Tile it on shorter sheets."
        )
    if shortest < PDF_SHORTEST:
        raise PaperError(f"Sheet {sheet.name} is {shortest:.2f} mm small; a PDF page begins at {PDF_SHORTEST:.2f} mm.")


def _check_boxes(data: bytes, sheets: Sequence[Sheet]) -> None:
    pages = _pypdf().PdfReader(io.BytesIO(data)).pages
    if len(pages) != len(sheets):
        raise PaperError(f"{len(sheets)} sheets came out as {len(pages)} pages.")
    for page, sheet in zip(pages, sheets, strict=True):
        for box in (page.mediabox, page.cropbox):
            width, height = float(box.width) * POINT, float(box.height) * POINT
            if max(abs(width - sheet.width), abs(height - sheet.height)) > TOLERANCE:
                raise PaperError(
                    f"Sheet {sheet.name} is {sheet.width:.3f} × {sheet.height:.3f} mm but its page came out "
                    f"{width:.3f} × {height:.3f} mm. It is not written."
                )


def png_bytes(sheet: Sheet, dpi: float = 150) -> bytes:
    """The sheet as a PNG picture that knows how large it is (a pHYs chunk, pixels per metre)."""
    pixels = max(sheet.width, sheet.height) / INCH * dpi
    if not 0 < pixels <= _MOST_PIXELS:
        raise PaperError(
            f"Sheet {sheet.name} at {dpi:g} dots per inch is {pixels:.0f} pixels long; "
            f"a picture ends at {_MOST_PIXELS}. Take fewer dots, or save it as .pdf."
        )
    out = io.BytesIO()
    _surfaces()["PNG"](_page(sheet), out, _CSS_DPI, scale=dpi / _CSS_DPI).finish()
    picture = out.getvalue()
    per_metre = round(dpi / INCH * 1000)
    chunk = b"pHYs" + struct.pack(">IIB", per_metre, per_metre, 1)
    chunk = struct.pack(">I", 9) + chunk + struct.pack(">I", zlib.crc32(chunk))
    head = 8 + 25  # signature, then the first chunk, IHDR
    return picture[:head] + chunk + picture[head:]
