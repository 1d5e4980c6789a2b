"""Land: the wood left standing between two notches, or between a notch and an end of the leg, on one face."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from ...findings import Finding
from ...frame.identity import in_short
from ...lengths import TOUCH
from ...trade.practice import LAND
from ..parts import Part
from .measured_lengths import pinned_tops
from .piece import Piece


def slivers(piece: Piece) -> Iterator[Finding]:
    """A sliver of leg above a notch, which breaks off."""
    for names, leg, alike in piece.kinds_of_legs:
        level, _ = pinned_tops(piece).get(leg.side, ("", 0.0))
        for notch in leg.notches:
            land = leg.length - notch.top
            if TOUCH < land < LAND.sliver and in_short(notch.rail, along_length=False) != level:
                yield Finding(
                    severity="warning",
                    kind="sliver",
                    where=names,
                    parts=alike,
                    mates=(notch.rail,),
                    sentence=f"{names}: a sliver of {_thin(piece, land)} stands above the notch for {notch.rail} and "
                    f'will break off. Pin the level by relation (flush="front leg top", "back leg top"), or lower it.',
                    numbers={"land": land},
                    source=LAND.source,
                )


def short_lands(piece: Piece) -> Iterator[Finding]:
    """Lands too short for their short grain."""
    for names, leg, alike in piece.kinds_of_legs:
        for land, depth, where, rails in _lands(leg):
            need = LAND.needed(depth)
            if TOUCH < land < need and not (where.startswith("between the top of") and land < LAND.sliver):
                yield Finding(
                    severity="warning",
                    kind="short land",
                    where=names,
                    parts=alike,
                    mates=rails,
                    sentence=f"{names}: only {_thin(piece, land)} of wood is left {where}, and its short grain "
                    f"may break away. Leave at least {piece.say(need)}.",
                    numbers={"land": land, "needed": need},
                    source=LAND.source,
                )


def _thin(piece: Piece, land: float) -> str:
    return piece.say(land) if piece.frame.tape.marks(land) else f"{land:.2g} mm"


def _lands(leg: Part) -> Iterator[tuple[float, float, str, tuple[str, ...]]]:
    """Each land of each face: its height, the depth of the deeper notch beside it, where it is, beside which rails."""
    for face in leg.faces:
        own = sorted((n for n in leg.notches if n.face == face), key=lambda n: n.bottom)
        for below, above in itertools.pairwise(own):
            land, depth = above.bottom - below.top, max(below.depth, above.depth)
            yield land, depth, f"between the notches for {below.rail} and {above.rail}", (below.rail, above.rail)
        if own:
            first, last = own[0], own[-1]
            yield first.bottom, first.depth, f"between the foot and the notch for {first.rail}", (first.rail,)
            where = f"between the top of the leg and the notch for {last.rail}"
            yield leg.length - last.top, last.depth, where, (last.rail,)
