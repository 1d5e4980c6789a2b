"""The three views of a joint where the projection puts them, each named, with its sizes and the marks of its parts.

Third angle: from above over the front view, the right end on the right; first angle the other way about. Where leg or
rail go on, the view ends in a break line. From above one sees how deep the notch is and what is left of the leg; a
height that is not the same in all joints of a kind is h.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

import attrs
import shapely
from shapely.geometry.base import BaseGeometry

from ....drafting.dimensions.span import overall
from ....drafting.lettering import text_width
from ....drafting.linework import Linework
from ....drafting.primitives import Drawing, Line, Text, bounds, shift
from ....layout.joints.meeting import Joint
from ....layout.parts import Part
from ....lengths import TOUCH
from ....solids import Box, vector
from ...making.asked import Asked
from ...making.house import Reader
from ..broken import break_line
from ..labels import Taken
from ..strokes import dashed, solid
from .look import RIGHT_OF, Look, Looks
from .marks import TEXT, mark_places

CROSS = 1.8
"""Arm of a centre cross. [mm]"""
BETWEEN, APART = 16.0, 5.0
"""Between two views beside each other, with room for a size, and one above the other. [mm]"""


@attrs.frozen
class Drawn:
    """How a joint is drawn: at which scale [mm on paper a mm], how sizes are written, with which lines, whose it is.

    several says that the joints of a kind are not all as high.
    """

    scale: float
    read: Reader
    linework: Linework
    parts: tuple[Part, Part]
    several: bool
    asked: Asked
    joint: Joint


def three_views(looks: Looks, drawn: Drawn, *, third: bool) -> Drawing:
    """The three views where the projection puts them, each named in words."""
    main, beside, over = (_one(look, drawn) for look in looks)
    (x0, y0, x1, y1), (a, _, c, _) = bounds(main), bounds(beside)
    from_the_right = looks[1].eye.name == RIGHT_OF[looks[0].eye.name]
    aside = x1 + BETWEEN - a if third == from_the_right else x0 - BETWEEN - c
    up = y1 + APART - bounds(over)[1] if third else y0 - APART - bounds(over)[3]
    return (*main, *shift(beside, aside, 0.0), *shift(over, 0.0, up))


def _one(look: Look, how: Drawn) -> Drawing:
    """One view: lines, break lines where wood goes on, sizes, marks, and its name above."""
    eye, seen, clip, scale = look.eye, look.seen, look.eye.frame.local(look.clip), how.scale
    visible, ends = look.ended
    x, y = (a + b for a, b in zip(clip.low[:2], clip.high[:2], strict=True))
    lines: Drawing = (
        *solid(visible, scale, how.linework),
        *(line for end in shapely.get_parts(ends) for line in _broken_off(end, scale)),
        *dashed(seen.hidden, scale, how.linework),
        *_crosses(how.asked, how.joint, look, scale),
    )
    x0, _, x1, top = bounds(lines)
    name = eye.title if eye.name == "above" else f"from the {eye.name}"
    size = (*_size(look, how, x0), *_left_of_the_leg(look, how, x1))
    taken = Taken((*lines, *size))
    found = (text for part in how.parts for text in taken.put(mark_places(part, look, scale)))
    words = tuple(sorted(found, key=lambda text: text.at))  # readers of PDF take words from left to right
    if size and (x0 + x1 - text_width(name, TEXT)) / 2 < bounds(size)[2] + 1.0:
        top = max(top, bounds(size)[3])
    top = max([top, *(bounds((word,))[3] - 1.5 for word in words)])
    titled = (*lines, *size, *words, Text(((x0 + x1) / 2, top + 2.5), name, TEXT, "middle"))
    return shift(titled, -x / 2 * scale, -y / 2 * scale)


def _broken_off(end: BaseGeometry, scale: float) -> Iterator[Line]:
    """Thin break lines, with a zigzag, along each straight side of an end."""
    for (x0, y0), (x1, y1) in pairwise((x * scale, y * scale) for x, y in end.coords):
        if math.hypot(x1 - x0, y1 - y0) > TOUCH:
            yield break_line((x0, y0), (x1, y1))


def _crosses(asked: Asked, joint: Joint, look: Look, scale: float) -> Iterator[Line]:
    """Where a fastener is seen end on a cross, from the side a thin line along it, as far as the view goes."""
    fixing = asked.fixing(joint)
    for one in fixing.driven if fixing is not None else ():
        ends = [
            vector(min(max(a, low), high) for a, low, high in zip(at, look.clip.low, look.clip.high, strict=True))
            for at in (one.at, one.tip)
        ]
        (x0, y0, _), (x1, y1, _) = (look.eye.frame.local(Box(at, at)).low for at in ends)
        x0, y0, x1, y1 = (value * scale for value in (x0, y0, x1, y1))
        if math.hypot(x1 - x0, y1 - y0) > TOUCH:
            yield Line(((x0, y0), (x1, y1)))
        else:
            yield Line(((x0 - CROSS, y0), (x0 + CROSS, y0)))
            yield Line(((x0, y0 - CROSS), (x0, y0 + CROSS)))


def _size(look: Look, how: Drawn, left: float) -> Drawing:
    """On the left of the view: the height of the notch where the rail is seen flat, its depth from above.

    Where no wood is taken they are the rail's own width and thickness.
    """
    eye, rail, scale = look.eye, look.rail, how.scale
    box = eye.frame.local(look.cut.box if look.cut else rail.blank)
    x, y, _ = eye.frame.local(rail.blank).size()
    seen_flat = eye.name == "above" or (abs(x - y) > TOUCH and x > rail.thickness + TOUCH)
    if not seen_flat:
        return ()
    low, high = box.low[1], box.high[1]
    told = "h" if how.several and eye.name != "above" and look.cut else how.read(high - low)
    return overall(low * scale, high * scale, told, axis="y", at=left - 8.0, outline=left)


def _left_of_the_leg(look: Look, how: Drawn, right: float) -> Drawing:
    """On the right of the view from above: the wood that is left of the leg behind the notch."""
    runs_up = look.eye.up[how.parts[0].slot.axes[0]]  # its length is no size of its section
    if look.eye.name != "above" or not look.cut or runs_up:
        return ()
    cut, leg = (look.eye.frame.local(box) for box in (look.cut.box, how.parts[0].blank))
    low, high = max((leg.low[1], cut.low[1]), (cut.high[1], leg.high[1]), key=lambda ends: ends[1] - ends[0])
    if high - low <= TOUCH:
        return ()
    scale = how.scale
    return overall(low * scale, high * scale, how.read(high - low), axis="y", at=right + 8.0, outline=right)
