"""Pages of lay-on patterns: each distinct notch and lap once, as many on a page as go on it.

A pattern is cut out, folded over the edge, laid with its near shoulder at the height it states, and pricked through:
face and edges come from one piece of paper, so the depth is marked where the shoulder is.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Unpack

from ....drafting.full_size.desk_page import DeskPage
from ....drafting.primitives import Box
from ....drafting.sheets.figure import Figure
from ....drafting.sheets.sheet import Sheet
from ....layout.layout import Layout
from ....layout.patterns import LayOn, lay_ons
from ....shop.done import marked_notes
from ...making.asked import Asked, OnDeskPaper, ask
from ...making.buildable import must_be_buildable
from ...making.desk import packed_on_desks
from ...making.house import both_ways
from .draw import draw_lay_on, places_card

GAP = 4.0
"""Between two patterns. [mm]"""
RIM = (0.5, 0.5, 0.5, 0.0)
"""What stays free at the sides of the room. [mm]"""


def notch_patterns(layout: Layout, **options: Unpack[OnDeskPaper]) -> tuple[Sheet, ...]:
    """Pages of lay-on patterns; none where no wood is cut.

    Parameters
    ----------
    layout : Layout
    **options
        paper, margin, printer and house, as `Asked` has them; without paper, patterns go on the first that takes all.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    PaperError
        If there is no such paper, margins leave too little of it, or a pattern does not fit.
    """
    return pattern_pages(layout, ask(layout, OnDeskPaper, options))


def pattern_pages(layout: Layout, asked: Asked) -> tuple[Sheet, ...]:
    """The lay-on patterns, the highest first, and cards of places for those that have no room for them."""
    must_be_buildable(layout, "A pattern is not drawn")
    blocks, lists = _blocks(layout)
    if not blocks:
        return ()

    def head(number: int, pages: int) -> tuple[str, ...]:
        return _head(layout, number, pages)

    def figures(page: DeskPage, room: Box) -> list[Figure]:
        wide, high = room[2] - room[0], room[3] - room[1]
        own = [figure for block in blocks for figure in _together([page.lay(one) for one in block], wide, high)]
        return [*sorted(own, key=lambda figure: -figure.size[1]), *lists]

    sizes = [both_ways(paper) for paper in asked.papers]
    return packed_on_desks(asked, sizes, head, figures, name="patterns", title="Lay-on patterns", rim=RIM, gap=GAP)


def _blocks(layout: Layout) -> tuple[list[list[Figure]], list[Figure]]:
    """Patterns in order, both halves of a lap together, and the cards of places that are needed."""
    blocks: list[list[Figure]] = []
    lists: list[Figure] = []
    number = 0
    for group in lay_ons(layout):
        numbers = [number + n for n in range(1, len(group) + 1)]
        mates = numbers[::-1] if len(group) > 1 else [None]
        drawn = [_both(layout, *which) for which in zip(group, numbers, mates, strict=True)]
        blocks.append([pattern for pattern, _ in drawn])
        lists += [card for _, cards in drawn for card in cards]
        number = numbers[-1]
    return blocks, lists


def _both(layout: Layout, one: LayOn, number: int, mate: int | None) -> tuple[Figure, list[Figure]]:
    """A pattern, and a card of its places if they do not go in its outline."""
    shows = tuple(dict.fromkeys(use.part.identity for use in one.uses))
    pattern, whole = draw_lay_on(layout, one, number, mate)
    drawn = Figure(name=f"Pattern {number}", drawing=pattern, shows=shows)
    if whole:
        return drawn, []
    card = places_card(layout, one, number, mate)
    return drawn, [Figure(name=f"Places of pattern {number}", drawing=card, shows=shows)]


def _together(both: Sequence[Figure], wide: float, high: float) -> Sequence[Figure]:
    """Both halves of a lap beside each other, or one above the other, or by themselves."""
    if len(both) < 2:
        return both
    one, other = both
    (a0, b0, a1, _), (c0, d0, _, d1) = one.bounds, other.bounds
    if one.size[0] + other.size[0] + GAP <= wide:
        return [_joined(one, other.moved(a1 + GAP - c0, b0 - d0))]
    if one.size[1] + other.size[1] + GAP <= high:
        return [_joined(one, other.moved(a0 - c0, b0 - GAP - d1))]
    return both


def _joined(one: Figure, other: Figure) -> Figure:
    name, shows = f"{one.name} and {other.name.lower()}", tuple(dict.fromkeys((*one.shows, *other.shows)))
    return Figure(name=name, drawing=(*one.drawing, *other.drawing), shows=shows)


def _head(layout: Layout, number: int, pages: int) -> tuple[str, ...]:
    of = f" {number} of {pages}" if pages > 1 else ""
    unit = "inches" if layout.frame.tape.unit == "in" else "millimetres"
    return (
        f"Lay-on patterns{of}. {layout.frame.name}",
        f"Cut out, fold down along the dashed lines, lay on the face that is cut, near shoulder at the height stated "
        f"({unit} from the foot), and prick the lines. Hatched wood is waste: saw on its side of the line.",
        *marked_notes(layout.frame, layout.parts),
    )
