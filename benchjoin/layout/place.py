"""Placing one piece: its legs, its rails at their heights, and the corners turned."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ..frame.frame import Frame
from .bands import Band
from .blanks import Blank, Over, RailBlank, leg_blanks, pair_edges, rail_blank
from .corners import turn_corners
from .joining import let_in


def place(frame: Frame, bands: Sequence[Band], over: Over, piece: int) -> tuple[dict[str, Blank], dict[str, RailBlank]]:
    """Blanks of one piece (counted from 0): legs and rails by name.

    Raises
    ------
    RunError
        If bays and legs do not come out over the length.
    """
    legs = leg_blanks(frame, pair_edges(frame, over), over, piece)
    rises = {name: rise for band in bands for name, rise in band.rails.items()}
    rails: Mapping[str, RailBlank] = {
        slot.name: rail_blank(
            frame,
            slot,
            (float(rises[slot.name].bottom[piece]), float(rises[slot.name].top[piece])),
            legs,
            over.of(piece),
            piece,
            let_in,
        )
        for slot in frame.rails()
    }
    return legs, turn_corners(rails, frame.corners)
