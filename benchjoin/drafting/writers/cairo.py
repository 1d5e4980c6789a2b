"""The cairo library, loaded when the first PDF or PNG is written, and the drawing font as cairo takes it.

Cairo is handed the font's own files through FreeType, and asks no system for a name: nothing has to be installed, and
fontconfig is not needed. Tried on Linux; written for macOS and Windows, and untried there. On Windows FreeType is a
library of its own beside cairo's, under one of `_FREETYPES`.

Where cairo cannot be handed the files, the installed font is asked for by its name, and the system may put another in
its place. So whatever font comes is measured against the width table that lettering is set by; one that is not ours is
drawn with, and whoever saves a file is warned (`OtherLettering`).
"""

from __future__ import annotations

import sys
import warnings
from functools import cache
from typing import Any, NamedTuple

from ...errors import MissingLibrary, OtherLettering
from ..lettering import font_size, text_width
from .fonts import INSTALLED, STYLES, font_file

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

_OTHER = (
    "The drawing font could not be handed to cairo, and the system put another in its place: a line of {said:.1f} mm "
    "came out {came:.1f} mm long, so texts may run into each other. Save as .svg, which carries the font, or install "
    f"{INSTALLED}, which has the same letters and widths."
)
_CAIROS = ("cairo-2", "cairo", "libcairo-2"), ("libcairo.so.2", "libcairo.2.dylib", "libcairo-2.dll")
_FREETYPES = ("freetype-6", "freetype", "libfreetype-6", "freetype6"), ("libfreetype-6.dll", "freetype.dll")
_NO_HINTING = 2  # FT_LOAD_NO_HINTING
_DECLARED = """
int FT_Init_FreeType(void **library);
int FT_New_Memory_Face(void *library, const unsigned char *data, long size, long index, void **face);
void *cairo_ft_font_face_create_for_ft_face(void *face, int load_flags);
"""
_MEASURED = "HOOK RAIL, honey-house bench, 0123456789"
_WITHIN = 1e-3  # of its width, by which a text may come out longer or shorter


@cache
def cairo() -> Any:
    """The library; without cairo itself, importing its wrapper fails with OSError and not with ImportError."""
    try:
        import cairocffi
    except (ImportError, OSError) as error:
        raise MissingLibrary(NO_CAIRO) from error
    return cairocffi


class Fonts(NamedTuple):
    """The font of each weight, as cairo takes it."""

    plain: Any
    bold: Any
    other: str = ""
    """What the maker must know, where they are not ours."""


def drawing_fonts() -> Fonts:
    """The drawing font in both weights; warns where it is not ours, each time a file is written."""
    found = _fonts()
    if found.other:
        warnings.warn(found.other, OtherLettering, stacklevel=3)
    return found


@cache
def _fonts() -> Fonts:
    try:
        found = Fonts(*(_of_file(bold) for bold in STYLES))
    except (OSError, AttributeError):  # no FreeType, or a cairo that is built without it
        found = Fonts(*(_by_name(bold) for bold in STYLES))
    for bold, font in zip(STYLES, found[:2], strict=True):
        said, came = text_width(_MEASURED, 10, bold=bold), _width(font, 10)
        if abs(came - said) > _WITHIN * said:
            return found._replace(other=_OTHER.format(said=said, came=came))
    return found


def _width(font: Any, height: float) -> float:
    """How wide a text comes out with a font. [mm]"""
    library = cairo()
    size = font_size(height)
    options = library.FontOptions(hint_style=library.HINT_STYLE_NONE, hint_metrics=library.HINT_METRICS_OFF)
    scaled = library.ScaledFont(font, library.Matrix(size, 0, 0, size), library.Matrix(), options)
    return float(scaled.text_extents(_MEASURED)[4])


def _by_name(bold: bool) -> Any:
    library = cairo()
    weight = library.FONT_WEIGHT_BOLD if bold else library.FONT_WEIGHT_NORMAL
    return library.ToyFontFace(INSTALLED, weight=weight)


def _of_file(bold: bool) -> Any:
    """The font of our own file; what FreeType made of it, and the file, stay as long as Python runs."""
    ffi, library, freetype, started = _freetype()
    data = ffi.new("unsigned char[]", font_file(bold=bold, ending="ttf").read_bytes())
    made = ffi.new("void **")
    if freetype.FT_New_Memory_Face(started, data, len(data) - 1, 0, made):
        raise OSError("FreeType does not read the drawing font")
    _kept.append(data)
    face = int(ffi.cast("uintptr_t", library.cairo_ft_font_face_create_for_ft_face(made[0], _NO_HINTING)))
    return cairo().FontFace._from_pointer(cairo().ffi.cast("cairo_font_face_t *", face), incref=False)


_kept: list[Any] = []


def _loaded(ffi: Any, names: tuple[str, ...], files: tuple[str, ...]) -> Any:
    """A library by the name of its file, which is quick; or else looked for by its own, which starts programs."""
    try:
        return cairo().dlopen(ffi, (), files)
    except OSError:
        return cairo().dlopen(ffi, names, files)


@cache
def _freetype() -> tuple[Any, Any, Any, Any]:
    """Declarations, cairo, FreeType and its own state.

    FreeType is found through cairo, so that it is the one that cairo is linked with; but not on Windows.
    """
    import cffi

    ffi = cffi.FFI()
    ffi.cdef(_DECLARED)
    library = _loaded(ffi, *_CAIROS)
    freetype = _loaded(ffi, *_FREETYPES) if sys.platform == "win32" else library
    started = ffi.new("void **")
    if freetype.FT_Init_FreeType(started):
        raise OSError("FreeType does not start")
    return ffi, library, freetype, started[0]
