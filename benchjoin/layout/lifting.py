"""Lifting: what comes out of a frame without a tool, panels and trays, and how it rests and leaves."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property

import attrs

from ..frame.top import Section
from ..frame.tray import Tray
from ..runs import larger, smaller
from ..solids import Box, boxes, vector
from .joints.meeting import Joint
from .parts import Part
from .placing.room import highest, lowest
from .swept import Moves, moves_out

GAP = 5.0
"""How far above its seat a thing is carried out. [mm]"""
LONG = 1000.0
"""More than anything near reaches. [mm]"""


@attrs.frozen(eq=False, slots=False)
class LiftOut:
    """Parts of one piece that come out together: a panel of a top, or a tray."""

    name: str
    of: Section | Tray
    parts: tuple[Part, ...]
    others: tuple[Part, ...]
    joints: tuple[Joint, ...]

    @property
    def ease(self) -> tuple[float, float]:
        """How far it may be pushed along the length and across it, either way. [mm]"""
        if isinstance(self.of, Tray):
            return self.of.clear, self.of.ease
        panel, along = self.of.panel, self.of.boards is not None and self.of.boards.run == "along"
        if panel is None:
            return 0.0, 0.0
        return (panel.ease, panel.clear) if along else (panel.clear, panel.ease)

    @property
    def bearing(self) -> float:
        """How much of each end has to rest on wood. [mm]"""
        return self.of.bearing if isinstance(self.of, Tray) else self.of.top.bearing

    @property
    def box(self) -> Box:
        """All of it."""
        boxes = [part.blank for part in self.parts]
        low = vector(lowest(box.low[axis] for box in boxes) for axis in range(3))
        return Box(low, vector(highest(box.high[axis] for box in boxes) for axis in range(3)))

    @cached_property
    def seats(self) -> tuple[Joint, ...]:
        """Where its parts rest on what stays."""
        own = {part.identity for part in self.parts}
        return tuple(j for j in self.joints if j.how.lies and not j.how.held and j.guest in own and j.host not in own)

    @cached_property
    def moves(self) -> Moves:
        """The way that it comes out: as its tray says, or up, and where that does not go lifted and drawn out."""
        box = self.box
        far = 10 * (box.high[0] + box.high[1] + box.high[2] + LONG)
        order: Sequence[str] = ("up", "front", "back", "left", "right")
        if isinstance(self.of, Tray):
            order = (self.of.out,)
        seat = highest([box.low[2], *(joint.contact.high[2] for joint in self.seats)])
        wood = [own for part in self.parts for own in boxes(part.blank, [cut.box for cut in part.cuts])]
        return moves_out(wood, self.others, seat - box.low[2] + GAP, far, order)

    def bearings(self) -> Iterable[tuple[Joint, float]]:
        """Each seat at an end of one of its parts, and how much rests there when it is pushed the other way. [mm]"""
        stay = {part.identity: part for part in self.others}
        for part in self.parts:
            axis = part.slot.axes[0]
            own = sorted((j for j in self.seats if j.guest == part.identity), key=lambda j: j.contact.low[axis])
            if len(own) < 2:
                continue
            push = self.ease[axis]
            for joint, by in ((own[0], push), (own[-1], -push)):
                host = stay[joint.host].blank
                low = larger(part.blank.low[axis] + by, host.low[axis])
                yield joint, smaller(part.blank.high[axis] + by, host.high[axis]) - low


def lift_outs(parts: Sequence[Part], joints: Sequence[Joint]) -> tuple[LiftOut, ...]:
    """All that comes out of one piece, in the order of its parts."""
    groups: dict[str, list[Part]] = {}
    for part in parts:
        if part.slot.group:
            groups.setdefault(part.slot.group, []).append(part)
    found = []
    for name, own in groups.items():
        others = tuple(part for part in parts if part.slot.group != name)
        of = next(part.slot.part_of for part in own if part.slot.part_of is not None)
        met = tuple(joint for joint in joints if joint.guest in {part.identity for part in own})
        found.append(LiftOut(name, of, tuple(own), others, met))
    return tuple(found)


def fixed_in(group: LiftOut) -> Mapping[str, Sequence[Joint]]:
    """By part of a group its joints with other parts of the group."""
    own = {part.identity for part in group.parts}
    found: dict[str, list[Joint]] = {name: [] for name in own}
    for joint in group.joints:
        if joint.guest in own and joint.host in own:
            found[joint.guest].append(joint)
            found[joint.host].append(joint)
    return found
