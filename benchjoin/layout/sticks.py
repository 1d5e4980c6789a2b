"""A story stick: one strip that carries every mark of a leg or a half-lapped rail, a lane for each face that is cut.

The strip is laid along the part with its left end at the foot and pricked through at its lines; each lane says which
face it is for. Legs that are mirror images share a stick, since distances from the foot are the same on both, and a
leg that takes only some of a stick's lanes shares it too. A part that is marked already needs none.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs

from ..frame.identity import in_short
from ..frame.roles import rank
from ..lengths import TOUCH, steady
from .done import has_open
from .layout import Layout
from .on_face import OnFace
from .parts import Part


@attrs.frozen(kw_only=True, slots=False)
class Lane:
    """The marks of one face, rising, and the mate of each; the parts it is for, each with that face of its own.

    also names the marks whose lines hold on another face too, where something comes to the parts and takes no wood.
    """

    called: str
    faces: tuple[tuple[Part, str], ...]
    cuts: tuple[OnFace, ...]
    mates: tuple[str, ...]
    also: tuple[tuple[str, tuple[str, ...]], ...] = ()

    @property
    def marks(self) -> tuple[str, ...]:
        """The marks of its parts."""
        return tuple(part.mark for part, _ in self.faces)

    @property
    def key(self) -> tuple[object, ...]:
        """What lanes that are the same have in common."""
        sizes = (steady(cut.start, cut.end, cut.depth) for cut in self.cuts)
        return (self.called, self.mates, self.also, *sizes)

    @property
    def title(self) -> str:
        """'outer face', or 'outer face; inner face, no waste'."""
        return "; ".join((self.called, *(f"{called}, no waste" for called, _ in self.also)))


@attrs.frozen(kw_only=True, slots=False)
class Stick:
    """A stick: its lanes, and the parts that it is for."""

    lanes: tuple[Lane, ...]
    parts: tuple[Part, ...]

    @property
    def length(self) -> float:
        """Length of its parts. [mm]"""
        return self.parts[0].length

    @property
    def edges(self) -> tuple[float, ...]:
        """Places of all its lines, both ends among them, rising. [mm]"""
        found = {e for lane in self.lanes for cut in lane.cuts for e in (cut.start, cut.end)}
        return tuple(sorted({0.0, self.length, *found}))


def sticks(layout: Layout) -> tuple[Stick, ...]:
    """The sticks of a layout, legs first: parts share one where all their marks are on it."""
    found: list[Stick] = []
    for part, lanes in sorted(_marked(layout), key=lambda pair: -len(pair[1])):
        place = next((n for n, stick in enumerate(found) if _takes(stick, part, lanes)), None)
        if place is None:
            found.append(Stick(lanes=lanes, parts=(part,)))
        else:
            found[place] = _joined(found[place], part, lanes)
    order = {part.name: n for n, part in enumerate(layout.parts)}
    return tuple(sorted(found, key=lambda s: (rank(s.parts[0].slot.role), min(order[part.name] for part in s.parts))))


def _marked(layout: Layout) -> Iterator[tuple[Part, tuple[Lane, ...]]]:
    """Every part that has a cut still to be marked, with its lanes."""
    for marked_set in layout.sets:
        for part in (member for member in marked_set.members if has_open(layout.frame, member, "mark")):
            bands = (*marked_set.bands, *marked_set.beside)
            found = _shared([lane for lane in (_lane(part, band.called) for band in bands) if lane.cuts])
            if found:
                yield part, found


def _shared(lanes: Sequence[Lane]) -> tuple[Lane, ...]:
    """The lanes, but one whose lines all stand on another, and that takes no wood, is told there."""
    found: list[Lane] = []
    for lane in lanes:
        fine = not any(cut.wood for cut in lane.cuts)
        place = next((n for n, other in enumerate(found) if fine and _holds(other, lane)), None)
        if place is None:
            found.append(lane)
        else:
            found[place] = attrs.evolve(found[place], also=(*found[place].also, (lane.called, lane.mates)))
    return tuple(found)


def _holds(lane: Lane, other: Lane) -> bool:
    """Whether every mark of another lane lies between the two lines of a mark of this one."""
    own = {steady(cut.start, cut.end) for cut in lane.cuts}
    return all(steady(cut.start, cut.end) in own for cut in other.cuts)


def _lane(part: Part, called: str) -> Lane:
    face = part.face_called(called)
    cuts = part.marks_on(face)
    mates = tuple(_called(part, cut.mate) for cut in cuts)
    return Lane(called=called, faces=((part, face),), cuts=cuts, mates=mates)


def _called(part: Part, mate: str) -> str:
    """A mate in short; on the part's own level by what it is, so that levels that are alike share a stick."""
    level, slash, member = mate.partition("/")
    if slash and level == part.level:
        return member.rstrip("0123456789 ")
    return in_short(mate, along_length=part.slot.long)


def _takes(stick: Stick, part: Part, lanes: Sequence[Lane]) -> bool:
    """Whether a stick has all the lanes of a part."""
    known = {lane.key for lane in stick.lanes}
    same = part.slot.role is stick.parts[0].slot.role and abs(part.length - stick.length) <= TOUCH
    return same and all(lane.key in known for lane in lanes)


def _joined(stick: Stick, part: Part, lanes: Sequence[Lane]) -> Stick:
    """The stick, for one part more."""
    own = {lane.key: lane for lane in lanes}
    wider = tuple(
        attrs.evolve(lane, faces=(*lane.faces, *own[lane.key].faces)) if lane.key in own else lane
        for lane in stick.lanes
    )
    return attrs.evolve(stick, lanes=wider, parts=(*stick.parts, part))
