"""What every joint is given and what it gives back.

A Meeting is a guest that comes to its host, both as blanks, with the box of wood that both want; a joint answers with
Cuts, boxes in the world, each taken from one part for the sake of another. What a joint must know is a Way: two
functions.
"""

from __future__ import annotations

from typing import Any, Protocol

import attrs

from ...frame.joints import How
from ...runs import larger, smaller
from ...solids import Box
from ..blank import Blank


@attrs.frozen(kw_only=True, eq=False, repr=False, slots=False)
class Meeting:
    """A guest that comes to its host; overlap is the wood that both want, None where they only touch. [mm]

    fit is the clearance of their joint.
    """

    host: Blank
    guest: Blank
    overlap: Box | None
    fit: float


@attrs.frozen(kw_only=True, slots=False)
class Cut:
    """A box of wood that one part gives up for another; face is the face of the part from which it is cut."""

    part: str
    mate: str
    face: str
    box: Box
    kind: str


class Way(Protocol):
    """How one kind of joint is worked out; a file of this folder is one. `joint` is its description."""

    def let_in(self, joint: Any, thickness: float, flush: float) -> float:
        """How deep it lets a guest of some thickness into its host, flush being the depth of the thinnest. [mm]"""

    def cuts(self, joint: Any, meeting: Meeting) -> tuple[Cut, ...]:
        """The wood that host and guest give up."""


@attrs.frozen(kw_only=True, slots=False)
class Joint:
    """A guest joined to its host in one piece: how, where they meet, and what is cut for it.

    contact is the box that both wanted, or the face on which they touch, which is a box without a thickness.
    """

    piece: int
    how: How
    host: str
    guest: str
    contact: Box
    cuts: tuple[Cut, ...]

    @property
    def kind(self) -> str:
        """Its name in the trade."""
        return self.how.word


def with_fit(meeting: Meeting, box: Box) -> Box:
    """The notch for a rail: its own wood; fit and spare go on the shoulder away from the level's datum edge."""
    more, leg = meeting.fit + meeting.guest.spare, meeting.host.box
    if meeting.guest.slot.true_edge == "bottom":
        return box.ending(2, high=smaller(box.high[2] + more, leg.high[2]))
    return box.ending(2, low=larger(box.low[2] - more, leg.low[2]))
