"""A cut as one sees it who looks at the face from which it is made, the part lying with its datum end on the left.

Housings, waste, notches at the saw, patterns, sticks and part drawings all read a cut through this.

    v  ▲  size[1]  ┌───────────────┐
       │    high   │    ┌────┐     │       start, end   along the part
       │     low   │    └────┘     │       low, high    across the face
       └──────▶ u  └───────────────┘       buried, depth  into the wood
                      start  end
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property

import attrs

from ..display import page
from ..lengths import TOUCH
from ..readings import Tape
from ..runs import larger, smaller
from ..solids import Box, Vector
from .joints.meeting import Cut


@attrs.frozen(slots=False)
class OnFace:
    """A cut on its face: the cut, what the face is called on its part, its box with that face up, and the part's size.

    Its sizes are worked out when they are asked for; what would lie outside the part is left out. [mm]
    """

    cut: Cut
    called: str
    box: Box
    size: Vector

    @property
    def mate(self) -> str:
        """What comes into it."""
        return self.cut.mate

    @property
    def face(self) -> str:
        """The face of the part that is up."""
        return self.cut.face

    @property
    def kind(self) -> str:
        """Of which joint it is."""
        return self.cut.kind

    @cached_property
    def start(self) -> float:
        """Its shoulder nearer to the datum end, or that end."""
        found: float = larger(self.box.low[0], 0.0)
        return found

    @cached_property
    def end(self) -> float:
        """Its other shoulder, or the other end."""
        found: float = smaller(self.box.high[0], self.size[0])
        return found

    @property
    def length(self) -> float:
        """From shoulder to shoulder."""
        return self.end - self.start

    @cached_property
    def low(self) -> float:
        """Where it begins across the face, from the lower edge on the page."""
        found: float = larger(self.box.low[1], 0.0)
        return found

    @cached_property
    def high(self) -> float:
        """Where it ends across the face."""
        found: float = smaller(self.box.high[1], self.size[1])
        return found

    @cached_property
    def buried(self) -> float:
        """How much wood lies between the face and the cut: none, as a rule."""
        found: float = larger(self.box.low[2], 0.0)
        return found

    @property
    def depth(self) -> float:
        """How deep it is, from where it begins under the face to its floor."""
        return self.floor - self.buried

    @property
    def through(self) -> bool:
        """Whether it goes from this face right through to the other."""
        return self.buried <= TOUCH and self.floor >= self.size[2] - TOUCH

    @property
    def wood(self) -> bool:
        """Whether it takes wood: nothing does that only comes to the face."""
        return self.depth > TOUCH

    def told(self, read: Callable[[float], str]) -> str:
        """'5/8 deep', 'right through', or 'butt, no waste'."""
        if self.through:
            return "right through"
        return f"{read(self.depth)} deep" if self.wood else f"{self.kind}, no waste"

    @property
    def floor(self) -> float:
        """How far its floor lies under the face."""
        return self.box.high[2]

    @property
    def open_start(self) -> bool:
        """Whether it runs out at the datum end."""
        return self.box.low[0] <= TOUCH

    @property
    def open_end(self) -> bool:
        """Whether it runs out at the other end."""
        return self.box.high[0] >= self.size[0] - TOUCH

    @property
    def across(self) -> bool:
        """Whether it runs right across the face."""
        return self.box.low[1] <= TOUCH and self.box.high[1] >= self.size[1] - TOUCH

    @property
    def edges(self) -> tuple[float, ...]:
        """Its shoulders: the ends of it that lie inside the part."""
        ends = ((self.start, self.open_start), (self.end, self.open_end))
        return tuple(at for at, is_open in ends if not is_open)


@attrs.frozen(repr=False, slots=False)
class Housing(OnFace):
    """A notch in a leg, in the words of the tape: heights over the foot, left and right as one looks at the face."""

    tape: Tape = attrs.field(kw_only=True, eq=False)

    @property
    def bottom(self) -> float:
        """Its lower edge over the foot. [mm]"""
        return self.start

    @property
    def top(self) -> float:
        """Its upper edge over the foot. [mm]"""
        return self.end

    @property
    def open_foot(self) -> bool:
        """Whether it runs out at the foot."""
        return self.open_start

    @property
    def open_top(self) -> bool:
        """Whether it runs out at the top."""
        return self.open_end

    @property
    def rail(self) -> str:
        """The rail that it is for."""
        return self.mate

    @property
    def left(self) -> float:
        """Its extent across the face with the foot to the left: from the lower edge on the page. [mm]"""
        return self.low

    @property
    def right(self) -> float:
        """Its extent across the face: to here. [mm]"""
        return self.high

    def __repr__(self) -> str:
        bottom, top, deep = map(self.tape.both, (self.bottom, self.top, self.depth))
        return f"<Housing for {self.rail}: from {bottom} to {top}, {deep} deep, {self.called}>"

    def _repr_html_(self) -> str:
        return page("notches_page", (self,))
