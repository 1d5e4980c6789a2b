"""Cut round: a board gives up what a leg takes of it, right through, and keeps off it all round by the clearance."""

from __future__ import annotations

from ...frame.joints import CutRound
from ...lengths import TOUCH
from ...runs import larger, smaller
from ...solids import Box
from .meeting import Cut, Meeting


def let_in(joint: CutRound, thickness: float, flush: float) -> float:
    """It passes. [mm]"""
    return 0.0


def cuts(joint: CutRound, meeting: Meeting) -> tuple[Cut, ...]:
    """A corner where the leg takes an end of the board, or else a notch in its edge."""
    if meeting.overlap is None:
        return ()
    board, box = meeting.guest, meeting.overlap
    clear = meeting.fit if joint.clear is None else joint.clear
    length, width, through = board.slot.axes
    for axis in (length, width):
        low, high = box.low[axis] - clear, box.high[axis] + clear
        box = box.ending(axis, low=larger(low, board.box.low[axis]), high=smaller(high, board.box.high[axis]))
    box = box.ending(through, low=board.box.low[through], high=board.box.high[through])
    kind = "corner notch" if _at_an_end(box, board.box, length) else "edge notch"
    return (Cut(part=board.name, mate=meeting.host.name, face=board.slot.face, box=box, kind=kind),)


def _at_an_end(box: Box, board: Box, axis: int) -> bool:
    """Whether a cut runs out at an end of the board."""
    return bool(box.low[axis] <= board.low[axis] + TOUCH or box.high[axis] >= board.high[axis] - TOUCH)
