"""The key map: which tile of the whole a page is, its place filled, tiles with nothing on them crossed out.

>>> from .tiling import Tile
>>> drawn = key_map((2, 3), [Tile(0, 0, (0, 0, 1, 1)), Tile(1, 2, (0, 0, 1, 1))], Tile(1, 2, (0, 0, 1, 1)), (40, 20))
>>> sum(item.string in "ab123" for item in drawn if isinstance(item, Text))
5
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..lettering import text_width
from ..primitives import Drawing, Fill, Line, Primitive, Text, figure_middle
from .tiling import Tile, row_name

TEXT = 2.5
_ROOMY = 3.8
"""A cell from which on rows and columns are named. [mm]"""
_LARGEST = 6.0
_SPARE = 1.0


def key_map(count: tuple[int, int], used: Sequence[Tile], here: Tile, room: tuple[float, float]) -> Drawing:
    """Rows and columns of all tiles, the lower right corner of the map in (0, 0), in a room of some size. [mm]"""
    rows, columns = count
    cell = min(_LARGEST, (room[0] - _ROOMY - _SPARE) / columns, (room[1] - _ROOMY - _SPARE) / rows)
    left, top = -cell * columns - _SPARE, cell * rows + _SPARE
    there = {(one.row, one.column) for one in used}
    drawn: list[Primitive] = []
    for row in range(rows):
        for column in range(columns):
            x, y = left + column * cell, top - (row + 1) * cell
            ring = ((x, y), (x + cell, y), (x + cell, y + cell), (x, y + cell))
            drawn.append(Line(ring, "thin", closed=True))
            if (row, column) == (here.row, here.column):
                drawn.append(Fill((ring,)))
            elif (row, column) not in there:
                drawn.append(Line((ring[0], ring[2])))
    return (*drawn, *_names(rows, columns, cell, left, top))


def _names(rows: int, columns: int, cell: float, left: float, top: float) -> Iterator[Text]:
    if cell < _ROOMY - 0.4:
        return
    for row in range(rows):
        yield Text((left - 0.8, figure_middle(top - (row + 0.5) * cell, TEXT)), row_name(row), TEXT, "end")
    every = 1 if text_width(str(columns), TEXT) <= cell - 0.4 else 5
    for column in range(every - 1, columns, every):
        yield Text((left + (column + 0.5) * cell, top + 0.8), str(column + 1), TEXT, "middle")
