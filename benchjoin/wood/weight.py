"""Weight: density of wood at a moisture content, from its specific gravity.

>>> round(density(0.48, 12), 1)
537.6
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from ..sources import Source
from .movement import SATURATION, Array, Numbers, partial_shrinkage

WATER = 1000.0
"""Density of water. [kg/m³]"""
DENSITY = Source("Wood Handbook FPL-GTR-282 (2021)", "Eq. 4-14", standing="transcribed")


def density(gravity: npt.ArrayLike, content: npt.ArrayLike) -> float | Array:
    """Density of wood with its water. [kg/m³]

    Parameters
    ----------
    gravity : array_like, shape (...)
        Specific gravity on oven-dry weight and the volume at that same moisture content.
    content : array_like, shape (...)
        Moisture content. [%] NaN below zero.

    Notes
    -----
    ``ρ = 1000 G (1 + M/100)``, Wood Handbook Eq. 4-14.
    """
    m = np.asarray(content, dtype=float)
    found = WATER * np.asarray(gravity, dtype=float) * (1 + m / 100)
    found = np.where(m >= 0, found, np.nan)
    return float(found) if found.ndim == 0 else found


def gravity_at(
    gravity: Numbers, volumetric: Numbers, content: Numbers, *, known_at: Numbers = 12.0, start: Numbers = SATURATION
) -> float | Array:
    """Specific gravity on the volume at another moisture content: the same dry wood in a larger or smaller volume.

    Parameters
    ----------
    gravity : array_like, shape (...)
        Specific gravity on the volume at the content `known_at`.
    volumetric : array_like, shape (...)
        Volumetric shrinkage from green to oven-dry. [%]
    content, known_at : array_like, shape (...)
        Moisture contents; any content above the start is green. [%]
    start : array_like, shape (...)
        Content below which the wood shrinks. [%]

    Notes
    -----
    Volume shrinks in a straight line with the content (Wood Handbook Eq. 4-9), the oven-dry weight stays.
    """
    known, asked = (1 - np.asarray(partial_shrinkage(volumetric, c, start)) / 100 for c in (known_at, content))
    found = np.asarray(np.asarray(gravity, dtype=float) * known / asked)
    return float(found) if found.ndim == 0 else found
