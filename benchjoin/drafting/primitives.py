"""What a drawing is made of: lines, filled regions, discs, texts and cut-outs of drawings, in mm on paper, y up.

A drawing is a tuple of these. Whoever draws makes them, whoever places or tests asks them for bounds and
overlaps, and `writers` put them on pages. They are frozen, and a coordinate that is not a finite number is refused when
one is made.

>>> mark = (Line(((0, 0), (10, 0)), "visible"), Text((5, 1), "10", anchor="middle"))
>>> bounds(shift(mark, 100, 50))[:2]
(100.0, 50.0)
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Literal, TypeAlias, Union

import attrs
import shapely

from ..errors import PaperError
from .lettering import ascent, descent, text_width
from .linework import check_kind

_READABLE = 2.5  # mm, below that no letter is made smaller by a printer's factor

Point = tuple[float, float]
Box = tuple[float, float, float, float]


def _number(value: float) -> float:
    number = float(value)
    if not math.isfinite(number):
        raise PaperError(f"{value!r} is not a place or a size on paper: every number of a drawing must be finite.")
    return number


def _positive(value: float) -> float:
    number = _number(value)
    if number <= 0:
        raise PaperError(f"A height or a radius on paper must be more than nothing, not {value!r}.")
    return number


def _point(value: Sequence[float]) -> Point:
    x, y = value
    point = float(x), float(y)
    if not math.isfinite(point[0] + point[1]):
        return _number(x), _number(y)  # which says what is wrong, unless only their sum is too large
    return point


def _points(values: Iterable[Sequence[float]]) -> tuple[Point, ...]:
    points = tuple([(float(x), float(y)) for x, y in values])
    if not math.isfinite(sum([x + y for x, y in points])):  # one sum finds any nan or infinity
        for point in points:
            _point(point)
    return points


def _rings(values: Iterable[Iterable[Sequence[float]]]) -> tuple[tuple[Point, ...], ...]:
    return tuple(_points(ring) for ring in values)


def _known_kind(_: object, __: object, kind: str) -> None:
    check_kind(kind)


@attrs.frozen
class Line:
    """A polyline of one kind of line; closed joins its last point to its first."""

    points: tuple[Point, ...] = attrs.field(converter=_points)
    kind: str = attrs.field(default="thin", validator=_known_kind)
    closed: bool = False


@attrs.frozen
class Fill:
    """A filled region: arrowheads, bars, blank patches. A point inside an even number of rings is outside."""

    rings: tuple[tuple[Point, ...], ...] = attrs.field(converter=_rings)
    tone: Literal["black", "white"] = attrs.field(default="black", validator=attrs.validators.in_(("black", "white")))


@attrs.frozen
class Disc:
    """A circle drawn with a kind of line, or filled black."""

    centre: Point = attrs.field(converter=_point)
    radius: float = attrs.field(converter=_positive)
    kind: str = attrs.field(default="thin", validator=_known_kind)
    filled: bool = False


@attrs.frozen
class Text:
    """A line of text, its baseline at `at`, turned counter-clockwise in degrees; 90 reads from the right."""

    at: Point = attrs.field(converter=_point)
    string: str
    height: float = attrs.field(default=2.5, converter=_positive)
    anchor: Literal["start", "middle", "end"] = attrs.field(
        default="start", validator=attrs.validators.in_(("start", "middle", "end"))
    )
    turn: float = attrs.field(default=0.0, converter=_number)
    bold: bool = False


# how much of a text lies before the place that holds it
SHARES = {"start": 0.0, "middle": 0.5, "end": 1.0}


def _box(value: Sequence[float]) -> Box:
    left, low, right, high = (_number(edge) for edge in value)
    if left >= right or low >= high:
        raise PaperError(f"Nothing is seen through a window from ({left:g}, {low:g}) to ({right:g}, {high:g}).")
    return left, low, right, high


def _items(value: Iterable[Primitive]) -> Drawing:
    return tuple(value)


@attrs.frozen
class Clipped:
    """A drawing of which only what lies in a box is seen; its lines keep their points, so nothing moves at the edge."""

    drawing: Drawing = attrs.field(converter=_items)
    box: Box = attrs.field(converter=_box)


Primitive: TypeAlias = Union[Line, Fill, Disc, Text, Clipped]  # noqa: UP007, a string in it waits for its class
Drawing: TypeAlias = tuple[Primitive, ...]


def shift(drawing: Drawing, dx: float, dy: float) -> Drawing:
    """The same drawing, moved right by dx and up by dy."""
    return _carried(drawing, lambda points: tuple([(x + dx, y + dy) for x, y in points]))


def stretch(drawing: Drawing, across: float, up: float) -> Drawing:
    """The same drawing with every place farther from the origin by two factors; letters and discs by their mean."""
    moved = _carried(drawing, lambda points: tuple([(x * across, y * up) for x, y in points]))
    return _grown(moved, math.sqrt(across * up))


def _grown(drawing: Drawing, by: float) -> Drawing:
    """Letters and discs larger by a factor, where they are; letters that are small already grow no smaller."""

    def one(item: Primitive) -> Primitive:
        if isinstance(item, Text):
            return attrs.evolve(item, height=max(item.height * by, min(item.height, _READABLE)))
        if isinstance(item, Disc):
            return attrs.evolve(item, radius=item.radius * by)
        return attrs.evolve(item, drawing=_grown(item.drawing, by)) if isinstance(item, Clipped) else item

    return drawing if by == 1.0 else tuple(one(item) for item in drawing)


def _carried(drawing: Drawing, moved: Callable[[tuple[Point, ...]], tuple[Point, ...]]) -> Drawing:
    def one(item: Primitive) -> Primitive:
        if isinstance(item, Line):
            return Line(moved(item.points), item.kind, item.closed)
        if isinstance(item, Fill):
            return Fill(tuple(moved(ring) for ring in item.rings), item.tone)
        if isinstance(item, Text):
            return Text(moved((item.at,))[0], item.string, item.height, item.anchor, item.turn, item.bold)
        if isinstance(item, Disc):
            return Disc(moved((item.centre,))[0], item.radius, item.kind, item.filled)
        low, high = moved((item.box[:2], item.box[2:]))
        return Clipped(_carried(item.drawing, moved), (*low, *high))

    return tuple([one(item) for item in drawing])


def flat(drawing: Drawing) -> Iterator[Line | Fill | Disc | Text]:
    """All that is in a drawing, with all that is in what is cut out of others, seen or not."""
    for item in drawing:
        if isinstance(item, Clipped):
            yield from flat(item.drawing)
        else:
            yield item


def text_corners(text: Text) -> tuple[Point, Point, Point, Point]:
    """Corners of the box of a text: its width as it is set, by ascent and descent, turned as the text is."""
    width = text_width(text.string, text.height, bold=text.bold)
    left = -width * SHARES[text.anchor]
    low, high = -descent(text.height), ascent(text.height)
    x, y = text.at
    if not text.turn:
        a, b, c, d = x + left, y + low, x + (left + width), y + high
        return (a, b), (c, b), (c, d), (a, d)
    angle = math.radians(text.turn)
    cos, sin = math.cos(angle), math.sin(angle)

    def corner(u: float, v: float) -> Point:
        return x + u * cos - v * sin, y + u * sin + v * cos

    right = left + width
    return corner(left, low), corner(right, low), corner(right, high), corner(left, high)


def text_bounds(text: Text) -> Box:
    """The smallest upright box round a text: left, bottom, right, top. [mm]"""
    xs, ys = zip(*text_corners(text), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def text_box(text: Text) -> shapely.Polygon:
    """The box of a text as a polygon."""
    return shapely.Polygon(text_corners(text))


def joined(first: Box, *others: Box) -> Box:
    """The smallest box round some boxes. [mm]"""
    lefts, lows, rights, highs = zip(first, *others, strict=True)
    return min(lefts), min(lows), max(rights), max(highs)


def bounds(drawing: Drawing) -> Box:
    """Smallest box round a drawing, line widths left out: left, bottom, right, top. [mm]

    Raises
    ------
    PaperError
        If nothing is drawn: nothing has no bounds.
    """
    points: list[Point] = []
    for item in drawing:
        points.extend(item.points if isinstance(item, Line) else _extremes(item))
    if not points:
        raise PaperError("An empty drawing has no bounds.")
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _extremes(item: Primitive) -> Iterable[Point]:
    if isinstance(item, Line):
        return item.points
    if isinstance(item, Text):
        return text_corners(item)
    if isinstance(item, Fill):
        return [point for ring in item.rings for point in ring]
    if isinstance(item, Disc):
        (x, y), r = item.centre, item.radius
        return (x - r, y - r), (x + r, y + r)
    (a, b, c, d), (left, low, right, high) = bounds(item.drawing), item.box
    return (max(a, left), max(b, low)), (min(c, right), min(d, high))


def figure_middle(y: float, height: float) -> float:
    """Baseline that puts the middle of figures of this height on y."""
    return y - height / 2
