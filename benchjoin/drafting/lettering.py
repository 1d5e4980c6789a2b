"""Lettering: how wide and how tall a line of text comes out, without asking any drawing library.

A height is that of capitals and figures, h in ISO 3098. Widths come from a small table of the font's own
advances; to change the font, write that table anew with scripts/make_widths.py.

>>> round(text_width("57 1/2", 2.5), 2)
10.97
>>> wrap("front and back rails", 2.5, 25)
['front and', 'back rails']
"""

from __future__ import annotations

from . import widths

FAMILIES = f'"{widths.FAMILY}", Verdana, Arial, sans-serif'
ELLIPSIS = "\u2026"


def font_size(height: float) -> float:
    """Size of the font whose capitals are `height` tall. [mm]"""
    return height * widths.UNITS_PER_EM / widths.CAPITAL


def ascent(height: float) -> float:
    """How far letters such as b and l reach above the baseline. [mm]"""
    return height * widths.ASCENT / widths.CAPITAL


def descent(height: float) -> float:
    """How far letters such as p and g reach below the baseline. [mm]"""
    return height * widths.DESCENT / widths.CAPITAL


def text_width(string: str, height: float, *, bold: bool = False) -> float:
    """Advance width of a line of text; a letter that the table lacks counts as one em. [mm]"""
    table = widths.BOLD if bold else widths.PLAIN
    units = sum(table.get(letter, widths.UNITS_PER_EM) for letter in string)
    return height * units / widths.CAPITAL


def wrap(string: str, height: float, width: float, *, bold: bool = False) -> list[str]:
    """Break a text into lines no wider than `width`, at spaces where it can, inside a word where it must.

    Line ends in the text are kept. An empty text gives no lines; a width below one letter gives a letter a
    line.
    """
    lines: list[str] = []
    for paragraph in string.splitlines():
        line = ""
        for word in paragraph.split():
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
    """The text, or as much of its beginning as fits with an ellipsis; nothing if not even that fits."""
    if text_width(string, height, bold=bold) <= width:
        return string
    kept = string
    while kept and text_width(kept.rstrip() + ELLIPSIS, height, bold=bold) > width:
        kept = kept[:-1]
    return kept.rstrip() + ELLIPSIS if kept else ""
