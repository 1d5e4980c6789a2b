"""Holding: what a screw, a nail or a lag screw holds in wood, by the Wood Handbook's equations, over arrays.

Withdrawal is drawn out along its axis, lateral pushed across it. G is specific gravity at 12 % moisture content, on
oven-dry weight and the volume at 12 %: never the oven-dry gravity of building codes, which have other factors.

>>> round(float(screw_withdrawal(0.32, 4.17, 25.4)))
1174
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from ..sources import Source
from .movement import Array

BOOK = "Wood Handbook FPL-GTR-282 (2021)"
SCREW_WITHDRAWAL = Source(BOOK, "Eq. 8-10", standing="transcribed")
NAIL_WITHDRAWAL = Source(BOOK, "Eq. 8-1", standing="transcribed")
LAG_WITHDRAWAL = Source(BOOK, "Eq. 8-14", standing="transcribed")
LATERAL = Source(BOOK, "Eq. 8-13, 8-15 and Table 8-4", standing="transcribed")
YIELD = Source(BOOK, "Table 8-5", standing="transcribed")
BEARING = Source(BOOK, "Eq. 8-3", standing="transcribed")

SOFTWOOD = (0.29, 0.43, 0.48, 0.53)
HARDWOOD = (0.33, 0.48, 0.57, 0.75)
"""Where the three groups of gravity of Table 8-4 begin, and where the last one ends."""
CONSTANTS: dict[str, tuple[tuple[float, float, float], tuple[float, float, float]]] = {
    "screw": ((23.17, 29.79, 36.40), (23.17, 31.99, 44.13)),
    "nail": ((50.04, 62.55, 76.45), (50.04, 69.50, 94.52)),
    "lag screw": ((23.30, 26.34, 29.51), (26.34, 29.51, 34.13)),
}
"""K of Table 8-4 by the kind of fastener: of softwoods and of hardwoods, from the lightest group to the heaviest."""


def screw_withdrawal(gravity: npt.ArrayLike, diameter: npt.ArrayLike, thread: npt.ArrayLike) -> Array:
    """Most that a wood screw holds in side grain. [N]

    Parameters
    ----------
    gravity, diameter, thread : array_like, shape (...)
        Specific gravity at 12 %; diameter of the shank; length of the thread in the wood. [mm]

    Notes
    -----
    ``p = 108.25 G² D L``, Eq. 8-10: ultimate, for lead holes of 70 % of the root in softwoods and 90 % in hardwoods.
    """
    g, d, length = (np.asarray(value, dtype=float) for value in (gravity, diameter, thread))
    return np.asarray(108.25 * g**2 * d * length)


def nail_withdrawal(gravity: npt.ArrayLike, diameter: npt.ArrayLike, length: npt.ArrayLike) -> Array:
    """Most that a smooth nail holds in side grain just after it is driven: ``p = 54.12 G^(5/2) D L``, Eq. 8-1. [N]"""
    g, d, deep = (np.asarray(value, dtype=float) for value in (gravity, diameter, length))
    return np.asarray(54.12 * g**2.5 * d * deep)


def lag_withdrawal(gravity: npt.ArrayLike, diameter: npt.ArrayLike, thread: npt.ArrayLike) -> Array:
    """Most that a lag screw holds in side grain: ``p = 125.4 G^(3/2) D^(3/4) L``, Eq. 8-14. [N]"""
    g, d, length = (np.asarray(value, dtype=float) for value in (gravity, diameter, thread))
    return np.asarray(125.4 * g**1.5 * d**0.75 * length)


def lateral_constant(gravity: npt.ArrayLike, *, hardwood: bool, kind: str) -> Array:
    """K of Table 8-4 for a "screw", "nail" or "lag screw"; NaN for woods lighter or heavier than its groups.

    >>> float(lateral_constant(0.45, hardwood=False, kind="screw"))
    29.79
    """
    g = np.asarray(gravity, dtype=float)
    starts = HARDWOOD if hardwood else SOFTWOOD
    values = np.array((np.nan, *CONSTANTS[kind][1 if hardwood else 0], np.nan))
    return np.asarray(values[np.searchsorted(np.asarray(starts), g, side="right")])


def lateral(constant: npt.ArrayLike, diameter: npt.ArrayLike, *, kind: str) -> Array:
    """Load across the fastener at the proportional limit: ``p = K D²``, of nails ``K D^(3/2)``. [N]

    Both members of like wood, and at least 7 diameters in the member that holds the point.
    """
    d = np.asarray(diameter, dtype=float)
    return np.asarray(np.asarray(constant, dtype=float) * d ** (1.5 if kind == "nail" else 2.0))


def bearing_strength(gravity: npt.ArrayLike) -> Array:
    """What wood bears under a slender dowel: ``114.5 G^1.84``, Eq. 8-3. [N/mm²]"""
    return np.asarray(114.5 * np.asarray(gravity, dtype=float) ** 1.84)


def yield_modes(
    diameter: npt.ArrayLike,
    side: npt.ArrayLike,
    side_gravity: npt.ArrayLike,
    main_gravity: npt.ArrayLike,
    steel: npt.ArrayLike,
) -> Array:
    """Lateral yield load of a wood screw in single shear by each mode of Table 8-5, stacked last. [N]

    Parameters
    ----------
    diameter, side : array_like, shape (...)
        Of the screw; thickness of the member under its head. [mm]
    side_gravity, main_gravity : array_like, shape (...)
        Specific gravity of that member, and of the one that holds the point.
    steel : array_like, shape (...)
        Bending yield strength of the screw. [N/mm²]

    Returns
    -------
    ndarray, shape (..., 3)
        Is: the side member crushes. IIIs: it crushes and the screw bends in the main member. IV: the screw bends in
        both.
    """
    d, t, yields = (np.asarray(value, dtype=float) for value in (diameter, side, steel))
    f_side, f_main = bearing_strength(side_gravity), bearing_strength(main_gravity)
    ratio = f_main / f_side
    bends = 2 * (1 + ratio) / ratio + yields * (2 + ratio) * d**2 / (2 * f_main * t**2)
    modes = (
        d * t * f_side,
        (np.sqrt(bends) - 1) * d * t * f_main / (2 + ratio),
        d**2 * np.sqrt(1.75 * f_main * yields / (3 * (1 + ratio))),
    )
    return np.stack(np.broadcast_arrays(*modes), axis=-1)
