"""The two ways to paper lie on each other: PDF straight from the recorded drawing, and its SVG through a renderer.

cairosvg reads the SVG and knows nothing of the other way; pdfium draws what comes of both. Words are those that the
sheet records.
"""

from __future__ import annotations

import io
import unicodedata
from collections import Counter

import cairosvg
import numpy as np
import pypdfium2
import pytest
from designs import plain_bench as bench
from read_paper import spread_ink

from benchjoin import Board, alter, assembly, board_plan, elevation, fasten, lay_out, set_page, strength
from benchjoin.binding import SECTIONS, sheets
from benchjoin.drafting.linework import KINDS
from benchjoin.drafting.primitives import Clipped, Disc, Fill, Line, Text, flat, shift
from benchjoin.drafting.sheets.sheet import Sheet
from benchjoin.drafting.writers import png
from benchjoin.drafting.writers.pdf import bind_pdf
from benchjoin.drafting.writers.png import png_bytes
from benchjoin.template_pages import template_sheets

Image = pytest.importorskip("PIL.Image")
DPI = 150
STOCKS = dict.fromkeys(part.stock.name for part in lay_out(bench).parts)
SQUARE = ((0, 0), (20, 0), (20, 20), (0, 20))
LINES = tuple(Line(((5, 5 + 4 * n), (60, 6 + 4 * n), (90, 5 + 4 * n)), kind) for n, kind in enumerate(KINDS))
CLOSED = tuple(
    Line(((5 + 14 * n, 40), (15 + 14 * n, 40), (10 + 14 * n, 50)), kind, True) for n, kind in enumerate(KINDS)
)
FILLS = (
    Line(((0, 70), (110, 70)), "visible"),
    Fill((tuple((x + 10, y + 60) for x, y in SQUARE),), "white"),
    Fill((tuple((x + 35, y + 60) for x, y in SQUARE), ((40, 65), (40, 75), (50, 75), (50, 65)))),
    Fill((((60, 60), (70, 60), (65, 75)),)),
    Fill((((75, 60), (70, 75), (65, 60)),)),  # the other way round, over its neighbour
    Disc((85, 70), 6, "hidden"),
    Disc((100, 70), 4, filled=True),
)
WORDS = tuple(
    Text((75, 90 + 9 * n), f"{anchor} 48 3/8, 2 7/16 full ½ – Ø", height, anchor, bold=bold)
    for n, (anchor, height, bold) in enumerate(
        [("start", 2.5, False), ("middle", 3.5, True), ("end", 3.5, False), ("start", 1.8, True)]
    )
)
TURNED = tuple(
    Text((15 + 25 * n, 160), string, 3.5, anchor, turn, bold=n % 2 == 0)
    for n, (string, anchor, turn) in enumerate(
        [
            ("turned 5/8 deep", "start", 90),
            ("48 3/8", "middle", 90),
            ("downward", "end", -90),
            ("aslant", "middle", 30),
            ("on its head", "end", 180),
        ]
    )
)
ALL = (*LINES, *CLOSED, *FILLS, *WORDS, *TURNED)
BLANKED = (Clipped(ALL, (10, 10, 100, 150)), Fill((tuple((x + 30, y + 30) for x, y in SQUARE),), "white"))
NESTED = (Clipped(shift(BLANKED, 5, 5), (20, 20, 90, 120)), *LINES)
HAND_MADE = {"all": ALL, "cut out": (Clipped(ALL, (20, 20, 80, 150)),), "blanked": BLANKED, "nested": NESTED}


def hand_made(name):
    return Sheet(name=name, title=name, width=150, height=200, drawing=HAND_MADE[name])


def by_pdfium(data):
    for page in pypdfium2.PdfDocument(data):
        yield page.render(scale=DPI / 72, grayscale=True).to_numpy().squeeze(), page


def by_way_of_svg(sheet):
    """The sheet's SVG as cairosvg draws it on a page, lettered as it letters pictures."""
    out = io.BytesIO()
    surface = type("PDF", (png._Lettered, cairosvg.surface.PDFSurface), {})
    surface(cairosvg.parser.Tree(bytestring=sheet.svg().encode()), out, 96).finish()
    ((pixels, page),) = by_pdfium(out.getvalue())
    return pixels, page.get_textpage().get_text_range()


def strays(one, other):
    """Dark pixels of each that have no ink within one pixel in the other."""
    high, wide = (min(sides) for sides in zip(one.shape, other.shape, strict=True))
    assert abs(np.subtract(one.shape, other.shape)).max() <= 1
    one, other = one[:high, :wide], other[:high, :wide]
    return int(((one < 128) & ~spread_ink(other)).sum()), int(((other < 128) & ~spread_ink(one)).sum())


def letters(words):
    return "".join(unicodedata.normalize("NFC", words).split())


def compare(made):
    assert made
    for sheet, (pixels, page) in zip(made, by_pdfium(bind_pdf(made, title="A")), strict=True):
        other, read = by_way_of_svg(sheet)
        assert strays(pixels, other) == (0, 0), sheet.name
        assert page.get_textpage().get_text_range() == read, sheet.name
        # letters of a cut-out that lie outside its box are in neither file
        texts = [text.string for text in sheet.whole if isinstance(text, Text)]
        if not any(isinstance(item, Clipped) for item in sheet.whole):
            assert Counter(letters(read)) == Counter(letters("".join(texts))), sheet.name
        assert [string for string in texts if letters(string) not in letters(read)] == [], sheet.name


@pytest.mark.parametrize("name", HAND_MADE)
def test_every_kind_of_ink_lies_where_it_lies_by_way_of_svg(name):
    compare([hand_made(name)])


@pytest.mark.slow
@pytest.mark.parametrize("section", SECTIONS)
def test_sheets_of_the_binder_come_out_alike(section):
    layout = lay_out(alter(bench, {"length": "58 in"}))
    work = fasten(layout, wood="western larch")
    boards = [Board(own, length=3000, width=140, thickness=80, stock=own, count=None) for own in STOCKS]
    made = sheets(
        layout,
        only=[section],
        before=lay_out(bench),
        fastening=work,
        strength=strength(layout, wood="western larch", fastening=work, corner_blocks=["butt"]),
        assembly=assembly(layout, wood="western larch", fastening=work),
        plan=board_plan(layout, boards),
    )
    compare(made)


def test_an_elevation_a_list_a_set_and_desk_pages_come_out_alike():
    layout = lay_out(bench)
    tile, *_ = template_sheets(layout, kinds=["tiles"])
    desk = template_sheets(layout, kinds=["sticks", "patterns"])
    compare([elevation(layout, "front"), *sheets(layout, only=["cut list"]), set_page(layout, "A"), tile, *desk])


def test_a_picture_shows_the_same_but_for_letters_on_whole_pixels():
    ((pixels, _),) = by_pdfium(bind_pdf([hand_made("all")], title="A"))
    picture = np.asarray(Image.open(io.BytesIO(png_bytes(hand_made("all"), dpi=DPI))).convert("L"))
    assert strays(pixels, picture) == (0, 0)


def test_ink_that_is_not_in_both_is_noticed():
    ((pixels, _),) = by_pdfium(bind_pdf([hand_made("all")], title="A"))
    other, _ = by_way_of_svg(hand_made("blanked"))
    assert strays(pixels, other)[0] > 100
    shifted = np.roll(pixels, 3, axis=0)
    assert min(strays(pixels, shifted)) > 100


def test_a_text_is_one_run_for_whoever_searches_it():
    ((_, page),) = by_pdfium(bind_pdf([hand_made("all")], title="A"))
    read = page.get_textpage().get_text_range()
    for text in flat(ALL):
        if isinstance(text, Text):
            assert text.string in read
