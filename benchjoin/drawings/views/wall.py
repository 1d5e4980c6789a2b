"""The wall that holds a single row: where it lies behind the wood, seen from above or from an end.

It is no part of the piece, so it has no sizes: a hatched band as long as the piece, and its name.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import shapely

from ...drafting.hatch import hatch
from ...drafting.primitives import Line, Primitive, Text, figure_middle
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import TOUCH
from .view import View

DEEP, STEP = 3.0, 1.5
"""Depth of the band and spacing of its hatching. [mm]"""
CAPTION = 2.5
"""Height of its name. [mm]"""
SHORT = 1.0
"""How far the band stays inside the ends of the piece, clear of extension lines. [mm]"""


def one_row(parts: Sequence[Part]) -> bool:
    """Whether what stands is a single row of uprights."""
    return {part.side for part in parts if part.slot.upright and not part.slot.run} == {"front"}


def wall(layout: Layout, parts: Sequence[Part], seen: View, scale: float) -> Iterator[Primitive]:
    """The wall of a single row at a scale; nothing where one looks square at it, or where no wood comes to it."""
    name, eye = layout.frame.against, seen.eye
    if name is None or not (eye.right[1] or eye.up[1]):
        return
    back = max(part.blank.high[1] for part in layout.piece(parts[0].piece))
    at = back * (eye.right[1] or eye.up[1]) * scale
    left, low, right, high = (edge * scale for edge in seen.bounds)
    if all(abs(at - edge) > TOUCH for edge in (left, right, high)):
        return
    if eye.up[1]:
        face = ((left + SHORT, at), (right - SHORT, at))
        band = shapely.box(left + SHORT, at, right - SHORT, at + DEEP)
        label = Text((left + SHORT, at + DEEP + 1.2), name, CAPTION)
    else:
        out = DEEP * eye.right[1]
        face = ((at, low + SHORT), (at, high - SHORT))
        band = shapely.box(min(at, at + out), low + SHORT, max(at, at + out), high - SHORT)
        beside = at + out + 1.2 * eye.right[1]
        label = Text((beside, figure_middle((low + high) / 2, CAPTION)), name, CAPTION, "start" if out > 0 else "end")
    yield Line(face)
    yield from hatch(band, STEP)
    yield label
