"""Best known sizes of parts, piece by piece: what was measured, or else what was described. [mm]

Where the rails of one level of a piece that were drawn alike measure differently, the maker has said what to do with
them: all are sized to the narrowest, each notch is marked from its own rail, or all notches are cut for the widest. A
flush depth follows the thinnest rail, whichever it is.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

import attrs
import numpy as np

from ..frame.frame import Frame
from ..frame.identity import of_piece
from ..frame.leg import Leg
from ..frame.slots import Slot
from ..runs import Array, Number, least, most, over_pieces

Pick = Callable[[Array], float]
"""Takes one piece's number out of an array over the pieces."""


def in_piece(piece: int) -> Pick:
    """Pick of a piece, counted from 0."""
    return lambda sizes: float(sizes[..., piece if sizes.shape[-1] > 1 else 0])


@attrs.frozen
class Section:
    """Thickness and width of one part in every piece, each of shape (quantity,). [mm]"""

    thickness: Array
    width: Array

    def across(self, leg: Leg, seen_from: str) -> Array:
        """Size of a leg as seen from the front (along the length) or from the end (along the depth)."""
        return self.width if leg.wide == seen_from else self.thickness


@attrs.frozen(kw_only=True)
class RailSizes:
    """A rail in every piece: its own section, the width its notches are cut for, the depth that lets it in flush. [mm]

    Each of shape (quantity,); found is the width on the wood, before it is sized to the narrowest.
    """

    own: Section
    found: Array
    notch: Array
    flush: Array


def leg_section(frame: Frame, name: str, leg: Leg) -> Section:
    """Section of a leg in every piece."""
    return _section(frame, name, leg.stock.thickness, leg.stock.width or 0.0)


def rail_sizes(frame: Frame) -> dict[str, RailSizes]:
    """Sizes of every rail by its name."""
    found = {slot.name: _section(frame, slot.name, slot.stock.thickness, slot.rail.width) for slot in frame.rails()}
    return {slot.name: _rail(frame, slot, found) for slot in frame.rails()}


def _rail(frame: Frame, slot: Slot, found: Mapping[str, Section]) -> RailSizes:
    own = found[slot.name]
    like = [s for s in frame.rails() if s.level is slot.level]
    widths = [found[s.name].width for s in like if s.rail.width == slot.rail.width]
    let_in = [s for s in like if s.stock.thickness == slot.stock.thickness and s.joint == slot.joint]
    thick = [found[s.name].thickness for s in let_in]
    done = np.array([of_piece(n, slot.name) in frame.finished for n in range(1, frame.quantity + 1)])
    width = own.width if frame.uneven != "narrowest" else np.where(done, own.width, least(widths))
    notch = most([width, *widths]) if frame.uneven == "widest" else width
    return RailSizes(own=Section(own.thickness, width), found=own.width, notch=notch, flush=least(thick))


def _section(frame: Frame, name: str, thickness: Number, width: Number) -> Section:
    drawn = {"thickness": thickness, "width": width}
    every = {**drawn, **frame.measured.get(name, {})}
    own = [frame.measured.get(of_piece(piece, name), {}) for piece in range(1, frame.quantity + 1)]
    return Section(*(over_pieces([sizes.get(field, every[field]) for sizes in own]) for field in drawn))
