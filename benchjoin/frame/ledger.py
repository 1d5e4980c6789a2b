"""A ledger: a batten fixed on the inner face of a rail, or of a row of legs, to carry an edge of what lies on a level.

>>> from benchjoin.frame.stock import Stock
>>> Ledger(Stock("batten", thickness=20, width=40), on="back rail").row
'back'
"""

from __future__ import annotations

from typing import ClassVar, Literal

import attrs

from .doors import Fault, a_kind, a_length, a_name, one_of, refuse
from .joints import Planted
from .stock import Stock

STOCK = 'Stock("larch batten", thickness="5/8 in", width="1 1/2 in")'
ON = ("front rail", "back rail", "left rail", "right rail", "front legs", "back legs")


@attrs.frozen
class Ledger:
    """A ledger on a named host, its upper edge at the height of the lowest rails of its level. [mm]

    It stands on edge unless it is flat. lowered lets it lie so much lower. name is what it is called, where a level has
    several.
    """

    stock: Stock = attrs.field(converter=a_kind(Stock, "stock", STOCK))
    on: Literal["front rail", "back rail", "left rail", "right rail", "front legs", "back legs"] = attrs.field(
        kw_only=True, converter=one_of("on", *ON)
    )
    flat: bool = attrs.field(kw_only=True, default=False, converter=one_of("flat", True, False))
    lowered: float = attrs.field(kw_only=True, default=0.0, converter=a_length("lowered", signed=True))
    name: str | None = attrs.field(kw_only=True, default=None, converter=a_name("name", barred="./", optional=True))
    solved: ClassVar[bool] = False
    planted: ClassVar[bool] = True
    joint: ClassVar[Planted] = Planted()

    def __attrs_post_init__(self) -> None:
        refuse(self, "Ledger", self._faults)

    def _faults(self) -> list[Fault]:
        if self.stock.width is None:
            return [Fault("stock", f'"{self.stock.name}" has no width. Give it one: {STOCK}.')]
        return []

    @property
    def key(self) -> str:
        """What addresses call it."""
        return self.name or "ledger"

    @property
    def called(self) -> str:
        """What one length of it is called."""
        return self.key

    @property
    def row(self) -> str:
        """The side that its host is at."""
        return self.on.partition(" ")[0]

    @property
    def on_legs(self) -> bool:
        """Whether legs are its host."""
        return self.on.endswith("legs")

    @property
    def run(self) -> str:
        """Which way it runs."""
        return "along" if self.row in ("front", "back") else "across"

    @property
    def upright(self) -> float:
        """How high it is as it lies. [mm]"""
        return self.stock.thickness if self.flat else self.stock.width or 0.0
