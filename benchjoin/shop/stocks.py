"""Which stock each part is of, and the section it is drawn at: what the maker described, whatever was measured."""

from __future__ import annotations

import attrs

from ..frame.frame import Frame
from ..frame.stock import Stock


@attrs.frozen(kw_only=True)
class Drawn:
    """The stock of a part with its thickness and width as described. [mm]"""

    stock: Stock
    thickness: float
    width: float


def drawn_sections(frame: Frame) -> dict[str, Drawn]:
    """Stock and drawn section of every part, by its name without the piece."""
    legs = {
        name: Drawn(stock=leg.stock, thickness=leg.stock.thickness, width=leg.stock.width or 0.0)
        for name, _, _, leg in frame.legs()
    }
    rails = {
        slot.name: Drawn(stock=slot.stock, thickness=slot.stock.thickness, width=slot.rail.width)
        for slot in frame.rails()
    }
    return {**legs, **rails}
