"""A sheet as a PNG picture that knows how large it is; drawn from its SVG text by the renderer cairosvg.

A PNG states its resolution in whole pixels a metre (its pHYs chunk). So a sheet is drawn at just such a number, the
next to the dots per inch that are asked for: what is stated is then what was drawn, and a mark 1778 mm away lies within
a pixel's own blur, not 0.2 mm short.
"""

from __future__ import annotations

import io
import struct
import zlib
from functools import cache
from itertools import groupby, islice
from operator import itemgetter
from typing import TYPE_CHECKING, Any

from ...errors import MissingLibrary, PaperError
from ...lengths import INCH
from ..primitives import SHARES
from .cairo import NO_CAIRO, drawing_fonts
from .cairo_declared import ffi
from .svg import svg_text

if TYPE_CHECKING:
    from ..sheets.sheet import Sheet

_CSS_DPI = 96.0
_METRE = 1000.0  # mm
_MOST_PIXELS = 32_767  # cairo's longest picture


def _cairosvg() -> Any:
    """The renderer; without cairo itself, importing it fails with OSError and not with ImportError."""
    try:
        import cairosvg
    except (ImportError, OSError) as error:
        raise MissingLibrary(NO_CAIRO) from error
    return cairosvg


def png_bytes(sheet: Sheet, dpi: float = 150) -> bytes:
    """The sheet as a PNG picture.

    Parameters
    ----------
    sheet : Sheet
    dpi : float
        Dots per inch; drawn with the next whole number of pixels a metre.

    Raises
    ------
    PaperError
        If it would have more pixels than a picture may.
    MissingLibrary
        If cairo is not installed.
    """
    pixels = max(sheet.width, sheet.height) / INCH * dpi
    if not 0 < pixels <= _MOST_PIXELS:
        raise PaperError(
            f"Sheet {sheet.name} at {dpi:g} dots per inch is {pixels:.0f} pixels long; "
            f"a picture ends at {_MOST_PIXELS}. Take fewer dots, or save it as .pdf."
        )
    per_metre = max(1, round(dpi / INCH * _METRE))
    out = io.BytesIO()
    _surface()(_read(sheet), out, _CSS_DPI, scale=per_metre * INCH / _METRE / _CSS_DPI).finish()
    picture = out.getvalue()
    chunk = b"pHYs" + struct.pack(">IIB", per_metre, per_metre, 1)
    chunk = struct.pack(">I", 9) + chunk + struct.pack(">I", zlib.crc32(chunk))
    head = 8 + 25  # signature, then the first chunk, IHDR
    return picture[:head] + chunk + picture[head:]


def _read(sheet: Sheet) -> Any:
    """A sheet as the renderer reads it."""
    return _cairosvg().parser.Tree(bytestring=svg_text(sheet).encode("utf-8"))


@cache
def _surface() -> type:
    """The renderer's surface, but for texts, and for a last pixel that is half seen."""
    own = _cairosvg().surface.PNGSurface

    def whole_pixels(self: Any, width: float, height: float) -> Any:
        return own._create_surface(self, max(1, round(width)), max(1, round(height)))

    return type("PNG", (_Lettered, own), {"_create_surface": whole_pixels})


def wrapped(font: Any) -> Any:
    """A font of cairo's, as the renderer's wrapper takes it."""
    library = _cairosvg().surface.cairo
    address = int(ffi.cast("uintptr_t", font))
    return library.FontFace._from_pointer(library.ffi.cast("cairo_font_face_t *", address), incref=True)


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
        library, context, font = _cairosvg().surface.cairo, self.context, drawing_fonts()
        context.save()
        _cairosvg().helpers.transform(self, node.get("transform"))
        context.set_font_options(
            library.FontOptions(hint_style=library.HINT_STYLE_NONE, hint_metrics=library.HINT_METRICS_OFF)
        )
        context.set_font_face(wrapped(font.bold if node.get("font-weight") == "bold" else font.plain))
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
