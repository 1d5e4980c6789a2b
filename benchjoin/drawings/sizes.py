"""Sizes of whole views: heights from the floor, legs along the length and the depth, and what it all comes to.

Running sizes are the main ones, since that is how a tape reads; a size over everything that only says again what
they say is in brackets.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

import attrs

from ..drafting.dimensions import overall, row_line, running
from ..drafting.primitives import Primitive, Text, bounds
from ..layout.layout import Layout
from ..layout.parts import Part
from ..lengths import TOUCH
from .page import House, reader
from .strokes import CAPTION, distinct
from .views import Eye, View


@attrs.frozen
class _Column:
    """A line of running heights: beside which edge of the view, of which rails and legs, and its caption."""

    side: Literal["left", "right"]
    rails: tuple[str, ...]
    row: str
    caption: str


def _columns(eye: Eye) -> tuple[_Column, ...]:
    """The near side's heights on the left of the page and the far side's on the right; of an end, back and front."""
    if eye.name in ("front", "back"):
        far = "back" if eye.name == "front" else "front"
        return (
            _Column("left", (eye.name,), eye.name, f"{eye.name} rails"),
            _Column("right", (far,), far, f"{far} rails"),
        )
    front: Literal["left", "right"] = "right" if eye.name == "left" else "left"
    back: Literal["left", "right"] = "left" if eye.name == "left" else "right"
    return (
        _Column(back, (eye.name, "cross"), "back", "end rails, back legs"),
        _Column(front, (), "front", "front legs"),
    )


def heights(layout: Layout, parts: Sequence[Part], seen: View, scale: float, house: House) -> Iterator[Primitive]:
    """Running heights from the floor on both sides of an upright view."""
    read = reader(layout.frame, house)
    left, _, right, top = (edge * scale for edge in seen.bounds)
    for column in _columns(seen.eye):
        rails = [p for p in parts if p.role == "rail" and p.side in column.rails]
        legs = [p for p in parts if p.role == "leg" and p.side == column.row]
        heights = {z for p in rails for z in (p.blank.low[2], p.blank.high[2])} | {p.blank.high[2] for p in legs}
        values = [(z * scale, read(z)) for z in distinct(heights)]
        outline = left if column.side == "left" else right
        drawn = running(values, origin=(outline, 0.0), axis="y", side=column.side, outline=outline)
        yield from drawn
        out = 1 if column.side == "right" else -1
        beside = (outline + out * 3.0, max(bounds(drawn)[3], top) + 1.5)
        yield Text(beside, column.caption, CAPTION, "start" if out > 0 else "end")


def widths(layout: Layout, parts: Sequence[Part], seen: View, scale: float, house: House) -> Iterator[Primitive]:
    """Leg edges along the page from the left end or the front, and the size over everything."""
    read, eye = reader(layout.frame, house), seen.eye
    axis = 0 if eye.name in ("front", "back") else 1
    way = eye.right[axis]
    legs = [p for p in parts if p.role == "leg" and (axis == 1 or p.side == eye.name)]
    places = [p for p in distinct({e for leg in legs for e in (leg.blank.low[axis], leg.blank.high[axis])}) if p > 1e-6]
    values = [(way * place * scale, read(place)) for place in places]
    yield from running(values, origin=(0.0, 0.0), axis="x", side="below", outline=0.0)
    left, _, right, top = seen.bounds
    repeats = abs(right - left - max(places)) < 1e-6
    line = row_line(top * scale, 0, 1)
    size = read(right - left)
    yield from overall(left * scale, right * scale, size, axis="x", at=line, outline=top * scale, auxiliary=repeats)


def plan_sizes(layout: Layout, parts: Sequence[Part], seen: View, scale: float, house: House) -> Iterator[Primitive]:
    """Legs along the length from the left and along the depth from the front, and the sizes over everything."""
    read = reader(layout.frame, house)
    left, low, right, high = (edge * scale for edge in seen.bounds)
    legs = [part.blank for part in parts if part.role == "leg"]
    along = [p for p in distinct({e for b in legs for e in (b.low[0], b.high[0])}) if p > TOUCH]
    deep = [p for p in distinct({e for b in legs for e in (b.low[1], b.high[1])}) if p > TOUCH]
    yield from running([(x * scale, read(x)) for x in along], origin=(0.0, low), axis="x", side="below")
    yield from running([(y * scale, read(y)) for y in deep], origin=(left, 0.0), axis="y", side="left")
    long, broad = (right - left) / scale, (high - low) / scale
    yield from overall(
        left, right, read(long), axis="x", at=row_line(high, 0, 1), outline=high, auxiliary=_repeats(long, along)
    )
    yield from overall(
        low, high, read(broad), axis="y", at=row_line(right, 0, 1), outline=right, auxiliary=_repeats(broad, deep)
    )


def _repeats(size: float, places: Sequence[float]) -> bool:
    """Whether a size over everything says again what the running dimensions say."""
    return abs(size - max(places)) < TOUCH
