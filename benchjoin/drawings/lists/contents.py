"""The contents of a binder: every kind of sheet once, with the numbers of its pages and its scale."""

from __future__ import annotations

from collections.abc import Sequence

import attrs

from ...drafting.lettering import wrap
from ...drafting.primitives import Primitive, Text
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import PITCH, TEXT
from ...drafting.sheets.sheet import Sheet
from ...phrases import runs
from ...trade.paper import PAPERS, SOLD_AS
from .table_figure import GUTTER, lines_below, title_lines

NUMBERS, SCALES = 20.0, 26.0
"""Widths of the columns of numbers and scales. [mm]"""
CONTENTS = "Contents"
AFTER = 1.2
"""More from line to line where one begins anew. [mm]"""


@attrs.frozen
class Entry:
    """A line of the contents: numbers of the pages, what is on them, at which scales, on which papers."""

    pages: tuple[int, ...]
    what: str
    scales: tuple[str, ...]
    papers: tuple[str, ...]


def entries(sheets: Sequence[Sheet], first: int) -> list[Entry]:
    """What sheets carry that are numbered from first on, each kind of them once."""
    found: dict[str, list[tuple[int, Sheet]]] = {}
    for number, sheet in enumerate(sheets, first):
        for chapter in sheet.chapters or (sheet.title,):
            if chapter == CONTENTS:
                continue
            found.setdefault(chapter, []).append((number, sheet))
    return [
        Entry(
            tuple(number for number, _ in own),
            chapter,
            tuple(dict.fromkeys(sheet.scale for _, sheet in own if sheet.scale)),
            tuple(dict.fromkeys(paper_called(sheet.width, sheet.height) for _, sheet in own)),
        )
        for chapter, own in found.items()
    ]


def contents(listed: Sequence[Entry], width: float, paper: str, *, columns: int = 1) -> Figure:
    """The contents of a width, in columns; paper is the one that most sheets are on, which is said once. [mm]"""
    title, start = title_lines(CONTENTS, width)
    each = (width - GUTTER * (columns - 1)) / columns
    rows = [_row(entry, each, paper) for entry in listed]
    count = -(-len(rows) // columns)
    strokes: list[Primitive] = list(title)
    places, foot = [0.0], start
    for number in range(columns):
        y = start
        for row in rows[number * count : (number + 1) * count]:
            for x, lines in zip((0.0, NUMBERS, each - SCALES), row, strict=True):
                at = (number * (each + GUTTER) + x, y + PITCH - TEXT)
                strokes += lines_below(lines, at)
            y -= PITCH * max(map(len, row)) + AFTER
            places.append(y)
        foot = min(foot, y)
    strokes.append(Text((0.0, foot - TEXT), f"All on {paper}, where nothing else is said.", TEXT))
    breaks = (*places[:-1], foot - PITCH) if columns == 1 else ()
    return Figure(name=CONTENTS, drawing=strokes, breaks=breaks)


def _row(entry: Entry, width: float, paper: str) -> tuple[list[str], list[str], list[str]]:
    """Lines of the cells of an entry."""
    return (
        wrap(runs(entry.pages), TEXT, NUMBERS - 2.0),
        wrap(_what(entry, paper), TEXT, width - NUMBERS - SCALES - 2.0),
        wrap(", ".join(entry.scales), TEXT, SCALES),
    )


def _what(entry: Entry, paper: str) -> str:
    return entry.what if entry.papers == (paper,) else f"{entry.what} ({', '.join(entry.papers)})"


def paper_called(*size: float) -> str:
    """The name that a paper of a size is sold under, or its size in mm. [mm]"""
    sold = {proper: name for name, proper in SOLD_AS.items()}
    for paper in PAPERS:
        if max(abs(a - b) for a, b in zip(sorted(size), (paper.width, paper.height), strict=True)) < 0.01:
            return sold.get(paper.name, paper.name)
    return " × ".join(f"{side:.0f}" for side in sorted(size)) + " mm"
