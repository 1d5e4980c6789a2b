"""Put a drawing into the room that a page leaves for it.

>>> from benchjoin.drafting.primitives import Line, bounds
>>> bounds(place_in((Line(((0, 0), (20, 10))),), (100, 100, 200, 200)))
(140.0, 145.0, 160.0, 155.0)
"""

from __future__ import annotations

from typing import Literal

from ...errors import PaperError
from ..primitives import Box, Drawing, bounds, shift

Align = Literal["centre", "left", "right", "above", "below", "above left", "above right", "below left", "below right"]
_SLACK = 1e-6


def place_in(drawing: Drawing, room: Box, align: Align = "centre") -> Drawing:
    """The drawing, moved into the room: in the middle, or against the sides that `align` names.

    Raises
    ------
    PaperError
        If the drawing is larger than the room.
    """
    x0, y0, x1, y1 = bounds(drawing)
    over_w = (x1 - x0) - (room[2] - room[0])
    over_h = (y1 - y0) - (room[3] - room[1])
    if over_w > _SLACK or over_h > _SLACK:
        raise PaperError(
            f"A drawing of {x1 - x0:.1f} × {y1 - y0:.1f} mm does not fit a room of {room[2] - room[0]:.1f} × "
            f"{room[3] - room[1]:.1f} mm. Take larger paper or a smaller scale."
        )
    across = 0.0 if "left" in align else 1.0 if "right" in align else 0.5
    up = 0.0 if "below" in align else 1.0 if "above" in align else 0.5
    return shift(drawing, room[0] - over_w * across - x0, room[1] - over_h * up - y0)
