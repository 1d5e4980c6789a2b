"""Uneven wood: rails of a level, legs of a set, and lengths that should match, where they measure differently."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator

from ...findings import Finding, Severity
from ...frame.identity import of_piece
from ...frame.slots import Slot
from ...lengths import TOUCH
from ...sources import COMMON_PRACTICE
from ..joining import let_in
from ..parts import Part
from ..placing.sizes import RailSizes, rail_sizes
from .piece import Piece


def uneven_rails(piece: Piece) -> Iterator[Finding]:
    """Rails that are sized to the narrowest, that leave a gap in their notch, or that stand proud of the leg."""
    sizes = rail_sizes(piece.frame)
    for slot in piece.frame.rails():
        if slot.name in piece.parts:
            yield from _widths(piece, slot, sizes[slot.name])
            yield from _thickness(piece, slot, sizes[slot.name])


def _widths(piece: Piece, slot: Slot, sizes: RailSizes) -> Iterator[Finding]:
    found, own, notch = map(piece.of, (sizes.found, sizes.own.width, sizes.notch))
    name = piece.where(slot.name)
    if found - own > TOUCH:
        what = (
            f"{name} is {piece.say(found)} wide; size it to {piece.say(own)} like the narrowest of its level, "
            f"{piece.amount(found - own)} less."
        )
        yield _finding(piece, "note", "size to the narrowest", (slot.name,), what, {"found": found, "width": own})
    if slot.joint is not None and slot.joint.shares and notch - own > TOUCH:
        gap = piece.amount(notch - own)
        what = f"{name} is {gap} narrower than its notches, which are cut for the widest of its level."
        yield _finding(piece, "note", "gap accepted", (slot.name,), what, {"gap": notch - own})


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
            "notches; it stands proud by that much. Plane it, or accept it."
        )
        yield _finding(piece, "note", "stands proud", (slot.name,), what, {"proud": proud})


def uneven_legs(piece: Piece) -> Iterator[Finding]:
    """Legs of one stock that measure differently by more than a hair; those that are marked already are let be."""
    for legs in _drawn_alike(piece):
        for axis, what in ((1, "depth"), (0, "width")):
            sizes = [leg.blank.size()[axis] for leg in legs]
            spread = max(sizes) - min(sizes)
            if spread > piece.frame.tape.hair:
                thin, thick = (legs[sizes.index(f(sizes))].identity for f in (min, max))
                sentence = (
                    f"{piece.where(thick)} is {piece.amount(spread)} more in {what}, as it stands, than {thin} "
                    f"({piece.say(max(sizes))} and {piece.say(min(sizes))}), the most and the least of these legs. "
                    f"Plane all to {piece.say(min(sizes))} before they are clamped and marked."
                )
                numbers = {"spread": spread, "least": min(sizes)}
                yield _finding(piece, "warning", "legs differ", (thick, thin), sentence, numbers)


def _drawn_alike(piece: Piece) -> list[list[Part]]:
    """Legs still to be marked that were drawn with one section, in groups."""
    by_name = {part.identity: part for part in piece.legs}
    groups: list[tuple[tuple[object, ...], list[Part]]] = []
    for slot in piece.frame.legs():
        done = piece.frame.finished.get(of_piece(piece.number, slot.name))
        if done is not None and done.state != "sized":
            continue
        drawn = (slot.stock.name, slot.axes, slot.thickness, slot.width)
        legs = next((legs for like, legs in groups if like == drawn), None)
        if legs is None:
            groups.append((drawn, [by_name[slot.name]]))
        else:
            legs.append(by_name[slot.name])
    return [legs for _, legs in groups]


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
        sentence = (
            f"{piece.where(long.identity)} comes out {piece.amount(differ)} longer than {short.identity} "
            f"({piece.say(long.length)} and {piece.say(short.length)}). They share one stop: plane the legs alike, or "
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
