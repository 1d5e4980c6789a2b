"""Fasteners: the diameters of wood screws, nails and bolts, the lengths they are sold in, and the drills for them.

>>> gauge(8), nail("8d").length
(4.17, 63.5)
"""

from __future__ import annotations

import math

import attrs

from ..errors import FastenerError, typed
from ..lengths import INCH, TOUCH
from ..sources import COMMON_PRACTICE, Source
from .species import PSI

BOOK = "Wood Handbook FPL-GTR-282 (2021)"
GAUGE_SIZES = Source(BOOK, "Table 8-9", standing="transcribed")
NAIL_SIZES = Source(BOOK, "Table 8-1", standing="transcribed")
ROOT = Source(BOOK, "ch. 8, wood screws: the root is about two thirds of the shank", standing="transcribed")
LEAD_HOLES = Source(BOOK, "ch. 8, text at Eq. 8-10", standing="transcribed")
BOLT_HOLES = Source("NDS", "12.1.3")
HEADS = Source("ASME B18.6.1", "flat heads, about twice the shank", standing="from memory")
STEEL = Source("NDS", "Appendix I, bending yield strength by diameter", standing="from memory")
END_GRAIN = Source("Civil Engineering Formulas", "ch. 6, wood screws: none in withdrawal from end grain")

GAUGES: dict[int, float] = {
    4: 2.84,
    5: 3.18,
    6: 3.51,
    7: 3.84,
    8: 4.17,
    9: 4.50,
    10: 4.83,
    11: 5.16,
    12: 5.49,
    14: 6.15,
    16: 6.81,
    18: 7.47,
    20: 8.13,
    24: 9.45,
}
"""Shank of a wood screw by its gauge, GAUGE_SIZES. [mm]"""
METRIC_SCREWS = (3.0, 3.5, 4.0, 4.5, 5.0, 6.0, 8.0)
"""Shanks of metric wood screws. [mm] Common practice, no source."""
BOLT_INCHES = {"1/4": 6.35, "5/16": 7.9375, "3/8": 9.525, "1/2": 12.7}
BOLT_METRIC = {"M6": 6.0, "M8": 8.0, "M10": 10.0, "M12": 12.0}
"""Shanks of bolts. [mm]"""
ROOT_SHARE = 2 / 3
"""Root of a wood screw as a part of its shank, ROOT."""
HEAD_SHARE = 2.0
"""Head of a countersunk screw as a multiple of its shank, HEADS."""
THREAD_SHARE = 2 / 3
"""Threaded part of a wood screw's length. From memory, ASME B18.6.1."""
LEAD_SHARE = {False: 0.7, True: 0.9}
"""Lead hole as a part of the root, in softwood and in hardwood, LEAD_HOLES."""
BOLT_OVER = INCH / 32
"""A bolt's hole over the bolt: 1/32 to 1/16 in, BOLT_HOLES. [mm]"""
YIELD_STEPS = ((0.142, 100), (0.177, 90), (0.236, 80), (0.273, 70), (0.344, 60))
"""Bending yield strength up to a diameter, STEEL. [in, thousand pounds to the square inch]"""
THICK_YIELD = 45
"""And of thicker ones, up to 3/8 in, STEEL. [thousand pounds to the square inch]"""
KSI = 1000 * PSI
"""A thousand pounds to the square inch. [N/mm²]"""
WASHER_SHARE = 3.0
"""A washer on wood as a multiple of the bolt. Common practice, no source."""
INCH_LENGTHS = tuple(
    INCH * n / 8 for n in (4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20, 22, 24, 28, 32, 36, 40, 44, 48, 56, 64)
)
"""Lengths that screws and bolts are sold in. [mm] Common practice, no source."""
METRIC_LENGTHS = tuple(float(n) for n in (12, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120, 140, 160))
"""Lengths that screws and bolts are sold in. [mm] Common practice, no source."""


@attrs.frozen(kw_only=True)
class Nail:
    """A common nail. [mm]"""

    name: str
    length: float
    diameter: float
    source: Source = NAIL_SIZES


NAILS: tuple[Nail, ...] = tuple(
    Nail(name=name, length=length, diameter=diameter)
    for name, length, diameter in (
        ("6d", 50.8, 2.87),
        ("8d", 63.5, 3.33),
        ("10d", 76.2, 3.76),
        ("12d", 82.6, 3.76),
        ("16d", 88.9, 4.11),
        ("20d", 101.6, 4.88),
        ("60d", 152.4, 6.65),
    )
)


def gauge(number: int) -> float:
    """Shank of a wood screw by its gauge. [mm]

    Raises
    ------
    FastenerError
        If there is no such gauge.
    """
    if number not in GAUGES:
        known = ", ".join(map(str, GAUGES))
        raise FastenerError(f"There is no wood screw No. {typed(number)}. There are {known}.")
    return GAUGES[number]


def nail(name: str) -> Nail:
    """A common nail by its penny size.

    Raises
    ------
    FastenerError
        If there is no such nail.
    """
    found = next((one for one in NAILS if one.name == name), None)
    if found is None:
        known = ", ".join(one.name for one in NAILS)
        raise FastenerError(f"There is no common nail {typed(name)}. There are {known}.")
    return found


def steel_of(diameter: float) -> float:
    """Bending yield strength of a screw or nail by its diameter, STEEL. [N/mm²]

    >>> round(steel_of(0.142 * 25.4)), round(steel_of(0.164 * 25.4))
    (689, 621)
    """
    ksi = next((strength for end, strength in YIELD_STEPS if diameter <= end * INCH + TOUCH), THICK_YIELD)
    return ksi * KSI


def drill(diameter: float, *, inches: bool, up: bool = False) -> float:
    """The nearest drill, or the next larger one: by 1/64 in, or by 0.5 mm. [mm]

    >>> round(drill(4.17, inches=True, up=True) / 25.4 * 64), drill(2.0, inches=False)
    (11, 2.0)
    """
    step = INCH / 64 if inches else 0.5
    count = math.ceil(diameter / step - 1e-6) if up else round(diameter / step)
    return step * max(count, 1)


@attrs.frozen(kw_only=True)
class Metal:
    """What outdoor fasteners are made of, and why. Common practice, no source."""

    name: str
    reason: str
    source: Source = COMMON_PRACTICE


STAINLESS = Metal(
    name="stainless, 304 (A2)",
    reason="woods rich in tannin stain black and eat zinc; by the sea take 316 (A4)",
)
GALVANIZED = Metal(name="hot-dip galvanized or stainless", reason="plated screws rust outdoors")
TANNIN = (
    "western redcedar",
    "northern white-cedar",
    "redwood, old-growth",
    "redwood, young-growth",
    "Douglas-fir, coast",
    "western larch",
    "white oak",
    "northern red oak",
    "black locust",
)
"""Woods that stain on iron and zinc. Common practice, no source."""
