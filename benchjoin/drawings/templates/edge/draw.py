"""How the template of a shaped edge is drawn: the straight edge above, the curve below it, the wood under that.

It begins at the datum end of the part. Where both halves are alike it ends at the middle of the part, with a centre
line about which it is flipped. Where it is cut into pieces stands first; words keep clear of those places.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs
import shapely

from ....drafting.full_size.strip import WORDS, Strip, joints
from ....drafting.lettering import ascent, text_width, wrap
from ....drafting.primitives import Line, Primitive, Text, text_box
from ....layout.edges import ShapedEdge
from ....layout.layout import Layout
from ....outlines import SAG, depths
from ....phrases import counted
from ..marking import ranges
from ..waste import waste

LAND = 18.0
"""What is left of the paper under the deepest place, for its words. [mm]"""
_TEXT, _PITCH = 2.5, 3.8
_HATCH = 7.0
ORDINATE = 100.0
"""Between two places at which the depth is told. [mm]"""


@attrs.frozen(eq=False)
class EdgeTemplate:
    """One shaped edge and all the parts that have it, by their marks."""

    edge: ShapedEdge
    marks: tuple[str, ...]

    @property
    def half(self) -> bool:
        """Whether half of it does."""
        return self.edge.symmetrical

    @property
    def length(self) -> float:
        """How long it is. [mm]"""
        return self.edge.part.length / (2 if self.half else 1)


def draw_edge(layout: Layout, one: EdgeTemplate, name: str, reach: float) -> Strip:
    """The template at full size, its datum end at x = 0, and where it is cut for pages that reach so far. [mm]"""
    tape, edge, length = layout.frame.tape, one.edge, one.length
    step = 12.7 if tape.unit == "in" else 10.0
    marked = [at for ends in edge.ends for at in ends if 0.0 < at < length]
    places = joints(length, reach, step=step, avoid=marked)
    high = edge.deepest + LAND
    curve = _curve(edge, length, high)
    zones = [(at - WORDS[0], at + WORDS[1]) for at in places[1:-1]]
    words = tuple(_words(layout, one, name, zones))
    told = tuple(_ordinates(layout, one, marked, high, zones, words))
    drawn: list[Primitive] = [Line(curve, "visible"), *words, *told]
    drawn += [Line(((x, 0.0), (x, high)), "centre" if one.half and x else "visible") for x in (0.0, length)]
    drawn += [Line(((x, high), (x, high - 4.0)), "thin") for x in marked]
    texts = [item for item in (*words, *told) if isinstance(item, Text)]
    region = shapely.Polygon([*curve, (length, high), (0.0, high)]).buffer(0)
    for at in places[1:-1]:
        region = region.difference(shapely.box(at - WORDS[0], 0.0, at + WORDS[1], high))
    drawn += waste(region, _HATCH, texts)
    return Strip(name=name, drawing=tuple(drawn), height=high, places=places, words=LAND / 2)


def _curve(edge: ShapedEdge, length: float, high: float) -> list[tuple[float, float]]:
    """The edge as it is cut, as far as the template goes, from the datum end. [mm]"""
    outline = edge.part.outline
    places = [at for at in outline.places(SAG, edge.profile) if at < length] + [length]
    return [(at, high - deep) for at, deep in zip(places, depths(edge.profile, places), strict=True)]


def _words(layout: Layout, one: EdgeTemplate, name: str, zones: Sequence[tuple[float, float]]) -> Iterator[Text]:
    """What it is for on every stretch of the land between two joints; ends and centre line by their names."""
    tape, edge, role = layout.frame.tape, one.edge, one.edge.part.slot.role
    for at, word in ((0.0, role.datum), (one.length, "flip here" if one.half else role.end)):
        turned = at + 1.0 + ascent(_TEXT) if at == 0.0 else at - 1.5
        if text_width(word, _TEXT) <= LAND - 1.0:
            yield Text((turned, LAND / 2), word, _TEXT, "middle", 90.0)
    said = f"{name}, {edge.name} for {counted(len(one.marks), role.word)} {ranges(one.marks)}: {edge.told(tape)}"
    ends = [0.0, *(at for zone in zones for at in zone), one.length]
    for start, end in zip(ends[::2], ends[1::2], strict=True):
        room = end - start - 14.0
        lines = list(wrap(said, _TEXT, room)) if room > 40.0 else []
        for number, line in enumerate(lines[:2]):
            yield Text((start + 7.0, LAND - 8.5 - _PITCH * number), line, _TEXT)


def _ordinates(
    layout: Layout,
    one: EdgeTemplate,
    marked: Sequence[float],
    high: float,
    zones: Sequence[tuple[float, float]],
    written: Sequence[Text],
) -> Iterator[Primitive]:
    """Every so often how far the edge stands back there, to check the print, or to bend a batten to."""
    read, depth = layout.frame.tape.read, one.edge.profile.depth
    count = int(one.length // ORDINATE)
    places = [ORDINATE * n for n in range(1, count + 1)]
    boxes = [text_box(word) for word in written]
    for at in places:
        back = float(depth(at))
        if back < 6.0 or any(low - 1.0 <= at <= far + 4.0 for low, far in zones):
            continue
        for words in (f"{read(at)}: {read(back)}", read(back)):
            text = Text((at + 1.0 + ascent(_TEXT), high - back / 2), words, _TEXT, "middle", 90.0)
            if text_width(words, _TEXT) <= back - 1.0 and not any(text_box(text).intersects(box) for box in boxes):
                yield Line(((at, high), (at, high - back)), "thin")
                yield text
                break
