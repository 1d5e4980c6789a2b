"""Elevations: how the thing looks from one side, and how high everything is.

Heights run from the floor as the tape does, with the rails of the near side and of the far side on a line each;
widths run from the left end or the front. The largest standard scale that fits the paper, either way up, is taken.
"""

from __future__ import annotations

from functools import cache

from ...drafting.primitives import Drawing
from ...drafting.sheets.sheet import Sheet
from ...errors import AddressError
from ...layout.layout import Layout
from ..making.fitting import fit_view
from ..making.house import PLAIN, House
from ..making.notes import finding_notes
from .sizes import Sizes, upright
from .strokes import level_names, strokes
from .view import view


def elevation(
    layout: Layout, seen: str, *, paper: str | None = None, house: House | None = None, piece: int = 1
) -> Sheet:
    """The elevation of one piece, seen from the front, back, left or right.

    Parameters
    ----------
    layout : Layout
    seen : str
        "front", "back", "left" or "right".
    paper : str, optional
        "Letter", "A4", "Tabloid", "A3" …; if not given, the desk paper of the design's tape, or the next larger one.
    house : House, optional
        What the shop's sheets have in common, for the title block.
    piece : int
        Which piece of the batch.

    Raises
    ------
    AddressError
        If there is no such side.
    PaperError
        If it does not fit the paper at any scale.
    """
    if seen not in ("front", "back", "left", "right"):
        raise AddressError(f"There is no elevation from {seen!r}. Choose front, back, left or right.", address=seen)
    parts = layout.piece(piece)
    look = view(parts, seen)

    @cache
    def sizes(scale: float) -> Sizes:
        return upright(layout, parts, look, scale, house or PLAIN)

    def draw(scale: float) -> Drawing:
        return (
            *strokes(look.visible, "visible", scale),
            *strokes(look.hidden, "hidden", scale),
            *level_names(parts, look, scale),
            *sizes(scale).drawing(),
        )

    return fit_view(
        layout,
        draw,
        name=f"elevation-{seen}",
        kind="Elevation",
        title=look.eye.title,
        paper=paper,
        house=house,
        notes=finding_notes(layout, look.shows, piece),
        shifted=lambda scale: sizes(scale).shifted,
    )
