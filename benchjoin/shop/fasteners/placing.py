"""Placing: which size and length goes into a joint, and where, by trying the usual ones in order.

First the distances of what carries are asked for, with the usual screw and then slimmer ones; where none has room,
those of what carries nothing.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence

import attrs
import numpy as np

from ...solids import Vector, vector
from ...trade.spacing import LIGHT, Spacing, bolts, lead_holes
from .duty import Drive, Spans, spans
from .fastener import Fastener
from .fixing import Driven
from .room import TIP, Points, Room, Targets, near

PENETRATION = 6.0
"""A screw that carries goes in at least so many diameters. NDS 12.1.5.6, from memory."""
WANTED = {"carries": 10.0, "hangs": 12.0, "keeps home": 8.0, "holds down": 8.0}
"""So many diameters are wanted in the part that holds the point: 10 for the full value, NDS, from memory; the others by
common practice, no source."""
IN_END_GRAIN = 14.0
"""And so many where it goes into end grain. Common practice, no source."""
LEAST = 2.0
"""With fewer it holds nothing. Common practice, no source."""
TRIED = 3
"""So many lengths are tried, the longest first."""
CROSSING = 35.0
"""A contact wider and higher than this takes two, on a diagonal. [mm] Common practice, no source."""
LONG = 200.0
APART = 250.0
"""A contact longer than LONG takes one about every APART. [mm] Common practice, no source."""
ALONG_A_BOARD = 450.0
"""A board that lies along its rail is held so often. [mm] Common practice, no source."""
WIDE_BOARD = 75.0
"""A board wider than this has two screws across it, one of them in a slot. [mm] Common practice, no source."""
PER_CROSSING = 40.0
"""Two screws beside each other ask for a contact so wide. [mm] Common practice, no source."""
FAR = 60.0
"""Others further from a contact than this are never too near. [mm]"""


@attrs.frozen(kw_only=True, eq=False)
class Placed:
    """What was found for a drive: the size, the fasteners, whether they keep the distances of what carries."""

    size: Fastener
    driven: tuple[Driven, ...]
    full: bool
    wanted: int

    @property
    def complete(self) -> bool:
        """Whether all that were wanted have their place."""
        return len(self.driven) >= self.wanted

    @property
    def grip(self) -> tuple[bool, float]:
        """For weighing two of them: whether it carries, and how many diameters it goes in, up to those asked."""
        return self.full, min(self.driven[0].inside / self.size.diameter, PENETRATION)


def place(drive: Drive, sizes: Sequence[Fastener], driven: Sequence[Driven], unit: str) -> Placed | None:
    """The first way in which all fasteners of a drive have their place, or the fullest; None where none has one."""
    best: Placed | None = None
    others = list(near(driven, drive.joint.contact, FAR + max(size.diameter for size in sizes)))
    found = spans(drive)
    for full, size, span in itertools.product((True, False), sizes, found):
        rules = _rules(size) if full else LIGHT
        targets = pattern(drive, size)
        for length in _lengths(drive, size, span):
            room = Room(drive=drive, span=span, size=size, length=length, rules=rules, others=others, unit=unit)
            sound = full and (drive.duty != "carries" or room.inside >= PENETRATION * size.diameter)
            if full and not sound:
                continue
            at = _chosen(room, targets)
            one = _placed(room, at, sound, len(targets))
            if one.driven and one.complete:
                return one
            if one.driven and (best is None or len(one.driven) > len(best.driven)):
                best = one
    return best


def _rules(size: Fastener) -> Spacing:
    return bolts(size.diameter) if size.through else lead_holes(size.diameter)


def _lengths(drive: Drive, size: Fastener, span: Spans) -> Iterator[float]:
    """Lengths to try: the longest that does not come out and goes in no further than wanted, then shorter ones."""
    if size.through:
        need = span.thick + span.room + 2 * size.diameter  # washers and nut
        yield from [length for length in size.lengths() if length >= need][:1]
        return
    many = IN_END_GRAIN if drive.into_end else WANTED[drive.duty]
    most = span.thick + min(span.room - TIP, many * size.diameter)
    least = span.thick + LEAST * size.diameter
    if size.length is not None:
        most = span.thick + span.room - TIP
    yield from [length for length in reversed(size.lengths()) if least <= length <= most + 1e-6][:TRIED]


def pattern(drive: Drive, size: Fastener) -> list[tuple[float, float]]:
    """Where the fasteners of a joint would best be. [mm in the plane of the contact]"""
    targets = Targets(drive=drive)
    along, across = targets.extent
    if size.count is not None:
        return targets.at(_counted(size.count, along, across))
    if drive.duty == "holds down" and drive.guest.slot.role.surface:
        rows = 1 if along <= 300 else math.ceil(along / ALONG_A_BOARD) + 1
        lines = 2 if drive.guest.width > WIDE_BOARD and across >= PER_CROSSING else 1
        return targets.at(itertools.product(_even(rows, along), _even(lines, across)))
    if max(along, across) > LONG:
        longer = max(along, across)
        return targets.at(_line(math.ceil(longer / APART) + 1, along, across))
    return targets.at(_counted(2 if max(along, across) >= CROSSING else 1, along, across))


def _counted(count: int, along: float, across: float) -> list[tuple[float, float]]:
    if count == 1:
        return [(0.5, 0.5)]
    if count == 2 and min(along, across) >= CROSSING:
        return [(0.25, 0.25), (0.75, 0.75)]
    return _line(count, along, across)


def _line(count: int, along: float, across: float) -> list[tuple[float, float]]:
    """In a line along the longer side, from side to side of it where there is room."""
    longer, other = max(along, across), min(along, across)
    ends = _even(count, longer)
    off = 0.15 if other >= CROSSING and count > 2 else 0.0
    sides = [0.5 + (off if n % 2 else -off) for n in range(count)]
    return [(a, b) if along >= across else (b, a) for a, b in zip(ends, sides, strict=True)]


def _even(count: int, extent: float) -> list[float]:
    """Evenly spread shares: a quarter from both ends, or 50 mm where that is less."""
    if count == 1:
        return [0.5]
    inset = min(0.25, 50.0 / extent)
    return [inset + (1 - 2 * inset) * n / (count - 1) for n in range(count)]


def _chosen(room: Room, targets: Sequence[tuple[float, float]]) -> list[Sequence[float]]:
    """For each target the nearest place that is free and keeps off those chosen before."""
    free: Points = room.free()
    chosen: list[Sequence[float]] = []
    for target in targets:
        left = room.apart(free, chosen)
        if not len(left):
            continue
        off = ((left - np.asarray(target)) ** 2).sum(axis=1)
        chosen.append([float(value) for value in left[int(np.argmin(np.round(off, 6)))]])
    return chosen


def _placed(room: Room, at: Sequence[Sequence[float]], full: bool, wanted: int) -> Placed:
    drive, span = room.drive, room.span
    step = 1.0 if drive.up else -1.0
    way = vector(step if n == drive.axis else 0.0 for n in range(3))
    thick = span.thick
    found = tuple(
        Driven(
            piece=drive.joint.piece,
            head=drive.head.identity,
            point=drive.point.identity,
            size=room.size,
            at=_point(drive, span, place),
            way=way,
            length=room.length,
            thick=thick,
            inside=room.inside,
        )
        for place in at
    )
    return Placed(size=room.size, driven=found, full=full, wanted=wanted)


def _point(drive: Drive, span: Spans, place: Sequence[float]) -> Vector:
    found = [0.0, 0.0, 0.0]
    found[drive.axis] = span.face if drive.up else 0.0 - span.face
    for axis, value in zip(drive.plane, place, strict=True):
        found[axis] = value
    return vector(found)
