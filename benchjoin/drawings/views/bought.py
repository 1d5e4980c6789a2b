"""Bought things on a view: the outlines of bins where they stand or hang, and their names.

They are no parts of the piece, so they have no sizes: the line of ISO 128 for what lies beside it, drawn whole, since a
maker wants to see whether it clears.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import shapely
from shapely.affinity import scale as scaled

from ...drafting.primitives import Drawing, Line, Text, figure_middle, text_box
from ...layout.bodies import Body, bodies
from ...layout.layout import Layout
from ...layout.parts import Part
from ...solids import Box
from .labels import Taken
from .strokes import strokes
from .view import View

CAPTION = 2.5
"""Height of a name. [mm]"""
CLEAR = 0.8
"""How far an outline keeps off lines of the wood beside which it runs. [mm]"""
SHORTEST = 6.0
"""No bit of an outline is shorter: two dashes and a gap, and some more. [mm]"""
PLACES = (0.5, 0.3, 0.7, 0.15, 0.85)


def bought(layout: Layout, parts: Sequence[Part], seen: View, scale: float, there: Drawing) -> Iterator[Line]:
    """The outlines of bins at a scale, broken off at the words of what is drawn there already."""
    if not layout.frame.bins:
        return
    clear, lines = CLEAR / scale, shapely.get_parts(seen.visible)
    grown = [text_box(item).buffer(CLEAR, join_style="mitre") for item in there if isinstance(item, Text)]
    written = [scaled(box, 1 / scale, 1 / scale, origin=(0, 0)) for box in grown]
    for outline in _outlines(layout, parts, seen):
        beside = lines[shapely.dwithin(lines, outline.exterior, clear)]
        near = shapely.buffer(shapely.multilinestrings(beside), clear, cap_style="flat", join_style="mitre")
        left = shapely.line_merge(outline.exterior.difference(shapely.union_all([near, *written])))
        shown = [line for line in shapely.get_parts(left) if line.length * scale >= SHORTEST]
        yield from strokes(shapely.GeometryCollection(shown), "phantom", scale)


def names_of_bought(layout: Layout, parts: Sequence[Part], seen: View, scale: float, taken: Taken) -> Iterator[Text]:
    """The name of each bin in its outline, where there is room."""
    own = _bodies(layout, parts)
    for body, outline in zip(own, _outlines(layout, parts, seen), strict=True):
        left, low, right, high = (edge * scale for edge in outline.bounds)
        middles = (((left + (right - left) * a), low + (high - low) * b) for b in PLACES for a in PLACES)
        yield from taken.put(Text((x, figure_middle(y, CAPTION)), body.name, CAPTION, "middle") for x, y in middles)


def _bodies(layout: Layout, parts: Sequence[Part]) -> tuple[Body, ...]:
    if not layout.frame.bins:
        return ()
    return tuple(bodies(layout.frame, {part.identity: part for part in layout.piece(parts[0].piece)}))


def _outlines(layout: Layout, parts: Sequence[Part], seen: View) -> Iterator[shapely.Polygon]:
    """What is seen of each bin: its rim and its foot, and all between them."""
    for body in _bodies(layout, parts):
        rim = body.box.ending(2, low=body.box.high[2])
        corners = [corner for box in (rim, body.foot) for corner in _corners(box, seen)]
        yield shapely.MultiPoint(corners).convex_hull


def _corners(box: Box, seen: View) -> list[tuple[float, float]]:
    own = seen.eye.frame.local(box)
    return [(x, y) for x in (own.low[0], own.high[0]) for y in (own.low[1], own.high[1])]
