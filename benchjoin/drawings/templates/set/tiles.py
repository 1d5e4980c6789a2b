"""Tiles of a set: its full-size page in desk pages that are trimmed, joined by their crosses and laid on the wood.

Every seam says how far it lies from the foot, and from the lower edge of the gang, so each tile can be laid against a
tape by itself: paper creeps, and what was joined wrongly at one seam does not shift the next.
"""

from __future__ import annotations

from collections.abc import Callable

import attrs

from ....drafting.full_size.correction import PrinterScale
from ....drafting.full_size.desk_page import MARGIN, DeskPage, desk_page
from ....drafting.full_size.key_map import key_map
from ....drafting.full_size.tiling import OVERLAP, Tile, Tiling, tile
from ....drafting.primitives import shift
from ....drafting.sheets.sheet import Sheet
from ....layout.layout import Layout
from ....layout.sets import PartSet
from ....lengths import Length, mm
from ...making.house import House, both_ways, default_paper
from ..marking import LEGEND
from .draw import Gang, gang
from .page import drawable_set

MAP_WIDTH = 48.0
"""Beside the head, for the key map. [mm]"""


def set_tiles(
    layout: Layout,
    letter: str,
    *,
    paper: str | None = None,
    upright: bool | None = None,
    margin: Length = MARGIN,
    overlap: Length = OVERLAP,
    printer: PrinterScale | None = None,
    house: House | None = None,
) -> tuple[Sheet, ...]:
    """Desk pages that together are the full-size page of a set, row by row from the top, each from the foot on.

    Parameters
    ----------
    layout : Layout
    letter : str
        The set's letter.
    paper : str, optional
        The desk paper of the design's tape if not given.
    upright : bool, optional
        Whether the paper stands; the way that takes fewer pages if not given.
    margin, overlap : length
        What the printer leaves blank at each edge, and what is glued under at each seam.
    printer : PrinterScale, optional
        What the printer does to lengths, to be taken back.
    house : House, optional
        Its linework and number go on the pages.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    AddressError
        If there is no such set.
    PaperError
        If there is no such paper, or margins and overlap leave too little of it.
    """
    one = drawable_set(layout, letter)
    whole = gang(layout, one, heading=False)
    over = mm(overlap, zero=True, what="an overlap")
    ways = both_ways(default_paper(layout.frame) if paper is None else paper)
    sizes = ways if upright is None else (ways[0] if upright else ways[1],)
    head = _head(layout, one)
    pages = [desk_page(size, head("a1", 1), printer=printer, margin=margin, aside=MAP_WIDTH) for size in sizes]
    tried = [(page, _tiling(layout, one, whole, page, over)) for page in pages]
    page, tiling = min(tried, key=lambda pair: len(pair[1].tiles))
    made = [
        _sheet(
            one,
            tiling,
            piece,
            desk_page(
                (page.width, page.height),
                head(piece.key, len(tiling.tiles)),
                printer=printer,
                margin=margin,
                aside=MAP_WIDTH,
            ),
        )
        for piece in tiling.tiles
    ]
    return tuple(attrs.evolve(sheet, linework=house.linework) for sheet in made) if house else tuple(made)


def _head(layout: Layout, one: PartSet) -> Callable[[str, int], tuple[str, ...]]:
    """The head of a page, by its key and the number of pages."""
    datum = one.members[0].slot.role.datum
    make = f"make {len(one.alike)}: {', '.join(one.alike)}"

    def head(key: str, count: int) -> tuple[str, ...]:
        return (
            f"{key} of set {one.letter}, {make}. {layout.frame.name}",
            f"One of {count} pages. Trim along the seams on the left and below, lay the page on its neighbours so that "
            f"the crosses meet, and check with a tape how far each seam lies along from the {datum} and up "
            f"from the lowest edge. {LEGEND}",
        )

    return head


def _tiling(layout: Layout, one: PartSet, whole: Gang, page: DeskPage, overlap: float) -> Tiling:
    """The gang in tiles, seams on whole half inches or 10 mm from the foot and from the gang's lower edge."""
    tape = layout.frame.tape
    datum = one.members[0].slot.role.datum
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


def _sheet(one: PartSet, tiling: Tiling, piece: Tile, page: DeskPage) -> Sheet:
    a, b, c, d = page.aside
    count = (len(tiling.rows) - 1, len(tiling.columns) - 1)
    return Sheet(
        name=f"set-{one.letter.lower()}-{piece.key}",
        title=f"Set {one.letter}, tile {piece.key}",
        width=page.width,
        height=page.height,
        drawing=(
            *page.draw(tiling.shown(piece)),
            *page.furniture,
            *shift(key_map(count, tiling.tiles, piece, (c - a, d - b)), c, b),
        ),
        full_size=True,
    )
