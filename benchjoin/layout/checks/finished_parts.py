"""Finished parts: what no longer fits those that are sized, marked or cut, with the gap and the ways out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ...findings import Finding, Severity, WayOut
from ...frame.finished import Shoulder
from ...frame.identity import of_piece
from ...lengths import TOUCH
from ...sources import STATICS
from ..joints.meeting import Cut
from ..parts import Part
from ..sitting import SHOULDERS, SIDES
from .cut_fit import CutFit, cut_fit
from .piece import Piece
from .ways_out import in_order, let_be, made_again, off_cut, off_part, shim, told

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
        if over > 0:
            first = off_part(piece, part, f"trim {part.identity}, and keep it again", over)
        else:
            first = shim(f"shim its end by {off}", f"a gap of {off}")
        move = WayOut("move its mates", f"{off}, as far as they are not marked", "move")
        found = (first, move, made_again(piece, part))
        sentence = (
            f"{piece.where(part.identity)} was finished at {piece.say(part.length)} and should now be "
            f"{piece.say(want)}: {off} too {'long' if over > 0 else 'short'}."
        )
        numbers = {"length": part.length, "wanted": want}
        yield _finding("warning", "finished length", piece, (part.identity,), sentence, numbers, found)


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
                sits = next(c.sits for c in done.cuts if (c.mate, c.face) == (cut.mate, cut.face))
                yield from _compared(piece, part, cut, want, sits)


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


def _compared(piece: Piece, part: Part, cut: Cut, want: Cut, sits: Shoulder) -> Iterator[Finding]:
    """A cut as it is against the cut as it should be: its width, its place, how far across it goes, its depth."""
    mate = piece.parts[cut.mate]
    found: tuple[WayOut, ...]
    fit, hair = cut_fit(part, cut, want, mate.blank, sits), piece.holds
    name, both = f"{piece.where(part.identity)}, {cut.kind} for {cut.mate}", (part.identity, cut.mate)
    ends = _ends(part)
    if fit.gap < -hair:
        yield _too_narrow(piece, part, cut, fit)
    elif fit.gap > hair:
        yield _gap(piece, part, cut, fit, sits)
    if abs(fit.shift) > hair:
        sentence = f"{name}: it lies {piece.amount(abs(fit.shift))} {_way(ends, fit.shift)} where {cut.mate} comes now."
        move = WayOut(f"move {cut.mate} there", f"{piece.amount(abs(fit.shift))} for all that it meets", "move")
        found = (move, made_again(piece, part))
        yield _finding("warning", "cut elsewhere", piece, both, sentence, {"shift": fit.shift}, found)
    if fit.short > hair:
        short = piece.amount(fit.short)
        sentence = f"{name}: it ends {short} short across the {part.slot.role.word}."
        trim = off_part(piece, mate, f"trim {cut.mate} there", fit.short)
        found = (trim, off_cut(piece, cut.kind, "pare it", fit.short), made_again(piece, part))
        yield _finding("warning", "stops short", piece, both, sentence, {"short": fit.short}, found)
    if abs(fit.depth) > hair:
        off, proud = piece.amount(abs(fit.depth)), fit.depth > 0
        if proud:
            way = off_cut(piece, cut.kind, "deepen the cut", fit.depth)
        else:
            way = shim("shim the floor of the cut", f"{off} below it")
        stands = "stands proud" if proud else "sits deep"
        sentence = f"{name}: its depth is off by {off}: {cut.mate} {stands}."
        found = (let_be("accept it"), way, made_again(piece, part))
        yield _finding("warning", "depth is off", piece, both, sentence, {"depth": fit.depth}, found)


def _gap(piece: Piece, part: Part, cut: Cut, fit: CutFit, sits: Shoulder) -> Finding:
    """A cut that is wider than it should be: where the shim goes, by the shoulder that the mate sits on."""
    ends, mate = _ends(part), piece.parts[cut.mate]
    rooms = ((fit.near, ends[0]), (fit.far, ends[1]))
    where = " and ".join(f"{piece.amount(room)} {side}" for room, side in rooms if room > piece.holds)
    words = SHOULDERS[part.slot.axes[0]]
    if sits:
        moved = f", {piece.amount(abs(fit.seat))} {_way(ends, fit.seat)} where its level has it"
        seat = f"It sits on the {words[SIDES.index(sits)]} shoulder{moved if abs(fit.seat) > piece.holds else ''}."
    else:
        asked = f"sit(frame, '{piece.where(part.identity)}', on={{'{cut.mate}': '{words[0]}'}})"
        seat = f"Which shoulder does it sit on? Say {asked}, or '{words[1]}'."
    sentence = (
        f"{piece.where(part.identity)}, {cut.kind} for {cut.mate}: it is {piece.say(fit.have)} wide and "
        f"{piece.say(fit.need)} is needed, a gap of {piece.amount(fit.gap)}. {seat}"
    )
    wider = WayOut(f"make {cut.mate} wider", f"another {mate.slot.role.word}", "make again")
    found = (shim(f"shim {cut.mate}", where or piece.amount(fit.gap)), wider, made_again(piece, part))
    numbers = {"gap": fit.gap, "near": fit.near, "far": fit.far}
    return _finding("warning", "gap", piece, (part.identity, cut.mate), sentence, numbers, found)


def _too_narrow(piece: Piece, part: Part, cut: Cut, fit: CutFit) -> Finding:
    """What has to be taken off the mate; where only its clearance is used up, it still goes in."""
    name, both = f"{piece.where(part.identity)}, {cut.kind} for {cut.mate}", (part.identity, cut.mate)
    numbers = {"gap": fit.gap, "to": fit.mate + fit.gap}
    mate, less = piece.parts[cut.mate], -fit.gap
    slim = f"{mate.slot.role.slim} {cut.mate} to {piece.say(numbers['to'])}"
    found = (
        off_part(piece, mate, slim[0].lower() + slim[1:], less),
        off_cut(piece, cut.kind, "pare the shoulder", less),
        made_again(piece, part),
    )
    if fit.gap + fit.clearance >= -TOUCH:
        left = fit.gap + fit.clearance
        loose = f"{piece.amount(left)} of clearance" if left > piece.frame.tape.hair else "no clearance"
        wanted = piece.amount(fit.clearance)
        sentence = f"{name}: it leaves {loose}, and {wanted} is wanted."
        numbers["clearance"] = fit.clearance
        return _finding("warning", "tight", piece, both, sentence, numbers, (let_be("take it as it is"), *found))
    sentence = (
        f"{name}: {cut.mate} needs {piece.say(fit.need)} and the cut is {piece.say(fit.have)} wide, "
        f"{piece.amount(-fit.gap)} too narrow."
    )
    return _finding("error", "does not go in", piece, both, sentence, numbers, found)


def _ends(part: Part) -> tuple[str, str]:
    """Words for the side of a part's datum end and for the other."""
    return BESIDE[part.slot.axes[0]]


def _way(ends: tuple[str, str], shift: float) -> str:
    way = ends[1 if shift > 0 else 0]
    return f"{way} of" if way in ("left", "right") else way


def _finding(
    severity: Severity,
    kind: str,
    piece: Piece,
    parts: tuple[str, ...],
    sentence: str,
    numbers: dict[str, float],
    ways: Iterable[WayOut] = (),
) -> Finding:
    ways = in_order(ways)
    return Finding(
        severity=severity,
        kind=kind,
        where=piece.where(parts[0]),
        parts=parts,
        sentence=f"{sentence} {told(ways)}" if ways else sentence,
        numbers=numbers,
        source=STATICS,
        ways=ways,
    )
