"""The general arrangement: front, end and plan in projection on one sheet, with the picture beside them.

Third angle puts the plan over the front and the left end on its left, first angle the other way about; views in line
share an edge, so that one can be read from the other. Where all sizes go on at 1:16 or larger they stand here, and no
view needs a sheet of its own; on a smaller one there are the sizes over all, the levels with their names, and what no
other sheet gives.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Literal, Unpack

import attrs
import shapely
from shapely.geometry.base import BaseGeometry

from ...drafting.dimensions.running import place_running
from ...drafting.dimensions.span import overall
from ...drafting.lettering import text_width
from ...drafting.linework import Linework
from ...drafting.primitives import Drawing, Text, bounds, shift
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import TOUCH, distinct
from ...trade.standards import SCALES
from ..making.asked import Asked, OfAPiece, ask
from ..making.fitting import CROWDED, fit_view
from ..making.house import Reader, projection, reader
from ..making.pieces import named, titled
from .cutting import Lettered, planes
from .elevation import upright_figure
from .isometric import Picture, picture
from .labels import Taken, front_sign, heights_of_levels, leg_marks
from .plan import flat_figure
from .strokes import drawn
from .view import View, view
from .view_sizes import Row

SMALLEST_FULL = 1 / 16
"""All sizes stand on the arrangement at this scale and larger ones."""
GAP = 8.0
"""Between one view and the next. [mm]"""
CAPTION = 3.5
"""Height of the names of the views. [mm]"""
GRID = 1e-4
"""Lines are compared on this. [mm]"""
ROW = 9.0
"""From a view to its size over all. [mm]"""


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


def views_of(layout: Layout, piece: int) -> Views:
    """The views of a piece."""
    parts = layout.piece(piece)
    left, right = view(parts, "left"), view(parts, "right")
    ends = (left,) if mirrored(left, right) else (left, right)
    return Views(front=view(parts, "front"), ends=ends, plan=view(parts, "above"), picture=picture(parts))


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
    shown = views or views_of(layout, asked.piece)
    title = titled(asked, "General arrangement")

    def draw(scale: float) -> Sequence[Figure]:
        sheet = _Sheet(layout, asked, shown, scale)
        return [attrs.evolve(figure, name=title) for figure in sheet.ways()]

    apart = min(*(look.apart for look in shown.all), shown.picture.apart)
    left, low, right, high = shown.front.bounds
    wood = (left, low, right + shown.ends[0].bounds[2] - shown.ends[0].bounds[0], high)
    return fit_view(
        asked,
        draw,
        name=named(asked, "arrangement"),
        kind="General arrangement",
        title=title,
        wood=wood,
        apart=apart,
        notes=_notes(layout, shown, asked.piece),
    )


def is_full(sheet: Sheet) -> bool:
    """Whether an arrangement has all sizes, so that its views need no sheets of their own."""
    return any(scale.label == sheet.scale and scale.ratio >= SMALLEST_FULL - 1e-9 for scale in SCALES)


def _flipped(lines: BaseGeometry) -> BaseGeometry:
    """Lines as a mirror shows them, held to a grid."""
    return shapely.set_precision(shapely.transform(lines, lambda at: at * (-1.0, 1.0)), GRID)


def _notes(layout: Layout, shown: Views, piece: int) -> list[str]:
    """What the sheet says of itself."""
    notes = ["The right end is the left end, handed."] if len(shown.ends) == 1 else []
    mark = next((part.mark for part in layout.piece(piece) if part.slot.upright), "")
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
    def parts(self) -> tuple[Part, ...]:
        """The parts of the piece."""
        return self.layout.piece(self.asked.piece)

    @property
    def read(self) -> Reader:
        """How sizes are written."""
        return reader(self.layout.frame, self.asked.house)

    def ways(self) -> Iterator[Figure]:
        """The views, and the picture in the corner or on each side of them; nothing where figures would crowd."""
        full = self.scale >= SMALLEST_FULL - 1e-9
        figures = [self._full(look) if full else self._few(look) for look in self.shown.all]
        shifted = max(figure.shifted for figure in figures)
        if full and shifted > CROWDED:
            return
        named_ = [_captioned(figure, look, self.scale) for figure, look in zip(figures, self.shown.all, strict=True)]
        views, corner = self._in_projection(*named_)
        shows = tuple(dict.fromkeys(part.identity for part in self.parts))
        for beside in _beside(views, self.shown.picture.drawing(self.scale), corner):
            yield Figure(name="", drawing=(*views, *beside), shows=shows, shifted=shifted)

    def _full(self, look: View) -> Figure:
        """A view with all its sizes."""
        if not look.eye.up[2]:
            return flat_figure(self.layout, self.asked, look, self.scale)
        figure = upright_figure(self.layout, self.asked, look, self.scale)
        return attrs.evolve(figure, drawing=(*figure.drawing, *self._planes(look, figure.drawing)))

    def _few(self, look: View) -> Figure:
        """A view with its size over all, the levels of the front, and what no other sheet gives."""
        rows = self._levels(look) if look is self.shown.front else self._extra(look)
        lines = tuple(drawn(look, self.scale, group_of(self.shown, self.scale, self.asked)))
        drawing: Drawing = (*lines, *self._over(look), *(item for row in rows for item in row.drawing()))
        taken = Taken(drawing)
        words = (*front_sign(look, self.scale, taken), *leg_marks(self.parts, look, self.scale, taken))
        figures = [figure for row in rows for figure in row.placed.figures]
        shifted = max((abs(figure.place - figure.at) for figure in figures), default=0.0)
        whole = (*drawing, *words)
        whole = (*whole, *self._planes(look, whole))
        return Figure(name=look.eye.title, drawing=whole, shows=look.shows, shifted=shifted)

    def _planes(self, look: View, drawing: Drawing) -> Drawing:
        """Cutting planes, on the first end."""
        if look is not self.shown.ends[0] or not self.shown.sections:
            return ()
        return planes(look, self.shown.sections, self.scale, drawing)

    def _levels(self, look: View) -> list[Row]:
        """The tops of the levels with their names, and the height of the whole."""
        left, low, right, top = (edge * self.scale for edge in look.bounds)
        tops = {name: heights[0] for name, heights in heights_of_levels(self.parts, "front", 1.0)}
        values = [(z * self.scale, self.read(z)) for z in distinct([*tops.values(), look.bounds[3]])]
        side: Literal["left", "right"] = "right" if self.third or len(self.shown.ends) > 1 else "left"
        edge = right if side == "right" else left
        placed = place_running(values, origin=(edge, 0.0), axis="y", side=side, outline=edge)
        names: dict[float, str] = {}
        for name, z in tops.items():
            names[z] = f"{names[z]}, {name}" if z in names else name
        return [Row(placed, "tops of levels", top, tuple((z * self.scale, name) for z, name in names.items()))]

    def _extra(self, look: View) -> list[Row]:
        """Of the plan, places that no other sheet gives, on its outer sides."""
        if look is not self.shown.plan:
            return []
        left, low, right, top = (edge * self.scale for edge in look.bounds)
        rows = []
        if 0 in self.shown.extra:
            values = [(x * self.scale, self.read(abs(x))) for x in self.shown.extra[0]]
            above = self.third
            edge = top if above else low
            side: Literal["above", "below"] = "above" if above else "below"
            rows.append(Row(place_running(values, origin=(0.0, edge), axis="x", side=side, outline=edge)))
        if 1 in self.shown.extra:
            values = [(y * self.scale, self.read(abs(y))) for y in self.shown.extra[1]]
            edge = right if self.third else left
            across: Literal["left", "right"] = "right" if self.third else "left"
            rows.append(Row(place_running(values, origin=(edge, 0.0), axis="y", side=across, outline=edge)))
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
        return overall(
            left * self.scale, right * self.scale, self.read(right - left), axis="x", at=at, outline=ends
        )

    def _in_projection(self, front: Figure, *others: Figure) -> tuple[Drawing, tuple[float, float, int, int]]:
        """The views in line, and the free corner between the plan and the first end, with the way out of it."""
        *ends, plan = others
        a, b, c, d = front.bounds
        x0, y0, x1, y1 = plan.bounds
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


def _captioned(figure: Figure, look: View, scale: float) -> Figure:
    """A view with its name below it."""
    x0, y0, x1, _ = figure.bounds
    wide, middle = text_width(look.eye.title, CAPTION), (look.bounds[0] + look.bounds[2]) / 2 * scale
    middle = min(max(middle, x0 + wide / 2), max(x0 + wide / 2, x1 - wide / 2))
    name = Text((middle, y0 - 2.5 - CAPTION), look.eye.title, CAPTION, "middle")
    return attrs.evolve(figure, drawing=(*figure.drawing, name))


def _beside(views: Drawing, picture_: Drawing, corner: tuple[float, float, int, int]) -> Iterator[Drawing]:
    """The picture in the free corner, which it may stretch outwards, or on the right, left, upper or lower side."""
    x, y, right, up = corner
    a, b, c, d = bounds(picture_)
    x0, y0, x1, y1 = bounds(views)
    yield shift(picture_, x + right * GAP - (a if right > 0 else c), y + up * GAP - (b if up > 0 else d))
    level, middle = (y0 + y1 - b - d) / 2, (x0 + x1 - a - c) / 2
    yield shift(picture_, x1 + GAP - a, level)
    yield shift(picture_, x0 - GAP - c, level)
    yield shift(picture_, middle, y1 + GAP - b)
    yield shift(picture_, middle, y0 - GAP - d)
