"""Gaps between boards that lie side by side: how wide one is when the boards have taken up or given off water.

A board that is fixed about the middle of its width keeps its middle where it is, since what it lies on runs along the
grain and does not move to speak of. So each gap takes half of what both its boards move. Boards that are laid wetter
than they will ever be again only shrink, and their gaps open.

>>> moved = larger_change([100.0, 100.0, 80.0], 8.6, 0.00369, 8, 12)
>>> gaps_after([3.0, 3.0], moved).round(2).tolist()
[1.52, 1.67]
"""

from __future__ import annotations

import numpy as np

from ..sources import Source
from .movement import SATURATION, Array, Numbers, change, change_from_total, total_shrinkage

LARGER = Source("Wood Handbook FPL-GTR-282 (2021)", "Eq. 13-2 and 13-3, whichever is more", standing="from memory")


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
    found = np.asarray(np.copysign(most, np.asarray(after, dtype=float) - np.asarray(before, dtype=float)))
    return float(found) if found.ndim == 0 else found


def gaps_after(laid: Numbers, moved: Numbers) -> Array:
    """Gaps of a row of boards when these have moved.

    Parameters
    ----------
    laid : array_like, shape (..., n - 1)
        Gaps as they were laid, from the datum. [any length]
    moved : array_like, shape (..., n)
        How much each board has swollen since; less than zero where it shrank. [same]

    Returns
    -------
    gaps : ndarray, shape (..., n - 1)
        Less than zero where boards press on each other. Every board is fixed about its middle.
    """
    return np.asarray(laid, dtype=float) - _shared(moved)


def least_gaps(moved: Numbers, least: Numbers) -> Array:
    """Gaps to lay so that each keeps its least when the boards have swollen.

    Parameters
    ----------
    moved : array_like, shape (..., n)
        How much each board swells from as it is laid to its wettest. [any length]
    least : array_like, shape (...) or (..., n - 1)
        What is to be left then. [same]

    Returns
    -------
    gaps : ndarray, shape (..., n - 1)
        Nothing where boards that are laid wet open by more than that of themselves.
    """
    return np.maximum(np.asarray(least, dtype=float) + _shared(moved), 0.0)


def _shared(moved: Numbers) -> Array:
    """What each gap takes of the boards beside it: half of both."""
    boards = np.asarray(moved, dtype=float)
    return np.asarray((boards[..., :-1] + boards[..., 1:]) / 2)
