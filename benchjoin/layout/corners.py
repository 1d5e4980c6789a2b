"""Corners: where a long rail and an end rail want the same wood, or meet outside the leg.

One runs through and the other stops behind it. A rail that runs through covers the end of the one that stops, so
where the stopped one stands proud of the legs the through one is longer by that much, unless the maker gave it an
overhang. A cross rail always stops behind the long ones. Staggered corners leave both as they are: the maker has raised
one of them, and the clash check sees to it.
"""

from __future__ import annotations

from collections.abc import Mapping

import attrs

from ..frame.frame import Corners
from ..frame.joints import Butt
from ..lengths import TOUCH
from ..runs import larger, smaller
from ..solids import Box
from .blanks import RailBlank

LOW_END = {"front": True, "back": False, "left": True, "right": False}
"""Whether a side lies at the low end of the rails that meet it."""


def turn_corners(rails: Mapping[str, RailBlank], corners: Corners) -> dict[str, RailBlank]:
    """Rails of one piece with their corners turned."""
    turned = dict(rails)
    if corners == "staggered":
        return turned
    longs = [name for name, rail in rails.items() if rail.slot.long]
    ends = [name for name, rail in rails.items() if rail.slot.side in ("left", "right")]
    cross = [name for name, rail in rails.items() if rail.slot.side == "cross"]
    first, second = (longs, ends) if corners == "front through" else (ends, longs)
    for through in first:
        for stopped in second:
            turned[through] = _covering(turned[through], rails[stopped])
    for through in first:
        for stopped in second:
            turned[stopped] = _stopping(turned[stopped], turned[through])
    for through in longs:
        for stopped in cross:
            turned[stopped] = _stopping(turned[stopped], turned[through])
    return turned


def _same_height(a: Box, b: Box) -> bool:
    return bool(smaller(a.high[2], b.high[2]) - larger(a.low[2], b.low[2]) > TOUCH)


def _covering(through: RailBlank, stopped: RailBlank) -> RailBlank:
    """The rail that runs through, made long enough to cover the end of the one that stops."""
    butts = isinstance(through.slot.joint, Butt) or isinstance(stopped.slot.joint, Butt)
    if butts or through.slot.rail.overhang or not _same_height(through.box, stopped.box):
        return through
    axis = 0 if through.slot.long else 1
    low_end = LOW_END[stopped.slot.side]
    reach = stopped.box.low[axis] if low_end else stopped.box.high[axis]
    return _ending(through, axis, low_end, reach, longer=True)


def _stopping(stopped: RailBlank, through: RailBlank) -> RailBlank:
    """The rail that stops, cut back behind the one that runs through where they would share wood."""
    if stopped.box.meet(through.box) is None:
        return stopped
    axis = 0 if stopped.slot.long else 1
    low_end = LOW_END[through.slot.side]
    reach = through.box.high[axis] if low_end else through.box.low[axis]
    return _ending(stopped, axis, low_end, reach, longer=False)


def _ending(rail: RailBlank, axis: int, low_end: bool, reach: float, *, longer: bool) -> RailBlank:
    """The rail with one end moved to reach, if that makes it longer (or shorter, as asked)."""
    low, high = list(rail.box.low), list(rail.box.high)
    if low_end:
        low[axis] = smaller(low[axis], reach) if longer else larger(low[axis], reach)
    else:
        high[axis] = larger(high[axis], reach) if longer else smaller(high[axis], reach)
    return attrs.evolve(rail, box=Box((low[0], low[1], low[2]), (high[0], high[1], high[2])))
