"""Readings on paper: millimetres in, what a tape says out.

A reading is the nearest mark of the tape, reduced, followed by *full* or *scant* when the true length lies off that
mark by more than a hair: an eighth of the tape's division. A mark is read once, from the exact sum; readings
are never added up.

>>> tape = Tape("1/16 in")
>>> tape.read(1228.725), tape.read(61.9125 + 0.4), tape.read(25.0)
('48 3/8', '2 7/16 full', '1 scant')
>>> Tape("1 mm").say(160.0)
'160 mm'
"""

from __future__ import annotations

import math
from fractions import Fraction
from functools import lru_cache
from typing import Literal

import attrs

from .errors import LengthError, typed
from .lengths import INCH

DIVISIONS = {
    "1/16 in": Fraction(1, 16),
    "1/32 in": Fraction(1, 32),
    "1/64 in": Fraction(1, 64),
    "0.5 mm": Fraction(1, 2),
    "1 mm": Fraction(1),
}


def _known(_: object, __: object, name: object) -> None:
    if not isinstance(name, str) or name not in DIVISIONS:
        raise LengthError(f"{typed(name)} is not a tape that benchjoin reads. Choose one of {', '.join(DIVISIONS)}.")


@attrs.frozen
class Tape:
    """A tape by its smallest division: "1/16 in", "1/32 in", "1/64 in", "0.5 mm" or "1 mm"."""

    name: str = attrs.field(default="1/16 in", validator=_known)

    @property
    def unit(self) -> Literal["in", "mm"]:
        """The unit that its figures count."""
        return "in" if self.name.endswith("in") else "mm"

    @property
    def units(self) -> Literal["inches", "millimetres"]:
        """The word for its unit."""
        return "inches" if self.unit == "in" else "millimetres"

    @property
    def division(self) -> float:
        """Distance between two marks. [mm]"""
        return float(DIVISIONS[self.name]) * (INCH if self.unit == "in" else 1.0)

    @property
    def hair(self) -> float:
        """How far off a mark a length may lie before the reading says so: an eighth of a division. [mm]"""
        return self.division / 8

    def marks(self, length: float) -> int:
        """Number of the nearest mark; a length half-way goes up."""
        if not math.isfinite(length):
            raise LengthError(f"{length!r} is not a finite length, and no tape reads it.", value=length)
        return math.floor(length / self.division + 0.5 + 1e-9)

    def nearest(self, length: float) -> float:
        """The nearest mark. [mm]"""
        return self.marks(length) * self.division

    def off(self, length: float) -> Literal["", "full", "scant"]:
        """Whether the true length lies beyond the nearest mark (full), short of it (scant), or on it.

        Below zero the tape is read from zero downwards, so that -1 full lies below -1.
        """
        if self._half(length) is not None:
            return ""
        beyond = (length - self.nearest(length)) * (-1 if self.marks(length) < 0 else 1)
        if abs(beyond) <= self.hair + 1e-9:
            return ""
        return "full" if beyond > 0 else "scant"

    def read(self, length: float) -> str:
        """Figures of the nearest mark without the unit, with full or scant where it lies off the mark."""
        return _read(self, length)

    def figures(self, length: float) -> str:
        """Figures of the nearest mark alone, or of the half between two where a length lies there on a metric rule."""
        half = self._half(length)
        if half is not None:
            return f"{half:g}"
        marks = self.marks(length)
        value = abs(marks) * DIVISIONS[self.name]
        sign = "-" if marks < 0 else ""
        if self.unit == "mm":
            return f"{sign}{float(value):g}" if value.denominator > 1 else f"{sign}{value.numerator}"
        whole, part = divmod(value, 1)
        return sign + (" ".join(filter(None, (str(whole) if whole else "", str(part) if part else ""))) or "0")

    def _half(self, length: float) -> float | None:
        """The half between two millimetres, where a length lies on one: that is read, not full or scant."""
        half = math.floor(length) + 0.5 if math.isfinite(length) else length
        return half if self.name == "1 mm" and abs(length - half) <= self.hair + 1e-9 else None

    def say(self, length: float) -> str:
        """Reading with its unit, for sentences: '2 7/16 in full'."""
        return " ".join(filter(None, (self.figures(length), self.unit, self.off(length))))

    def both(self, length: float) -> str:
        """Reading with its unit, and the number behind it that a program counts with.

        >>> Tape("1/16 in").both(247.65), Tape("1 mm").both(247.65)
        ('9 3/4 in (247.65 mm)', '248 mm scant (247.65 mm)')
        >>> Tape("1 mm").both(250.0)
        '250 mm'
        """
        said, number = self.say(length), f"{round(length, 2):g} mm"
        return said if said == number else f"{said} ({number})"

    def amount(self, length: float) -> str:
        """A difference with its unit: its reading, or decimals where that is nothing or off the mark.

        >>> Tape("1/16 in").amount(1.5875), Tape("1/16 in").amount(0.4), Tape("1 mm").amount(0.4)
        ('1/16 in', '0.016 in', '0.40 mm')
        """
        reads = self.marks(length) and not self.off(length)
        return self.say(length) if reads else f"{self.decimals(length)} {self.unit}"

    def decimals(self, length: float) -> str:
        """A small length in decimals of the unit: thousandths of an inch, hundredths of a millimetre."""
        return f"{length / INCH:.3f}" if self.unit == "in" else f"{length:.2f}"


@lru_cache(maxsize=4096)
def _read(tape: Tape, length: float) -> str:
    return " ".join(filter(None, (tape.figures(length), tape.off(length))))
