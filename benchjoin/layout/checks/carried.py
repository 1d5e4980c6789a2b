"""What levels carry: boards and bearers that nothing holds, that span far, or that have little left beside a leg."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

import attrs

from ...findings import Finding, Severity
from ...frame.boards import Boards
from ...lengths import TOUCH
from ...phrases import listed
from ...runs import larger, smaller
from ...solids import Box
from ...sources import COMMON_PRACTICE, STATICS, Source
from ...trade.practice import LAND, SPAN
from ..net_section import stretches
from ..parts import Part
from .piece import Piece

Runs = dict[tuple[str, str], list[Part]]


def unheld(piece: Piece) -> Iterator[Finding]:
    """Boards and bearers that rest on nothing, or only on one side of their middle; once for those of a run."""
    yield from _once(piece, _unheld(piece))


def cut_round_legs(piece: Piece) -> Iterator[Finding]:
    """Boards with little left beside a leg that they are cut round, or through which one goes; alike ones once."""
    yield from _once(piece, _cut_round_legs(piece))


def _unheld(piece: Piece) -> Iterator[Finding]:
    for part in _carried(piece):
        if part.slot.group:  # what lifts out is looked at as a whole
            continue
        axis, places = part.slot.axes[0], _contacts(piece, part)
        middle = (part.blank.low[axis] + part.blank.high[axis]) / 2
        name, low = piece.where(part.identity), part.blank.low[part.slot.lies_on]
        hosts = [piece.parts[host] for host in part.slot.hosts if host in piece.parts]
        if not places:
            tops = listed([f"{host.identity} at {piece.say(host.blank.high[2])}" for host in hosts[:3]])
            sentence = (
                f"{name} rests on nothing: it lies at {piece.say(low)}, and comes to none of {tops}. Put a rail or "
                "bearers under it, or move it."
            )
            yield _finding(piece, "error", "rests on nothing", [part], sentence, {"at": low}, STATICS)
        elif places[0][0] > middle + TOUCH or max(high for _, high in places) < middle - TOUCH:
            on = listed([host.identity for host in hosts if _joined(piece, part, host)])
            sentence = (
                f"{name} is held only by {on}, all on one side of its middle, and tips. Put a rail or bearers under "
                "its other end, at the same height."
            )
            yield _finding(piece, "error", "held at one end", [part], sentence, {"at": low}, STATICS)


def one_edge(piece: Piece) -> Iterator[Finding]:
    """Boards that are carried along one edge only, and turn over it; alike ones once."""
    yield from _once(piece, _one_edge(piece))


def _one_edge(piece: Piece) -> Iterator[Finding]:
    for part in _carried(piece):
        if part.slot.upright or part.slot.group or not isinstance(part.slot.of, Boards):
            continue
        axis = part.slot.axes[1]
        joints = [joint for joint in piece.held.get(part.identity, ()) if joint.how.carries]
        under = [joint.contact for joint in joints]
        if not under or _straddled(part.blank, under, axis):
            continue
        legs = (leg.blank.meet(part.blank.ending(2, low=part.blank.low[2] - 1.0)) for leg in piece.legs)
        if not _straddled(part.blank, [*under, *(box for box in legs if box is not None)], axis):
            on = listed(list(dict.fromkeys(joint.host for joint in joints)))
            sentence = (
                f"{piece.where(part.identity)} is carried by {on} along one edge only, and turns over it. Put "
                "brackets, a ledger or bearers under it, or let it lie further over what carries it."
            )
            yield _finding(piece, "error", "carried along one edge", [part], sentence, {}, STATICS)


def _straddled(board: Box, under: Sequence[Box], axis: int) -> bool:
    """Whether what lies under a board reaches to both sides of its middle."""
    middle = (board.low[axis] + board.high[axis]) / 2
    near = any(bool(box.low[axis] <= middle + TOUCH) for box in under)
    return near and any(bool(box.high[axis] >= middle - TOUCH) for box in under)


def wide_spans(piece: Piece) -> Iterator[Finding]:
    """Boards and bearers that are free over far more than they are high; once for each run, for the widest."""
    for parts in _runs(piece).values():
        free = [(span, part) for part in parts if not part.slot.upright for span in _spans(piece, part)]
        if not free:
            continue
        span, part = free[0]
        for other, own in free[1:]:
            if other > span + TOUCH:
                span, part = other, own
        high = part.blank.high[2] - part.blank.low[2]
        if span > SPAN * high + TOUCH:
            names = piece.where(part.identity)
            sentence = (
                f"{names} is free over {piece.say(span)}, {span / high:.0f} times its {piece.say(high)} of height. "
                f"As a habit it is no more than {SPAN:.0f} times: put bearers under it every "
                f"{piece.say(SPAN * high)}, or take thicker wood."
            )
            numbers = {"span": span, "most": SPAN * high}
            others = [other for other in parts if other is not part]
            yield _finding(piece, "warning", "long span", [part, *others], sentence, numbers, COMMON_PRACTICE)


def _cut_round_legs(piece: Piece) -> Iterator[Finding]:
    for joint in piece.joints:
        if joint.how.carries:
            continue
        part = piece.parts[joint.guest]
        axis, name = part.slot.axes[1], piece.where(joint.guest)
        for cut in joint.cuts:
            before = cut.box.low[axis] - part.blank.low[axis]
            after = part.blank.high[axis] - cut.box.high[axis]
            left = larger(before, after)
            if before > TOUCH and after > TOUCH:
                sentence = (
                    f"{joint.host} goes through {name}, with {piece.say(before)} and {piece.say(after)} of the board "
                    "beside it: it would have to be threaded on. Change the count or the gap, so that an edge meets it."
                )
                numbers = {"before": before, "after": after}
                yield _finding(piece, "error", "leg through a board", [part], sentence, numbers, STATICS)
            elif TOUCH < left < LAND.least:
                sentence = (
                    f"{name} is cut round {joint.host}, and only {piece.say(left)} of it is left beside the leg. Leave "
                    f"at least {piece.say(LAND.least)}: change the count or the gap, or keep boards within the legs."
                )
                yield _finding(piece, "warning", "thin beside a leg", [part], sentence, {"left": left}, LAND.source)


def cut_in_two(piece: Piece) -> Iterator[Finding]:
    """A rail, bearer or board with nothing left of it at some place: a lap or notch as deep as it is."""
    for part in piece.parts.values():
        if part.slot.role.stands or not part.cuts:
            continue
        gone = next((stretch for stretch in stretches(part) if stretch.area <= TOUCH), None)
        if gone is not None:
            mates = listed(list(dict.fromkeys(cut.mate for cut in gone.cuts)))
            sentence = (
                f"{piece.where(part.identity)}: nothing is left of it from {piece.say(gone.start)} to "
                f"{piece.say(gone.end)} from its {part.slot.role.datum}, where it is cut for {mates}. Cut it "
                "less deep, or move what comes there."
            )
            numbers = {"start": gone.start, "end": gone.end}
            yield _finding(piece, "error", "cut in two", [part], sentence, numbers, STATICS)


def wider_than_stock(piece: Piece) -> Iterator[Finding]:
    """Boards ripped to suit that would have to be wider than the stock they are ripped from."""
    for parts in _runs(piece).values():
        for part in parts[:1] + parts[-1:] if len(parts) > 1 else parts:
            width, most = part.slot.width, part.slot.stock.width
            if most is not None and part.slot.of.solved and width > most + piece.frame.tape.hair:
                sentence = (
                    f"{piece.where(part.identity)} has to be {piece.say(width)} wide to fill its room, and its stock "
                    f"is {piece.say(most)}. Take one board more, or wider gaps."
                )
                numbers = {"width": width, "stock": most}
                yield _finding(piece, "error", "wider than its stock", [part], sentence, numbers, STATICS)


def narrow_gaps(piece: Piece) -> Iterator[Finding]:
    """Gaps that came out narrower than the least that was asked for, and rooms where one board more would go in."""
    for parts in _runs(piece).values():
        run = parts[0].slot.of
        if getattr(run, "remainder", "") != "gaps" or run.gap is None or len(parts) < 2:
            continue
        axis = parts[0].slot.axes[1]
        gap = parts[1].blank.low[axis] - parts[0].blank.high[axis]
        short, steps = run.gap - gap, len(parts) - 1
        if short > TOUCH:
            sentence = (
                f"{piece.where(parts[0].identity)} and the {steps} beside it leave gaps of {piece.say(gap)}, and "
                f"{piece.say(run.gap)} is the least: {piece.amount(short * steps)} too much in all. Take "
                f"{steps} boards, or gaps of {piece.amount(gap)}."
            )
            numbers = {"gap": gap, "least": run.gap, "over": short * steps}
            yield _finding(piece, "error", "gap too narrow", parts, sentence, numbers, STATICS)
        room = steps * -short - run.gap - (parts[0].slot.stock.width or 0.0)
        if run.count is None and room > TOUCH:
            sentence = (
                f"{piece.where(parts[0].identity)} and the {steps} beside it leave gaps of {piece.say(gap)}: "
                f"{steps + 2} boards would go in now. Their number stays as drawn until you write another count."
            )
            yield _finding(piece, "note", "another count", parts, sentence, {"gap": gap}, STATICS)


def odd_supports(piece: Piece) -> Iterator[Finding]:
    """What should carry boards and lies lower than the rest, so that they do not come to it; once for each run."""
    for parts in _runs(piece).values():
        first = parts[0]
        if first.slot.upright or first.slot.joint is None or first.slot.joint.shares or first.slot.between:
            continue
        low = first.blank.low[2]
        for under in piece.parts.values():
            if (
                under is first
                or under.level != first.level
                or under.slot.role.stands
                or under.slot.run == first.slot.run
            ):
                continue
            down = low - under.blank.high[2]
            crosses = under.slot.axes[0] != first.slot.axes[0] and _over(first.blank, under.blank)
            if crosses and piece.frame.tape.hair < down < first.blank.high[2] - low:
                sentence = (
                    f"{piece.where(first.identity)} lies at {piece.say(low)}, and {under.identity} under it ends at "
                    f"{piece.say(under.blank.high[2])}, {piece.amount(down)} lower: it carries nothing. Shim it, or "
                    "bring both to one height."
                )
                numbers = {"down": down}
                yield _finding(
                    piece, "warning", "supports at unequal height", [first, under], sentence, numbers, STATICS
                )


def _over(board: Box, under: Box) -> bool:
    """Whether one lies over the other, seen from above."""
    return all(bool(smaller(board.high[n], under.high[n]) - larger(board.low[n], under.low[n]) > TOUCH) for n in (0, 1))


def _carried(piece: Piece) -> Iterator[Part]:
    return (part for part in piece.parts.values() if part.slot.run)


def _runs(piece: Piece) -> Runs:
    """Members of each run, in order."""
    found: Runs = {}
    for part in _carried(piece):
        found.setdefault((part.level or "", part.slot.run), []).append(part)
    return found


def _joined(piece: Piece, part: Part, host: Part) -> bool:
    return any((joint.guest, joint.host) == (part.identity, host.identity) for joint in piece.joints)


def _contacts(piece: Piece, part: Part) -> list[tuple[Any, Any]]:
    """From where to where a part is held, along it, rising: by what it lies on or is joined to. [mm]"""
    axis = part.slot.axes[0]
    joints = (joint for joint in piece.held.get(part.identity, ()) if joint.how.carries)
    return sorted(((j.contact.low[axis], j.contact.high[axis]) for j in joints), key=lambda ends: ends[0])


def _spans(piece: Piece, part: Part) -> list[Any]:
    """How far a part is free between what holds it. [mm]"""
    spans, places = [], _contacts(piece, part)
    if not places:
        return []
    reached = places[0][1]
    for low, high in places[1:]:
        spans.append(low - reached)
        reached = larger(reached, high)
    return spans


def _once(piece: Piece, found: Iterable[Finding]) -> Iterator[Finding]:
    """Of findings of one kind that read the same sizes in one run only the first, which counts the others."""
    alike: dict[tuple[object, ...], list[Finding]] = {}
    for one in found:
        first = piece.parts[one.parts[0]]
        numbers = tuple(piece.say(value) for value in one.numbers.values())
        alike.setdefault((one.kind, first.level, first.slot.run, numbers), []).append(one)
    for first_told, *others in alike.values():
        parts = dict.fromkeys(name for one in (first_told, *others) for name in one.parts)
        more = f" The same at {len(others)} more of its run." if others else ""
        yield attrs.evolve(first_told, parts=tuple(parts), sentence=first_told.sentence + more)


def _finding(
    piece: Piece,
    severity: Severity,
    kind: str,
    parts: Sequence[Part],
    sentence: str,
    numbers: dict[str, Any],
    source: Source,
) -> Finding:
    return Finding(
        severity=severity,
        kind=kind,
        where=piece.where(parts[0].identity),
        parts=tuple(part.identity for part in parts),
        sentence=sentence,
        numbers=numbers,
        source=source,
    )
