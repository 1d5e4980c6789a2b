"""What every joint is given and what it gives back.

A Meeting is a guest that comes to its host, both as blanks, with the box of wood that both want; a joint answers with
Cuts, boxes in the world, each taken from one part for the sake of another. What a joint must know is a Way: two
functions.
"""

from __future__ import annotations

from typing import Any, Protocol

import attrs

from ...frame.faces import AXIS, looks_down
from ...frame.joints import How
from ...lengths import TOUCH
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
    """What the host gives up for a guest: its own wood; fit and spare go on the shoulder away from its true edge."""
    more, host, axis = meeting.fit + meeting.guest.spare, meeting.host.box, meeting.host.axis
    if looks_down(meeting.guest.slot.true_edge):
        return box.ending(axis, high=smaller(box.high[axis] + more, host.high[axis]))
    return box.ending(axis, low=larger(box.low[axis] - more, host.low[axis]))


def lap(box: Box, guest: Box, along: int, fit: float) -> Box:
    """What the guest gives up for its host: the wood, and the fit along it on a closed shoulder."""
    low, high = box.low[along], box.high[along]
    if high < guest.high[along] - TOUCH:
        return box.ending(along, high=smaller(high + fit, guest.high[along]))
    return box.ending(along, low=larger(low - fit, guest.low[along]))


def open_to(box: Box, part: Box, face: str) -> Box:
    """A box of wood that a part gives up, out to one of its faces."""
    axis = AXIS[face]
    return box.ending(axis, low=part.low[axis]) if looks_down(face) else box.ending(axis, high=part.high[axis])
