"""A fastener as the maker asks for it: "No. 8", "4.5 mm screw", "structural screw 1/4 in", "bolt M8", "nail 8d".

Or "glue", or "nothing". A number of them and a length may be said as well: "2 x No. 8 x 2 in". What is not said, each
joint decides.

>>> fastener("No. 8"), fastener("2 x bolt M8").count
(<No. 8 screw>, 2)
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Literal

import attrs

from ...errors import FastenerError, LengthError, typed
from ...lengths import INCH, mm
from ...trade.fasteners import (
    BOLT_INCHES,
    BOLT_METRIC,
    BOLT_OVER,
    HEAD_SHARE,
    INCH_LENGTHS,
    LEAD_SHARE,
    METRIC_LENGTHS,
    METRIC_SCREWS,
    ROOT_SHARE,
    THREAD_SHARE,
    WASHER_SHARE,
    drill,
    gauge,
    nail,
)

Kind = Literal["screw", "structural screw", "bolt", "nail", "glue", "nothing"]
FREE = 0.1
"""A screw turns in a hole at least so much wider. [mm] Common practice, no source."""
STRUCTURAL = {"1/4": 6.35, "5/16": 7.9375, "6": 6.0, "8": 8.0}
EXAMPLES = (
    'Write for example "No. 8", "4.5 mm screw", "structural screw 1/4 in", "bolt 1/4 in", "bolt M8", "nail 8d", "glue" '
    'or "nothing", with a number before it or a length after it: "2 x No. 8 x 2 in".'
)


@attrs.frozen(kw_only=True, repr=False)
class Fastener:
    """One kind and size; count of them in a joint and length are left to the joint where they are None. [mm]"""

    kind: Kind
    size: str = ""
    diameter: float = 0.0
    inches: bool = True
    count: int | None = None
    length: float | None = None

    @property
    def metal(self) -> bool:
        """Whether it is a thing with a place: glue is none."""
        return self.kind not in ("glue", "nothing")

    @property
    def name(self) -> str:
        """What it is called: No. 8 screw."""
        if not self.metal:
            return self.kind
        return f"{self.size} screw" if self.kind == "screw" else f"{self.kind} {self.size}"

    @property
    def root(self) -> float:
        """At the bottom of its thread; of nails and bolts the shank. [mm]"""
        return self.diameter * (ROOT_SHARE if "screw" in self.kind else 1.0)

    @property
    def head(self) -> float:
        """Across its head, of bolts across the washer. [mm]"""
        return self.diameter * (WASHER_SHARE if self.kind == "bolt" else HEAD_SHARE)

    @property
    def through(self) -> bool:
        """Whether it goes through both parts."""
        return self.kind == "bolt"

    def lengths(self) -> tuple[float, ...]:
        """Lengths that it is sold in, the shortest first; the one that was said, if any. [mm]"""
        if self.length is not None:
            return (self.length,)
        if self.kind == "nail":
            return (nail(self.size).length,)
        least = 10.0 if self.diameter < 3.4 else 2.5 * self.diameter
        most = 20.0 * self.diameter
        every = INCH_LENGTHS if self.inches else METRIC_LENGTHS
        return tuple(length for length in every if least <= length <= most)

    def thread(self, length: float, inside: float) -> float:
        """How much thread there is in the part that holds its point, by its length and how far it goes in. [mm]"""
        return inside if self.kind == "nail" else min(inside, THREAD_SHARE * length)

    def clearance(self) -> float:
        """Drill for the part under its head: it turns freely there. [mm]"""
        if self.kind == "bolt":
            return self.diameter + BOLT_OVER
        if self.kind == "nail":
            return self.lead(hardwood=True)
        return drill(self.diameter + FREE, inches=self.inches, up=True)

    def lead(self, *, hardwood: bool) -> float:
        """Drill for the part that holds its point. [mm]"""
        if self.kind == "bolt":
            return self.diameter + BOLT_OVER
        return drill(self.root * LEAD_SHARE[hardwood], inches=self.inches)

    def __repr__(self) -> str:
        many = f"{self.count} × " if self.count else ""
        return f"<{many}{self.name}>"


GLUE = Fastener(kind="glue")
NOTHING = Fastener(kind="nothing")
_COUNT = re.compile(r"^\s*(\d{1,3})\s*[x×]\s*")
_LENGTH = re.compile(r"\s*[x×]\s*([^x×]+)$")
_SIZES = (
    re.compile(r"^(?:screw )?no\. ?(?P<gauge>\d{1,2})(?: screw)?$"),
    re.compile(r"^(?P<metric>\d(?:\.\d)?) ?mm(?: screw)?$"),
    re.compile(r"^structural screw (?P<structural>1/4|5/16) ?in$"),
    re.compile(r"^structural screw (?P<structural_mm>6|8) ?mm$"),
    re.compile(r"^bolt (?P<bolt>1/4|5/16|3/8|1/2) ?in$"),
    re.compile(r"^bolt (?P<bolt_mm>m6|m8|m10|m12)$"),
    re.compile(r"^nail (?P<nail>\d{1,2}d)$"),
)


def fastener(said: str | Fastener) -> Fastener:
    """A fastener from what the maker says.

    Raises
    ------
    FastenerError
        If it does not read as one, or there is no such size.
    """
    if isinstance(said, Fastener):
        return said
    if not isinstance(said, str) or len(said) > 80:
        raise FastenerError(f"{typed(said)} is no fastener. {EXAMPLES}", value=said)
    rest, count, length = said, None, None
    if found := _COUNT.match(rest):
        count, rest = int(found[1]), rest[found.end() :]
        if not count:
            raise FastenerError(
                f'{typed(said)} asks for none of them. Write "nothing" for a joint without.', value=said
            )
    if found := _LENGTH.search(rest):
        try:
            length = mm(found[1].strip(), what="the length of a fastener")
        except LengthError as error:
            raise FastenerError(f"{typed(said)}: {error}", value=said) from None
        rest = rest[: found.start()]
    return _sized(" ".join(rest.split()), said, count, length)


def _sized(rest: str, said: str, count: int | None, length: float | None) -> Fastener:
    plain = rest.casefold()
    if plain in ("glue", "nothing"):
        return GLUE if plain == "glue" else NOTHING
    for pattern in _SIZES:
        if found := pattern.match(plain):
            ((key, value),) = found.groupdict().items()
            return attrs.evolve(_named(key, value, said), count=count, length=length)
    raise FastenerError(f"{typed(said)} is no fastener. {EXAMPLES}", value=said)


def _named(key: str, value: str, said: str) -> Fastener:
    if key == "gauge":
        return screw(int(value))
    if key == "metric":
        if float(value) not in METRIC_SCREWS:
            known = ", ".join(f"{one:g}" for one in METRIC_SCREWS)
            raise FastenerError(f"{typed(said)}: screws come in {known} mm.", value=said)
        return metric_screw(float(value))
    if key.startswith("structural"):
        inches = key == "structural"
        size = f"{value} in" if inches else f"{value} mm"
        return Fastener(kind="structural screw", size=size, diameter=STRUCTURAL[value], inches=inches)
    if key == "bolt":
        return Fastener(kind="bolt", size=f"{value} in", diameter=BOLT_INCHES[value])
    if key == "bolt_mm":
        return Fastener(kind="bolt", size=value.upper(), diameter=BOLT_METRIC[value.upper()], inches=False)
    return Fastener(kind="nail", size=value, diameter=nail(value).diameter)


def screw(number: int) -> Fastener:
    """A wood screw by its gauge.

    Raises
    ------
    FastenerError
        If there is no such gauge.
    """
    return Fastener(kind="screw", size=f"No. {number}", diameter=gauge(number))


def metric_screw(diameter: float) -> Fastener:
    """A metric wood screw by its shank. [mm]"""
    return Fastener(kind="screw", size=f"{diameter:g} mm", diameter=diameter, inches=False)


USUAL: Mapping[str, tuple[tuple[float, Fastener], ...]] = {
    "in": ((13.0, screw(6)), (20.0, screw(8)), (30.0, screw(10)), (INCH * 100, screw(12))),
    "mm": (
        (13.0, metric_screw(3.5)),
        (20.0, metric_screw(4.5)),
        (30.0, metric_screw(5.0)),
        (2540.0, metric_screw(6.0)),
    ),
}
"""The screw for a part up to so thick under its head, by the unit of the tape. [mm] Common practice, no source."""


def usual(thick: float, unit: str) -> tuple[Fastener, ...]:
    """Screws to try for a part so thick under the head: the usual one, then slimmer ones. [mm]"""
    every = [one for _, one in USUAL[unit]]
    first = next(number for number, (most, _) in enumerate(USUAL[unit]) if thick <= most)
    return tuple(reversed(every[: first + 1]))
