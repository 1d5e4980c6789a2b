"""Heights: where each level and each of its rails stands over the floor, in every piece.

A level takes part in the run as its band, from its lowest to its highest edge. The run itself is laid out by the one
accumulator; here its members, pins and the steps of one-sided clears are read off the description.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

import attrs
import numpy as np

from ...errors import RunError
from ...frame.clear import Clear
from ...frame.frame import Frame
from ...frame.slots import Slot
from ...frame.stack import FLUSH, Level, clear_name
from ...runs import Array, Member, Pin, lay_run, least, most
from .layers import Rise, layers
from .sizes import RailSizes, heights, rail_sizes

RUN = "Levels up from the foot"


@attrs.frozen(eq=False, repr=False, slots=False)
class Band:
    """A level over the floor, each of its rails by name, and the sizes of these.

    carried holds what lies on it, legs how high those stand that are as high as it is, by name.
    """

    level: Level
    rise: Rise
    rails: Mapping[str, Rise]
    sizes: Mapping[str, RailSizes]
    carried: Mapping[str, Rise]
    legs: Mapping[str, Rise]

    @property
    def size(self) -> Array:
        """From its lowest to its highest edge. [mm]"""
        return self.rise.top - self.rise.bottom

    @property
    def surface(self) -> Array:
        """The upper face of what lies on it. [mm]"""
        return most(rise.top for rise in self.carried.values())

    @property
    def rises(self) -> Mapping[str, Rise]:
        """All that it says of heights, by name."""
        return {**self.rails, **self.carried, **self.legs}

    def at_side(self, slots: Iterable[Slot], side: str) -> list[Rise]:
        """Its rails at one side; slots are those of the level."""
        return [self.rails[slot.name] for slot in slots if slot.side == side]


@attrs.frozen(eq=False, repr=False, slots=False)
class Reach:
    """How far the clears of a stack reach that are measured at one side: to the nearest rail on that side.

    Below and above the bands beside such a clear there may lie levels that have no rail there; they and the clears
    between are passed.
    """

    frame: Frame
    shapes: Mapping[str, Band]
    asked: set[int] = attrs.field(factory=set)

    def step(self, place: int) -> Array:
        """How much less than the maker's clear is left between the bands beside it. [mm]

        Raises
        ------
        RunError
            If an open clear lies between it and the rail that it reaches to.
        """
        clear = self.frame.stack[place]
        if not isinstance(clear, Clear) or clear.at is None:
            return np.zeros(self.frame.quantity)
        if clear.at == "surface":
            return self._surface(place - 1)
        self.asked.add(place)
        found = self._to(place, clear.at, below=True) + self._to(place, clear.at, below=False)
        self.asked.discard(place)
        return found

    def _surface(self, place: int) -> Array:
        """How far what a level carries ends below the top of its band; less than nothing where above it. [mm]"""
        level = self.frame.stack[place]
        own = self.shapes[level.name if isinstance(level, Level) else ""]
        return own.rise.top - own.surface

    def _to(self, place: int, side: str, *, below: bool) -> Array:
        """From the clear to the nearest rail on its side, or to the foot or the top of the stack. [mm]"""
        far = np.zeros(self.frame.quantity)
        for near in range(place - 1, -1, -1) if below else range(place + 1, len(self.frame.stack)):
            item = self.frame.stack[near]
            if isinstance(item, Clear):
                far = far + self._clear(near, place)
                continue
            band = self.shapes[item.name]
            rails = band.at_side(self.frame.rails_of[item.name], side)
            if rails:
                edge = band.rise.top - most(r.top for r in rails) if below else least(r.bottom for r in rails)
                return far + (edge if below else edge - band.rise.bottom)
            far = far + band.size
        return far if below else np.zeros(self.frame.quantity)

    def _clear(self, near: int, asking: int) -> Array:
        """A clear that is passed, between the bands beside it. [mm]"""
        clear = self.frame.stack[near]
        if not isinstance(clear, Clear) or clear.size is None or near in self.asked:
            name = clear_name(self.frame.stack, asking)
            raise RunError(
                f"{RUN}: the {name} is measured to a rail beyond the {clear_name(self.frame.stack, near)}, which is "
                "not known before. Give that one a size over the band, or measure this one there.",
                run=RUN,
            )
        return clear.size - self.step(near)


def level_bands(frame: Frame) -> tuple[Band, ...]:
    """Bands of all levels from the foot upwards.

    Raises
    ------
    RunError
        If levels and clears do not come out between two pins.
    """
    sizes = rail_sizes(frame)
    shapes = {level.name: _shape(frame, level, sizes) for level in frame.levels()}
    edges = lay_run(RUN, _members(frame, shapes), _pins(frame, shapes), frame.tape)
    bands = []
    for place, level in enumerate(frame.stack):
        if isinstance(level, Level):
            own = shapes[level.name]
            datum = edges[..., place] - own.rise.bottom
            notches = {name: Rise(datum + r.bottom, _top(edges, place, own, r)) for name, r in own.rails.items()}
            rails = {name: _own(level, rise, own.sizes[name]) for name, rise in notches.items()}
            rise = Rise(edges[..., place], edges[..., place + 1])
            carried = {name: Rise(datum + r.bottom, datum + r.top) for name, r in own.carried.items()}
            bands.append(Band(level, rise, rails, own.sizes, carried, _legs(frame, level, notches)))
    return tuple(bands)


def _legs(frame: Frame, level: Level, notches: Mapping[str, Rise]) -> dict[str, Rise]:
    """Legs whose height is left open, as high as the rail of their row that is flush with them.

    Raises
    ------
    RunError
        If nothing says how high the level is.
    """
    row = FLUSH.get(level.flush or "")
    legs = [leg for leg in frame.legs() if leg.side == row and leg.of.height is None]
    if not legs:
        return {}
    top = most(notches[rail.name].top for rail in frame.rails_of[level.name] if rail.side == row)
    if np.isnan(top).any():
        raise RunError(
            f'{RUN}: the {row} legs are to be as high as "{level.name}", and nothing says how high that is. Give the '
            f"{row} legs a height, or the level top_at= or top=.",
            run=RUN,
        )
    return {leg.name: Rise(np.zeros_like(top), top) for leg in legs}


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
    found = {slot.name: sizes[slot.name] for slot in own}
    themselves = {name: _own(level, rise, found[name]) for name, rise in rails.items()}
    return Band(level, Rise(low, high), rails, found, layers(frame, level.name, themselves), {})


def _over_edge(level: Level, slot: Slot, width: Array) -> Rise:
    edge = np.zeros_like(width) + slot.of.raised
    return Rise(edge, edge + width) if level.align == "bottoms" else Rise(edge - width, edge)


def _members(frame: Frame, shapes: Mapping[str, Band]) -> list[Member]:
    reach = Reach(frame, shapes)
    members = []
    for place, item in enumerate(frame.stack):
        if isinstance(item, Level):
            members.append(Member(name=item.name, size=shapes[item.name].size))
            continue
        step = reach.step(place)
        size = None if item.size is None else item.size - step
        members.append(Member(name="clear", size=size, share=item.weight, less=step))
    return members


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
        if level.top_at is not None:
            own = shapes[level.name]
            at = level.top_at - (own.surface - own.rise.top)
            name = f'"{level.name}" (what it carries ends at {say(level.top_at)})'
            pins.append(Pin(edge=place + 1, at=at, name=name))
        if level.flush is not None and any(leg.of.height is not None for leg in _row(frame, level)):
            pins.append(_flush(frame, place, level, shapes[level.name]))
    given = [leg for leg in frame.legs() if leg.of.height is not None]
    after = max((pin.edge for pin in pins), default=0)
    if given and any(isinstance(item, Clear) and item.size is None for item in frame.stack[after:]):
        drawn = max(leg.of.height for leg in given)
        tallest = heights(frame, (leg for leg in given if leg.of.height == drawn))
        pins.append(Pin(edge=len(frame.stack), at=tallest, name=f"the tallest leg's top (at {say(drawn)})"))
    return pins


def _flush(frame: Frame, place: int, level: Level, own: Band) -> Pin:
    """Pin that brings one side's rail level with the top of its legs."""
    row, legs = FLUSH[level.flush or ""], _row(frame, level)
    top = legs[0].of.height
    rails = own.at_side(frame.rails_of[level.name], row)
    at = heights(frame, legs[:1] if _differ(legs) else legs) + (own.rise.top - most(rail.top for rail in rails))
    return Pin(edge=place + 1, at=at, name=f'"{level.name}" (flush with the {level.flush} at {frame.tape.say(top)})')


def _row(frame: Frame, level: Level) -> list[Slot]:
    """The legs that a level is flush with."""
    return [leg for leg in frame.legs() if leg.side == FLUSH[level.flush or ""]]


def _differ(legs: Sequence[Slot]) -> bool:
    """Whether legs of a row were drawn at different heights: then the first one holds the level."""
    return any(leg.of.height != legs[0].of.height for leg in legs)
