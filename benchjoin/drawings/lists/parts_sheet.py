"""The parts sheet: the piece drawn apart, the mark on one part of each kind, and the table of the kinds."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Unpack

from ...drafting.primitives import bounds, shift
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import draw_rows, set_table
from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ...shop.cut_list import parts_table
from ..making.asked import Asked, OfAPiece, ask
from ..making.fitting import fit_view
from ..making.pieces import named, titled
from ..views.flags import flags
from ..views.isometric import drawn_apart

TABLE = 176.0
"""The table is at most so wide. [mm]"""


def parts_sheet(layout: Layout, **options: Unpack[OfAPiece]) -> Sheet:
    """The picture of one piece drawn apart with its marks, and its parts table; options as for an elevation.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    (sheet,) = apart_pages(layout, ask(layout, OfAPiece, options))
    return sheet


def apart_pages(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    """The parts sheet."""
    parts, title = layout.piece(asked.piece), titled(asked, "Parts, drawn apart")
    shown = drawn_apart(layout, asked.piece)
    table = parts_table(layout)
    head, rows, columns = set_table(table, TABLE)
    ruled = tuple(draw_rows([head, *rows], columns, table.aligned(), (0.0, 0.0)))

    def draw(scale: float) -> Figure:
        picture = shown.drawing(scale)
        whole = (*picture, *flags(parts, shown, scale))
        x0, y0, x1, _ = bounds(whole)
        left, _, right, top = bounds(ruled)
        return Figure(name=title, drawing=(*whole, *shift(ruled, (x0 + x1 - left - right) / 2, y0 - 6.0 - top)))

    others = list(_of_other_pieces(layout, asked.piece))
    notes = [" ".join(others)] if others else []
    name = named(asked, "parts-apart")
    yield fit_view(asked, draw, name=name, kind="Parts", title=title, free=True, apart=shown.apart, notes=notes)


def _of_other_pieces(layout: Layout, piece: int) -> Iterator[str]:
    """Kinds that this piece has not: whose they are, and which part stands in their place here."""
    here = {part.identity: part for part in layout.piece(piece)}
    told = {part.kind for part in here.values()}
    for part in layout.parts:
        if part.kind not in told and part.identity in here:
            told.add(part.kind)
            what, other = part.identity.replace("/", " "), here[part.identity].mark
            yield f"{part.mark}: {what} of piece {part.piece}, for {other}."
