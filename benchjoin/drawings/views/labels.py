"""Words on views: names of levels, marks of legs, and FRONT, each where it lies on nothing else.

Whoever draws a view hands in what is drawn already; a word takes the first of its places that is free.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

import numpy as np
import numpy.typing as npt
import shapely
from shapely import transform
from shapely.geometry.base import BaseGeometry

from ...drafting.lettering import text_width
from ...drafting.primitives import (
    Drawing,
    Fill,
    Line,
    Point,
    Primitive,
    Text,
    figure_middle,
    flat,
    text_bounds,
    text_box,
)
from ...layout.parts import Part
from ...lengths import distinct
from .view import View
from .view_sizes import CAPTION

PLACES = (0.5, 0.25, 0.75, 1 / 6, 5 / 6)
"""Where along a rail its name may stand."""
CLEAR = 0.3
"""Between a name and the edges of its rail. [mm]"""
OFF = 1.0
"""Between a mark and the leg beside which it stands. [mm]"""
AIR = 0.25
"""Round a word. [mm]"""
APART = 1.5
"""Between a word and the next: closer, they are read as one. [mm]"""
FRONT = "FRONT"


class Taken:
    """What is drawn already: lines, black fills and words."""

    def __init__(self, drawing: Drawing) -> None:
        items = list(flat(drawing))
        self._words = [text_bounds(item) for item in items if isinstance(item, Text)]
        self._ink = shapely.STRtree(_ink(items))

    def is_free(self, text: Text) -> bool:
        """Whether a word lies on nothing."""
        left, low, right, high = text_bounds(text)
        if any(
            left - APART <= c and right + APART >= a and low - APART <= d and high + APART >= b
            for a, b, c, d in self._words
        ):
            return False
        box = shapely.box(left - AIR, low - AIR, right + AIR, high + AIR)
        return not len(self._ink.query(box, predicate="intersects"))

    def put(self, places: Iterable[Text]) -> Iterator[Text]:
        """The first of its places that is free, if there is one; it is taken from now on."""
        for text in places:
            if self.is_free(text):
                self._words.append(text_bounds(text))
                yield text
                return


def _ink(items: Iterable[Primitive]) -> npt.NDArray[np.object_]:
    """Lines, and outlines of black fills with what is in them."""
    lines: list[tuple[Point, ...]] = []
    rings: list[tuple[Point, ...]] = []
    for item in items:
        if isinstance(item, Line) and len(item.points) > 1:
            lines.append((*item.points, item.points[0]) if item.closed else item.points)
        elif isinstance(item, Fill) and item.tone == "black":
            rings.append(item.rings[0])
    owners = np.repeat(np.arange(len(lines)), [len(line) for line in lines])
    drawn = shapely.linestrings([point for line in lines for point in line], indices=owners) if lines else []
    return np.array([*drawn, *(shapely.Polygon(ring) for ring in rings)], dtype=object)


def level_names(parts: Sequence[Part], seen: View, scale: float, cut: Sequence[float] = ()) -> Iterator[Text]:
    """The name of each level on its nearest visible rail, in the middle or where it has room.

    cut are heights at which the plane of a section crosses the view: no name stands there. [mm]
    """
    told: set[str] = set()
    hidden = transform(seen.hidden, lambda points: points * scale)
    levels = {part.name: part.level for part in parts if part.level}
    for face in sorted((f for f in seen.faces if f.part in levels), key=lambda f: (f.distance, f.part)):
        level = levels[face.part] or ""
        x0, y0, x1, y1 = (edge * scale for edge in face.region.bounds)
        whole = face.region.area * scale**2 > 0.98 * (x1 - x0) * (y1 - y0)
        if level in told or not whole or any(y0 <= at * scale <= y1 for at in cut):
            continue
        wood = transform(face.region, lambda points: points * scale)
        for share in PLACES:
            at = (x0 + (x1 - x0) * share, figure_middle((y0 + y1) / 2, CAPTION))
            text = Text(at, level, CAPTION, "middle")
            left, low, right, high = text_bounds(text)
            inside = x0 + 1 < left and right < x1 - 1 and y0 + CLEAR < low and high < y1 - CLEAR
            box = shapely.box(left, low, right, high)
            if inside and wood.contains(box.buffer(CLEAR, join_style="mitre")) and not hidden.intersects(box):
                told.add(level)
                yield text
                break


def heights_of_levels(parts: Sequence[Part], side: str, scale: float) -> list[tuple[str, list[float]]]:
    """Each level with the heights of its rails on paper, the tops first, those of one side before the others. [mm]"""
    found: dict[str, list[tuple[bool, float, float]]] = {}
    for part in parts:
        if part.level:
            found.setdefault(part.level, []).append((part.side != side, part.blank.high[2], part.blank.low[2]))
    return [
        (level, [*(high * scale for _, high, _ in sorted(own)), *(low * scale for _, _, low in sorted(own))])
        for level, own in found.items()
    ]


def leg_marks(parts: Sequence[Part], seen: View, scale: float, taken: Taken) -> Iterator[Text]:
    """The mark of each leg that is seen: on it, or beside it where no other wood is."""
    legs = {part.name: part for part in parts if part.slot.upright and (seen.eye.up[2] or not part.slot.run)}
    upright = bool(seen.eye.up[2])
    own: dict[str, BaseGeometry] = {}
    if upright:
        own = {name: region for name in legs if not (region := seen.seen_of(name)).is_empty}
    else:
        for name, part in legs.items():
            box = seen.eye.frame.local(part.blank)
            own[name] = shapely.box(*box.low[:2], *box.high[:2])
    middle = (seen.bounds[0] + seen.bounds[2]) / 2 * scale, (seen.bounds[1] + seen.bounds[3]) / 2 * scale
    for name, region in sorted(own.items()):
        on, other = (transform(one, lambda at: at * scale) for one in (region, seen.less(region)))
        places = _of_a_leg(legs[name].mark, on.bounds, middle, upright=upright)
        yield from taken.put(text for text in places if not shapely.box(*text_bounds(text)).intersects(other))


def marks_of_runs(parts: Sequence[Part], seen: View, scale: float, taken: Taken) -> Iterator[Text]:
    """The mark of each board and bearer that is seen from above, where it has room on its wood."""
    runs = {part.name: part.mark for part in parts if part.slot.run}
    for face in sorted((f for f in seen.faces if f.part in runs), key=lambda f: f.part):
        x0, y0, x1, y1 = (edge * scale for edge in face.region.bounds)
        lies = x1 - x0 >= y1 - y0
        if min(x1 - x0, y1 - y0) < CAPTION + 2 * CLEAR + AIR:
            continue
        mark = runs[face.part]
        region = transform(face.region, lambda points: points * scale)
        places = []
        for share in PLACES:
            at = (x0 + (x1 - x0) * (share if lies else 0.5), y0 + (y1 - y0) * (0.5 if lies else share))
            places.append(Text((at[0], figure_middle(at[1], CAPTION)), mark, CAPTION, "middle"))
        yield from taken.put(text for text in places if region.contains(text_box(text)))


def _of_a_leg(
    mark: str, box: tuple[float, float, float, float], middle: tuple[float, float], *, upright: bool
) -> Iterator[Text]:
    """Places for a mark: on its leg, below its foot, beside it on the inside and on the outside, above it."""
    left, low, right, high = box
    x, wide = (left + right) / 2, text_width(mark, CAPTION)
    inner = 1 if x < middle[0] else -1
    shares = (0.12, 0.06, 0.25, 0.4, 0.5, 0.6, 0.75, 0.9) if upright else (0.5,)
    fits = right - left > wide + 2 * CLEAR and high - low > 1.6 * CAPTION
    for share in shares if fits else ():
        yield Text((x, figure_middle(low + (high - low) * share, CAPTION)), mark, CAPTION, "middle")
    below, above = low - OFF - CAPTION - 0.2, high + OFF + 0.7
    rows = (below, above) if upright or (low + high) / 2 > middle[1] else (above, below)
    beside = [(right + OFF, "start"), (left - OFF, "end")]
    if upright:
        yield from (Text((at, rows[0]), mark, CAPTION, "middle") for at in (x, x + wide / 2, x - wide / 2))
    for at, anchor in beside[:: 1 if inner > 0 else -1]:
        for share in shares:
            yield Text((at, figure_middle(low + (high - low) * share, CAPTION)), mark, CAPTION, anchor)  # type: ignore[arg-type]
        yield from (Text((at, row), mark, CAPTION, anchor) for row in rows)  # type: ignore[arg-type]
    yield from (Text((at, row), mark, CAPTION, "middle") for row in rows for at in (x, x + wide / 2, x - wide / 2))


def front_sign(seen: View, scale: float, taken: Taken) -> Iterator[Text]:
    """FRONT beside the front of a plan or of an end; nothing on a view that looks at the front or the back."""
    left, low, right, high = (edge * scale for edge in seen.bounds)
    across, up = seen.eye.right[1], seen.eye.up[1]
    if up:
        yield from taken.put(_before_a_plan(seen, scale))
    elif across:
        out = 1 if across < 0 else -1
        edge = right if out > 0 else left
        offs = [edge + out * off + CAPTION / 2 for off in (3.0, 5.0, 7.0, 9.0, 12.0)]
        shares = (0.14, 0.25, 0.1, 0.4, 0.55, 0.7, 0.85)
        yield from taken.put(
            Text((x, low + (high - low) * share), FRONT, CAPTION, "middle", 90.0) for x in offs for share in shares
        )


def _before_a_plan(seen: View, scale: float) -> Iterator[Text]:
    """Places before the front edge, in the widest gaps between what stands there, then farther off."""
    left, low, right, _ = (edge * scale for edge in seen.bounds)
    edges_of = [line for line in shapely.get_parts(seen.visible) if line.length > 0]
    edges = distinct([left, right, *(float(x) * scale for line in edges_of for x in line.xy[0])])
    gaps = sorted(pairwise(edges), key=lambda gap: gap[0] - gap[1])
    middles = [(left + right) / 2, *((a + b) / 2 for a, b in gaps[:4])]
    for off in (3.0, 5.0, 7.0, 11.0):
        for x in middles:
            yield Text((x, low - off - CAPTION), FRONT, CAPTION, "middle")
