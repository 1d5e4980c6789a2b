"""The notch: a housing cut across a leg that lets a rail in, flush or part of its thickness. The leg gives all."""

from __future__ import annotations

from ...frame.joints import Notch
from .meeting import Cut, Meeting, with_fit


def let_in(joint: Notch, thickness: float, flush: float) -> float:
    """How deep the rail goes into the leg: flush with the thinnest of its level, or as deep as was said. [mm]"""
    return flush if joint.depth is None else min(joint.depth, flush)


def cuts(joint: Notch, meeting: Meeting) -> tuple[Cut, ...]:
    """The leg loses what the rail wants, and the fit."""
    if meeting.overlap is None:
        return ()
    leg, rail = meeting.host, meeting.guest
    box = with_fit(meeting, meeting.overlap)
    return (Cut(part=leg.name, mate=rail.name, face=rail.slot.face, box=box, kind=joint.word),)
