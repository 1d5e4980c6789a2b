"""What a finding is about: the identities of some parts, and their pieces where these are not all of the batch."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypedDict

from .parts import Part


class About(TypedDict):
    """Fields of a finding."""

    parts: tuple[str, ...]
    pieces: tuple[int, ...]


def about(parts: Iterable[Part], quantity: int) -> About:
    """Identities and pieces of some parts of a batch.

    >>> about((), 3)
    {'parts': (), 'pieces': ()}
    """
    found = list(parts)
    pieces = tuple(sorted({part.piece for part in found}))
    return About(
        parts=tuple(dict.fromkeys(part.identity for part in found)), pieces=() if len(pieces) == quantity else pieces
    )
