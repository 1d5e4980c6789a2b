"""Placing one piece: its members one after the other, each on what stands already; corners turned when all rails lie.

A new kind of member is a line in `PLACES`: where one stands, and what all of its kind do to each other.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import groupby

import attrs

from ...frame.bearers import Bearers
from ...frame.boards import Boards
from ...frame.clear import Clear
from ...frame.frame import Frame
from ...frame.ledger import Ledger
from ...frame.leg import Leg
from ...frame.pair import Pair
from ...frame.rail import Rail
from ...frame.slots import Slot
from ...frame.top import Cleats, Supports
from ...frame.tray import TraySides, TrayStop
from ..blank import Blank
from .bands import Band
from .bearers import bearer_blank
from .boards import board_blank
from .corners import turn_corners
from .legs import leg_blank, pair_edges
from .rails import rail_blank
from .site import Over, Site
from .sizes import Pick
from .tops import cleat_blank, support_blank
from .trays import stop_blank, tray_side_blank

Blanks = Mapping[str, Blank]


def _as_they_are(blanks: Blanks, frame: Frame) -> Blanks:
    return blanks


@attrs.frozen(eq=False, repr=False, slots=False)
class Placing:
    """How members of one description are placed: one on its site, then all of them together."""

    one: Callable[[Slot, Site], Blank]
    together: Callable[[Blanks, Frame], Blanks] = _as_they_are


PLACES: dict[type, Placing] = {
    Leg: Placing(leg_blank),
    Rail: Placing(rail_blank, turn_corners),
    Bearers: Placing(bearer_blank),
    Boards: Placing(board_blank),
    Ledger: Placing(bearer_blank),
    Supports: Placing(support_blank),
    Cleats: Placing(cleat_blank),
    TraySides: Placing(tray_side_blank),
    TrayStop: Placing(stop_blank),
}
"""By the class of the description that a slot is of."""


def place(
    frame: Frame, bands: Sequence[Band], over: Over, pick: Pick, *, bays: Sequence[Clear | Pair] | None = None
) -> dict[str, Blank]:
    """Blanks of one piece by name; bays are the frame's own unless others are given.

    Raises
    ------
    RunError
        If bays and legs do not come out over the length.
    """
    return built_up(frame, bands, over, pick, bays=bays).placed


def built_up(
    frame: Frame, bands: Sequence[Band], over: Over, pick: Pick, *, bays: Sequence[Clear | Pair] | None = None
) -> Site:
    """The site of one piece with all that stands on it, as `place` says.

    Raises
    ------
    RunError
        If bays and legs do not come out over the length, or what a level carries does not go on it.
    """
    edges = pair_edges(frame, over, bays or frame.bays)
    site = Site(
        frame=frame,
        pick=pick,
        over=(pick(over.length), pick(over.depth)),
        pairs={pair: (edges[..., 2 * n], edges[..., 2 * n + 1]) for n, pair in enumerate(frame.pairs())},
        rises={name: rise for band in bands for name, rise in band.rises.items()},
        sizes={name: found for band in bands for name, found in band.sizes.items()},
    )
    for kind, slots in groupby(frame.slots(), key=lambda slot: type(slot.of)):
        how = PLACES[kind]
        for slot in (own := list(slots)):
            site.placed[slot.name] = how.one(slot, site)
        site.placed.update(how.together({slot.name: site.placed[slot.name] for slot in own}, frame))
    return site
