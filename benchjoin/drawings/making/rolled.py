"""A sheet as large as it needs to be: one figure at full size, on the copy shop's roll or on a large sheet."""

from __future__ import annotations

import attrs

from ...drafting.full_size.check_bars import BESIDE, check_bars
from ...drafting.full_size.correction import factors, promise
from ...drafting.lettering import wrap
from ...drafting.primitives import Text, shift, stretch
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...drafting.sheets.title_block import TitleBlock, block_size
from ...errors import PaperError
from ...trade.paper import PAPERS, ROLLS, is_paper, is_roll, landscape, paper_size, roll_width
from ...trade.standards import MARGIN
from .asked import Asked
from .maker import make

INSET = 6.0
"""Between the border and the drawing. [mm]"""
_TOLD = 2.5
_PITCH = 4.2


def rolled_sheet(asked: Asked, figure: Figure, words: TitleBlock, *, name: str, title: str) -> Sheet:
    """The figure above, check bars from the lower left corner, the title block in the lower right one.

    Raises
    ------
    PaperError
        If there is no such roll or sheet, or the figure does not fit it.
    """
    across, up = factors(asked.printer, 2.0, 1.0)  # what is ganged lies along the page's long side
    own = figure.stretched(across, up)
    own = own.moved(-own.bounds[0], -own.bounds[1])
    long, tall = own.size
    block_width, block_height = block_size(1000.0)
    bars = check_bars(260.0, max(tall, block_height) + block_height)
    lying = bars.lying.length * across
    left, foot = MARGIN + INSET, MARGIN + max(block_height, 2 * BESIDE) + INSET
    beside = left + 2 * BESIDE + INSET
    least = max(beside + long, left + BESIDE + lying + 2 * INSET + block_width) + INSET + MARGIN
    size = _size(figure.name, least, foot + tall + INSET + MARGIN, asked.roll)
    corner = (left + BESIDE, MARGIN + INSET + BESIDE)
    told = f"{bars.sentence()}. {promise(asked.printer, bars.lying.millimetres)}"
    said = tuple(
        Text((corner[0] + 2 * BESIDE, corner[1] + block_height - 3 * BESIDE - n * _PITCH), line, _TOLD)
        for n, line in enumerate(wrap(told, _TOLD, lying))
    )
    placed = own.moved(beside, size[1] - MARGIN - INSET - tall)
    words = attrs.evolve(words, form="iso", punched=False)  # laid on the wood, and kept on its roll
    items = (placed, shift(stretch(bars.drawing, across, up), *corner), said)
    return make(*items, house=asked.house, name=name, title=title, size=size, words=words, full_size=True)


def _size(what: str, width: float, height: float, roll: str | None) -> tuple[float, float]:
    """Length and width of the page: what it needs, or what the roll or the large sheet has.

    Raises
    ------
    PaperError
        If there is no such roll or sheet, or it does not fit; the message names those that it fits.
    """
    if roll is None:
        return width, height
    if not is_roll(roll) and not is_paper(roll):
        known = ", ".join([*(one.name for one in ROLLS), *(paper.name for paper in PAPERS)])
        raise PaperError(f"No roll or paper is called {roll!r}. There is {known}.")
    if is_roll(roll):
        if height <= roll_width(roll):
            return width, roll_width(roll)
    else:
        across, up = landscape(paper_size(roll))
        if width <= across and height <= up:
            return across, up
    rolls = [roll.name for roll in ROLLS if height <= roll.width]
    rolls += [p.name for p in PAPERS if width <= max(p.width, p.height) and height <= min(p.width, p.height)]
    takes = f"It goes on {', '.join(rolls)}" if rolls else "No roll is wide enough: print it in tiles"
    raise PaperError(
        f"{what} at full size needs a page of {width:.0f} × {height:.0f} mm, which {roll} does not give. {takes}.",
        width=width,
        height=height,
    )
