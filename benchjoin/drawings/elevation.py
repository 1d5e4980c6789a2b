"""Elevations: how the thing looks from one side, and how high everything is.

Heights run from the floor as the tape does, with the rails of the near side and of the far side on a line each;
widths run from the left end or the front. The largest standard scale that fits the paper, either way up, is taken.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Literal

import attrs
from shapely import get_parts
from shapely.geometry.base import BaseGeometry

from ..drafting.arrange import place_in
from ..drafting.dimensions import overall, row_line, running
from ..drafting.primitives import Box, Drawing, Line, Primitive, Text, bounds, figure_middle, text_box
from ..drafting.sheet import Sheet
from ..errors import AddressError, PaperError
from ..layout.layout import Layout
from ..layout.parts import Part
from ..trade.drawing import SCALES, Scale
from .page import block, both_ways, first_that_fits, papers_from, room, system
from .views import EYES, Eye, View, view

LARGEST = 0.2
"""A view is drawn at 1:5 at most: larger paper does not make it read better."""
INSET = 4.0
CAPTION = 2.5
CLEAR = 0.3
"""Between a name and the edges of its rail. [mm]"""


def elevation(layout: Layout, seen: str, *, paper: str | None = None, piece: int = 1) -> Sheet:
    """The elevation of one piece, seen from the front, back, left or right.

    Parameters
    ----------
    layout : Layout
    seen : str
        "front", "back", "left" or "right".
    paper : str, optional
        "Letter", "A4", "Tabloid", "A3" …; if not given, the desk paper of the design's tape, or the next larger one.
    piece : int
        Which piece of the batch.

    Raises
    ------
    AddressError
        If there is no such side.
    PaperError
        If it does not fit the paper at any scale.
    """
    if seen not in ("front", "back", "left", "right"):
        raise AddressError(f"There is no elevation from {seen!r}. Choose front, back, left or right.", address=seen)
    return first_that_fits(lambda size: _on(layout, seen, piece, size), papers_from(layout.frame, paper))


def _on(layout: Layout, seen: str, piece: int, paper: str) -> Sheet:
    """The elevation at the largest scale that fits a paper, either way up."""
    parts = layout.piece(piece)
    eye, seen_view = EYES[seen], view(parts, seen)
    for scale in _scales(layout):
        drawing = _drawing(layout, parts, seen_view, scale.ratio)
        words = block(layout.frame, kind="Elevation", piece=eye.title, scale=scale.label)
        for width, height in both_ways(paper):
            x0, y0, x1, y1 = room(width, height, words)
            inside = (x0 + INSET, y0 + INSET, x1 - INSET, y1 - INSET)
            if _fits(drawing, inside):
                return Sheet(
                    name=f"elevation-{seen}",
                    title=eye.title,
                    width=width,
                    height=height,
                    drawing=place_in(drawing, inside),
                    block=words,
                    scale=scale.label,
                )
    raise PaperError(f"The {eye.title.lower()} does not fit {paper} at any scale. Take larger paper.")


def _scales(layout: Layout) -> Iterable[Scale]:
    known = [s for s in SCALES if s.system in (system(layout.frame), "both") and s.ratio <= LARGEST]
    return sorted(known, key=lambda s: -s.ratio)


def _fits(drawing: Drawing, inside: Box) -> bool:
    x0, y0, x1, y1 = bounds(drawing)
    return x1 - x0 <= inside[2] - inside[0] and y1 - y0 <= inside[3] - inside[1]


def _drawing(layout: Layout, parts: Sequence[Part], seen: View, scale: float) -> Drawing:
    names = tuple(_names(parts, seen, scale))
    return (
        *strokes(seen.visible, "visible", scale),
        *strokes(seen.hidden, "hidden", scale),
        *names,
        *_heights(layout, parts, seen, scale),
        *_widths(layout, parts, seen, scale),
    )


def strokes(lines: BaseGeometry, kind: str, scale: float) -> Iterator[Line]:
    """Lines of a view at a scale, one kind."""
    for line in get_parts(lines):
        if not line.is_empty and line.length > 0:
            yield Line(tuple((x * scale, y * scale) for x, y in line.coords), kind)


def _names(parts: Sequence[Part], seen: View, scale: float) -> Iterator[Text]:
    """The name of each level on its nearest visible rail, where it has room."""
    told: set[str] = set()
    levels = {part.name: part.level for part in parts if part.level}
    for face in sorted((f for f in seen.faces if f.part in levels), key=lambda f: (f.distance, f.part)):
        level = levels[face.part] or ""
        x0, y0, x1, y1 = (edge * scale for edge in face.region.bounds)
        text = Text(((x0 + x1) / 2, figure_middle((y0 + y1) / 2, CAPTION)), level, CAPTION, "middle")
        left, low, right, high = text_box(text).bounds
        whole = face.region.area * scale**2 > 0.98 * (x1 - x0) * (y1 - y0)
        if level not in told and whole and x0 + 1 < left and right < x1 - 1 and y0 + CLEAR < low and high < y1 - CLEAR:
            told.add(level)
            yield text


@attrs.frozen
class _Column:
    """A line of running heights: beside which edge of the view, of which rails and legs, and its caption."""

    side: Literal["left", "right"]
    rails: tuple[str, ...]
    row: str
    caption: str


def _columns(eye: Eye) -> tuple[_Column, ...]:
    """The near side's heights on the left of the page and the far side's on the right; of an end, front and back."""
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


def _heights(layout: Layout, parts: Sequence[Part], seen: View, scale: float) -> Iterator[Primitive]:
    read = layout.frame.tape.read
    left, _, right, top = (edge * scale for edge in seen.bounds)
    for column in _columns(seen.eye):
        rails = [p for p in parts if p.role == "rail" and p.side in column.rails]
        legs = [p for p in parts if p.role == "leg" and p.side == column.row]
        heights = {z for p in rails for z in (p.blank.low[2], p.blank.high[2])} | {p.blank.high[2] for p in legs}
        values = [(z * scale, read(z)) for z in _distinct(heights)]
        outline = left if column.side == "left" else right
        drawn = running(values, origin=(outline, 0.0), axis="y", side=column.side, outline=outline)
        yield from drawn
        out = 1 if column.side == "right" else -1
        beside = (outline + out * 3.0, max(bounds(drawn)[3], top) + 1.5)
        yield Text(beside, column.caption, CAPTION, "start" if out > 0 else "end")


def _widths(layout: Layout, parts: Sequence[Part], seen: View, scale: float) -> Iterator[Primitive]:
    """Leg edges along the page from the datum end, and the size over all in brackets."""
    frame, eye = layout.frame, seen.eye
    axis = 0 if eye.name in ("front", "back") else 1
    way = eye.right[axis]
    row = "front" if axis == 0 else None
    legs = [p for p in parts if p.role == "leg" and (row is None or p.side == row)]
    places = _distinct({edge for p in legs for edge in (p.blank.low[axis], p.blank.high[axis])} - {0.0})
    values = [(way * place * scale, frame.tape.read(place)) for place in places]
    yield from running(values, origin=(0.0, 0.0), axis="x", side="below", outline=0.0)
    start, end = sorted((0.0, way * max(places) * scale))
    top = seen.bounds[3] * scale
    size = frame.tape.read(max(places))
    yield from overall(start, end, size, axis="x", at=row_line(top, 0, 1), outline=top, auxiliary=True)


def _distinct(values: Iterable[float]) -> list[float]:
    """Rising values, each once."""
    kept: list[float] = []
    for value in sorted(values):
        if not kept or value - kept[-1] > 1e-6:
            kept.append(value)
    return kept
