"""Painting a view: parts laid over each other from the farthest to the nearest, on a grid of all their edges.

All wood is boxes, and all eyes look along an axis, so every edge of a view lies on a grid: the places of the edges
along the page and up it. A cell of the grid belongs to the nearest wood; lines stand where two cells differ. `views`
asks for regions and lines; this says what is seen in each cell.

    far to near:  0 0 0 .      lines where     ┌─────┐
                  0 1 1 .      cells differ    │ ┌───┤
                  0 1 1 .                      │ │   │
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

import attrs
import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.base import BaseGeometry

from ..layout.parts import Part
from ..lengths import TOUCH
from ..solids import Box, Placement, boxes

NOTHING = -1
Mask = npt.NDArray[np.bool_]


@attrs.frozen
class Painted:
    """What is seen in each cell of a grid: the number of a face, a part at a distance, or nothing. [mm]

    columns and rows are the edges of the cells; owner has a cell of nothing all round, cuts are edges of cut wood:
    level ones between rows, upright ones between columns.
    """

    columns: npt.NDArray[np.float64]
    rows: npt.NDArray[np.float64]
    owner: npt.NDArray[np.int64]
    faces: tuple[tuple[str, float], ...]
    level_cuts: Mask
    upright_cuts: Mask

    def lines(self) -> tuple[BaseGeometry, BaseGeometry]:
        """Visible lines, and those of cut wood that lie behind other wood."""
        below, above = self.owner[:-1, 1:-1], self.owner[1:, 1:-1]
        left, right = self.owner[1:-1, :-1], self.owner[1:-1, 1:]
        level, upright = below != above, left != right
        covered_level = self.level_cuts & ~level & (below != NOTHING)
        covered_upright = self.upright_cuts & ~upright & (left != NOTHING)
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

    def regions(self) -> Iterator[tuple[str, float, BaseGeometry]]:
        """Each face of which something is seen: part, distance, and what is seen of it."""
        inside = self.owner[1:-1, 1:-1]
        for number in np.unique(inside[inside != NOTHING]):
            part, distance = self.faces[number]
            yield part, distance, self._region(inside == number)

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
    wood: list[tuple[float, int, Box]] = []
    taken: list[Box] = []
    for number, part in enumerate(parts):
        blank = frame.local(part.blank)
        cuts = [met for cut in part.cuts if (met := frame.local(cut.box).meet(blank)) is not None]
        wood += [(box.low[2], number, box) for box in boxes(blank, cuts)]
        taken += cuts
    columns, rows = (_places([*(box for *_, box in wood), *taken], axis) for axis in (0, 1))
    owner = np.full((len(rows) + 1, len(columns) + 1), NOTHING)
    faces: dict[tuple[int, float], int] = {}
    depths = _distinct(np.array([near for near, *_ in wood]))
    cells = _cells([box for *_, box in wood], columns, rows)
    for index in np.argsort([-near for near, *_ in wood], kind="stable").tolist():
        near, number, _ = wood[index]
        depth = float(depths[np.searchsorted(depths, near - TOUCH)])
        left, right, low, high = cells[index]
        owner[low + 1 : high + 1, left + 1 : right + 1] = faces.setdefault((number, depth), len(faces))
    level = np.zeros((len(rows), len(columns) - 1), dtype=bool)
    upright = np.zeros((len(rows) - 1, len(columns)), dtype=bool)
    for left, right, low, high in _cells(taken, columns, rows):
        level[[low, high], left:right] = True
        upright[low:high, [left, right]] = True
    named = tuple((parts[number].name, depth) for number, depth in faces)
    return Painted(columns, rows, owner, named, level, upright)


def _places(found: Sequence[Box], axis: int) -> npt.NDArray[np.float64]:
    return _distinct(np.array([end for box in found for end in (box.low[axis], box.high[axis])]))


def _distinct(values: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
    """Rising values without those that touch the one before."""
    rising = np.sort(values)
    return rising[np.concatenate([[True], np.diff(rising) > TOUCH])] if len(rising) else rising


def _cells(found: Sequence[Box], columns: npt.NDArray[np.float64], rows: npt.NDArray[np.float64]) -> list[list[int]]:
    """First and last edges of boxes on the grid: left, right, low, high."""
    ends = np.array([(box.low[0], box.high[0], box.low[1], box.high[1]) for box in found]).reshape(-1, 4) - TOUCH
    places = (np.searchsorted(columns, ends[:, :2]), np.searchsorted(rows, ends[:, 2:]))
    found_at: list[list[int]] = np.concatenate(places, axis=1).tolist()
    return found_at


def _runs(marked: Mask) -> tuple[npt.NDArray[np.int64], npt.NDArray[np.int64], npt.NDArray[np.int64]]:
    """Runs of marked places in each row: the row, where the run begins and where it ends."""
    edge = np.zeros((len(marked), 1), dtype=np.int8)
    steps = np.diff(np.concatenate([edge, marked.astype(np.int8), edge], axis=1), axis=1)
    row, start = np.nonzero(steps == 1)
    _, end = np.nonzero(steps == -1)
    return row, start, end
