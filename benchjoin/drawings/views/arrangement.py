"""The general arrangement: front, end and plan in projection on one sheet, with the picture beside them.

Third angle puts the plan over the front and the left end on its left, first angle the other way about; views in line
share an edge, so that one can be read from the other. Where all sizes go on at 1:16 or larger they stand here, and no
view needs a sheet of its own; on a smaller one there are the sizes over all, the levels with their names, and what no
other sheet gives.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from typing import Literal, Unpack

import attrs
import shapely
from shapely.geometry.base import BaseGeometry

from ...drafting.dimensions.running import place_running
from ...drafting.dimensions.span import overall
from ...drafting.lettering import text_width
from ...drafting.linework import Linework
from ...drafting.primitives import Box, Drawing, Text, bounds, figure_middle, joined, shift
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import TOUCH, distinct
from ..making.asked import Asked, OfAPiece, ask
from ..making.fitting import CROWDED, Way, fit_view
from ..making.house import Reader, projection, reader
from ..making.notes import written
from ..making.pieces import named, shown_parts, titled
from .bought import bought, names_of_bought
from .cutting import Lettered, planes
from .elevation import upright_figure
from .isometric import Picture, picture_of
from .labels import Taken, front_sign, heights_of_levels, leg_marks
from .plan import flat_figure
from .repeated import spacing_notes
from .strokes import drawn
from .view import View, view
from .view_sizes import Row
from .wall import wall

SMALLEST_FULL = 1 / 16
"""All sizes stand on the arrangement at this scale and larger ones."""
ALL_SIZES = ", with all sizes"
"""What the figure of an arrangement is called more that has them."""
GAP = 6.0
"""Between one view and the next. [mm]"""
CAPTION = 3.5
"""Height of the names of the views. [mm]"""
GRID = 1e-4
"""Lines are compared on this. [mm]"""
LEAST_WIDE = 24.0
"""Notes are written at least so wide. [mm]"""
PICTURE = (1.0, 0.8, 0.6)
"""How large the picture is beside the views; it is not measured, so that it makes room for them."""
ROW = 8.0
"""From a view to its size over all. [mm]"""


@of_a_layout
def arrangement(layout: Layout, **options: Unpack[OfAPiece]) -> Sheet:
    """Front, end and plan of one piece in projection with its picture, on one sheet at one standard scale.

    Options are paper, house and piece, as `Asked` has them.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    return arrangement_page(layout, ask(layout, OfAPiece, options))


@attrs.frozen(kw_only=True)
class Views:
    """What the arrangement shows of a piece: its views, its picture, cutting planes, and sizes that no other sheet has.

    ends are those that are drawn: the left one, and the right one where it is not its mirror image.
    """

    front: View
    ends: tuple[View, ...]
    plan: View
    picture: Picture
    sections: tuple[Lettered, ...] = ()
    extra: Mapping[int, Sequence[float]] = attrs.field(factory=dict)

    @property
    def all(self) -> tuple[View, ...]:
        """All views."""
        return (self.front, *self.ends, self.plan)


def views_of(asked: Asked) -> Views:
    """The views of a piece."""
    parts = shown_parts(asked)
    left, right = view(parts, "left"), view(parts, "right")
    ends = (left,) if mirrored(left, right) else (left, right)
    return Views(front=view(parts, "front"), ends=ends, plan=view(parts, "above"), picture=picture_of(asked))


def mirrored(one: View, other: View) -> bool:
    """Whether a view from the other side shows the mirror image of a view."""
    places = one.bounds
    turned = (-other.bounds[2], other.bounds[1], -other.bounds[0], other.bounds[3])
    if any(abs(a - b) > TOUCH for a, b in zip(places, turned, strict=True)):
        return False
    pairs = ((one.visible, other.visible), (one.hidden, other.hidden))
    return all(bool(shapely.equals(shapely.set_precision(a, GRID), _flipped(b))) for a, b in pairs)


def arrangement_page(layout: Layout, asked: Asked, views: Views | None = None) -> Sheet:
    """The general arrangement."""
    shown = views or views_of(asked)
    title = titled(asked, "General arrangement")

    def draw(scale: float) -> Iterator[Way]:
        sheet = _Sheet(layout, asked, shown, scale)
        if scale >= SMALLEST_FULL - 1e-9:
            yield from sheet.ways(f"{title}{ALL_SIZES}", full=True)
        yield from sheet.ways(title, full=False)

    apart = min(*(look.apart for look in shown.all), shown.picture.apart)
    wide, high = ([look.bounds[n + 2] - look.bounds[n] for look in shown.all] for n in (0, 1))
    wood = (0.0, 0.0, sum(wide[:-1]), high[0] + high[-1])
    return fit_view(
        asked,
        draw,
        name=named(asked, "arrangement"),
        kind="General arrangement",
        title=title,
        wood=wood,
        apart=apart,
        form="iso",
    )


def is_full(sheet: Sheet) -> bool:
    """Whether an arrangement has all sizes, so that its views need no sheets of their own."""
    return any(figure.name.endswith(ALL_SIZES) for figure in sheet.figures)


def _flipped(lines: BaseGeometry) -> BaseGeometry:
    """Lines as a mirror shows them, held to a grid."""
    return shapely.set_precision(shapely.transform(lines, lambda at: at * (-1.0, 1.0)), GRID)


def _notes(layout: Layout, shown: Views, parts: Sequence[Part]) -> list[str]:
    """What the sheet says of itself."""
    notes = ["Heights are those of the tops of the levels."]
    if len(shown.ends) == 1:
        notes.append("The right end is the left end, handed.")
    mark = next((part.mark for part in parts if part.slot.upright), "")
    if layout.frame.quantity > 1 and mark:
        notes.append(f"Legs carry the marks of piece {mark.rstrip('0123456789')}.")
    return notes


@attrs.frozen
class _Sheet:
    """The arrangement at a scale."""

    layout: Layout
    asked: Asked
    shown: Views
    scale: float

    @property
    def third(self) -> bool:
        """Whether the plan stands over the front."""
        return projection(self.layout.frame, self.asked.house) == "third angle"

    @property
    def _free_side(self) -> Literal["left", "right"]:
        """The side of the front on which no end stands, or the right one."""
        return "right" if self.third or len(self.shown.ends) > 1 else "left"

    @property
    def parts(self) -> tuple[Part, ...]:
        """The parts of the piece."""
        return shown_parts(self.asked)

    @property
    def read(self) -> Reader:
        """How sizes are written."""
        return reader(self.layout.frame, self.asked.house)

    def ways(self, name: str, *, full: bool) -> Iterator[Way]:
        """The views with all sizes or few, and the picture in the corner or beside them; none where figures crowd."""
        figures = [self._full(look) if full else self._few(look) for look in self.shown.all]
        shifted = max(figure.shifted for figure in figures)
        if full and shifted > CROWDED:
            return
        views, corner = self._in_projection(
            *(
                _captioned(figure, look, self.scale, beside="" if full or look.eye.up[2] else self._free_side)
                for figure, look in zip(figures, self.shown.all, strict=True)
            )
        )
        told = [*_notes(self.layout, self.shown, self.parts), *self._runs()]
        shows = tuple(dict.fromkeys(part.identity for part in self.parts))

        def placed(scale: float, dx: float, dy: float, said: Drawing) -> Figure:
            picture = shift(self.shown.picture.drawing(scale), dx, dy)
            return Figure(name=name, drawing=(*views, *picture, *said), shows=shows, shifted=shifted)

        whole = bounds(views)
        for share in PICTURE:
            a, b, c, d = size = self.shown.picture.bounds(share * self.scale)
            for dx, dy, said in _beside(whole, size, corner, told):
                each = joined(whole, (a + dx, b + dy, c + dx, d + dy), *([bounds(said)] if said else []))
                yield Way(each, partial(placed, share * self.scale, dx, dy, said))

    def _runs(self) -> list[str]:
        """The words for repeated members that any of the views shows."""
        shown = {name for look in self.shown.all for name in look.shows}
        return spacing_notes(self.parts, self.read, (0, 1), shown)

    def _full(self, look: View) -> Figure:
        """A view with all its sizes."""
        if not look.eye.up[2]:
            return flat_figure(self.layout, self.asked, look, self.scale)
        return upright_figure(self.layout, self.asked, look, self.scale, self._planes(look))

    def _few(self, look: View) -> Figure:
        """A view with its size over all, the levels of the front, and what no other sheet gives."""
        rows = self._levels(look) if look is self.shown.front else self._extra(look)
        lines = tuple(drawn(look, self.scale, group_of(self.shown, self.scale, self.asked)))
        drawing: Drawing = (*lines, *self._over(look), *(item for row in rows for item in row.drawing()))
        around = (self.layout, self.parts, look, self.scale)
        drawing = (*drawing, *wall(*around), *bought(*around, drawing))
        drawing = (*drawing, *planes(look, self._planes(look), self.scale, drawing))
        taken = Taken(drawing)
        words = (*front_sign(look, self.scale, taken), *leg_marks(self.parts, look, self.scale, taken))
        words = (*words, *names_of_bought(*around, taken))
        figures = [figure for row in rows for figure in row.placed.figures]
        shifted = max((abs(figure.place - figure.at) for figure in figures), default=0.0)
        return Figure(name=look.eye.title, drawing=(*drawing, *words), shows=look.shows, shifted=shifted)

    def _planes(self, look: View) -> tuple[Lettered, ...]:
        """The cutting planes that a view shows: the first end has them all."""
        return self.shown.sections if look is self.shown.ends[0] else ()

    def _levels(self, look: View) -> list[Row]:
        """The tops of the levels with their names, and the height of the whole."""
        left, _, right, top = (edge * self.scale for edge in look.bounds)
        tops = {name: heights[0] for name, heights in heights_of_levels(self.parts, "front", 1.0)}
        values = [(z * self.scale, self.read(z)) for z in distinct([*tops.values(), look.bounds[3]])]
        side = self._free_side
        edge = right if side == "right" else left
        placed = place_running(values, origin=(edge, 0.0), axis="y", side=side, outline=edge)
        names: dict[float, str] = {}
        for name, z in tops.items():
            names[z] = f"{names[z]}, {name}" if z in names else name
        return [Row(placed, "", top, tuple((z * self.scale, name) for z, name in names.items()))]

    def _extra(self, look: View) -> list[Row]:
        """Of the plan, places that no other sheet gives, from the front and the left end."""
        if look is not self.shown.plan:
            return []
        left, low, _, _ = (edge * self.scale for edge in look.bounds)
        rows = []
        for axis, places in self.shown.extra.items():
            values = [(place * self.scale, self.read(abs(place))) for place in places]
            if axis == 0:
                rows.append(Row(place_running(values, origin=(0.0, low), axis="x", side="below", outline=low)))
            else:
                rows.append(Row(place_running(values, origin=(left, 0.0), axis="y", side="left", outline=left)))
        return rows

    def _over(self, look: View) -> Drawing:
        """The length on the front and the depth on an end, on the side away from the plan."""
        if look is self.shown.plan:
            return ()
        left, low, right, high = look.bounds
        at, edge = (low * self.scale - ROW, low) if self.third else (high * self.scale + ROW, high)
        ends = (edge * self.scale, edge * self.scale)
        if not self.third:
            boxes = [look.eye.frame.local(part.blank) for part in self.parts]
            first = max(box.high[1] for box in boxes if box.low[0] <= left + TOUCH)
            last = max(box.high[1] for box in boxes if box.high[0] >= right - TOUCH)
            ends = (first * self.scale, last * self.scale)
        return overall(left * self.scale, right * self.scale, self.read(right - left), axis="x", at=at, outline=ends)

    def _in_projection(self, front: Figure, *others: Figure) -> tuple[Drawing, tuple[float, float, int, int]]:
        """The views in line, and the free corner between the plan and the first end, with the way out of it."""
        *ends, plan = others
        a, b, c, d = front.bounds
        _, y0, _, y1 = plan.bounds
        over = shift(plan.drawing, 0.0, d + GAP - y0 if self.third else b - GAP - y1)
        views: Drawing = (*front.drawing, *over)
        corner = (a, d, -1, 1) if self.third else (c, b, 1, -1)
        for number, end in enumerate(ends):
            p, q, r, s = end.bounds
            to_the_left = self.third == (number == 0)
            placed = shift(end.drawing, a - GAP - r if to_the_left else c + GAP - p, 0.0)
            views = (*views, *placed)
            if number == 0:
                beside = bounds(over)[0] if self.third else bounds(over)[2]
                corner = (beside, s if self.third else q, corner[2], corner[3])
        return views, corner


def group_of(shown: Views, scale: float, asked: Asked) -> Linework:
    """The group of lines of the whole sheet."""
    return asked.house.linework.fitted(min(*(look.apart for look in shown.all), shown.picture.apart) * scale)


def _captioned(figure: Figure, look: View, scale: float, *, beside: Literal["", "left", "right"]) -> Figure:
    """A view with its name below it, or beside its wood where that side is free."""
    x0, y0, x1, _ = figure.bounds
    left, low, right, high = (edge * scale for edge in look.bounds)
    wide = text_width(look.eye.title, CAPTION)
    if beside:
        at = (right + 4.0, "start") if beside == "right" else (left - 4.0, "end")
        name = Text((at[0], figure_middle((low + high) / 2, CAPTION)), look.eye.title, CAPTION, at[1])  # type: ignore[arg-type]
    if not beside or not Taken(figure.drawing).is_free(name):
        middle = min(max((left + right) / 2, x0 + wide / 2), max(x0 + wide / 2, x1 - wide / 2))
        name = Text((middle, y0 - 2.5 - CAPTION), look.eye.title, CAPTION, "middle")
    return attrs.evolve(figure, drawing=(*figure.drawing, name))


def _beside(
    views: Box, size: Box, corner: tuple[float, float, int, int], notes: Sequence[str]
) -> Iterator[tuple[float, float, Drawing]]:
    """How far the picture is moved, whose size is given, and what the sheet says of itself, at its place. [mm]

    The picture goes to the free corner, which it may stretch outwards, or to the right, left, upper or lower side; the
    words stand in the corner where that is left free, and else below.
    """
    x, y, right, up = corner
    a, b, c, d = size
    x0, y0, x1, y1 = views
    below = shift(written(notes, x1 - x0), x0, y0 - GAP)
    lifted = y + up * GAP - (b if up > 0 else d)
    yield x + right * GAP - (a if right > 0 else c), lifted, shift(below, 0.0, min(0.0, lifted + b - y0))
    wide, tall = (x1 - x if right > 0 else x - x0) - GAP, (y1 - y if up > 0 else y - y0) - GAP
    said = written(notes, wide) if wide > LEAST_WIDE else ()
    if said and bounds(said)[3] - bounds(said)[1] <= tall:
        p, _, _, s = bounds(said)
        said = shift(said, (x + GAP if right > 0 else x0) - p, (y1 if up > 0 else y - GAP) - s)
    else:
        said = below
    level, middle = (y0 + y1 - b - d) / 2, (x0 + x1 - a - c) / 2
    yield x1 + GAP - a, level, said
    yield x0 - GAP - c, level, said
    yield middle, y1 + GAP - b, said
    yield middle, (min(y0, bounds(said)[1]) if said else y0) - GAP - d, said
