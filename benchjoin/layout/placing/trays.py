"""Trays where they lie: between the legs and what stands over their ground, up to their stop."""

from __future__ import annotations

from ...frame.faces import LOW, OPPOSITE, X, Y, looks_down
from ...frame.slots import Slot
from ...frame.tray import Tray
from ...lengths import TOUCH
from ...solids import Box
from ..blank import Blank
from .room import Reach, between_legs, highest, lowest, rails_at
from .site import Site
from .sizes import section


def tray_reach(slot: Slot, tray: Tray, site: Site, axis: int) -> Reach:
    """From where to where a tray reaches along an axis, by one of its parts. [mm]"""
    bottom = site.pick(site.rises[slot.level.name + "/" + tray.key + " long side 1"].bottom) if slot.level else 0.0
    sides = (LOW[axis], OPPOSITE[LOW[axis]])
    if axis == X:
        low, high = between_legs(site, X, tray.clear)
        ends = [_stopped(slot, site, side, bottom) for side in sides]
        low = highest([low, *(at + tray.clear for at in ends[:1] if at is not None)])
        return low, lowest([high, *(at - tray.clear for at in ends[1:] if at is not None)])
    found = []
    for side in sides:
        at = _stop_face(slot, tray, site) if tray.stop is not None and side == tray.far else None
        at = _stopped(slot, site, side, bottom) if at is None else at
        out = 0.0 if looks_down(side) else site.over[Y]
        found.append(out if at is None else at + (tray.ease if looks_down(side) else -tray.ease))
    return found[0], found[1]


def _stopped(slot: Slot, site: Site, side: str, bottom: float) -> float | None:
    """The inner face of a rail that stands over the ground of a tray at one side; nothing where none does. [mm]"""
    axis = X if side in ("left", "right") else Y
    boxes = [box for box in rails_at(slot, site, side) if box.high[2] > bottom + TOUCH]
    if not boxes:
        return None
    return highest(box.high[axis] for box in boxes) if side in LOW else lowest(box.low[axis] for box in boxes)


def _stop_face(slot: Slot, tray: Tray, site: Site) -> float:
    box = site.placed[f"{slot.level.name if slot.level else ''}/{tray.key} stop 1"].box
    return box.high[Y] if tray.far == "front" else box.low[Y]


def tray_side_blank(slot: Slot, site: Site) -> Blank:
    """One side of a tray."""
    tray, along = slot.of.tray, slot.axes[0]
    start, end = tray_reach(slot, tray, site, along)
    low, high = tray_reach(slot, tray, site, 1 - along)
    wide = site.pick(section(site.frame, slot).width)
    across = (low, low + wide) if slot.line == 1 else (high - wide, high)
    (x0, x1), (y0, y1) = ((start, end), across) if along == X else (across, (start, end))
    rise = site.rises[slot.name]
    bottom, top = site.pick(rise.bottom), site.pick(rise.top)
    return Blank(slot=slot, box=Box((x0, y0, bottom), (x1, y1, top)), flush=top - bottom)


def stop_blank(slot: Slot, site: Site) -> Blank:
    """The batten that a tray comes up against: on the far rail, its outer face flush with that of the rail."""
    hosts = [host.box for host in site.hosts(slot.hosts)]
    low, high = between_legs(site, X)
    thick = site.pick(section(site.frame, slot).thickness)
    far = slot.of.tray.far
    out = lowest(box.low[Y] for box in hosts) if far == "front" else highest(box.high[Y] for box in hosts)
    y0, y1 = (out, out + thick) if far == "front" else (out - thick, out)
    rise = site.rises[slot.name]
    return Blank(slot=slot, box=Box((low, y0, site.pick(rise.bottom)), (high, y1, site.pick(rise.top))))
