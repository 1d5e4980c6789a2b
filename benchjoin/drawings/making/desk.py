"""Sheets of full-size desk pages: a head of words, check bars, and the room between them.

How much room there is depends on the head, so a page is made once without its number, to lay figures on it, and again
for each sheet.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from ...drafting.full_size.desk_page import DeskPage, desk_page
from ...drafting.primitives import Box, Drawing
from ...drafting.sheets.figure import LETTERS, Figure, fingerprint_of, stamp
from ...drafting.sheets.packing import pack
from ...drafting.sheets.sheet import Sheet
from ...errors import PaperError
from .asked import Asked
from .maker import Item, make, make_all

Size = tuple[float, float]


def blank(asked: Asked, size: Size, head: Sequence[str], aside: float = 0.0) -> DeskPage:
    """A desk page of a size with the printer and the margin that are asked for, and room for its stamp. [mm]"""
    longest = _stamp(asked, "D" * LETTERS)  # the widest of the letters that a fingerprint has
    return desk_page(size, head, printer=asked.printer, margin=asked.margin, aside=aside, stamp=longest)


def _stamp(asked: Asked, fingerprint: str) -> str:
    """Fingerprint, revision and date, as far as there are any."""
    revision = asked.house.revision
    return stamp(fingerprint, f"rev. {revision}" if revision else "", asked.house.date)


def _stamped(asked: Asked, page: DeskPage, items: Sequence[Item]) -> Drawing:
    figures = [item for item in items if isinstance(item, Figure)]
    return page.stamped(_stamp(asked, fingerprint_of(figures)))


def desk_sheet(asked: Asked, page: DeskPage, items: Sequence[Item], *, name: str, title: str) -> Sheet:
    """A sheet of a desk page, with items in the order in which they are drawn, and its stamp."""
    size = (page.width, page.height)
    drawn = (*items, _stamped(asked, page, items))
    return make(*drawn, house=asked.house, name=name, title=title, size=size, full_size=True)


def packed_on_desks(
    asked: Asked,
    sizes: Sequence[Sequence[Size]],
    head: Callable[[int, int], Sequence[str]],
    figures: Callable[[DeskPage, Box], Sequence[Figure]],
    *,
    name: str,
    title: str,
    rim: Box,
    gap: float,
) -> tuple[Sheet, ...]:
    """Sheets of figures at full size, packed on the first papers that take all, the way up that takes fewer sheets.

    Parameters
    ----------
    asked : Asked
    sizes : sequence of sequences of (width, height)
        Papers to try, each in the ways up that it may have. [mm]
    head : callable
        What stands at the head of a page, by its number and how many there are.
    figures : callable
        What is laid on a page, as it goes on it, by the page and the room that is packed.
    name, title : str
        For files and for people.
    rim, gap : float
        What stays free at the sides of the room, and between figures. [mm]

    Raises
    ------
    PaperError
        If margins leave too little of a page, or a figure does not fit.
    """
    for ways in sizes:
        tried: list[tuple[Size, list[list[Figure]]]] = []
        for size in ways:
            tried += _tried(asked, size, head, figures, rim, gap)
        if tried:
            size, packed = min(tried, key=lambda one: len(one[1]))
            count = len(packed)
            pages: list[list[Item]] = []
            for number, own in enumerate(packed, 1):
                page = blank(asked, size, head(number, count))
                pages.append([page.furniture, *own, _stamped(asked, page, own)])
            return make_all(pages, house=asked.house, name=name, title=title, size=size, full_size=True)
    paper = asked.papers[-1]
    raise PaperError(f"{title}: one does not fit {paper} at full size. Take larger paper, or tiles of the set.")


def _tried(
    asked: Asked,
    size: Size,
    head: Callable[[int, int], Sequence[str]],
    figures: Callable[[DeskPage, Box], Sequence[Figure]],
    rim: Box,
    gap: float,
) -> list[tuple[Size, list[list[Figure]]]]:
    """A size with its figures page by page, if they fit; the heads have their numbers, which take room too."""
    count = 1
    while True:
        page = blank(asked, size, head(count, count))
        room = (page.room[0] + rim[0], page.room[1] + rim[1], page.room[2] - rim[2], page.room[3] - rim[3])
        laid = figures(page, room)
        try:
            packed = pack(laid, room, gap)
        except PaperError:
            return []
        if len(packed) <= count:
            return [(size, packed)]
        count = len(packed)
