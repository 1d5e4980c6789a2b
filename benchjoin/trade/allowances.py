"""What milling takes, and what the machines ask for: habits of the workshop, all changeable by passing other numbers.

A dressed 2x4 loses about an eighth of an inch each way before it is clean; one-by trim that is rough on one face and
7/8 in thick finishes at 3/4. Two ready sets, in whole fractions of an inch and in whole millimetres; none has a source.

>>> round(INCH_MILLING.taken("dressed") / 25.4, 4), round(INCH_MILLING.taken("rough on one face") / 25.4, 4)
(0.125, 0.125)
"""

from __future__ import annotations

import math
from typing import Any

import attrs

from ..errors import MillingError, typed
from ..lengths import INCH, mm
from ..readings import Tape
from ..sources import COMMON_PRACTICE, Source
from .states import State


def _size(field: str, *, zero: bool = False) -> Any:
    return lambda value: mm(value, zero=zero, what=field)


def _count(field: str) -> Any:
    def convert(value: Any) -> int:
        if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value <= 100:
            raise MillingError(f"{field} is {typed(value)}. Give a whole number from 0 to 100.")
        return value

    return convert


@attrs.frozen(kw_only=True)
class Milling:
    """How a maker mills. Lengths in mm or as tape strings.

    rough_side and dressed_side are what one sawn or one planed side loses until it is clean and flat; end is left on
    at each end of a piece; parting is the saw cut and trim between two parts in one piece; jointer_least and
    planer_least are the least lengths that the manuals of the two machines allow, thinnest the least thickness of the
    planer; jointer_width and planer_width are the widest pieces they take; spare_legs and test_pieces are milled with
    each batch of legs and each batch; a test piece is so long.
    """

    rough_side: float = attrs.field(default=INCH / 8, converter=_size("rough_side", zero=True))
    dressed_side: float = attrs.field(default=INCH / 16, converter=_size("dressed_side", zero=True))
    end: float = attrs.field(default=0.75 * INCH, converter=_size("end", zero=True))
    parting: float = attrs.field(default=INCH / 4, converter=_size("parting", zero=True))
    jointer_least: float = attrs.field(default=12 * INCH, converter=_size("jointer_least"))
    planer_least: float = attrs.field(default=14 * INCH, converter=_size("planer_least"))
    rip_least: float = attrs.field(default=12 * INCH, converter=_size("rip_least"))
    crosscut_least: float = attrs.field(default=12 * INCH, converter=_size("crosscut_least"))
    router_least: float = attrs.field(default=12 * INCH, converter=_size("router_least"))
    thinnest: float = attrs.field(default=INCH / 4, converter=_size("thinnest"))
    jointer_width: float = attrs.field(default=6 * INCH, converter=_size("jointer_width"))
    planer_width: float = attrs.field(default=12 * INCH, converter=_size("planer_width"))
    spare_legs: int = attrs.field(default=1, converter=_count("spare_legs"))
    test_pieces: int = attrs.field(default=1, converter=_count("test_pieces"))
    test_length: float = attrs.field(default=8 * INCH, converter=_size("test_length"))
    source: Source = COMMON_PRACTICE

    @property
    def least(self) -> float:
        """The shortest blank that goes through all the machines that mill it. [mm]"""
        return max(self.jointer_least, self.planer_least, self.rip_least)

    def taken(self, state: State) -> float:
        """What both sides of a thickness lose together, from a state until they are clean. [mm]

        Of a piece that is rough on one face, the smooth face is kept as it is.
        """
        return {
            "rough": 2 * self.rough_side,
            "rough on one face": self.rough_side,
            "dressed": 2 * self.dressed_side,
            "planed": 2 * self.dressed_side,
            "milled": 0.0,
        }[state]

    def taken_edges(self, state: State) -> float:
        """What both edges of a width lose together, from a state until they are clean. [mm]

        The edges of a piece that is rough on one face were dressed.
        """
        return self.taken("dressed" if state == "rough on one face" else state)

    def after(self, size: float, state: State, *, edges: bool = False) -> float:
        """Thickness, or width between edges, to expect when a piece is clean. [mm]

        Raises
        ------
        MillingError
            If nothing would be left.
        """
        left = size - (self.taken_edges(state) if edges else self.taken(state))
        if not (math.isfinite(left) and left > 0):
            raise MillingError(f"{size:g} mm is less than what milling takes from a piece that is {state}.")
        return left


INCH_MILLING = Milling()
METRIC_MILLING = Milling(
    rough_side=3,
    dressed_side=1.5,
    end=20,
    parting=6,
    jointer_least=300,
    planer_least=350,
    rip_least=300,
    crosscut_least=300,
    router_least=300,
    thinnest=6,
    jointer_width=150,
    planer_width=300,
    test_length=200,
)


def usual_milling(tape: Tape) -> Milling:
    """The ready set in round figures of a tape's unit."""
    return INCH_MILLING if tape.unit == "in" else METRIC_MILLING
