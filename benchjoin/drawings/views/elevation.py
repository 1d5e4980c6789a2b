"""Elevations: how the thing looks from one side, and how high everything is.

Heights run from the floor as the tape does, with the rails of the near side and of the far side on a line each, and
the clears between them in brackets;
widths run from the left end or the front. The largest standard scale that fits the paper, either way up, is taken.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Unpack

from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...errors import AddressError
from ...layout.layout import Layout
from ..making.asked import Asked, OfAPiece, ask
from ..making.fitting import fit_view
from ..making.house import reader
from ..making.pieces import named, titled
from .clear_sizes import clear_sizes
from .strokes import level_names, strokes
from .view import view
from .view_sizes import upright
from .wall import one_row, wall

SIDES = ("front", "back", "left", "right")


def elevation(layout: Layout, seen: str, **options: Unpack[OfAPiece]) -> Sheet:
    """The elevation of one piece, seen from the front, back, left or right.

    Parameters
    ----------
    layout : Layout
    seen : str
        "front", "back", "left" or "right".
    **options
        paper, house and piece, as `Asked` has them.

    Raises
    ------
    AddressError
        If there is no such side.
    PaperError
        If it does not fit the paper at any scale.
    """
    if seen not in SIDES:
        raise AddressError(f"There is no elevation from {seen!r}. Choose front, back, left or right.", address=seen)
    return _elevation(layout, ask(layout, OfAPiece, options), seen)


def elevation_pages(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    """The elevations from all four sides; of a single row, from where there is something new to see."""
    for seen in _sides(layout, asked.piece):
        yield _elevation(layout, asked, seen)


def _sides(layout: Layout, piece: int) -> tuple[str, ...]:
    """All four sides; of a single row the front, one end, and the back where rails go to the wall's side."""
    parts = layout.piece(piece)
    if not one_row(parts):
        return SIDES
    behind = any(part.slot.face == "back" for part in parts)
    return ("front", "back", "left") if behind else ("front", "left")


def _elevation(layout: Layout, asked: Asked, seen: str) -> Sheet:
    parts = layout.piece(asked.piece)
    look = view(parts, seen)
    title = titled(asked, look.eye.title)

    def draw(scale: float) -> Figure:
        sizes = upright(layout, parts, look, scale, asked.house)
        drawing = (
            *strokes(look.visible, "visible", scale),
            *strokes(look.hidden, "hidden", scale),
            *level_names(parts, look, scale),
            *sizes.drawing(),
            *wall(layout, parts, look, scale),
            *clear_sizes(parts, look, scale, reader(layout.frame, asked.house)),
        )
        return Figure(name=title, drawing=drawing, shows=look.shows, shifted=sizes.shifted)

    name = named(asked, f"elevation-{seen}")
    return fit_view(asked, draw, name=name, kind="Elevation", title=title, wood=look.bounds)
