"""Lengths found on the wood: a leg a hair long or short, a rail that was cut short.

Heights stay from the foot. What is pinned to the tops of several legs lies at the shortest of them, so that no rail
slopes, and the others are trimmed.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ...findings import Finding
from ...frame.finished import Finished
from ...frame.identity import of_piece
from ...frame.stack import FLUSH
from ...lengths import TOUCH
from ...sources import COMMON_PRACTICE
from ..parts import Part
from .piece import Piece


def tops_to_trim(piece: Piece) -> Iterator[Finding]:
    """Legs that stand over the level that is flush with their tops."""
    tops = pinned_tops(piece)
    for leg in piece.legs:
        if leg.side in tops:
            level, top = tops[leg.side]
            over = leg.length - top
            if over > piece.frame.tape.hair and _measured(piece, leg.side):
                done, off = piece.finished(leg.identity), piece.amount(over)
                way = f"it is {done.state}: let its top stand {off} over" if done else f"trim {off} off its top"
                yield Finding(
                    severity="note",
                    kind="trim",
                    where=piece.where(leg.identity),
                    parts=(leg.identity,),
                    sentence=f"{piece.where(leg.identity)} measures {piece.say(leg.length)}, and {level} lies flush "
                    f"with the shortest leg's top at {piece.say(top)}: {way}.",
                    numbers={"length": leg.length, "top": top, "over": over},
                    source=COMMON_PRACTICE,
                )


def pinned_tops(piece: Piece) -> Mapping[str, tuple[str, float]]:
    """For each row of legs the level that is flush with its tops, and where it lies. [mm]"""
    rows = {FLUSH[level.flush]: level.name for level in piece.frame.levels() if level.flush}
    found: dict[str, tuple[str, float]] = {}
    for part in piece.parts.values():
        if part.level is not None and rows.get(part.side) == part.level:
            found[part.side] = (part.level, part.blank.high[2])
    return found


def _measured(piece: Piece, row: str) -> bool:
    """Whether the length of a leg of a row was measured in this piece."""
    names = [leg.identity for leg in piece.legs if leg.side == row]
    return any("length" in piece.frame.measured.get(key, {}) for n in names for key in (n, of_piece(piece.number, n)))


def measured_lengths(piece: Piece) -> Iterator[Finding]:
    """Parts, still to be marked, that measure another length than they should have."""
    tops = pinned_tops(piece)
    for part in piece.parts.values():
        name = of_piece(piece.number, part.identity)
        want = piece.wanted.get(name) if name not in piece.frame.finished else None
        trimmed = part.slot.upright and part.side in tops and want is not None and part.length > want
        if want is not None and not trimmed and abs(want - part.length) > piece.frame.tape.hair:
            yield _off(piece, part, want)


def shorter_than_cuts(piece: Piece) -> Iterator[Finding]:
    """Parts that were measured shorter, after they were marked or cut, than their farthest shoulder lies."""
    for part in piece.parts.values():
        done = piece.finished(part.identity)
        mate, at = _farthest(done) if done is not None else ("", 0.0)
        if at - part.length > piece.holds:
            name, word = piece.where(part.identity), "top" if part.slot.upright else "end"
            yield Finding(
                severity="error",
                kind="measured too short",
                where=name,
                parts=(part.identity,),
                sentence=f"{name} measures {piece.say(part.length)}, and its shoulder for {mate} was kept at "
                f"{piece.say(at)}, {piece.amount(at - part.length)} beyond its {word}. Measure its length again, or "
                "release the part if it is another piece of wood.",
                numbers={"length": part.length, "shoulder": at},
                source=COMMON_PRACTICE,
            )


def _farthest(done: Finished) -> tuple[str, float]:
    """The mate and the place of the farthest shoulder that was kept; an end at which a cut ran out is none. [mm]"""
    found = [("", 0.0)]
    for cut in done.cuts:
        ends = (cut.low[0], cut.high[0])
        found += [(cut.mate, end) for end in ends if end < done.length - TOUCH]
    return max(found, key=lambda shoulder: shoulder[1])


def _off(piece: Piece, part: Part, want: float) -> Finding:
    over = part.length - want
    off, stands = piece.amount(abs(over)), part.slot.upright
    if over > TOUCH:
        way = "trim its top" if stands else f"trim its {part.slot.role.end}"
    else:
        way = "heights stay from its foot; shim the foot or trim the others" if stands else "shim it, or make it again"
    return Finding(
        severity="note" if over > TOUCH else "warning",
        kind="measured length",
        where=piece.where(part.identity),
        parts=(part.identity,),
        sentence=f"{piece.where(part.identity)} measures {piece.say(part.length)} and should be {piece.say(want)}: "
        f"{off} too {'long' if over > 0 else 'short'}; {way}.",
        numbers={"length": part.length, "wanted": want},
        source=COMMON_PRACTICE,
    )
