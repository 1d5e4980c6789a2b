"""Lettering: how a line of text is set, and how wide and tall it comes out, without asking any drawing library.

A height is that of capitals and figures, h in ISO 3098. Widths come from a small table of the font's own advances;
to change the font, write that table anew with scripts/make_font.py. Inch fractions are set stacked, the
upper figure raised and the lower one dropped, close behind their whole number; the text itself stays as it is
written, "48 3/8", so a recording can be read and a PDF searched. All heights are of ISO 3098's series: the figures of a
fraction are those of the next lower height, and never lower than can be read at arm's length.

>>> round(text_width("57 1/2", 2.5), 2)
11.06
>>> [run.string for run in set_runs("A1 48 3/8 foot shelf", 2.5)]
['A1 48', ' 3/8', ' foot shelf']
>>> wrap("front and back rails", 2.5, 25)
['front and', 'back rails']
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import NamedTuple

from ..trade.standards import LETTERING
from . import widths

ELLIPSIS = "\u2026"
SMALLEST_FRACTION = 2.5  # mm, figures of a fraction are never lower: what is read at arm's length
LEAST_STACKED = 2.5  # mm, in lettering lower than this a fraction stays on the line
_NEAR = 0.05  # a height that a printer's factor has changed by no more is that of the series
_GAP = 0.13  # between a whole number and its fraction, of the height of the text
_DROP = 0.14  # how far the lower figure stands below the line, of the height of the text
# How far the upper and the lower figure lie over the box of the stroke between them, of their own height. Readers of
# PDF take a step down steeper than 1 to 1 for a new line, and a gap along a turned line as well: neither may be left.
_TUCKS = (0.20, 0.13)
# Where the figures of a fraction are as high as the others they stand almost on the line: a steeper drop, no tuck.
_FULL_DROP = 0.25
_FULL_GAP = 0.55  # wide enough that 1 1/16 is never read as 11/16
_FULL_TUCKS = (0.06, 0.02)

# A whole number, if there is one, and a fraction of an inch; touched by no letter, figure, stroke or decimal point.
_MIXED = re.compile(
    r"(?:(?<![\w/.,])(?P<whole>[0-9]+) )?"
    r"(?<![\w/.,])(?P<fraction>(?P<over>[1-9][0-9]?)/(?P<under>2|4|8|16|32|64))(?![\w/]|[.,][0-9])"
)


class Run(NamedTuple):
    """Letters of one height, and where they begin: along the line from the text's start, and above the line. [mm]

    One place stands for all letters, which follow each other; or each letter has its own.
    """

    string: str
    height: float
    places: tuple[tuple[float, float], ...]


def font_size(height: float) -> float:
    """Size of the font whose capitals are `height` tall. [mm]"""
    return height * widths.UNITS_PER_EM / widths.CAPITAL


def ascent(height: float) -> float:
    """How far letters such as b and l, and raised figures, reach above the baseline. [mm]"""
    return height * widths.ASCENT / widths.CAPITAL


def descent(height: float) -> float:
    """How far letters such as p and g, and lowered figures, reach below the baseline. [mm]"""
    return height * widths.DESCENT / widths.CAPITAL


def text_width(string: str, height: float, *, bold: bool = False) -> float:
    """Width of a line of text as it is set; a letter that the table lacks counts as one em. [mm]"""
    return _set(string, height, bold)[1] if "/" in string else _advance(string, height, bold)


def unwritten(texts: Iterable[str]) -> str:
    """Letters of texts that the drawing font has no sign for, in their order: an empty box is printed for each.

    >>> unwritten(["front rail 3 1/2", "שלום"])
    'שלום'
    """
    return "".join(dict.fromkeys(letter for text in texts for letter in text if letter not in widths.PLAIN))


def set_runs(string: str, height: float, *, bold: bool = False) -> tuple[Run, ...]:
    """The text in runs of one height; joined, they are the text again."""
    if "/" not in string:
        return (Run(string, height, ((0.0, 0.0),)),) if string else ()
    return _set(string, height, bold)[0]


def fraction_height(height: float) -> float:
    """Height of a fraction's figures in lettering of a height: the next lower of the series, if it can be read. [mm]

    >>> [fraction_height(height) for height in (2.5, 3.5, 5.0, 7.0)]
    [2.5, 2.5, 3.5, 5.0]
    """
    lower = max((h for h in LETTERING if h < height * (1.0 - _NEAR)), default=height)
    return min(height, max(SMALLEST_FRACTION, lower * height / _in_series(height)))


def _gap(height: float) -> float:
    """Between a whole number and its fraction. [mm]"""
    return (_FULL_GAP if fraction_height(height) >= height else _GAP) * height


def _in_series(height: float) -> float:
    """The height of the series from which a printer's factor has stretched a height, or the height itself. [mm]"""
    near = min(LETTERING, key=lambda h: abs(h - height))
    return near if abs(near - height) <= _NEAR * near else height


def _advance(string: str, height: float, bold: bool) -> float:
    table = widths.BOLD if bold else widths.PLAIN
    try:
        units = sum(map(table.__getitem__, string))
    except KeyError:
        units = sum([table.get(letter, widths.UNITS_PER_EM) for letter in string])
    return height * units / widths.CAPITAL


def mixed_numbers(string: str) -> Iterator[re.Match[str]]:
    """Every fraction of an inch in a text, with the whole number before it.

    A fraction is less than one, in halves, quarters, eighths to sixty-fourths; "2026/11", "A4/A3", "1/bench" and
    "5/4" are none.

    >>> [found[0] for found in mixed_numbers("A1 48 3/8, 5/8 deep, on 3/4/2026")]
    ['48 3/8', '5/8']
    """
    return (found for found in _MIXED.finditer(string) if int(found["over"]) < int(found["under"]))


@lru_cache(maxsize=4096)
def _set(string: str, height: float, bold: bool) -> tuple[tuple[Run, ...], float]:
    """Runs of a text, and how wide they are together."""
    runs: list[Run] = []
    done, x = 0, 0.0
    for found in mixed_numbers(string) if height >= LEAST_STACKED else ():
        begin = found.start("fraction")
        space = string[done:begin].endswith(" ")
        if before := string[done : begin - space]:
            runs.append(Run(before, height, ((x, 0.0),)))
            x += _advance(before, height, bold)
        if space:
            x += _gap(height) if found["whole"] else _advance(" ", height, bold)
        stacked, wide = _stack(found["over"], found["under"], height, bold, x, space=space)
        runs.append(stacked)
        done, x = found.end(), x + wide
    if done < len(string):
        runs.append(Run(string[done:], height, ((x, 0.0),)))
        x += _advance(string[done:], height, bold)
    return tuple(runs), x


def _stack(over: str, under: str, height: float, bold: bool, start: float, *, space: bool) -> tuple[Run, float]:
    """A fraction that begins at `start`, each letter in its place, and how wide it is.

    A space before it is a letter of it and stands close before the upper figure, whatever the gap: readers of PDF
    that put texts together again by where letters stand then find it, along a turned line too.
    """
    small = fraction_height(height)
    full = small >= height
    rise = ascent(height) - small * widths.FIGURE / widths.CAPITAL
    drop = (_FULL_DROP if full else _DROP) * height
    after_over, after_stroke = _FULL_TUCKS if full else _TUCKS
    table, unit = widths.BOLD if bold else widths.PLAIN, small / widths.CAPITAL
    places = [(start - table[" "] * unit, rise)] if space else []
    x = 0.0
    for letter in over:
        places.append((start + x, rise))
        x += table[letter] * unit
    x -= after_over * small
    places.append((start + x, (rise - drop) / 3))
    x += table["/"] * unit - after_stroke * small
    for letter in under:
        places.append((start + x, -drop))
        x += table[letter] * unit
    return Run(f"{' ' * space}{over}/{under}", small, tuple(places)), x


def wrap(string: str, height: float, width: float, *, bold: bool = False) -> list[str]:
    """Break a text into lines no wider than `width`, at spaces where it can, inside a word where it must.

    A whole number and its fraction are one word, broken at its space only where it is wider than a line. Line ends in
    the text are kept. An empty text gives no lines; a width below one letter gives a letter a line.
    """
    lines: list[str] = []
    for paragraph in string.splitlines():
        line = ""
        for word in _words(paragraph, height, width, bold):
            longer = f"{line} {word}" if line else word
            if text_width(longer, height, bold=bold) <= width:
                line = longer
                continue
            if line:
                lines.append(line)
            *full, line = _break_word(word, height, width, bold=bold)
            lines.extend(full)
        if line:
            lines.append(line)
    return lines


def words_of(string: str, height: float, *, bold: bool = False) -> list[str]:
    """Words of a text, a whole number and its fraction as one."""
    return [word for paragraph in string.splitlines() for word in _words(paragraph, height, math.inf, bold)]


def longest_word(string: str, height: float, *, bold: bool = False) -> float:
    """Width of the widest word of a text. [mm]"""
    return max((text_width(word, height, bold=bold) for word in words_of(string, height, bold=bold)), default=0.0)


def _words(paragraph: str, height: float, width: float, bold: bool) -> list[str]:
    """Words of a paragraph, a whole number and its fraction as one where they go on a line."""
    string = " ".join(paragraph.split())
    kept = {
        found.end("whole")
        for found in mixed_numbers(string)
        if found["whole"] and text_width(found[0], height, bold=bold) <= width
    }
    cuts = [i for i, letter in enumerate(string) if letter == " " and i not in kept]
    words = [string[i + 1 : j] for i, j in zip([-1, *cuts], [*cuts, len(string)], strict=True)]
    return [word for word in words if word]


def _break_word(word: str, height: float, width: float, *, bold: bool) -> list[str]:
    """Pieces of a word, each as long as fits; at least one letter each."""
    pieces, piece = [], ""
    for letter in word:
        if piece and text_width(piece + letter, height, bold=bold) > width:
            pieces.append(piece)
            piece = ""
        piece += letter
    return [*pieces, piece]


def shorten(string: str, height: float, width: float, *, bold: bool = False) -> str:
    """The text, or as much of its beginning as fits with an ellipsis; nothing if not even that fits.

    No mixed number is cut short: half of one would be another size.
    """
    if text_width(string, height, bold=bold) <= width:
        return string
    numbers = [found.span() for found in mixed_numbers(string)]
    for end in range(len(string) - 1, 0, -1):
        if not any(first < end < last for first, last in numbers):
            cut = string[:end].rstrip() + ELLIPSIS
            if text_width(cut, height, bold=bold) <= width:
                return cut
    return ""
