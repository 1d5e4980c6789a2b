"""Depth: what notches leave of a leg's section."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from ...findings import Finding
from ...lengths import TOUCH
from ...runs import larger, smaller
from ...solids import Box
from ...sources import COMMON_PRACTICE, STATICS
from ...trade.practice import DEEPEST_NOTCH
from ..net_section import Stretch, shared, stretches
from ..on_face import OnFace
from .piece import Piece


def deep_notches(piece: Piece) -> Iterator[Finding]:
    """Notches deeper than half of the leg, told once for each kind of leg."""
    for names, leg, alike in piece.kinds_of_legs:
        through = [(notch, notch.depth / notch.size[2]) for notch in leg.notches]
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
                f"notch takes {piece.say(notch.depth)} of {piece.say(notch.size[2])} and leaves "
                f"{1 - part:.0%}. Take thinner rails, or let them in part-way.",
                numbers={"depth": notch.depth, "left": 1 - part},
                source=COMMON_PRACTICE,
            )


def notches_at_one_height(piece: Piece) -> Iterator[Finding]:
    """Notches from two faces that meet inside a leg, and what is left of its section."""
    for names, leg, alike in piece.kinds_of_legs:
        for stretch in stretches(leg):
            inside = [cut for cut in stretch.cuts if _reaches_in(piece, cut, stretch)]
            if len({cut.face for cut in inside}) < 2 or not _meet(inside):
                continue
            low, high = stretch.start, stretch.end
            left = stretch.area / (leg.size[1] * leg.size[2])
            rails = tuple(dict.fromkeys(cut.mate for cut in inside))
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


def _reaches_in(piece: Piece, cut: OnFace, stretch: Stretch) -> bool:
    """Whether the rail itself, not only the fit of its notch, reaches into a stretch of the leg.

    Where the rail is gone from the description, the notch that it left in a finished leg counts.
    """
    rail = piece.parts.get(cut.mate)
    return rail is None or (rail.blank.low[2] < stretch.end - TOUCH and rail.blank.high[2] > stretch.start + TOUCH)


def leg_cut_in_two(piece: Piece) -> Iterator[Finding]:
    """A leg with nothing left of it at some height, or whose sections on either side of a change share no area."""
    for names, leg, alike in piece.kinds_of_legs:
        found = stretches(leg)
        held = [found[0].area, *(shared(below, above) for below, above in itertools.pairwise(found))]
        low = next((stretch.start for stretch, area in zip(found, held, strict=True) if area <= TOUCH), None)
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


def _meet(inside: list[OnFace]) -> bool:
    """Whether cuts from different faces touch or share wood, seen along the leg."""
    return any(a.face != b.face and _touch(a.cut.box, b.cut.box) for a, b in itertools.combinations(inside, 2))


def _touch(a: Box, b: Box) -> bool:
    """Whether two boxes touch or overlap, seen from above."""
    return all(larger(a.low[n], b.low[n]) - smaller(a.high[n], b.high[n]) <= TOUCH for n in (0, 1))
