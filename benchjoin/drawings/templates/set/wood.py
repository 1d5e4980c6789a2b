"""The wood of a set as it lies clamped: outlines of the faces that are up, what breaks out on them, the struck lines.

The datum ends lie at x = 0, the first part on top, its upper edge at y = 0. Pages of a set and tiles draw the same wood
and differ in where the words stand.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from ....drafting.linework import Linework
from ....drafting.primitives import Line, Primitive
from ....layout.on_face import OnFace
from ....layout.parts import Part, face_up
from ....layout.sets import Band, PartSet
from ....lengths import TOUCH
from ....readings import Tape
from ....shop.fasteners.fasten import Fastening
from ....shop.fasteners.on_face import HoleOnFace, drilled, holes_on
from ...views.bored import bored
from ..marking import Rows

APART = 2 * Linework().wide
"""Wide lines that lie closer run together. [mm]"""


def ways_up(part_set: PartSet) -> tuple[Band, ...]:
    """The bands of a set; of one that no wood is taken from, the one way up of its parts."""
    return part_set.bands or (
        Band(part_set.members[0].slot.role.faces["marked"], tuple(part.marked for part in part_set.members), (), ()),
    )


def face_rows(members: Sequence[Part], band: Band, scale: float = 1.0) -> Rows:
    """Lower and upper edge of each member on the page, the first on top. [mm]"""
    rows, top = [], 0.0
    for part, face in zip(members, band.faces, strict=True):
        high = face_width(part, face) * scale
        rows.append((top - high, top))
        top -= high
    return rows


def face_width(part: Part, face: str) -> float:
    """Width of a face of a part. [mm]"""
    return face_up(part, face).local(part.blank).size()[1]


def openings(part: Part, face: str, low: float, scale: float = 1.0) -> Iterator[Line]:
    """Thin outlines where cuts from other faces break out on the face that is up."""
    turned = face_up(part, face)
    length, width, _ = turned.local(part.blank).size()
    for cut in part.cuts:
        box = turned.local(cut.box)
        (u0, v0, w0), (u1, v1, _) = box.low, box.high
        if cut.face != face and w0 <= TOUCH:
            x0, x1 = max(u0, 0.0) * scale, min(u1, length) * scale
            y0, y1 = low + max(v0, 0.0) * scale, low + min(v1, width) * scale
            yield Line(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), "thin", closed=True)


def struck(
    members: Sequence[Part], band: Band, rows: Rows, scale: float = 1.0, own: Collection[int] | None = None
) -> Iterator[Line]:
    """Every shoulder line across the parts that take it, or some of them.

    It is thin where a mate only comes to the face, and on a reduced picture where a wide one would run together with
    one before it or with an end of the part.
    """
    wide = [[0.0, part.length * scale] if scale < 1.0 else [] for part in members]
    for line in band.lines:
        x = line.at * scale
        for taker in (taker for taker in line.takers if own is None or taker.member in own):
            low = rows[taker.member][0]
            ends = ((x, low + taker.low * scale), (x, low + taker.high * scale))
            is_wide = taker.wood and not any(TOUCH < abs(x - at) < APART for at in wide[taker.member])
            wide[taker.member] += [x] if is_wide and scale < 1.0 else []
            yield Line(ends, "visible" if is_wide else "thin")


def box_of(cut: OnFace, low: float, scale: float = 1.0) -> tuple[float, float, float, float]:
    """Where a cut lies on the page, the lower edge of its face at a height. [mm]"""
    return cut.start * scale, low + cut.low * scale, cut.end * scale, low + cut.high * scale


def holes_of(fastening: Fastening | None, members: Sequence[Part], band: Band) -> list[tuple[HoleOnFace, ...]]:
    """For each member the holes that are drilled from its face that is up."""
    if fastening is None:
        return [() for _ in members]
    pairs = zip(members, band.faces, strict=True)
    return [holes_on(part, face, fastening.holes(part)) for part, face in pairs]


def bores(holes: Sequence[Sequence[HoleOnFace]], rows: Rows, own: Collection[int] | None = None) -> Iterator[Primitive]:
    """Centre crosses of the holes of each member, or of some of them, at full size."""
    for number, (each, (low, _)) in enumerate(zip(holes, rows, strict=True)):
        if own is None or number in own:
            for one in each:
                yield from bored(one, (one.u, low + one.v), 1.0)


def bores_told(tape: Tape, holes: Sequence[Sequence[HoleOnFace]]) -> str:
    """What the crosses are drilled to, in a sentence; nothing where there are none."""
    sizes = dict.fromkeys(drilled(tape, one.hole) for each in holes for one in each)
    if not sizes:
        return ""
    return (
        f"Crosses in circles are holes, drilled from this face, each circle as wide as its drill: {'; '.join(sizes)}."
    )
