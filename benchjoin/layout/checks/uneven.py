"""Uneven wood: rails of a level, legs of a set, and lengths that should match, where they measure differently."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ...findings import Finding, Severity
from ...frame.joints import Butt, Planted
from ...frame.rails import Slot
from ...lengths import TOUCH
from ...sources import COMMON_PRACTICE
from ..parts import Part
from ..sizes import RailSizes, rail_sizes
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
            f"{name} measures {piece.say(found)}; size it to {piece.say(own)} like the narrowest of its level, "
            f"{piece.amount(found - own)} less."
        )
        yield _finding(piece, "note", "size to the narrowest", (slot.name,), what, {"found": found, "width": own})
    if notch - own > TOUCH:
        gap = piece.amount(notch - own)
        what = f"{name} is {gap} narrower than its notches, which are cut for the widest of its level."
        yield _finding(piece, "note", "gap accepted", (slot.name,), what, {"gap": notch - own})


def _thickness(piece: Piece, slot: Slot, sizes: RailSizes) -> Iterator[Finding]:
    if isinstance(slot.joint, Butt | Planted):
        return
    proud = piece.of(sizes.own.thickness - sizes.flush)
    if proud > piece.frame.tape.hair:
        name = piece.where(slot.name)
        what = (
            f"{name} is {piece.amount(proud)} thicker than the thinnest rail of its level, which sets the depth of the "
            "notches; it stands proud by that much. Plane it, or accept it."
        )
        yield _finding(piece, "note", "stands proud", (slot.name,), what, {"proud": proud})


def uneven_legs(piece: Piece) -> Iterator[Finding]:
    """Legs of one stock that measure differently by more than a hair."""
    for legs in _drawn_alike(piece):
        for axis, what in ((1, "depth"), (0, "width")):
            sizes = [leg.blank.size()[axis] for leg in legs]
            spread = max(sizes) - min(sizes)
            if spread > piece.frame.tape.hair:
                thin, thick = (legs[sizes.index(f(sizes))].identity for f in (min, max))
                sentence = (
                    f"The legs differ by {piece.amount(spread)} in {what} as they stand: {thick} is the thickest and "
                    f"{thin} the thinnest. Plane all to {piece.say(min(sizes))} before they are clamped and marked."
                )
                yield _finding(
                    piece, "warning", "legs differ", (thick, thin), sentence, {"spread": spread, "least": min(sizes)}
                )


def _drawn_alike(piece: Piece) -> list[list[Part]]:
    """Legs that were drawn with one section, in groups."""
    by_name = {part.identity: part for part in piece.legs}
    groups: list[tuple[tuple[object, ...], list[Part]]] = []
    for name, _, _, leg in piece.frame.legs():
        drawn = (leg.stock.name, leg.wide, leg.stock.thickness, leg.stock.width)
        legs = next((legs for like, legs in groups if like == drawn), None)
        if legs is None:
            groups.append((drawn, [by_name[name]]))
        else:
            legs.append(by_name[name])
    return [legs for _, legs in groups]


def uneven_lengths(piece: Piece) -> Iterator[Finding]:
    """Rails of a level that should be cut at one stop and come out at different lengths."""
    for level in piece.frame.levels():
        for sides in (("front", "back"), ("left", "right")):
            slots = [s for s in piece.frame.rails() if s.level is level and s.side in sides and s.name in piece.parts]
            if len(slots) == 2 and slots[0].rail == slots[1].rail:
                yield from _lengths(piece, [piece.parts[slot.name] for slot in slots])


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
