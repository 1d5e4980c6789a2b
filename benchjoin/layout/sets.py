"""Sets: what is clamped side by side, feet flush, and marked across together.

The legs of a piece are a set, in the order front row, back row, each from the left. Half-lapped rails of one piece that
run the same way form sets too. A set has a band for each kind of face that is marked: outer faces up, then the parts
rolled a quarter turn together, and so on. A band's lines are the union of its members' shoulder lines; each line
says which members take it. Sets that are alike share a page.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import count
from typing import Literal

import attrs

from ..lengths import TOUCH
from ..solids import Box
from .blanks import OPPOSITE
from .parts import Part, face_up

Edge = Literal["near", "far"]


@attrs.frozen
class Taker:
    """A member that takes a line: its place in the set, the mate the cut is for, and which edge of it. [mm]

    low and high are the extent of the shoulder across the face, from the lower edge on the page.
    """

    member: int
    mate: str
    edge: Edge
    low: float
    high: float


@attrs.frozen
class Line:
    """A shoulder line struck across a set, at its distance from the datum end. [mm]"""

    at: float
    takers: tuple[Taker, ...]


@attrs.frozen
class Waste:
    """Wood to be taken from a face: its box with the face up (u along, v across, w the depth), and its mate."""

    member: int
    mate: str
    box: Box


@attrs.frozen
class Band:
    """One way up of a set: which face of each member is up, the lines struck across, and the wood between them."""

    title: str
    faces: tuple[str, ...]
    lines: tuple[Line, ...]
    waste: tuple[Waste, ...]


@attrs.frozen(kw_only=True)
class PartSet:
    """Parts clamped together: letter, members in order, bands; alike holds the letters of all sets like it."""

    letter: str
    title: str
    members: tuple[Part, ...]
    bands: tuple[Band, ...]
    alike: tuple[str, ...] = ()

    @property
    def lines(self) -> tuple[Line, ...]:
        """The lines of all bands, in order from the datum end."""
        return tuple(sorted((line for band in self.bands for line in band.lines), key=lambda line: line.at))

    def __repr__(self) -> str:
        marks = f"{self.members[0].mark}…{self.members[-1].mark}"
        return f"<Set {self.letter}: {self.title}, {marks}, {len(self.lines)} lines, make {', '.join(self.alike)}>"


def letters() -> Iterator[str]:
    """A, B … Z, AA, AB …"""
    for number in count(1):
        word = ""
        while number:
            number, place = divmod(number - 1, 26)
            word = chr(65 + place) + word
        yield word


def with_marks(parts: Sequence[Part]) -> tuple[Part, ...]:
    """Parts with their marks: set letter and place in the set; a rail in no set goes on from its piece's legs."""
    marks: dict[str, str] = {}
    for letter, (_, members) in zip(letters(), _groups(parts), strict=False):
        marks.update((part.name, f"{letter}{n}") for n, part in enumerate(members, 1))
        if members[0].role == "leg":
            rest = [p for p in parts if p.piece == members[0].piece and p.role == "rail" and not p.cuts]
            marks.update((part.name, f"{letter}{n}") for n, part in enumerate(rest, len(members) + 1))
    return tuple(attrs.evolve(part, mark=marks[part.name]) for part in parts)


def make_sets(parts: Sequence[Part]) -> tuple[PartSet, ...]:
    """Sets of all pieces: legs of every piece first, then half-lapped rails."""
    sets = [
        PartSet(letter=letter, title=title, members=tuple(members), bands=tuple(_bands(members)))
        for letter, (title, members) in zip(letters(), _groups(parts), strict=False)
    ]
    return _with_alike(sets)


def _groups(parts: Sequence[Part]) -> list[tuple[str, list[Part]]]:
    """Titles and members of the sets, in the order of their letters."""
    pieces = sorted({part.piece for part in parts})
    groups = [("legs", [p for p in parts if p.piece == piece and p.role == "leg"]) for piece in pieces]
    for piece in pieces:
        for title, sides in RAIL_SETS.items():
            lapped = [p for p in parts if p.piece == piece and p.role == "rail" and p.side in sides and p.cuts]
            if lapped:
                groups.append((title, lapped))
    return groups


RAIL_SETS = {"long rails": ("front", "back"), "end rails": ("left", "right"), "cross rails": ("cross",)}


def _bands(members: Sequence[Part]) -> Iterator[Band]:
    titles = dict.fromkeys(_turn(part, face) for part in members for face in part.faces)
    for title in sorted(titles, key=TURNS.index):
        faces = tuple(_faced(part, title) for part in members)
        waste = tuple(_waste(members, faces))
        yield Band(title, faces, tuple(_lines(members, waste)), waste)


TURNS = ("outer faces up", "inner faces up", "end faces up", "bay faces up", "marked faces up", "other faces up")
"""Ways up of legs (end faces look to the ends of the frame, bay faces into a bay) and, last two, of rails."""


def _turn(part: Part, face: str) -> str:
    """Which way up a part lies when a face is up."""
    if part.role != "leg":
        return TURNS[4] if face == part.marked else TURNS[5]
    if face in (part.marked, OPPOSITE[part.marked]):
        return TURNS[0] if face == part.marked else TURNS[1]
    return TURNS[2] if face == ("right" if part.pair == "right" else "left") else TURNS[3]


def _faced(part: Part, title: str) -> str:
    """The face of a part that is up; a rail has edges, which are never up."""
    faces = OPPOSITE if part.role == "leg" else (part.marked, OPPOSITE[part.marked])
    return next(face for face in faces if _turn(part, face) == title)


def _waste(members: Sequence[Part], faces: Sequence[str]) -> Iterator[Waste]:
    for number, (part, face) in enumerate(zip(members, faces, strict=True)):
        for cut in part.cuts:
            if cut.face == face:
                yield Waste(number, cut.mate, face_up(part, face).local(cut.box))


def _lines(members: Sequence[Part], waste: Iterable[Waste]) -> Iterator[Line]:
    found: list[tuple[float, Taker]] = []
    for item in waste:
        (u0, low, _), (u1, high, _) = item.box.low, item.box.high
        if u0 > TOUCH:
            found.append((u0, Taker(item.member, item.mate, "near", low, high)))
        if u1 < members[item.member].length - TOUCH:
            found.append((u1, Taker(item.member, item.mate, "far", low, high)))
    found.sort(key=lambda pair: pair[0])
    while found:
        at = found[0][0]
        here = [taker for place, taker in found if place - at <= TOUCH]
        found = found[len(here) :]
        yield Line(at, tuple(sorted(here, key=lambda t: (t.member, t.edge))))


def _with_alike(sets: Sequence[PartSet]) -> tuple[PartSet, ...]:
    """Sets with the letters of all that are drawn by the same page."""
    keys = [_key(one) for one in sets]
    same = {key: tuple(s.letter for s, k in zip(sets, keys, strict=True) if k == key) for key in keys}
    return tuple(attrs.evolve(one, alike=same[key]) for one, key in zip(sets, keys, strict=True))


def _key(one: PartSet) -> tuple[object, ...]:
    sizes = tuple((part.identity, tuple(round(s, 6) for s in part.size)) for part in one.members)
    waste = tuple((b.title, w.member, _rounded(w.box)) for b in one.bands for w in b.waste)
    return (one.title, sizes, waste)


def _rounded(box: Box) -> tuple[float, ...]:
    return tuple(round(x, 6) for x in (*box.low, *box.high))
