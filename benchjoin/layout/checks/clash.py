"""Clash: two parts that want the same wood, with no joint between them that settles it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from ...findings import Finding
from ...frame.identity import of_piece
from ...solids import left_over
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
    """Whether one of them is finished and cut for the other: what no longer fits there is told by its own check."""
    pairs = ((one, other), (other, one))
    return any(
        of_piece(piece.number, part.identity) in piece.frame.finished
        and any(c.mate == mate.identity for c in part.cuts)
        for part, mate in pairs
    )


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
