"""Ways out: what can be done where a finished part does not fit any more, and what each costs, the cheapest first.

A way out is data and words: what to do, and what it costs in wood, in notches or in a gap. Their order is common
practice, no source: what is let be costs nothing, a shim is cheaper than a rail that moves, wood comes off a part still
to be made before it comes off one that is done, and to make a part again is the last.
"""

from __future__ import annotations

from collections.abc import Iterable

from ...findings import WayKind, WayOut
from ...phrases import counted
from ..parts import Part
from .piece import Piece

CHEAPEST_FIRST: tuple[WayKind, ...] = ("let be", "shim", "move", "take off", "take off what is done", "make again")
NOTHING = "nothing to cut"


def in_order(ways: Iterable[WayOut]) -> tuple[WayOut, ...]:
    """Ways out, the cheapest first; of one kind as they come."""
    return tuple(sorted(ways, key=lambda way: CHEAPEST_FIRST.index(way.kind)))


def told(ways: Iterable[WayOut]) -> str:
    """'Ways out: re-rip low/front rail to 60 mm (2 mm off one rail); pare the shoulder (2 mm off one notch).'"""
    return f"Ways out: {'; '.join(f'{way.what} ({way.cost})' for way in ways)}."


def let_be(what: str) -> WayOut:
    """It is taken as it is."""
    return WayOut(what, NOTHING, "let be")


def shim(what: str, cost: str) -> WayOut:
    """A gap is filled."""
    return WayOut(what, cost, "shim")


def off_part(piece: Piece, part: Part, what: str, over: float) -> WayOut:
    """So much comes off one part; it says so where that is finished. [mm]"""
    done = piece.finished(part.identity)
    cost = f"{piece.amount(over)} off one {part.slot.role.word}"
    if done is None:
        return WayOut(what, cost, "take off")
    return WayOut(what, f"{cost} that is {done.state}", "take off what is done")


def off_cut(piece: Piece, kind: str, what: str, over: float) -> WayOut:
    """So much comes off a notch or lap that is marked or cut. [mm]"""
    return WayOut(what, f"{piece.amount(over)} off one {kind}", "take off what is done")


def made_again(piece: Piece, part: Part) -> WayOut:
    """The part is made again, from the spare where one is milled; what is struck or cut on it is done again, too."""
    done, word = piece.finished(part.identity), part.slot.role.word
    spare = f" from the {part.slot.role.spare}" if part.slot.role.spare else ""
    kinds = [cut.kind for cut in part.cuts] if done is not None and done.state != "sized" else []
    cuts = " and ".join(counted(kinds.count(kind), kind) for kind in dict.fromkeys(kinds))
    work = "mark" if done is not None and done.state == "marked" else "mark and cut"
    cost = f"{cuts} to {work}" if kinds else f"one {word} to size"
    return WayOut(f"make {part.identity} again{spare}", cost, "make again")
