"""Best known sizes of parts, piece by piece: what was measured, or else what was described. [mm]

Where the rails of one level of a piece that were drawn alike measure differently, the maker has said what to do with
them: all are sized to the narrowest, each notch is marked from its own rail, or all notches are cut for the widest.
Rails that are finished stay as they are, and the others are sized to the narrowest of those. A flush depth follows the
thinnest rail, whichever it is.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any

import attrs
import numpy as np

from ...frame.faces import AXIS
from ...frame.finished import Finished
from ...frame.frame import Frame
from ...frame.identity import of_piece
from ...frame.measured import SECTION
from ...frame.slots import Slot
from ...runs import Array, least, most, over_pieces

Pick = Callable[[Array], float]
"""Takes one piece's number out of an array over the pieces."""


def in_piece(piece: int) -> Pick:
    """Pick of a piece, counted from 0."""
    return lambda sizes: float(sizes[..., piece if sizes.shape[-1] > 1 else 0])


@attrs.frozen(eq=False, repr=False, slots=False)
class Section:
    """Thickness and width of one part in every piece, each of shape (quantity,). [mm]"""

    thickness: Array
    width: Array

    def along(self, slot: Slot, axis: int) -> Array:
        """Width or thickness, whichever lies along an axis of the world."""
        return self.width if axis == slot.axes[1] else self.thickness


@attrs.frozen(kw_only=True, eq=False, repr=False, slots=False)
class RailSizes:
    """A rail in every piece: its own section, the width its notches are cut for, the depth that lets it in flush. [mm]

    Each of shape (quantity,); found is the width on the wood, before it is sized to the narrowest.
    """

    own: Section
    found: Array
    notch: Array
    flush: Array


def section(frame: Frame, slot: Slot) -> Section:
    """Section of a member in every piece."""
    pieces = [best_known(frame, slot, piece) for piece in range(1, frame.quantity + 1)]
    return Section(*(over_pieces([sizes[field] for sizes in pieces]) for field in SECTION))


def best_known(frame: Frame, slot: Slot, piece: int) -> Mapping[str, Any]:
    """Thickness and width of one part, as far as they are known. [mm]

    What was measured by its own name holds, or else what it was finished at, what was measured by a name without a
    piece, what is drawn.
    """
    name = of_piece(piece, slot.name)
    own, done = frame.measured.get(name, {}), frame.finished.get(name)
    every = frame.measured.get(slot.name, {}) if done is None else kept_section(slot, done)
    return {"thickness": slot.thickness, "width": slot.width, **every, **own}


def measured_length(frame: Frame, slot: Slot, piece: int) -> float | None:
    """Length of one part as it was measured, or else as it was finished; None where neither is known. [mm]"""
    name = of_piece(piece, slot.name)
    own, done = frame.measured.get(name, {}), frame.finished.get(name)
    if "length" in own:
        return own["length"]
    return frame.measured.get(slot.name, {}).get("length") if done is None else done.length


def heights(frame: Frame, slots: Iterable[Slot]) -> Array:
    """How high the shortest of some legs stands in every piece, as drawn or as measured, shape (quantity,). [mm]

    One height holds for what is pinned to their tops, so that no rail slopes; longer ones are trimmed.
    """
    return least(over_pieces([_height(frame, slot, n) for n in range(1, frame.quantity + 1)]) for slot in slots)


def _height(frame: Frame, slot: Slot, piece: int) -> float:
    own = frame.measured.get(of_piece(piece, slot.name), {})
    height: float = own.get("length", frame.measured.get(slot.name, {}).get("length", slot.of.height))
    return height


def kept_section(slot: Slot, done: Finished) -> Mapping[str, float]:
    """Thickness and width of a finished part, in the sense of its stock: a rail's width stands upright. [mm]"""
    across, into = done.section
    thick_in = AXIS[slot.marked([cut.face for cut in done.cuts])] == slot.axes[2]
    return {"thickness": into if thick_in else across, "width": across if thick_in else into}


def rail_sizes(frame: Frame) -> dict[str, RailSizes]:
    """Sizes of every rail by its name."""
    return {name: sizes for own in frame.rails_of.values() for name, sizes in _of_level(frame, own).items()}


def _of_level(frame: Frame, slots: Sequence[Slot]) -> dict[str, RailSizes]:
    found = {slot.name: section(frame, slot) for slot in slots}
    return {slot.name: _rail(frame, slot, slots, found) for slot in slots}


def _rail(frame: Frame, slot: Slot, level: Sequence[Slot], found: Mapping[str, Section]) -> RailSizes:
    own = found[slot.name]
    widths = [found[s.name].width for s in level if s.width == slot.width]
    thick = [found[s.name].thickness for s in level if s.thickness == slot.thickness and s.joint == slot.joint]
    width = own.width if frame.uneven != "narrowest" else _narrowed(frame, slot, level, found)
    notch = most([width, *widths]) if frame.uneven == "widest" else width
    return RailSizes(own=Section(own.thickness, width), found=own.width, notch=notch, flush=least(thick))


def _narrowed(frame: Frame, slot: Slot, level: Sequence[Slot], found: Mapping[str, Section]) -> Array:
    """Width of a rail that is sized to the narrowest of its level that is finished, or else to the narrowest of all."""
    own, alike = found[slot.name].width, [other for other in level if other.width == slot.width]
    kept = least(np.where(_done(frame, other), found[other.name].width, np.inf) for other in alike)
    narrowest = np.where(np.isinf(kept), least(found[other.name].width for other in alike), kept)
    return np.where(_done(frame, slot), own, least([own, narrowest]))


def _done(frame: Frame, slot: Slot) -> Array:
    """In which pieces a member is sized or further, shape (quantity,)."""
    return np.array([of_piece(n, slot.name) in frame.finished for n in range(1, frame.quantity + 1)])
