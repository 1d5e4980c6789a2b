"""Blocking: which parts another would meet on its way, straight along an axis of the world, out of the piece for good.

All pairs of all ways are worked out at once, from the boxes of wood that are left; an order asks sets of parts.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from functools import cached_property

import attrs
import numpy as np
import numpy.typing as npt

from ...layout.parts import Part
from ...layout.swept import WAYS
from ...lengths import TOUCH
from ...solids import Vector

DIRECTIONS: dict[str, Vector] = {**WAYS, "down": (0, 0, -1)}
"""Ways out, in the order in which they are tried."""
Flags = npt.NDArray[np.bool_]


@attrs.frozen(eq=False, slots=False)
class Blocking:
    """Parts of one piece, and who blocks whom on each way."""

    parts: tuple[Part, ...]

    @cached_property
    def number(self) -> dict[str, int]:
        """The place of each part."""
        return {part.identity: n for n, part in enumerate(self.parts)}

    @cached_property
    def by_way(self) -> dict[str, Flags]:
        """For each way, shape (parts, parts): whether the first would meet the second."""
        solids = [part.solid for part in self.parts]
        wood = np.array([(box.low, box.high) for own in solids for box in own], dtype=float)
        starts = np.cumsum([0, *(len(own) for own in solids[:-1])])
        low, high = wood[:, 0], wood[:, 1]
        over = np.minimum(high[:, None], high[None]) - np.maximum(low[:, None], low[None]) > TOUCH
        found = {}
        for name, way in DIRECTIONS.items():
            axis = next(n for n in range(3) if way[n])
            beside = np.delete(over, axis, axis=2).all(axis=2)
            ahead = (
                (high[None, :, axis] > low[:, None, axis] + TOUCH)
                if way[axis] > 0
                else (low[None, :, axis] < high[:, None, axis] - TOUCH)
            )
            hits = np.logical_or.reduceat(np.logical_or.reduceat(beside & ahead, starts, axis=0), starts, axis=1)
            np.fill_diagonal(hits, False)
            found[name] = hits
        return found

    def flags(self, names: Iterable[str]) -> Flags:
        """Some parts as flags."""
        found = np.zeros(len(self.parts), dtype=bool)
        found[[self.number[name] for name in names]] = True
        return found

    def met(self, moved: Collection[str], stays: Collection[str], way: str) -> tuple[str, ...]:
        """Which of those that stay are met by those that are moved."""
        hits = self.by_way[way][self.flags(moved)].any(axis=0) & self.flags(stays)
        return tuple(self.parts[n].identity for n in np.flatnonzero(hits).tolist())

    def free_ways(self, moved: Collection[str], stays: Collection[str], order: Sequence[str] = ()) -> list[str]:
        """The ways on which nothing is met, those of the order first."""
        inside, hosts = self.flags(moved), self.flags(stays)
        tried = [*order, *(name for name in DIRECTIONS if name not in order)]
        return [name for name in tried if not (self.by_way[name][inside].any(axis=0) & hosts).any()]

    def first_free(self, moved: Flags, there: Flags, own: str = "") -> str:
        """The first way on which some of those that are there meet none of the others, their own one first."""
        stays = there & ~moved
        for name in (own, *DIRECTIONS) if own else DIRECTIONS:
            if not (self.by_way[name][moved] & stays).any():
                return name
        return ""
