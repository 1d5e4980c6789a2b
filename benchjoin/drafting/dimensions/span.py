"""One size between two extension lines, an arrow at each end and its figure above the line.

The ordinary dimension, and the piece that chains are made of. It is placed first (`place_span`: do arrows and
figure go between?) and drawn after.
"""

from __future__ import annotations

import attrs

from ..lettering import descent, text_width
from ..primitives import Drawing, Line, Text
from .style import STYLE, Axis, DimensionStyle, arrow, arrows, on_axis

_ASIDE = 2.0  # mm that a figure keeps from the extension lines beside it, both together
_BETWEEN_ARROWS = 1.0  # mm of line that must show between two arrows


@attrs.frozen(kw_only=True)
class SpanPlacement:
    """One size between two extension lines: decided, not drawn."""

    axis: Axis
    start: float
    end: float
    line: float
    label: str
    arrows_inside: bool
    text_inside: bool


def overall(
    start: float,
    end: float,
    label: str,
    *,
    axis: Axis,
    at: float,
    outline: float | tuple[float, float],
    auxiliary: bool = False,
    style: DimensionStyle = STYLE,
) -> Drawing:
    """One size with an arrow at each end, its figure above the line; vertical ones are read from the right.

    Parameters
    ----------
    start, end : float
        Places on paper along the axis. [mm]
    label : str
        The figure.
    axis : "x" or "y"
        Along which the size is measured.
    at : float
        Place of the dimension line, across the axis. [mm]
    outline : float or pair of floats
        Where the extension lines come from, across the axis; a pair gives start and end their own. [mm]
    auxiliary : bool
        The size repeats another and is written in brackets.
    style : DimensionStyle

    Notes
    -----
    Where arrows do not go between the extension lines they stand outside and point in; a figure that does not fit
    stands above the line that runs on past `end`.
    """
    low, high = outline if isinstance(outline, tuple) else (outline, outline)
    if start > end:
        start, end, low, high = end, start, high, low
    placed = place_span(start, end, bracketed(label, auxiliary), axis=axis, line=at, style=style)
    extensions = (extension(axis, start, low, at, style), extension(axis, end, high, at, style))
    return (*(line for line in extensions if line), *_draw_span(placed, style))


def place_span(
    start: float, end: float, label: str, *, axis: Axis, line: float, style: DimensionStyle = STYLE
) -> SpanPlacement:
    """Decide whether arrows and figure go between the extension lines."""
    room = end - start
    return SpanPlacement(
        axis=axis,
        start=start,
        end=end,
        line=line,
        label=label,
        arrows_inside=room >= 2 * style.arrow + _BETWEEN_ARROWS,
        text_inside=text_width(label, style.text) + _ASIDE <= room,
    )


def bracketed(label: str, auxiliary: bool) -> str:
    """The label, in brackets if the size is auxiliary."""
    return f"({label})" if auxiliary else label


def extension(axis: Axis, along: float, outline: float, line: float, style: DimensionStyle) -> Line | None:
    """From the outline past the dimension line; none where the dimension stands on the outline itself."""
    out = 1 if line > outline else -1
    if abs(line - outline) <= style.gap:
        return None
    begin, end = outline + out * style.gap, line + out * style.overshoot
    return Line((on_axis(axis, along, begin), on_axis(axis, along, end)))


def _draw_span(placed: SpanPlacement, style: DimensionStyle) -> Drawing:
    axis, start, end, line = placed.axis, placed.start, placed.end, placed.line
    width = text_width(placed.label, style.text)
    tail = 2 * style.arrow
    if placed.text_inside:
        middle = (start + end) / 2
    else:
        lead = tail if not placed.arrows_inside else style.overshoot
        middle = end + lead + width / 2
    begin, finish = start, end
    if placed.arrows_inside:
        heads = arrows(axis, start, end, line, style)
    else:
        heads = tuple(reversed(_outside_arrows(axis, start, end, line, style)))
        begin, finish = start - tail, end + tail
    if not placed.text_inside:
        finish = middle + width / 2
    stroke = Line((on_axis(axis, begin, line), on_axis(axis, finish, line)))
    return (*heads, stroke, above(axis, middle, line, placed.label, style))


def _outside_arrows(axis: Axis, start: float, end: float, line: float, style: DimensionStyle) -> Drawing:
    return (
        arrow(on_axis(axis, start, line), on_axis(axis, 1.0, 0.0), style),
        arrow(on_axis(axis, end, line), on_axis(axis, -1.0, 0.0), style),
    )


def above(axis: Axis, middle: float, line: float, label: str, style: DimensionStyle) -> Text:
    """A figure above a dimension line; for a vertical line that is its left, read from the right."""
    lift = descent(style.text) + style.lift
    if axis == "x":
        return Text((middle, line + lift), label, style.text, "middle")
    return Text((line - lift, middle), label, style.text, "middle", 90.0)
