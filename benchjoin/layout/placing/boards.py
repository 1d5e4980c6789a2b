"""Boards where they lie: a run across them, laid out by the accumulator, and each from end to end."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from ...errors import RunOverfull
from ...frame.boards import Boards
from ...frame.faces import OPPOSITE, X, Z, looks_down
from ...frame.frame import Frame
from ...frame.identity import of_piece
from ...frame.slots import Slot
from ...frame.top import Section
from ...frame.tray import Tray
from ...lengths import TOUCH
from ...phrases import counted
from ...runs import Member, Pin, lay_run
from ...solids import Box
from ..blank import Blank
from .room import Reach, highest, kept_off, lowest, reach
from .site import Lines, Site
from .sizes import section
from .tops import section_reach
from .trays import tray_reach

OPEN_CLEAR = "clear"


def board_blank(slot: Slot, site: Site) -> Blank:
    """One board of one piece."""
    level = slot.level.name if slot.level else ""
    if (level, slot.run) not in site.lines:
        own = [other for other in site.frame.carried() if other.level is slot.level and other.run == slot.run]
        site.lines[level, slot.run] = board_lines(own, site)
    low, high = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
    low[slot.axes[1]], high[slot.axes[1]] = site.lines[level, slot.run][slot.line - 1]
    if slot.upright:
        hosts, axis = [host.box for host in site.hosts(slot.hosts)], slot.axes[2]
        low[Z] = lowest(box.low[Z] for box in hosts) - slot.of.bottom
        high[Z] = highest(box.high[Z] for box in hosts) + slot.of.top
        down, thick = looks_down(slot.face), site.pick(section(site.frame, slot).thickness)
        face = lowest(box.low[axis] for box in hosts) if down else highest(box.high[axis] for box in hosts)
        low[axis], high[axis] = (face - thick, face) if down else (face, face + thick)
    else:
        low[slot.axes[0]], high[slot.axes[0]] = board_reach(slot, site, slot.axes[0])
        rise = site.rises[slot.name]
        low[Z], high[Z] = site.pick(rise.bottom), site.pick(rise.top)
        _end_at_legs(slot, site, low, high)
    along = slot.axes[0]
    edges = {}
    if slot.number == 1 and slot.of.edge is not None:
        edges[slot.true_edge] = slot.of.edge
    if slot.far and slot.of.far_edge is not None:
        edges[OPPOSITE[slot.true_edge]] = slot.of.far_edge
    shaped = {face: edge.curve(0.0, high[along] - low[along]) for face, edge in edges.items()}
    return Blank(slot=slot, box=Box((low[0], low[1], low[2]), (high[0], high[1], high[2])), shaped=shaped)


def board_reach(slot: Slot, site: Site, axis: int) -> Reach:
    """From where to where boards reach along an axis: on a level, in a section of a top, on a tray. [mm]"""
    if isinstance(slot.part_of, Tray):
        return tray_reach(slot, slot.part_of, site, axis)
    if isinstance(slot.part_of, Section) and axis == X:
        low, high = section_reach(slot, slot.part_of, site)
        return low - slot.of.left, high + slot.of.right
    return reach(slot, site, axis)


def _end_at_legs(slot: Slot, site: Site, low: list[float], high: list[float]) -> None:
    """Let a board end at a leg that takes all of its width."""
    along, across = slot.axes[:2]
    clear = kept_off(slot.of, site)
    for leg in site.frame.legs():
        box = site.placed[leg.name].box
        if box.low[across] - clear > low[across] + TOUCH or box.high[across] + clear < high[across] - TOUCH:
            continue
        if box.high[Z] <= low[Z] + TOUCH or box.high[along] <= low[along] or box.low[along] >= high[along]:
            continue
        if box.low[along] - clear <= low[along] + TOUCH:
            low[along] = box.high[along] + clear
        elif box.high[along] + clear >= high[along] - TOUCH:
            high[along] = box.low[along] - clear


def board_lines(slots: Sequence[Slot], site: Site) -> Lines:
    """Low and high edge of every board of a run, across the boards. [mm]

    Raises
    ------
    RunOverfull
        If they do not go in, with the gap that they are given or with none.
    """
    run, axis = slots[0].of, slots[0].axes[1]
    start, end = board_reach(slots[0], site, axis)
    sizes = [None if _is_open(slot, site.frame) else site.pick(section(site.frame, slot).width) for slot in slots]
    room = end - start
    name = f"{slots[0].level.name if slots[0].level else ''}: {run.key} over {site.frame.tape.say(room)}"
    true = 0.0 if run.remainder == "gaps" else run.gap or 0.0
    least = sum((size for size in sizes if size is not None), 0.0) + true * (len(slots) - 1)
    if least > room + TOUCH:
        raise too_much(name, run, len(slots), least, room, site.frame)
    members, first = _members(run, sizes)
    pins = [Pin(edge=len(members), at=room, name="their far side")]
    edges = lay_run(name, members, pins, site.frame.tape)
    at = [site.pick(np.atleast_1d(edges[..., n])) for n in range(len(members) + 1)]
    return [(start + at[first + 2 * n], start + at[first + 2 * n + 1]) for n in range(len(slots))]


def too_much(name: str, run: Boards, count: int, least: float, room: float, frame: Frame) -> RunOverfull:
    """The error for boards that do not go in, with the numbers and a way out. [mm]"""
    say, over = frame.tape.say, least - room
    true = run.gap is not None and run.remainder != "gaps" and count > 1
    gaps = f" and {count - 1} gaps of {say(run.gap or 0.0)}" if true else ""
    width, step = run.stock.width or 0.0, run.gap or 0.0 if true else 0.0
    gap = (room - count * width) / max(count - 1, 1)
    ways = [f"gaps of {frame.tape.amount(gap)}"] if true and gap >= 0 else []
    free, widest = (np.asarray(size, dtype=float) for size in (room, width + step))
    fit = int((free.min() + step + TOUCH) // widest.max()) if width else 0
    ways += [counted(fit, "board") if 0 < fit < count else "narrower boards"]
    take = "take" if count > 1 else "takes"
    said = (
        f"{name}: {counted(count, 'board')}{gaps} {take} {say(least)}, {frame.tape.amount(over)} too much. Take "
        f"{' or '.join(ways)}, or let them reach over further."
        if free.min() > TOUCH
        else f"{name}: nothing is left for boards between the margins. Let them stop less short of both sides."
    )
    pieces = np.asarray(over) > TOUCH
    return RunOverfull(said, run=name, lower_pin="", upper_pin="", over=float(np.asarray(over).max()), pieces=pieces)


def _is_open(slot: Slot, frame: Frame) -> bool:
    """Whether the width of a board follows from the room: it is ripped to suit, and nobody has measured it yet."""
    width = slot.stock.width or 0.0
    if not slot.of.solved or abs(slot.width - width) <= TOUCH:
        return False
    names = [slot.name, *(of_piece(n, slot.name) for n in range(1, frame.quantity + 1))]
    return not any("width" in frame.measured.get(name, {}) or name in frame.finished for name in names)


def _members(run: Boards, sizes: Sequence[float | None]) -> tuple[list[Member], int]:
    """Boards and gaps in order, and the place of the first board among them."""
    found: list[Member] = []
    shared = run.remainder == "gaps" or (run.remainder != "margins" and None not in sizes)
    gap = None if shared else run.gap or 0.0
    for number, size in enumerate(sizes, 1):
        found += [Member(name=f"{run.called} {number}", size=size), Member(name="gap", size=gap)]
    if len(sizes) > 1 or not shared:
        found.pop()  # a single board has the open clear behind it
    if run.remainder == "margins":
        return [Member(name="margin"), *found, Member(name="margin")], 1
    return found, 0
