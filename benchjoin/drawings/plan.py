"""The plan from above: where legs and rails stand along the length and the depth."""

from __future__ import annotations

from ..drafting.primitives import Drawing
from ..drafting.sheet import Sheet
from ..layout.layout import Layout
from .fitting import fit_view
from .page import PLAIN, House
from .sizes import plan_sizes
from .strokes import strokes
from .views import view


def plan(layout: Layout, *, paper: str | None = None, house: House | None = None, piece: int = 1) -> Sheet:
    """The plan of one piece from above.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    parts = layout.piece(piece)
    look = view(parts, "above")

    def draw(scale: float) -> Drawing:
        lines = (*strokes(look.visible, "visible", scale), *strokes(look.hidden, "hidden", scale))
        return (*lines, *plan_sizes(layout, parts, look, scale, house or PLAIN))

    title = look.eye.title
    return fit_view(layout, draw, name="plan", kind="Plan", title=title, paper=paper, house=house)
