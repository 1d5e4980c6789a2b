"""The plan from above: where legs and rails stand along the length and the depth."""

from __future__ import annotations

from functools import cache

from ...drafting.primitives import Drawing
from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ..making.fitting import fit_view
from ..making.house import PLAIN, House
from ..making.notes import finding_notes
from .sizes import Sizes, flat
from .strokes import strokes
from .view import view


def plan(layout: Layout, *, paper: str | None = None, house: House | None = None, piece: int = 1) -> Sheet:
    """The plan of one piece from above.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    parts = layout.piece(piece)
    look = view(parts, "above")

    @cache
    def sizes(scale: float) -> Sizes:
        return flat(layout, parts, look, scale, house or PLAIN)

    def draw(scale: float) -> Drawing:
        lines = (*strokes(look.visible, "visible", scale), *strokes(look.hidden, "hidden", scale))
        return (*lines, *sizes(scale).drawing())

    return fit_view(
        layout,
        draw,
        name="plan",
        kind="Plan",
        title=look.eye.title,
        paper=paper,
        house=house,
        notes=finding_notes(layout, look.shows, piece),
        shifted=lambda scale: sizes(scale).shifted,
    )
