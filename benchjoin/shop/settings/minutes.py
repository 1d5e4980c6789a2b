"""Minutes: what setting a machine costs against cutting at it, so that heads and orders can be weighed.

One head more may spare many passes, one stop fewer may cost a hundred of them; what a shop would choose follows from
how long each takes there. All of it can be said otherwise: `Shop(minutes=Minutes(stop=1))`.

>>> Minutes().head, Minutes(head=3.5).head
(10.0, 3.5)
"""

from __future__ import annotations

from typing import Any

import attrs

from ...frame.doors import a_number, refuse
from ...sources import COMMON_PRACTICE, Source

MOST = 600.0
"""Nobody takes longer for one of these. [min]"""


def _minutes(field: str, default: float) -> Any:
    return attrs.field(default=default, converter=a_number(field, 0.0, MOST, f"{default:g}"))


@attrs.frozen(kw_only=True)
class Minutes:
    """How long things take at the machines. [min] Habits of a workshop, without a source: put in your own.

    head: stack a dado head and put it on, with its insert; bit: put another bit in the router; height: set a height, a
    depth or the gauge, with a test cut; stop: set a stop, a fence, or the guides of a router; line: bring a part to its
    line where no stop stands; turn: take a part up and lay it against the stop, on the right face; cut: one pass at one
    depth; kerf: one kerf with a hand saw, and its slice chopped out.
    """

    head: float = _minutes("head", 10.0)
    bit: float = _minutes("bit", 3.0)
    height: float = _minutes("height", 4.0)
    stop: float = _minutes("stop", 2.0)
    line: float = _minutes("line", 1.0)
    turn: float = _minutes("turn", 0.3)
    cut: float = _minutes("cut", 0.2)
    kerf: float = _minutes("kerf", 1.0)
    source: Source = COMMON_PRACTICE

    def __attrs_post_init__(self) -> None:
        refuse(self, "Minutes")


def told(minutes: float) -> str:
    """Minutes in figures, to hundredths.

    >>> told(12.0), told(0.1 + 0.2), told(1234.56)
    ('12', '0.3', '1234.56')
    """
    return f"{minutes:.2f}".rstrip("0").rstrip(".")
