"""Clash: two parts that want the same wood, with no joint between them that settles it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

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
    for one, other in combinations(piece.parts.values(), 2):
        box = one.blank.meet(other.blank)
        if (
            box is None
            or _settled(piece, one, other)
            or left_over(box, [cut.box for cut in (*one.cuts, *other.cuts)]) <= SHARED
        ):
            continue
        yield _finding(piece, one, other)


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
        f"the floor ({size}), and no joint gives it up. Raise or move one of them, or let one stop behind the other.",
        numbers={"x": x, "y": y, "z": z, "bottom": low},
        source=STATICS,
    )
