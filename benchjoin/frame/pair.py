"""A pair of legs between two bays, where it is not like the end pairs or is held at a place.

>>> Pair(at="1200 mm").at
1200.0
"""

from __future__ import annotations

from typing import Any

import attrs

from ..errors import BenchjoinError, typed
from .doors import a_length, kept, refuse
from .leg import Leg


def _leg(value: Any) -> Any:
    if value is None or isinstance(value, Leg):
        return value
    raise BenchjoinError(f'{typed(value)} is not a Leg. Write for example Leg(stock, height="35 1/2 in").')


@attrs.frozen(kw_only=True)
class Pair:
    """A front and a back leg, or an upright of a single row; at is its middle from the left end of the legs. [mm]

    front and back are the frame's own legs where they are None.
    """

    at: float | None = attrs.field(default=None, converter=a_length("at", optional=True))
    front: Leg | None = attrs.field(default=None, converter=kept("front", _leg))
    back: Leg | None = attrs.field(default=None, converter=kept("back", _leg))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Pair")
