"""Loads: what lies on a level, fills a bin or pushes a leg, and the cases in which these come together.

A weight is typed as the maker says it, ``"60 kg"``, ``"120 lb"``, or as a force, ``"900 N"``; a bare number is newtons.

>>> round(newtons("10 kg"), 2), newtons(90)
(98.07, 90.0)
"""

from __future__ import annotations

import math
import re
from typing import Any, Literal

import attrs

from ...errors import LoadError, typed
from ...lengths import mm

GRAVITY = 9.80665
"""Standard gravity. [m/s²]"""
UNITS = {"N": 1.0, "kN": 1000.0, "kg": GRAVITY, "lb": 0.45359237 * GRAVITY, "lbf": 0.45359237 * GRAVITY}
MOST = 100_000.0
"""More than ten tonnes lies on no bench; a larger load is a slip of the unit. [N]"""

Way = Literal["front", "back", "left", "right"]
Time = Literal["permanent", "long", "medium", "short", "instant"]
WAYS: tuple[Way, ...] = ("front", "back", "left", "right")
TIMES: tuple[Time, ...] = ("permanent", "long", "medium", "short", "instant")
_SAID = re.compile(r"\s*(\d+(?:\.\d+)?)\s*(kg|lbf|lb|kN|N)\s*")


def newtons(value: Any) -> float:
    """Newtons from a weight or a force.

    Raises
    ------
    LoadError
        If it is no weight, negative, or more than lies on any bench.
    """
    number = math.nan
    if isinstance(value, str) and (found := _SAID.fullmatch(value)):
        number = float(found[1]) * UNITS[found[2]]
    elif isinstance(value, int | float) and not isinstance(value, bool):
        number = float(value)
    if not math.isfinite(number):
        raise LoadError(f'{typed(value)} is no load. Write "60 kg", "120 lb", "900 N", or a number of newtons.')
    if number < 0 or number > MOST:
        raise LoadError(f"{typed(value)} is a load of {number:g} N. Loads go from nought to {MOST:g} N (10 t).")
    return number


def _length(name: str) -> Any:
    return lambda value: None if value is None else mm(value, zero=True, what=name)


def _signed(value: Any) -> float | Literal["front edge"] | None:
    return value if value is None or value == "front edge" else mm(value, zero=True, what="across")


def _one_of(what: str, known: tuple[str, ...]) -> Any:
    def door(value: Any) -> Any:
        if value not in known:
            raise LoadError(f"{what} is {typed(value)}. Write one of {', '.join(known)}.")
        return value

    return door


@attrs.frozen
class Spread:
    """A load spread evenly over all boards of a level, or over its rails where it has none."""

    level: str
    weight: float = attrs.field(converter=newtons)


@attrs.frozen
class Point:
    """A load on one place of a level: along it from the left end, across it from the front of the legs. [mm]

    In the middle where they are not given; "front edge" is where somebody leans, sits or climbs.
    """

    level: str
    weight: float = attrs.field(converter=newtons)
    along: float | None = attrs.field(default=None, converter=_length("along"))
    across: float | Literal["front edge"] | None = attrs.field(default=None, converter=_signed)


@attrs.frozen
class Line:
    """A load along a line of a level, from one place to another, the whole length where none is given. [mm]"""

    level: str
    weight: float = attrs.field(converter=newtons)
    start: float | None = attrs.field(default=None, converter=_length("start"))
    end: float | None = attrs.field(default=None, converter=_length("end"))
    across: float | Literal["front edge"] | None = attrs.field(default=None, converter=_signed)


@attrs.frozen
class Filled:
    """What is in a bin, with the bin."""

    bin: str
    weight: float = attrs.field(converter=newtons)


@attrs.frozen
class Push:
    """A push at a height, towards a side: shared by the legs of a row, or all legs, that reach so high. [mm]

    A pull is a push the other way. height is the top of the highest legs, if it is not given.
    """

    force: float = attrs.field(converter=newtons)
    way: Way = attrs.field(converter=_one_of("way", WAYS))
    height: float | None = attrs.field(default=None, converter=_length("height"))
    on: Literal["front", "back"] | None = attrs.field(default=None, converter=_one_of("on", ("front", "back", None)))  # type: ignore[arg-type]


Load = Spread | Point | Line | Filled | Push


def _loads(value: Any) -> tuple[Load, ...]:
    found: list[Load] = []
    items = (value,) if isinstance(value, Load) else value
    if isinstance(items, str) or not hasattr(items, "__iter__"):
        raise LoadError(f'loads is {typed(value)}. Write for example [Spread("bench", "80 kg")].')
    for item in items:
        if not isinstance(item, Load):
            raise LoadError(f"loads holds {typed(item)}. Loads are Spread, Point, Line, Filled and Push.")
        found.append(item)
    return tuple(found)


@attrs.frozen
class Case:
    """Loads that come together, by a name; own weight is always with them.

    time is how long the shortest of them stays: "permanent", "long" (years), "medium" (weeks), "short" (hours),
    "instant".
    """

    name: str
    loads: tuple[Load, ...] = attrs.field(converter=_loads)
    time: Time = attrs.field(default="medium", converter=_one_of("time", TIMES))

    def __add__(self, other: Case) -> Case:
        """Both cases at once, for as long as the shorter one."""
        time = max((self.time, other.time), key=TIMES.index)
        return Case(f"{self.name} and {other.name}", (*self.loads, *other.loads), time)
