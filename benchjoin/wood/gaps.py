"""Gaps between boards that lie side by side: how wide one is when the boards have taken up or given off water.

A board that is fixed about the middle of its width keeps its middle where it is, since what it lies on runs along the
grain and does not move to speak of. So each gap takes half of what both its boards move. Boards that are laid wetter
than they will ever be again only shrink, and their gaps open.

>>> from benchjoin.wood.movement import larger_change
>>> moved = larger_change([100.0, 100.0, 80.0], 8.6, 0.00369, 8, 12)
>>> gaps_after([3.0, 3.0], moved).round(2).tolist()
[1.52, 1.67]
"""

from __future__ import annotations

import numpy as np

from .movement import Array, Numbers


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
