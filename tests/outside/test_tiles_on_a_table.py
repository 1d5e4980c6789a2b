"""Desk pages laid on a table by what is printed on them, read by pypdfium2 and pdfminer, against the page in one piece.

The reader takes the crosses from the strokes and the distances from the words of each tile, lays it where those say,
trims it at its seams, and compares its picture with the lines of the full-size page, and the lines with sums by hand.
"""

from __future__ import annotations

import re
from itertools import pairwise

import numpy as np
import pypdfium2
import pytest
from by_hand import BENCH_BACK_HEIGHT, BENCH_BACK_LEG, BENCH_FRONT_HEIGHT, BENCH_FRONT_LEG, BENCH_LEG_WIDTH, struck
from designs import plain_bench as bench
from read_paper import POINT, Table, crosses, levels, missing, read_pages, strokes_of, uprights

from benchjoin import alter, lay_out, set_page
from benchjoin.drafting.full_size.correction import PrinterScale
from benchjoin.drafting.writers.pdf import bind_pdf
from benchjoin.drawings.templates.set.tiles import set_tiles

MARK = 0.05  # mm
WIDE, NARROW = 0.5, 0.25
SEAM = re.compile(r"^(\d+) mm\b")
SIZES = {"Letter": (215.9, 279.4), "A4": (210.0, 297.0), "A3": (297.0, 420.0)}
LINES = [
    *[struck(BENCH_BACK_LEG, BENCH_BACK_HEIGHT)] * 2,
    *[struck(BENCH_FRONT_LEG, BENCH_FRONT_HEIGHT)] * 2,
]  # from the lowest edge of the gang: A4, A3, A2, A1
LAYOUT = lay_out(alter(bench, {"tape": "1 mm"}))  # distances in whole mm, which a reader has no trouble with
PRINTER = (0.985, 0.992)


def saved(sheets, path):
    path.write_bytes(bind_pdf(sheets, title="pages"))
    return path


def printed_by(sheet, printer):
    """Along and across the paper, as x and y of the page."""
    return printer if sheet.width > sheet.height else printer[::-1]


def laid(page, scale, offset):
    """Where a tile lies, with the foot and the lowest edge at (0, 0), and its seams on the table."""
    found = [(x * scale[0] + offset[0], y * scale[1] + offset[1]) for x, y in page.crosses]
    seams = {0: sorted({round(x, 2) for x, _ in found}), 1: sorted({round(y, 2) for _, y in found})}
    told = {0: {}, 1: {}}
    said = [line[n : n + 5] for line in page.words for n in range(len(line))]
    for words in said:
        match = SEAM.match(" ".join(word.text for word in words))
        if match:
            first = words[0]
            axis = 0 if abs(words[1].low - first.low) > 1 else 1  # words read along their seam
            edge = (first.left, first.low)[axis] * scale[axis] + offset[axis]
            way = -1 if after(words[1], page.words) in ("before", "below") else 1
            for seam in (seam for seam in seams[axis] if 0 < edge - seam < 4):
                told[axis].setdefault(seam, int(match[1]) * way)
    return told, seams


def after(word, lines):
    """The word that is written next, in whichever line of writing the reader puts it."""
    upright = word.high - word.low > word.right - word.left
    end, level = (word.high, word.left) if upright else (word.right, word.low)
    for other in (one for line in lines for one in line):
        start, its = (other.low, other.left) if upright else (other.left, other.low)
        if 0 < start - end < 2 and abs(its - level) < 0.5:
            return other.text
    return ""


class Tile:
    def __init__(self, page, scale=(1.0, 1.0), offset=(0.0, 0.0), drawn=(1.0, 1.0)):
        self.words, self.strokes = page.words, page.strokes
        self.crosses = crosses(page.strokes, drawn)
        self.told, self.seams = laid(self, scale, offset)
        self.at = tuple(self._at(axis) for axis in (0, 1))

    def _at(self, axis):
        places = [distance - seam for seam, distance in self.told[axis].items()]
        assert places, "a tile that does not say where it lies"
        return sum(places) / len(places)

    def cut(self):
        """The box on the table between its seams: trimmed on the left and below, whole on the other sides."""
        (x0, x1), (y0, y1) = ([seam + self.at[n] for seam in (self.seams[n][0], self.seams[n][-1])] for n in (0, 1))
        return x0, y0, x1, y1


@pytest.fixture(scope="module")
def whole(tmp_path_factory):
    """The full-size page, and where its foot and its lowest edge are."""
    sheet = set_page(LAYOUT, "A")
    path = saved([sheet], tmp_path_factory.mktemp("whole") / "whole.pdf")
    page = read_pages(path)[0]
    boxes = [s.points for s in page.strokes if abs(s.width - WIDE) < 0.01 and len(s.points) == 5]
    gang = [
        (min(x for x, _ in p), min(y for _, y in p))
        for p in boxes
        if abs(max(y for _, y in p) - min(y for _, y in p) - BENCH_LEG_WIDTH) < 0.01
    ]
    assert len(gang) == 4
    return pypdfium2.PdfDocument(path), min(x for x, _ in gang), min(y for _, y in gang)


FAST = [("Letter", False), ("A4", True)]
WAYS = [
    pytest.param(paper, upright, marks=[] if (paper, upright) in FAST else pytest.mark.slow)
    for paper in SIZES
    for upright in (True, False)
]


@pytest.mark.parametrize("corrected", [False, True], ids=["as drawn", "corrected"])
@pytest.mark.parametrize("paper, upright", WAYS, ids=str)
def test_tiles_laid_by_their_seams_have_the_lines_of_the_full_page(paper, upright, corrected, whole, tmp_path):
    document, foot, edge = whole
    printer = PrinterScale(PRINTER[0], PRINTER[1], bars=1) if corrected else None
    sheets = set_tiles(LAYOUT, "A", paper=paper, upright=upright, printer=printer)
    path = saved(sheets, tmp_path / "tiles.pdf")
    pages, tiles = read_pages(path), pypdfium2.PdfDocument(path)
    size = SIZES[paper] if upright else SIZES[paper][::-1]
    assert [page.size for page in pages] == [pytest.approx(size, abs=0.01)] * len(sheets)

    scale = printed_by(sheets[0], PRINTER) if corrected else (1.0, 1.0)
    offset = (2.0, 2.0) if corrected else (0.0, 0.0)
    drawn = tuple(1 / s for s in scale)
    found = [Tile(page, scale, offset, drawn) for page in pages]
    reference = Table(-95, -100, 1800, 449, 60)
    reference.lay(document[0], (-foot, -edge), cut=(-95, -100, 1800, 449))
    lines = ink_of(struck_on(document[0]), (-foot, -edge), reference)
    assert (lines < 100).sum() > 20_000  # there is something to compare
    assert missing(lines, reference.pixels) == 0  # and it is the ink of the full page
    seen = np.zeros_like(lines, dtype=bool)
    for sheet, tile in zip(tiles, found, strict=True):
        table = Table(-95, -100, 1800, 449, 60)
        table.lay(sheet, tile.at, cut=tile.cut(), printed=scale, offset=offset)
        box = table.slices(*whole_legs(tile.cut()))
        assert (lines[box] < 100).sum() > 300  # a shoulder line of a leg has 190
        assert missing(lines[box], table.pixels[box]) == 0
        seen[box] = True
    for row, own in enumerate(LINES):  # every line of every leg was there
        for line in own:
            box = reference.slices(line - 2, row * BENCH_LEG_WIDTH + 5, line + 2, (row + 1) * BENCH_LEG_WIDTH - 5)
            assert seen[box].all()


def whole_legs(cut):
    """What a tile shows of whole legs, a millimetre off its seams and off the legs beside them."""
    x0, y0, x1, y1 = cut
    legs = [n for n in range(4) if y0 < n * BENCH_LEG_WIDTH and (n + 1) * BENCH_LEG_WIDTH < y1]
    return x0 + 1, legs[0] * BENCH_LEG_WIDTH + 1, x1 - 1, (legs[-1] + 1) * BENCH_LEG_WIDTH - 1


def struck_on(page):
    """Straight wide lines of the full page within 80 mm of the gang: its outlines and the lines struck across it."""
    for stroke in strokes_of(page):
        if abs(stroke.width - WIDE) < 0.01:
            for (ax, ay), (bx, by) in pairwise(stroke.points):
                if abs(ax - bx) < 1e-3 or abs(ay - by) < 1e-3:
                    yield min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)


def ink_of(lines, at, table):
    """A picture with the middles of some lines on the wood, as dark as ink."""
    pixels = np.full_like(table.pixels, 255)
    for x0, y0, x1, y1 in lines:
        left, low, right, high = x0 + at[0], y0 + at[1], x1 + at[0], y1 + at[1]
        if left > -0.1 and right < BENCH_BACK_HEIGHT + 0.1 and low > -0.1 and high < 4 * BENCH_LEG_WIDTH + 0.1:
            pen = 0.5 / table.scale  # a pixel wide
            box = table.slices(left - pen, low - pen, right + pen, high + pen)
            pixels[box] = 0
    return pixels


@pytest.mark.parametrize("paper", SIZES)
def test_seams_keep_four_millimetres_from_every_line_of_the_legs(paper, tmp_path):
    for page in read_pages(saved(set_tiles(LAYOUT, "A", paper=paper), tmp_path / "tiles.pdf")):
        x0, y0, x1, y1 = Tile(page).cut()
        legs = range(round(whole_legs((x0, y0, x1, y1))[1] / BENCH_LEG_WIDTH), 4)
        lines = [line for n in legs if (n + 1) * BENCH_LEG_WIDTH < y1 for line in LINES[n]]
        assert min(abs(seam - line) for seam in (x0, x1) for line in lines) >= 4 - MARK
        assert min(abs(seam - n * BENCH_LEG_WIDTH) for seam in (y0, y1) for n in range(5)) >= 4 - MARK


@pytest.mark.slow
@pytest.mark.parametrize("paper, upright", WAYS, ids=str)
def test_crosses_of_neighbours_fall_together_at_the_distances_that_they_state(paper, upright, tmp_path):
    pages = read_pages(saved(set_tiles(LAYOUT, "A", paper=paper, upright=upright), tmp_path / "tiles.pdf"))
    tiles = [Tile(page) for page in pages]
    places = sorted((x + t.at[0], y + t.at[1]) for t in tiles for x, y in t.crosses)
    groups, group = [], [places[0]]
    for before, here in pairwise(places):
        if abs(here[0] - before[0]) > 1:
            groups.append(group)
            group = []
        group.append(here)
    for same in [*groups, group]:
        xs = [x for x, _ in same]
        assert max(xs) - min(xs) < MARK
    for tile in tiles:
        for axis in (0, 1):
            for seam, distance in tile.told[axis].items():
                assert seam + tile.at[axis] == pytest.approx(distance, abs=MARK)
                assert distance % 10 == 0
    assert all(len(tile.crosses) == 4 for tile in tiles)


@pytest.mark.parametrize("paper, upright", WAYS, ids=str)
def test_shoulder_lines_on_the_tiles_are_those_of_the_tape(paper, upright, tmp_path):
    pages = read_pages(saved(set_tiles(LAYOUT, "A", paper=paper, upright=upright), tmp_path / "tiles.pdf"))
    seen = [set() for _ in LINES]
    for page in pages:
        tile = Tile(page)
        x0, y0, x1, y1 = tile.cut()
        for x, low, high in uprights(page.strokes, WIDE):
            at, row = x + tile.at[0], round((low + tile.at[1]) / BENCH_LEG_WIDTH)
            assert (high - low) == pytest.approx(BENCH_LEG_WIDTH, abs=MARK)
            assert (low + tile.at[1]) == pytest.approx(row * BENCH_LEG_WIDTH, abs=MARK)
            near = min(LINES[row], key=lambda line: abs(line - at))
            assert at == pytest.approx(near, abs=MARK)
            if x0 <= at <= x1 and low + tile.at[1] < y1 and high + tile.at[1] > y0:
                seen[row].add(near)
    assert [sorted(lines) for lines in seen] == [sorted(lines) for lines in LINES]


@pytest.mark.parametrize("paper, along, across", [("Letter", 254, 180), ("A4", 254, 180), ("A3", 254, 254)])
def test_check_bars_of_every_tile_are_as_long_as_they_say(paper, along, across, tmp_path):
    for page in read_pages(saved(set_tiles(LAYOUT, "A", paper=paper), tmp_path / "tiles.pdf")):
        standing = page.size[1] > page.size[0]
        lying, upright = (across, along) if standing else (along, across)
        wide = [b - a for _, a, b in levels(page.strokes, NARROW)]
        tall = [b - a for _, a, b in uprights(page.strokes, NARROW)]
        assert any(abs(w - lying) < MARK for w in wide)
        assert any(abs(t - upright) < MARK for t in tall)


# --- a printer that is off ---


def marks_on_the_table(tiles, pages, scale, offset):
    """Every wide upright line of the tiles, where it lies on the table when the tiles are laid by their crosses."""
    for tile, page in zip(tiles, pages, strict=True):
        x0, _, x1, _ = tile.cut()
        for x, _, _ in uprights(page.strokes, WIDE):
            at = x * scale[0] + offset[0] + tile.at[0]
            if x0 - 1 <= at <= x1 + 1:
                yield at


@pytest.mark.parametrize(
    "read_to, within",
    [(None, 0.2), (0.25, 1.9)],
    ids=["bars read exactly", "bars read to a quarter of a millimetre"],
)
@pytest.mark.parametrize("long", [1778.0, 1850.0])
def test_a_correction_brings_marks_back_over_the_length_of_a_leg(read_to, within, long, tmp_path):
    """A printer at 0.985 × 0.992 that shifts by 2 mm, on the raster of a roll: lines by the middle of their ink."""
    layout = lay_out(alter(bench, {"tape": "1 mm", "back.height": long}))
    bars = [250.0 * PRINTER[0], 250.0 * PRINTER[1]]
    if read_to:  # the worst reading that is still within a quarter of a millimetre
        bars = [bars[0] + read_to, bars[1] - read_to]
    printer = PrinterScale(*bars, bars=250)
    measured = {name: roll_marks(layout, how, tmp_path) for name, how in (("off", None), ("back", printer))}
    higher = long - 1778.0  # the head rail goes up with the leg, the hook rail by half of that: its clears are equal
    raised = {1228.725: higher / 2, 1317.625: higher / 2, 1644.65: higher}
    wanted = [line + raised.get(round(line, 3), 0.0) for line in struck(BENCH_BACK_LEG, BENCH_BACK_HEIGHT)] + [long]
    off = [a - b for a, b in zip(measured["off"], wanted, strict=True)]
    assert off[-1] == pytest.approx(-0.015 * long, abs=0.1)
    error = [abs(a - b) for a, b in zip(measured["back"], wanted, strict=True)]
    assert max(error) <= within
    if read_to:
        assert max(error) > 0.9 * within * long / 1800  # and the figure is not an idle one


def test_lines_of_a_leg_lie_where_they_should_in_a_picture_at_300_dots_an_inch(whole):
    """The lowest leg of the gang, A4, cut out of the page; a shoulder line is dark over the whole of the strip."""
    document, foot, edge = whole
    strip = (foot - 5, edge + 8, foot + 1790, edge + 20)
    table = Table(*strip, 300)
    table.lay(document[0], (0, 0), cut=strip)
    found = dark_columns(table.pixels.astype(float), table.scale)
    wanted = [0.0, *LINES[0], BENCH_BACK_HEIGHT]
    assert [at - 5 for at in found] == [pytest.approx(line, abs=0.02) for line in wanted]  # a quarter of a pixel


def dark_columns(rows, scale):
    """Middles of the upright lines that are dark over all rows, by the weight of their ink. [mm]"""
    ink, dark = (255 - rows).mean(axis=0), (rows < 160).mean(axis=0) > 0.95
    starts = [n for n in range(len(dark)) if dark[n] and not dark[n - 1]]
    places = []
    for start in starts:
        end = next((n for n in range(start, len(dark)) if not dark[n]), len(dark))
        window = np.arange(max(start - 2, 0), min(end + 2, len(dark)))
        places.append(((window + 0.5) * ink[window]).sum() / ink[window].sum() / scale)
    return places


def roll_marks(layout, printer, folder):
    """Distances from the foot of the dark columns in the lowest leg of the gang, printed on a roll by the printer."""
    path = saved([set_page(layout, "A", roll="36 in", printer=printer)], folder / "roll.pdf")
    page = pypdfium2.PdfDocument(path)[0]
    strokes = read_pages(path)[0].strokes
    up = PRINTER[1]
    boxes = [s.points for s in strokes if abs(s.width - WIDE) < 0.01 and len(s.points) == 5]
    tall = [p for p in boxes if 70 < max(y for _, y in p) - min(y for _, y in p) < 90]
    low = min(min(y for _, y in p) for p in tall) * up + 2.0
    left = min(x for p in tall for x, _ in p) * PRINTER[0] + 2.0
    dpi = 150
    table = Table(left - 5, low, left + 1900, low + 60, dpi)
    table.lay(page, (0, 0), cut=(left - 5, low, left + 1900, low + 60), printed=PRINTER, offset=(2.0, 2.0))
    # a shoulder line is dark from the leg's edge upwards; hatching and words are not
    places = dark_columns(table.pixels[10:-60].astype(float), table.scale)
    found = [place - places[0] for place in places[1:]]
    border = page.get_width() * POINT - 12.0  # of the sheet, as drawn
    return [at for at in found if left + at < border * PRINTER[0]]


@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_corrected_tiles_are_true_although_each_is_printed_off(paper, tmp_path):
    printer = PrinterScale(250 * PRINTER[0], 180 * PRINTER[1])
    sheets = set_tiles(LAYOUT, "A", paper=paper, printer=printer)
    pages = read_pages(saved(sheets, tmp_path / "tiles.pdf"))
    scale = printed_by(sheets[0], PRINTER)
    tiles = [Tile(page, scale, (2.0, 2.0), tuple(1 / s for s in scale)) for page in pages]
    lines = sorted({line for row in LINES for line in row})
    found = list(marks_on_the_table(tiles, pages, scale, (2.0, 2.0)))
    assert len(found) == sum(len(row) for row in LINES)  # each line of each leg is on one page
    assert max(min(abs(at - line) for line in lines) for at in found) < 0.2
