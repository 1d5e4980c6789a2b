"""Placing one piece: its legs, its rails at their heights, and the corners turned."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ..frame.frame import Frame
from ..frame.pair import Pair
from ..frame.stack import Clear
from .bands import Band
from .blanks import Blank, Over, RailBlank, leg_blanks, pair_edges, rail_blank
from .corners import turn_corners
from .joining import let_in
from .sizes import Pick


def place(
    frame: Frame, bands: Sequence[Band], over: Over, pick: Pick, *, bays: Sequence[Clear | Pair] | None = None
) -> tuple[dict[str, Blank], dict[str, RailBlank]]:
    """Blanks of one piece: legs and rails by name; bays are the frame's own unless others are given.

    Raises
    ------
    RunError
        If bays and legs do not come out over the length.
    """
    legs = leg_blanks(frame, pair_edges(frame, over, bays or frame.bays), over, pick)
    rises = {name: rise for band in bands for name, rise in band.rails.items()}
    sizes = {name: found for band in bands for name, found in band.sizes.items()}
    rails: Mapping[str, RailBlank] = {
        slot.name: rail_blank(
            slot,
            (pick(rises[slot.name].bottom), pick(rises[slot.name].top)),
            legs,
            over.of(pick),
            sizes[slot.name],
            pick,
            let_in,
        )
        for slot in frame.rails()
    }
    return legs, turn_corners(rails, frame.corners)
