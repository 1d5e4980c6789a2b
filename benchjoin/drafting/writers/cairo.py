"""The cairo library, loaded when the first PDF or PNG is written, and the drawing font as cairo takes it.

Its functions are called as they are, by what `cairo_declared` says of them; only pictures go through a wrapper (`png`).

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

from ...errors import MissingLibrary, OtherLettering, PaperError
from ..lettering import font_size, text_width
from .cairo_declared import ffi
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
_CAIROS = ("libcairo.so.2", "libcairo.2.dylib", "libcairo-2.dll"), ("cairo-2", "cairo", "libcairo-2")
_FREETYPES = ("libfreetype-6.dll", "freetype.dll"), ("freetype-6", "freetype", "libfreetype-6", "freetype6")
_NO_HINTING = 2  # FT_LOAD_NO_HINTING
_PLAIN, _BOLD = 0, 1  # CAIRO_FONT_WEIGHT_NORMAL, CAIRO_FONT_WEIGHT_BOLD
_HINT_STYLE_NONE = _HINT_METRICS_OFF = 1  # CAIRO_HINT_STYLE_NONE, CAIRO_HINT_METRICS_OFF
_MEASURED = "HOOK RAIL, honey-house bench, 0123456789"
_WITHIN = 1e-3  # of its width, by which a text may come out longer or shorter


@cache
def cairo() -> Any:
    """The functions of the library.

    Raises
    ------
    MissingLibrary
        If it is not installed.
    """
    try:
        if sys.platform == "win32":
            import cairocffi  # tells Windows in which folders libraries lie

            del cairocffi
        return _loaded(*_CAIROS)
    except (ImportError, OSError) as error:
        raise MissingLibrary(NO_CAIRO) from error


def check(state: int) -> None:
    """Go on where a state of cairo says that all is well.

    Raises
    ------
    PaperError
        If it says anything else.
    """
    if state:
        said = ffi.string(cairo().cairo_status_to_string(state)).decode()
        raise PaperError(f"The page was not drawn: cairo says {said!r}. Write fewer sheets at a time, or save as .svg.")


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
    library, size = cairo(), font_size(height)
    options = library.cairo_font_options_create()
    library.cairo_font_options_set_hint_style(options, _HINT_STYLE_NONE)
    library.cairo_font_options_set_hint_metrics(options, _HINT_METRICS_OFF)
    scaled = library.cairo_scaled_font_create(font, matrix(size, size), matrix(1, 1), options)
    extents = ffi.new("cairo_text_extents_t *")
    library.cairo_scaled_font_text_extents(scaled, _MEASURED.encode(), extents)
    library.cairo_scaled_font_destroy(scaled)
    library.cairo_font_options_destroy(options)
    return float(extents.x_advance)


def matrix(across: float, up: float) -> Any:
    """What stretches by two factors, as cairo takes it."""
    return ffi.new("cairo_matrix_t *", {"xx": across, "yy": up})


def _by_name(bold: bool) -> Any:
    return cairo().cairo_toy_font_face_create(INSTALLED.encode(), 0, _BOLD if bold else _PLAIN)


def _of_file(bold: bool) -> Any:
    """The font of our own file; what FreeType made of it, and the file, stay as long as Python runs."""
    freetype, started = _freetype()
    data = ffi.new("unsigned char[]", font_file(bold=bold, ending="ttf").read_bytes())
    made = ffi.new("void **")
    if freetype.FT_New_Memory_Face(started, data, len(data) - 1, 0, made):
        raise OSError("FreeType does not read the drawing font")
    _kept.append(data)
    return cairo().cairo_ft_font_face_create_for_ft_face(made[0], _NO_HINTING)


_kept: list[Any] = []


def _loaded(files: tuple[str, ...], names: tuple[str, ...]) -> Any:
    """A library by the name of its file, which is quick; or else looked for by its own, which starts programs."""
    for file in files:
        try:
            return ffi.dlopen(file)
        except OSError:
            continue
    from ctypes.util import find_library  # asks other programs, and takes a while to read

    for name in names:
        found = find_library(name)
        if found:
            return ffi.dlopen(found)
    raise OSError(f"no library is called {' or '.join(files)}")


@cache
def _freetype() -> tuple[Any, Any]:
    """FreeType and its own state; it is found through cairo, which is linked with it, but not on Windows."""
    freetype = _loaded(*_FREETYPES) if sys.platform == "win32" else cairo()
    started = ffi.new("void **")
    if freetype.FT_Init_FreeType(started):
        raise OSError("FreeType does not start")
    return freetype, started[0]
