"""Which pieces a sheet is true of: nothing is said where all are alike; where they differ every kind has its own.

A drawing of one piece is drawn by `of_each_kind` for the first piece of each kind, and says so in its title and name:
"Pieces 1 and 3: Front elevation" is elevation-front, that of piece 2 elevation-front-piece-2.
"""

from __future__ import annotations

from collections.abc import Iterator

import attrs

from ...layout.layout import Layout
from ...layout.parts import Part
from ...phrases import pieces_called
from .asked import Asked


def of_each_kind(asked: Asked) -> Iterator[Asked]:
    """What is asked, for the first piece of each kind."""
    for alike in asked.layout.alike:
        yield attrs.evolve(asked, piece=alike[0])


def like(layout: Layout, piece: int) -> tuple[int, ...]:
    """Numbers of the pieces whose wood is that of a piece, it among them."""
    return next(alike for alike in layout.alike if piece in alike)


def shown_parts(asked: Asked) -> tuple[Part, ...]:
    """The parts that a sheet shows: those of the first of the pieces that are alike, with its marks."""
    asked.layout.piece(asked.piece)  # refuses one that is not there
    return asked.layout.piece(like(asked.layout, asked.piece)[0])


def whose(layout: Layout, piece: int) -> str:
    """'pieces 1 and 3' where others differ; nothing where all are alike."""
    return pieces_called(like(layout, piece)) if len(layout.alike) > 1 else ""


def titled(asked: Asked, title: str) -> str:
    """A title that says which pieces it is of, where they differ."""
    of = whose(asked.layout, asked.piece)
    return f"{of[0].upper()}{of[1:]}: {title}" if of else title


def named(asked: Asked, name: str) -> str:
    """A name for files; that of the first kind of piece has no number."""
    own = like(asked.layout, asked.piece)
    return name if own == asked.layout.alike[0] else f"{name}-piece-{own[0]}"
