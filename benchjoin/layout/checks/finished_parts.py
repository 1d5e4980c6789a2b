"""Finished parts: what no longer fits those that are sized, marked or cut, with the gap and the ways out."""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ...frame.identity import of_piece
from ...lengths import TOUCH
from ...sources import STATICS
from ..joints.meeting import Cut
from ..parts import Part
from .cut_fit import CutFit, cut_fit
from .piece import Piece

BESIDE = (("left", "right"), ("in front", "behind"), ("below", "above"))
"""Words for the side of a part's datum end and for the other, by the axis that it runs along."""


def finished_lengths(piece: Piece) -> Iterator[Finding]:
    """Parts that were finished at another length than they should have now."""
    for part in piece.parts.values():
        name = of_piece(piece.number, part.identity)
        want = piece.wanted.get(name) if name in piece.frame.finished else None
        if want is None or abs(want - part.length) <= piece.holds:
            continue
        over = part.length - want
        off = piece.amount(abs(over))
        way = "Trim it" if over > 0 else f"Shim its end by {off}, make it again, or move its mates"
        sentence = (
            f"{piece.where(part.identity)} was finished at {piece.say(part.length)} and should now be "
            f"{piece.say(want)}: {off} too {'long' if over > 0 else 'short'}. {way}."
        )
        numbers = {"length": part.length, "wanted": want}
        yield _finding("warning", "finished length", piece, (part.identity,), sentence, numbers)


def finished_cuts(piece: Piece) -> Iterator[Finding]:
    """Notches and laps that were marked or cut where they no longer belong, and those that are still to be made."""
    wanted = {(c.part, c.mate, c.face): c for joint in piece.joints for c in joint.cuts}
    for part in piece.parts.values():
        done = piece.frame.finished.get(of_piece(piece.number, part.identity))
        if done is None or done.state == "sized":
            continue
        made = {(cut.mate, cut.face) for cut in done.cuts}
        for cut in part.cuts:
            want = wanted.get((cut.part, cut.mate, cut.face))
            if want is None:
                yield _without_mate(piece, part, done.state, cut)
            elif (cut.mate, cut.face) not in made:
                yield _still_to_make(piece, part, done.state, cut)
            else:
                yield from _compared(piece, part, cut, want)


def _without_mate(piece: Piece, part: Part, state: str, cut: Cut) -> Finding:
    sentence = (
        f"{piece.where(part.identity)} is {state} for {cut.mate}, which does not come there now. "
        "Move it back, or fill the cut."
    )
    return _finding("warning", "cut without a mate", piece, (part.identity, cut.mate), sentence, {})


def _still_to_make(piece: Piece, part: Part, state: str, cut: Cut) -> Finding:
    seen = part.on_face(cut)
    low, high, depth = seen.start, seen.end, seen.floor
    sentence = (
        f"{piece.where(part.identity)} is {state} and has no {cut.kind} for {cut.mate} yet: it needs one from "
        f"{piece.say(low)} to {piece.say(high)}, {piece.say(depth)} deep. Mark it, then keep the part again."
    )
    numbers = {"low": low, "high": high, "depth": depth}
    return _finding("warning", "another cut", piece, (part.identity, cut.mate), sentence, numbers)


def _compared(piece: Piece, part: Part, cut: Cut, want: Cut) -> Iterator[Finding]:
    """A cut as it is against the cut as it should be: its width, its place, how far across it goes, its depth."""
    fit, hair = cut_fit(part, cut, want, piece.parts[cut.mate].blank), piece.holds
    name, both = f"{piece.where(part.identity)}, {cut.kind} for {cut.mate}", (part.identity, cut.mate)
    ends = _ends(part)
    if fit.gap < -hair:
        yield _too_narrow(piece, part, cut, fit)
    elif fit.gap > hair:
        sides = ((fit.near, ends[0]), (fit.far, ends[1]))
        where = " and ".join(f"{piece.amount(room)} {side}" for room, side in sides if room > hair)
        sentence = (
            f"{name}: it is {piece.say(fit.have)} wide and {piece.say(fit.need)} is needed, a gap of "
            f"{piece.amount(fit.gap)}. Shim {cut.mate} ({where or piece.amount(fit.gap)}), or make it wider."
        )
        yield _finding("warning", "gap", piece, both, sentence, {"gap": fit.gap, "near": fit.near, "far": fit.far})
    if abs(fit.shift) > hair:
        sentence = (
            f"{name}: it lies {piece.amount(abs(fit.shift))} {_way(ends, fit.shift)} where {cut.mate} comes "
            f"now. Move {cut.mate} there, or make {part.identity} again."
        )
        yield _finding("warning", "cut elsewhere", piece, both, sentence, {"shift": fit.shift})
    if fit.short > hair:
        short = piece.amount(fit.short)
        sentence = f"{name}: it ends {short} short across the {part.slot.role.word}. Pare it, or trim {cut.mate} there."
        yield _finding("warning", "stops short", piece, both, sentence, {"short": fit.short})
    if abs(fit.depth) > hair:
        way = "stands proud; deepen the cut" if fit.depth > 0 else "sits deep; shim the floor of the cut"
        sentence = f"{name}: its depth is off by {piece.amount(abs(fit.depth))}: {cut.mate} {way}, or accept it."
        yield _finding("warning", "depth is off", piece, both, sentence, {"depth": fit.depth})


def _too_narrow(piece: Piece, part: Part, cut: Cut, fit: CutFit) -> Finding:
    """What has to be taken off the mate; where only its clearance is used up, it still goes in."""
    name, both = f"{piece.where(part.identity)}, {cut.kind} for {cut.mate}", (part.identity, cut.mate)
    numbers = {"gap": fit.gap, "to": fit.mate + fit.gap}
    way = f"{piece.parts[cut.mate].slot.role.slim} {cut.mate} to {piece.say(numbers['to'])}, or pare the shoulder"
    if fit.gap + fit.clearance >= -TOUCH:
        left = fit.gap + fit.clearance
        loose = f"{piece.amount(left)} of clearance" if left > piece.frame.tape.hair else "no clearance"
        wanted = piece.amount(fit.clearance)
        sentence = f"{name}: it leaves {loose}, and {wanted} is wanted. {way}, or take it as it is."
        return _finding("warning", "tight", piece, both, sentence, {**numbers, "clearance": fit.clearance})
    sentence = (
        f"{name}: {cut.mate} needs {piece.say(fit.need)} and the cut is {piece.say(fit.have)} wide, "
        f"{piece.amount(-fit.gap)} too narrow. {way}."
    )
    return _finding("error", "does not go in", piece, both, sentence, numbers)


def _ends(part: Part) -> tuple[str, str]:
    """Words for the side of a part's datum end and for the other."""
    return BESIDE[part.slot.axes[0]]


def _way(ends: tuple[str, str], shift: float) -> str:
    way = ends[1 if shift > 0 else 0]
    return f"{way} of" if way in ("left", "right") else way


def _finding(
    severity: Severity, kind: str, piece: Piece, parts: tuple[str, ...], sentence: str, numbers: dict[str, float]
) -> Finding:
    return Finding(
        severity=severity,
        kind=kind,
        where=piece.where(parts[0]),
        parts=parts,
        sentence=sentence,
        numbers=numbers,
        source=STATICS,
    )
