"""Tiling: a full-size drawing cut into windows that desk pages carry, to be joined by crosses and checked with a tape.

Seams run between tiles, a cross wherever two of them meet. A tile is trimmed along its left and lower seam and laid on
its neighbour so that the halves of the crosses make whole ones; on the other two sides it reaches past its seam, to be
glued under. Each seam says how far it lies from the datum, so an error of joining is seen at once and never adds up.
Rows are lettered from the top, columns numbered from the datum.

>>> from ..primitives import Line
>>> plan = tile((Line(((0, 0), (600, 100))),), (250.0, 180.0), datum=(0.0, 0.0), step=5.0)
>>> [t.key for t in plan.tiles], plan.columns
(['a1', 'a2', 'a3'], (-1.0, 230.0, 465.0, 601.0))
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

import attrs
import shapely

from ..lettering import text_width
from ..primitives import Box, Clipped, Disc, Drawing, Fill, Line, Primitive, Text, bounds, flat, shift, text_box
from .seams import seams

ARM = 5.0
"""Half of a cross. [mm]"""
LEAD = 5.0
"""What a tile shows before its left and lower seams. [mm]"""
OVERLAP = 10.0
"""What a tile shows past its right and upper seams. [mm]"""
_RING = 2.5
_LABEL = 3.0

Reading = Callable[[float], tuple[str, ...]]
"""A distance in words, the longest first; shorter ones for where the drawing leaves little room."""


def plain(distance: float) -> tuple[str, ...]:
    """The distance alone. [mm]"""
    return (f"{distance:g} mm",)


@attrs.frozen
class Tile:
    """A window over the drawing: its row and column, counted from 0, and the box that it shows. [mm]"""

    row: int
    column: int
    window: Box

    @property
    def key(self) -> str:
        """Row and column as they are written: a1 is the upper left tile."""
        return f"{row_name(self.row)}{self.column + 1}"


@attrs.frozen(kw_only=True)
class Tiling:
    """A drawing with its seams and crosses, the places of the seams, and the tiles on which something is drawn. [mm]

    columns and rows hold the ends of the drawing as well; rows rise, and the last one is row a.
    """

    drawing: Drawing
    columns: tuple[float, ...]
    rows: tuple[float, ...]
    tiles: tuple[Tile, ...]

    def shown(self, one: Tile) -> Drawing:
        """What a tile shows, moved so that the window's lower left corner is (0, 0)."""
        left, low, right, high = one.window
        seen = tuple(item for item in self.drawing if _meets(item, one.window))
        return shift((Clipped(seen, (left, low, right, high)),), -left, -low)


def row_name(row: int) -> str:
    """a, b … z, aa, ab …

    >>> row_name(0), row_name(25), row_name(26)
    ('a', 'z', 'aa')
    """
    name = ""
    row += 1
    while row:
        row, letter = divmod(row - 1, 26)
        name = chr(97 + letter) + name
    return name


def tile(
    drawing: Drawing,
    room: tuple[float, float],
    *,
    datum: tuple[float, float],
    step: float,
    read: tuple[Reading, Reading] = (plain, plain),
    avoid: tuple[Sequence[float], Sequence[float]] = ((), ()),
    overlap: float = OVERLAP,
) -> Tiling:
    """Windows over a drawing, each as large as a page takes.

    Parameters
    ----------
    drawing : Drawing
        At full size, anywhere.
    room : pair of float
        Width and height that a window may have. [mm]
    datum : pair of float
        The place that distances are counted from.
    step : float
        Seams lie whole steps from the datum. [mm]
    read : pair of callables
        How a distance along and up is written beside its seam.
    avoid : pair of sequences of float
        Places along and up that a seam should not be mistaken for. [mm]
    overlap : float
        What is glued under. [mm]

    Raises
    ------
    PaperError
        If the windows are too small.
    """
    x0, y0, x1, y1 = bounds(drawing)
    ends, reach = ((x0 - 1.0, x1 + 1.0), (y0 - 1.0, y1 + 1.0)), [side - LEAD - max(overlap, LEAD) for side in room]
    columns, rows = (seams(*ends[n], datum=datum[n], reach=reach[n], step=step, avoid=avoid[n]) for n in (0, 1))
    tiles = [
        Tile(row, column, (left - LEAD, low - LEAD, right + over[0], high + over[1]))
        for row, (low, high) in enumerate(reversed(list(pairwise(rows))))
        for column, (left, right) in enumerate(pairwise(columns))
        for over in [(overlap if right < columns[-1] else LEAD, overlap if row else LEAD)]
    ]
    whole = (*drawing, *_marks(drawing, columns, rows, datum, read, overlap))
    used = [one for one in tiles if _used(drawing, one, columns, rows)]
    return Tiling(drawing=whole, columns=columns, rows=rows, tiles=tuple(used))


def _used(drawing: Drawing, one: Tile, columns: Sequence[float], rows: Sequence[float]) -> bool:
    """Whether anything of the drawing lies between the seams of a tile."""
    n = len(rows) - 2 - one.row
    inside = (columns[one.column], rows[n], columns[one.column + 1], rows[n + 1])
    box = shapely.box(*inside)
    return any(_meets(item, inside) and _shape(item).intersects(box) for item in flat(drawing))


def _meets(item: Primitive, box: Box) -> bool:
    a, b, c, d = bounds((item,))
    pen = 1.0  # no line is wider
    return a - pen <= box[2] and c + pen >= box[0] and b - pen <= box[3] and d + pen >= box[1]


def _shape(item: Primitive) -> shapely.Geometry:
    if isinstance(item, Line):
        return shapely.LineString([*item.points, *item.points[: int(item.closed)]])
    return text_box(item) if isinstance(item, Text) else shapely.box(*bounds((item,)))


def _marks(
    drawing: Drawing,
    columns: Sequence[float],
    rows: Sequence[float],
    datum: tuple[float, float],
    read: tuple[Reading, Reading],
    overlap: float,
) -> Iterator[Primitive]:
    """Seams as chain lines, crosses where they meet, and how far each seam lies from the datum, once a tile."""
    inner_x, inner_y = columns[1:-1], rows[1:-1]
    yield from (Line(((x, rows[0] - ARM), (x, rows[-1] + ARM)), "centre") for x in inner_x)
    yield from (Line(((columns[0] - ARM, y), (columns[-1] + ARM, y)), "centre") for y in inner_y)
    for x in columns:
        for y in rows:
            if x in inner_x or y in inner_y:
                yield from cross((x, y))
    taken = _Taken(drawing, overlap)
    for x in inner_x:
        for low, high in pairwise(rows):
            yield taken.place(read[0](x - datum[0]), (x + 1.0 + _LABEL, low), (x, high), upright=True)
    for y in inner_y:
        for left, right in pairwise(columns):
            yield taken.place(read[1](y - datum[1]), (left, y + 1.4), (right, y), upright=False)


def cross(at: tuple[float, float]) -> Drawing:
    """A registration cross in a ring."""
    x, y = at
    return (
        Line(((x - ARM, y), (x + ARM, y))),
        Line(((x, y - ARM), (x, y + ARM))),
        Disc(at, _RING),
    )


class _Taken:
    """What is drawn already, so that the words of a seam find a place that is free, or the freest."""

    def __init__(self, drawing: Drawing, overlap: float) -> None:
        self.past = max(overlap, ARM) + 2.0  # words begin where the neighbour, which is glued under, ends
        items = [item for item in flat(drawing) if not (isinstance(item, Fill) and item.tone == "white")]
        self.shapes = [_shape(item) for item in items]
        self.weights = [10.0 if isinstance(item, Text) else 1.0 for item in items]
        self.tree = shapely.STRtree(self.shapes)

    def place(
        self, words: Sequence[str], start: tuple[float, float], end: tuple[float, float], *, upright: bool
    ) -> Text:
        """The longest of the words that is free along a seam between two crosses, as near to the first as it is."""
        tries = []
        for said in words:
            tries += list(self._tries(said, start, end, upright=upright))
            if tries[-1][0] == 0.0:
                return tries[-1][1]
        return min(tries, key=lambda tried: tried[0])[1]

    def _tries(
        self, words: str, start: tuple[float, float], end: tuple[float, float], *, upright: bool
    ) -> Iterator[tuple[float, Text]]:
        """Places along a seam and how much they cover, up to the first that is free."""
        turn, way = (90.0, 1) if upright else (0.0, 0)
        first, wide = start[way] + self.past, text_width(words, _LABEL)
        last = max(first, end[way] - ARM - 2.0 - wide)
        for n in range(int((last - first) / 4.0) + 1):
            along = first + 4.0 * n
            text = Text((start[0], along) if upright else (along, start[1]), words, _LABEL, "start", turn)
            covered = self._covered(text)
            yield covered, text
            if covered == 0.0:
                return

    def _covered(self, text: Text) -> float:
        """How much of what is drawn lies under a text."""
        box = text_box(text).buffer(0.5)
        met = self.tree.query(box, predicate="intersects").tolist()
        return float(sum((1.0 + self.shapes[n].intersection(box).length) * self.weights[n] for n in met))
