"""Find texts that lie on each other or on a line: a reader of the recording, used before a sheet is let out.

>>> from benchjoin.drafting.primitives import Line, Text
>>> drawing = (Line(((0, 1), (20, 1))), Text((5, 0), "57"))
>>> [str(clash) for clash in clashes(drawing)]
["'57' at (5.0, 0.0) lies on a thin line"]
"""

from __future__ import annotations

import attrs
import shapely

from ..primitives import Disc, Drawing, Fill, Line, Primitive, Text, text_box

_AREA = 0.01  # mm² that two texts may share
_LENGTH = 0.05  # mm of a line that may graze the box of a text


@attrs.frozen
class Clash:
    """A text, and what it lies on."""

    text: Text
    other: Primitive

    def __str__(self) -> str:
        where = f"{self.text.string!r} at ({self.text.at[0]:.1f}, {self.text.at[1]:.1f})"
        if isinstance(self.other, Text):
            return f"{where} lies on {self.other.string!r}"
        return f"{where} lies on a {_called(self.other)}"


def _called(item: Primitive) -> str:
    return f"{item.kind} line" if isinstance(item, Line | Disc) else "fill"


def clashes(drawing: Drawing, lines: Drawing | None = None) -> list[Clash]:
    """Every text that lies on another text, or on one of `lines`.

    `lines` are all strokes and black fills of the drawing, if not given. A box of a text is its width as it is set,
    by ascent and descent; line widths are left out. What is cut out of another drawing is not looked into.
    """
    texts = [item for item in drawing if isinstance(item, Text) and item.string.strip()]
    if not texts:
        return []
    others = [item for item in (drawing if lines is None else lines) if not isinstance(item, Text)]
    shapes = [(item, _shape(item)) for item in others]
    marks = [(item, shape) for item, shape in shapes if not shape.is_empty]
    boxes = [text_box(text) for text in texts]
    tree = shapely.STRtree(boxes)
    found: list[Clash] = []
    for i, j in sorted(map(tuple, tree.query(boxes, predicate="intersects").T.tolist())):
        if i < j and boxes[i].intersection(boxes[j]).area > _AREA:
            found.append(Clash(texts[i], texts[j]))
    met = tree.query([shape for _, shape in marks], predicate="intersects").T.tolist()
    for m, i in sorted(map(tuple, met)):
        common = boxes[i].intersection(marks[m][1])
        if common.area > _AREA or common.length > _LENGTH:
            found.append(Clash(texts[i], marks[m][0]))
    return found


def _shape(item: Primitive) -> shapely.Geometry:
    """What a stroke or a black fill covers on paper; white fills cover nothing that could be read wrongly."""
    if isinstance(item, Line):
        points = [*item.points, item.points[0]] if item.closed else list(item.points)
        return shapely.LineString(points) if len(points) > 1 else shapely.Point()
    if isinstance(item, Disc):
        round_ = shapely.Point(item.centre).buffer(item.radius)
        return round_ if item.filled else round_.exterior
    if isinstance(item, Fill) and item.tone == "black":
        outer, *holes = item.rings
        return shapely.Polygon(outer, holes)
    return shapely.Point()
