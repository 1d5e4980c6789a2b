"""Done, in words: which parts lie finished on the bench, by their marks, how far they are and what they are.

Every list of the work that leaves finished parts out says so below, so that nobody looks for them or makes them twice.
"""

from __future__ import annotations

from collections.abc import Iterable

from ..frame.finished import STATES, State
from ..frame.frame import Frame
from ..layout.done import has_open, state_of
from ..layout.parts import Part
from .called import called
from .marks import marks


def done_note(frame: Frame, parts: Iterable[Part]) -> str:
    """Those of some parts that are done, for the line that they stand in: 'done: A1 cut, A2 sized'; or nothing."""
    told = [f"{marks(part.mark for part in own)} {state}" for state, own in _by_state(frame, parts)]
    between = "; " if any("," in words for words in told) else ", "
    return f"done: {between.join(told)}" if told else ""


def done_notes(frame: Frame, parts: Iterable[Part]) -> tuple[str, ...]:
    """Those of some parts that are done, as a note below a list: 'Done: A1, A2 cut (front leg).'; or none."""
    told = [f"{marks(part.mark for part in own)} {state} ({called(own)})" for state, own in _by_state(frame, parts)]
    return (f"Done: {'; '.join(told)}.",) if told else ()


def marked_notes(frame: Frame, parts: Iterable[Part]) -> tuple[str, ...]:
    """Those of some parts whose marks are all struck, as a note for what marks the others; or none."""
    return done_notes(frame, (part for part in parts if part.cuts and not has_open(frame, part, "mark")))


def _by_state(frame: Frame, parts: Iterable[Part]) -> list[tuple[State, list[Part]]]:
    """Parts by how far they are, the furthest first."""
    found: dict[State, list[Part]] = {}
    for part in parts:
        state = state_of(frame, part)
        if state is not None:
            found.setdefault(state, []).append(part)
    return [(state, found[state]) for state in reversed(STATES) if state in found]
