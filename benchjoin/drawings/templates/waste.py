"""Waste on full-size paper: strokes in pairs that fall to the right, which no cut section is hatched with.

A pair is told from the single strokes of a section with a black-only printer and at arm's length. Words are left free
by whoever knows them.
"""

from __future__ import annotations

from collections.abc import Iterable

import shapely

from ...drafting.hatch import hatch
from ...drafting.primitives import Drawing, Text, text_box

FALLING = 135.0
"""The way of the strokes; those of sections rise. [degrees]"""
PAIRED = 0.2
"""From one stroke of a pair to the other, of the distance between pairs."""


def waste(region: shapely.Geometry, pitch: float, words: Iterable[Text] = (), *, clear: float = 0.8) -> Drawing:
    """Pairs of strokes across a region, so far apart, and clear of words by so much. [mm]"""
    boxes = [text_box(text).buffer(clear, join_style="mitre") for text in words]
    bare = region.difference(shapely.union_all(boxes)) if boxes else region
    return (*hatch(bare, pitch, FALLING), *hatch(bare, pitch, FALLING, start=PAIRED * pitch))
