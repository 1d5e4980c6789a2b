"""Sheets of many small drawings: on as few sheets as half the largest scale takes, as large as goes there."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress

import attrs

from ...drafting.sheets.figure import Figure
from ...drafting.sheets.packing import Placed, places
from ...drafting.sheets.sheet import Sheet
from ...drafting.sheets.title_block import TitleBlock
from ...errors import PaperError
from .asked import Asked
from .fitting import INSET, view_scales
from .house import block, both_ways, room
from .maker import make_all, within

GAP = 8.0
"""Between one drawing and the next. [mm]"""


Blocks = Callable[[float, float, bool], Iterable[Figure]]
"""Figures at a scale, for a room of some width, and whether their findings are told in brief; none after one that is
too large is asked for. [mm]"""


def packed_sheets(asked: Asked, blocks: Blocks, *, name: str, kind: str, largest: float) -> tuple[Sheet, ...]:
    """Sheets of figures on the paper asked for, or on the desk paper of the design's tape, or the next larger one.

    Parameters
    ----------
    asked : Asked
    blocks : callable
        The figures at a scale, for a room of some width, and whether their findings are told in brief, since in full
        they do not go on. [mm]
    name, kind : str
        For files and for the title block.
    largest : float
        The largest scale to try.

    Raises
    ------
    PaperError
        If one of them does not fit the paper at any scale.
    """
    for paper in asked.papers:
        found = list(_on(asked, blocks, paper, kind, largest))
        if found:
            tried = min(found, key=lambda one: len(one.pages))
            pages = [[figure.moved(dx, dy) for figure, dx, dy in page] for page in tried.pages]
            return make_all(
                pages, house=asked.house, name=name, title=kind, size=tried.size, words=tried.words, counted=True
            )
    raise PaperError(f"{kind}: one does not fit {asked.papers[-1]} at any scale. Take larger paper.")


@attrs.frozen
class Tried:
    """Pages at a scale on which all figures go."""

    ratio: float
    words: TitleBlock
    size: tuple[float, float]
    pages: list[list[Placed]]


def _on(asked: Asked, blocks: Blocks, paper: str, kind: str, largest: float) -> Iterator[Tried]:
    """Pages on a paper, from the largest scale at which all figures go on down to half of it."""
    first = 0.0
    for ratio, label in view_scales(asked, largest):
        if ratio < first / 2 - 1e-9:
            return
        words = block(asked.frame, asked.house, kind=kind, piece=kind, scale=label)
        tries = _tries(blocks, words, paper, ratio, False) or _tries(blocks, words, paper, ratio, True)
        yield from tries
        if tries:
            first = first or ratio
            if all(len(tried.pages) == 1 for tried in tries):
                return


def _tries(blocks: Blocks, words: TitleBlock, paper: str, scale: float, brief: bool) -> list[Tried]:
    """Pages for each way up of the paper on which all figures go."""
    tries: list[Tried] = []
    for size in both_ways(paper):
        inside = within(room(*size, words), INSET)
        with suppress(PaperError):
            figures = list(blocks(scale, inside[2] - inside[0], brief))
            by_height = sorted(figures, key=lambda figure: -figure.size[1])  # where it saves a page
            pages = min((places(own, inside, GAP) for own in (figures, by_height)), key=len)
            tries.append(Tried(scale, words, size, pages))
    return tries
