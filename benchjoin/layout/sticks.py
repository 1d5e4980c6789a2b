"""A story stick: one strip that carries every mark of a leg or a half-lapped rail, a lane for each face that is cut.

The strip is laid along the part with its left end at the foot and pricked through at its lines; each lane says which
face it is for. Legs that are mirror images share a stick, since distances from the foot are the same on both, and a
leg that takes only some of a stick's lanes shares it too.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs

from .layout import Layout
from .parts import Part
from .sets import Waste


@attrs.frozen
class Notch:
    """What a lane shows of a notch: from and to along the part, depth, and what comes into it. [mm]"""

    start: float
    end: float
    depth: float
    mate: str


@attrs.frozen(kw_only=True)
class Lane:
    """The notches of one face: how the part lies, and the parts that it is for, each with that face of its own."""

    title: str
    faces: tuple[tuple[Part, str], ...]
    notches: tuple[Notch, ...]

    @property
    def marks(self) -> tuple[str, ...]:
        """The marks of its parts."""
        return tuple(part.mark for part, _ in self.faces)

    @property
    def key(self) -> tuple[object, ...]:
        """What lanes that are the same have in common."""
        return self.title, *((round(n.start, 6), round(n.end, 6), round(n.depth, 6), n.mate) for n in self.notches)


@attrs.frozen(kw_only=True)
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
        found = {e for lane in self.lanes for n in lane.notches for e in (n.start, n.end)}
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
    return tuple(sorted(found, key=lambda s: (s.parts[0].role != "leg", min(order[part.name] for part in s.parts))))


def _marked(layout: Layout) -> Iterator[tuple[Part, tuple[Lane, ...]]]:
    """Every part that is cut, with its lanes."""
    for one in layout.sets:
        for number, part in enumerate(one.members):
            found = []
            for band in one.bands:
                notches = tuple(_notches(part, number, band.waste))
                if notches:
                    title = band.title.removesuffix("s up")
                    found.append(Lane(title=title, faces=((part, band.faces[number]),), notches=notches))
            if found:
                yield part, tuple(found)


def _notches(part: Part, number: int, waste: Sequence[Waste]) -> Iterator[Notch]:
    for item in sorted((w for w in waste if w.member == number), key=lambda w: w.box.low[0]):
        (start, _, near), (end, _, far) = item.box.low, item.box.high
        yield Notch(max(start, 0.0), min(end, part.length), far - max(near, 0.0), _mate(part, item.mate))


def _mate(part: Part, mate: str) -> str:
    """The level of a leg's rail; of a rail's leg what it has in common with that of the rail opposite."""
    if part.role == "leg":
        return mate.partition("/")[0]
    row, _, pair = mate.partition(" ")
    return pair if part.side in ("front", "back") else f"{row} leg"


def _takes(stick: Stick, part: Part, lanes: Sequence[Lane]) -> bool:
    """Whether a stick has all the lanes of a part."""
    known = {lane.key for lane in stick.lanes}
    same = part.role == stick.parts[0].role and abs(part.length - stick.length) < 1e-6
    return same and all(lane.key in known for lane in lanes)


def _joined(stick: Stick, part: Part, lanes: Sequence[Lane]) -> Stick:
    """The stick, for one part more."""
    own = {lane.key: lane for lane in lanes}
    wider = tuple(
        attrs.evolve(lane, faces=(*lane.faces, *own[lane.key].faces)) if lane.key in own else lane
        for lane in stick.lanes
    )
    return attrs.evolve(stick, lanes=wider, parts=(*stick.parts, part))
