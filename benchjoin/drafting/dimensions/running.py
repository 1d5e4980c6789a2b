"""Running dimensions: one line from an origin mark, a rising figure at each extension line, as a tape reads.

Superimposed running dimensioning after ISO 129-1. Positions come from a view that is already on paper;
figures that would touch are shifted apart and their extension lines bent to follow. First the figures are
placed (`place_running`), where collisions can be tested; then they are drawn (`draw_running`).
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Literal

import attrs

from ...errors import PaperError
from ..lettering import ascent, descent, text_width
from ..primitives import Disc, Drawing, Line, Point, Primitive, Text, figure_middle
from .spread import spread
from .style import STYLE, Axis, DimensionStyle, arrow, dot, on_axis

Side = Literal["left", "right", "above", "below"]
_SAME = 1e-6  # mm, two positions are one
_STRAIGHT = 0.4  # mm a figure may stand off its line before the line is bent to it
_BEND_LEAST, _BEND_MOST, _BEND_SLOPE = 3.0, 14.0, 0.6  # length of the bend; of the largest shift
_LEVEL_SHIFT = 4.0  # mm that level figures may be shifted along x before all are turned instead


@attrs.frozen(kw_only=True)
class Figure:
    """A figure of a running dimension: true position, what is written, and where along the axis."""

    at: float
    label: str
    place: float


@attrs.frozen(kw_only=True)
class RunningPlacement:
    """A running dimension, decided but not drawn; `out` is 1 above or right of the view, else -1."""

    axis: Axis
    out: int
    origin: float
    outline: float
    line: float
    figures: tuple[Figure, ...]
    turned: bool
    bend: float


def running(
    values: Sequence[tuple[float, str]],
    *,
    origin: Point,
    axis: Axis,
    side: Side,
    outline: float | None = None,
    row: int = 0,
    origin_label: str = "0",
    within: tuple[float, float] | None = None,
    style: DimensionStyle = STYLE,
) -> Drawing:
    """Running dimensions of a view, in one row.

    Parameters
    ----------
    values : sequence of (position, label)
        Position on paper along the axis (a coordinate, not a distance from the origin), and what is written
        there. [mm]
    origin : point
        The datum on paper; its coordinate along the axis carries the origin mark. [mm]
    axis : "x" or "y"
        Along which positions are measured.
    side : "left" or "right" of the view for y, "above" or "below" for x
    outline : float, optional
        Where the view ends on that side, across the axis; the origin's own place if not given. [mm]
    row : int
        0 for the row next to the view, 1 for the next one out.
    origin_label : str
        What is written at the origin.
    within : pair of floats, optional
        Figures may not be shifted past these places along the axis. [mm]
    style : DimensionStyle
    """
    placed = place_running(
        values,
        origin=origin,
        axis=axis,
        side=side,
        outline=outline,
        row=row,
        origin_label=origin_label,
        within=within,
        style=style,
    )
    return draw_running(placed, style)


def place_running(
    values: Sequence[tuple[float, str]],
    *,
    origin: Point,
    axis: Axis,
    side: Side,
    outline: float | None = None,
    row: int = 0,
    origin_label: str = "0",
    within: tuple[float, float] | None = None,
    style: DimensionStyle = STYLE,
) -> RunningPlacement:
    """Decide where everything of a running dimension stands."""
    if side not in (("left", "right") if axis == "y" else ("above", "below")):
        raise PaperError(f"Running dimensions along {axis} do not stand {side!r}.")
    out = 1 if side in ("right", "above") else -1
    along, across = origin if axis == "x" else (origin[1], origin[0])
    edge = across if outline is None else float(outline)
    marks = _marks(values, along, origin_label)
    places, turned = _places(marks, axis, within, style)
    figures = tuple(Figure(at=at, label=label, place=p) for (at, label), p in zip(marks, places, strict=True))
    shifted = max(abs(figure.place - figure.at) for figure in figures)
    bend = 0.0 if shifted <= _STRAIGHT else min(max(_BEND_LEAST, _BEND_SLOPE * shifted), _BEND_MOST)
    return RunningPlacement(
        axis=axis,
        out=out,
        origin=along,
        outline=edge,
        line=edge + out * (style.first_row + row * style.next_row),
        figures=figures,
        turned=turned,
        bend=bend,
    )


def _marks(values: Sequence[tuple[float, str]], origin: float, origin_label: str) -> list[tuple[float, str]]:
    """Origin and values in rising order, each said once."""
    marks: list[tuple[float, str]] = [(origin, origin_label)]
    for at, label in sorted((float(at), label) for at, label in values):
        if not any(abs(at - other) <= _SAME and label == said for other, said in marks):
            marks.append((at, label))
    return sorted(marks)


def _places(
    marks: Sequence[tuple[float, str]],
    axis: Axis,
    within: tuple[float, float] | None,
    style: DimensionStyle,
) -> tuple[list[float], bool]:
    """Where the figures stand along the axis; and, along x, whether they are turned to stand closer."""
    wanted = [at for at, _ in marks]
    if axis == "x":
        widths = [text_width(label, style.text) for _, label in marks]
        apart = [(w0 + w1) / 2 + style.beside for w0, w1 in pairwise(widths)]
        if within is None or sum(apart) + (widths[0] + widths[-1]) / 2 <= within[1] - within[0]:
            inside = within and (within[0] + widths[0] / 2, within[1] - widths[-1] / 2)
            places = spread(wanted, apart, within=inside)
            if max(abs(place - at) for place, at in zip(places, wanted, strict=True)) <= _LEVEL_SHIFT:
                return places, False
    tall = ascent(style.text) + descent(style.text)
    inside = within and (within[0] + tall / 2, within[1] - tall / 2)
    return spread(wanted, [tall + style.between] * (len(wanted) - 1), within=inside), axis == "x"


def draw_running(placed: RunningPlacement, style: DimensionStyle = STYLE) -> Drawing:
    """Extension lines, terminators, dimension line, figures, in that order."""
    return (
        *(item for figure in placed.figures for item in _extension(placed, figure, style)),
        *_terminators(placed, style),
        *_dimension_line(placed, style),
        *(_text(placed, figure, style) for figure in placed.figures),
    )


def _is_origin(placed: RunningPlacement, figure: Figure) -> bool:
    return abs(figure.at - placed.origin) <= _SAME


def _extension(placed: RunningPlacement, figure: Figure, style: DimensionStyle) -> Drawing:
    """From the outline to the figure, bent where the figure is shifted, broken by the origin mark."""
    out, axis = placed.out, placed.axis
    start, end = placed.outline + out * style.gap, placed.line + out * style.overshoot
    tail = [on_axis(axis, figure.at, end)]
    if placed.bend:
        place = figure.at if abs(figure.place - figure.at) <= _STRAIGHT else figure.place
        tail.append(on_axis(axis, place, end + out * placed.bend))
        tail.append(on_axis(axis, place, end + out * (placed.bend + style.stub)))
    if not _is_origin(placed, figure):
        return (Line((on_axis(axis, figure.at, start), *tail)),)
    reach = out * style.origin
    return (
        Line((on_axis(axis, figure.at, start), on_axis(axis, figure.at, placed.line - reach))),
        Line((on_axis(axis, figure.at, placed.line + reach), *tail)),
    )


def _terminators(placed: RunningPlacement, style: DimensionStyle) -> Drawing:
    """The origin's circle, an arrow at each figure, and a dot where an arrow would lie on its neighbour."""
    origin, axis = placed.origin, placed.axis
    drawn: list[Primitive] = [Disc(on_axis(axis, origin, placed.line), style.origin)]
    for way in (1, -1):
        last, room = origin, style.origin
        beyond = {figure.at for figure in placed.figures if (figure.at - origin) * way > _SAME}
        for at in sorted(beyond, reverse=way < 0):
            tip = on_axis(axis, at, placed.line)
            if abs(at - last) - room >= style.arrow:
                drawn.append(arrow(tip, on_axis(axis, float(way), 0.0), style))
            else:
                drawn.append(dot(tip, style))
            last, room = at, style.dot
    return tuple(drawn)


def _dimension_line(placed: RunningPlacement, style: DimensionStyle) -> Drawing:
    """From the origin mark to the farthest figure, on either side of it that has any."""
    lines: list[Line] = []
    ends = (min(f.at for f in placed.figures), max(f.at for f in placed.figures))
    for way, end in zip((-1, 1), ends, strict=True):
        if (end - placed.origin) * way > style.origin:
            begin = placed.origin + way * style.origin
            lines.append(Line((on_axis(placed.axis, begin, placed.line), on_axis(placed.axis, end, placed.line))))
    return tuple(lines)


def _text(placed: RunningPlacement, figure: Figure, style: DimensionStyle) -> Text:
    """The figure past the end of its line: level along y, turned or level along x."""
    out = placed.out
    bent = placed.bend + style.stub if placed.bend else 0.0
    end = placed.line + out * (style.overshoot + bent + style.text_gap)
    middle = figure_middle(figure.place, style.text)
    if placed.axis == "y":
        return Text((end, middle), figure.label, style.text, "start" if out > 0 else "end")
    if placed.turned:
        baseline = figure.place + style.text / 2
        return Text((baseline, end), figure.label, style.text, "start" if out > 0 else "end", 90.0)
    baseline = end + descent(style.text) - style.text_gap / 2 if out > 0 else end - ascent(style.text)
    return Text((figure.place, baseline), figure.label, style.text, "middle")
