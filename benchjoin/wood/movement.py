"""Movement: how much a board swells and shrinks across its grain when its moisture content changes.

Flat-sawn boards move across their width along the rings (tangential), quarter-sawn ones across the rings (radial),
about half as much; along the grain next to nothing. Where the grain is not known, tangential is the safe side.

>>> round(change(5.5, 0.00234, 8, 14), 4)
0.0772
>>> round(dimension_size(3.5, 19, 12), 3)
3.446
"""

from __future__ import annotations

from typing import Literal

import numpy as np
import numpy.typing as npt

from ..sources import Source

Array = npt.NDArray[np.float64]
Numbers = npt.ArrayLike
Face = Literal["width", "thickness"]

BY_COEFFICIENT = Source("Wood Handbook FPL-GTR-190 (2010)", "Eq. 13-2, p. 13-18")
BY_SHRINKAGE = Source(
    "Wood Handbook FPL-GTR-190 (2010)", "Eq. 13-3; its number and limits were read", standing="from memory"
)
LARGER = Source("Wood Handbook FPL-GTR-190 (2010)", "Eq. 13-2 and 13-3, whichever is more", standing="from memory")
PARTIAL = Source("Wood Handbook FPL-GTR-282 (2021)", "Eq. 4-9", standing="transcribed")
DIMENSION = Source("FPL-RP-489 (Green 1989)", "also ASTM D1990")
PS_20_SHRINKAGE = Source("PS 20-70, as given by FPL-RP-489", "green to 15 %", standing="transcribed")
EN_1313 = Source("EN 1313-1:2010", "cl. 5")

LOW, HIGH = 6.0, 14.0
"""Between these contents the coefficients hold. [%]"""
SATURATION = 30.0
"""Content at which most woods begin to shrink. [%]"""


def coefficient(shrinkage: Numbers, start: Numbers = SATURATION) -> float | Array:
    """Change of size for each 1 % of moisture content, as a part of the size at 10 %, from the total shrinkage.

    Parameters
    ----------
    shrinkage : array_like, shape (...)
        Green to oven-dry. [% of the green size]
    start : array_like, shape (...)
        Content at which the wood begins to shrink: 30, for some cedars and redwood 22. [%]

    Notes
    -----
    ``C = S / (M (1 − S (1 − 10/M)))`` with S as a fraction and M the start: how Wood Handbook Table 13-5 follows from
    Table 4-3. A straight line of shrinkage over content is assumed.
    """
    s, m = np.asarray(shrinkage, dtype=float) / 100, np.asarray(start, dtype=float)
    return _plain(s / (m * (1 - s * (1 - 10 / m))))


def total_shrinkage(per_percent: Numbers, start: Numbers = SATURATION) -> float | Array:
    """The total shrinkage that a coefficient stands for: `coefficient` the other way about. [% of the green size]

    >>> round(total_shrinkage(coefficient(7.6)), 9)
    7.6

    Parameters
    ----------
    per_percent : array_like, shape (...)
        Change of size for each 1 % of moisture content, as a part of the size at 10 %.
    start : array_like, shape (...)
        Content at which the wood begins to shrink. [%]

    Notes
    -----
    ``S = C M / (1 + C (M − 10))`` with S as a fraction and M the start.
    """
    c, m = np.asarray(per_percent, dtype=float), np.asarray(start, dtype=float)
    return _plain(100 * c * m / (1 + c * (m - 10)))


def change(size: Numbers, per_percent: Numbers, before: Numbers, after: Numbers) -> float | Array:
    """Change of a size across the grain between two moisture contents from 6 to 14 %.

    Parameters
    ----------
    size : array_like, shape (...)
        At the content before. [any length]
    per_percent : array_like, shape (...)
        Coefficient of the species for the direction of the grain.
    before, after : array_like, shape (...)
        Moisture contents. [%]

    Returns
    -------
    change : ndarray, shape (...), or float
        In the unit of the size; more than zero where it swells. NaN where a content lies outside 6 to 14 %.

    Notes
    -----
    ``ΔD = D C (M₂ − M₁)``, Wood Handbook Eq. 13-2. For other contents take `change_from_total`.
    """
    m1, m2 = np.asarray(before, dtype=float), np.asarray(after, dtype=float)
    inside = (m1 >= LOW) & (m1 <= HIGH) & (m2 >= LOW) & (m2 <= HIGH)
    moved = np.asarray(size, dtype=float) * np.asarray(per_percent, dtype=float) * (m2 - m1)
    return _plain(np.where(inside, moved, np.nan))


def change_from_total(
    size: Numbers, shrinkage: Numbers, before: Numbers, after: Numbers, start: Numbers = SATURATION
) -> float | Array:
    """Change of a size across the grain between any two moisture contents, from the total shrinkage.

    Parameters
    ----------
    size : array_like, shape (...)
        At the content before. [any length]
    shrinkage : array_like, shape (...)
        Green to oven-dry. [% of the green size]
    before, after : array_like, shape (...)
        Moisture contents, 0 or more; above the start nothing moves any more. [%]
    start : array_like, shape (...)
        Content at which the wood begins to shrink. [%]

    Returns
    -------
    change : ndarray, shape (...), or float
        In the unit of the size; more than zero where it swells. NaN where a content is less than zero.

    Notes
    -----
    ``ΔD = D (M₂ − M₁) / (100 M / S − M + M₁)`` with M the start, Wood Handbook Eq. 13-3 (from memory).
    """
    m, s = np.asarray(start, dtype=float), np.asarray(shrinkage, dtype=float)
    m1, m2 = (np.minimum(np.asarray(content, dtype=float), m) for content in (before, after))
    moved = np.asarray(size, dtype=float) * (m2 - m1) * s / (100 * m - s * (m - m1))
    return _plain(np.where((m1 >= 0) & (m2 >= 0), moved, np.nan))


def larger_change(
    size: Numbers,
    shrinkage: Numbers,
    per_percent: Numbers,
    before: Numbers,
    after: Numbers,
    start: Numbers = SATURATION,
) -> float | Array:
    """Change of a size across the grain by the equation that gives more of it.

    Parameters
    ----------
    size : array_like, shape (...)
        At the content before. [any length]
    shrinkage : array_like, shape (...)
        Green to oven-dry, of the species. [% of the green size]
    per_percent : array_like, shape (...)
        Coefficient of the species, or of the commercial group that it is sold in. NaN where none is known.
    before, after : array_like, shape (...)
        Moisture contents, 0 or more. [%]
    start : array_like, shape (...)
        Content at which the wood begins to shrink. [%]

    Returns
    -------
    change : ndarray, shape (...), or float
        In the unit of the size; more than zero where it swells. NaN where a content is less than zero.

    Notes
    -----
    `change` (Eq. 13-2) from 6 to 14 % against `change_from_total` (Eq. 13-3). Beyond 6 to 14 %, where Eq. 13-2 does
    not hold, the total shrinkage that its coefficient stands for goes into Eq. 13-3 in its place, so that a group which
    moves more than its species does so in every season: bought red oak has 0.00369, which stands for 10.3 %, and
    northern red oak 8.6 %.
    """
    by_coefficient = change(size, per_percent, before, after)
    beyond = change_from_total(size, total_shrinkage(per_percent, start), before, after, start)
    by_coefficient = np.where(np.isnan(by_coefficient), beyond, by_coefficient)
    by_shrinkage = change_from_total(size, shrinkage, before, after, start)
    most = np.fmax(np.abs(by_coefficient), np.abs(by_shrinkage))
    return _plain(np.copysign(most, np.asarray(after, dtype=float) - np.asarray(before, dtype=float)))


def partial_shrinkage(shrinkage: Numbers, content: Numbers, start: Numbers = SATURATION) -> float | Array:
    """Shrinkage from green to some moisture content. [% of the green size]

    Notes
    -----
    ``S = S₀ (1 − x / M)``, nothing above the start M: Wood Handbook Eq. 4-9.
    """
    x, m = np.asarray(content, dtype=float), np.asarray(start, dtype=float)
    part = np.asarray(shrinkage, dtype=float) * np.maximum(0.0, 1 - x / m)
    return _plain(np.where(x >= 0, part, np.nan))


def dimension_shrinkage(content: Numbers, face: Face = "width") -> float | Array:
    """Shrinkage of softwood dimension lumber from green (28 %) to some moisture content. [% of the green size]

    Grain is mixed, as it is in lumber. NaN below 8 and above 28 %.

    Notes
    -----
    Width ``6.031 − 0.215 M``, thickness ``5.062 − 0.181 M``, fitted from 8 to 19 %: FPL-RP-489; ASTM D1990.
    """
    m = np.asarray(content, dtype=float)
    a, b = {"width": (6.031, 0.215), "thickness": (5.062, 0.181)}[face]
    return _plain(np.where((m >= 8) & (m <= 28), a - b * m, np.nan))


def dimension_size(size: Numbers, before: Numbers, after: Numbers, face: Face = "width") -> float | Array:
    """Size of softwood dimension lumber at another moisture content, 8 to 28 %; in the unit of the size.

    >>> round(dimension_size(3.5625, 28, 19), 3)
    3.494
    """
    green = np.asarray(size, dtype=float) / (1 - np.asarray(dimension_shrinkage(before, face)) / 100)
    return _plain(green * (1 - np.asarray(dimension_shrinkage(after, face)) / 100))


def dried(size: Numbers, face: Face = "width") -> float | Array:
    """Size at 15 % of lumber that was dressed green; in the unit of the size.

    Notes
    -----
    The rule of PS 20-70: 2.80 % of the width, 2.35 % of the thickness.
    """
    return _plain(np.asarray(size, dtype=float) * (1 - {"width": 0.0280, "thickness": 0.0235}[face]))


def sawn_size(target: Numbers, content: Numbers) -> float | Array:
    """Size of sawn softwood at some moisture content, from its target size at 20 %; in the unit of the size.

    Notes
    -----
    0.25 % for each 1 %, thickness and width, up to saturation (taken at 30 %): EN 1313-1:2010 cl. 5.
    """
    m = np.minimum(np.asarray(content, dtype=float), SATURATION)
    return _plain(np.asarray(target, dtype=float) * (1 + 0.0025 * (m - 20)))


def outdoor_fit(
    width: Numbers,
    shrinkage: Numbers,
    *,
    made: Numbers,
    wettest: Numbers,
    per_percent: Numbers = np.nan,
    start: Numbers = SATURATION,
    least: Numbers = 0.25,
) -> float | Array:
    """Clearance that a notch needs over its rail so that the rail does not squeeze in the wettest season. [mm]

    Parameters
    ----------
    width : array_like, shape (...)
        Of the rail when the joint is made. [mm]
    shrinkage : array_like, shape (...)
        Green to oven-dry; tangential where the grain is not known. [%]
    made, wettest : array_like, shape (...)
        Moisture contents when the joint is made and in the wettest season. [%]
    per_percent : array_like, shape (...)
        Coefficient of the species or its commercial group, where it is known.
    start : array_like, shape (...)
        Content at which the wood begins to shrink. [%]
    least : array_like, shape (...)
        What is given in any case. [mm] Common practice, no source.

    Notes
    -----
    The swelling by `larger_change`, or `least` where that is more. The notch runs along its leg's grain and does
    not move to speak of: 0.1 to 0.2 % from green to oven-dry.
    """
    swelling = np.asarray(larger_change(width, shrinkage, per_percent, made, wettest, start))
    return _plain(np.maximum(swelling, np.asarray(least, dtype=float)))


def _plain(numbers: Array) -> float | Array:
    """Scalars in, scalars out."""
    found = np.asarray(numbers, dtype=float)
    return float(found) if found.ndim == 0 else found
