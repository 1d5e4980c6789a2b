"""The notch: a housing cut across a leg that lets a rail in, flush or part of its thickness. The leg gives all."""

from __future__ import annotations

from ...frame.joints import Notch
from .meeting import Cut, Meeting, with_fit

KIND = "notch"
SHARES = True
"""Whether both want the same wood; otherwise they only touch."""


def let_in(joint: Notch, thickness: float, flush: float) -> float:
    """How deep the rail goes into the leg: flush with the thinnest of its level, or as deep as was said. [mm]"""
    return flush if joint.depth is None else min(joint.depth, flush)


def cuts(joint: Notch, meeting: Meeting) -> tuple[Cut, ...]:
    """The leg loses what the rail wants, and the fit."""
    if meeting.overlap is None:
        return ()
    box = with_fit(meeting, meeting.overlap)
    return (Cut(part=meeting.leg.name, mate=meeting.rail.name, face=meeting.rail.face, box=box, kind=KIND),)
