"""Done: how far each part is, and what is still to be made, marked or cut on it.

Plans of the work ask here, so that none of them asks for a part that lies finished on the bench. A part that is sized,
marked or cut needs no wood any more. One that is marked needs no marks, and one that is cut no cuts, but for those that
came into the design later: those are still open.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from ..frame.finished import STATES, State
from ..frame.frame import Frame
from .joints.meeting import Cut
from .parts import Part

Work = Literal["mark", "cut"]
DONE_AT: dict[Work, State] = {"mark": "marked", "cut": "cut"}
"""The state in which a part's marks are struck, and that in which its cuts are made; or any further one."""


def state_of(frame: Frame, part: Part) -> State | None:
    """How far a part is; None where it is still to be made."""
    done = frame.finished.get(part.name)
    return None if done is None else done.state


def to_make(frame: Frame, parts: Iterable[Part]) -> tuple[Part, ...]:
    """Those of some parts that are still to be made: neither sized nor further."""
    return tuple(part for part in parts if state_of(frame, part) is None)


def is_open(frame: Frame, part: Part, cut: Cut, work: Work) -> bool:
    """Whether a cut of a part is still to be marked, or to be made."""
    if not _reached(frame, part, work):
        return True
    return not any((cut.mate, cut.face) == (made.mate, made.face) for made in frame.finished[part.name].cuts)


def has_open(frame: Frame, part: Part, work: Work) -> bool:
    """Whether any cut of a part is still to be marked, or to be made; lines that take no wood are marked too."""
    if work == "mark" and part.touches and not _reached(frame, part, work):
        return True
    return any(is_open(frame, part, cut, work) for cut in part.cuts)


def _reached(frame: Frame, part: Part, work: Work) -> bool:
    """Whether the work on a part was done once."""
    done = frame.finished.get(part.name)
    return done is not None and STATES.index(done.state) >= STATES.index(DONE_AT[work])
