"""What a printer does to lengths, measured on the check bars of a page, and taken back on later pages.

A printer's rollers feed a little too little or too much, so both ways are off by factors of their own. The maker
prints a page, lays a rule on both bars, and hands in what the rule says; pages made with that come out larger or
smaller by as much. Along is along the paper's long side, whichever way up the page is: desk printers feed that way.

>>> printer = PrinterScale("246.25 mm", "178.56 mm")
>>> [round(factor, 4) for factor in printer.factors(279.4, 215.9)]
[1.0152, 1.0081]

Bars of another length than those of desk paper are named, and so is a pair of factors, printed over drawn:

>>> PrinterScale("9 27/32 in", "7 in", bars=("10 in", "7 in")).told
'along 0.9844, across 1.0000'
>>> PrinterScale(0.985, 0.992, bars=(1, 1)).told
'along 0.9850, across 0.9920'
"""

from __future__ import annotations

from typing import Any

import attrs

from ...errors import PaperError
from ...lengths import mm

MOST_OFF = 0.03
"""No printer is off by more; a page that is was scaled on purpose. Common practice, no source."""
READ_TO = 0.25
"""How well a bar is read with a rule and good light. Common practice, no source. [mm]"""
OVER = 1800.0
"""The length over which a page states what is left of a reading's error. [mm]"""


def _measured(value: Any) -> float:
    return mm(value, what="what a check bar measures")


def _bars(value: Any) -> tuple[float, float]:
    along, across = value if isinstance(value, tuple | list) and len(value) == 2 else (value, value)
    return mm(along, what="a check bar"), mm(across, what="a check bar")


@attrs.frozen
class PrinterScale:
    """What the bar along the paper's long side and the bar across it measure, and what they should. [mm]

    Parameters
    ----------
    along, across : length
        What the rule says.
    bars : length or pair of lengths
        What both bars say they are; those of Letter and A4 if not given. With bars of 1 the other two are factors,
        printed over drawn.

    Raises
    ------
    PaperError
        If a bar is off by more than 3 %.
    """

    along: float = attrs.field(converter=_measured)
    across: float = attrs.field(converter=_measured)
    bars: tuple[float, float] = attrs.field(default=(250.0, 180.0), converter=_bars, kw_only=True)

    def __attrs_post_init__(self) -> None:
        """Refuse what no printer does."""
        for way, measured, bar in zip(("along", "across"), (self.along, self.across), self.bars, strict=True):
            off = measured / bar - 1.0
            if abs(off) > MOST_OFF + 1e-9:
                raise PaperError(
                    f"The bar {way} the paper measures {measured:g} instead of {bar:g}: {abs(off):.1%} "
                    f"{'more' if off > 0 else 'less'}, and no printer is off by more than {MOST_OFF:.0%}. The usual "
                    f"reason is a print dialog that scales to fit: print at 100 % (actual size) and measure again. "
                    f"If it was another bar, give its length with bars=.",
                    along=self.along,
                    across=self.across,
                    bars=self.bars,
                )

    @property
    def printed(self) -> tuple[float, float]:
        """Printed over drawn, along the paper and across it."""
        return self.along / self.bars[0], self.across / self.bars[1]

    def factors(self, width: float, height: float) -> tuple[float, float]:
        """What places on a page of some size are multiplied by, along x and along y."""
        along, across = (1.0 / scale for scale in self.printed)
        return (along, across) if width >= height else (across, along)

    @property
    def told(self) -> str:
        """Both ways, printed over drawn."""
        along, across = self.printed
        return f"along {along:.4f}, across {across:.4f}"


def factors(printer: PrinterScale | None, width: float, height: float) -> tuple[float, float]:
    """What places on a page are multiplied by; one where nothing was measured."""
    return printer.factors(width, height) if printer else (1.0, 1.0)


def left_over(bar: float, over: float = OVER) -> float:
    """What a bar read to a quarter of a millimetre leaves over a length. [mm]

    >>> left_over(250.0), left_over(180.0)
    (1.8, 2.5)
    """
    return READ_TO / bar * over


def promise(printer: PrinterScale | None, bar: float) -> str:
    """What was corrected and what may be left, for the head of a page whose bar along x is so long. [mm]"""
    left = f"a bar of {bar:g} mm read to {READ_TO:g} mm leaves {left_over(bar):.1f} mm over {OVER:.0f}"
    if printer is None:
        return f"Not corrected for a printer; {left}."
    bars = " and ".join(f"{bar:g}" for bar in printer.bars)
    read = " and ".join(f"{round(size, 3):g}" for size in (printer.along, printer.across))
    return f"Corrected for a printer that prints {printer.told} (bars of {bars} measured {read}); {left}."
