"""How dimensions look: one frozen set of named sizes, and the few strokes that all dimensions share.

Kinds of dimension (running, overall, chain, leader) decide places first and draw after; what an arrow is and
how far an extension line overshoots they ask here.
"""

from __future__ import annotations

import math
from typing import Literal

import attrs

from ...errors import PaperError
from ...trade.standards import ARROW_ANGLE_LEAST, ARROW_ANGLE_MOST, EXTENSION_GAP, EXTENSION_OVERSHOOT, LETTERING
from ..primitives import Disc, Drawing, Fill, Point

Axis = Literal["x", "y"]
SMALLEST_FIGURE = 2.5  # mm; below that a figure is not read at arm's length (common practice, no source)


def _figure_height(_: object, __: object, value: float) -> None:
    if value not in LETTERING or value < SMALLEST_FIGURE:
        allowed = ", ".join(f"{height:g}" for height in LETTERING if height >= SMALLEST_FIGURE)
        raise PaperError(f"Dimension figures are {allowed} mm high, not {value!r}.")


def _angle(_: object, __: object, value: float) -> None:
    if not ARROW_ANGLE_LEAST <= value <= ARROW_ANGLE_MOST:
        allowed = f"{ARROW_ANGLE_LEAST:g} to {ARROW_ANGLE_MOST:g}"
        raise PaperError(f"An arrow is {allowed} degrees wide, not {value!r}.")


@attrs.frozen(kw_only=True)
class DimensionStyle:
    """Sizes of dimensions on paper. [mm]"""

    text: float = attrs.field(default=2.5, validator=_figure_height)
    arrow: float = 2.5
    arrow_angle: float = attrs.field(default=18.0, validator=_angle)  # degrees between the sides
    dot: float = 0.45  # radius of the mark that stands for an arrow where there is no room for one
    gap: float = EXTENSION_GAP  # between the outline and the beginning of an extension line
    overshoot: float = EXTENSION_OVERSHOOT  # of an extension line past the dimension line
    text_gap: float = 1.0  # between the end of a line and the figure beside it
    stub: float = 1.0  # level end of a bent line, before the figure
    lift: float = 0.5  # between a dimension line and the lowest letter above it
    between: float = 0.5  # least space between two figures one above the other
    beside: float = 2.0  # least space between two figures side by side
    first_row: float = 10.0
    next_row: float = 7.0
    origin: float = 1.0  # radius of the origin mark
    landing: float = 3.0  # level end of a leader


STYLE = DimensionStyle()


def on_axis(axis: Axis, along: float, across: float) -> Point:
    """A point from its place along the measured axis and its place across it."""
    return (along, across) if axis == "x" else (across, along)


def arrow(tip: Point, direction: Point, style: DimensionStyle = STYLE) -> Fill:
    """A closed, filled arrowhead that points in a direction (of any length)."""
    length = math.hypot(*direction)
    if length == 0:
        raise PaperError("An arrow needs a direction.")
    dx, dy = direction[0] / length, direction[1] / length
    half = style.arrow * math.tan(math.radians(style.arrow_angle / 2))
    back = (tip[0] - style.arrow * dx, tip[1] - style.arrow * dy)
    left, right = (back[0] - half * dy, back[1] + half * dx), (back[0] + half * dy, back[1] - half * dx)
    return Fill(((tip, left, right),))


def dot(at: Point, style: DimensionStyle = STYLE) -> Disc:
    """What stands for an arrow where neighbours leave no room."""
    return Disc(at, style.dot, "thin", filled=True)


def arrows(axis: Axis, start: float, end: float, across: float, style: DimensionStyle = STYLE) -> Drawing:
    """Arrowheads at both ends of a dimension line, pointing outwards from between them."""
    return (
        arrow(on_axis(axis, start, across), on_axis(axis, -1.0, 0.0), style),
        arrow(on_axis(axis, end, across), on_axis(axis, 1.0, 0.0), style),
    )
