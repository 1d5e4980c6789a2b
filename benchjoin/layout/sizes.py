"""Best known sizes of parts, piece by piece: what was measured, or else what was described. [mm]"""

from __future__ import annotations

import attrs
import numpy as np
import numpy.typing as npt

from ..frame.frame import Frame
from ..frame.identity import of_piece
from ..frame.leg import Leg
from ..frame.rails import Slot

Array = npt.NDArray[np.float64]


@attrs.frozen
class Section:
    """Thickness and width of one part in every piece, each of shape (quantity,). [mm]"""

    thickness: Array
    width: Array

    def across(self, leg: Leg, seen_from: str) -> Array:
        """Size of a leg as seen from the front (along the length) or from the end (along the depth)."""
        return self.width if leg.wide == seen_from else self.thickness


def leg_section(frame: Frame, name: str, leg: Leg) -> Section:
    """Section of a leg in every piece."""
    return _section(frame, name, leg.stock.thickness, leg.stock.width or 0.0)


def rail_section(frame: Frame, slot: Slot) -> Section:
    """Section of a rail in every piece."""
    return _section(frame, slot.name, slot.stock.thickness, slot.rail.width)


def _section(frame: Frame, name: str, thickness: float, width: float) -> Section:
    drawn = {"thickness": thickness, "width": width}
    every = {**drawn, **frame.measured.get(name, {})}
    own = [frame.measured.get(of_piece(piece, name), {}) for piece in range(1, frame.quantity + 1)]
    return Section(*(np.array([sizes.get(field, every[field]) for sizes in own]) for field in drawn))
