"""Tiles of a set: its faces at full size on desk pages that are trimmed and laid on the wood, where lines are struck.

A tile shows whole faces, and where nothing is marked there is none. Every seam says how far it lies from the foot and
from the lowest edge of what is clamped, so each tile is laid against a tape by itself: paper creeps, and what was
joined wrongly at one seam does not shift the next.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from typing import Unpack

import attrs
import shapely

from ....drafting.full_size.clearing import Clearing
from ....drafting.full_size.desk_page import DeskPage
from ....drafting.full_size.key_map import key_map
from ....drafting.full_size.tiling import LEAD, Reading, Tile, reach_of, seam_lines, seam_words
from ....drafting.full_size.windows import Face, Pane, cover
from ....drafting.primitives import Box, Disc, Drawing, Line, shift
from ....drafting.sheets.figure import Figure
from ....drafting.sheets.sheet import Sheet
from ....layout.layout import Layout
from ....layout.sets import Band, PartSet
from ....lengths import mm
from ....shop.fasteners.fasten import Fastening
from ...making.asked import Asked, InTiles, ask
from ...making.desk import blank, desk_sheet
from ...making.house import both_ways
from ..marking import Rows, legend
from ..waste import waste
from .draw import depths, rolled
from .tile_words import Shown, texts, tile_words
from .which import drawable_set, for_sets, unlike_sets
from .wood import bores, bores_told, box_of, face_rows, holes_of, openings, struck

MAP_WIDTH = 36.0
"""Beside the head, for the key map. [mm]"""
BETWEEN = 60.0
"""From one way up to the next on the key map. [mm]"""
HATCH = 8.0
_INSET = 0.7
_MANY = 999


@attrs.frozen(kw_only=True)
class Laid:
    """One way up of a set: where its faces lie, below those of the ways up before it, and its panes. [mm]"""

    band: Band
    rows: Rows
    panes: tuple[Pane, ...]

    @property
    def base(self) -> float:
        """Its lowest edge."""
        return self.rows[-1][0]


def set_tiles(layout: Layout, letter: str, **options: Unpack[InTiles]) -> tuple[Sheet, ...]:
    """Desk pages of all that is struck on a set, row by row from the top, each from the foot on.

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
        yield from _tiles(layout, asked, part_set)


def _tiles(layout: Layout, asked: Asked, part_set: PartSet) -> tuple[Sheet, ...]:
    over = mm(asked.overlap, zero=True, what="an overlap")
    ways = both_ways(asked.papers[0])
    sizes = ways if asked.upright is None else (ways[0] if asked.upright else ways[1],)
    tried = [(size, _laid(layout, asked, part_set, size, over)) for size in sizes]
    size, laid = min(tried, key=lambda pair: sum(len(one.panes) for one in pair[1]))
    count = sum(len(one.panes) for one in laid)
    return tuple(
        _sheet(layout, asked, part_set, laid, one, Tile(pane, over), (size, count))
        for one in laid
        for pane in one.panes
    )


def _laid(
    layout: Layout, asked: Asked, part_set: PartSet, size: tuple[float, float], overlap: float
) -> tuple[Laid, ...]:
    """All ways up with the panes that a page of a size has room for."""
    tape = layout.frame.tape
    found: list[Laid] = []
    top, row = 0.0, 0
    for band in part_set.bands:
        rows = [(low + top, high + top) for low, high in face_rows(part_set.members, band)]
        step = 12.7 if tape.unit == "in" else 10.0
        room = blank(asked, size, _head(asked, part_set, band)("a1", _MANY), MAP_WIDTH).holds
        panes = _fewest(part_set, band, rows, reach_of(room, overlap), step, max(overlap, LEAD) - LEAD)
        panes = tuple(attrs.evolve(pane, row=pane.row + row) for pane in panes)
        found.append(Laid(band=band, rows=rows, panes=panes))
        top, row = rows[-1][0] - BETWEEN, max((pane.row + 1 for pane in panes), default=row)
    return tuple(found)


def _fewest(
    part_set: PartSet, band: Band, rows: Rows, reach: tuple[float, float], step: float, glued: float
) -> tuple[Pane, ...]:
    """The panes of all struck lines; those with the ends of the waste too, where that takes no page more."""
    bare, whole = (
        cover(faces_of(part_set, band, rows, ends=ends), reach, step=step, base=rows[-1][0], glued=glued)
        for ends in (False, True)
    )
    return whole if len(whole) <= len(bare) else bare


def faces_of(part_set: PartSet, band: Band, rows: Rows, *, ends: bool) -> list[Face]:
    """The faces of a way up with the lines that are struck across each, and where waste runs out at an end."""
    marks: list[list[tuple[float, float, float]]] = [[] for _ in rows]
    for line in band.lines:
        for taker in line.takers:
            low = rows[taker.member][0]
            marks[taker.member].append((line.at, low + taker.low, low + taker.high))
    for item in band.waste if ends else ():
        x0, y0, x1, y1 = box_of(item.cut, rows[item.member][0])
        marks[item.member] += [(x0, y0, y1)] * item.cut.open_start + [(x1, y0, y1)] * item.cut.open_end
    return [
        Face(low=low, high=high, length=part.length, marks=tuple(own))
        for part, (low, high), own in zip(part_set.members, rows, marks, strict=True)
    ]


def _head(asked: Asked, part_set: PartSet, band: Band) -> Callable[[str, int], tuple[str, ...]]:
    """The head of a page, by its key and the number of pages."""
    datum, layout = part_set.members[0].slot.role.datum, asked.layout
    holes = bores_told(layout.frame.tape, holes_of(asked.fastening, part_set.members, band))

    def head(key: str, count: int) -> tuple[str, ...]:
        return (
            f"{key} of set {part_set.letter}. {layout.frame.name}",
            f"{band.title[0].upper()}{band.title[1:]}{for_sets(part_set)}. One of {count} pages; where the map is "
            f"blank nothing is marked. Trim left and below; lay the page on the edges of the parts, its seams at their "
            f"distances from the {datum}; crosses of neighbours meet. "
            f"{rolled(part_set, band)}{depths(layout, band)} {legend(part_set, band)}"
            f"{' ' if holes else ''}{holes}",
        )

    return head


def _distances(layout: Layout, part_set: PartSet, base: float) -> tuple[Reading, Reading]:
    """How far a seam lies along and up, in words; what lies on the other side of the datum always says so."""
    say, datum = layout.frame.tape.say, part_set.members[0].slot.role.datum

    def told(at: float, which: str, whence: str) -> tuple[str, str]:
        reading = say(abs(at))
        return f"{reading} {which} {whence}", reading if which == "from" else f"{reading} {which}"

    return (
        lambda at: told(at, "from" if at > -1e-6 else "before", f"the {datum}"),
        lambda at: told(at - base, "from" if at - base > -1e-6 else "below", "the lowest edge"),
    )


def _drawn(layout: Layout, part_set: PartSet, laid: Laid, tile: Tile, fastening: Fastening | None) -> Drawing:
    """What a tile shows: wood and seams, then words where nothing is drawn, then the waste between the words."""
    pane, (x0, y0, x1, y1) = tile.pane, tile.pane.cut
    shown = Shown(layout=layout, part_set=part_set, band=laid.band, rows=laid.rows, pane=pane)
    own = {number for number, *_ in shown.faces()}
    holes = bores(holes_of(fastening, part_set.members, laid.band), laid.rows, own)
    strokes = [*_wood(part_set, laid, own), *holes, *seam_lines(pane)]
    box = (x0 + _INSET, y0 + _INSET, x1 - _INSET, y1 - _INSET)
    cuts = [item for item in (*laid.band.waste, *laid.band.touches) if item.member in own]
    places = [box_of(item.cut, laid.rows[item.member][0]) for item in cuts]
    clear = Clearing(box, [item for item in strokes if isinstance(item, Line | Disc)], places)
    seams = tuple(seam_words(pane, _distances(layout, part_set, laid.base), clear))
    words = (*seams, *tile_words(shown, clear))
    return tile.shown((*strokes, *_waste(laid, own, tile.window, words), *words))


def _wood(part_set: PartSet, laid: Laid, own: Collection[int]) -> Iterator[Line]:
    """The faces that a tile is for, with all that is struck on them."""
    for number in sorted(own):
        (low, high), part = laid.rows[number], part_set.members[number]
        yield from openings(part, laid.band.faces[number], low)
        yield Line(((0.0, low), (part.length, low), (part.length, high), (0.0, high)), "visible", closed=True)
    yield from struck(part_set.members, laid.band, laid.rows, own=own)


def _waste(laid: Laid, own: Collection[int], window: Box, words: Drawing) -> Iterator[Line]:
    page = shapely.box(*window)
    for item in laid.band.waste:
        region = shapely.box(*box_of(item.cut, laid.rows[item.member][0])).intersection(page)
        if item.member in own and item.cut.wood and region.area > 0:
            yield from waste(region, HATCH, texts(words))  # type: ignore[misc]


def _sheet(
    layout: Layout,
    asked: Asked,
    part_set: PartSet,
    laid: Sequence[Laid],
    own: Laid,
    tile: Tile,
    page_of: tuple[tuple[float, float], int],
) -> Sheet:
    size, count = page_of
    page: DeskPage = blank(asked, size, _head(asked, part_set, own.band)(tile.key, count), MAP_WIDTH)
    a, b, c, d = page.aside
    faces = [
        (0.0, low, part.length, high)
        for one in laid
        for part, (low, high) in zip(part_set.members, one.rows, strict=True)
    ]
    tiles = [(Tile(pane).key, pane.cut) for one in laid for pane in one.panes]
    shows = tuple(dict.fromkeys(part.identity for part in part_set.members))
    title = f"Set {part_set.letter}, tile {tile.key}"
    figure = page.lay(Figure(name=title, drawing=_drawn(layout, part_set, own, tile, asked.fastening), shows=shows))
    items = (figure, page.furniture, shift(key_map(faces, tiles, tile.key, (c - a - 3.0, d - b)), c, b))
    return desk_sheet(asked, page, items, name=f"set-{part_set.letter.lower()}-{tile.key}", title=title)
