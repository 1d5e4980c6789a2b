"""Painting a view: parts laid into one picture, the nearest before all others, on a grid of all their edges.

All wood is boxes, and all eyes look along an axis, so every edge of a view lies on a grid: the places of the edges
along the page and up it. A cell of the grid belongs to the nearest wood; lines stand where two cells differ. `views`
asks for regions and lines; this says what is seen in each cell.

    parts:  0 0 0 .      lines where     ┌─────┐
            0 1 1 .      cells differ    │ ┌───┤
            0 1 1 .                      │ │   │
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from operator import itemgetter

import attrs
import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.base import BaseGeometry

from ...layout.parts import Part
from ...lengths import TOUCH
from ...solids import Box, Placement
from .face import Face

NOTHING = -1
Mask = npt.NDArray[np.bool_]
Places = npt.NDArray[np.float64]


@attrs.frozen
class Painted:
    """What is seen in each cell of a grid: the number of a part or nothing, and how far its wood is. [mm]

    columns and rows are the edges of the cells; owner and depth have a cell of nothing all round. Cuts are edges of cut
    wood: level ones between rows, upright ones between columns. Where a cut is open no wood is left on either side, and
    there is no edge.
    """

    names: tuple[str, ...]
    columns: Places
    rows: Places
    owner: npt.NDArray[np.int64]
    depth: Places
    level_cuts: Mask
    upright_cuts: Mask

    def lines(self) -> tuple[BaseGeometry, BaseGeometry]:
        """Visible lines, and those of cut wood that lie behind other wood."""
        owner, deep = self.owner, np.where(self.owner == NOTHING, 0.0, self.depth)
        level = (owner[:-1, 1:-1] != owner[1:, 1:-1]) | (abs(deep[:-1, 1:-1] - deep[1:, 1:-1]) > TOUCH)
        upright = (owner[1:-1, :-1] != owner[1:-1, 1:]) | (abs(deep[1:-1, :-1] - deep[1:-1, 1:]) > TOUCH)
        covered_level = self.level_cuts & ~level & (owner[:-1, 1:-1] != NOTHING)
        covered_upright = self.upright_cuts & ~upright & (owner[1:-1, :-1] != NOTHING)
        return self._drawn(level, upright), self._drawn(covered_level, covered_upright)

    def _drawn(self, level: Mask, upright: Mask) -> BaseGeometry:
        """Lines of marked edges, as long as they run, joined at corners."""
        row, start, end = _runs(level)
        column, low, high = _runs(upright.T)
        x, y = self.columns, self.rows
        across = np.stack([np.stack([x[start], y[row]], -1), np.stack([x[end], y[row]], -1)], axis=1)
        up = np.stack([np.stack([x[column], y[low]], -1), np.stack([x[column], y[high]], -1)], axis=1)
        lines = shapely.multilinestrings(shapely.linestrings(np.concatenate([across, up])))
        return shapely.normalize(shapely.line_merge(lines))

    def faces(self) -> Iterator[Face]:
        """Each face of which something is seen, and what is seen of it."""
        owner, depth = self.owner[1:-1, 1:-1], self.depth[1:-1, 1:-1]
        for number in np.unique(owner[owner != NOTHING]).tolist():
            own = owner == number
            for distance in _distinct(depth[own]).tolist():
                yield Face(self.names[number], distance, self._region(own & (abs(depth - distance) <= TOUCH)))

    def _region(self, cells: Mask) -> BaseGeometry:
        """The cells as one shape: rows that are alike are taken together."""
        changes = np.flatnonzero((cells[1:] != cells[:-1]).any(axis=1)) + 1
        found = []
        for low, high in pairwise([0, *changes.tolist(), len(cells)]):
            _, start, end = _runs(cells[low : low + 1])
            found.append(shapely.box(self.columns[start], self.rows[low], self.columns[end], self.rows[high]))
        each = np.concatenate(found)
        return each[0] if len(each) == 1 else shapely.simplify(shapely.union_all(each), 0.0)


def paint(parts: Sequence[Part], frame: Placement) -> Painted:
    """Parts as an eye sees them whose page is a frame: right, up, and away from it."""
    blanks = _turned([part.blank for part in parts], frame)
    mates = np.array([number for number, part in enumerate(parts) for _ in part.cuts], dtype=int)
    cuts = _turned([cut.box for part in parts for cut in part.cuts], frame)
    cuts = np.stack([np.maximum(cuts[:, 0], blanks[mates, 0]), np.minimum(cuts[:, 1], blanks[mates, 1])], axis=1)
    real = (cuts[:, 1] - cuts[:, 0] > TOUCH).all(axis=1)
    mates, cuts = mates[real], cuts[real]
    columns, rows = (_distinct(np.concatenate([blanks[:, :, n].ravel(), cuts[:, :, n].ravel()])) for n in (0, 1))
    owner = np.full((len(rows) + 1, len(columns) + 1), NOTHING)
    depth = np.full(owner.shape, np.inf)
    level = np.zeros((len(rows), max(len(columns) - 1, 0)), dtype=bool)
    upright = np.zeros((max(len(rows) - 1, 0), len(columns)), dtype=bool)
    own: list[list[_Taken]] = [[] for _ in parts]
    for mate, cell, (near, far) in zip(
        mates.tolist(), _cells(cuts, columns, rows), cuts[:, :, 2].tolist(), strict=True
    ):
        own[mate].append((near, far, cell))
    for number, (cell, (near, far)) in enumerate(
        zip(_cells(blanks, columns, rows), blanks[:, :, 2].tolist(), strict=True)
    ):
        left, right, low, high = cell
        place = (slice(low + 1, high + 1), slice(left + 1, right + 1))
        seen = _surface(cell, near, far, own[number])
        for _, _, cut in own[number]:
            _mark(cut, cell, np.isinf(seen), level, upright)
        nearer = seen < depth[place] - TOUCH
        depth[place][nearer] = seen[nearer]
        owner[place][nearer] = number
    return Painted(tuple(part.name for part in parts), columns, rows, owner, depth, level, upright)


_Taken = tuple[float, float, list[int]]
"""A cut: where it begins and ends away from the eye [mm], and its cells."""


def _surface(cell: list[int], near: float, far: float, cuts: list[_Taken]) -> Places:
    """How far the first wood of a part is in each of its cells; infinitely far where there is none. [mm]"""
    left, right, low, high = cell
    at = np.full((high - low, right - left), near)
    for start, end, (a, b, c, d) in sorted(cuts, key=itemgetter(0)):
        window = at[c - low : d - low, a - left : b - left]
        np.maximum(window, end, out=window, where=window >= start - TOUCH)
    at[at >= far - TOUCH] = np.inf
    return at


def _mark(cut: list[int], cell: list[int], void: Mask, level: Mask, upright: Mask) -> None:
    """Mark the edges of a cut at which its part has wood on one side or the other."""
    left, right, low, high = cut
    column, row = cell[0] - 1, cell[2] - 1  # of the frame of nothing round the part's own cells
    nothing = np.pad(void, 1, constant_values=True)
    across, up = slice(left - column, right - column), slice(low - row, high - row)
    for edge in (low, high):
        level[edge, left:right] |= ~(nothing[edge - row - 1, across] & nothing[edge - row, across])
    for edge in (left, right):
        upright[low:high, edge] |= ~(nothing[up, edge - column - 1] & nothing[up, edge - column])


def _turned(found: Sequence[Box], frame: Placement) -> Places:
    """Boxes on the page of a frame, shape (n, 2, 3): low and high corners."""
    ends = np.array([(box.low, box.high) for box in found]).reshape(-1, 2, 3) - frame.origin
    turned = ends @ np.array([frame.u, frame.v, frame.w]).T
    return np.sort(turned, axis=1) + 0.0  # no minus nought


def _distinct(values: Places) -> Places:
    """Rising values without those that touch the one before."""
    rising = np.sort(values)
    return rising[np.concatenate([[True], np.diff(rising) > TOUCH])] if len(rising) else rising


def _cells(found: Places, columns: Places, rows: Places) -> list[list[int]]:
    """First and last edges of boxes on the grid: left, right, low, high."""
    places = [np.searchsorted(edges, found[:, :, n] - TOUCH) for n, edges in enumerate((columns, rows))]
    cells: list[list[int]] = np.concatenate(places, axis=1).tolist()
    return cells


def _runs(marked: Mask) -> tuple[npt.NDArray[np.int64], npt.NDArray[np.int64], npt.NDArray[np.int64]]:
    """Runs of marked places in each row: the row, where the run begins and where it ends."""
    edge = np.zeros((len(marked), 1), dtype=np.int8)
    steps = np.diff(np.concatenate([edge, marked.astype(np.int8), edge], axis=1), axis=1)
    row, start = np.nonzero(steps == 1)
    _, end = np.nonzero(steps == -1)
    return row, start, end
