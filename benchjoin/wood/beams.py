"""Beams and columns by handbook and code: how they bend, buckle, and shear beside a notch; pure functions over arrays.

>>> round(float(bending(5 / 384, 1000.0, 2000.0, 10000.0, 45e6)), 3)  # a kilonewton spread over two metres
0.231
"""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from ..sources import Source
from .movement import Array

BOOK = "Wood Handbook FPL-GTR-282 (2021)"
DEFLECTION = Source(BOOK, "Eq. 9-2, Table 9-1", standing="transcribed")
COLUMN = Source(BOOK, "Eq. 9-25, 9-29", standing="transcribed")
ECCENTRIC = Source(BOOK, "Eq. 9-8", standing="transcribed")
NDS_NOTCH = Source("NDS", "3.4.3.2(a); its squared term was read", standing="from memory")
EN_NOTCH = Source("EN 1995-1-1", "Eq. 6.62, of two public files", standing="transcribed")
SAWN = 0.8
"""c of Ylinen's equation for sawn wood."""
SOLID = 5.0
"""k_n of EN 1995-1-1, Eq. 6.63, for solid timber."""


def bending(
    constant: npt.ArrayLike, load: npt.ArrayLike, span: npt.ArrayLike, elastic: npt.ArrayLike, inertia: npt.ArrayLike
) -> Array:
    """How far a beam bends under a whole load: ``k_b W L³ / E I``, Eq. 9-2 without its shear. [mm]

    constant is k_b of Table 9-1; load in N, span in mm, elastic in N/mm², inertia in mm⁴.
    """
    k, w, long, e, i = (np.asarray(own, dtype=float) for own in (constant, load, span, elastic, inertia))
    return np.asarray(k * w * long**3 / (e * i))


def ylinen(crushing: npt.ArrayLike, euler: npt.ArrayLike, c: float = SAWN) -> Array:
    """The stress that a column bears, between crushing and buckling: Eq. 9-29. [as they are]

    >>> round(float(ylinen(1.0, 1.0)), 3)
    0.691
    """
    f, e = np.asarray(crushing, dtype=float), np.asarray(euler, dtype=float)
    share = e / f
    half = (1 + share) / (2 * c)
    return np.asarray(f * (half - np.sqrt(half**2 - share / c)))


def grown(share: npt.ArrayLike) -> Array:
    """By how much a press, a share of the one that buckles, makes an arm grow: 1 / (1 − P / P_cr), Eq. 9-8.

    Without end at one and beyond.
    """
    p = np.asarray(share, dtype=float)
    return np.where(p < 1, 1 / np.where(p < 1, 1 - p, 1.0), np.inf)


def notch_share_nds(high: npt.ArrayLike, left: npt.ArrayLike) -> Array:
    """What a notch leaves of the shear of the wood beside it: (d_n / d)², NDS 3.4.3.2(a)."""
    return np.asarray((np.asarray(left, dtype=float) / np.asarray(high, dtype=float)) ** 2)


def notch_share_en(high: npt.ArrayLike, left: npt.ArrayLike, away: npt.ArrayLike, rise: npt.ArrayLike = 0.0) -> Array:
    """What a notch leaves of the shear of the wood beside it: k_v of EN 1995-1-1, Eq. 6.62, at most 1.

    Parameters
    ----------
    high, left : array_like, shape (...)
        Height of the beam, and what is left of it at the notch. [mm]
    away : array_like, shape (...)
        From the support's middle to the corner of the notch. [mm]
    rise : array_like, shape (...)
        Slope of the notch, its length by its depth; nought for a square one.

    Examples
    --------
    >>> round(float(notch_share_en(89, 66.75, 20)), 3)
    0.897
    """
    h, h_ef, x, i = (np.asarray(own, dtype=float) for own in (high, left, away, rise))
    a = h_ef / h
    part = np.sqrt(a * (1 - a)) + 0.8 * x / h * np.sqrt(np.maximum(1 / a - a**2, 0.0))
    found = SOLID * (1 + 1.1 * i**1.5 / np.sqrt(h)) / (np.sqrt(h) * np.where(part > 0, part, 1.0))
    return np.where(part > 0, np.minimum(found, 1.0), 1.0)
