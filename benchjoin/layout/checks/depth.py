"""Depth: what notches leave of a leg's section."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from ...findings import Finding
from ...lengths import TOUCH
from ...runs import larger, smaller
from ...solids import Box, boxes
from ...sources import COMMON_PRACTICE, STATICS
from ...trade.practice import DEEPEST_NOTCH
from ..parts import Housing, Part
from .piece import Piece


def deep_notches(piece: Piece) -> Iterator[Finding]:
    """Notches deeper than half of the leg, told once for each kind of leg."""
    for names, leg, alike in piece.kinds_of_legs():
        through = [(notch, notch.depth / _through(leg, notch.face)) for notch in leg.notches]
        deep = [(notch, part) for notch, part in through if DEEPEST_NOTCH + 1e-9 < part < 1 - 1e-9]
        if deep:
            notch, part = max(deep, key=lambda pair: pair[1])
            rails = tuple(dict.fromkeys(n.rail for n, _ in deep))
            yield Finding(
                severity="warning",
                kind="deep notch",
                where=names,
                parts=alike,
                mates=rails,
                sentence=f"{names}: notched deeper than half of the leg for {', '.join(rails)}. At {notch.rail} the "
                f"notch takes {piece.say(notch.depth)} of {piece.say(_through(leg, notch.face))} and leaves "
                f"{1 - part:.0%}. Take thinner rails, or let them in part-way.",
                numbers={"depth": notch.depth, "left": 1 - part},
                source=COMMON_PRACTICE,
            )


def notches_at_one_height(piece: Piece) -> Iterator[Finding]:
    """Notches from two faces that meet inside a leg, and what is left of its section."""
    for names, leg, alike in piece.kinds_of_legs():
        x, y, _ = leg.blank.size()
        for low, high in _storeys(leg):
            inside = [n for n in leg.notches if _rail_between(piece, n, low, high)]
            if len({n.face for n in inside}) < 2 or not _meet(leg, inside):
                continue
            left = sum(map(_area, _section(leg, low, high))) / (x * y)
            rails = tuple(dict.fromkeys(n.rail for n in inside))
            yield Finding(
                severity="warning",
                kind="notches meet",
                where=names,
                parts=alike,
                mates=rails,
                sentence=f"{names}: the notches for {' and '.join(rails)} meet inside the leg from {piece.say(low)} to "
                f"{piece.say(high)}; {left:.0%} of its section is left there. Raise one of them, or let one butt.",
                numbers={"bottom": low, "top": high, "left": left},
                source=STATICS,
            )


def _rail_between(piece: Piece, notch: Housing, low: float, high: float) -> bool:
    """Whether the rail itself, not only the fit of its notch, reaches into a storey of the leg.

    Where the rail is gone from the description, the notch that it left in a finished leg counts.
    """
    rail = piece.parts.get(notch.rail)
    if rail is not None and not (rail.blank.low[2] < high - TOUCH and rail.blank.high[2] > low + TOUCH):
        return False
    return notch.bottom < high - TOUCH and notch.top > low + TOUCH


def leg_cut_in_two(piece: Piece) -> Iterator[Finding]:
    """A leg with nothing left of it at some height, or whose sections on either side of a change share no area."""
    for names, leg, alike in piece.kinds_of_legs():
        storeys = _storeys(leg)
        sections = [_section(leg, low, high) for low, high in storeys]
        held = [sum(map(_area, sections[0])), *(_shared(below, above) for below, above in itertools.pairwise(sections))]
        low = next((low for (low, _), area in zip(storeys, held, strict=True) if area <= TOUCH), None)
        if low is not None:
            yield Finding(
                severity="error",
                kind="leg cut in two",
                where=names,
                parts=alike,
                sentence=f"{names}: nothing holds the leg together at {piece.say(low)} over the foot; what is left "
                "below shares no wood with what is left above. Let the rails in less deep, or move one.",
                numbers={"height": low},
                source=STATICS,
            )


def _through(leg: Part, face: str) -> float:
    """How much wood lies behind a face. [mm]"""
    x, y, _ = leg.blank.size()
    return y if face in ("front", "back") else x


def _storeys(leg: Part) -> list[tuple[float, float]]:
    """Heights between which the section of a leg does not change. [mm]"""
    ends = sorted([leg.blank.low[2], leg.blank.high[2], *(z for n in leg.notches for z in (n.bottom, n.top))])
    inside = [z for z in ends if leg.blank.low[2] <= z <= leg.blank.high[2]]
    return [(a, b) for a, b in itertools.pairwise(inside) if b - a > TOUCH]


def _section(leg: Part, low: float, high: float) -> tuple[Box, ...]:
    """What is left of a leg in a storey of it, as boxes beside each other."""
    (x0, y0, _), (x1, y1, _) = leg.blank.low, leg.blank.high
    return boxes(Box((x0, y0, low), (x1, y1, high)), [cut.box for cut in leg.cuts])


def _area(box: Box) -> float:
    """Area of a box, seen from above. [mm²]"""
    x, y, _ = box.size()
    return x * y


def _shared(below: tuple[Box, ...], above: tuple[Box, ...]) -> float:
    """Area that the sections of two storeys share. [mm²]"""
    return sum(_over(a, b, 0) * _over(a, b, 1) for a, b in itertools.product(below, above))


def _over(a: Box, b: Box, axis: int) -> float:
    """How far two boxes overlap along an axis. [mm]"""
    found: float = larger(smaller(a.high[axis], b.high[axis]) - larger(a.low[axis], b.low[axis]), 0.0)
    return found


def _meet(leg: Part, inside: list[Housing]) -> bool:
    """Whether notches from different faces touch or share wood."""
    rails = {n.rail for n in inside}
    near = [cut for cut in leg.cuts if cut.mate in rails]
    return any(a.face != b.face and _touch(a.box, b.box) for a, b in itertools.combinations(near, 2))


def _touch(a: Box, b: Box) -> bool:
    """Whether two boxes touch or overlap, seen from above."""
    return all(larger(a.low[n], b.low[n]) - smaller(a.high[n], b.high[n]) <= TOUCH for n in (0, 1))
