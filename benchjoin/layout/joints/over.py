"""The over-notch: a bearer is notched over its rail and sits on it. The bearer gives all."""

from __future__ import annotations

from ...frame.faces import OPPOSITE
from ...frame.joints import Over
from .meeting import Cut, Meeting, lap, open_to


def let_in(joint: Over, thickness: float, flush: float) -> float:
    """How deep it comes down over its host: half of it, or as deep as was said. [mm]"""
    return thickness / 2 if joint.depth is None else joint.depth


def cuts(joint: Over, meeting: Meeting) -> tuple[Cut, ...]:
    """The bearer loses what both want, and the fit along it."""
    if meeting.overlap is None:
        return ()
    bearer, rail = meeting.guest, meeting.host
    face = OPPOSITE[bearer.slot.face]
    box = open_to(lap(meeting.overlap, bearer.box, bearer.axis, meeting.fit), bearer.box, face)
    return (Cut(part=bearer.name, mate=rail.name, face=face, box=box, kind=joint.word),)
