"""Sheets of many small drawings: the largest standard scale at which all go on, the way up that takes fewer sheets."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress

import attrs

from ...drafting.primitives import Drawing
from ...drafting.sheets.packing import pack
from ...drafting.sheets.sheet import Sheet
from ...drafting.sheets.title_block import TitleBlock
from ...errors import PaperError
from ...layout.layout import Layout
from ...trade.standards import SCALES, Scale
from .fitting import INSET
from .house import House, block, both_ways, papers_from, room, system

GAP = 8.0
"""Between one drawing and the next. [mm]"""


def packed_sheets(
    layout: Layout,
    blocks: Callable[[float, float], Sequence[Drawing]],
    *,
    name: str,
    kind: str,
    largest: float,
    paper: str | None,
    house: House,
) -> tuple[Sheet, ...]:
    """Sheets of drawings on the paper asked for, or on the desk paper of the design's tape, or the next larger one.

    Parameters
    ----------
    layout : Layout
    blocks : callable
        The drawings at a scale, for a room of some width. [mm]
    name, kind : str
        For files and for the title block.
    largest : float
        The largest scale to try.
    paper : str or None
        The paper asked for.
    house : House
        Shop, names, date, revision and the like for the title blocks.

    Raises
    ------
    PaperError
        If one of them does not fit the paper at any scale.
    """
    scales = [s for s in SCALES if s.system in (system(layout.frame), "both") and s.ratio <= largest]
    papers = papers_from(layout.frame, paper)
    for size in papers:
        for scale in sorted(scales, key=lambda s: -s.ratio):
            words = block(layout.frame, house, kind=kind, piece=kind, scale=scale.label)
            tries = list(_tries(blocks, words, size, scale))
            if tries:
                wide, pages = min(tries, key=lambda tried: len(tried[1]))
                return tuple(_sheet(words, wide, scale, n, pages, name, house) for n in range(1, len(pages) + 1))
    raise PaperError(f"{kind}: one does not fit {papers[-1]} at any scale. Take larger paper.")


Tried = tuple[tuple[float, float], list[list[Drawing]]]


def _tries(
    blocks: Callable[[float, float], Sequence[Drawing]], words: TitleBlock, paper: str, scale: Scale
) -> Sequence[Tried]:
    """Pages for each way up of the paper on which all drawings go."""
    tries: list[Tried] = []
    for size in both_ways(paper):
        x0, y0, x1, y1 = room(*size, words)
        inside = (x0 + INSET, y0 + INSET, x1 - INSET, y1 - INSET)
        with suppress(PaperError):
            tries.append((size, pack(blocks(scale.ratio, inside[2] - inside[0]), inside, GAP)))
    return tries


def _sheet(
    words: TitleBlock,
    size: tuple[float, float],
    scale: Scale,
    number: int,
    pages: Sequence[Sequence[Drawing]],
    name: str,
    house: House,
) -> Sheet:
    several = len(pages) > 1
    return Sheet(
        name=f"{name}-{number}" if several else name,
        title=f"{words.document_type} {number}" if several else words.document_type,
        width=size[0],
        height=size[1],
        drawing=tuple(item for drawn in pages[number - 1] for item in drawn),
        block=attrs.evolve(words, piece=f"{words.piece}, {number} of {len(pages)}" if several else words.piece),
        scale=scale.label,
        linework=house.linework,
    )
