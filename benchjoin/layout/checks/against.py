"""A single row of uprights: it does not stand by itself, and what holds it is no work of the frame."""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding
from ...phrases import listed
from ...sources import COMMON_PRACTICE, STATICS
from .piece import Piece

HOLD = (
    "Fix it before anything hangs on it, with what suits the wall and the load; local codes and licensed practice come "
    "first. Heights count from its feet, wherever these hang or stand."
)


def held_by_the_wall(piece: Piece) -> Iterator[Finding]:
    """That a single row stands by what it is against; told once for the batch."""
    if piece.frame.against is not None and piece.number == 1:
        sentence = (
            f"{piece.frame.name} is one row of uprights and does not stand by itself: the "
            f"{piece.frame.against} holds it. {HOLD}"
        )
        yield Finding(
            severity="note",
            kind="held by the wall",
            where=piece.frame.name,
            sentence=sentence,
            source=COMMON_PRACTICE,
        )


def short_of_the_wall(piece: Piece) -> Iterator[Finding]:
    """Uprights of a single row that end short of the wall, where others come to it."""
    if piece.frame.against is None:
        return
    backs = {leg.identity: leg.blank.high[1] for leg in piece.legs}
    wall = max(backs.values())
    short = {name: wall - back for name, back in backs.items() if wall - back > piece.frame.tape.hair}
    if short:
        most = max(short.values())
        names = listed(list(short))
        which = "ends" if len(short) == 1 else "end"
        yield Finding(
            severity="note",
            kind="short of the wall",
            where=piece.where(names),
            parts=tuple(short),
            sentence=f"{piece.where(names)}: {which} {piece.amount(most)} short of the {piece.frame.against} that the "
            "thickest upright comes to. Pack it out where it is fixed, or take one thickness for all.",
            numbers={"short": most},
            source=STATICS,
        )
