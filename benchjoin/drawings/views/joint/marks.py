"""Where the mark of a part may stand in a joint's view: on its own wood, or just beside it."""

from __future__ import annotations

from collections.abc import Iterator

import shapely
from shapely.geometry.base import BaseGeometry

from ....drafting.lettering import ascent, descent, text_width
from ....drafting.primitives import Box as Bounds
from ....drafting.primitives import Text, figure_middle, text_bounds
from ....layout.parts import Part
from ....lengths import TOUCH
from .look import Look

TEXT = 2.5
SHARES = (0.5, 0.75, 0.25, 0.85, 0.15)
"""Where on a face its mark may stand."""
ON = 0.6
"""Between a mark on wood and the edges of it. [mm]"""
OFF = 1.6
"""Between wood and a mark beside it. [mm]"""


def mark_places(part: Part, look: Look, scale: float) -> Iterator[Text]:
    """Places for a mark on the faces that are seen of its part, the largest first, and then just beside them."""
    own, others = look.wood.get(part.name, ([], shapely.Polygon()))
    regions = [_scaled(region, scale) for region in own]
    for region in regions:
        for text in _on(region, part.mark):
            box = text_bounds(text)
            if _holds(region.bounds, box) and region.contains(shapely.box(*box).buffer(ON)):
                yield text
    other = _scaled(others, scale)
    for region in regions:
        for text in _just_beside(region.bounds, part.mark):
            if not shapely.box(*text_bounds(text)).intersects(other):
                yield text


def _scaled(region: BaseGeometry, scale: float) -> BaseGeometry:
    return shapely.transform(region, lambda at: at * scale)


def _on(region: BaseGeometry, mark: str) -> Iterator[Text]:
    """Places for a mark on a face, if it is large enough."""
    x0, y0, x1, y1 = region.bounds
    wide, high = text_width(mark, TEXT, bold=True), ascent(TEXT) + descent(TEXT)
    if x1 - x0 < wide + 2 * ON - TOUCH or y1 - y0 < high + 2 * ON - TOUCH:
        return
    for up in SHARES:
        for across in SHARES:
            at = (x0 + (x1 - x0) * across, figure_middle(y0 + (y1 - y0) * up, TEXT))
            yield Text(at, mark, TEXT, "middle", bold=True)


def _holds(outer: Bounds, inner: Bounds) -> bool:
    """Whether a box holds another with the air round it."""
    (a, b, c, d), (left, low, right, high) = outer, inner
    return a <= left - ON + TOUCH and b <= low - ON + TOUCH and c >= right + ON - TOUCH and d >= high + ON - TOUCH


def _just_beside(box: tuple[float, float, float, float], mark: str) -> Iterator[Text]:
    """Places for a mark on the right, on the left, above and below a box."""
    x0, y0, x1, y1 = box
    for share in SHARES:
        y, x = figure_middle(y0 + (y1 - y0) * share, TEXT), x0 + (x1 - x0) * share
        yield Text((x1 + OFF, y), mark, TEXT, "start", bold=True)
        yield Text((x0 - OFF, y), mark, TEXT, "end", bold=True)
        yield Text((x, y1 + OFF + 0.7), mark, TEXT, "middle", bold=True)
        yield Text((x, y0 - OFF - TEXT - 0.3), mark, TEXT, "middle", bold=True)
