"""The batch: which pieces are the same, and the marks, kinds and hands of all parts in it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

import attrs

from ..frame.frame import Frame
from ..frame.identity import piece_of
from .kinds import Key, shape_keys
from .parts import Hand, Part
from .sets import marks_of


def firsts(frame: Frame) -> dict[int, int]:
    """For each piece the first one that is like it: nothing was measured or finished in one of them alone."""
    own: dict[int, list[tuple[str, str]]] = {}
    for found in (frame.measured, frame.finished):
        for name, value in found.items():
            piece, part = piece_of(name)
            if piece is not None:
                own.setdefault(piece, []).append((part, str(value)))
    seen: dict[tuple[tuple[str, str], ...], int] = {}
    return {n: seen.setdefault(tuple(own.get(n, ())), n) for n in range(1, frame.quantity + 1)}


def labelled(parts: Sequence[Part], like: Mapping[int, int]) -> tuple[Part, ...]:
    """Parts with their marks, kinds and hands; like names for each piece the first one that is like it."""
    marks = marks_of(parts)
    kinds = _kinds([part for part in parts if like[part.piece] == part.piece])
    found = ((part, *kinds[like[part.piece], part.identity]) for part in parts)
    return tuple(attrs.evolve(part, mark=marks[part.name], kind=kind, handed=hand) for part, kind, hand in found)


def _kinds(parts: Iterable[Part]) -> dict[tuple[int, str], tuple[int, Hand]]:
    """Number of the kind (in order of appearance) and hand of parts, by piece and identity."""
    found = {(part.piece, part.identity): shape_keys(part) for part in parts}
    numbers: dict[Key, int] = {}
    hands: dict[Key, Hand] = {}
    for key, _ in found.values():
        numbers.setdefault(key, len(numbers) + 1)
    for key, mirrored in found.values():
        if key not in hands:
            other: Hand = "right" if hands.get(mirrored) == "left" else "left"
            hands[key] = other if key != mirrored and mirrored in numbers else ""
    return {name: (numbers[key], hands[key]) for name, (key, _) in found.items()}
