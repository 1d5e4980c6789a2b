"""The parts sheet: the piece drawn apart, every part of it with the mark that stands on its wood, and their sizes.

It never asks for larger paper than it gets: a table that does not go below the picture is left to the cut list, and
marks that are too many for balloons stand in columns.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Unpack

import attrs
import shapely

from ...drafting.dimensions.spread import spread
from ...drafting.primitives import Disc, Drawing, Line, Point, Primitive, Text, bounds, figure_middle, shift
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import draw_rows, set_table
from ...drafting.sheets.sheet import Sheet
from ...errors import PaperError
from ...layout.layout import Layout
from ...layout.parts import Part
from ...shop.cut_list import parts_table
from ...shop.marks import marks
from ...tables import Table
from ..making.asked import Asked, OfAPiece, ask
from ..making.fitting import fit_view
from ..making.pieces import named, titled
from ..views.face import Face
from ..views.isometric import Apart, drawn_apart

RADIUS = 3.9
"""Of a balloon. [mm]"""
BESIDE = 9.0
"""Between the picture and the balloons. [mm]"""
COLUMN = 4.4
"""From mark to mark where there are so many that they have no balloons. [mm]"""
MOST = 16
"""Balloons on one side of a picture; more marks stand in a column."""
TABLE = 170.0
"""The table is at most so wide. [mm]"""


def parts_sheet(layout: Layout, **options: Unpack[OfAPiece]) -> Sheet:
    """The picture of one piece drawn apart with the marks of its parts, and their sizes; options as for an elevation.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    (sheet,) = apart_pages(layout, ask(layout, OfAPiece, options))
    return sheet


def apart_pages(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    """The parts sheet; its table is left to the cut list where it does not go below the picture."""
    table = parts_table(layout, asked.piece)
    others = " ".join(_of_other_pieces(layout, asked.piece))
    first = attrs.evolve(asked, paper=asked.papers[0])
    try:
        yield _sheet(layout, first, table, [others] if others else [])
    except PaperError:
        yield _sheet(layout, asked, None, ["Sizes: see the cut list, by these marks.", *([others] if others else [])])


def _sheet(layout: Layout, asked: Asked, table: Table | None, notes: Sequence[str]) -> Sheet:
    parts, title = layout.piece(asked.piece), titled(asked, "Parts, drawn apart")
    shown = drawn_apart(layout, asked.piece)
    below: Drawing = ()
    if table:
        head, rows, columns = set_table(table, TABLE)
        below = tuple(draw_rows([head, *rows], columns, table.aligned(), (0.0, 0.0)))

    def draw(scale: float) -> Figure:
        drawn = shown.drawing(scale)
        whole = (*drawn, *_marked(parts, shown, drawn, scale))
        x0, y0, x1, _ = bounds(whole)
        left, _, right, top = bounds(below) if below else (0.0, 0.0, 0.0, 0.0)
        return Figure(name=title, drawing=(*whole, *shift(below, (x0 + x1 - left - right) / 2, y0 - 6.0 - top)))

    return fit_view(asked, draw, name=named(asked, "parts-apart"), kind="Parts", title=title, free=True, notes=notes)


def _of_other_pieces(layout: Layout, piece: int) -> Iterator[str]:
    """Kinds that this piece has not: which parts of other pieces they are, and which stand in their place here."""
    here = {part.identity: part for part in layout.piece(piece)}
    kinds = {part.kind for part in here.values()}
    other = [part for part in layout.parts if part.kind not in kinds and part.identity in here]
    if other:
        own = marks(here[identity].mark for identity in dict.fromkeys(part.identity for part in other))
        yield f"Not as drawn here: {marks(part.mark for part in other)}, in the places of {own}; see the cut list."


def _marked(parts: Sequence[Part], shown: Apart, drawn: Drawing, scale: float) -> Iterator[Primitive]:
    """Marks in two columns beside the picture, each joined to the largest face of its part that is seen."""
    faces = _largest(shown.faces)
    called = {part.name: part.mark for part in parts if part.name in faces}
    x0, _, x1, _ = bounds(drawn)
    places = {called[name]: (x * scale, y * scale) for name, (x, y) in faces.items()}
    middle = sorted(x for x, _ in places.values())[len(places) // 2]  # as many on the one side as on the other
    for out, x in ((-1, x0 - BESIDE), (1, x1 + BESIDE)):
        own = sorted(
            (mark for mark, (px, _) in places.items() if (px < middle) == (out < 0)), key=lambda m: places[m][1]
        )
        if not own:
            continue
        ringed = len(own) <= MOST
        pitch = 2 * RADIUS + 1.5 if ringed else COLUMN
        heights = spread([places[mark][1] for mark in own], [pitch] * (len(own) - 1))
        for mark, y in zip(own, heights, strict=True):
            yield from (_balloon if ringed else _named)(mark, (x, y), places[mark], out)


def _named(mark: str, at: Point, to: Point, out: int) -> Iterator[Primitive]:
    """A mark without a balloon, its line begins beside it."""
    yield Line(((at[0] - out, at[1]), to))
    yield Disc(to, 0.5, filled=True)
    yield Text((at[0], figure_middle(at[1], 2.5)), mark, 2.5, "start" if out > 0 else "end")


def _balloon(mark: str, at: Point, to: Point, out: int) -> Iterator[Primitive]:
    yield Line(((at[0] - out * RADIUS, at[1]), to))
    yield Disc(to, 0.5, filled=True)
    yield Disc(at, RADIUS)
    yield Text((at[0], figure_middle(at[1], 2.5)), mark, 2.5, "middle")


def _largest(faces: Sequence[Face]) -> Mapping[str, Point]:
    """For each part, by name, a point well inside the largest of its faces that is seen."""
    best: dict[str, Face] = {}
    for face in faces:
        if face.part not in best or face.region.area > best[face.part].region.area + 1e-3:
            best[face.part] = face
    points = {name: shapely.point_on_surface(face.region) for name, face in best.items()}
    return {name: (float(point.x), float(point.y)) for name, point in points.items()}
