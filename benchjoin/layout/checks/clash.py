"""Clash: two parts that want the same wood, with no joint between them that settles it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

import numpy as np

from ...findings import Finding
from ...frame.identity import of_piece
from ...lengths import TOUCH
from ...solids import along, left_over
from ...sources import STATICS
from ..parts import Part
from .piece import Piece

SHARED = 1e-3
"""Less than this is rounding. [mm³]"""


def clashes(piece: Piece) -> Iterator[Finding]:
    """Every pair of parts that still share wood after all joints."""
    for one, other in near_pairs([*piece.parts.values()]):
        box = one.blank.meet(other.blank)
        if box is None or _settled(piece, one, other) or left_over(box, [*one.taken, *other.taken]) <= SHARED:
            continue
        yield _finding(piece, one, other)


def near_pairs(parts: Sequence[Part]) -> Iterator[tuple[Part, Part]]:
    """Pairs that may share wood, in the order of the parts: their blanks overlap along every axis.

    Where places are those of many variants, all pairs are given.
    """
    ends = [(*part.blank.low, *part.blank.high) for part in parts]
    if any(isinstance(end, np.ndarray) for each in ends for end in each):
        yield from combinations(parts, 2)
        return
    table = np.array(ends).reshape(len(parts), 2, 3)
    orders = [np.argsort(table[:, 0, axis], kind="stable") for axis in range(3)]
    lasts = [np.searchsorted(table[order, 0, axis], table[order, 1, axis]) for axis, order in enumerate(orders)]
    axis = int(np.argmin([last.sum() for last in lasts]))
    order, last = orders[axis], lasts[axis]
    low, high = table[order, 0], table[order, 1]
    found = []
    for place in range(len(parts) - 1):
        after = slice(place + 1, last[place])
        shared = np.minimum(high[after], high[place]) - np.maximum(low[after], low[place])
        for other in np.flatnonzero((shared > TOUCH).all(axis=1)).tolist():
            one, two = int(order[place]), int(order[place + 1 + other])
            found.append((min(one, two), max(one, two)))
    yield from ((parts[one], parts[two]) for one, two in sorted(found))


def _settled(piece: Piece, one: Part, other: Part) -> bool:
    """Whether one of them is finished, and another check tells what no longer fits there."""
    return any(_cut_for(piece, *pair) or _too_long(piece, *pair) for pair in ((one, other), (other, one)))


def _cut_for(piece: Piece, part: Part, mate: Part) -> bool:
    """Whether a part is marked or cut for its mate already."""
    done = piece.frame.finished.get(of_piece(piece.number, part.identity))
    return done is not None and any(cut.mate == mate.identity for cut in done.cuts)


def _too_long(piece: Piece, part: Part, mate: Part) -> bool:
    """Whether they share no more than what a part was finished too long."""
    want, box = piece.wanted.get(of_piece(piece.number, part.identity)), part.blank.meet(mate.blank)
    if want is None or box is None:
        return False
    return bool(along(box.high, part.placement.u) - along(box.low, part.placement.u) <= part.length - want + TOUCH)


def _finding(piece: Piece, one: Part, other: Part) -> Finding:
    box = one.blank.meet(other.blank)
    x, y, z = box.size() if box else (0.0, 0.0, 0.0)
    size = f"{piece.say(x)} along, {piece.say(y)} deep, {piece.say(z)} high"
    low = box.low[2] if box else 0.0
    return Finding(
        severity="error",
        kind="clash",
        where=piece.where(one.identity),
        parts=(one.identity, other.identity),
        sentence=f"{piece.where(one.identity)} and {other.identity} want the same wood at {piece.say(low)} over "
        f"the {piece.frame.datum} ({size}), and no joint gives it up. Raise or move one of them, or let one stop "
        "behind the other.",
        numbers={"x": x, "y": y, "z": z, "bottom": low},
        source=STATICS,
    )
