"""How a drilling card is drawn: the face as wide as it is, crosses where the holes are, a tab to fold over the edge.

It lies with the datum end of the part on the left, at full size; on the tab stands what is drilled and where it goes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

import attrs

from ....drafting.lettering import wrap
from ....drafting.primitives import Drawing, Line, Primitive, Text
from ....layout.layout import Layout
from ....layout.parts import Part, face_up
from ....layout.sets import PartSet
from ....lengths import TOUCH, steady
from ....phrases import counted
from ....shop.fasteners.fasten import Fastening
from ....shop.fasteners.on_face import HoleOnFace, bored_faces, drilled, holes_on
from ...views.bored import bored
from ..marking import ranges

AROUND = 20.0
"""So much of the face is shown past the outer holes. [mm]"""
TO_THE_END = 45.0
"""An end of the part that is no further from a hole is shown, and laid flush. [mm]"""
LONGEST = 170.0
"""Holes that lie further apart have no card: they are read from the part drawing. [mm]"""
LEAST = 62.0
"""A card is no narrower, for its words. [mm]"""
TEXT, PITCH = 2.5, 3.8


@attrs.frozen(eq=False)
class Use:
    """Where a card goes: the part, the face, and where its left edge lies from the datum end. [mm]"""

    part: Part
    face: str
    start: float


@attrs.frozen(eq=False)
class Card:
    """Holes that lie together on a face, from the card's left edge on, and all places that have them. [mm]

    flush tells at which of its sides the part ends.
    """

    holes: tuple[HoleOnFace, ...]
    wide: float
    high: float
    flush: tuple[bool, bool]
    uses: list[Use]


def cards(layout: Layout, fastening: Fastening) -> list[Card]:
    """Each distinct arrangement of two holes and more under the heads of one joint, once.

    Lead holes are drilled through these; what is drilled from a face that is marked in a set stands on its tiles.
    """
    found: dict[object, Card] = {}
    on_tiles = {(part.name, face) for part_set in layout.sets for part, face in _marked(part_set)}
    for part in layout.parts:
        holes = [hole for hole in fastening.holes(part) if hole.kind != "lead"]
        for face in bored_faces(part, holes):
            if (part.name, face) in on_tiles:
                continue
            for own in _by_mate(holes_on(part, face, holes)):
                _add(found, part, face, own)
    return list(found.values())


def _marked(part_set: PartSet) -> Iterator[tuple[Part, str]]:
    """The faces of a set that are up when it is marked."""
    for band in part_set.bands:
        yield from zip(part_set.members, band.faces, strict=True)


def _by_mate(holes: Iterable[HoleOnFace]) -> Iterator[list[HoleOnFace]]:
    mates: dict[tuple[str, str], list[HoleOnFace]] = {}
    for one in holes:
        mates.setdefault((one.hole.mate, one.hole.kind), []).append(one)
    for own in mates.values():
        if len(own) > 1 and own[-1].u - own[0].u <= LONGEST:
            yield own


def _add(found: dict[object, Card], part: Part, face: str, own: Sequence[HoleOnFace]) -> None:
    length, high, _ = face_up(part, face).local(part.blank).size()
    low, top = own[0].u - AROUND, own[-1].u + AROUND
    more = max(LEAST - (top - low), 0.0) / 2
    low, top = low - more, top + more
    if own[0].u <= TO_THE_END:
        low = 0.0
    if length - own[-1].u <= TO_THE_END:
        top = length
    low, top = max(low, 0.0), min(top, length)
    flush = (low <= TOUCH, top >= length - TOUCH)
    holes = tuple(attrs.evolve(one, u=one.u - low) for one in own)
    key = (steady(top - low, high), flush, tuple((steady(one.u, one.v), one.key) for one in holes))
    card = found.setdefault(key, Card(holes, top - low, high, flush, []))
    card.uses.append(Use(part, face, low))


def draw_card(layout: Layout, card: Card, number: int) -> Drawing:
    """A card with its number, its lower left corner in (0, 0)."""
    lines = _set(layout, card, number)
    top = card.high + PITCH * len(lines) + 2.0
    ring = ((0.0, 0.0), (card.wide, 0.0), (card.wide, top), (0.0, top))
    drawn: list[Primitive] = [Line(ring, "thin", closed=True)]
    drawn.append(Line(((0.0, card.high), (card.wide, card.high)), "hidden"))
    for at, flush in zip((0.0, card.wide), card.flush, strict=True):
        if flush:
            drawn.append(Line(((at, 0.0), (at, card.high)), "visible"))
    for one in card.holes:
        drawn += bored(one, (one.u, one.v), 1.0)
    for n, (line, bold) in enumerate(lines):
        drawn.append(Text((1.5, top - PITCH * (n + 1)), line, TEXT, bold=bold))
    return tuple(drawn)


def _set(layout: Layout, card: Card, number: int) -> list[tuple[str, bool]]:
    """What stands on the tab, in lines."""
    wide = card.wide - 3.0
    said = [(line, True) for line in wrap(f"Card {number}. Tab: fold over the edge.", TEXT, wide, bold=True)]
    sizes = dict.fromkeys(drilled(layout.frame.tape, one.hole) for one in card.holes)
    what = f"{counted(len(card.holes), 'hole')}: {'; '.join(sizes)}."
    words = [what, *_places(layout, card)]
    return said + [(line, False) for text in words for line in wrap(text, TEXT, wide)]


def _places(layout: Layout, card: Card) -> Iterator[str]:
    """On which parts it goes, which face, and where its left edge lies."""
    found: dict[tuple[str, str], list[str]] = {}
    for use in card.uses:
        role = use.part.slot.role
        if card.flush[0]:
            where = f"left edge flush with the {role.datum}"
        elif card.flush[1]:
            where = f"right edge flush with the {role.end}"
        else:
            where = f"left edge {layout.frame.tape.say(use.start)} from the {role.datum}"
        found.setdefault((f"{use.face} face", where), []).append(use.part.mark)
    for (face, where), marks in found.items():
        yield f"{ranges(list(dict.fromkeys(marks)))}, {face}, {where}."
