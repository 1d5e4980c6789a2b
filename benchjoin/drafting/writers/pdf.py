"""Sheets as one PDF, each page at its true size or not at all.

Every sheet is drawn as it was recorded (`cairo_page`), all of a binder on one surface, so that the font goes in once;
then the file gets its bookmarks, labels and wishes (`pdf_file`). Every page box is read back from the finished file and
compared with its sheet; a page that is off is refused, since a template that is nearly full size is worse than none.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from ...errors import PaperError
from ...trade.paper import PDF_LONGEST, PDF_SHORTEST
from .cairo import cairo, check, drawing_fonts
from .cairo_declared import ffi
from .cairo_page import POINT, draw_page
from .pdf_file import Mark, finish, take_apart

if TYPE_CHECKING:
    from ..sheets.sheet import Sheet

TOLERANCE = 0.01  # mm by which a page box may be off
_VERSION = 0  # CAIRO_PDF_VERSION_1_4
_NOT_WRITTEN = 11  # CAIRO_STATUS_WRITE_ERROR


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
        If cairo is not installed.
    """
    if not sheets:
        raise PaperError("There is no sheet to bind.")
    for sheet in sheets:
        _check_length(sheet)
    marks = [Mark(sheet.title, n if sheet.number is None else sheet.number) for n, sheet in enumerate(sheets, 1)]
    data = finish(_pages(sheets), title, marks)
    _check_boxes(data, sheets)
    return data


def _pages(sheets: Sequence[Sheet]) -> bytes:
    """All sheets on one surface, each page of its own size."""
    out, library, font = bytearray(), cairo(), drawing_fonts()

    def taken(_: Any, data: Any, length: int) -> int:
        out.extend(ffi.buffer(data, length))
        return 0

    write = ffi.callback("cairo_write_func_t", taken, error=_NOT_WRITTEN)  # stays until the surface is finished
    surface = library.cairo_pdf_surface_create_for_stream(write, ffi.NULL, 1, 1)
    try:
        library.cairo_pdf_surface_restrict_to_version(surface, _VERSION)
        for sheet in sheets:
            library.cairo_pdf_surface_set_size(surface, sheet.width / POINT, sheet.height / POINT)
            draw_page(surface, sheet, font)
            library.cairo_surface_show_page(surface)
        library.cairo_surface_finish(surface)
        check(library.cairo_surface_status(surface))
    finally:
        library.cairo_surface_destroy(surface)
    return bytes(out)


def _check_length(sheet: Sheet) -> None:
    longest, shortest = max(sheet.width, sheet.height), min(sheet.width, sheet.height)
    if longest > PDF_LONGEST + TOLERANCE:
        raise PaperError(
            f"Sheet {sheet.name} is {longest:.1f} mm long, and a PDF page ends at {PDF_LONGEST:.0f} mm: beyond that "
            "some readers show it blank or at another size. Tile it: `templates` writes the tiles of all sets at full "
            "size on desk paper, `set_tiles` gives those of one."
        )
    if shortest < PDF_SHORTEST:
        raise PaperError(f"Sheet {sheet.name} is {shortest:.2f} mm small; a PDF page begins at {PDF_SHORTEST:.2f} mm.")


def _check_boxes(data: bytes, sheets: Sequence[Sheet]) -> None:
    parts = take_apart(data)
    pages = parts.pages()
    if len(pages) != len(sheets):
        raise PaperError(f"{len(sheets)} sheets came out as {len(pages)} pages.")
    for page, sheet in zip(pages, sheets, strict=True):
        boxes = [(wide * POINT, high * POINT) for wide, high in parts.boxes(page)] or [(0.0, 0.0)]
        for width, height in boxes:
            if max(abs(width - sheet.width), abs(height - sheet.height)) > TOLERANCE:
                raise PaperError(
                    f"Sheet {sheet.name} is {sheet.width:.3f} × {sheet.height:.3f} mm but its page came out "
                    f"{width:.3f} × {height:.3f} mm. It is not written."
                )
