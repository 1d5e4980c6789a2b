"""Stability: when a piece tips, about every edge of its feet, by statics of a stiff body.

It tips about a line between two feet when what turns it over that line is more than what holds it. The factor is the
one by the other; without end where nothing tips it. Sloping ground turns the weight with it.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence

import attrs
import numpy as np

from ...layout.parts import Part
from ...lengths import TOUCH
from ...solids import Vector
from .loads import GRAVITY
from .lying import At, Lying

SLOPE = 1 / 20
"""Ground that falls by so much is found in gardens and yards. Common practice, no source."""


@attrs.frozen(kw_only=True)
class Tipping:
    """How far one case is from tipping the piece over one edge. [N·mm]

    edge says which: "front", "back", "left", "right", or between which feet; state what is in it, ground how it lies.
    """

    case: str
    edge: str
    state: str
    ground: str
    holds: float
    tips: float

    @property
    def factor(self) -> float:
        """What holds by what tips."""
        return self.holds / self.tips if self.tips > 0 else math.inf


@attrs.frozen
class Weighed:
    """A force and where it acts. [N, mm]"""

    force: Vector
    at: Vector


def weighed(parts: Iterable[Part], densities: Mapping[str, float]) -> Iterator[Weighed]:
    """The weight of each part, in the middle of its wood; density in kg/m³."""
    for part in parts:
        boxes = part.solid
        volume = sum(box.volume() for box in boxes)
        if volume <= 0:
            continue
        middle = [sum(box.volume() * (box.low[n] + box.high[n]) / 2 for box in boxes) / volume for n in range(3)]
        weight = part.volume * 1e-9 * densities[part.identity] * GRAVITY
        yield Weighed((0.0, 0.0, -float(weight)), (middle[0], middle[1], middle[2]))


def acting(lying: Iterable[Lying], parts: Mapping[str, Part]) -> Iterator[Weighed]:
    """Loads as forces where they act."""
    for one in lying:
        if isinstance(one, At):
            yield Weighed(one.force, one.at)
            continue
        part = parts[one.part]
        axis = part.slot.axes[0]
        at = [(a + b) / 2 for a, b in zip(part.blank.low, part.blank.high, strict=True)]
        at[axis], at[2] = (one.start + one.end) / 2, part.blank.high[2]
        x, y, z = (each * (one.end - one.start) for each in one.force)
        yield Weighed((x, y, z), (at[0], at[1], at[2]))


def edges(legs: Sequence[Part]) -> tuple[tuple[str, tuple[float, float], tuple[float, float]], ...]:
    """The outer edges of the feet as they stand: a name, and two corners, counterclockwise from above. [mm]"""
    corners = {
        (x, y)
        for leg in legs
        for x in (leg.blank.low[0], leg.blank.high[0])
        for y in (leg.blank.low[1], leg.blank.high[1])
    }
    hull = _hull(sorted(corners))
    return tuple((_side(a, b), a, b) for a, b in itertools.pairwise([*hull, hull[0]]))


def _hull(points: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """The convex hull, counterclockwise (Andrew's chain)."""

    def half(ordered: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
        found: list[tuple[float, float]] = []
        for p in ordered:
            while len(found) > 1 and _cross(found[-2], found[-1], p) <= TOUCH:
                found.pop()
            found.append(p)
        return found[:-1]

    return half(points) + half(reversed(points))


def _cross(o: tuple[float, float], a: tuple[float, float], b: tuple[float, float]) -> float:
    return (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])


def _side(a: tuple[float, float], b: tuple[float, float]) -> str:
    across, along = abs(b[1] - a[1]), abs(b[0] - a[0])
    if along >= across:
        return "front" if b[0] > a[0] else "back"
    return "right" if b[1] > a[1] else "left"


def tipping(
    case: str,
    state: str,
    legs: Sequence[Part],
    forces: Sequence[Weighed],
    *,
    walls: Iterable[str] = (),
    slope: float = 0.0,
) -> tuple[Tipping, ...]:
    """How far forces are from tipping a piece about each edge of its feet.

    Parameters
    ----------
    case, state : str
        What the result is called by.
    legs : sequence of Part
        Those that stand on the ground.
    forces : sequence of Weighed
        Weights and loads.
    walls : iterable of str
        Sides on which a wall keeps it from tipping.
    slope : float
        Fall of the ground towards each edge in turn, height by length.

    Notes
    -----
    Moments about the edge, of every force by itself: those that turn outwards tip, the others hold.
    """
    acts = np.array([one.force for one in forces], dtype=float).reshape(-1, 3)
    places = np.array([one.at for one in forces], dtype=float).reshape(-1, 3)
    found = []
    for side, a, b in edges(legs):
        if side in tuple(walls):
            continue
        way = np.array([b[0] - a[0], b[1] - a[1], 0.0]) / math.hypot(b[0] - a[0], b[1] - a[1])
        out = np.array([way[1], -way[0], 0.0])
        down, fall = math.atan(slope), -acts[:, 2:]
        leaning = acts + fall * (math.sin(down) * out + (1 - math.cos(down)) * np.array([0.0, 0.0, 1.0]))
        turns = -np.cross(places - np.array([a[0], a[1], 0.0]), leaning) @ way
        holds, tips = float(turns[turns > 0].sum()), float(-turns[turns < 0].sum())
        ground = f"falling {slope:.0%} to the {side}" if slope else "level"
        found.append(Tipping(case=case, edge=side, state=state, ground=ground, holds=holds, tips=tips))
    return tuple(found)


def angle(legs: Sequence[Part], forces: Sequence[Weighed]) -> tuple[str, float]:
    """The fall of the ground at which the weight alone tips it, over the nearest edge. [degrees]"""
    whole = -sum(one.force[2] for one in forces)
    at = [sum(-one.force[2] * one.at[n] for one in forces) / whole for n in range(3)]
    found = []
    for side, a, b in edges(legs):
        inside = _cross(a, b, (at[0], at[1])) / math.hypot(b[0] - a[0], b[1] - a[1])
        found.append((math.degrees(math.atan2(inside, at[2])), side))
    degrees, side = min(found)
    return side, degrees
