"""The half-lap: leg and rail both give up wood so that their faces finish flush.

From the face inwards the leg loses its share of the rail's thickness (of the thinnest rail of the level, so that one
depth serves them all) and the rail keeps it; behind that the rail loses the rest and the leg keeps it. The rail's lap
takes the leg's width and the fit, on the shoulder that stays closed, or away from the rail's datum end where both are.
"""

from __future__ import annotations

from ...frame.joints import HalfLap
from ...lengths import TOUCH
from ...runs import larger, smaller
from ...solids import Box
from ..blanks import OPPOSITE
from .meeting import Cut, Meeting, with_fit

KIND = "half-lap"
SHARES = True
"""Whether both want the same wood; otherwise they only touch."""


def let_in(joint: HalfLap, thickness: float, flush: float) -> float:
    """How deep the rail goes into the leg: flush. [mm]"""
    return thickness


def cuts(joint: HalfLap, meeting: Meeting) -> tuple[Cut, ...]:
    """The leg loses the outer share, the rail the inner rest."""
    overlap, rail, leg = meeting.overlap, meeting.rail, meeting.leg
    if overlap is None:
        return ()
    axis = 1 if rail.slot.long else 0
    low, high = overlap.low[axis], overlap.high[axis]
    outer_first = rail.face in ("front", "left")
    depth = joint.share * min(rail.flush, high - low)
    cheek = low + depth if outer_first else high - depth
    near, far = _between(overlap, axis, low, cheek), _between(overlap, axis, cheek, high)
    outer, inner = (near, far) if outer_first else (far, near)
    lap = _lap(inner, rail.box, 1 - axis, meeting.fit)
    return (
        Cut(part=leg.name, mate=rail.name, face=rail.face, box=with_fit(meeting, outer), kind=KIND),
        Cut(part=rail.name, mate=leg.name, face=OPPOSITE[rail.face], box=lap, kind=KIND),
    )


def _between(box: Box, axis: int, low: float, high: float) -> Box:
    """The box, cut down to an interval of one axis."""
    a, b = list(box.low), list(box.high)
    a[axis], b[axis] = low, high
    return Box((a[0], a[1], a[2]), (b[0], b[1], b[2]))


def _lap(box: Box, rail: Box, along: int, fit: float) -> Box:
    """The rail's lap: the overlap, and the fit along the rail on a closed shoulder."""
    low, high = box.low[along], box.high[along]
    if high < rail.high[along] - TOUCH:
        return _between(box, along, low, smaller(high + fit, rail.high[along]))
    return _between(box, along, larger(low - fit, rail.low[along]), high)
