"""Sizes of whole views: heights from the floor, places along the length and the depth, and what it all comes to.

Every edge of a view is reached once by a running size from the floor, the left end or the front, since that is how a
tape reads; a size over everything says again what they say, and is in brackets. Sizes are decided first (`upright`,
`flat`), so that one can ask how far figures had to be shifted, and drawn after (`Sizes.drawing`).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Literal

import attrs
import shapely

from ...drafting.dimensions.leader import row_line
from ...drafting.dimensions.running import RunningPlacement, draw_running, place_running
from ...drafting.dimensions.span import overall
from ...drafting.primitives import Drawing, Primitive, Text, bounds, figure_middle
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import TOUCH, distinct
from ..making.house import House, Reader, reader
from .repeated import untold
from .view import Eye, View
from .wall import one_row

Axis = Literal["x", "y"]
CAPTION = 2.5
"""Height of names and captions. [mm]"""
BESIDE_FIGURES = 1.5
"""Between the longest figure of a column and the names beside it. [mm]"""


@attrs.frozen
class Column:
    """A line of running heights: beside which edge of the view, its caption, and the heights it gives. [mm]

    A height that the first column gives is not given again, and the caption of the second says so.
    """

    side: Literal["left", "right"]
    caption: str
    heights: tuple[float, ...]


@attrs.frozen
class Row:
    """A running dimension that is decided, and its caption with the height that it may not lie below. [mm]

    names are written beside figures, by the places that these stand for: the levels that begin or end there.
    """

    placed: RunningPlacement
    caption: str = ""
    top: float = 0.0
    names: tuple[tuple[float, str], ...] = ()

    def drawing(self) -> Drawing:
        """The dimension, its caption above its end, and the names beside its figures."""
        drawn = (*draw_running(self.placed), *self._named())
        if not self.caption:
            return drawn
        out = self.placed.out
        beside = (self.placed.outline + out * 3.0, max(bounds(drawn)[3], self.top) + 1.5)
        return (*drawn, Text(beside, self.caption, CAPTION, "start" if out > 0 else "end"))

    def _named(self) -> Iterator[Text]:
        """Names in a column of their own, each at its figure."""
        out, figures = self.placed.out, self.placed.figures
        written = bounds(tuple(item for item in draw_running(self.placed) if isinstance(item, Text)))
        beside = written[2] + BESIDE_FIGURES if out > 0 else written[0] - BESIDE_FIGURES
        for at, name in self.names:
            figure = min(figures, key=lambda one: abs(one.at - at))
            place = (beside, figure_middle(figure.place, CAPTION))
            yield Text(place, name, CAPTION, "start" if out > 0 else "end")


@attrs.frozen
class Sizes:
    """All sizes of a view at a scale."""

    rows: tuple[Row, ...]
    over: Drawing

    @property
    def shifted(self) -> float:
        """How far the figure stands that had to leave its place the most. [mm]"""
        figures = (figure for row in self.rows for figure in row.placed.figures)
        return max((abs(figure.place - figure.at) for figure in figures), default=0.0)

    def naming(self, levels: Sequence[tuple[str, Sequence[float]]]) -> Sizes:
        """The same sizes with names of levels beside the heights at which they end, or else begin. [mm on paper]"""
        rows = self.rows
        for name, heights in levels:
            rows = _with_name(rows, name, heights)
        return attrs.evolve(self, rows=rows)

    def drawing(self) -> Drawing:
        """Running sizes, then the sizes over everything."""
        drawn: list[Primitive] = [item for row in self.rows for item in row.drawing()]
        return (*drawn, *self.over)


def _with_name(rows: tuple[Row, ...], name: str, heights: Sequence[float]) -> tuple[Row, ...]:
    """A name at the first of some heights that an upright row gives; a figure with a name gets both."""
    for at in heights:
        for number, row in enumerate(rows):
            if row.placed.axis == "y" and any(abs(figure.at - at) <= TOUCH for figure in row.placed.figures):
                there = dict(row.names)
                there[at] = f"{there[at]}, {name}" if at in there else name
                return (*rows[:number], attrs.evolve(row, names=tuple(there.items())), *rows[number + 1 :])
    return rows


def columns(parts: Sequence[Part], eye: Eye) -> tuple[Column, ...]:
    """Heights of an upright view, each once.

    Seen from the front or the back: those of the near rails and legs on the left of the page, and on the right those
    of all others that are not among them. Seen from an end: all on the side of the back legs. Those of a single row are
    never on the side of its wall.
    """
    if one_row(parts):
        return (Column("right" if eye.name == "left" else "left", "", tuple(_heights(parts))),)
    if eye.name in ("left", "right"):
        return (Column("left" if eye.name == "left" else "right", "", tuple(_heights(parts))),)
    near = _heights(part for part in parts if part.side == eye.name)
    far = [z for z in _heights(parts) if all(abs(z - other) > TOUCH for other in near)]
    found = (Column("left", f"{eye.name} heights", tuple(near)), Column("right", "other heights", tuple(far)))
    return tuple(column for column in found if column.heights)


def _stands(part: Part) -> bool:
    """Whether it is a leg: what stands by itself, and is no board that runs up."""
    return part.slot.upright and not part.slot.run


def _heights(parts: Iterable[Part]) -> list[float]:
    """Rising heights of rail edges and leg tops over the floor. [mm]"""
    edges = {z for part in parts for z in (part.blank.low[2], part.blank.high[2])}
    return [z for z in distinct(edges) if abs(z) > TOUCH]


def said(parts: Sequence[Part], seen: View) -> dict[int, tuple[float, ...]]:
    """The places along the axes of the world that a view with all its sizes gives. [mm]"""
    legs = [part for part in parts if _stands(part)]
    if seen.eye.up[2]:
        axis = 0 if seen.eye.right[0] else 1
        own = [part for part in legs if axis == 1 or part.side == seen.eye.name]
        return {2: tuple(_heights(parts)), axis: tuple(_places(parts, own, seen, axis))}
    return {axis: tuple(_places(parts, legs, seen, axis)) for axis in (0, 1)}


def unsaid(
    sizes: Mapping[int, Sequence[float]], known: Sequence[Mapping[int, Sequence[float]]]
) -> dict[int, list[float]]:
    """The places that no other view gives. [mm]"""
    found = {}
    for axis, places in sizes.items():
        others = [place for view in known for place in view.get(axis, ())]
        new = [place for place in places if all(abs(place - other) > TOUCH for other in others)]
        if new:
            found[axis] = new
    return found


def upright(layout: Layout, parts: Sequence[Part], seen: View, scale: float, house: House) -> Sizes:
    """Heights from the floor beside an upright view, places from the left end or the front below it."""
    read, eye = reader(layout.frame, house), seen.eye
    left, _, right, top = (edge * scale for edge in seen.bounds)
    rows = []
    for column in columns(parts, eye):
        values = [(z * scale, read(z)) for z in column.heights]
        outline = left if column.side == "left" else right
        placed = place_running(values, origin=(outline, 0.0), axis="y", side=column.side, outline=outline)
        rows.append(Row(placed, column.caption, top))
    axis = 0 if eye.name in ("front", "back") else 1
    legs = [p for p in parts if _stands(p) and (axis == 1 or p.side == eye.name or one_row(parts))]
    rows.append(_run(_places(parts, legs, seen, axis), eye.right[axis] * scale, read, "x", (0.0, 0.0)))
    return Sizes(tuple(rows), _over(parts, seen, "x", scale, read))


def flat(layout: Layout, parts: Sequence[Part], seen: View, scale: float, house: House) -> Sizes:
    """Places along the length below a view from above, and along the depth on its left."""
    read = reader(layout.frame, house)
    left, low, _, _ = seen.bounds
    legs = [part for part in parts if _stands(part)]
    rows = (
        _run(_places(parts, legs, seen, 0), scale, read, "x", (0.0, low * scale)),
        _run(_places(parts, legs, seen, 1), scale, read, "y", (left * scale, 0.0)),
    )
    return Sizes(rows, (*_over(parts, seen, "x", scale, read), *_over(parts, seen, "y", scale, read)))


def _places(parts: Sequence[Part], always: Sequence[Part], seen: View, axis: int) -> list[float]:
    """Edges along an axis of the world: of some parts always, of the others where they are seen; but not the datum."""
    turn = seen.eye.right[axis] or seen.eye.up[axis]
    across = 0 if seen.eye.right[axis] else 1
    seen_at = distinct(turn * at for at in _square_edges(seen, across))
    edges = [edge for part in always for edge in (part.blank.low[axis], part.blank.high[axis])]
    others = distinct(_edges_told(parts, axis))
    edges += [edge for edge in others if any(abs(edge - at) <= TOUCH for at in seen_at)]
    return [place for place in distinct(edges) if abs(place) > TOUCH]


def _edges_told(parts: Sequence[Part], axis: int) -> Iterator[float]:
    """Both edges of every part along an axis of the world, but those that the words for a whole run stand for. [mm]"""
    left_out = untold(parts, axis)
    for part in parts:
        own = left_out.get(part.name, ())
        yield from (at for at in (part.blank.low[axis], part.blank.high[axis]) if at not in own)


def _square_edges(seen: View, across: int) -> list[float]:
    """Where visible lines stand that run square to an axis of the page. [mm]"""
    found = []
    for line in shapely.get_parts(seen.visible):
        points = shapely.get_coordinates(line)
        steps = abs(points[1:, across] - points[:-1, across]) <= TOUCH
        found += points[:-1, across][steps].tolist()
    return found


def _run(places: Sequence[float], scale: float, read: Reader, axis: Axis, origin: tuple[float, float]) -> Row:
    values = [(place * scale, read(abs(place))) for place in places]
    side: Literal["below", "left"] = "below" if axis == "x" else "left"
    outline = origin[1] if axis == "x" else origin[0]
    return Row(place_running(values, origin=origin, axis=axis, side=side, outline=outline))


def _over(parts: Sequence[Part], seen: View, axis: Axis, scale: float, read: Reader) -> Drawing:
    """The size over everything along an axis of the page, in brackets, from the wood at both of its ends."""
    along, across = (0, 1) if axis == "x" else (1, 0)
    edges = seen.bounds
    start, end = edges[along], edges[along + 2]
    blanks = [seen.eye.frame.local(part.blank) for part in parts]
    low = max(box.high[across] for box in blanks if box.low[along] <= start + TOUCH)
    high = max(box.high[across] for box in blanks if box.high[along] >= end - TOUCH)
    line = row_line(edges[across + 2] * scale, 0, 1)
    return overall(
        start * scale,
        end * scale,
        read(end - start),
        axis=axis,
        at=line,
        outline=(low * scale, high * scale),
        auxiliary=True,
    )
