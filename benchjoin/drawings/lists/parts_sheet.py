"""The parts sheet: the piece drawn apart, an item number on one part of each kind, and the table of the kinds."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Unpack

import shapely

from ...drafting.dimensions.spread import spread
from ...drafting.primitives import Disc, Drawing, Line, Point, Primitive, Text, bounds, figure_middle, shift
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import draw_rows, set_table
from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ...layout.parts import Part
from ...shop.cut_list import parts_table
from ..making.asked import Asked, OfAPiece, ask
from ..making.fitting import fit_view
from ..making.pieces import named, titled
from ..views.face import Face
from ..views.isometric import Apart, drawn_apart

RADIUS = 3.4
"""Of a balloon. [mm]"""
BESIDE = 9.0
"""Between the picture and the balloons. [mm]"""
TABLE = 176.0
"""The table is at most so wide. [mm]"""


def parts_sheet(layout: Layout, **options: Unpack[OfAPiece]) -> Sheet:
    """The picture of one piece drawn apart with item numbers, and its parts table; options as for an elevation.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    (sheet,) = apart_pages(layout, ask(layout, OfAPiece, options))
    return sheet


def apart_pages(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    """The parts sheet."""
    parts, title = layout.piece(asked.piece), titled(asked, "Parts, drawn apart")
    shown = drawn_apart(layout, asked.piece)
    table = parts_table(layout)
    head, rows, columns = set_table(table, TABLE)
    ruled = tuple(draw_rows([head, *rows], columns, table.aligned(), (0.0, 0.0)))

    def draw(scale: float) -> Figure:
        picture = shown.drawing(scale)
        balloons = tuple(_balloons(parts, shown, picture, scale))
        whole = (*picture, *balloons)
        x0, y0, x1, _ = bounds(whole)
        left, _, right, top = bounds(ruled)
        return Figure(name=title, drawing=(*whole, *shift(ruled, (x0 + x1 - left - right) / 2, y0 - 6.0 - top)))

    others = list(_of_other_pieces(layout, asked.piece))
    notes = [" ".join(others)] if others else []
    yield fit_view(asked, draw, name=named(asked, "parts-apart"), kind="Parts", title=title, free=True, notes=notes)


def _of_other_pieces(layout: Layout, piece: int) -> Iterator[str]:
    """Kinds that this piece has not: where they are, and which item stands in their place here."""
    here = {part.identity: part.kind for part in layout.piece(piece)}
    told = set(here.values())
    for part in layout.parts:
        if part.kind not in told and part.identity in here:
            told.add(part.kind)
            yield f"Item {part.kind}: {part.identity} of piece {part.piece}, for item {here[part.identity]}."


def _balloons(parts: Sequence[Part], shown: Apart, picture: Drawing, scale: float) -> Iterator[Primitive]:
    """Item numbers in two columns beside the picture, each joined to the largest face of a part of its kind."""
    marked = _marked(parts, shown.faces)
    x0, _, x1, _ = bounds(picture)
    middle = (x0 + x1) / 2
    places = {kind: (point[0] * scale, point[1] * scale) for kind, point in marked.items()}
    for out, x in ((-1, x0 - BESIDE), (1, x1 + BESIDE)):
        own = sorted(
            (kind for kind, (px, _) in places.items() if (px < middle) == (out < 0)), key=lambda kind: places[kind][1]
        )
        pitch = 2 * RADIUS + 2.0
        if not own:
            continue
        for kind, y in zip(own, spread([places[k][1] for k in own], [pitch] * (len(own) - 1)), strict=True):
            yield from _balloon(str(kind), (x, y), places[kind], out)


def _balloon(number: str, at: Point, to: Point, out: int) -> Iterator[Primitive]:
    yield Line(((at[0] - out * RADIUS, at[1]), to))
    yield Disc(to, 0.5, filled=True)
    yield Disc(at, RADIUS)
    yield Text((at[0], figure_middle(at[1], 2.5)), number, 2.5, "middle")


def _marked(parts: Sequence[Part], faces: Sequence[Face]) -> Mapping[int, Point]:
    """For each kind a point well inside the largest face that is seen of any part of it."""
    kinds = {part.name: part.kind for part in parts}
    best: dict[int, Face] = {}
    for face in faces:
        kind = kinds[face.part]
        if kind not in best or face.region.area > best[kind].region.area + 1e-3:
            best[kind] = face
    points = {kind: shapely.point_on_surface(face.region) for kind, face in sorted(best.items())}
    return {kind: (float(point.x), float(point.y)) for kind, point in points.items()}
