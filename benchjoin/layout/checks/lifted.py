"""What lifts or slides out: whether it rests on enough wood wherever it is pushed, holds together, and comes out."""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ...frame.tray import Tray
from ...lengths import TOUCH
from ...phrases import listed
from ...runs import larger
from ...sources import COMMON_PRACTICE, STATICS, Source
from ..lifting import LiftOut, fixed_in, lift_outs
from ..placing.room import highest, lowest
from .piece import Piece


def lifted_out(piece: Piece) -> Iterator[Finding]:
    """Findings of everything that comes out of a piece."""
    if not any(part.slot.group for part in piece.parts.values()):
        return
    for group in lift_outs(tuple(piece.parts.values()), piece.joints):
        yield from _loose(piece, group)
        yield from _seats(piece, group)
        yield from _way(piece, group)


def _loose(piece: Piece, group: LiftOut) -> Iterator[Finding]:
    """Boards of a panel or tray that nothing of it holds."""
    joints = fixed_in(group)
    loose = [part.identity for part in group.parts if not joints[part.identity]]
    if loose:
        sentence = (
            f"{piece.where(group.name)}: {listed(loose[:3])} {'is' if len(loose) == 1 else 'are'} fixed to nothing of "
            "it and would stay behind. Where a rail or support crosses below, end the section there: give it a width."
        )
        yield _finding(piece, "error", "loose board", group, sentence, {}, STATICS)


def _seats(piece: Piece, group: LiftOut) -> Iterator[Finding]:
    if not group.seats:
        sentence = (
            f"{piece.where(group.name)} rests on nothing. Put ledgers, bearers or rails under its ends, at one height."
        )
        yield _finding(piece, "error", "rests on nothing", group, sentence, {}, STATICS)
        return
    box = group.box
    contacts = [joint.contact for joint in group.seats]
    for axis in (0, 1):
        low, high = lowest(own.low[axis] for own in contacts), highest(own.high[axis] for own in contacts)
        middle = (box.low[axis] + box.high[axis]) / 2
        if low > middle + TOUCH or high < middle - TOUCH:
            on = listed(list(dict.fromkeys(joint.host for joint in group.seats)))
            sentence = f"{piece.where(group.name)} rests only on {on}, all on one side of its middle, and tips."
            yield _finding(piece, "error", "held at one end", group, sentence + " Support both ends.", {}, STATICS)
            return
    short = [(left, joint) for joint, left in group.bearings() if left < group.bearing - TOUCH]
    if short:
        left, joint = short[0]
        for other, own in short[1:]:
            if other < left:
                left, joint = other, own
        sentence = (
            f"{piece.where(group.name)}: pushed away from {joint.host}, {joint.guest} rests on it by "
            f"{piece.say(larger(left, 0.0))}, and {piece.say(group.bearing)} is the least. Take thicker wood "
            "there, put a ledger beside it, or let it reach further."
        )
        numbers = {"bearing": left, "least": group.bearing}
        yield _finding(piece, "error", "short bearing", group, sentence, numbers, COMMON_PRACTICE)


def _way(piece: Piece, group: LiftOut) -> Iterator[Finding]:
    moves, name = group.moves, piece.where(group.name)
    if moves.blocked:
        word: str = group.of.out if isinstance(group.of, Tray) else "up"
        sentence = (
            f"{name} does not come out: on its way {word} it meets {listed(list(moves.blocked[:3]))}, and it does not "
            "come out lifted over its seat either. Raise or leave out what is in the way, or make it narrower."
        )
        yield _finding(piece, "error", "does not come out", group, sentence, {}, STATICS)
    elif len(moves.steps) > 1:
        lift = moves.steps[0]
        sentence = (
            f"{name} is lifted {piece.say(lift[2])} and drawn out to the {moves.toward}: it does not go straight up."
        )
        yield _finding(piece, "note", "way out", group, sentence, {"lift": lift[2]}, STATICS)


def _finding(
    piece: Piece,
    severity: Severity,
    kind: str,
    group: LiftOut,
    sentence: str,
    numbers: dict[str, float],
    source: Source,
) -> Finding:
    return Finding(
        severity=severity,
        kind=kind,
        where=piece.where(group.name),
        parts=tuple(part.identity for part in group.parts),
        sentence=sentence,
        numbers=numbers,
        source=source,
    )
