"""The drawing font: where its files lie, and how cairo and browsers come by it.

A sheet must look the same on a machine that has no fonts. So the font travels with the package. An SVG file takes
it along (`face_rules`); PDF and PNG are drawn by cairo, which finds a font by its family name only, so the files are
made known to fontconfig first (`cairo_families`).

That works where cairo asks fontconfig: on Linux and the BSDs. On macOS and Windows cairo asks the system instead;
there the name of an installed font is given, DejaVu Sans, from which ours is cut: where it is installed letters and
widths are the same, and where it is not the system puts another font in its place.
"""

from __future__ import annotations

import base64
import ctypes
import sys
from functools import cache
from pathlib import Path

from ..widths import FAMILY

FOLDER = Path(__file__).with_name("font")
STYLES = {False: "Regular", True: "Bold"}  # bold -> end of the file's name
_INSTALLED = "'DejaVu Sans', Verdana, Arial, sans-serif"
FAMILIES = f"'{FAMILY}', {_INSTALLED}"

_known_to: set[int] = set()  # fontconfig's settings, by address, that our files were added to


def font_file(*, bold: bool, ending: str) -> Path:
    """The file of a weight: .ttf with all letters, .woff with those that most drawings need."""
    return FOLDER / f"{FAMILY.replace(' ', '')}-{STYLES[bold]}.{ending}"


@cache
def face_rules(weights: frozenset[bool]) -> str:
    """CSS that carries the font in itself, for each weight: bold or not."""
    return "".join(_face_rule(bold) for bold in sorted(weights))


def _face_rule(bold: bool) -> str:
    data = base64.b64encode(font_file(bold=bold, ending="woff").read_bytes()).decode("ascii")
    weight = "bold" if bold else "normal"
    source = f"url(data:font/woff;base64,{data}) format('woff')"
    return f"@font-face{{font-family:'{FAMILY}';font-weight:{weight};src:{source}}}"


def cairo_families() -> str:
    """Families for a file that cairo is to draw, ours first if cairo can be told of it; it takes the first only."""
    return FAMILIES if _tell_fontconfig() else _INSTALLED


@cache
def _fontconfig() -> ctypes.CDLL | None:
    """The library that cairo asks for fonts, where it does."""
    if sys.platform in ("darwin", "win32", "cygwin"):
        return None
    try:
        library = ctypes.CDLL("libfontconfig.so.1")
    except OSError:
        return None
    library.FcConfigGetCurrent.restype = ctypes.c_void_p
    library.FcConfigAppFontAddFile.argtypes = (ctypes.c_void_p, ctypes.c_char_p)
    library.FcConfigAppFontAddFile.restype = ctypes.c_int
    return library


def _tell_fontconfig() -> bool:
    """Add our files to fontconfig's settings, once; again if it has read its settings anew since."""
    library = _fontconfig()
    settings = library.FcConfigGetCurrent() if library else None
    if library is None or not settings:
        return False
    if settings not in _known_to:
        files = [str(font_file(bold=bold, ending="ttf")).encode(sys.getfilesystemencoding()) for bold in STYLES]
        if not all(library.FcConfigAppFontAddFile(settings, file) for file in files):
            return False
        _known_to.add(settings)
    return True
