"""Names of parts: piece, level or role, side, and count from the datum.

A name is worked out from the description alone and survives edits: a new level renames nothing. Without a piece
in front it means the part in all of them.

>>> leg_name("back", "left"), rail_name("bench", "front"), of_piece(2, "bench/front rail")
('back left leg', 'bench/front rail', '2/bench/front rail')
"""

from __future__ import annotations

import re

_PIECE = re.compile(r"(?:0*(\d{1,9})/)?(.+)", re.DOTALL | re.ASCII)


def leg_name(row: str, pair: str) -> str:
    """A leg by its row (front, back) and its pair (left, right, middle leg 1 …)."""
    return f"{row} {pair} leg" if not pair.startswith("middle") else f"{row} {pair.replace('middle', 'middle leg')}"


def rail_name(level: str, side: str, count: int | None = None) -> str:
    """A rail by its level and side, with a count from the left where a side has several."""
    return f"{level}/{side} rail" + (f" {count}" if count else "")


def of_piece(piece: int, name: str) -> str:
    """The name of a part in one piece."""
    return f"{piece}/{name}"


def piece_of(name: str) -> tuple[int | None, str]:
    """Split a name into its piece (None where it means all) and the rest."""
    match = _PIECE.fullmatch(name.strip())
    if match is None:
        return None, name
    return (int(match[1]) if match[1] else None), match[2]


def plain(name: str) -> str:
    """A name as it is looked up, whoever typed it.

    >>> plain(" 02/back left leg")
    '2/back left leg'
    """
    piece, rest = piece_of(name)
    return rest if piece is None else of_piece(piece, rest)


def in_short(name: str, *, along_length: bool) -> str:
    """A mate where there is little room: the level of a rail; of a leg what tells it from the others at one rail.

    >>> in_short("bench/front rail", along_length=False), in_short("back left leg", along_length=True)
    ('bench', 'left leg')
    """
    level, slash, _ = name.partition("/")
    if slash:
        return level
    row, _, pair = name.partition(" ")
    return pair if along_length else f"{row} leg"
