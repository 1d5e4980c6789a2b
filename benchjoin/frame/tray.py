"""A tray: slats on a frame that is half-lapped at its corners; it slides out, or lifts out, of its level.

>>> from benchjoin.frame.boards import Boards
>>> from benchjoin.frame.stock import Stock
>>> slat = Stock("spruce slat", thickness=12, width=34)
>>> Tray(Boards(slat, run="across", gap=16), sides=Stock("spruce lath", thickness=20, width=40)).key
'tray'
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar, Literal

import attrs

from .boards import STOCK, Boards
from .doors import Fault, a_kind, a_length, a_name, one_of, past_doors, refuse
from .stock import Stock
from .top import BEARING, EASE, LIFT


@attrs.frozen
class Tray:
    """Slats on four sides that lie flat, half-lapped at the corners, between the legs of a level. [mm]

    It rests on the lowest rails and ledgers of its level. out is the way it leaves: it slides out to the front or the
    back, or lifts up. clear is kept off what stands at its left and right, ease off what stops it at the far end. stop
    is the stock of a batten on the rail at that end, which keeps it from being pushed through. bearing is how much of
    each end rests on wood at least. name is what it is called.
    """

    boards: Boards = attrs.field(converter=a_kind(Boards, "boards", 'Boards(slat, run="across", gap=16)'))
    sides: Stock = attrs.field(kw_only=True, converter=a_kind(Stock, "sides", STOCK))
    out: Literal["front", "back", "up"] = attrs.field(
        kw_only=True, default="front", converter=one_of("out", "front", "back", "up")
    )
    clear: float = attrs.field(kw_only=True, default=LIFT, converter=a_length("clear", zero=True))
    ease: float = attrs.field(kw_only=True, default=EASE, converter=a_length("ease", zero=True))
    stop: Stock | None = attrs.field(kw_only=True, default=None, converter=a_kind(Stock, "stop", STOCK, optional=True))
    bearing: float = attrs.field(kw_only=True, default=BEARING, converter=a_length("bearing", zero=True))
    name: str | None = attrs.field(kw_only=True, default=None, converter=a_name("name", barred="./", optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Tray", self._faults)

    def _faults(self) -> list[Fault]:
        faults = []
        for field, stock in (("sides", self.sides), ("stop", self.stop)):
            if stock is not None and stock.width is None:
                faults.append(Fault(field, f'"{stock.name}" has no width. Give it one: {STOCK}.'))
        if self.boards.run == "up":
            faults.append(Fault("boards", "a tray lies, and these run up. Write run='across' or run='along'."))
        if self.stop is not None and self.out == "up":
            faults.append(Fault("stop", "it lifts out, and nothing pushes it through. Leave stop out."))
        return faults

    @property
    def key(self) -> str:
        """What addresses call it."""
        return self.name or "tray"

    @property
    def far(self) -> str:
        """The side opposite to that where it comes out; the back of what lifts out."""
        return "front" if self.out == "back" else "back"

    @property
    def slats(self) -> Boards:
        """Its boards as a run of the level."""
        return past_doors(self.boards, name=f"{self.key} slat")

    def group(self, level: str) -> str:
        """What its parts are together."""
        return f"{level}/{self.key}"

    def with_counts(self, counts: Mapping[str, int]) -> Tray:
        """The same tray with the number of its slats written down, by the key of their run."""
        count = counts.get(self.slats.key, self.boards.count)
        return attrs.evolve(self, boards=attrs.evolve(self.boards, count=count))


@attrs.frozen(eq=False)
class TraySides:
    """The sides of a tray that run one way, as a run of its level. [mm]"""

    stock: Stock
    tray: Tray
    key: str
    run: Literal["along", "across"]
    solved: ClassVar[bool] = False
    lowered: ClassVar[float] = 0.0

    @property
    def called(self) -> str:
        """What one of them is called."""
        return self.key


@attrs.frozen(eq=False)
class TrayStop:
    """The batten that a tray comes up against, as a run of its level. [mm]"""

    stock: Stock
    tray: Tray
    key: str
    run: ClassVar[str] = "along"
    solved: ClassVar[bool] = False

    @property
    def called(self) -> str:
        """What it is called."""
        return self.key
