"""A clearing: what is drawn on a page already, so that each of its words finds a place where nothing is.

Whoever writes offers places, the best first; the first free one is taken and is taken from then on. Words keep inside
the box of the clearing, so that no seam and no edge of the paper runs through one.

>>> from ..primitives import Line
>>> clear = Clearing((0.0, 0.0, 40.0, 20.0), [Line(((10, 0), (10, 20)))])
>>> text = clear.first(Text((x, 5.0), "57", 3.5) for x in (8.0, 12.0))
>>> text.at, clear.first([Text((13.0, 5.0), "58", 3.5)])
((12.0, 5.0), None)
"""

from __future__ import annotations

import math
from collections.abc import Iterable

import shapely

from ..primitives import Box, Disc, Drawing, Line, Text, bounds, text_box

APART = 0.6
"""Between words and what is drawn, and between lines of words. [mm]"""
BETWEEN = 2.0
"""Between words on one level, so that they are not read as one. [mm]"""


class Clearing:
    """A box of a page with the strokes in it, the words that were written there, and where they are better not. [mm]"""

    def __init__(self, box: Box, strokes: Iterable[Line | Disc], rather_not: Iterable[Box] = ()) -> None:
        self.box = box
        self.shapes = [_shape(item) for item in strokes]
        self.tree = shapely.STRtree(self.shapes)
        self.written: list[shapely.Geometry] = []
        self.rather_not = [shapely.box(*area) for area in rather_not]

    def first(self, tries: Iterable[Text], *, anywhere: bool = True) -> Text | None:
        """The first text that is free, which is written then; None where none is.

        Without anywhere, one that stands where words are better not waits until no other is free.
        """
        found = self.block(((text,) for text in tries), anywhere=anywhere)
        return found[0] if found and isinstance(found[0], Text) else None

    def freest(self, tries: Iterable[Text]) -> Text:
        """The first text that is free, or the one that lies on least."""
        offered = list(tries)
        found = self.first(offered)
        if found is None:
            found = min(offered, key=lambda text: self._covered(text_box(text)))
            self.written.append(text_box(found))
        return found

    def block(
        self, tries: Iterable[Drawing], between: tuple[float, float] = (-math.inf, math.inf), *, anywhere: bool = True
    ) -> Drawing:
        """The first drawing whose box, as far as it lies between two heights, is free; nothing where none is. [mm]"""
        second: Drawing = ()
        for drawing in tries:
            box = _boxed(drawing, between)
            if not self.is_free(box):
                continue
            if anywhere or not any(map(box.intersects, self.rather_not)):
                self.written.append(box)
                return drawing
            second = second or drawing
        if second:
            self.written.append(_boxed(second, between))
        return second

    def is_free(self, area: shapely.Geometry) -> bool:
        """Whether an area lies inside and on nothing."""
        left, low, right, high = area.bounds
        x0, y0, x1, y1 = self.box
        if left < x0 or low < y0 or right > x1 or high > y1:
            return False
        wide = shapely.box(left - APART, low - APART, right + APART, high + APART)
        if len(self.tree.query(wide, predicate="intersects")):
            return False
        apart = shapely.box(left - BETWEEN, low - APART, right + BETWEEN, high + APART)
        return not any(map(apart.intersects, self.written))

    def _covered(self, area: shapely.Geometry) -> float:
        """How much lies under an area, words weighing most, and what of it sticks out most of all."""
        met = self.tree.query(area, predicate="intersects").tolist()
        lines = sum(1.0 + self.shapes[n].intersection(area).length for n in met)
        words = sum(10.0 * text.intersection(area).area for text in self.written)
        return float(lines + words + 100.0 * area.difference(shapely.box(*self.box)).area)


def _boxed(drawing: Drawing, between: tuple[float, float]) -> shapely.Geometry:
    left, low, right, high = bounds(drawing)
    return shapely.box(left, max(low, between[0]), right, min(high, between[1]))


def _shape(item: Line | Disc) -> shapely.Geometry:
    if isinstance(item, Disc):
        return shapely.Point(item.centre).buffer(item.radius)
    return shapely.LineString([*item.points, *item.points[: int(item.closed)]])
