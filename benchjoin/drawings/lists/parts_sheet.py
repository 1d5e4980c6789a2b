"""The parts sheet: the piece drawn apart, every part of it with the mark that stands on its wood, and their sizes.

It never asks for larger paper than it gets: a table that does not go below the picture is left to the cut list.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Unpack

import attrs

from ...drafting.primitives import Drawing, Text, bounds, shift
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import draw_rows, set_table
from ...drafting.sheets.sheet import Sheet
from ...errors import PaperError
from ...layout.layout import Layout
from ...shop.cut_list import parts_table
from ...shop.marks import marks
from ...tables import Table
from ..making.asked import Asked, OfAPiece, ask
from ..making.fitting import fit_view
from ..making.pieces import named, titled
from ..views.flags import flags
from ..views.isometric import drawn_apart
from ..views.shade import bare

APART = 6.0
"""Between the picture and its table. [mm]"""
TABLE = 170.0
"""The table is at most so wide. [mm]"""


def parts_sheet(layout: Layout, **options: Unpack[OfAPiece]) -> Sheet:
    """The picture of one piece drawn apart with the marks of its parts, and their sizes; options as for an elevation.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    (sheet,) = apart_pages(layout, ask(layout, OfAPiece, options))
    return sheet


def apart_pages(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    """The parts sheet; its table is left to the cut list where it does not go below the picture."""
    table = parts_table(layout, asked.piece)
    others = " ".join(_of_other_pieces(layout, asked.piece))
    first = attrs.evolve(asked, paper=asked.papers[0])
    try:
        yield _sheet(layout, first, table, [others] if others else [])
    except PaperError:
        yield _sheet(layout, asked, None, ["Sizes: see the cut list, by these marks.", *([others] if others else [])])


def _sheet(layout: Layout, asked: Asked, table: Table | None, notes: Sequence[str]) -> Sheet:
    parts, title = layout.piece(asked.piece), titled(asked, "Parts, drawn apart")
    shown = drawn_apart(layout, asked.piece)
    below: Drawing = ()
    left, low, right, top = (0.0, 0.0, 0.0, 0.0)
    if table:
        head, rows, columns = set_table(table, TABLE)
        below = tuple(draw_rows([head, *rows], columns, table.aligned(), (0.0, 0.0)))
        left, low, right, top = bounds(below)

    def draw(scale: float) -> Figure:
        marked = tuple(flags(parts, shown, scale))
        whole = (*bare(shown.drawing(scale), [item for item in marked if isinstance(item, Text)]), *marked)
        x0, y0, x1, _ = bounds(whole)
        return Figure(name=title, drawing=(*whole, *shift(below, (x0 + x1 - left - right) / 2, y0 - APART - top)))

    return fit_view(
        asked,
        draw,
        name=named(asked, "parts-apart"),
        kind="Parts",
        title=title,
        free=True,
        wood=shown.lines.bounds,
        below=APART + top - low if below else 0.0,
        apart=shown.apart,
        notes=notes,
    )


def _of_other_pieces(layout: Layout, piece: int) -> Iterator[str]:
    """Kinds that this piece has not: which parts of other pieces they are, and which stand in their place here."""
    here = {part.identity: part for part in layout.piece(piece)}
    kinds = {part.kind for part in here.values()}
    other = [part for part in layout.parts if part.kind not in kinds and part.identity in here]
    if other:
        own = marks(here[identity].mark for identity in dict.fromkeys(part.identity for part in other))
        yield f"Not as drawn here: {marks(part.mark for part in other)}, in the places of {own}; see the cut list."
