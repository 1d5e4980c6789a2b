"""Ways in: how each part comes to its place, told by the face through which it leaves it again.

What stands leaves away from the middle of the frame. A guest leaves through the face from which its notch is cut, or
off the face that it lies on; what runs between two rows that go apart stays, and they leave it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from ..frame.faces import OUT
from ..solids import Vector, vector
from .layout import Layout
from .parts import Part

STAYS: Vector = (0.0, 0.0, 0.0)


def ways_out(layout: Layout, piece: int = 1) -> dict[str, Vector]:
    """The way each part of a piece leaves its hosts, by identity; no way at all for what stays.

    Raises
    ------
    AddressError
        If there is no such piece.
    """
    through = {cut.mate: cut.face for joint in layout.joints_of(piece) for cut in joint.cuts if cut.part == joint.host}
    return {part.identity: _way_out(part, through) for part in layout.piece(piece)}


def _way_out(part: Part, through: Mapping[str, str]) -> Vector:
    slot = part.slot
    if not slot.hosts:
        return OUT[slot.side]
    if part.identity in through:
        return OUT[through[part.identity]]
    return STAYS if slot.between and not slot.long else OUT[slot.face]


def drawn_apart(layout: Layout, step: float, piece: int = 1) -> dict[str, Vector]:
    """How far each part is moved so that all stand a step off their hosts. [mm]

    What hosts have in common their guests follow; of what they have not, as far as it goes their own way.

    Raises
    ------
    AddressError
        If there is no such piece.
    """
    ways = ways_out(layout, piece)
    found: dict[str, Vector] = {}
    for part in layout.piece(piece):
        bases = {found[name] for _, names in part.slot.joints for name in names if name in found}
        way = ways[part.identity]
        base = bases.pop() if len(bases) == 1 else _farthest(bases, way)
        found[part.identity] = vector(a * step + b for a, b in zip(way, base, strict=True))
    return found


def _farthest(bases: Iterable[Vector], way: Vector) -> Vector:
    """How far hosts go along the way of their guest, at most. [mm]"""
    far = max((sum(a * b for a, b in zip(base, way, strict=True)) for base in bases), default=0.0)
    return vector(max(far, 0.0) * a for a in way)
