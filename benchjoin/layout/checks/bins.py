"""Bins: whether each rests on something, clears the wood, and comes out through its opening."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ...findings import Finding, Severity
from ...lengths import TOUCH
from ...phrases import listed
from ...solids import Box
from ...sources import STATICS
from ..bodies import Body, bodies, over_each_other
from .piece import Piece


def bins(piece: Piece) -> Iterator[Finding]:
    """Findings of every bin of a piece."""
    for body in bodies(piece.frame, piece.parts) if piece.frame.bins else ():
        found = [*_meets(piece, body), *_rests(piece, body)]
        yield from found
        if not found:
            yield from _comes_out(piece, body)


def _meets(piece: Piece, body: Body) -> Iterator[Finding]:
    box = body.box.ending(2, high=body.box.high[2] - TOUCH) if body.of.rim else body.box
    met = [
        part
        for part in body.parts
        if box.meet(part.blank) is not None and any(box.meet(wood) is not None for wood in part.solid)
    ]
    if met:
        shared = box.meet(met[0].blank)
        x, y, z = shared.size() if shared else (0.0, 0.0, 0.0)
        sentence = (
            f"{piece.where(body.name)} stands where {listed([part.identity for part in met[:3]])} "
            f"{'is' if len(met) == 1 else 'are'}: {met[0].identity} by {piece.say(x)} along, {piece.say(y)} deep and "
            f"{piece.say(z)} high. Move it (at=, from_front=), take a smaller one, or raise what is over it."
        )
        yield _finding(piece, "error", "bin meets wood", body, sentence, {"x": x, "y": y, "z": z})


def _rests(piece: Piece, body: Body) -> Iterator[Finding]:
    """Its foot must have something under it at both sides of its middle; a rim something at both ends."""
    if body.of.on is None:
        return
    rim, at = body.of.rim, body.box.low[2] if body.of.rim is None else body.box.high[2]
    tops = [part.blank for part in body.parts if abs(part.blank.high[2] - at) <= TOUCH]
    if rim is None:
        held = all(_both_sides(tops, body.foot, axis) for axis in (0, 1))
    else:
        low, high = body.box.low, body.box.high
        wide = [body.box.ending(axis, low=low[axis] - rim, high=high[axis] + rim) for axis in (0, 1)]
        held = any(_both_sides(tops, own, axis) for axis, own in enumerate(wide))
    if not held:
        what = "hangs from nothing at both ends" if rim is not None else "has nothing under both sides of its middle"
        sentence = (
            f"{piece.where(body.name)} {what} at {piece.say(at)}. Put boards, bearers or rails there, or move it."
        )
        yield _finding(piece, "error", "bin rests on nothing", body, sentence, {"at": at})


def _both_sides(tops: Iterable[Box], own: Box, axis: int) -> bool:
    """Whether wood lies under something on both sides of its middle."""
    middle = (own.low[axis] + own.high[axis]) / 2
    under = [wood for wood in tops if over_each_other(wood, own)]
    return any(wood.low[axis] < middle - TOUCH for wood in under) and any(
        wood.high[axis] > middle + TOUCH for wood in under
    )


def _comes_out(piece: Piece, body: Body) -> Iterator[Finding]:
    name, moves, opening = piece.where(body.name), body.moves, body.opening
    length, depth = body.of.length, body.of.depth
    if opening is not None:
        wide, deep, _ = opening.size()
        told = f"the opening under its lid is {piece.say(wide)} by {piece.say(deep)}, the bin {piece.say(length)} by "
        told += piece.say(depth)
        numbers = {"opening length": wide, "opening depth": deep}
        if wide < length - TOUCH or deep < depth - TOUCH:
            sentence = f"{name} does not come out: {told}. Take a smaller one, a wider panel, or thinner supports."
            yield _finding(piece, "error", "bin larger than its opening", body, sentence, numbers)
            return
        if not moves.blocked:
            above = "" if body.above is None else f", with {piece.say(body.above)} from its rim to the lid"
            yield _finding(piece, "note", "bin", body, f"{name}: {told}{above}.", numbers)
    if moves.blocked:
        sentence = (
            f"{name} does not come out: on its way it meets {listed(list(moves.blocked[:3]))}. Take a lower one, raise "
            "what is over it, or cover it with a panel that lifts off."
        )
        yield _finding(piece, "error", "bin does not come out", body, sentence, {})


def _finding(
    piece: Piece, severity: Severity, kind: str, body: Body, sentence: str, numbers: dict[str, float]
) -> Finding:
    return Finding(
        severity=severity,
        kind=kind,
        where=piece.where(body.name),
        sentence=sentence,
        numbers=numbers,
        source=STATICS,
    )
