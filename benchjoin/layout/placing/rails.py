"""Rails where they lie: from leg to leg, on the face that they go to, as deep in it as their joint lets them in."""

from __future__ import annotations

from itertools import pairwise

from ...curves import Beside, Curve
from ...frame.faces import AXIS, X, looks_down
from ...frame.slots import Slot
from ...solids import Box, Vector
from ..blank import Blank
from ..joining import let_in
from .site import Site


def rail_blank(slot: Slot, site: Site) -> Blank:
    """One rail of one piece, before corners are turned."""
    sizes, pick = site.sizes[slot.name], site.pick
    thick, flush = pick(sizes.own.thickness), pick(sizes.flush)
    legs = [leg.box for leg in site.hosts(slot.hosts)]
    low, high = _across(slot, legs, thick, let_in(slot, thick, flush))
    start, end = _along(slot, legs, site.over)
    rise = site.rises[slot.name]
    box = Box(_corner(slot, start, low, pick(rise.bottom)), _corner(slot, end, high, pick(rise.top)))
    spare = pick(sizes.notch - sizes.own.width)
    return Blank(slot=slot, box=box, flush=flush, spare=spare, shaped=_shaped(slot, legs, start, end))


def _shaped(slot: Slot, legs: list[Box], start: float, end: float) -> dict[str, Curve]:
    """Curves of its edges by face, one in each bay, told from its datum end."""
    edges = {"top": slot.of.upper_edge, "bottom": slot.of.lower_edge}
    if not any(edges.values()):
        return {}
    axis = slot.axes[0]
    bays = [(start, end)] if slot.between else [(a.high[axis], b.low[axis]) for a, b in pairwise(legs)]
    return {
        face: Beside(tuple(edge.curve(low - start, high - start) for low, high in bays))
        for face, edge in edges.items()
        if edge is not None
    }


def _across(slot: Slot, legs: list[Box], thick: float, deep: float) -> tuple[float, float]:
    """Extent of a rail across its run: by the face it goes to, or in the middle of its legs."""
    axis = AXIS[slot.face]
    lows, highs = [box.low[axis] for box in legs], [box.high[axis] for box in legs]
    if slot.of.face == "middle" or (slot.side == "cross" and slot.of.face == "outer"):
        low = (max(lows) + min(highs) - thick) / 2
        return low, low + thick
    if looks_down(slot.face):
        face = min(lows)
        return face + deep - thick, face + deep
    face = max(highs)
    return face - deep, face - deep + thick


def _along(slot: Slot, legs: list[Box], over: tuple[float, float]) -> tuple[float, float]:
    """Extent of a rail along its run: between its legs, or over them with its overhang."""
    axis = slot.axes[0]
    if slot.between:
        return legs[0].high[axis], legs[-1].low[axis]
    return -slot.of.overhang, over[axis] + slot.of.overhang


def _corner(slot: Slot, along: float, across: float, up: float) -> Vector:
    return (along, across, up) if slot.axes[0] == X else (across, along, up)
