"""Heights: where each level and each of its rails stands over the floor, in every piece.

A level takes part in the run as its band, from its lowest to its highest edge. The run itself is laid out by the one
accumulator; here its members, pins and the steps of one-sided clears are read off the description.
"""

from __future__ import annotations

from collections.abc import Mapping

import attrs
import numpy as np

from ...frame.frame import Frame
from ...frame.slots import Slot
from ...frame.stack import FLUSH, Clear, Level
from ...runs import Array, Member, Pin, lay_run, least, most
from .sizes import RailSizes, rail_sizes

RUN = "Levels up from the foot"


@attrs.frozen(eq=False, repr=False, slots=False)
class Rise:
    """Bottom and top of something, each of shape (quantity,). [mm]"""

    bottom: Array
    top: Array


@attrs.frozen(eq=False, repr=False, slots=False)
class Band:
    """A level over the floor, each of its rails by name, and the sizes of these."""

    level: Level
    rise: Rise
    rails: Mapping[str, Rise]
    sizes: Mapping[str, RailSizes]


def level_bands(frame: Frame) -> tuple[Band, ...]:
    """Bands of all levels from the foot upwards.

    Raises
    ------
    RunError
        If levels and clears do not come out between two pins.
    """
    sizes = rail_sizes(frame)
    shapes = {level.name: _shape(frame, level, sizes) for level in frame.levels()}
    members = [_member(frame, place, shapes) for place in range(len(frame.stack))]
    edges = lay_run(RUN, members, _pins(frame, shapes), frame.tape)
    bands = []
    for place, level in enumerate(frame.stack):
        if isinstance(level, Level):
            own = shapes[level.name]
            datum = edges[..., place] - own.rise.bottom
            notches = {name: Rise(datum + r.bottom, _top(edges, place, own, r)) for name, r in own.rails.items()}
            rails = {name: _own(level, rise, own.sizes[name]) for name, rise in notches.items()}
            bands.append(Band(level, Rise(edges[..., place], edges[..., place + 1]), rails, own.sizes))
    return tuple(bands)


def _own(level: Level, notch: Rise, sizes: RailSizes) -> Rise:
    """The rail itself in a notch that is cut for a wider one: it lies on the level's common edge."""
    spare = sizes.notch - sizes.own.width
    if level.align == "bottoms":
        return Rise(notch.bottom, notch.top - spare)
    return Rise(notch.bottom + spare, notch.top)


def _top(edges: Array, place: int, own: Band, rail: Rise) -> Array:
    """Top of a rail, hung from the band's top edge so that a pin there is met exactly."""
    return edges[..., place + 1] - (own.rise.top - rail.top)


def _shape(frame: Frame, level: Level, sizes: Mapping[str, RailSizes]) -> Band:
    """A level over its own common edge, with its rails as wide as their notches."""
    own = frame.rails_of[level.name]
    rails = {slot.name: _over_edge(level, slot, sizes[slot.name].notch) for slot in own}
    low = least(rise.bottom for rise in rails.values())
    high = most(rise.top for rise in rails.values())
    return Band(level, Rise(low, high), rails, {slot.name: sizes[slot.name] for slot in own})


def _over_edge(level: Level, slot: Slot, width: Array) -> Rise:
    edge = np.zeros_like(width) + slot.of.raised
    return Rise(edge, edge + width) if level.align == "bottoms" else Rise(edge - width, edge)


def _member(frame: Frame, place: int, shapes: Mapping[str, Band]) -> Member:
    item = frame.stack[place]
    if isinstance(item, Level):
        own = shapes[item.name].rise
        return Member(name=item.name, size=own.top - own.bottom)
    step = _steps(frame, place, item, shapes)
    size = None if item.size is None else item.size - step
    return Member(name="clear", size=size, share=item.weight, less=step)


def _steps(frame: Frame, place: int, clear: Clear, shapes: Mapping[str, Band]) -> Array:
    """How much less than the maker's clear, measured at one side, is left between the bands."""
    step = np.zeros(frame.quantity)
    if clear.at is None:
        return step
    for near, below in ((place - 1, True), (place + 1, False)):
        item = frame.stack[near] if 0 <= near < len(frame.stack) else None
        band = shapes[item.name] if isinstance(item, Level) else None
        own = _at_side(frame, band, clear.at) if band else []
        if band and own:
            top, bottom = most(r.top for r in own), least(r.bottom for r in own)
            step = step + (band.rise.top - top if below else bottom - band.rise.bottom)
    return step


def _at_side(frame: Frame, band: Band, side: str) -> list[Rise]:
    """The rails of a level at one side."""
    return [band.rails[slot.name] for slot in frame.rails_of[band.level.name] if slot.side == side]


def _pins(frame: Frame, shapes: Mapping[str, Band]) -> list[Pin]:
    say = frame.tape.say
    pins = []
    for place, level in enumerate(frame.stack):
        if not isinstance(level, Level):
            continue
        if level.bottom is not None:
            pins.append(Pin(edge=place, at=level.bottom, name=f'"{level.name}" (bottom at {say(level.bottom)})'))
        if level.top is not None:
            pins.append(Pin(edge=place + 1, at=level.top, name=f'"{level.name}" (top at {say(level.top)})'))
        if level.flush is not None:
            pins.append(_flush(frame, place, level, shapes[level.name]))
    tallest = max(leg.of.height for leg in frame.legs())
    after = max((pin.edge for pin in pins), default=0)
    if any(isinstance(item, Clear) and item.size is None for item in frame.stack[after:]):
        pins.append(Pin(edge=len(frame.stack), at=tallest, name=f"the tallest leg's top (at {say(tallest)})"))
    return pins


def _flush(frame: Frame, place: int, level: Level, own: Band) -> Pin:
    """Pin that brings one side's rail level with the top of its legs."""
    row = FLUSH[level.flush or ""]
    top = next(leg.of.height for leg in frame.legs() if leg.side == row)
    at = top + (own.rise.top - most(rail.top for rail in _at_side(frame, own, row)))
    return Pin(edge=place + 1, at=at, name=f'"{level.name}" (flush with the {level.flush} at {frame.tape.say(top)})')
