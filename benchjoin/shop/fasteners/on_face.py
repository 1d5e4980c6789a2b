"""Holes as one sees them who looks at the face from which they are drilled, the part with its datum end on the left."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import attrs

from ...frame.faces import OUT
from ...layout.parts import Part, face_up
from ...lengths import steady
from ...phrases import counted, listed
from ...readings import Tape
from ...solids import Box
from .fixing import Hole
from .lists import FINE


@attrs.frozen
class HoleOnFace:
    """A hole on its face: how far from the datum end, how far from the lower edge as it is seen. [mm]

    along tells that a slot runs along the part, not across it.
    """

    u: float
    v: float
    hole: Hole
    along: bool

    @property
    def key(self) -> tuple[object, ...]:
        """For what is alike."""
        hole = self.hole
        return (hole.kind, *steady(hole.diameter, hole.depth, hole.slot, hole.sunk))


def face_of(part: Part, hole: Hole) -> str:
    """The face that a hole is drilled from; also an end."""
    del part
    return next(face for face, out in OUT.items() if all(a == 0.0 - b for a, b in zip(out, hole.way, strict=True)))


def holes_on(part: Part, face: str, holes: Iterable[Hole]) -> tuple[HoleOnFace, ...]:
    """The holes of a part that are drilled from one of its long faces, from the datum end on."""
    turned = face_up(part, face)
    found = []
    for hole in holes:
        if face_of(part, hole) == face:
            at = turned.local(Box(hole.start, hole.start)).low
            found.append(HoleOnFace(at[0], at[1], hole, along=_runs_along(part, hole)))
    return tuple(sorted(found, key=lambda one: (round(one.u, 4), one.v)))


def _runs_along(part: Part, hole: Hole) -> bool:
    """Whether a slot runs along its part: it lies across the grain of the board that moves, which is the other one."""
    del hole
    return part.slot.role.word == "cleat"


def bored_faces(part: Part, holes: Iterable[Hole]) -> tuple[str, ...]:
    """The long faces of a part that holes are drilled from."""
    faces = dict.fromkeys(face_of(part, hole) for hole in holes)
    ends = {face for face, out in OUT.items() if out[part.slot.axes[0]]}
    return tuple(face for face in faces if face not in ends)


def drilled(tape: Tape, hole: Hole) -> str:
    """What is drilled: "11/64 through, countersunk", "5/64, 3/8 deep"."""
    fine = FINE[tape.unit]
    size = fine.read(hole.diameter)
    if hole.kind == "lead":
        return f"{size}, {tape.read(hole.depth)} deep"
    slot = f", a slot {tape.read(hole.slot)} long" if hole.slot else ""
    return f"{size} through{slot}{', countersunk' if hole.sunk else ''}"


def told(tape: Tape, part: Part, holes: Sequence[Hole], most: int = 12) -> tuple[str, ...]:
    """The holes of a part in words, face by face: how far from the datum end × from the lower edge of its view."""
    lines = []
    for face in bored_faces(part, holes):
        alike: dict[tuple[object, ...], list[HoleOnFace]] = {}
        for one in holes_on(part, face, holes):
            alike.setdefault(one.key, []).append(one)
        for own in alike.values():
            places = [f"{tape.read(one.u)} × {tape.read(one.v)}" for one in own]
            rest = f" and {counted(len(places) - most, 'more')}" if len(places) > most else ""
            where = f"{', '.join(places[:most])}{rest}" if rest or len(places) > 2 else listed(places)
            lines.append(f"{counted(len(own), 'hole')} from the {face}, {drilled(tape, own[0].hole)}: {where}.")
    lines += [f"{line}" for line in _at_ends(tape, part, holes)]
    return tuple(lines)


def _at_ends(tape: Tape, part: Part, holes: Sequence[Hole]) -> list[str]:
    """Holes in the ends: drilled through the other part, which is their guide."""
    long_faces = set(bored_faces(part, holes))
    own = [hole for hole in holes if face_of(part, hole) not in long_faces]
    sizes = dict.fromkeys(drilled(tape, hole) for hole in own)
    return [f"{counted(len(own), 'hole')} in the ends, {listed(list(sizes))}: through the other part."] if own else []
