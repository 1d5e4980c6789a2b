"""Chain dimensions: sizes end to end in one row.

They repeat what running dimensions say and are mostly auxiliary. Figures too wide for their own piece leave
the row and are shifted apart outside it.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Literal

from ...errors import PaperError
from ..lettering import ascent, descent
from ..primitives import Drawing, Line, Primitive, Text, figure_middle
from .span import SpanPlacement, above, bracketed, extension, place_span
from .spread import spread
from .style import STYLE, Axis, DimensionStyle, arrows, dot, on_axis

_BEND = 3.0  # least length of the bend of a figure's line; more where figures are shifted far
_BEND_SLOPE = 0.6


def chain(
    points: Sequence[float],
    labels: Sequence[str],
    *,
    axis: Axis,
    at: float,
    outline: float,
    auxiliary: bool = False,
    within: tuple[float, float] | None = None,
    style: DimensionStyle = STYLE,
) -> Drawing:
    """Sizes end to end in one row: n + 1 points and n labels.

    A figure that does not fit above its own piece of the line is written outside the row, across the line,
    joined to the piece by a thin line; such figures are shifted apart. An empty label leaves its piece
    without a size.
    """
    if len(points) != len(labels) + 1:
        raise PaperError(f"A chain of {len(labels)} sizes has {len(labels) + 1} points, not {len(points)}.")
    if any(b < a for a, b in pairwise(points)):
        raise PaperError("The points of a chain must rise.")
    spans = [
        place_span(a, b, bracketed(label, auxiliary) if label else "", axis=axis, line=at, style=style)
        for (a, b), label in zip(pairwise(points), labels, strict=True)
    ]
    ends = dict.fromkeys(points)
    extensions = [line for point in ends if (line := extension(axis, point, outline, at, style))]
    heads = [head for span in spans for head in _chain_heads(span, style)]
    stroke = Line((on_axis(axis, points[0], at), on_axis(axis, points[-1], at)))
    fitting = [span for span in spans if span.text_inside and span.label]
    inside = [above(axis, (span.start + span.end) / 2, at, span.label, style) for span in fitting]
    out = 1 if at > outline else -1
    outside = _outside_figures([span for span in spans if span.label and not span.text_inside], out, within, style)
    return (*extensions, *heads, stroke, *outside, *inside)


def _chain_heads(span: SpanPlacement, style: DimensionStyle) -> Drawing:
    if span.arrows_inside:
        return arrows(span.axis, span.start, span.end, span.line, style)
    return tuple(dot(on_axis(span.axis, along, span.line), style) for along in (span.start, span.end))


def _outside_figures(
    spans: Sequence[SpanPlacement], out: int, within: tuple[float, float] | None, style: DimensionStyle
) -> Drawing:
    """Figures that left the line, in a row of their own past the extension lines, turned across the line."""
    if not spans:
        return ()
    axis, line = spans[0].axis, spans[0].line
    wanted = [(span.start + span.end) / 2 for span in spans]
    tall = ascent(style.text) + descent(style.text)
    limits = within and (within[0] + tall / 2, within[1] - tall / 2)
    places = spread(wanted, [tall + style.between] * (len(spans) - 1), within=limits)
    same_side = out == (1 if axis == "x" else -1)  # figures on the line stand on this side too
    past = max(style.overshoot, tall + 1.0) if same_side else style.overshoot
    shifted = max(abs(place - at) for place, at in zip(places, wanted, strict=True))
    level = line + out * past
    column = level + out * max(_BEND, _BEND_SLOPE * shifted)
    drawn: list[Primitive] = []
    for span, place, middle in zip(spans, places, wanted, strict=True):
        steps = ((middle, line), (middle, level), (place, column))
        drawn.append(Line(tuple(on_axis(axis, along, across) for along, across in steps)))
        drawn.append(_across(axis, place, column + out * style.text_gap, out, span.label, style))
    return tuple(drawn)


def _across(axis: Axis, along: float, across: float, out: int, label: str, style: DimensionStyle) -> Text:
    """A figure that begins at `across` and runs away from the view."""
    anchor: Literal["start", "end"] = "start" if out > 0 else "end"
    if axis == "y":
        return Text((across, figure_middle(along, style.text)), label, style.text, anchor)
    return Text((along + style.text / 2, across), label, style.text, anchor, 90.0)
