"""Bodies: bins where they stand or hang, the opening each is for, and the way it comes out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property

import attrs

from ..frame.bin import Bin
from ..frame.frame import Frame
from ..frame.top import Section
from ..lengths import TOUCH
from ..runs import larger, smaller
from ..solids import Box
from .parts import Part
from .placing.room import highest, lowest
from .swept import Moves, moves_out

SIDES = ("front", "back", "left", "right")


@attrs.frozen(eq=False, slots=False)
class Body:
    """A bin where it stands or hangs in one piece. [mm]

    box holds all of it, parts are those of its piece, lid the parts of the panel that covers it.
    """

    of: Bin
    box: Box
    parts: tuple[Part, ...]
    lid: tuple[Part, ...]

    @property
    def name(self) -> str:
        """What it is called."""
        return self.of.name

    @cached_property
    def others(self) -> tuple[Part, ...]:
        """What stays where it is when its lid is off."""
        lid = {part.identity for part in self.lid}
        return tuple(part for part in self.parts if part.identity not in lid)

    @cached_property
    def foot(self) -> Box:
        """Its foot, where it stands. [mm]"""
        spare = [(whole - own) / 2 for whole, own in zip((self.of.length, self.of.depth), self.of.foot, strict=True)]
        low, high = self.box.low, self.box.high
        return Box((low[0] + spare[0], low[1] + spare[1], low[2]), (high[0] - spare[0], high[1] - spare[1], low[2]))

    @cached_property
    def opening(self) -> Box | None:
        """What its lid leaves open, from wood to wood: of what carries the lid, and of what lies beside it. [mm]

        None without a lid.
        """
        if not self.lid:
            return None
        seat = lowest(part.blank.low[2] for part in self.lid if part.slot.role.surface)
        top = highest(part.blank.high[2] for part in self.lid)
        blanks = [part.blank for part in self.others]
        round_it = [own for own in blanks if own.low[2] < top - TOUCH and own.high[2] >= seat - TOUCH]
        box = self.box
        middle = ((box.low[0] + box.high[0]) / 2, (box.low[1] + box.high[1]) / 2)
        found = []
        for axis in (0, 1):
            across = 1 - axis
            beside = [own for own in round_it if own.low[across] < middle[across] < own.high[across]]
            low = [own.high[axis] for own in beside if own.high[axis] <= middle[axis]]
            high = [own.low[axis] for own in beside if own.low[axis] >= middle[axis]]
            found.append((highest(low) if low else box.low[axis], lowest(high) if high else box.high[axis]))
        (x0, x1), (y0, y1) = found
        return Box((x0, y0, seat), (x1, y1, seat))

    @cached_property
    def above(self) -> float | None:
        """From its rim to the lowest wood over it; none where there is none. [mm]"""
        box = self.box
        wood = [part.blank for part in self.parts if part.blank.low[2] >= box.high[2] - TOUCH]
        over = [own.low[2] for own in wood if over_each_other(own, box)]
        return lowest(over) - self.box.high[2] if over else None

    @cached_property
    def moves(self) -> Moves:
        """The way that it comes out: up, with its lid off, or out to a side."""
        far = 10 * (self.box.high[2] + sum(b - a for a, b in zip(self.box.low, self.box.high, strict=True)))
        top = highest([self.box.high[2], *(part.blank.high[2] for part in self.lid)])
        lift = top - self.box.low[2] if self.lid or self.above is None else self.above / 2
        return moves_out([self._wood_free], self.others, lift, far, ("up", *SIDES))

    @property
    def _wood_free(self) -> Box:
        """What may meet wood when it moves: all of it but a rim that lies on it. [mm]"""
        low, high = self.box.low, self.box.high
        return Box(low, (high[0], high[1], larger(high[2] - TOUCH, low[2])))


def over_each_other(one: Box, other: Box) -> bool:
    """Whether two boxes lie over each other, seen from above."""
    return all(bool(smaller(one.high[n], other.high[n]) - larger(one.low[n], other.low[n]) > TOUCH) for n in (0, 1))


def bodies(frame: Frame, parts: Mapping[str, Part]) -> Iterator[Body]:
    """Every bin of one piece where it stands; parts by identity."""
    own = tuple(parts.values())
    length = highest(part.blank.high[0] for part in own if part.slot.role.stands)
    depth = highest(part.blank.high[1] for part in own if part.slot.role.stands)
    for thing in frame.bins:
        lid = tuple(part for part in own if _covers(part, thing, own))
        middle = _middle(lid, (0.0, length), 0) if thing.at is None else thing.at
        if thing.from_front is None:
            front = _middle([p for p in own if p.slot.role.stands], (0.0, depth), 1) - thing.depth / 2
        else:
            front = thing.from_front
        plan = Box((middle - thing.length / 2, front, 0.0), (middle + thing.length / 2, front + thing.depth, 0.0))
        bottom = _bottom(thing, plan, own)
        low, high = plan.low, plan.high
        yield Body(thing, Box((low[0], low[1], bottom), (high[0], high[1], bottom + thing.height)), own, lid)


def _covers(part: Part, thing: Bin, parts: Sequence[Part]) -> bool:
    """Whether a part belongs to the panel that covers a bin."""
    if not part.slot.group:
        return False
    section = next((p.slot.part_of for p in parts if p.slot.group == part.slot.group and p.slot.part_of), None)
    return isinstance(section, Section) and section.panel is not None and section.panel.covers == thing.name


def _middle(parts: Sequence[Part], without: tuple[float, float], axis: int) -> float:
    """The middle of some parts, or of a reach where there are none. [mm]"""
    if not parts:
        return (without[0] + without[1]) / 2
    return (lowest(p.blank.low[axis] for p in parts) + highest(p.blank.high[axis] for p in parts)) / 2


def _bottom(thing: Bin, plan: Box, parts: Sequence[Part]) -> float:
    """The height of its foot: on the floor, on what lies on its level, or hung by its rim. [mm]"""
    level = [part for part in parts if part.level == thing.on and not part.slot.group]
    if not level:
        return 0.0
    if thing.rim is not None:
        rails = [part.blank.high[2] for part in level if part.slot.role.word in ("rail", "bearer", "ledger")]
        return lowest(rails) - thing.height
    under = [part for part in level if over_each_other(part.blank, plan)]
    return highest(part.blank.high[2] for part in under or level)
