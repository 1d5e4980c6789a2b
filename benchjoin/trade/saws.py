"""Saws: kerfs, and what a stacked dado head is made of.

A stacked head is two outside blades with chippers between them and paper-thin shims to make up the last bit. The pair
alone cuts the narrowest groove, the full stack the widest. Your own set has its sizes printed on it: believe those.
"""

from __future__ import annotations

import attrs

from ..lengths import INCH
from ..sources import COMMON_PRACTICE, Source

SAW_PRACTICE = Source("saw blade guides", "kerfs of table saw blades, two pages", standing="secondary")
STACKED_PARTS = Source("a guide to stacked dado heads", "outside blades, chippers, shims", standing="secondary")
PAIR_ALONE = Source("a guide to stacked dado heads", "test cut of the outside pair", standing="secondary")
STACKED_SIZES = Source("stacked dado heads", "sizes of chippers and shims, usual range", standing="from memory")


@attrs.frozen(kw_only=True)
class Kerf:
    """The slot that a blade cuts. [mm]"""

    name: str
    width: float
    source: Source


FULL_KERF = Kerf(name="full kerf", width=INCH / 8, source=SAW_PRACTICE)
THIN_KERF = Kerf(name="thin kerf", width=INCH * 3 / 32, source=SAW_PRACTICE)


@attrs.frozen(kw_only=True)
class HeadPart:
    """A part of a stacked head: how much it adds to the groove, and how many a usual set has. [mm]"""

    name: str
    width: float
    count: int
    source: Source


OUTSIDE_PAIR = HeadPart(name="outside blades, the pair", width=INCH / 4, count=1, source=PAIR_ALONE)
CHIPPERS: tuple[HeadPart, ...] = (
    HeadPart(name="chipper", width=INCH / 8, count=4, source=STACKED_SIZES),
    HeadPart(name="thin chipper", width=INCH / 16, count=1, source=STACKED_SIZES),
)
SHIM_MOST = 0.020 * INCH
"""Shims run from 0.004 in to this (STACKED_SIZES). [mm]"""
WIDEST_HEAD = INCH * 13 / 16
"""What a usual set reaches (STACKED_SIZES); the arbor of the saw may allow less. [mm]"""


@attrs.frozen(kw_only=True)
class NotchingPractice:
    """Habits of notching: how deep one pass may go, how far passes lie over each other, and the like. [mm]

    bite is the deepest cut of a head in one pass, for which no manual prints a figure; overlap how far a pass lies over
    the one before; nearest how close a stop may come to the head; step how deep a router goes at once; slices how far
    kerfs are apart for the chisel.
    """

    bite: float = INCH / 2
    overlap: float = INCH / 8
    nearest: float = INCH / 2
    step: float = INCH / 4
    slices: float = INCH / 2
    source: Source = COMMON_PRACTICE


NOTCHING = NotchingPractice()
