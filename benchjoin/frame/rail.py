"""A rail, where a level needs more of it than a width.

>>> from benchjoin.frame.joints import HalfLap
>>> Rail("45 mm", joint=HalfLap(), raised=45).width
45.0
"""

from __future__ import annotations

from typing import Any, Literal, cast

import attrs

from ..errors import BenchjoinError, typed
from ..lengths import Length
from .doors import Door, Fault, a_length, kept, one_of, refuse
from .edges import Edge, an_edge
from .joints import RailJoint
from .stock import Stock

Face = Literal["outer", "middle", "inner", "left", "right"]


def _joint(value: Any) -> Any:
    if value is None or isinstance(value, RailJoint):
        return value
    if isinstance(value, type) and issubclass(value, RailJoint):
        return value()
    raise BenchjoinError(f"joint is {typed(value)}. Choose Notch(), HalfLap(), Butt() or Planted().")


def _stock(value: Any) -> Any:
    if value is None or isinstance(value, Stock):
        return value
    example = 'Stock("larch 1x6", thickness="5/8 in")'
    raise BenchjoinError(f"stock is {typed(value)}, not a Stock. Write for example {example}.")


@attrs.frozen
class Rail:
    """A board on edge from leg to leg; its width stands upright. [mm]

    stock and joint are the frame's and the side's own where they are None. face is the face of the legs that the
    rail goes to: outer looks away from the frame, inner into it; middle is for rails that butt; a cross rail
    knows left, middle and right. overhang is how far a long rail runs past the legs (less than zero: stops short of
    their outer faces); raised lifts the rail over the level's common edge. upper_edge and lower_edge are shaped, in
    each bay once, where they say how.
    """

    width: float = attrs.field(converter=a_length("width"))
    stock: Stock | None = attrs.field(kw_only=True, default=None, converter=kept("stock", _stock))
    joint: RailJoint | None = attrs.field(kw_only=True, default=None, converter=kept("joint", _joint))
    face: Face = attrs.field(
        kw_only=True, default="outer", converter=one_of("face", "outer", "middle", "inner", "left", "right")
    )
    overhang: float = attrs.field(kw_only=True, default=0.0, converter=a_length("overhang", signed=True))
    raised: float = attrs.field(kw_only=True, default=0.0, converter=a_length("raised", signed=True))
    upper_edge: Edge | None = attrs.field(kw_only=True, default=None, converter=an_edge("upper_edge"))
    lower_edge: Edge | None = attrs.field(kw_only=True, default=None, converter=an_edge("lower_edge"))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Rail", self._faults)

    def _faults(self) -> list[Fault]:
        if self.face == "middle" and self.joint is not None and not self.joint.between:
            return [Fault("face", "a rail in the middle of the leg can only butt against it. Write joint=Butt().")]
        if self.overhang and self.joint is not None and self.joint.between:
            return [
                Fault("overhang", "a rail that butts ends at the legs. Leave the overhang out, or let the rail in.")
            ]
        return []


def a_rail(field: str) -> Door[Rail | Length | None, Rail | None]:
    """Converter for a side of a level: nothing, a Rail, or just its width."""

    def convert(value: Any) -> Any:
        return value if value is None or isinstance(value, Rail) else Rail(value)

    return cast("Door[Rail | Length | None, Rail | None]", kept(field, convert, takes="Rail | float | str | None"))
