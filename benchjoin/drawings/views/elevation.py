"""Elevations: how the thing looks from one side, and how high everything is.

Heights run from the floor as the tape does, with the rails of the near side and of the far side on a line each, and
the clears between them in brackets; widths run from the left end or the front. Every level is named, on its rail or
beside its height, and legs carry their marks. The largest standard scale that fits the paper, either way up, is taken.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, Unpack

import attrs

from ...drafting.primitives import Drawing
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...errors import AddressError
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ..making.asked import Asked, OfAPiece, ask
from ..making.fitting import LARGEST, fit_view
from ..making.house import reader
from ..making.pieces import named, shown_parts, titled
from .bought import bought, names_of_bought
from .clear_sizes import clear_sizes
from .cutting import Lettered, planes
from .labels import Taken, front_sign, heights_of_levels, leg_marks, level_names
from .repeated import with_words
from .strokes import drawn, group
from .view import View, view
from .view_sizes import upright
from .wall import wall

SIDES = ("front", "back", "left", "right")


Seen = Literal["front", "back", "left", "right"]
"""From which side a piece is seen."""


@of_a_layout
def elevation(layout: Layout, seen: Seen, **options: Unpack[OfAPiece]) -> Sheet:
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
    _must_be_a_side(seen)
    return elevation_page(layout, ask(layout, OfAPiece, options), seen)


def elevation_alone(layout: Layout, seen: Seen, scale: float) -> Figure:
    """The elevation of the first piece at a scale, with its sizes and names, and no page round it.

    Raises
    ------
    AddressError
        If there is no such side.
    """
    _must_be_a_side(seen)
    asked = ask(layout, OfAPiece, {})
    parts = shown_parts(asked)
    look = view(parts, seen)
    return with_words(upright_figure(layout, asked, look, scale), asked, parts, look, scale)


def _must_be_a_side(seen: str) -> None:
    if seen not in SIDES:
        raise AddressError(f"There is no elevation from {seen!r}. Choose front, back, left or right.", address=seen)


def elevation_page(layout: Layout, asked: Asked, seen: str | View, largest: float = LARGEST) -> Sheet:
    """The elevation from one side, or of a view that is there already, at no larger a scale than asked for."""
    parts = shown_parts(asked)
    look = view(parts, seen) if isinstance(seen, str) else seen
    title = titled(asked, look.eye.title)

    def draw(scale: float) -> Figure:
        figure = with_words(upright_figure(layout, asked, look, scale), asked, parts, look, scale)
        return attrs.evolve(figure, name=title)

    return fit_view(
        asked,
        draw,
        name=named(asked, f"elevation-{look.eye.name}"),
        kind="Elevation",
        title=title,
        wood=look.bounds,
        apart=look.apart,
        largest=largest,
    )


def upright_figure(layout: Layout, asked: Asked, look: View, scale: float, sections: Sequence[Lettered] = ()) -> Figure:
    """An elevation at a scale with all its sizes and names, and the planes of sections."""
    parts = shown_parts(asked)
    linework = group(look, scale, asked.house.linework)
    inside = tuple(level_names(parts, look, scale, [one.cut.at for one in sections]))
    told = {text.string for text in inside}
    levels = [one for one in heights_of_levels(parts, look.eye.name, scale) if one[0] not in told]
    sizes = upright(layout, parts, look, scale, asked.house).naming(levels)
    drawing: Drawing = (
        *drawn(look, scale, linework),
        *inside,
        *sizes.drawing(),
        *wall(layout, parts, look, scale),
        *clear_sizes(parts, look, scale, reader(layout.frame, asked.house)),
    )
    drawing = (*drawing, *bought(layout, parts, look, scale, drawing))
    drawing = (*drawing, *planes(look, sections, scale, drawing))
    taken = Taken(drawing)
    words = (*front_sign(look, scale, taken), *leg_marks(parts, look, scale, taken))
    words = (*words, *names_of_bought(layout, parts, look, scale, taken))
    return Figure(name=look.eye.title, drawing=(*drawing, *words), shows=look.shows, shifted=sizes.shifted)
