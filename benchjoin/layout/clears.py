"""Clears as they come out: the open heights between rails, side by side, from the floor up.

What the maker gave may be measured over the band or at one side; between two rails it is what it is, and whoever
dimensions or tells it asks here.
"""

from __future__ import annotations

from collections.abc import Iterable

import attrs

from ..lengths import TOUCH
from .parts import Part


@attrs.frozen
class Opening:
    """The clear on one side between two rails: from the top of one to the bottom of the next. [mm]"""

    below: Part
    above: Part

    @property
    def low(self) -> float:
        """The top of the lower rail over the floor."""
        return self.below.blank.high[2]

    @property
    def high(self) -> float:
        """The bottom of the upper rail over the floor."""
        return self.above.blank.low[2]

    @property
    def size(self) -> float:
        """How much lies between them."""
        return self.high - self.low


def openings(parts: Iterable[Part]) -> dict[str, tuple[Opening, ...]]:
    """The clears of one piece by the side of its rails, rising; rails of several bays at one height count once."""
    sides: dict[str, list[Part]] = {}
    for part in parts:
        if part.level is not None and part.side:  # what a level carries has no side
            sides.setdefault(part.side, []).append(part)
    return {side: tuple(_between(rails)) for side, rails in sides.items()}


def _between(rails: list[Part]) -> Iterable[Opening]:
    rising = sorted(rails, key=lambda part: (part.blank.low[2], part.blank.high[2]))
    below = rising[0]
    for part in rising[1:]:
        if part.blank.low[2] > below.blank.high[2] + TOUCH:
            yield Opening(below, part)
        below = max(below, part, key=lambda each: each.blank.high[2])
