"""Bearers where they lie: spread between what holds up the boards already, from rail to rail."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

import numpy as np

from ...errors import RunOverfull
from ...frame.faces import AXIS, LOW, OPPOSITE, X, Y, looks_down
from ...frame.slots import Slot
from ...lengths import TOUCH
from ...runs import Member, Pin, lay_run
from ...solids import Box
from ..blank import Blank
from .room import between_legs, highest, lowest, rails_at
from .site import Lines, Site
from .sizes import section


def bearer_blank(slot: Slot, site: Site) -> Blank:
    """One bearer of one piece."""
    axis, rise = slot.axes[0], site.rises[slot.name]
    bottom, top = site.pick(rise.bottom), site.pick(rise.top)
    if slot.of.planted:
        across = _beside(slot, site)
        start, end = _in_bay(slot, site)
    else:
        level = slot.level.name if slot.level else ""
        if (level, slot.run) not in site.lines:
            own = [other for other in site.frame.carried() if other.level is slot.level and other.run == slot.run]
            site.lines[level, slot.run] = bearer_lines(own, site)
        low, _ = site.lines[level, slot.run][slot.line - 1]
        across = (low, low + site.pick(section(site.frame, slot).along(slot, 1 - axis)))
        start, end = _from_rail_to_rail(slot, site, across)
    (x0, x1), (y0, y1) = ((start, end), across) if axis == X else (across, (start, end))
    return Blank(slot=slot, box=Box((x0, y0, bottom), (x1, y1, top)), flush=top - bottom)


def supports(slot: Slot, site: Site) -> list[tuple[float, float]]:
    """Faces between which bearers are spread: what runs their way and holds up boards, from the datum. [mm]

    At an end without a rail it is the face of the legs, from which the first bearer starts.
    """
    axis = 1 - slot.axes[0]
    ends = (LOW[axis], OPPOSITE[LOW[axis]])
    low, high = between_legs(site, axis)
    start = [(box.low[axis], box.high[axis]) for box in rails_at(slot, site, ends[0])] or [(low, low)]
    end = [(box.low[axis], box.high[axis]) for box in rails_at(slot, site, ends[1])] or [(high, high)]
    cross = [(box.low[axis], box.high[axis]) for box in rails_at(slot, site, "cross")] if axis == X else []
    first = (lowest(a for a, _ in start), highest(b for _, b in start))
    last = (lowest(a for a, _ in end), highest(b for _, b in end))
    return [first, *cross, last]


def bearer_lines(slots: Sequence[Slot], site: Site) -> Lines:
    """Low and high edge of every line of bearers, across them. [mm]

    Raises
    ------
    RunOverfull
        If they do not go in between what they stand between.
    """
    run, axis = slots[0].of, 1 - slots[0].axes[0]
    first = {slot.line: slot for slot in reversed(slots)}
    wide = [site.pick(section(site.frame, first[line]).along(first[line], axis)) for line in sorted(first)]
    if run.at is not None:
        return [(at - size / 2, at + size / 2) for at, size in zip(run.at, wide, strict=True)]
    faces = supports(slots[0], site)
    level = slots[0].level.name if slots[0].level else ""
    shares = site.frame.counts[level, run.key].shares if run.solved else (len(wide),)
    faces = faces if run.solved else [faces[0], faces[-1]]
    found: list[tuple[float, float]] = []
    for number, (before, after) in enumerate(itertools.pairwise(faces)):
        own = wide[len(found) : len(found) + shares[number]]
        held = (before[1] > before[0] + TOUCH, after[1] > after[0] + TOUCH)
        found += _spread(f"{level}: {run.key}", own, before[1], after[0], held, site)
    return found


def _spread(
    name: str, sizes: Sequence[float], start: float, end: float, held: tuple[bool, bool], site: Site
) -> list[tuple[float, float]]:
    """Bearers with equal clears between them; one stands at an end where nothing else holds the boards. [mm]"""
    if not sizes:
        return []
    room, least = end - start, sum(sizes)
    if least > room + TOUCH:
        say = site.frame.tape.say
        said = (
            f"{name}: {len(sizes)} bearers take {say(least)}, and there is room for {say(room)}: "
            f"{site.frame.tape.amount(least - room)} too much. Take fewer, or thinner ones."
        )
        pieces = np.asarray(least - room) > TOUCH
        raise RunOverfull(said, run=name, lower_pin="", upper_pin="", over=float(np.max(least - room)), pieces=pieces)
    alone = len(sizes) == 1
    members = [Member(name="clear")] if held[0] or alone else []
    first = len(members)
    for number, size in enumerate(sizes, 1):
        members += [Member(name=f"bearer {number}", size=size), Member(name="clear")]
    if not (held[1] or alone):
        members.pop()
    edges = lay_run(name, members, [Pin(edge=len(members), at=room, name="the far side")], site.frame.tape)
    at = [site.pick(np.atleast_1d(edges[..., n])) for n in range(len(members) + 1)]
    return [(start + at[first + 2 * n], start + at[first + 2 * n + 1]) for n in range(len(sizes))]


def _from_rail_to_rail(slot: Slot, site: Site, across: tuple[float, float]) -> tuple[float, float]:
    """Extent of a bearer: between what it butts against, over what it crosses and what it reaches past that. [mm]"""
    axis, run = slot.axes[0], slot.of
    how, names = slot.joints[0]
    butts = [names for joint, names in slot.joints if joint.between]
    stops = _in_line(site.hosts(butts[0]), across, axis) if butts else []
    over = [] if how.between else _in_line(site.hosts(names), across, axis)
    both = [*over, *stops]
    middle = (lowest(box.low[axis] for box in both) + highest(box.high[axis] for box in both)) / 2
    if len(both) == 1:
        middle = both[0].high[axis] if both[0].low[axis] < site.over[axis] / 2 else both[0].low[axis]
    low = [box for box in both if (box.low[axis] + box.high[axis]) / 2 < middle]
    high = [box for box in both if box not in low]
    first, last = getattr(run, LOW[axis]), getattr(run, OPPOSITE[LOW[axis]])
    start = highest(box.high[axis] if box in stops else box.low[axis] - first for box in low) if low else 0.0
    end = lowest(box.low[axis] if box in stops else box.high[axis] + last for box in high) if high else site.over[axis]
    if over and not stops and len(over) > 1:
        start = lowest(box.low[axis] for box in over) - first
        end = highest(box.high[axis] for box in over) + last
    return start, end


def _in_line(hosts: Sequence[Blank], across: tuple[float, float], axis: int) -> list[Box]:
    """Those of some hosts that a bearer comes to: of the rails of several bays the one before it, or all."""
    middle, own = (across[0] + across[1]) / 2, 1 - axis
    boxes = [host.box for host in hosts]
    return [box for box in boxes if box.low[own] <= middle and middle <= box.high[own]] or boxes


def _beside(slot: Slot, site: Site) -> tuple[float, float]:
    """Extent of a ledger across its run: on the inner face of its rail. [mm]"""
    boxes, axis = [host.box for host in site.hosts(slot.hosts)], AXIS[slot.face]
    thick = site.pick(section(site.frame, slot).along(slot, axis))
    if looks_down(slot.face):
        face = lowest(box.low[axis] for box in boxes)
        return face - thick, face
    face = highest(box.high[axis] for box in boxes)
    return face, face + thick


def _in_bay(slot: Slot, site: Site) -> tuple[float, float]:
    """Extent of a ledger along its run: between the legs of its bay, and the rails that cross there. [mm]"""
    axis, frame = slot.axes[0], site.frame
    if getattr(slot.of, "on_legs", False):
        ends = [rails_at(slot, site, side) for side in ("left", "cross", "right")]
        faces = [(0.0, 0.0), *((box.low[X], box.high[X]) for own in ends for box in own), (site.over[X], site.over[X])]
        own = faces[bool(ends[0]) :][: len(ends[1]) + 2]
        return own[slot.line - 1][1], own[slot.line][0]
    if axis == Y:
        start, end = between_legs(site, Y)
        before, after = rails_at(slot, site, "front"), rails_at(slot, site, "back")
    else:
        place = frame.pairs().index(slot.pair)
        start, end = site.pick(site.pairs[slot.pair][1]), site.pick(site.pairs[frame.pairs()[place + 1]][0])
        cross = rails_at(slot, site, "cross")
        before = cross[place - 1 : place] if place else rails_at(slot, site, "left")
        last = place + 2 == len(frame.pairs())
        after = rails_at(slot, site, "right") if last else cross[place : place + 1]
    start = highest([start, *(box.high[axis] for box in before)])
    return start, lowest([end, *(box.low[axis] for box in after)])
