"""Widths of the columns of a table: as narrow as their cells, or, where that is too much, such that rows come out low.

Words stay whole as long as all columns of them go beside each other; numbers and their fractions are one word.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import combinations, permutations
from typing import Any

import numpy as np

from ..lettering import longest_word, text_width, words_of

STEPS = (1.0, 2.0, 4.0, 8.0, 16.0, 32.0)
"""By so much at a time columns are narrowed, or give to each other. [mm]"""
MOST_SWAPS, MOST_ROWS = 10, 80
"""So often they give to each other at most; so many rows are looked at."""
LINES = 8
"""Lines of a cell that are told apart."""
FEW = 7
"""Cells of so few words are broken exactly; of more, lines lose to words that do not end at their end."""
LOST = 1.08

Numbers = np.ndarray[Any, np.dtype[np.float64]]


def column_widths(
    columns: Sequence[str], rows: Sequence[Sequence[str]], room: float, height: float, more: float
) -> list[float]:
    """Widths of columns with bold headings in a room, for lettering of a height, with more beside each cell. [mm]"""
    places = range(len(columns))
    heads = [text_width(head, height, bold=True) for head in columns]
    whole = [max([heads[n], *(text_width(row[n], height) for row in rows)]) + more for n in places]
    if sum(whole) <= room:
        return whole
    words = [max((longest_word(row[n], height) for row in rows), default=0.0) for n in places]
    least = [max(longest_word(columns[n], height, bold=True), words[n]) + more for n in places]
    if sum(least) > room:
        return _broken(least, room)
    looked_at = [columns, *rows[:MOST_ROWS]]
    needs = np.array([[_needs(cell, height) for cell in row] for row in looked_at]).reshape(-1, len(columns), LINES)
    widths = _narrowed([min(w, room) for w in whole], least, needs + more, room)
    return _settled(widths, least, needs + more)


def _broken(widths: list[float], room: float) -> list[float]:
    """Widths at which words are broken, since they alone are too wide: the widest column gives way."""
    while sum(widths) > room + 1e-6:
        widest = max(range(len(widths)), key=lambda n: widths[n])
        second = max((width for n, width in enumerate(widths) if n != widest), default=0.0)
        widths[widest] = max(min(second, widths[widest] * 0.95), widths[widest] - (sum(widths) - room))
    return widths


@lru_cache(maxsize=4096)
def _needs(cell: str, height: float) -> tuple[float, ...]:
    """Widths at which a cell goes on one line, two lines, three lines … [mm]"""
    words = [text_width(word, height) for word in words_of(cell, height)]
    space = text_width(" ", height)
    whole = sum(words) + space * max(len(words) - 1, 0)
    if len(words) > FEW:
        return (whole, *(max(whole * LOST / count, *words) for count in range(2, LINES + 1)))
    runs = [(0, len(words)), *combinations(range(len(words) + 1), 2)]
    tried = sorted({sum(words[a:b]) + space * (b - a - 1) for a, b in runs if b > a} | {0.0})
    return tuple(
        next((width for width in tried if _fits(words, space, width + 1e-6, count)), whole)
        for count in range(1, LINES + 1)
    )


def _fits(words: Sequence[float], space: float, width: float, count: int) -> bool:
    """Whether words go on so many lines of a width."""
    lines, at = 1, 0.0
    for word in words:
        if word > width:
            return False
        if at and at + space + word > width:
            lines, at = lines + 1, word
        else:
            at += word + (space if at else 0.0)
    return lines <= count


def _lines(needs: Numbers, column: int, width: float) -> Numbers:
    """Lines of the cells of a column at a width."""
    return 1.0 + np.asarray((needs[:, column, :-1] > width + 1e-6).sum(axis=1), dtype=float)


def _narrowed(widths: list[float], least: Sequence[float], needs: Numbers, room: float) -> list[float]:
    """Time and again the column is narrowed that costs fewest lines for its width, until all go into the room."""
    while (over := sum(widths) - room) > 1e-6:
        now = [_lines(needs, column, width) for column, width in enumerate(widths)]
        costs = []
        for n, width in enumerate(widths):
            others = _highest(now, n)
            high = np.maximum(others, now[n]).sum()
            for step in {min(step, width - least[n], over) for step in STEPS}:
                if step > 0.0:
                    cost = np.maximum(others, _lines(needs, n, width - step)).sum() - high
                    costs.append((cost / step, -step, n))
        _, step, n = min(costs)
        widths[n] += step
    return widths


def _settled(widths: list[float], least: Sequence[float], needs: Numbers) -> list[float]:
    """Columns give each other width as long as that spares a line."""
    for _ in range(MOST_SWAPS):
        better = next(_better(widths, least, needs), None)
        if better is None:
            break
        give, take, step = better
        widths[give] -= step
        widths[take] += step
    return widths


def _better(widths: Sequence[float], least: Sequence[float], needs: Numbers) -> Iterator[tuple[int, int, float]]:
    now = [_lines(needs, column, width) for column, width in enumerate(widths)]
    total = _highest(now).sum()
    for give, take in permutations(range(len(widths)), 2):
        others = _highest(now, give, take)
        for step in STEPS:
            if widths[give] - step >= least[give]:
                own = _lines(needs, give, widths[give] - step), _lines(needs, take, widths[take] + step)
                if _highest([others, *own]).sum() < total:
                    yield give, take, step


def _highest(lines: Sequence[Numbers], *but: int) -> Numbers:
    """Lines of each row: those of its highest cell."""
    kept = [own for n, own in enumerate(lines) if n not in but]
    return np.asarray(np.max(kept, axis=0) if kept else np.ones(len(lines[0])), dtype=float)
