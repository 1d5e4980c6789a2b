"""Tolerance: how small errors add up, at worst and as they mostly do.

At worst every error goes the same way: the sizes are added. Mostly some go one way and some the other: the root of
the sum of squares says how far, if the errors have nothing to do with each other.

>>> worst([0.20, 0.10, 0.15]), round(root_sum_square([0.20, 0.10, 0.15]), 3)
(0.45, 0.269)
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from ...sources import Source

SCHOLZ = Source("Scholz, Tolerance Stack Analysis Methods, Boeing ISSTECH 1995", "arithmetic and statistical stacking")


def worst(errors: Iterable[float]) -> float:
    """The sum of the sizes: all errors the same way (SCHOLZ)."""
    return math.fsum(abs(error) for error in errors)


def root_sum_square(errors: Iterable[float]) -> float:
    """The root of the sum of squares: errors that have nothing to do with each other (SCHOLZ)."""
    return math.sqrt(math.fsum(error * error for error in errors))
