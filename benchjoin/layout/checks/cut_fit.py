"""How a mate fits a cut that was made for it: numbers only, in the frame of the part with the cut's face up."""

from __future__ import annotations

import functools

import attrs

from ...frame.finished import Shoulder
from ...lengths import TOUCH
from ...runs import larger, smaller
from ...solids import Box
from ..joints.meeting import Cut
from ..parts import Part, face_up


@attrs.frozen(kw_only=True, eq=False, repr=False, slots=False)
class CutFit:
    """A cut as it is against the cut as it should be. [mm]

    have and need are their sizes along the part, gap what the first is more, near and far how much of that lies on
    the datum's side of the mate and beyond it once the mate has moved by shift, which brings it into the cut.
    clearance is what need holds over the mate, which measures mate. short is what is missing across, depth what is
    missing in depth. seat is how far the mate moves to sit on the shoulder that the maker named, or else shift.
    """

    have: float
    need: float
    near: float
    far: float
    shift: float
    seat: float
    mate: float
    clearance: float
    short: float
    depth: float

    @property
    def gap(self) -> float:
        """How much wider the cut is than it should be; negative where it is too narrow. [mm]"""
        return self.have - self.need


def cut_fit(part: Part, cut: Cut, want: Cut, mate: Box, sits: Shoulder = "") -> CutFit:
    """How a mate, by its blank, fits a cut of a part that is wanted as another cut, and sits on a shoulder of it."""
    up = face_up(part, cut.face)
    have, need, own, blank = (up.local(box) for box in (cut.box, want.box, mate, part.blank))
    before, after = have.low[0] - need.low[0], have.high[0] - need.high[0]
    shift = _shift(before, after)
    seat = {"": shift, "near": before, "far": after}[sits if after - before > 0 else ""]
    inside = smaller(own.high[0], need.high[0]) - larger(own.low[0], need.low[0])
    return CutFit(
        have=have.high[0] - have.low[0],
        need=need.high[0] - need.low[0],
        near=seat - before,
        far=after - seat,
        shift=shift,
        seat=seat,
        mate=own.high[0] - own.low[0],
        clearance=need.high[0] - need.low[0] - inside,
        short=_short(have, need, blank.high[1]),
        depth=(need.high[2] - larger(need.low[2], 0.0)) - (have.high[2] - larger(have.low[2], 0.0)),
    )


def _shift(before: float, after: float) -> float:
    """The least move that brings what is needed into the cut, or as far in as it goes. [mm]

    before and after say how far the ends of the cut lie beyond those of the need.
    """
    if before > 0 and after > 0:
        found: float = smaller(before, after)
        return found
    if before < 0 and after < 0:
        found = larger(before, after)
        return found
    return 0.0


def _short(have: Box, need: Box, width: float) -> float:
    """How much of what is needed across the part the cut does not reach. [mm]"""
    low, high = larger(need.low[1], 0.0), smaller(need.high[1], width)
    ends = [have.low[1] - low] if have.low[1] > TOUCH else []
    ends += [high - have.high[1]] if have.high[1] < width - TOUCH else []
    return functools.reduce(larger, ends, 0.0)
