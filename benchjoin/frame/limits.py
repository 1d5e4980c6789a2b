"""Limits: how much of a thing a frame may have: far more than is made of wood, so that only a slip meets them."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import islice
from typing import Any

from ..errors import BenchjoinError

MOST: dict[str, int] = {"stack": 1000, "bays": 800, "bins": 100, "carries": 50, "sections": 50}
"""So many items a field may have: 500 levels between as many clears, 400 pairs of legs."""
MEMBERS = 1000
"""So many boards or bearers may go in a run."""
PARTS = 100_000
"""So many parts all pieces of a frame may have together."""


def few(field: str, value: Iterable[Any]) -> tuple[Any, ...]:
    """The items of a field, no more than it may have.

    Raises
    ------
    BenchjoinError
        If there are more, or without end.
    """
    found = tuple(islice(value, MOST[field] + 1))
    if len(found) > MOST[field]:
        raise BenchjoinError(
            f"{field} has more than {MOST[field]} items, which are the most. Make it of several frames."
        )
    return found
