"""Habits of the workshop that checks use: no source, all changeable by passing other numbers. [mm]"""

from __future__ import annotations

import attrs

from ..sources import COMMON_PRACTICE, Source


@attrs.frozen(kw_only=True)
class LandPractice:
    """How much wood is left standing beside a notch before its short grain is likely to break away. [mm]

    least is the shortest land, whatever the notch; by_depth asks for so many times the notch's depth; sliver is what
    breaks off at the first blow and is better pinned away.
    """

    least: float = 20.0
    by_depth: float = 1.0
    sliver: float = 6.0
    source: Source = COMMON_PRACTICE

    def needed(self, depth: float) -> float:
        """The shortest land beside a notch of some depth. [mm]"""
        return max(self.least, self.by_depth * depth)


LAND = LandPractice()

DEEPEST_NOTCH = 0.5
"""A notch deeper than this part of the leg leaves less than half of it. Common practice, no source."""

SPAN = 25.0
"""A board or bearer that is free over more than so many times its height gives. Common practice, no source.
"""

MILLED_OFF = 3.0
"""What is off by more was hardly lost at the planer: another wood is meant. [mm] Common practice, no source."""

GANG = 600.0
"""How wide a gang may be: what the clamps of a shop span. [mm] Common practice, no source."""

MARKED = 0.25
"""How true a struck line and a sawn shoulder can be: less is no reason to make a part again. [mm] Common practice, no
source."""

LEAST_GAP = 2.0
"""Between boards outdoors at their wettest, so that water runs off and grit falls through. [mm] Common practice, no
source: no standard for it was found."""

FITS: dict[str, float] = {"snug": 0.0, "easy": 0.4, "outdoor": 0.8}
"""Clearance of a notch over its rail by the word for it. [mm] Common practice, no source."""
