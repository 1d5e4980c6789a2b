"""Sizes of whole views: heights from the floor, places along the length and the depth, and what it all comes to.

Every edge of a view is reached once by a running size from the floor, the left end or the front, since that is how a
tape reads; a size over everything says again what they say, and is in brackets.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Literal

import attrs

from ..drafting.dimensions import overall, row_line, running
from ..drafting.primitives import Primitive, Text, bounds
from ..layout.layout import Layout
from ..layout.parts import Part
from ..lengths import TOUCH
from .page import House, Reader, reader
from .strokes import CAPTION, distinct
from .views import Eye, View


@attrs.frozen
class Column:
    """A line of running heights: beside which edge of the view, its caption, and the heights it gives. [mm]"""

    side: Literal["left", "right"]
    caption: str
    heights: tuple[float, ...]


def columns(parts: Sequence[Part], eye: Eye) -> tuple[Column, ...]:
    """Heights of an upright view, each once.

    Seen from the front or the back: those of the near rails and legs on the left of the page, and on the right those
    of all others that are not among them. Seen from an end: all on the side of the back legs.
    """
    if eye.name in ("left", "right"):
        return (Column("left" if eye.name == "left" else "right", "", tuple(_heights(parts))),)
    near = _heights(part for part in parts if part.side == eye.name)
    far = [z for z in _heights(parts) if all(abs(z - other) > TOUCH for other in near)]
    other = "back" if eye.name == "front" else "front"
    found = (Column("left", f"{eye.name} rails", tuple(near)), Column("right", f"{other} and end rails", tuple(far)))
    return tuple(column for column in found if column.heights)


def _heights(parts: Iterable[Part]) -> list[float]:
    """Rising heights of rail edges and leg tops over the floor. [mm]"""
    edges = {z for part in parts for z in (part.blank.low[2], part.blank.high[2])}
    return [z for z in distinct(edges) if abs(z) > TOUCH]


def heights(layout: Layout, parts: Sequence[Part], seen: View, scale: float, house: House) -> Iterator[Primitive]:
    """Running heights from the floor beside an upright view."""
    read = reader(layout.frame, house)
    left, _, right, top = (edge * scale for edge in seen.bounds)
    for column in columns(parts, seen.eye):
        values = [(z * scale, read(z)) for z in column.heights]
        outline = left if column.side == "left" else right
        drawn = running(values, origin=(outline, 0.0), axis="y", side=column.side, outline=outline)
        yield from drawn
        if column.caption:
            out = 1 if column.side == "right" else -1
            beside = (outline + out * 3.0, max(bounds(drawn)[3], top) + 1.5)
            yield Text(beside, column.caption, CAPTION, "start" if out > 0 else "end")


def widths(layout: Layout, parts: Sequence[Part], seen: View, scale: float, house: House) -> Iterator[Primitive]:
    """Running places along the page, from the left end or the front, and the size over everything in brackets."""
    eye = seen.eye
    axis = 0 if eye.name in ("front", "back") else 1
    left, _, right, top = seen.bounds
    legs = [part for part in parts if part.role == "leg" and (axis == 1 or part.side == eye.name)] or parts
    places = _places(legs, axis, sorted((eye.right[axis] * left, eye.right[axis] * right)))
    read = reader(layout.frame, house)
    yield from _run(places, eye.right[axis] * scale, read, "x", (0.0, 0.0))
    yield from _over(left * scale, right * scale, read(right - left), "x", top * scale)


def plan_sizes(layout: Layout, parts: Sequence[Part], seen: View, scale: float, house: House) -> Iterator[Primitive]:
    """Running places along the length and the depth, and the sizes over everything in brackets."""
    read = reader(layout.frame, house)
    left, low, right, high = seen.bounds
    legs = [part for part in parts if part.role == "leg"] or parts
    yield from _run(_places(legs, 0, (left, right)), scale, read, "x", (0.0, low * scale))
    yield from _run(_places(legs, 1, (low, high)), scale, read, "y", (left * scale, 0.0))
    yield from _over(left * scale, right * scale, read(right - left), "x", high * scale)
    yield from _over(low * scale, high * scale, read(high - low), "y", right * scale)


def _places(parts: Sequence[Part], axis: int, ends: Sequence[float]) -> list[float]:
    """Edges of parts along an axis, and the ends of the view, each once and without the datum. [mm]"""
    edges = {edge for part in parts for edge in (part.blank.low[axis], part.blank.high[axis])}
    return [place for place in distinct({*edges, *ends}) if abs(place) > TOUCH]


def _run(
    places: Sequence[float], scale: float, read: Reader, axis: Literal["x", "y"], origin: tuple[float, float]
) -> Iterator[Primitive]:
    values = [(place * scale, read(abs(place))) for place in places]
    side: Literal["below", "left"] = "below" if axis == "x" else "left"
    yield from running(values, origin=origin, axis=axis, side=side, outline=origin[1] if axis == "x" else origin[0])


def _over(start: float, end: float, size: str, axis: Literal["x", "y"], outline: float) -> Iterator[Primitive]:
    yield from overall(start, end, size, axis=axis, at=row_line(outline, 0, 1), outline=outline, auxiliary=True)
