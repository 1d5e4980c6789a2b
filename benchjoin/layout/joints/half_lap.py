"""The half-lap: host and guest, a leg and its rail, say, both give up wood so that their faces finish flush.

From the face inwards the leg loses its share of the rail's thickness (of the thinnest rail of the level, so that one
depth serves them all) and the rail keeps it; behind that the rail loses the rest and the leg keeps it. The rail's lap
takes the leg's width and the fit, on the shoulder that stays closed, or away from the rail's datum end where both are.
"""

from __future__ import annotations

from ...frame.faces import AXIS, OPPOSITE, looks_down
from ...frame.joints import HalfLap
from .meeting import Cut, Meeting, lap, open_to, with_fit


def let_in(joint: HalfLap, thickness: float, flush: float) -> float:
    """How deep the rail goes into the leg: flush. [mm]"""
    return thickness


def cuts(joint: HalfLap, meeting: Meeting) -> tuple[Cut, ...]:
    """The leg loses the outer share, the rail the inner rest."""
    overlap, rail, leg = meeting.overlap, meeting.guest, meeting.host
    if overlap is None:
        return ()
    face = rail.slot.face
    axis, outer_first = AXIS[face], looks_down(face)
    low, high = overlap.low[axis], overlap.high[axis]
    depth = joint.share * min(rail.flush, high - low)
    cheek = low + depth if outer_first else high - depth
    near, far = overlap.ending(axis, high=cheek), overlap.ending(axis, low=cheek)
    outer, inner = (near, far) if outer_first else (far, near)
    if not leg.slot.upright:  # two that lie cross in slots, which are open to both sides
        outer, inner = open_to(outer, leg.box, face), open_to(inner, rail.box, OPPOSITE[face])
    own = lap(inner, rail.box, rail.axis, meeting.fit)
    return (
        Cut(part=leg.name, mate=rail.name, face=face, box=with_fit(meeting, outer), kind=joint.word),
        Cut(part=rail.name, mate=leg.name, face=OPPOSITE[face], box=own, kind=joint.word),
    )
