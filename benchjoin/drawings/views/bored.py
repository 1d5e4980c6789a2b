"""Holes on paper: a centre cross and the hole's own size, as large as it is at the scale; a slot as long as it is."""

from __future__ import annotations

from collections.abc import Iterator

from ...drafting.primitives import Disc, Line, Primitive
from ...shop.fasteners.on_face import HoleOnFace

ARM = 1.2
"""A centre cross reaches so far past its hole, and is never smaller. [mm]"""
LEAST = 0.6
"""A hole is drawn no smaller. [mm]"""


def bored(one: HoleOnFace, at: tuple[float, float], scale: float) -> Iterator[Primitive]:
    """The cross and the circle of a hole at its place on the page. [mm]"""
    x, y = at
    radius = max(one.hole.diameter * scale / 2, LEAST / 2)
    arm = radius + ARM
    yield Line(((x - arm, y), (x + arm, y)))
    yield Line(((x, y - arm), (x, y + arm)))
    if one.hole.slot:
        half = max((one.hole.slot - one.hole.diameter) * scale / 2, 0.0)
        ends = ((x - half, y), (x + half, y)) if one.along else ((x, y - half), (x, y + half))
        for end in ends:
            yield Disc(end, radius)
    else:
        yield Disc(at, radius)
