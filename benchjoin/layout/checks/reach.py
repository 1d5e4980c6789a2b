"""Reach: rails without length, without legs, or standing higher than their legs."""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding
from ...lengths import TOUCH
from ...sources import COMMON_PRACTICE, STATICS
from ..parts import Part
from .piece import Piece


def lost_rails(piece: Piece) -> Iterator[Finding]:
    """A rail with no length left between its legs, or behind the rails that run through."""
    for name, length in piece.lost.items():
        short = f"{piece.say(-length)} too little" if length < -TOUCH else "nothing"
        yield Finding(
            severity="error",
            kind="no length left",
            where=piece.where(name),
            parts=(name,),
            sentence=f"{piece.where(name)}: there is {short} left for its length. Make the frame deeper or longer, "
            "or the legs smaller.",
            numbers={"length": length},
            source=STATICS,
        )


def above_every_leg(piece: Piece) -> Iterator[Finding]:
    """A level that stands above every leg."""
    tallest = max(leg.length for leg in piece.legs)
    levels: dict[str, list[Part]] = {}
    for part in piece.parts.values():
        if part.level is not None:
            levels.setdefault(part.level, []).append(part)
    for level, parts in levels.items():
        bottom = min(part.blank.low[2] for part in parts)
        if bottom >= tallest - TOUCH:
            yield Finding(
                severity="error",
                kind="above every leg",
                where=f"{piece.label}{level}",
                parts=tuple(part.identity for part in parts),
                sentence=f'{piece.label}"{level}" starts at {piece.say(bottom)} over the {piece.frame.datum}, and the '
                f"tallest leg ends at {piece.say(tallest)}. Lower a clear, or make the legs longer.",
                numbers={"bottom": bottom, "leg": tallest},
                source=STATICS,
            )


def unheld_rails(piece: Piece) -> Iterator[Finding]:
    """A rail that misses one of the legs it goes to; over a shorter middle leg it may pass."""
    held = {(joint.guest, joint.host) for joint in piece.joints}
    for slot in piece.frame.rails():
        part = piece.parts.get(slot.name)
        if part is None:
            continue
        passed = [leg for leg in slot.hosts[1:-1] if piece.parts[leg].blank.high[2] <= part.blank.low[2] + TOUCH]
        missed = [leg for leg in slot.hosts if (slot.name, leg) not in held and leg not in passed]
        if not missed:
            continue
        nothing = not any((slot.name, leg) in held for leg in slot.hosts)
        low, high = piece.say(part.blank.low[2]), piece.say(part.blank.high[2])
        yield Finding(
            severity="error" if nothing else "warning",
            kind="no leg holds it" if nothing else "a leg is missed",
            where=piece.where(slot.name),
            parts=(slot.name, *missed),
            sentence=f"{piece.where(slot.name)} ({low} to {high} over the {piece.frame.datum}) does not come to "
            f"{' or '.join(missed)}. Lower it, make the legs taller, or turn the corner the other way.",
            numbers={"bottom": part.blank.low[2], "top": part.blank.high[2]},
            source=STATICS,
        )


def proud_of_the_leg(piece: Piece) -> Iterator[Finding]:
    """A rail that is wider than its leg can take at the top."""
    for joint in piece.joints:
        if joint.cuts and all(cut.part == joint.guest for cut in joint.cuts):
            continue  # it passes the leg, and only gives up wood of its own
        rail, leg = piece.parts[joint.guest], piece.parts[joint.host]
        over = rail.blank.high[2] - leg.blank.high[2]
        if leg.slot.upright and over > TOUCH:
            yield Finding(
                severity="warning",
                kind="wider than the leg can take",
                where=piece.where(rail.identity),
                parts=(rail.identity, leg.identity),
                sentence=f"{piece.where(rail.identity)} stands {piece.say(over)} over the top of the {leg.identity}, "
                f"which ends at {piece.say(leg.blank.high[2])}. Lower the level, or hold it there with flush=.",
                numbers={"over": over, "leg": leg.blank.high[2]},
                source=COMMON_PRACTICE,
            )
