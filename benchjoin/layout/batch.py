"""The batch: which pieces are the same, and the marks, kinds and hands of all parts in it.

A hand says which faces are notched, and tenths of a millimetre do not change it: where wood was measured or finished, a
part whose mirror image is there within what is lost at the planer keeps its hand.
"""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping, Sequence

import attrs

from ..frame.frame import Frame
from ..frame.identity import piece_of
from ..lengths import TOUCH, steady
from ..trade.practice import MILLED_OFF
from .gangs import marks_of
from .kinds import Key, off, shape_keys
from .parts import Hand, Part


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


def same_wood(pieces: Mapping[int, Sequence[Part]]) -> tuple[tuple[int, ...], ...]:
    """Numbers of the pieces whose wood is the same, kind by kind: they have one picture."""
    kinds: dict[object, list[int]] = {}
    for number, parts in pieces.items():
        kinds.setdefault(tuple(_wood(part) for part in parts), []).append(number)
    return tuple(map(tuple, kinds.values()))


def _wood(part: Part) -> tuple[object, ...]:
    """Where the wood of a part is, and what is gone of it. [mm, to 1 nm]"""
    boxes = (part.blank, *(cut.box for cut in part.cuts))
    return (part.identity, part.marked, part.kind, *(steady(*box.low, *box.high) for box in boxes))


def labelled(
    parts: Sequence[Part], like: Mapping[int, int], *, as_drawn: bool = True, own: Container[str] = ()
) -> tuple[Part, ...]:
    """Parts with their marks, kinds and hands.

    Parameters
    ----------
    parts : sequence of Part
    like : mapping of int to int
        For each piece the first one that is like it.
    as_drawn : bool
        Whether nothing was measured or finished, so that mirror images are exact.
    own : container of str
        Names of the parts that were.
    """
    marks = marks_of(parts, own)
    kinds = _kinds([part for part in parts if like[part.piece] == part.piece], 0.0 if as_drawn else MILLED_OFF)
    found = ((part, *kinds[like[part.piece], part.identity]) for part in parts)
    return tuple(attrs.evolve(part, mark=marks[part.name], kind=kind, handed=hand) for part, kind, hand in found)


def _kinds(parts: Sequence[Part], lost: float) -> dict[tuple[int, str], tuple[int, Hand]]:
    """Number of the kind (in order of appearance) and hand of parts, by piece and identity.

    lost is how much less a part may measure than its mirror image. [mm]
    """
    keys = [shape_keys(part) for part in parts]
    numbers: dict[Key, int] = {}
    for key, _ in keys:
        numbers.setdefault(key, len(numbers) + 1)
    hands: dict[Key, Hand] = {}
    for part, (key, mirrored) in zip(parts, keys, strict=True):
        if key in hands:
            continue
        if key == mirrored:
            hands[key] = ""
        elif mirrored in hands:
            hands[key] = _other(hands[mirrored] or "right")
        else:
            about = [(other, hands.get(own, "")) for other, (own, _) in zip(parts, keys, strict=True) if own != key]
            hands[key] = _near(part, about, lost) if lost else ""
            hands[key] = hands[key] or ("left" if mirrored in numbers else "")
    return {(part.piece, part.identity): (numbers[key], hands[key]) for part, (key, _) in zip(parts, keys, strict=True)}


def _other(hand: Hand) -> Hand:
    return "right" if hand == "left" else "left"


def _near(part: Part, others: Sequence[tuple[Part, Hand]], lost: float) -> Hand:
    """The hand of a part whose mirror image is among others but for what was lost; none where it is not.

    It goes by the hands that are known: of its mirror images, and of what is like it, in its own piece or in its place
    in another.
    """
    mirror = False
    known: Hand = ""
    own = off(part, part, mirrored=True)
    for turned, hand in _compared(part, others, min(own - TOUCH, lost)):
        mirror |= turned
        known = known or (_other(hand) if hand and turned else hand)
        if mirror and known:
            break
    return (known or "left") if mirror else ""


def _compared(part: Part, others: Sequence[tuple[Part, Hand]], lost: float) -> Iterator[tuple[bool, Hand]]:
    """Those that a part is but for what was lost: whether as their mirror image, and their hands if known."""
    for other, hand in others:
        if part.piece == other.piece or part.identity == other.identity:
            like, turned = (off(part, other, mirrored=way) for way in (False, True))
            if min(like, turned) <= lost and abs(like - turned) > TOUCH:
                yield turned < like, hand
