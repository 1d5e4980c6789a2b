"""Sets: what is clamped side by side, feet flush, and marked across together.

The legs of a piece are a set, in the order front row, back row, each from the left. Half-lapped rails of one piece
that run the same way form sets too, with a letter of their own; the marks of their members go on from those of the
piece's legs (A5, A6 …), so that every part says which piece it belongs to. Boards and bearers that take the same lines
are a set of the whole batch (`gangs`). A set has a band for each kind of face that is marked: outer faces up, then the
parts rolled a quarter turn together, and so on. A band's lines are the union of its members' shoulder lines; each line
says which members take it. Sets that are alike share a page.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Literal

import attrs

from ..display import page
from ..lengths import TOUCH, steady
from .gangs import gangs, letters
from .on_face import OnFace
from .parts import Part

Edge = Literal["near", "far"]


@attrs.frozen(slots=False)
class Taker:
    """A member that takes a line: its place in the set, the mate the cut is for, and which edge of it. [mm]

    low and high are the extent of the shoulder across the face, from the lower edge on the page; wood is whether waste
    lies beside it, as it does not where the mate only comes to the face.
    """

    member: int
    mate: str
    edge: Edge
    low: float
    high: float
    wood: bool = True


@attrs.frozen(slots=False)
class Line:
    """A shoulder line struck across a set, at its distance from the datum end. [mm]"""

    at: float
    takers: tuple[Taker, ...]


@attrs.frozen(slots=False)
class Waste:
    """Wood to be taken from a face of a member, by its place in the set; or a rail that comes to it and takes none."""

    member: int
    cut: OnFace


@attrs.frozen(slots=False)
class Band:
    """One way up of a set: what the faces that are up are called, which of each member it is, lines, and waste.

    touches are the places where a mate comes to the face and takes no wood.
    """

    called: str
    faces: tuple[str, ...]
    lines: tuple[Line, ...]
    waste: tuple[Waste, ...]
    touches: tuple[Waste, ...] = ()

    @property
    def title(self) -> str:
        """Outer faces up."""
        return f"{self.called}s up"


@attrs.frozen(kw_only=True, slots=False)
class PartSet:
    """Parts clamped together: letter, members in order, bands; alike holds the letters of all sets like it.

    beside are the faces that no wood is taken from while it is from others: what comes to them is told in words, and
    its lines are carried round or pricked from a stick. Of a set that no wood is taken from they are bands.
    """

    letter: str
    title: str
    members: tuple[Part, ...]
    bands: tuple[Band, ...]
    beside: tuple[Band, ...] = ()
    alike: tuple[str, ...] = ()

    @property
    def lines(self) -> tuple[Line, ...]:
        """The lines of all bands, in order from the datum end."""
        return tuple(sorted((line for band in self.bands for line in band.lines), key=lambda line: line.at))

    def _repr_html_(self) -> str:
        return page("set_page", self)

    def __repr__(self) -> str:
        marks = f"{self.members[0].mark}…{self.members[-1].mark}"
        return f"<Set {self.letter}: {self.title}, {marks}, {len(self.lines)} lines, make {', '.join(self.alike)}>"


def make_sets(parts: Sequence[Part], firsts: Mapping[int, int]) -> tuple[PartSet, ...]:
    """Sets of all pieces: what is clamped whole (legs) of every piece first, then what is cut of the rest.

    firsts names for each piece the first one that is like it in every size.
    """
    found = gangs(parts)
    keys = [(gang.title, -n if gang.shared else firsts[gang.members[0].piece]) for n, gang in enumerate(found)]
    bands = {key: tuple(_bands(gang.members)) for key, gang in reversed([*zip(keys, found, strict=True)])}
    looks = {key: _look(gang.members, bands[key]) for key, gang in zip(keys, found, strict=True)}
    alike: dict[tuple[object, ...], list[str]] = {}
    for letter, key in zip(letters(), keys, strict=False):
        alike.setdefault((key[0], looks[key]), []).append(letter)
    return tuple(
        PartSet(
            letter=letter,
            title=gang.title,
            members=gang.members,
            bands=_worked(bands[key]),
            beside=tuple(band for band in bands[key] if band not in _worked(bands[key])),
            alike=tuple(alike[gang.title, looks[key]]),
        )
        for letter, key, gang in zip(letters(), keys, found, strict=False)
    )


def of_members(part_set: PartSet, numbers: Sequence[int]) -> PartSet:
    """A set of some members alone, with the faces up that it has."""
    members = tuple(part_set.members[number] for number in numbers)
    called = {band.called for band in part_set.bands}
    bands = tuple(band for band in _bands(members) if band.called in called)
    beside = {band.called for band in part_set.beside}
    own = tuple(band for band in _bands(members) if band.called in beside)
    return attrs.evolve(part_set, members=members, bands=bands, beside=own)


def _bands(members: Sequence[Part]) -> Iterator[Band]:
    ways = dict.fromkeys(part.face_name(face) for part in members for face in part.marked_faces)
    order = list(members[0].slot.role.faces.values())
    for called in sorted(ways, key=order.index):
        faces = tuple(part.face_called(called) for part in members)
        up = tuple(enumerate(zip(members, faces, strict=True)))
        waste = tuple(Waste(number, cut) for number, (part, face) in up for cut in part.cuts_on(face))
        touches = tuple(Waste(number, touch) for number, (part, face) in up for touch in part.touches_on(face))
        yield Band(called, faces, tuple(_lines([*waste, *touches])), waste, touches)


def _worked(bands: Sequence[Band]) -> tuple[Band, ...]:
    """Those from which wood is taken; all, if it is from none."""
    return tuple(band for band in bands if band.waste) or tuple(bands)


def _lines(waste: Iterable[Waste]) -> Iterator[Line]:
    """Shoulders of all members from the datum end; those that lie within touch are one line."""
    found = []
    for item in waste:
        cut = item.cut
        ends: tuple[tuple[Edge, float, bool], ...] = (
            ("near", cut.start, cut.open_start),
            ("far", cut.end, cut.open_end),
        )
        for edge, at, is_open in ends:
            if not is_open:
                found.append((at, Taker(item.member, cut.mate, edge, cut.low, cut.high, cut.wood)))
    here: list[tuple[float, Taker]] = []
    for at, taker in sorted(found, key=lambda pair: pair[0]):
        if here and at - here[0][0] > TOUCH:
            yield _line(here)
            here = []
        here.append((at, taker))
    if here:
        yield _line(here)


def _line(here: Sequence[tuple[float, Taker]]) -> Line:
    return Line(here[0][0], tuple(sorted((taker for _, taker in here), key=lambda t: (t.member, t.edge))))


def _look(members: Sequence[Part], bands: Sequence[Band]) -> tuple[object, ...]:
    """What sets have in common that are drawn by the same page. [mm, to 1 nm]"""
    names = (part.role if part.slot.role.shared else part.identity for part in members)
    sizes = tuple((name, steady(*part.size)) for name, part in zip(names, members, strict=True))
    marked = tuple(
        (band.called, w.member, w.cut.wood, steady(*w.cut.box.low, *w.cut.box.high))
        for band in bands
        for w in (*band.waste, *band.touches)
    )
    return (sizes, marked)
