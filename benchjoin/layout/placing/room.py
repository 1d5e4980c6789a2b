"""Room: from where to where the boards of a level reach, along them and across, in one piece.

They cover from face to face of the frame; a rail that stands over them stops them at its inner face.
"""

from __future__ import annotations

import functools
from collections.abc import Iterable

from ...frame.boards import Boards
from ...frame.faces import LOW, OPPOSITE, Z
from ...frame.slots import Slot
from ...frame.top import Section
from ...lengths import TOUCH
from ...runs import larger, smaller
from ...solids import Box
from .site import Site

Reach = tuple[float, float]


def highest(ends: Iterable[float]) -> float:
    """The highest of some places, variant by variant. [mm]"""
    return functools.reduce(larger, ends)


def lowest(ends: Iterable[float]) -> float:
    """The lowest of some places, variant by variant. [mm]"""
    return functools.reduce(smaller, ends)


def reach(slot: Slot, site: Site, axis: int) -> Reach:
    """From where to where boards reach along an axis of the world, by the first of them. [mm]"""
    run, sides = slot.of, (LOW[axis], OPPOSITE[LOW[axis]])
    if slot.upright:
        low, high = _on_face(slot, site, axis)
    else:
        low, high = (edge(slot, site, axis, side) for side in sides)
    if run.within == "legs" and (axis == slot.axes[0] or slot.upright):
        inner = between_legs(site, axis, kept_off(run, site))
        low, high = larger(low, inner[0]), smaller(high, inner[1])
    return low - getattr(run, sides[0]), high + getattr(run, sides[1])


def between_legs(site: Site, axis: int, clear: float = 0.0) -> Reach:
    """From the inner faces of the legs at one end to those at the other, less a clear at both. [mm]"""
    ends = (("left", "right"), ("front", "back"))[axis]
    legs = [site.placed[leg.name] for leg in site.frame.legs()]
    own = [[leg.box for leg in legs if end in (leg.slot.pair, leg.slot.side)] for end in ends]
    return highest(box.high[axis] for box in own[0]) + clear, lowest(box.low[axis] for box in own[1]) - clear


def rails_at(slot: Slot, site: Site, side: str) -> list[Box]:
    """The rails of its level at one side."""
    level = slot.level.name if slot.level else ""
    return [site.placed[rail.name].box for rail in site.frame.rails_of.get(level, ()) if rail.side == side]


def edge(slot: Slot, site: Site, axis: int, side: str) -> float:
    """Where boards end at one side, before they reach over: at the face of the frame, or inside a rail. [mm]"""
    rails, down, top = rails_at(slot, site, side), side in LOW, site.pick(site.rises[slot.name].bottom)
    stops = [box for box in rails if slot.of.within == "rails" or box.high[Z] > top + TOUCH]
    ease = _ease(slot, axis)
    if stops:
        return highest(b.high[axis] for b in stops) + ease if down else lowest(b.low[axis] for b in stops) - ease
    if down:
        return lowest([0.0, *(box.low[axis] for box in rails)])
    return highest([site.over[axis], *(box.high[axis] for box in rails)])


def _ease(slot: Slot, axis: int) -> float:
    """What a panel keeps off what stops it: along its boards for lifting and grit, across them for movement. [mm]"""
    panel = slot.part_of.panel if isinstance(slot.part_of, Section) else None
    if panel is None:
        return 0.0
    return panel.ease if axis == slot.axes[0] else panel.clear


def _on_face(slot: Slot, site: Site, axis: int) -> Reach:
    """What upright boards cover: the frame from leg to leg, or their rails from end to end. [mm]"""
    if slot.of.within == "rails":
        boxes = [host.box for host in site.hosts(slot.hosts)]
        return lowest(box.low[axis] for box in boxes), highest(box.high[axis] for box in boxes)
    return 0.0, site.over[axis]


def kept_off(run: Boards, site: Site) -> float:
    """What boards keep off legs. [mm]"""
    return site.frame.fit_of("cut round") if run.clear is None else run.clear
