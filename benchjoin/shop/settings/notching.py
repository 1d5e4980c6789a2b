"""Notching: what has to be cut into which part, as the part lies against its stop.

The layout knows a notch as a box in the world; at the saw it is an interval from one end of the part, a depth from one
face, and whether a tool may run right across that face. Legs lie with the foot against the stop, rails with their datum
end, unless the maker sets a level from the top. The ways of cutting (dado head, router, chisel) all start from these.

A notch that ends inside its face is open there all the same if the wood beyond it goes for other notches of the part,
as at a corner, where the notch for the end rail runs out into that for the front rail. Cut right across, it takes
nothing that is not cut anyway, so it does not matter which of the two comes first.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

import attrs

from ...errors import AddressError
from ...layout.done import is_open
from ...layout.joints.meeting import Cut
from ...layout.layout import Layout
from ...layout.on_face import OnFace
from ...layout.parts import Part, face_up
from ...lengths import TOUCH
from ...solids import Box, left_over, vector


@attrs.frozen(kw_only=True)
class Notching:
    """One notch or lap of one part as it lies against its stop.

    cut is the notch on its face; end is the end of the part that lies against the stop, from_end whether that is the
    one which sizes are not taken from. into are the rails whose notches it runs out into, where it ends inside its face
    and is open there.
    """

    part: Part
    level: str
    cut: OnFace
    end: str
    from_end: bool
    into: tuple[str, ...] = ()

    @property
    def face(self) -> str:
        """The face from which it is cut."""
        return self.cut.face

    @property
    def up(self) -> str:
        """What the maker calls that face on this part: outer face."""
        return self.cut.called

    @property
    def low(self) -> float:
        """Its shoulder nearer to the stop, 0 where it runs out there. [mm]"""
        return self.part.length - self.cut.end if self.from_end else self.cut.start

    @property
    def high(self) -> float:
        """Its other shoulder, the length of the part where it runs out there. [mm]"""
        return self.part.length - self.cut.start if self.from_end else self.cut.end

    @property
    def depth(self) -> float:
        """From its face to its floor. [mm]"""
        return self.cut.floor

    @property
    def buried(self) -> float:
        """How much wood lies between its face and it: none, as a rule. [mm]"""
        return self.cut.buried

    @property
    def across(self) -> bool:
        """Whether a tool may run right across the face: it is open at both edges, or runs out into other notches."""
        return self.cut.across or bool(self.into)

    @property
    def width(self) -> float:
        """From shoulder to shoulder. [mm]"""
        return self.high - self.low

    @property
    def open_near(self) -> bool:
        """Whether it runs out at the end against the stop."""
        return self.low <= TOUCH

    @property
    def open_far(self) -> bool:
        """Whether it runs out at the other end."""
        return self.high >= self.part.length - TOUCH

    def __str__(self) -> str:
        return f"{self.part.name}, {self.level}"


def notchings(layout: Layout, *, from_top: Collection[str] = ()) -> tuple[Notching, ...]:
    """Every notch and lap of the batch that is not cut yet, part by part from its foot or datum end.

    A part that is marked still has all of them to be cut; one that is cut only those that came into the design later.

    Parameters
    ----------
    layout : Layout
    from_top : collection of str
        Levels whose notches are set with the top of the leg against the stop.

    Raises
    ------
    AddressError
        If there is no such level.
    """
    known = tuple(level.name for level in layout.frame.levels())
    for name in (from_top,) if isinstance(from_top, str) else from_top:
        if name not in known:
            raise AddressError(f"There is no level {name!r}. Levels are {', '.join(known)}.", address=name, known=known)
    tops = {from_top} if isinstance(from_top, str) else set(from_top)
    return tuple(found for part in layout.parts for found in _of(layout, part, tops))


def _of(layout: Layout, part: Part, from_top: Collection[str]) -> Iterator[Notching]:
    found = []
    made = [cut for cut in part.cuts if layout.mate(part, cut.mate) is not None]
    for cut in map(part.on_face, made):  # what is marked for a rail that is gone since is not cut
        if not is_open(layout.frame, part, cut.cut, "cut"):
            continue
        mate = layout.mate(part, cut.mate)
        level = part.level or (mate.level if mate else None) or ""
        top = part.slot.upright and level in from_top
        end = "top" if top else DATUM_ENDS[part.slot.axes[0]]
        into = _runs_out_into(part, cut, made, layout.frame.tape.hair)
        found.append(Notching(part=part, level=level, cut=cut, end=end, from_end=top, into=into))
    yield from sorted(found, key=lambda notch: (notch.low, notch.face))


def _runs_out_into(part: Part, cut: OnFace, made: Sequence[Cut], hair: float) -> tuple[str, ...]:
    """The mates of the notches that take all the wood which a notch takes beyond itself when cut right across its face.

    They must reach over its whole height and depth; what would be left no thicker than a hair does not stand. None
    where more would be, or where it runs right across by itself.
    """
    if cut.across:
        return ()
    up = face_up(part, cut.face)
    swept = Box((cut.start, 0.0, 0.0), (cut.end, cut.size[1], cut.floor))
    own = Box((cut.start, cut.low, 0.0), (cut.end, cut.high, cut.floor))
    others = [(other.mate, up.local(other.box)) for other in made if other is not cut.cut]
    met = [(mate, _grown(box, hair / 2)) for mate, box in others if box.meet(swept)]
    if left_over(swept, [own, *(box for _, box in met)]) > 0.0:
        return ()
    return tuple(dict.fromkeys(mate for mate, _ in met))


def _grown(box: Box, by: float) -> Box:
    return Box(vector(low - by for low in box.low), vector(high + by for high in box.high))


DATUM_ENDS = ("left end", "front end", "foot")
"""The end of a part from which it is measured, in words, by the axis that it runs along."""
