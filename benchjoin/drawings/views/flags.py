"""Flags: the mark of one part of each kind on a picture, on its wood or beside it.

A mark stands on the largest face that is seen where it goes in; where it does not, a thin line leads from the wood to
the mark, the shortest that crosses no other part and ends where nothing is drawn.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import attrs
import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.base import BaseGeometry

from ...drafting.lettering import ascent, descent, text_width
from ...drafting.primitives import Disc, Line, Point, Primitive, Text, figure_middle, text_box
from ...layout.parts import Part
from .face import Face
from .isometric import Apart, Regions

Numbers = npt.NDArray[np.int64]
TEXT = 2.5
DOT = 0.5
"""Radius of the dot on the wood. [mm]"""
MOST_FACES = 3
"""Faces of a kind that are tried, the largest first."""
ANGLES = tuple(range(0, 360, 30))
"""Which way a line may lead. [degrees]"""
REACHES = (6.0, 9.0, 14.0, 22.0, 34.0, 52.0)
"""How far it may lead. [mm]"""
AIR = 0.6
"""Round a mark. [mm]"""
AT_ONCE = 24
"""So many lines are held against the wood at once, the cheapest first."""
MARGIN, ROW = 9.0, 4.5
"""Beside the picture, and from one mark there to the next. [mm]"""
ROWS = 40
"""So many marks up and down a margin are tried."""
BARRED = 1000.0
"""What crossing other wood costs, in millimetres of line."""


def flags(parts: Sequence[Part], shown: Apart, scale: float) -> Iterator[Primitive]:
    """The mark of a part of each kind that is seen, on the picture of a piece drawn apart."""
    names = {part.name: part for part in parts}
    order = sorted(shown.faces, key=lambda face: -face.region.area)
    regions = [shapely.transform(face.region, lambda at: at * scale) for face in order]
    ways = shapely.transform(shown.ways, lambda at: at * scale)
    shapely.prepare(ways)
    ground = _Ground(order, regions, ways)
    kinds = sorted({part.kind for part in parts})
    seen = [[n for n, face in enumerate(order) if names[face.part].kind == kind][:MOST_FACES] for kind in kinds]
    marks = [(own, [names[order[n].part].mark for n in own]) for own in seen if own]
    on_wood = [ground.on_wood(*each) for each in marks]
    yield from filter(None, on_wood)
    for each, text in zip(marks, on_wood, strict=True):
        if text is None:
            yield from ground.put(*each)


@attrs.frozen
class _Ground:
    """Faces of a picture, their regions and the ways of the rails on paper, and what flags have taken. [mm]"""

    faces: Sequence[Face]
    regions: list[BaseGeometry]
    ways: BaseGeometry
    owners: Numbers = attrs.field(init=False)
    tree: shapely.STRtree = attrs.field(init=False)
    taken: list[BaseGeometry] = attrs.field(factory=list)

    @owners.default
    def _owners(self) -> Numbers:
        return np.unique([face.part for face in self.faces], return_inverse=True)[1]

    @tree.default
    def _tree(self) -> shapely.STRtree:
        shapely.prepare(self.regions)  # each is asked for often
        return shapely.STRtree(self.regions)

    def on_wood(self, own: Sequence[int], marks: Sequence[str]) -> Text | None:
        """A mark on the first of some faces that takes it."""
        for number, mark in zip(own, marks, strict=True):
            text = _on_the_wood(self.regions[number], mark)
            if text:
                self.taken.append(text_box(text))
                return text
        return None

    def put(self, own: Sequence[int], marks: Sequence[str]) -> Iterator[Primitive]:
        """A mark beside the wood, with the line that suits best from any of some faces."""
        tried = [self._best(number, mark) for number, mark in zip(own, marks, strict=True)]
        cost, foot, end, mark = min(tried, key=lambda one: one[0])
        if cost >= BARRED:
            foot, end = self._in_the_margin(own[0], marks[0])
            mark = marks[0]
        box = _box(end, mark)
        self.taken.extend([box, shapely.LineString([foot, end])])
        yield Line((foot, _edge(end, foot, mark)))
        yield Disc(foot, DOT, filled=True)
        yield Text((end[0], figure_middle(end[1], TEXT)), mark, TEXT, "middle", bold=True)

    def _in_the_margin(self, number: int, mark: str) -> tuple[Point, Point]:
        """Where the picture has no room: from the middle of a face to a margin, the nearer first, clear of flags."""
        middle = shapely.point_on_surface(self.regions[number])
        left, _, right, _ = shapely.total_bounds(self.regions)
        sides = sorted((left - MARGIN, right + MARGIN), key=lambda x: abs(x - middle.x))
        ends = [(x, middle.y + ROW * step) for step in sorted(range(-ROWS, ROWS + 1), key=abs) for x in sides]
        boxes = shapely.box(*_boxes(np.array(ends), mark).T)
        lines = shapely.linestrings([((middle.x, middle.y), end) for end in ends])
        marks = shapely.union_all([shape for shape in self.taken if shape.geom_type == "Polygon"])
        met = 2 * shapely.intersects(boxes, shapely.union_all(self.taken)) + shapely.intersects(lines, marks)
        x, y = ends[int(np.argmin(met))]
        return (float(middle.x), float(middle.y)), (float(x), float(y))

    def _best(self, number: int, mark: str) -> tuple[float, Point, Point, str]:
        """The line that suits best from one face: what it costs, where it begins and ends."""
        feet, ends = _lines(self.regions[number])
        boxes = shapely.box(*_boxes(ends, mark).T)
        box, wood = self.tree.query(boxes)
        barred = self._met(box, wood, boxes) + shapely.intersects(self.ways, boxes)
        cost = np.hypot(*(ends - feet).T) + BARRED * barred
        found = (math.inf, -1)
        order = np.argsort(cost, kind="stable")
        for some in np.array_split(order, math.ceil(len(order) / AT_ONCE)):
            if cost[some[0]] > found[0]:
                break  # crossing wood only makes lines dearer
            lines = shapely.linestrings(np.stack([feet[some], ends[some]], axis=1))
            whole = cost[some] + BARRED * self._crossed(number, lines, boxes[some])
            found = min(found, *zip(whole.tolist(), some.tolist(), strict=True))
        best = found[1]
        return found[0], tuple(feet[best].tolist()), tuple(ends[best].tolist()), mark

    def _crossed(self, number: int, lines: Regions, boxes: Regions) -> Numbers:
        """How many other faces each line crosses, and how many flags it or its box lies on."""
        line, wood = self.tree.query(lines)
        other = self.owners[wood] != self.owners[number]
        taken = shapely.STRtree(self.taken)
        on = np.concatenate([taken.query(shapes, predicate="intersects") for shapes in (boxes, lines)], axis=1)
        flags_met = np.bincount(np.unique(on, axis=1)[0], minlength=len(lines))
        return self._met(line[other], wood[other], lines) + flags_met

    def _met(self, which: Numbers, wood: Numbers, shapes: Regions) -> Numbers:
        """How many faces each shape meets, of those that may be met."""
        met = shapely.intersects(self.tree.geometries[wood], shapes[which])
        return np.bincount(which[met], minlength=len(shapes))


def _on_the_wood(region: BaseGeometry, mark: str) -> Text | None:
    """A mark that lies wholly on a face, well inside."""
    at = shapely.point_on_surface(region)
    for point in (region.centroid, at):
        text = Text((point.x, figure_middle(point.y, TEXT)), mark, TEXT, "middle", bold=True)
        if region.contains(text_box(text).buffer(0.2)):
            return text
    return None


def _lines(region: BaseGeometry) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
    """Where lines begin on a face, and where their marks would stand, shape (n, 2) each. [mm]"""
    middle = shapely.point_on_surface(region)
    ring = shapely.get_coordinates(region.minimum_rotated_rectangle)[:4]
    ends = np.array([(ring[n] + ring[n - 1]) / 2 for n in range(4)])
    far = sorted(ends.tolist(), key=lambda end: -math.hypot(end[0] - middle.x, end[1] - middle.y))[:2]
    starts = np.array([(middle.x, middle.y), *(((x + middle.x) / 2, (y + middle.y) / 2) for x, y in far)])
    starts = starts[shapely.contains_xy(region, starts)]
    ways = np.array([(math.cos(math.radians(a)), math.sin(math.radians(a))) for a in ANGLES])
    steps = (ways[:, None] * np.array(REACHES)[None, :, None]).reshape(-1, 2)
    feet = np.repeat(starts, len(steps), axis=0)
    return feet, feet + np.tile(steps, (len(starts), 1))


def _boxes(at: npt.NDArray[np.float64], mark: str) -> npt.NDArray[np.float64]:
    """Boxes of a mark whose middles are given, with its air, shape (n, 2) to (n, 4). [mm]"""
    wide = text_width(mark, TEXT, bold=True) / 2 + AIR
    low, high = TEXT / 2 + descent(TEXT) + AIR, ascent(TEXT) - TEXT / 2 + AIR
    return np.column_stack([at[:, 0] - wide, at[:, 1] - low, at[:, 0] + wide, at[:, 1] + high])


def _box(at: Point, mark: str) -> BaseGeometry:
    return shapely.box(*_boxes(np.array([at]), mark)[0])


def _edge(end: Point, foot: Point, mark: str) -> Point:
    """Where a line meets the box of its mark."""
    met = shapely.LineString([foot, end]).difference(_box(end, mark))
    x, y = met.coords[-1] if not met.is_empty else foot
    return float(x), float(y)
