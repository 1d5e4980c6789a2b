"""Finished parts: what no longer fits those that are sized, marked or cut, with the gap and the ways out."""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ...frame.identity import of_piece
from ...lengths import TOUCH
from ...sources import STATICS
from ..joints.meeting import Cut
from ..parts import Part, face_up
from .piece import Piece


def finished_lengths(piece: Piece) -> Iterator[Finding]:
    """Parts that were sized at another length than they should have now."""
    for part in piece.parts.values():
        want = piece.wanted.get(of_piece(piece.number, part.identity))
        if want is None or abs(want - part.length) <= piece.frame.tape.hair:
            continue
        over = part.length - want
        way = "Trim it" if over > 0 else "Shim its end, make it again, or move its mates"
        sentence = (
            f"{piece.where(part.identity)} was finished at {piece.say(part.length)} and should now be "
            f"{piece.say(want)}: {piece.amount(abs(over))} too {'long' if over > 0 else 'short'}. {way}."
        )
        yield _finding(
            "warning", "finished length", piece, part.identity, sentence, {"length": part.length, "wanted": want}
        )


def finished_cuts(piece: Piece) -> Iterator[Finding]:
    """Notches and laps that were marked or cut where they no longer belong."""
    wanted = {(c.part, c.mate, c.face): c for joint in piece.joints for c in joint.cuts}
    for part in piece.parts.values():
        done = piece.frame.finished.get(of_piece(piece.number, part.identity))
        if done is None or done.state == "sized":
            continue
        for cut in part.cuts:
            want = wanted.get((cut.part, cut.mate, cut.face))
            if want is None:
                sentence = (
                    f"{piece.where(part.identity)} is {done.state} for {cut.mate}, which does not come there now. "
                    "Move the rail back, or fill the cut."
                )
                yield _finding("warning", "cut without a mate", piece, part.identity, sentence, {})
            else:
                yield from _compared(piece, part, cut, want)


def _compared(piece: Piece, part: Part, cut: Cut, want: Cut) -> Iterator[Finding]:
    """A cut as it is against the cut as it should be: too narrow, too wide, in another place, at another depth."""
    hair = piece.frame.tape.hair
    have, need = (face_up(part, cut.face).local(c.box) for c in (cut, want))
    (h0, _, _), (h1, _, _) = have.low, have.high
    (n0, _, _), (n1, _, _) = need.low, need.high
    name = f"{piece.where(part.identity)}, {cut.kind} for {cut.mate}"
    gap, shift = (h1 - h0) - (n1 - n0), n0 - h0
    if gap < -hair:
        sentence = (
            f"{name}: {cut.mate} needs {piece.say(n1 - n0)} and the cut is {piece.say(h1 - h0)} wide, "
            f"{piece.amount(-gap)} too narrow. Re-rip the rail, or pare the shoulder."
        )
        yield _finding("error", "does not go in", piece, part.identity, sentence, {"gap": gap})
    elif gap > hair:
        sentence = (
            f"{name}: the cut is {piece.say(h1 - h0)} wide and {piece.say(n1 - n0)} is needed, a gap of "
            f"{piece.amount(gap)}. Shim it by {piece.amount(gap)}, or make a wider rail."
        )
        yield _finding("warning", "gap", piece, part.identity, sentence, {"gap": gap})
    if abs(shift) > hair and (h0 > TOUCH or n0 > TOUCH):
        sentence = (
            f"{name}: it starts at {piece.say(h0)} and should now start at {piece.say(n0)}, {piece.amount(abs(shift))} "
            f"{'further on' if shift > 0 else 'nearer'}. Move the mate to it: pin the level at {piece.say(h0)}."
        )
        yield _finding("warning", "cut elsewhere", piece, part.identity, sentence, {"shift": shift})
    depth = (need.high[2] - max(need.low[2], 0.0)) - (have.high[2] - max(have.low[2], 0.0))
    if abs(depth) > hair:
        way = "stands proud; deepen the cut" if depth > 0 else "sits deep; shim the floor of the cut"
        sentence = f"{name}: its depth is off by {piece.amount(abs(depth))}: the mate {way}, or accept it."
        yield _finding("warning", "depth is off", piece, part.identity, sentence, {"depth": depth})


def _finding(
    severity: Severity, kind: str, piece: Piece, part: str, sentence: str, numbers: dict[str, float]
) -> Finding:
    return Finding(
        severity=severity,
        kind=kind,
        where=piece.where(part),
        parts=(part,),
        sentence=sentence,
        numbers=numbers,
        source=STATICS,
    )
