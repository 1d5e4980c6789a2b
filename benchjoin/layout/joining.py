"""Joining: each rail of a piece comes to its legs, and its joint says who gives up what."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from types import ModuleType

from ..frame.joints import Butt, HalfLap, Notch, Planted
from ..lengths import TOUCH
from ..runs import larger, smaller
from ..solids import Box
from .blanks import Blank, RailBlank
from .joints import butt, half_lap, notch, planted
from .joints.meeting import Joint, Meeting

JOINTS: Mapping[type, ModuleType] = {Notch: notch, HalfLap: half_lap, Butt: butt, Planted: planted}
"""A new joint is a file in joints/ and a line here."""


def let_in(joint: object, thickness: float, flush: float) -> float:
    """How deep a joint lets a rail of some thickness into its leg, flush being the depth of the thinnest. [mm]"""
    depth: float = JOINTS[type(joint)].let_in(joint, thickness, flush)
    return depth


def join(
    piece: int, legs: Mapping[str, Blank], rails: Mapping[str, RailBlank], fit: Callable[[str], float]
) -> Iterator[Joint]:
    """Joints of one piece, rail by rail in the order of description; a rail that misses a leg has none with it."""
    for rail in rails.values():
        kind = JOINTS[type(rail.slot.joint)]
        for name in rail.slot.legs:
            leg = legs[name]
            overlap = rail.box.meet(leg.box)
            meeting = Meeting(leg=leg, rail=rail, overlap=overlap, fit=fit(kind.KIND), spare=rail.spare)
            if meeting.overlap is not None if kind.SHARES else _touching(rail.box, leg.box):
                cuts = kind.cuts(rail.slot.joint, meeting)
                yield Joint(piece=piece, kind=kind.KIND, leg=name, rail=rail.name, overlap=meeting.overlap, cuts=cuts)


def _touching(a: Box, b: Box) -> bool:
    """Whether two boxes share a face or more, so that one can be fixed to the other."""
    gaps = [larger(p, q) - smaller(r, s) for p, q, r, s in zip(a.low, b.low, a.high, b.high, strict=True)]
    return all(gap <= TOUCH for gap in gaps) and sum(gap > -TOUCH for gap in gaps) <= 1
