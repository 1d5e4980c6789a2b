"""Pages of drilling cards: each distinct arrangement of holes once, as many on a page as go on it."""

from __future__ import annotations

from typing import Unpack

from ....drafting.full_size.desk_page import DeskPage
from ....drafting.primitives import Box
from ....drafting.sheets.figure import Figure
from ....drafting.sheets.sheet import Sheet
from ....layout.layout import Layout
from ....shop.done import marked_notes
from ...making.asked import Asked, OnDeskPaper, ask
from ...making.buildable import must_be_buildable
from ...making.desk import packed_on_desks
from ...making.house import both_ways
from .draw import Card, cards, draw_card

GAP = 4.0
"""Between two cards. [mm]"""
RIM = (0.5, 0.5, 0.5, 0.0)
"""What stays free at the sides of the room. [mm]"""


def drilling_cards(layout: Layout, **options: Unpack[OnDeskPaper]) -> tuple[Sheet, ...]:
    """Pages of drilling cards; none without a fastening.

    Parameters
    ----------
    layout : Layout
    **options
        fastening, paper, margin, printer and house, as `Asked` has them.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    PaperError
        If there is no such paper, margins leave too little of it, or a card does not fit.
    """
    return drill_pages(layout, ask(layout, OnDeskPaper, options))


def drill_pages(layout: Layout, asked: Asked) -> tuple[Sheet, ...]:
    """The drilling cards of a fastening, the highest first."""
    must_be_buildable(layout, "A drilling card is not drawn")
    found = cards(layout, asked.fastening) if asked.fastening is not None else []
    if not found:
        return ()

    def head(number: int, pages: int) -> tuple[str, ...]:
        return _head(layout, number, pages)

    def figures(page: DeskPage, _: Box) -> list[Figure]:
        drawn = [page.lay(_figure(layout, card, number)) for number, card in enumerate(found, 1)]
        return sorted(drawn, key=lambda figure: -figure.size[1])

    sizes = [both_ways(paper) for paper in asked.papers]
    return packed_on_desks(asked, sizes, head, figures, name="drilling", title="Drilling cards", rim=RIM, gap=GAP)


def _figure(layout: Layout, card: Card, number: int) -> Figure:
    shows = tuple(dict.fromkeys(use.part.identity for use in card.uses))
    return Figure(name=f"Drilling card {number}", drawing=draw_card(layout, card, number), shows=shows)


def _head(layout: Layout, number: int, pages: int) -> tuple[str, ...]:
    of = f" {number} of {pages}" if pages > 1 else ""
    return (
        f"Drilling cards{of}. {layout.frame.name}",
        "Cut out, fold the tab down along the dashed line, lay the card on the face with the tab on its edge, and "
        "prick the crosses. Each circle is as wide as its drill; a wide line is an end of the part. Lead holes are "
        "drilled through these when the parts are together. Try the first on an offcut.",
        *marked_notes(layout.frame, layout.parts),
    )
