"""Outranked values: what was given and changes nothing, because something else is better known.

A size that was measured holds over one that is drawn, a part that is finished stays as it was, a clear with a size
takes no share. Nobody is left to believe that a value counts which does not.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from ...findings import Finding, Severity
from ...frame.clear import Clear
from ...frame.fit import FITTED
from ...frame.frame import Frame
from ...frame.identity import of_piece
from ...frame.measured import SECTION
from ...frame.slots import Slot
from ...frame.stack import clear_name
from ...sources import COMMON_PRACTICE
from ...trade.practice import MILLED_OFF
from ..placing.sizes import best_known
from .piece import Piece

WORDS = {"width": "wide", "thickness": "thick", "length": "long"}


def measured_for_all(piece: Piece) -> Iterator[Finding]:
    """Sizes measured by a name without a piece that a finished part does not take."""
    frame, hair = piece.frame, piece.frame.tape.hair
    for slot in frame.slots():
        name = of_piece(piece.number, slot.name)
        done, own = frame.finished.get(name), frame.measured.get(name, {})
        if done is None:
            continue
        known = {**best_known(frame, slot, piece.number), "length": done.length}
        for field, size in frame.measured.get(slot.name, {}).items():
            if field not in own and abs(size - known[field]) > hair:
                sentence = (
                    f"{piece.where(slot.name)} stays {piece.say(known[field])} {WORDS[field]}, as it was when it was "
                    f"{done.state}; the {piece.say(size)} measured for every piece is not taken for it. If it measures "
                    f'that by now, measure it by its own name: "{name}.{field}".'
                )
                numbers = {"measured": size, "kept": known[field]}
                yield _finding(piece, "warning", "measure not taken", slot, sentence, numbers)


def drawn_otherwise(piece: Piece) -> Iterator[Finding]:
    """Sizes that are drawn far from what is measured, or was finished: the wood holds."""
    for slot in piece.frame.slots():
        drawn, known = {"thickness": slot.thickness, "width": slot.width}, best_known(piece.frame, slot, piece.number)
        for field in SECTION:
            if abs(drawn[field] - known[field]) > MILLED_OFF:
                sentence = (
                    f"{piece.where(slot.name)} is drawn {piece.say(drawn[field])} {WORDS[field]} and measures "
                    f"{piece.say(known[field])}; what is measured holds. Take the measurement away if another piece of "
                    "wood is meant."
                )
                numbers = {"drawn": drawn[field], "measured": known[field]}
                yield _finding(piece, "note", "measured holds", slot, sentence, numbers)


def said_for_nothing(piece: Piece) -> Iterator[Finding]:
    """Values of the description that nothing uses; told once for the batch."""
    if piece.number == 1:
        for where, sentence in _unused(piece.frame):
            yield Finding(
                severity="note",
                kind="value not used",
                where=where,
                parts=(),
                sentence=f"{where}: {sentence}",
                source=COMMON_PRACTICE,
            )


def _unused(frame: Frame) -> Iterator[tuple[str, str]]:
    for place, item in enumerate(frame.stack):
        if isinstance(item, Clear) and item.size is not None and item.weight != 1.0:
            yield clear_name(frame.stack, place), "it has a size, so its weight shares nothing. Leave one of them out."
    for level in frame.levels():
        if level.ends is not None and level.left is not None and level.right is not None:
            yield f"{level.name}.ends", "left and right are given too, and hold. Leave ends out, or one of them."
    if frame.against is not None and frame.corners != "front through":
        yield "corners", "a single row has none. Leave it out."
    for slot in frame.slots():
        yield from _by_every_piece(frame, slot)
    shares = any(joint.shares for slot in frame.slots() for joint, _ in slot.joints)
    if not shares and any(frame.fit_of(word) for word in FITTED):
        yield "fit", "no rail is let in, so nothing takes a fit. Leave it out."


def _by_every_piece(frame: Frame, slot: Slot) -> Iterator[tuple[str, str]]:
    """What was measured for all of a part of which each piece was measured, too."""
    for field in frame.measured.get(slot.name, {}):
        if all(field in frame.measured.get(of_piece(n, slot.name), {}) for n in range(1, frame.quantity + 1)):
            what = "every piece was measured by its own name, and that holds. Take this one away."
            yield f"{slot.name}.{field}", what


def _finding(
    piece: Piece, severity: Severity, kind: str, slot: Slot, sentence: str, numbers: dict[str, Any]
) -> Finding:
    return Finding(
        severity=severity,
        kind=kind,
        where=piece.where(slot.name),
        parts=(slot.name,),
        sentence=sentence,
        numbers=numbers,
        source=COMMON_PRACTICE,
    )
