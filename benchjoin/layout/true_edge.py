"""The true edge: the one beside the marked face from which a part is gauged, so that errors of its section do not add.

Of a leg it is the edge that looks to the end of the frame, where end rails finish flush; of a rail it is the edge that
all rails of its level share. Which one a maker trues is common practice, no source.
"""

from __future__ import annotations

from ..frame.frame import Frame
from .parts import Part


def true_edge(frame: Frame, part: Part) -> str:
    """The face of a part that is its true edge."""
    if part.role == "leg":
        return "right" if part.pair == "right" else "left"
    tops = any(slot.level.name == part.level and slot.level.align == "tops" for slot in frame.rails())
    return "top" if tops else "bottom"
