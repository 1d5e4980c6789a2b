"""Corners: where a long rail and an end rail want the same wood, or meet outside the leg.

One runs through and the other stops behind it. A rail that runs through covers the end of the one that stops, so
where the stopped one stands proud of the legs the through one is longer by that much, unless the maker gave it an
overhang. A cross rail always stops behind the long ones. Staggered corners leave both as they are: the maker has raised
one of them, and the clash check sees to it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import attrs
import numpy as np

from ...frame.faces import AXIS, looks_down
from ...frame.frame import Frame
from ...lengths import TOUCH
from ...outlines import Cropped, Profile
from ...runs import larger, smaller
from ...solids import Box
from ..blank import Blank


def turn_corners(rails: Mapping[str, Blank], frame: Frame) -> dict[str, Blank]:
    """Rails of one piece with their corners turned."""
    turned = dict(rails)
    if frame.corners == "staggered":
        return turned
    longs = [name for name, rail in rails.items() if rail.slot.long]
    ends = [name for name, rail in rails.items() if rail.slot.side in AXIS and not rail.slot.long]
    cross = [name for name, rail in rails.items() if rail.slot.side not in AXIS]
    first, second = (longs, ends) if frame.corners == "front through" else (ends, longs)
    for through, stopped in _near(rails, first, second):
        turned[through] = _covering(turned[through], rails[stopped])
    for through, stopped in _near(rails, first, second):
        turned[stopped] = _stopping(turned[stopped], turned[through])
    for through, stopped in _near(rails, longs, cross):
        turned[stopped] = _stopping(turned[stopped], turned[through])
    return turned


def _near(rails: Mapping[str, Blank], first: Sequence[str], second: Sequence[str]) -> Iterator[tuple[str, str]]:
    """Pairs, one of each kind, that may lie at one height; where heights are those of many variants, all pairs."""
    ends = (end for name in (*first, *second) for end in (rails[name].box.low[2], rails[name].box.high[2]))
    if any(isinstance(end, np.ndarray) for end in ends):
        yield from ((one, other) for one in first for other in second)
        return
    rising = sorted(second, key=lambda name: rails[name].box.low[2])
    lows = [rails[name].box.low[2] for name in rising]
    tallest = max((rails[name].box.high[2] - rails[name].box.low[2] for name in second), default=0.0)
    place = {name: n for n, name in enumerate(second)}
    for one in first:
        low, high = rails[one].box.low[2], rails[one].box.high[2]
        start, end = np.searchsorted(lows, [low - tallest, high])
        yield from ((one, other) for other in sorted(rising[start:end], key=place.__getitem__))


def _same_height(a: Box, b: Box) -> bool:
    return bool(smaller(a.high[2], b.high[2]) - larger(a.low[2], b.low[2]) > TOUCH)


def _covering(through: Blank, stopped: Blank) -> Blank:
    """The rail that runs through, made long enough to cover the end of the one that stops."""
    between = through.slot.between or stopped.slot.between
    if between or through.slot.of.overhang or not _same_height(through.box, stopped.box):
        return through
    axis, low_end = through.axis, looks_down(stopped.slot.side)
    reach = stopped.box.low[axis] if low_end else stopped.box.high[axis]
    return _ending(through, low_end, reach, longer=True)


def _stopping(stopped: Blank, through: Blank) -> Blank:
    """The rail that stops, cut back behind the one that runs through where they would share wood."""
    if stopped.box.meet(through.box) is None:
        return stopped
    axis, low_end = stopped.axis, looks_down(through.slot.side)
    reach = through.box.high[axis] if low_end else through.box.low[axis]
    return _ending(stopped, low_end, reach, longer=False)


def _moved(rail: Blank, by: float) -> dict[str, Profile]:
    """Its curves, told from a datum end that has moved by so much."""
    return {face: Cropped(edge, by, rail.length - by, 0.0) for face, edge in rail.shaped.items()}


def _ending(rail: Blank, low_end: bool, reach: float, *, longer: bool) -> Blank:
    """The rail with one end moved to reach, if that makes it longer (or shorter, as asked)."""
    axis, box = rail.axis, rail.box
    if low_end:
        low = (smaller if longer else larger)(box.low[axis], reach)
        return attrs.evolve(rail, box=box.ending(axis, low=low), shaped=_moved(rail, low - box.low[axis]))
    high = (larger if longer else smaller)(box.high[axis], reach)
    return attrs.evolve(rail, box=box.ending(axis, high=high))
