"""What we say of cairo's functions and numbers is what the wrapper that others keep says of them."""

import importlib
import re
from pathlib import Path

import cairocffi
import pytest

from benchjoin.drafting.writers import cairo, cairo_page, pdf
from benchjoin.drafting.writers.cairo_declared import ffi
from benchjoin.errors import PaperError

THEIRS = cairocffi.cairo
CALLED = [name for name in dir(cairo.cairo()) if name.startswith("cairo_") and "_ft_" not in name]
"""All but FreeType's, which the wrapper does not know."""


def told(known, function):
    """A function's type in sizes: what it gives, and what it takes."""
    kind = known.typeof(function)

    def size(one):
        return 0 if one.kind == "void" else ("float" if one.cname == "double" else "whole", known.sizeof(one))

    return size(kind.result), [size(one) for one in kind.args]


@pytest.mark.parametrize("name", CALLED)
def test_a_function_takes_and_gives_what_the_wrapper_says(name):
    assert told(ffi, getattr(cairo.cairo(), name)) == told(cairocffi.ffi, getattr(THEIRS, name))


@pytest.mark.parametrize("name", ["cairo_matrix_t", "cairo_text_extents_t"])
def test_a_structure_has_its_numbers_where_the_wrapper_has_them(name):
    fields = [(field, kind.offset) for field, kind in ffi.typeof(name).fields]
    assert fields == [(field, kind.offset) for field, kind in cairocffi.ffi.typeof(name).fields]


@pytest.mark.parametrize(
    ("ours", "theirs"),
    [
        (cairo._PLAIN, "FONT_WEIGHT_NORMAL"),
        (cairo._BOLD, "FONT_WEIGHT_BOLD"),
        (0, "FONT_SLANT_NORMAL"),
        (cairo._HINT_STYLE_NONE, "HINT_STYLE_NONE"),
        (cairo._HINT_METRICS_OFF, "HINT_METRICS_OFF"),
        (cairo_page._BUTT, "LINE_CAP_BUTT"),
        (cairo_page._ROUND_CAP, "LINE_CAP_ROUND"),
        (cairo_page._MITER, "LINE_JOIN_MITER"),
        (cairo_page._ROUND_JOIN, "LINE_JOIN_ROUND"),
        (cairo_page._WINDING, "FILL_RULE_WINDING"),
        (cairo_page._EVEN_ODD, "FILL_RULE_EVEN_ODD"),
        (pdf._VERSION, "PDF_VERSION_1_4"),
        (pdf._NOT_WRITTEN, "STATUS_WRITE_ERROR"),
    ],
)
def test_a_number_means_what_the_wrapper_calls_it(ours, theirs):
    assert ours == getattr(cairocffi, theirs)


def test_what_cairo_could_not_draw_is_told_in_its_words():
    cairo.check(0)
    with pytest.raises(PaperError, match=r"cairo says 'out of memory'\..*save as \.svg"):
        cairo.check(cairocffi.constants.STATUS_NO_MEMORY)


def test_what_the_script_declares_is_what_was_read(monkeypatch):
    monkeypatch.syspath_prepend(str(Path(__file__).parents[2] / "scripts"))
    said = importlib.import_module("declare_cairo").DECLARED
    assert sorted(re.findall(r"\b((?:cairo|FT)_\w+)\(", said)) == sorted(dir(cairo.cairo()))
