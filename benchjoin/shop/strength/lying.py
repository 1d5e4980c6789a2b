"""Where loads lie: on which parts, at which places along them, from what is said of a level, a bin or a side.

A load becomes forces at places and forces on each mm of parts; whoever solves the frame and whoever asks whether it
tips read the same.
"""

from __future__ import annotations

import difflib
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cached_property

import attrs

from ...errors import LoadError, typed
from ...layout.bodies import Body, bodies
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import TOUCH
from ...solids import Vector
from .loads import Case, Filled, Line, Load, Point, Push, Spread

SAME = 5.0
"""Boards of a level whose tops are no further apart lie on one surface. [mm]"""
TOWARD: dict[str, tuple[int, float]] = {"front": (1, -1.0), "back": (1, 1.0), "left": (0, -1.0), "right": (0, 1.0)}
"""The axis of the world towards a side, and its sign."""


@attrs.frozen
class At:
    """A force on a part at a place along it, and where in the world it truly acts. [N, mm]"""

    part: str
    place: float
    force: Vector
    at: Vector


@attrs.frozen
class Over:
    """A force on each mm of a part from a place along it to another, in its middle. [N/mm, mm]"""

    part: str
    start: float
    end: float
    force: Vector


Lying = At | Over


@attrs.frozen(slots=False)
class Ground:
    """The parts of one piece that loads can lie on."""

    layout: Layout
    piece: int = 1

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        """All parts of the piece."""
        return self.layout.piece(self.piece)

    @cached_property
    def bins(self) -> tuple[Body, ...]:
        """Its bins where they stand."""
        return tuple(bodies(self.layout.frame, {part.identity: part for part in self.parts}))

    def lying(self, load: Load) -> list[Lying]:
        """Where a load lies.

        Raises
        ------
        LoadError
            If its level, its bin or its row is not there, or a place is off the level.
        """
        return list(_LYING[type(load)](self, load))

    def surface(self, level: str) -> tuple[Part, ...]:
        """The boards that a level's load lies on; its rails where it has none."""
        levels = tuple(dict.fromkeys(part.level for part in self.parts if part.level))
        if level not in levels:
            raise _unknown("level", level, [str(name) for name in levels])
        own = [part for part in self.parts if part.level == level]
        flat = [part for part in own if part.slot.role.surface and part.slot.axes[2] == 2]
        if flat:
            top = max(part.blank.high[2] for part in flat)
            return tuple(part for part in flat if part.blank.high[2] > top - SAME)
        return tuple(part for part in own if part.role == "rail")

    @cached_property
    def front(self) -> float:
        """Where the front of the legs is. [mm]"""
        return min(part.blank.low[1] for part in self.layout.legs(self.piece))


def cases(value: Case | Iterable[Case]) -> tuple[Case, ...]:
    """Cases, one alone or several.

    Raises
    ------
    LoadError
        If one is none, or two have one name.
    """
    found = (value,) if isinstance(value, Case) else tuple(value)
    for one in found:
        if not isinstance(one, Case):
            raise LoadError(f'{typed(one)} is no case of loads. Write Case("buckets", [Spread("bench", "80 kg")]).')
    names = [one.name for one in found]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise LoadError(f"Two cases are called {typed(twice)}. Give each a name of its own.")
    return found


def _unknown(what: str, name: object, known: Sequence[str]) -> LoadError:
    near = difflib.get_close_matches(str(name), known, n=1)
    hint = f" Did you mean {typed(near[0])}?" if near else ""
    there = f"There are {', '.join(known)}." if known else f"This frame has no {what}."
    return LoadError(f"There is no {what} {typed(name)} to load.{hint} {there}", known=tuple(known))


def _spread(ground: Ground, load: Spread) -> Iterator[Lying]:
    parts = ground.surface(load.level)
    areas = [_plan(part) for part in parts]
    for part, area in zip(parts, areas, strict=True):
        axis = part.slot.axes[0]
        low, high = part.blank.low[axis], part.blank.high[axis]
        yield Over(part.identity, low, high, (0.0, 0.0, -load.weight * area / sum(areas) / (high - low)))


def _point(ground: Ground, load: Point) -> Iterator[Lying]:
    parts = ground.surface(load.level)
    x, y = _place(ground, parts, load.along, 0), _across(ground, parts, load.across)
    yield _on(parts, x, y, load.weight)


def _line(ground: Ground, load: Line) -> Iterator[Lying]:
    parts = ground.surface(load.level)
    low, high = _ends(parts, 0)
    start, end = (_place(ground, parts, at, 0, bare) for at, bare in ((load.start, low), (load.end, high)))
    if end - start < TOUCH:
        raise LoadError(f"A line load on {load.level} goes from {start:g} to {end:g} mm. It has to have a length.")
    y = _across(ground, parts, load.across)
    under = [part for part in parts if part.slot.axes[0] == 0]
    if under:
        near = min(under, key=lambda part: max(part.blank.low[1] - y, y - part.blank.high[1], 0.0))
        a, b = max(start, near.blank.low[0]), min(end, near.blank.high[0])
        if b - a > TOUCH:
            yield Over(near.identity, a, b, (0.0, 0.0, -load.weight / (b - a)))
            return
    met = [part for part in parts if part.blank.high[0] > start and part.blank.low[0] < end] or list(parts)
    shares = [min(part.blank.high[0], end) - max(part.blank.low[0], start) for part in met]
    for part, share in zip(met, shares, strict=True):
        middle = (part.blank.low[0] + part.blank.high[0]) / 2
        yield _on([part], middle, y, load.weight * share / sum(shares))


def _filled(ground: Ground, load: Filled) -> Iterator[Lying]:
    body = next((body for body in ground.bins if body.name == load.bin), None)
    if body is None:
        raise _unknown("bin", load.bin, [one.name for one in ground.bins])
    box = body.box
    at = box.high[2] if body.of.rim is not None and body.of.on else box.low[2]
    wide = body.of.rim or 0.0
    under = []
    for part in ground.parts:
        if part in body.lid or (abs(part.blank.high[2] - at) > 1.0 and not (wide and part.level == body.of.on)):
            continue
        if abs(part.blank.high[2] - at) > 1.0:
            continue
        lows = [max(part.blank.low[n], box.low[n] - wide) for n in (0, 1)]
        highs = [min(part.blank.high[n], box.high[n] + wide) for n in (0, 1)]
        area = (highs[0] - lows[0]) * (highs[1] - lows[1])
        if min(highs[0] - lows[0], highs[1] - lows[1]) > TOUCH:
            under.append((part, area, [(a + b) / 2 for a, b in zip(lows, highs, strict=True)]))
    whole = sum(area for _, area, _ in under)
    for part, area, (x, y) in under:
        yield _on([part], x, y, load.weight * area / whole)


def _push(ground: Ground, load: Push) -> Iterator[Lying]:
    legs = [leg for leg in ground.layout.legs(ground.piece) if load.on in (None, leg.side)]
    if not legs:
        raise _unknown("row of legs", load.on, ["front"])
    top = max(leg.blank.high[2] for leg in legs)
    height = top if load.height is None else load.height
    reach = [leg for leg in legs if leg.blank.high[2] >= height - TOUCH]
    if not reach:
        raise LoadError(f"A push at {height:g} mm meets no leg: the highest ends at {top:g} mm.")
    axis, sign = TOWARD[load.way]
    force = [0.0, 0.0, 0.0]
    force[axis] = sign * load.force / len(reach)
    for leg in reach:
        x, y = ((leg.blank.low[n] + leg.blank.high[n]) / 2 for n in (0, 1))
        yield At(leg.identity, height, (force[0], force[1], force[2]), (x, y, height))


_LYING: dict[type, Callable[..., Iterator[Lying]]] = {
    Spread: _spread,
    Point: _point,
    Line: _line,
    Filled: _filled,
    Push: _push,
}


def _plan(part: Part) -> float:
    return (part.blank.high[0] - part.blank.low[0]) * (part.blank.high[1] - part.blank.low[1])


def _ends(parts: Sequence[Part], axis: int) -> tuple[float, float]:
    return min(part.blank.low[axis] for part in parts), max(part.blank.high[axis] for part in parts)


def _place(ground: Ground, parts: Sequence[Part], said: float | None, axis: int, bare: float | None = None) -> float:
    low, high = _ends(parts, axis)
    if said is None:
        return (low + high) / 2 if bare is None else bare
    if not low - TOUCH <= said <= high + TOUCH:
        way = ("along", "across")[axis]
        raise LoadError(f"A load stands {said:g} mm {way} its level, which goes from {low + 0.0:g} to {high:g} mm.")
    return said


def _across(ground: Ground, parts: Sequence[Part], said: float | str | None) -> float:
    if said == "front edge":
        return _ends(parts, 1)[0]
    if said is None:
        return _place(ground, parts, None, 1)
    return _place(ground, parts, float(said) + ground.front, 1)


def _on(parts: Sequence[Part], x: float, y: float, weight: float) -> At:
    """A weight at a place of the plan, on the part that is there, or else the nearest."""

    def away(part: Part) -> float:
        low, high = part.blank.low, part.blank.high
        return max(low[0] - x, x - high[0], 0.0) + max(low[1] - y, y - high[1], 0.0)

    part = min(parts, key=away)
    on = [min(max(own, part.blank.low[n]), part.blank.high[n]) for n, own in enumerate((x, y))]
    return At(part.identity, on[part.slot.axes[0]], (0.0, 0.0, -weight), (on[0], on[1], part.blank.high[2]))
