"""Uneven wood: rails of a level, and lengths that should match, where they measure differently.

What is sized, marked or cut stays: rails that are still to be sized follow it, and no advice asks to plane it.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator

from ...findings import Finding, Severity
from ...frame.identity import of_piece
from ...frame.slots import Slot
from ...lengths import TOUCH
from ...phrases import listed
from ...sources import COMMON_PRACTICE
from ..joining import let_in
from ..parts import Part
from ..placing.sizes import RailSizes
from .piece import Piece


def uneven_rails(piece: Piece) -> Iterator[Finding]:
    """Rails that are sized to the narrowest, that leave a gap in their notch, or that stand proud of the leg."""
    for slot in piece.frame.rails():
        if slot.name in piece.parts:
            yield from _widths(piece, slot, piece.rail_sizes[slot.name])
            yield from _thickness(piece, slot, piece.rail_sizes[slot.name])


def _widths(piece: Piece, slot: Slot, sizes: RailSizes) -> Iterator[Finding]:
    found, own, notch = map(piece.of, (sizes.found, sizes.own.width, sizes.notch))
    name = piece.where(slot.name)
    level = [s for own in piece.frame.rails_of.values() if slot in own for s in own if s.width == slot.width]
    done = [other for other in level if piece.finished(other.name)]
    if found - own > TOUCH:
        like = f"what is finished of its level ({listed([other.name for other in done])})"
        what = (
            f"{name} is {piece.say(found)} wide; size it to {piece.say(own)} like "
            f"{like if done else 'the narrowest of its level'}, {piece.amount(found - own)} less."
        )
        yield _finding(piece, "note", "size to the narrowest", (slot.name,), what, {"found": found, "width": own})
    if slot in done and piece.frame.uneven == "narrowest":
        yield from _stays_wide(piece, slot, own, [other for other in level if other.name in piece.parts])
    if slot.joint is not None and slot.joint.shares and notch - own > TOUCH:
        gap = piece.amount(notch - own)
        what = f"{name} is {gap} narrower than its notches, which are cut for the widest of its level."
        yield _finding(piece, "note", "gap accepted", (slot.name,), what, {"gap": notch - own})


def _stays_wide(piece: Piece, slot: Slot, own: float, level: Iterable[Slot]) -> Iterator[Finding]:
    """A finished rail that is wider than another of its level: it stays."""
    narrow = min(piece.of(piece.rail_sizes[other.name].own.width) for other in level)
    if own - narrow > piece.frame.tape.hair:
        what = (
            f"{piece.where(slot.name)} is finished at {piece.say(own)} and stays so; the narrowest of its level is "
            f"{piece.say(narrow)} wide, {piece.amount(own - narrow)} less. Let their edges differ by that much."
        )
        yield _finding(piece, "note", "stays wider", (slot.name,), what, {"width": own, "narrowest": narrow})


def _thickness(piece: Piece, slot: Slot, sizes: RailSizes) -> Iterator[Finding]:
    flush, thick = piece.of(sizes.flush), piece.of(sizes.own.thickness)
    deep = let_in(slot, thick, flush)
    if slot.joint is None or not slot.joint.shares or deep < flush - TOUCH:
        return  # nothing is to be flush here, or so much of it stays out as the maker said
    proud = thick - deep  # none of a lap, which finishes flush whatever the rail's thickness
    if proud > piece.frame.tape.hair:
        name = piece.where(slot.name)
        what = (
            f"{name} is {piece.amount(proud)} thicker than the thinnest rail of its level, which sets the depth of the "
            "notches; it stands proud by that much. "
            f"{'It is finished: accept it.' if piece.finished(slot.name) else 'Plane it, or accept it.'}"
        )
        yield _finding(piece, "note", "stands proud", (slot.name,), what, {"proud": proud})


def uneven_lengths(piece: Piece) -> Iterator[Finding]:
    """Rails of a level that are still to be cut, at one stop, and come out at different lengths."""
    for slots in piece.frame.rails_of.values():
        own = [slot for slot in slots if slot.name in piece.parts]
        own = [slot for slot in own if of_piece(piece.number, slot.name) not in piece.frame.finished]
        for sides in (("front", "back"), ("left", "right")):
            for one, other in itertools.combinations([slot for slot in own if slot.side in sides], 2):
                if one.side != other.side and one.of == other.of and _pairs(one) == _pairs(other):
                    yield from _lengths(piece, [piece.parts[one.name], piece.parts[other.name]])


def _pairs(slot: Slot) -> tuple[str, ...]:
    """The pairs that a long rail goes to, whichever row; nothing of an end rail."""
    return tuple(leg.partition(" ")[2] for leg in slot.hosts) if slot.long else ()


def _lengths(piece: Piece, rails: Iterable[Part]) -> Iterator[Finding]:
    short, long = sorted(rails, key=lambda part: part.length)
    differ = long.length - short.length
    if differ > piece.frame.tape.hair:
        legs = {host for rail in (long, short) for host in rail.slot.hosts}
        plane = "" if any(map(piece.finished, legs)) else "plane the legs alike, or "
        sentence = (
            f"{piece.where(long.identity)} comes out {piece.amount(differ)} longer than {short.identity} "
            f"({piece.say(long.length)} and {piece.say(short.length)}). They share one stop: {plane}"
            f"cut both at the shorter length and leave a gap of {piece.amount(differ)}."
        )
        numbers = {"long": long.length, "short": short.length}
        yield _finding(piece, "warning", "lengths differ", (long.identity, short.identity), sentence, numbers)


def _finding(
    piece: Piece, severity: Severity, kind: str, parts: tuple[str, ...], sentence: str, numbers: dict[str, float]
) -> Finding:
    return Finding(
        severity=severity,
        kind=kind,
        where=piece.where(parts[0]),
        parts=parts,
        sentence=sentence,
        numbers=numbers,
        source=COMMON_PRACTICE,
    )
