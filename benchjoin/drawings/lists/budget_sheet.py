"""The error budget on paper: its table, and two small plots of how errors grow from the foot to the highest mark.

One plot is of each mark on its own, the other of the same mark on two legs. Every way of marking has its own kind of
line and its name at the end of it, so that no colour is needed. All figures are those of the error budget.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Unpack

import attrs

from ...drafting.dimensions.spread import spread
from ...drafting.primitives import Box, Disc, Line, Point, Primitive, Text, figure_middle
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import PITCH, TEXT
from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ...shop.budget.error_budget import ErrorBudget, error_budget
from ...shop.budget.marking_ways import Marking, MarkingWay
from ..making.asked import Asked, OnPaper, ask
from ..making.flowing import Listed, flowing_sheets
from ..making.maker import INSET
from .table_figure import titled

PLOT = 43.0
"""Height of a plot, with its title and the figures below it. [mm]"""
NAMES = 38.0
"""Room for the names of the lines beside a plot. [mm]"""
DOT = 0.6
"""Radius of the dot where there is one mark only. [mm]"""
KINDS: Mapping[MarkingWay, str] = {
    "tape, mark to mark": "phantom",
    "tape, from one end": "thin",
    "printed strip": "hidden",
    "stop block": "centre",
}

At = Callable[[float, float], Point]
"""Where a distance and an error lie on the paper."""


def error_budget_sheets(
    layout: Layout, marking: Marking | None = None, **options: Unpack[OnPaper]
) -> tuple[Sheet, ...]:
    """The sheet of a layout's error budget; none where no leg carries a mark. Options are paper and house.

    Raises
    ------
    PaperError
        If the paper is too small for table and plots.
    """
    asked = attrs.evolve(ask(layout, OnPaper, options), marking=marking)
    return flowing_sheets(asked, list(budget_lists(layout, asked)))


def budget_lists(layout: Layout, asked: Asked) -> Iterator[Listed]:
    """The error budget; no list where no leg carries a mark."""
    budget = error_budget(layout, asked.marking)
    if budget is not None:
        yield Listed(name="error-budget", title="Error budget", figures=lambda wide: _figures(budget, wide))


def _figures(budget: ErrorBudget, wide: float) -> Sequence[Figure]:
    """The table with its notes, and both plots beside each other."""
    table = attrs.evolve(budget.table(), title="Error budget")
    half = (wide - INSET) / 2
    places = {way: [mark.place.worst for mark in marks] for way, marks in budget.ways.items()}
    legs = {way: [mark.between_legs.worst for mark in marks] for way, marks in budget.ways.items()}
    plots = (
        *_axes(budget, "Each mark, at worst, over the foot", places, (0.0, 0.0, half, PLOT)),
        *_axes(budget, "Leg to leg, at worst, over the foot", legs, (wide - half, 0.0, wide, PLOT)),
    )
    return [*titled(table, wide), Figure(name="Errors over the distance from the foot", drawing=plots)]


def _axes(
    budget: ErrorBudget, title: str, errors: Mapping[MarkingWay, Sequence[float]], inside: Box
) -> Iterator[Primitive]:
    """Errors from the lowest mark to the highest: axes with figures, a line and a name for each way of marking."""
    x0, y0, x1, y1 = inside[0] + 14.0, inside[1] + 9.0, inside[2] - NAMES, inside[3] - PITCH - 4.0
    most = max(max(values) for values in errors.values())
    step = nice_step(most / _unit(budget), int((y1 - y0) / PITCH)) * _unit(budget)
    count = max(math.ceil(most / step - 1e-9), 1)
    far = budget.ways_marks[-1]
    near = budget.ways_marks[0] if budget.ways_marks[0] < far else 0.0

    def at(distance: float, error: float) -> Point:
        return x0 + (distance - near) / (far - near) * (x1 - x0), y0 + error / (count * step) * (y1 - y0)

    yield Text((inside[0], inside[3] - TEXT), f"{title} (± {budget.tape.unit})", TEXT, bold=True)
    yield Line(((x0, y1), (x0, y0), (x1, y0)), "thin")
    for number in range(count + 1):
        x, y = at(near, number * step)
        yield Line(((x - 1.5, y), (x, y)))
        yield Text((x - 2.2, figure_middle(y, TEXT)), f"{number * step / _unit(budget):.6g}", TEXT, "end")
    for distance in (near, far):
        x, y = at(distance, 0.0)
        yield Line(((x, y - 1.5), (x, y)))
        yield Text((x, y - 2.2 - TEXT), budget.tape.read(distance), TEXT, "middle")
    yield from _lines(budget, errors, at, (x1, y1))


def _lines(
    budget: ErrorBudget, errors: Mapping[MarkingWay, Sequence[float]], at: At, corner: Point
) -> Iterator[Primitive]:
    """The lines of the ways of marking, and their names beside the upper right corner of the plot and below it."""
    x1 = corner[0]
    ends = sorted(errors, key=lambda way: errors[way][-1])
    heights = [at(budget.ways_marks[-1], errors[way][-1])[1] for way in ends]
    places = spread(heights, [PITCH] * (len(ends) - 1), within=(at(budget.ways_marks[0], 0.0)[1], corner[1]))
    for way, height, name in zip(ends, heights, places, strict=True):
        points = [at(distance, error) for distance, error in zip(budget.ways_marks, errors[way], strict=True)]
        yield Line(tuple(points), KINDS[way]) if points[0] != points[-1] else Disc(points[0], DOT, filled=True)
        yield Line(((x1 + 0.6, height), (x1 + 3.0, name)))
        yield Text((x1 + 3.6, figure_middle(name, TEXT)), way, TEXT)


def _unit(budget: ErrorBudget) -> float:
    return 25.4 if budget.tape.unit == "in" else 1.0


def nice_step(most: float, lines: int) -> float:
    """The smallest step of 1, 2 or 5 times a power of ten that goes into a size no more than so many times.

    >>> nice_step(17.2, 10), nice_step(17.2, 6), nice_step(0.36, 8)
    (2.0, 5.0, 0.05)
    """
    power: float = 10.0 ** math.floor(math.log10(most / lines))
    return next(factor * power for factor in (1.0, 2.0, 5.0, 10.0) if most / (factor * power) <= lines + 1e-9)
