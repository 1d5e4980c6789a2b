"""The plan from above: where legs and rails stand along the length and the depth."""

from __future__ import annotations

from typing import Unpack

import attrs

from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ..making.asked import Asked, OfAPiece, ask
from ..making.fitting import LARGEST, fit_view
from ..making.pieces import named, shown_parts, titled
from .bought import bought, names_of_bought
from .labels import Taken, front_sign, leg_marks, marks_of_runs
from .repeated import with_words
from .strokes import drawn, group
from .view import View, view
from .view_sizes import flat
from .wall import wall


@of_a_layout
def plan(layout: Layout, **options: Unpack[OfAPiece]) -> Sheet:
    """The plan of one piece from above; options are paper, house and piece, as `Asked` has them.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    return plan_page(layout, ask(layout, OfAPiece, options))


def plan_page(layout: Layout, asked: Asked, largest: float = LARGEST) -> Sheet:
    """The plan, at no larger a scale than asked for."""
    look = view(shown_parts(asked), "above")
    title = titled(asked, look.eye.title)

    def draw(scale: float) -> Figure:
        figure = with_words(flat_figure(layout, asked, look, scale), asked, shown_parts(asked), look, scale)
        return attrs.evolve(figure, name=title)

    name = named(asked, "plan")
    return fit_view(
        asked, draw, name=name, kind="Plan", title=title, wood=look.bounds, apart=look.apart, largest=largest
    )


def flat_figure(layout: Layout, asked: Asked, look: View, scale: float) -> Figure:
    """A plan at a scale with all its sizes, FRONT, and the marks of the legs."""
    parts = shown_parts(asked)
    sizes = flat(layout, parts, look, scale, asked.house)
    lines = drawn(look, scale, group(look, scale, asked.house.linework))
    drawing = (*lines, *sizes.drawing(), *wall(layout, parts, look, scale))
    drawing = (*drawing, *bought(layout, parts, look, scale, drawing))
    taken = Taken(drawing)
    words = (*front_sign(look, scale, taken), *leg_marks(parts, look, scale, taken))
    words = (*words, *names_of_bought(layout, parts, look, scale, taken))
    words = (*words, *marks_of_runs(parts, look, scale, taken))
    return Figure(name=look.eye.title, drawing=(*drawing, *words), shows=look.shows, shifted=sizes.shifted)
