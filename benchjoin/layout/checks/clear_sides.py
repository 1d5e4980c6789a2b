"""Clears that were given over the band and come out otherwise at a side, where a rail ends lower or higher."""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding
from ...frame.clear import Clear
from ...frame.stack import Level, clear_name
from ...phrases import listed
from ...sources import STATICS
from ..clears import Opening, openings
from .piece import Piece


def clears_at_their_sides(piece: Piece) -> Iterator[Finding]:
    """A clear with a size that is measured over the band, and what it is at each side, where the sides differ."""
    stack = piece.frame.stack
    found = openings(piece.parts.values())
    between: dict[tuple[str | None, str | None], dict[str, Opening]] = {}
    for side, own in found.items():
        for o in own:
            between.setdefault((o.below.level, o.above.level), {})[side] = o
    for place, clear in enumerate(stack[1:-1], 1):
        below, above = stack[place - 1], stack[place + 1]
        if not (isinstance(clear, Clear) and isinstance(below, Level) and isinstance(above, Level)):
            continue
        sides = between.get((below.name, above.name), {})
        sizes = {side: opening.size for side, opening in sides.items()}
        if clear.size is None or clear.at or all(abs(s - clear.size) <= piece.frame.tape.hair for s in sizes.values()):
            continue
        told = [f"{piece.say(size)} at the {side}" for side, size in sizes.items()]
        name = clear_name(stack, place)
        yield Finding(
            severity="note",
            kind="clear differs",
            where=piece.where(name),
            parts=tuple(part.identity for o in sides.values() for part in (o.below, o.above)),
            sentence=f"{piece.where(name)}: {piece.say(clear.size)} over the band is {listed(told)}. Measure it at one "
            'side (at="front") if that is the one that counts.',
            numbers=dict(sizes),
            source=STATICS,
        )
