"""Boards that lie on a level, or stand against one, as the maker describes them.

>>> from benchjoin.frame.stock import Stock
>>> slat = Stock("larch slat", thickness="3/4 in", width="2 1/2 in")
>>> Boards(slat, gap="5/16 in").called, Boards(slat, count=8, remainder="rip").solved
('board', True)
"""

from __future__ import annotations

from typing import Literal

import attrs

from .doors import Fault, a_kind, a_length, a_name, a_number, one_of, refuse
from .edges import Edge, an_edge
from .stock import Stock

Run = Literal["along", "across", "up"]
Remainder = Literal["gaps", "margins", "rip", "back", "both"]
STOCK = 'Stock("larch slat", thickness="3/4 in", width="2 1/2 in")'


@attrs.frozen
class Boards:
    """A run of boards, wide face up, over what carries them; or upright on the face of two rails. [mm]

    run says which way each board runs: along the length, across it, or up. A gap alone is the least that is let
    through, and as many boards as go in share out what is left; a count alone gets even gaps. remainder says what takes
    the rest: the gaps; both margins alike, the gap staying true to a spacer ("margins"); all boards, ripped to suit
    ("rip"); the last board ("back"); or the first and the last ("both"). within keeps the ends of the boards between
    legs, or all of them between rails; otherwise they lie over everything and are cut round what stands up. clear is
    what they keep off legs all round, the frame's fit if not given. front, back, left and right are how far they reach
    over what they cover; less than nothing stops short. Boards that run up stand on the rails of one side, on their
    outer or inner face, up to those of another level (to), and reach over them by top and bottom. edge shapes
    the outer edge of the first board from end to end, far_edge that of the last. width is how much of
    a top they take, as a section of it. name is what they are called, where a level carries several runs.
    """

    stock: Stock = attrs.field(converter=a_kind(Stock, "stock", STOCK))
    run: Run = attrs.field(kw_only=True, default="along", converter=one_of("run", "along", "across", "up"))
    count: int | None = attrs.field(
        kw_only=True, default=None, converter=a_number("count", 1, 1000, "8", whole=True, optional=True)
    )
    gap: float | None = attrs.field(kw_only=True, default=None, converter=a_length("gap", zero=True, optional=True))
    remainder: Remainder = attrs.field(
        kw_only=True, default="gaps", converter=one_of("remainder", "gaps", "margins", "rip", "back", "both")
    )
    within: Literal["legs", "rails"] | None = attrs.field(
        kw_only=True, default=None, converter=one_of("within", None, "legs", "rails")
    )
    clear: float | None = attrs.field(kw_only=True, default=None, converter=a_length("clear", zero=True, optional=True))
    front: float = attrs.field(kw_only=True, default=0.0, converter=a_length("front", signed=True))
    back: float = attrs.field(kw_only=True, default=0.0, converter=a_length("back", signed=True))
    left: float = attrs.field(kw_only=True, default=0.0, converter=a_length("left", signed=True))
    right: float = attrs.field(kw_only=True, default=0.0, converter=a_length("right", signed=True))
    bottom: float = attrs.field(kw_only=True, default=0.0, converter=a_length("bottom", signed=True))
    top: float = attrs.field(kw_only=True, default=0.0, converter=a_length("top", signed=True))
    side: Literal["front", "back", "left", "right"] = attrs.field(
        kw_only=True, default="back", converter=one_of("side", "front", "back", "left", "right")
    )
    face: Literal["outer", "inner"] = attrs.field(
        kw_only=True, default="outer", converter=one_of("face", "outer", "inner")
    )
    to: str | None = attrs.field(kw_only=True, default=None, converter=a_name("to", optional=True))
    edge: Edge | None = attrs.field(kw_only=True, default=None, converter=an_edge("edge"))
    far_edge: Edge | None = attrs.field(kw_only=True, default=None, converter=an_edge("far_edge"))
    width: float | None = attrs.field(kw_only=True, default=None, converter=a_length("width", optional=True))
    name: str | None = attrs.field(kw_only=True, default=None, converter=a_name("name", barred="./", optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Boards", self._faults)

    @property
    def key(self) -> str:
        """What addresses call the run."""
        return self.name or "boards"

    @property
    def called(self) -> str:
        """What one of them is called."""
        return self.name or "board"

    @property
    def solved(self) -> bool:
        """Whether their number or their widths follow from the room they have."""
        return self.count is None or self.remainder in ("rip", "back", "both")

    def _faults(self) -> list[Fault]:
        faults = []
        if self.stock.width is None:
            faults.append(Fault("stock", f'"{self.stock.name}" has no width. Give it one: {STOCK}.'))
        if self.count is None and self.gap is None:
            faults.append(Fault("gap", 'neither count nor gap is given. Write gap="5/16 in", or count=8.'))
        if self.remainder == "margins" and self.gap is None:
            what = "the margins share what a true gap leaves, and no gap is given. Give the thickness of the spacer."
            faults.append(Fault("gap", what))
        if self.remainder == "both" and self.count == 1:
            faults.append(Fault("count", "one board cannot be odd at both sides. Give two or more."))
        if self.run == "up":
            faults += [Fault(field, f"boards that run up have none. Leave {field} out.") for field in self._flat()]
        else:
            named = "only boards that run up have it. Leave it out, or write run='up'."
            faults += [Fault(field, named) for field in ("bottom", "top", "to") if getattr(self, field)]
            faults += [Fault("side", named)] if self.side != "back" else []
            faults += [Fault("face", named)] if self.face != "outer" else []
        return faults

    def _flat(self) -> list[str]:
        """Fields given that only boards have which lie."""
        ends = ("front", "back") if self.side in ("front", "back") else ("left", "right")
        return [field for field in ends if getattr(self, field)]
