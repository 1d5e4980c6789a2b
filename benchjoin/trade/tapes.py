"""Tapes: how far off a tape may be that the law still calls good.

European tapes carry a class, I to III, in a small ellipse on the blade; the class says how much a length may be off. In
the United States a tape read from its zero may be off by so much up to so many feet. Neither says how well anybody
reads it: that is in the error budget of the shop.

>>> round(EU_CLASSES["II"].most(1500.0), 3), round(EU_CLASSES["II"].most(1500.0, from_surface=True), 3)
(0.7, 0.9)
"""

from __future__ import annotations

import math
from collections.abc import Mapping

import attrs

from ..errors import LengthError
from ..lengths import FOOT, INCH, TOUCH
from ..sources import Source

METRE = 1000.0

MI_008 = Source(
    "Directive 2014/32/EU, Annex X (MI-008)", "ch. I, Table 1 (as UK SI 2016/1153, Sch. 1I)", standing="transcribed"
)
MI_008_MARKS = Source(
    "Directive 2014/32/EU, Annex X (MI-008)", "ch. I, Table 2 (as UK SI 2016/1153, Sch. 1I)", standing="transcribed"
)
HB_44 = Source("NIST Handbook 44", "s. 5.52, metal tapes")


@attrs.frozen(kw_only=True)
class TapeClass:
    """A class of length measures: ±(a + b L) mm, L in metres rounded up, and c more from a hook or an end. [mm]

    short and marks are what two neighbouring marks may be apart too much: up to 1 mm, and up to 1 cm.
    """

    name: str
    a: float
    b: float
    c: float
    short: float
    marks: float
    source: Source = MI_008

    def most(self, length: float, *, from_surface: bool = False) -> float:
        """Largest error allowed on a length, at 20 °C and under the pull that the tape names. [mm]

        Parameters
        ----------
        length : float
            Between two marks, or from the end if from_surface. [mm]
        from_surface : bool
            Whether one end of the length is a hook or the end of the measure, not a mark.

        Raises
        ------
        LengthError
            If the length is not a finite number of zero or more.

        Notes
        -----
        ±(a + b L), L rounded up to the next whole metre, and c where a terminal interval is bounded by a surface:
        Directive 2014/32/EU, Annex X, ch. I, points 2 and 3.
        """
        metres = math.ceil((_sound(length) - TOUCH) / METRE)
        return self.a + self.b * max(metres, 0) + (self.c if from_surface else 0.0)


EU_CLASSES: Mapping[str, TapeClass] = {
    row.name: row
    for row in (
        TapeClass(name="I", a=0.1, b=0.1, c=0.1, short=0.1, marks=0.2),
        TapeClass(name="II", a=0.3, b=0.2, c=0.2, short=0.2, marks=0.4),
        TapeClass(name="III", a=0.6, b=0.4, c=0.3, short=0.3, marks=0.6),
    )
}


@attrs.frozen
class TapeTolerance:
    """A US metal tape read from its zero, up to a length: how far off it may be. [mm]"""

    up_to: float
    off: float
    source: Source = HB_44


US_TAPES: tuple[TapeTolerance, ...] = (
    TapeTolerance(6 * FOOT, INCH / 32),
    TapeTolerance(30 * FOOT, INCH / 16),
    TapeTolerance(55 * FOOT, INCH / 8),
    TapeTolerance(80 * FOOT, INCH * 3 / 16),
    TapeTolerance(100 * FOOT, INCH / 4),
)


def us_most(length: float) -> float:
    """Largest error allowed on a US metal tape read from its zero. [mm]

    The handbook steps in whole feet; a length between two steps takes the larger.

    Raises
    ------
    LengthError
        If the length is not a number from zero to 100 ft.

    Examples
    --------
    >>> us_most(5 * 304.8) * 32 / 25.4, us_most(6.5 * 304.8) * 32 / 25.4
    (1.0, 2.0)
    """
    for row in US_TAPES:
        if _sound(length) <= row.up_to + TOUCH:
            return row.off
    raise LengthError(f"{length:g} mm is longer than the 100 ft that {HB_44} goes to.", value=length)


def _sound(length: float) -> float:
    if not (math.isfinite(length) and length >= 0):
        raise LengthError(f"{length!r} mm is not a length that a tape reads.", value=length)
    return length
