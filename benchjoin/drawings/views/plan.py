"""The plan from above: where legs and rails stand along the length and the depth."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Unpack

from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ..making.asked import Asked, OfAPiece, ask
from ..making.fitting import fit_view
from ..making.pieces import named, titled
from .strokes import strokes
from .view import view
from .view_sizes import flat
from .wall import wall


def plan(layout: Layout, **options: Unpack[OfAPiece]) -> Sheet:
    """The plan of one piece from above; options are paper, house and piece, as `Asked` has them.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    (sheet,) = plan_pages(layout, ask(layout, OfAPiece, options))
    return sheet


def plan_pages(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    """The plan."""
    parts = layout.piece(asked.piece)
    look = view(parts, "above")
    title = titled(asked, look.eye.title)

    def draw(scale: float) -> Figure:
        sizes = flat(layout, parts, look, scale, asked.house)
        lines = (*strokes(look.visible, "visible", scale), *strokes(look.hidden, "hidden", scale))
        drawing = (*lines, *sizes.drawing(), *wall(layout, parts, look, scale))
        return Figure(name=title, drawing=drawing, shows=look.shows, shifted=sizes.shifted)

    yield fit_view(asked, draw, name=named(asked, "plan"), kind="Plan", title=title, wood=look.bounds)
