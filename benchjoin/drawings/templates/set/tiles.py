"""Tiles of a set: its full-size page in desk pages that are trimmed, joined by their crosses and laid on the wood.

Every seam says how far it lies from the foot, and from the lower edge of the gang, so each tile can be laid against a
tape by itself: paper creeps, and what was joined wrongly at one seam does not shift the next.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Unpack

from ....drafting.full_size.desk_page import DeskPage
from ....drafting.full_size.key_map import key_map
from ....drafting.full_size.tiling import Tile, Tiling, tile
from ....drafting.primitives import shift
from ....drafting.sheets.figure import Figure
from ....drafting.sheets.sheet import Sheet
from ....layout.layout import Layout
from ....layout.sets import PartSet
from ....lengths import mm
from ...making.asked import Asked, InTiles, ask
from ...making.desk import blank, desk_sheet
from ...making.house import both_ways
from ..marking import LEGEND
from .draw import Gang, gang
from .page import drawable_set, unlike_sets

MAP_WIDTH = 48.0
"""Beside the head, for the key map. [mm]"""


def set_tiles(layout: Layout, letter: str, **options: Unpack[InTiles]) -> tuple[Sheet, ...]:
    """Desk pages that together are the full-size page of a set, row by row from the top, each from the foot on.

    Parameters
    ----------
    layout : Layout
    letter : str
        The set's letter.
    **options
        paper, upright, margin, overlap, printer and house, as `Asked` has them.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    AddressError
        If there is no such set.
    PaperError
        If there is no such paper, or margins and overlap leave too little of it.
    """
    return _tiles(layout, ask(layout, InTiles, options), drawable_set(layout, letter))


def tile_pages(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    """Tiles of each kind of set once, if lines are struck across it."""
    for part_set in unlike_sets(layout):
        if part_set.bands:
            yield from _tiles(layout, asked, part_set)


def _tiles(layout: Layout, asked: Asked, part_set: PartSet) -> tuple[Sheet, ...]:
    whole = gang(layout, part_set, heading=False)
    over = mm(asked.overlap, zero=True, what="an overlap")
    ways = both_ways(asked.papers[0])
    sizes = ways if asked.upright is None else (ways[0] if asked.upright else ways[1],)
    head = _head(layout, part_set)
    pages = [blank(asked, size, head("a1", 1), MAP_WIDTH) for size in sizes]
    tried = [(page, _tiling(layout, part_set, whole, page, over)) for page in pages]
    page, tiling = min(tried, key=lambda pair: len(pair[1].tiles))
    size, count = (page.width, page.height), len(tiling.tiles)
    return tuple(
        _sheet(asked, part_set, tiling, piece, blank(asked, size, head(piece.key, count), MAP_WIDTH))
        for piece in tiling.tiles
    )


def _head(layout: Layout, part_set: PartSet) -> Callable[[str, int], tuple[str, ...]]:
    """The head of a page, by its key and the number of pages."""
    datum = part_set.members[0].slot.role.datum
    make = f"make {len(part_set.alike)}: {', '.join(part_set.alike)}"

    def head(key: str, count: int) -> tuple[str, ...]:
        return (
            f"{key} of set {part_set.letter}, {make}. {layout.frame.name}",
            f"One of {count} pages. Trim along the seams on the left and below, lay the page on its neighbours so that "
            f"the crosses meet, and check with a tape how far each seam lies along from the {datum} and up "
            f"from the lowest edge. {LEGEND}",
        )

    return head


def _tiling(layout: Layout, part_set: PartSet, whole: Gang, page: DeskPage, overlap: float) -> Tiling:
    """The gang in tiles, seams on whole half inches or 10 mm from the foot and from the gang's lower edge."""
    tape = layout.frame.tape
    datum = part_set.members[0].slot.role.datum
    return tile(
        whole.drawing,
        page.holds,
        datum=(whole.foot, whole.edge),
        step=12.7 if tape.unit == "in" else 10.0,
        read=(
            lambda at: _distance(tape.say(abs(at)), "from" if at >= 0 else "before", f"the {datum}"),
            lambda at: _distance(tape.say(abs(at)), "from" if at >= 0 else "below", "the lowest edge"),
        ),
        avoid=(whole.along, whole.across),
        overlap=overlap,
    )


def _distance(reading: str, which: str, datum: str) -> tuple[str, str]:
    """'9 in from the foot', and in short '9 in'; what lies on the other side of the datum always says so."""
    return f"{reading} {which} {datum}", reading if which == "from" else f"{reading} {which}"


def _sheet(asked: Asked, part_set: PartSet, tiling: Tiling, piece: Tile, page: DeskPage) -> Sheet:
    a, b, c, d = page.aside
    count = (len(tiling.rows) - 1, len(tiling.columns) - 1)
    shows = tuple(dict.fromkeys(part.identity for part in part_set.members))
    title = f"Set {part_set.letter}, tile {piece.key}"
    figure = page.lay(Figure(name=title, drawing=tiling.shown(piece), shows=shows))
    items = (figure, page.furniture, shift(key_map(count, tiling.tiles, piece, (c - a, d - b)), c, b))
    return desk_sheet(asked, page, items, name=f"set-{part_set.letter.lower()}-{piece.key}", title=title)
