"""Tops where they lie: sections in a run along the length, supports under their joints, cleats under their panels."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np

from ...errors import RunOverfull
from ...frame.faces import X, Y, Z
from ...frame.slots import Slot
from ...frame.top import Section
from ...lengths import TOUCH
from ...runs import Member, Pin, larger, lay_run, smaller
from ...solids import Box
from ..blank import Blank
from .room import Reach, edge, highest, lowest
from .site import Lines, Site
from .sizes import section as section_of


def section_reach(slot: Slot, section: Section, site: Site) -> Reach:
    """From where to where a section reaches along the length, by one of its boards. [mm]

    Raises
    ------
    RunError
        If the sections of the top do not come out over what it covers.
    """
    key = (slot.level.name if slot.level else "", section.top.key)
    if key not in site.lines:
        site.lines[key] = _edges(slot, section, site)
    return site.lines[key][section.place]


def _edges(slot: Slot, section: Section, site: Site) -> Lines:
    """Low and high edge of every section of a top. [mm]"""
    top = section.top
    low, high = (edge(slot, site, X, side) for side in ("left", "right"))
    low, high = low - top.left, high + top.right
    parts = top.parts()
    members: list[Member] = []
    for before, own in zip((None, *parts[:-1]), parts, strict=True):
        if before is not None:
            members.append(Member(name="clear", size=before.clear_to(own)))
        members.append(Member(name=own.key, size=own.width, share=own.share))
    name = f"{slot.level.name if slot.level else ''}: sections of the {top.key}"
    known: Any = sum(member.size for member in members if member.size is not None)
    if known > high - low + TOUCH:
        raise _too_wide(name, known, high - low, site)
    pins = [Pin(edge=0, at=0.0, name="its left end"), Pin(edge=len(members), at=high - low, name="its right end")]
    found = lay_run(name, members, pins, site.frame.tape)
    at = [low + site.pick(np.atleast_1d(found[..., n])) for n in range(len(members) + 1)]
    return [(at[2 * n], at[2 * n + 1]) for n in range(len(parts))]


def _too_wide(name: str, known: float, room: float, site: Site) -> RunOverfull:
    tape = site.frame.tape
    said = (
        f"{name}: they and what is left between them take {tape.say(known)}, and the top is {tape.say(room)} long: "
        f"{tape.amount(known - room)} too much. Make a section narrower, or leave the width of one open."
    )
    pieces = np.asarray(known - room) > TOUCH
    return RunOverfull(said, run=name, lower_pin="", upper_pin="", over=float(np.max(known - room)), pieces=pieces)


def inside(boxes: Sequence[Box], axis: int, reach: Reach) -> Reach:
    """From the inner face of what stands at the low end to that at the high end, or the reach where nothing does."""
    middle = (reach[0] + reach[1]) / 2
    near = [box for box in boxes if (box.low[axis] + box.high[axis]) / 2 < middle]
    far = [box for box in boxes if box not in near]
    return highest([reach[0], *(box.high[axis] for box in near)]), lowest([reach[1], *(box.low[axis] for box in far)])


def stretch(boxes: Sequence[Box], axis: int, reach: Reach, ease: float) -> Reach:
    """The longest stretch of a reach where nothing stands, less an ease at what ends it. [mm]"""
    found, start = [], reach[0]
    for box in sorted(boxes, key=lambda box: box.low[axis]):
        found.append((start, smaller(box.low[axis] - ease, reach[1])))
        start = larger(start, box.high[axis] + ease)
    found.append((start, reach[1]))
    best = found[0]
    for own in found[1:]:
        best = own if own[1] - own[0] > best[1] - best[0] + TOUCH else best
    return best


def cleat_blank(slot: Slot, site: Site) -> Blank:
    """One of the two cleats of a panel: inside what carries the ends of its boards, square to them."""
    panel, along = slot.of.section.panel, slot.axes[0]
    boards = [
        other for other in site.frame.carried_of[slot.level.name if slot.level else ""] if other.name in slot.hosts
    ]
    boxes = [site.placed[board.name].box for board in boards]
    reach = (lowest(box.low[along] for box in boxes), highest(box.high[along] for box in boxes))
    across = (lowest(box.low[1 - along] for box in boxes), highest(box.high[1 - along] for box in boxes))
    rise = site.rises[slot.name]
    bottom, top = site.pick(rise.bottom), site.pick(rise.top)
    hosts = [site.placed[name] for name in dict.fromkeys(name for board in boards for name in board.hosts)]
    crossed = [host.box for host in hosts if host.axis == 1 - along and _meets(host.box, 1 - along, across)]
    start, end = stretch(crossed, along, reach, panel.clear)
    legs = [site.placed[leg.name].box for leg in site.frame.legs()]
    beside = [box for box in legs if box.high[Z] > bottom and box.low[Z] < top]
    beside += [host.box for host in hosts if host.axis == along]
    low, high = inside([box for box in beside if _meets(box, along, (start, end))], 1 - along, across)
    wide = site.pick(section_of(site.frame, slot).width)
    near = low + panel.ease if slot.line == 1 else high - panel.ease - wide
    (x0, x1), (y0, y1) = ((start, end), (near, near + wide))[:: 1 if along == X else -1]
    return Blank(slot=slot, box=Box((x0, y0, bottom), (x1, y1, top)))


def _meets(box: Box, axis: int, reach: Reach) -> bool:
    """Whether a box lies within a reach along an axis, or partly."""
    return bool(box.low[axis] < reach[1] - TOUCH and box.high[axis] > reach[0] + TOUCH)


def support_blank(slot: Slot, site: Site) -> Blank:
    """A bearer under the joint of two sections, or the one of two that is beside it."""
    top = slot.of.top
    level = slot.level.name if slot.level else ""
    board = next(other for other in site.frame.carried_of[level] if getattr(other.part_of, "top", None) is top)
    sections = top.parts()
    before, after = (section_reach(board, sections[slot.line + n], site) for n in (0, 1))
    middle = (before[1] + after[0]) / 2
    thick = site.pick(section_of(site.frame, slot).thickness)
    own = [other for other in site.frame.carried_of[level] if other.run == slot.run and other.line == slot.line]
    start = middle - thick * (len(own) / 2 - own.index(slot))
    hosts = [host.box for host in site.hosts(slot.hosts)]
    low, high = inside(hosts, Y, (lowest(b.low[Y] for b in hosts), highest(b.high[Y] for b in hosts)))
    rise = site.rises[slot.name]
    return Blank(slot=slot, box=Box((start, low, site.pick(rise.bottom)), (start + thick, high, site.pick(rise.top))))
