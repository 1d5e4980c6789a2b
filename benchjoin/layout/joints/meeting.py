"""What every joint is given and what it gives back.

A Meeting is a leg and a rail as blanks with the box of wood that both want; a joint answers with Cuts, boxes in the
world, each taken from one part for the sake of another.
"""

from __future__ import annotations

import attrs

from ...runs import larger, smaller
from ...solids import Box
from ..blanks import Blank, RailBlank


@attrs.frozen(kw_only=True)
class Meeting:
    """A rail that comes to a leg; overlap is the wood that both want, None where they only touch or miss. [mm]

    fit is the clearance of their joint; spare is how much wider than this rail the leg's notch is cut for its level.
    """

    leg: Blank
    rail: RailBlank
    overlap: Box | None
    fit: float
    spare: float = 0.0


@attrs.frozen(kw_only=True)
class Cut:
    """A box of wood that one part gives up for another; face is the face of the part from which it is cut."""

    part: str
    mate: str
    face: str
    box: Box
    kind: str


@attrs.frozen(kw_only=True)
class Joint:
    """A rail joined to a leg in one piece: its kind, what was cut for it, and the box that both wanted."""

    piece: int
    kind: str
    leg: str
    rail: str
    overlap: Box | None
    cuts: tuple[Cut, ...]


def with_fit(meeting: Meeting, box: Box) -> Box:
    """The notch for a rail: its own wood; fit and spare go on the shoulder away from the level's datum edge."""
    more = meeting.fit + meeting.spare
    (x0, y0, bottom), (x1, y1, top) = box.low, box.high
    if meeting.rail.slot.level.align == "bottoms":
        return Box((x0, y0, bottom), (x1, y1, smaller(top + more, meeting.leg.box.high[2])))
    return Box((x0, y0, larger(bottom - more, meeting.leg.box.low[2])), (x1, y1, top))
