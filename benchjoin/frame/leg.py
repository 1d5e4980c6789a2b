"""A leg: an upright whose foot is the datum of every height.

>>> Leg(Stock("larch 2x4", thickness=33, width=82), height="70 in").height
1778.0
"""

from __future__ import annotations

from typing import Literal

import attrs

from .doors import Fault, a_kind, a_length, one_of, refuse
from .stock import Stock


@attrs.frozen
class Leg:
    """A leg of some stock; wide says where its wide face looks: to the front, or to the end of the frame. [mm]

    A height that is left open follows from the level that is flush with the top of its row.
    """

    stock: Stock = attrs.field(converter=a_kind(Stock, "stock", 'Stock("larch 2x4", thickness=33, width=82)'))
    height: float | None = attrs.field(kw_only=True, default=None, converter=a_length("height", optional=True))
    wide: Literal["front", "end"] = attrs.field(kw_only=True, default="front", converter=one_of("wide", "front", "end"))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Leg", self._faults)

    def _faults(self) -> list[Fault]:
        if self.stock.width is None:
            return [Fault("stock", f'"{self.stock.name}" has no width, and a leg needs one. Give the stock a width.')]
        return []
