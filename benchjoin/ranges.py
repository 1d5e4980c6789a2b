"""Ranges: what is not decided yet, or is to be tried: from a length to another, in steps.

>>> Range.said("8 to 9 in").values(25.4 / 2)
[203.2, 215.9, 228.6]
>>> len(Range(1200, 1800, 100).values(1.0))
7
"""

from __future__ import annotations

import math
import re
from typing import Any

import attrs

from .errors import LengthError, typed
from .lengths import Length, signed_mm

MOST = 100_000
"""More values than these are none that anybody looks through."""
_SAID = re.compile(r"\s*(.+?)\s+to\s+(.+?)\s*")


def _mm(value: Length) -> float:
    return signed_mm(value, what="a range")


def _step(value: Length | None) -> float | None:
    return None if value is None else signed_mm(value, what="a step")


@attrs.frozen
class Range:
    """From a length to a longer one, in steps of a third; of the tape's division where none is given. [mm]

    `sweep` goes through its values, sliders stop at them, a sketch keeps it until it is settled.

    Raises
    ------
    LengthError
        If it does not rise, or its step is none.
    """

    low: float = attrs.field(converter=_mm)
    high: float = attrs.field(converter=_mm)
    step: float | None = attrs.field(default=None, converter=_step)

    def __attrs_post_init__(self) -> None:
        if not self.low < self.high:
            raise LengthError(f"A range goes from {self.low:g} to {self.high:g} mm. Write the shorter one first.")
        if self.step is not None and not 0 < self.step <= self.high - self.low + 1e-6:
            raise LengthError(f"A step of {self.step:g} mm does not go through {self.low:g} to {self.high:g} mm.")

    @classmethod
    def said(cls, words: str) -> Range:
        """A range as one says it: "8 to 9 in", "200 to 230 mm", "8 in to 230 mm".

        Raises
        ------
        LengthError
            If it is none.
        """
        found = _SAID.fullmatch(words) if isinstance(words, str) else None
        if found is None:
            raise LengthError(f'{typed(words)} is no range. Write "8 to 9 in" or "200 to 230 mm".')
        low, high = found.groups()
        unit = re.search(r"[^\d\s/.]+$", high)
        return cls(low if re.search(r"[^\d\s/.-]$", low) or unit is None else f"{low} {unit[0]}", high)

    def values(self, division: float) -> list[float]:
        """Its lengths, both ends among them. [mm]

        Raises
        ------
        LengthError
            If they are more than anybody looks through.
        """
        step = division if self.step is None else self.step
        count = math.floor((self.high - self.low) / step + 1e-9)
        if count > MOST:
            raise LengthError(f"A range of {count} steps is too fine. Give it a longer step.")
        found = [round(self.low + step * n, 9) for n in range(count + 1)]
        return found if self.high - found[-1] < 1e-6 else [*found, self.high]


def ranged(value: Any) -> Range | None:
    """A range, where a value is one or says one; None for anything else."""
    if isinstance(value, Range):
        return value
    return Range.said(value) if isinstance(value, str) and _SAID.fullmatch(value) else None
