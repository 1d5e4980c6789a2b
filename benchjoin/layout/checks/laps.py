"""Laps: two rails half-lapped into one leg at one height take each other's cheeks."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from ...findings import Finding
from ...frame.joints import HalfLap
from ...lengths import TOUCH
from ...sources import COMMON_PRACTICE
from .piece import Piece


def laps_at_one_height(piece: Piece) -> Iterator[Finding]:
    """Two half-laps in one leg whose rails are at one height; the fit does not count, nor a lap without a mate."""
    for leg in piece.legs:
        laps = [notch for notch in leg.notches if notch.kind == HalfLap.word and notch.rail in piece.parts]
        for a, b in combinations(laps, 2):
            one, other = piece.parts[a.rail].blank, piece.parts[b.rail].blank
            low, high = max(one.low[2], other.low[2]), min(one.high[2], other.high[2])
            if high - low > TOUCH:
                yield Finding(
                    severity="error",
                    kind="two laps at one height",
                    where=piece.where(leg.identity),
                    parts=(leg.identity, a.rail, b.rail),
                    sentence=f"{piece.where(leg.identity)}: {a.rail} and {b.rail} are both half-lapped into it from "
                    f"{piece.say(low)} to {piece.say(high)}. Raise one by at least {piece.say(high - low)}, "
                    "or let one butt.",
                    numbers={"bottom": low, "top": high},
                    source=COMMON_PRACTICE,
                )
