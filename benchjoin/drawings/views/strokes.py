"""Lines and names of a view at a scale: what all views of timber share."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from operator import itemgetter

from shapely import get_coordinates, get_parts, length, transform
from shapely.geometry.base import BaseGeometry

from ...drafting.primitives import Line, Text, figure_middle, text_box
from ...layout.parts import Part
from .view import View

CAPTION = 2.5
PLACES = (0.5, 0.25, 0.75, 1 / 6, 5 / 6)
"""Where along a rail its name may stand."""
CLEAR = 0.3
"""Between a name and the edges of its rail. [mm]"""


def strokes(lines: BaseGeometry, kind: str, scale: float) -> Iterator[Line]:
    """Lines of a view, of one kind."""
    each = get_parts(lines)
    points, owners = get_coordinates(each[length(each) > 0], return_index=True)
    for _, own in groupby(zip(owners.tolist(), (points * scale).tolist(), strict=True), key=itemgetter(0)):
        yield Line(tuple((x, y) for _, (x, y) in own), kind)


def level_names(parts: Sequence[Part], seen: View, scale: float) -> Iterator[Text]:
    """The name of each level on its nearest visible rail, in the middle or where it has room."""
    told: set[str] = set()
    hidden = transform(seen.hidden, lambda points: points * scale)
    levels = {part.name: part.level for part in parts if part.level}
    for face in sorted((f for f in seen.faces if f.part in levels), key=lambda f: (f.distance, f.part)):
        level = levels[face.part] or ""
        x0, y0, x1, y1 = (edge * scale for edge in face.region.bounds)
        whole = face.region.area * scale**2 > 0.98 * (x1 - x0) * (y1 - y0)
        if level in told or not whole:
            continue
        for share in PLACES:
            at = (x0 + (x1 - x0) * share, figure_middle((y0 + y1) / 2, CAPTION))
            text = Text(at, level, CAPTION, "middle")
            left, low, right, high = text_box(text).bounds
            inside = x0 + 1 < left and right < x1 - 1 and y0 + CLEAR < low and high < y1 - CLEAR
            if inside and not hidden.intersects(text_box(text)):
                told.add(level)
                yield text
                break
