"""Where a long drawing is cut into pages: at places that a tape reads without a fraction left, clear of its lines.

Pages come out as full, or as equal, as whole steps from the datum allow, and seams keep away from places that are to
be avoided. Distances are counted from the datum, never from seam to seam, so that nothing adds up.

>>> seams(-20.0, 1000.0, datum=0.0, reach=300.0, step=5.0, avoid=[490.0], even=True)
(-20.0, 235.0, 485.0, 740.0, 1000.0)
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence

from ...errors import PaperError

CLEAR = 4.0
"""How far a seam keeps from a line that it could be mistaken for. [mm]"""
_LEAST = 25.0
_SAME = 1e-9


def seams(
    start: float,
    end: float,
    *,
    datum: float,
    reach: float,
    step: float,
    avoid: Sequence[float] = (),
    clear: float = CLEAR,
    even: bool = False,
) -> tuple[float, ...]:
    """Places of the seams from the start to the end of a drawing, both among them. [mm]

    Parameters
    ----------
    start, end : float
        Ends of the drawing.
    datum : float
        Where the tape's zero lies.
    reach : float
        The longest distance between two seams.
    step : float
        Seams lie whole steps from the datum.
    avoid : sequence of float
        Places that a seam keeps clear of, if there is another within half a page.
    clear : float
        How far it keeps from them.
    even : bool
        Pages that are as equal as can be, and not each as full as can be.

    Raises
    ------
    PaperError
        If a page reaches less than 25 mm.
    """
    if reach < _LEAST:
        raise PaperError(
            f"Between margins, head and overlap a page has {max(reach, 0.0):.0f} mm left, and a tile needs {_LEAST:g}. "
            "Take larger paper, narrower margins or less overlap."
        )
    places, lines = [start], sorted(avoid)
    while places[-1] + reach < end - _SAME:
        places.append(_next(places[-1], end, datum, reach, step, lines, clear, even))
    return (*places, end)


def _next(
    last: float,
    end: float,
    datum: float,
    reach: float,
    step: float,
    lines: Sequence[float],
    clear: float,
    even: bool,
) -> float:
    """The best clear step that takes no page more, or the best clear one, or the best of all."""
    pages = math.ceil((end - last - _SAME) / reach)
    best, soonest = last + ((end - last) / pages if even else reach), end - (pages - 1) * reach
    first, final = (math.ceil((last + reach / 2 - datum) / step), math.floor((last + reach - datum) / step + _SAME))
    steps = sorted((datum + n * step for n in range(first, final + 1)), key=lambda at: (at < soonest, abs(at - best)))
    return next((at for at in steps if _is_clear(at, lines, clear)), steps[0] if steps else last + reach)


def _is_clear(at: float, lines: Sequence[float], clear: float) -> bool:
    n = bisect_left(lines, at - clear)
    return n == len(lines) or lines[n] > at + clear
