"""Pieces of story sticks laid end to end by the distances printed at their joints, read by pypdfium2 and pdfminer."""

from __future__ import annotations

import re

import pypdfium2
import pytest
from by_hand import BENCH_BACK_HEIGHT, BENCH_BACK_LEG, BENCH_FRONT_HEIGHT, BENCH_FRONT_LEG, struck
from designs import plain_bench as bench
from designs import plain_rack as rack
from read_paper import Table, missing, read_pages, uprights

from benchjoin import alter, lay_out
from benchjoin.drafting.full_size.correction import PrinterScale
from benchjoin.drafting.full_size.tiling import row_name
from benchjoin.drafting.primitives import shift
from benchjoin.drafting.sheets.sheet import Sheet
from benchjoin.drafting.writers.pdf import bind_pdf
from benchjoin.drawings.templates.stick.draw import draw_stick
from benchjoin.drawings.templates.stick.pages import story_sticks
from benchjoin.layout.sticks import sticks

MARK = 0.05  # mm
WIDE, NARROW = 0.5, 0.25
KEY = re.compile(r"^([a-z]+)(\d+)–\1(\d+)$")
SIZES = {"Letter": (279.4, 215.9), "A4": (297.0, 210.0)}
BENCH = lay_out(alter(bench, {"tape": "1 mm"}))
BY_HAND = {
    "a": [0.0, *struck(BENCH_FRONT_LEG, BENCH_FRONT_HEIGHT), BENCH_FRONT_HEIGHT],
    "b": [0.0, *struck(BENCH_BACK_LEG, BENCH_BACK_HEIGHT), BENCH_BACK_HEIGHT],
}
PRINTER = (0.985, 0.992)


class Piece:
    """A piece on its page: its outline, its key, and the distance that stands at its left end."""

    def __init__(self, page, number, outline):
        self.number, self.page = number, page
        self.left, self.low, self.right, self.high = outline
        mine = [words for words in page.words if self._holds(words[0])]
        keys = [(match, words[0]) for words in mine for word in words if (match := KEY.match(word.text))]
        figures = [word for words in mine for word in words if word.text.isdigit()]
        first = [(match, word) for match, word in keys if word.left - self.left < 6]
        if first:
            match, word = first[0]
            self.strip, self.count = match[1], int(match[3])
            near = [f for f in figures if 0 < f.left - word.left < 6]
            self.start = float(near[0].text)
        else:
            after = [match for match, word in keys]
            self.strip, self.count, self.start = (after[0][1] if after else "?"), 1, 0.0

    def _holds(self, word):
        return self.left <= word.left and word.right <= self.right and self.low < word.low and word.high < self.high


def pieces_of(pages, tallest=60.0):
    for number, page in enumerate(pages):
        for stroke in page.strokes:
            if len(stroke.points) == 5 and stroke.points[0] == stroke.points[-1] and abs(stroke.width - NARROW) < 0.01:
                xs, ys = zip(*stroke.points, strict=True)
                if 10 < max(ys) - min(ys) < tallest and max(xs) - min(xs) > 20:
                    yield Piece(page, number, (min(xs), min(ys), max(xs), max(ys)))


def saved(sheets, path):
    path.write_bytes(bind_pdf(sheets, title="sticks"))
    return path


@pytest.mark.parametrize("paper", SIZES)
def test_lines_of_the_pieces_lie_where_the_tape_says(paper, tmp_path):
    pages = read_pages(saved(story_sticks(BENCH, paper=paper), tmp_path / "sticks.pdf"))
    assert [page.size for page in pages] == [pytest.approx(SIZES[paper], abs=0.01)] * len(pages)
    found = {"a": set(), "b": set()}
    for piece in pieces_of(pages):
        for x, low, high in uprights(piece.page.strokes, WIDE):
            if low > piece.low - 1 and high < piece.high + 1 and piece.left - 1 < x < piece.right + 1:
                at = x - piece.left + piece.start
                near = min(BY_HAND[piece.strip], key=lambda line: abs(line - at))
                assert at == pytest.approx(near, abs=MARK)
                found[piece.strip].add(near)
    assert {strip: sorted(lines) for strip, lines in found.items()} == BY_HAND


@pytest.mark.parametrize("corrected", [False, True], ids=["as drawn", "corrected"])
@pytest.mark.parametrize("paper", SIZES)
@pytest.mark.parametrize("frame", [bench, rack], ids=["bench", "rack"])
def test_pieces_laid_end_to_end_are_the_stick_in_one_piece(frame, paper, corrected, tmp_path):
    layout = lay_out(alter(frame, {"tape": "1 mm"}))
    printer = PrinterScale(250 * PRINTER[0], 180 * PRINTER[1]) if corrected else None
    scale = PRINTER if corrected else (1.0, 1.0)
    path = saved(story_sticks(layout, paper=paper, printer=printer), tmp_path / "sticks.pdf")
    pages, document = read_pages(path), pypdfium2.PdfDocument(path)
    pieces = list(pieces_of(pages))
    margins, bar = 2 * 10.0, 2 * 4.8
    reach = (SIZES[paper][0] - margins - bar) * (scale[0] if corrected else 1.0) - 1.0
    for number, stick in enumerate(sticks(layout)):
        strip = draw_stick(layout, stick, row_name(number), reach)
        sheet = Sheet(
            name="s", title="s", width=stick.length + 20, height=strip.height + 20, drawing=shift(strip.drawing, 10, 10)
        )
        one = pypdfium2.PdfDocument(saved([sheet], tmp_path / "one.pdf"))
        mine = sorted((p for p in pieces if p.strip == strip.name), key=lambda p: p.count)
        assert [p.count for p in mine] == list(range(1, len(strip.places)))
        whole, laid = (Table(-2, -1, stick.length + 2, strip.height + 1, 80) for _ in range(2))
        whole.lay(one[0], (-10, -10), cut=(-2, -1, stick.length + 2, strip.height + 1))
        ends = [p.start for p in mine[1:]] + [stick.length + 1]
        for piece, end in zip(mine, ends, strict=True):
            left, low = piece.left * scale[0], piece.low * scale[1]
            start = piece.start if piece.count > 1 else -1.0
            laid.lay(
                document[piece.number],
                (piece.start - left, -low),
                cut=(start, -1, end, strip.height + 1),
                printed=scale,
            )
        edge = laid.slices(-2, 0.4, stick.length + 2, strip.height - 0.4)
        assert missing(whole.pixels[edge], laid.pixels[edge]) == 0
        bare = laid.pixels[edge].copy()
        for at in strip.places:
            bare[:, laid.slices(at - 10, 0, at + 13, 1)[1]] = 255
        assert (bare < 100).sum() > 1500
        assert missing(bare, whole.pixels[edge]) == 0


def test_every_joint_states_its_keys_and_its_distance_on_both_sides(tmp_path):
    pages = read_pages(saved(story_sticks(BENCH), tmp_path / "sticks.pdf"))
    pieces = list(pieces_of(pages))
    assert len(pieces) == 12
    for piece in pieces:
        after = [p for p in pieces if p.strip == piece.strip and p.count == piece.count + 1]
        if after:
            key = f"{piece.strip}{piece.count}–{piece.strip}{piece.count + 1}"
            mine = [w for words in piece.page.words if piece._holds(words[0]) for w in words]
            assert sum(w.text == key for w in mine) == 2
            assert sum(w.text == f"{after[0].start:.0f}" for w in mine) == 2
            # the tab: the piece goes on past its joint, to be glued under the next
            assert piece.right - piece.left == pytest.approx(after[0].start - piece.start + 12.0, abs=MARK)
