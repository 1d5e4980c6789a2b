"""Swept: what stands in the way of something that is moved, and by which moves a thing comes out of a frame."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

import attrs
import numpy as np

from ..lengths import TOUCH
from ..runs import larger, smaller
from ..solids import Box, Vector, vector
from .parts import Part

WAYS: dict[str, Vector] = {
    "up": (0, 0, 1),
    "front": (0, -1, 0),
    "back": (0, 1, 0),
    "left": (-1, 0, 0),
    "right": (1, 0, 0),
}
"""A step in each direction."""


@attrs.frozen
class Moves:
    """Moves one after the other, as vectors, where to, and who stands in the way of the first that was tried. [mm]"""

    steps: tuple[Vector, ...]
    toward: str = ""
    blocked: tuple[str, ...] = ()

    @property
    def free(self) -> bool:
        """Whether it comes out."""
        return not self.blocked


def swept(box: Box, by: Vector) -> Box:
    """All that a box passes through on its way."""
    moved = box.shifted(by)
    return Box(
        vector(map(smaller, box.low, moved.low)),
        vector(map(larger, box.high, moved.high)),
    )


def in_the_way(boxes: Sequence[Box], by: Vector, others: Iterable[Part]) -> tuple[str, ...]:
    """Names of parts that boxes would meet on a straight way."""
    ways = [swept(box, by) for box in boxes]
    found = []
    for part, near in _near(ways, list(others)):
        if any(way.meet(part.blank) is not None for way in near) and _meets(near, part):
            found.append(part.identity)
    return tuple(found)


def _near(ways: Sequence[Box], parts: Sequence[Part]) -> Iterator[tuple[Part, Sequence[Box]]]:
    """Parts whose blanks some ways meet, with these; where places are those of many variants, all with all."""
    ends = [[*box.low, *box.high] for box in (*ways, *(part.blank for part in parts))]
    if any(isinstance(end, np.ndarray) for each in ends for end in each):
        yield from ((part, ways) for part in parts)
        return
    table = np.array(ends).reshape(-1, 2, 3)
    own, rest = table[: len(ways), None], table[None, len(ways) :]
    shared = np.minimum(own[:, :, 1], rest[:, :, 1]) - np.maximum(own[:, :, 0], rest[:, :, 0])
    hits = (shared > TOUCH).all(axis=2)
    for number in np.flatnonzero(hits.any(axis=0)).tolist():
        yield parts[number], [ways[n] for n in np.flatnonzero(hits[:, number]).tolist()]


def _meets(ways: Sequence[Box], part: Part) -> bool:
    """Whether ways meet the wood that is left of a part."""
    return not part.taken or any(way.meet(box) is not None for way in ways for box in part.solid)


def moves_out(boxes: Sequence[Box], others: Sequence[Part], lift: float, far: float, order: Sequence[str]) -> Moves:
    """The first way out of a frame: straight, or lifted and then drawn out to a side.

    Parameters
    ----------
    boxes : sequence of Box
        What is moved.
    others : sequence of Part
        What stays.
    lift : float
        How far it is lifted before it is drawn out. [mm]
    far : float
        A distance after which it is clear of everything. [mm]
    order : sequence of str
        Directions in the order in which they are tried, of `WAYS`; "up" goes straight.

    Returns
    -------
    Moves
        With the blockers of the first direction where none is free.
    """
    first: tuple[str, ...] = ()
    up = vector(lift * a for a in WAYS["up"])
    above = [box.shifted(up) for box in boxes]
    lifted: tuple[str, ...] | None = None
    for word in order:
        out = vector(far * a for a in WAYS[word])
        blocked = in_the_way(boxes, out, others)
        if not blocked:
            return Moves((out,), word)
        first = first or blocked
        if word == "up" or lift <= TOUCH:
            continue
        if lifted is None:
            lifted = in_the_way(boxes, up, others)
        if not lifted and not in_the_way(above, out, others):
            return Moves((up, out), word)
    return Moves((), order[0], first)
