"""How a story stick is drawn: lines with their readings, waste hatched with its rail and depth, whose it is between.

Where the strip is cut into pieces stands first; readings and words keep clear of those places, so that nothing that
must be read lies across a joint.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import shapely

from ....drafting.full_size.strip import WORDS, Strip, joints
from ....drafting.lettering import ascent, shorten, text_width
from ....drafting.primitives import Line, Primitive, Text, bounds, figure_middle, shift, text_box
from ....layout.layout import Layout
from ....layout.on_face import OnFace
from ....layout.sticks import Lane, Stick
from ....phrases import counted
from ..marking import part_marks
from ..waste import waste

LEAST_LANE = 15.0
"""Height of a lane, more where a reading is longer. [mm]"""
_TEXT, _READING = 2.5, 3.5
_BESIDE = 1.0
_HATCH = 7.0

Span = tuple[float, float]


def draw_stick(layout: Layout, stick: Stick, name: str, reach: float) -> Strip:
    """The whole stick at full size, its datum end at x = 0, and where it is cut for pages that reach so far. [mm]"""
    tape, length = layout.frame.tape, stick.length
    places = joints(length, reach, step=12.7 if tape.unit == "in" else 10.0, avoid=stick.edges)
    told = [*(tape.read(edge) for edge in stick.edges), *(tape.read(at) for at in places)]
    high = max(LEAST_LANE, *(text_width(words, _TEXT, bold=True) + 1.5 for words in told))
    drawn: list[Primitive] = []
    for number, lane in enumerate(reversed(stick.lanes)):
        drawn += shift(tuple(_lane(layout, stick, lane, name, places[1:-1], high)), 0.0, high * number)
    whole = high * len(stick.lanes)
    drawn += [Line(((0.0, n * high), (length, n * high))) for n in range(1, len(stick.lanes))]
    drawn += [Line(((x, 0.0), (x, whole)), "visible") for x in (0.0, length)]
    return Strip(name=name, drawing=tuple(drawn), height=whole, places=places, words=whole - high / 2)


def _lane(
    layout: Layout, stick: Stick, lane: Lane, name: str, places: Sequence[float], high: float
) -> Iterator[Primitive]:
    length, read = stick.length, layout.frame.tape.read
    zones = [(at - WORDS[0], at + WORDS[1]) for at in places]
    edges = [edge for cut in lane.cuts for edge in cut.edges]
    for cut in lane.cuts:
        yield from (Line(((e, 0.0), (e, high)), "visible" if cut.wood else "thin") for e in cut.edges)
    written: list[Text] = []
    for cut in lane.cuts:
        for edge, out in ((cut.start, -1), (cut.end, 1)):
            if edge in cut.edges:
                written.append(_reading(read(edge), edge, out, [*edges, 0.0, length], written, high))
    yield from written
    boxes = [text_box(text).bounds for text in written]
    taken = [*zones, *((box[0], box[2]) for box in boxes)]
    for cut, mate in zip(lane.cuts, lane.mates, strict=True):
        told = tuple(_waste(cut, (mate, cut.told(read)), taken, high))
        taken += [bounds((item,))[::2] for item in told if isinstance(item, Text)]
        yield from told
    notched = [(cut.start, cut.end) for cut in lane.cuts]
    ends = tuple(_ends(stick, notched, high))
    taken += [(box[0], box[2]) for box in (text_box(text).bounds for text in ends)]
    yield from ends
    clear = _free((0.0, length), [*taken, *notched])
    yield from _whose(lane, name, clear, high)


def _ends(stick: Stick, notched: Sequence[Span], high: float) -> Iterator[Text]:
    """Which end is which, along both ends where no notch runs out."""
    role = stick.parts[0].slot.role
    for at, way, word in ((0.0, 1, role.datum), (stick.length, -1, role.end)):
        if not any(start - 6.0 < at < end + 6.0 for start, end in notched):
            x = at + 1.0 + ascent(_TEXT) if way > 0 else at - 1.5
            told = word if text_width(word, _TEXT) <= high - 1.0 else "0" if way > 0 else ""
            if told:
                yield Text((x, high / 2), told, _TEXT, "middle", 90.0)


def _reading(words: str, edge: float, out: int, edges: Sequence[float], written: Sequence[Text], high: float) -> Text:
    """A reading along its line: outside the notch, or inside it where the next mark is too close."""
    height = _READING if text_width(words, _READING, bold=True) <= high - 1.5 else _TEXT
    tries = [_along(words, edge, way, height, high) for way in (out, -out)]
    for text in tries:
        box = text_box(text)
        x0, _, x1, _ = box.bounds
        low, far = min(x0, edge), max(x1, edge)
        if not any(low < e < far for e in edges) and not any(box.intersects(text_box(other)) for other in written):
            return text
    return tries[-1]


def _along(words: str, edge: float, way: int, height: float, high: float) -> Text:
    x = edge + _BESIDE + ascent(height) if way > 0 else edge - _BESIDE - 0.25 * height
    return Text((x, high / 2), words, height, "middle", 90.0, True)


def _free(span: Span, taken: Sequence[Span]) -> list[Span]:
    """What is left of a span, the widest first. [mm]"""
    at, found = span[0], []
    for low, high in [*sorted(taken), (span[1], span[1])]:
        if min(low, span[1]) > at:
            found.append((at, min(low, span[1])))
        at = max(at, high)
    return sorted(found, key=lambda ends: ends[0] - ends[1])


def _waste(cut: OnFace, words: tuple[str, str], taken: Sequence[Span], high: float) -> Iterator[Primitive]:
    """Rail and depth in the widest place between both lines; hatched where wood is waste and nothing is written."""
    span = (cut.start, cut.end)
    region = shapely.box(span[0], 0.0, span[1], high)
    for low, far in taken:
        region = region.difference(shapely.box(low - 0.5, 0.0, far + 0.5, high))
    start, end = (_free(span, taken) or [span])[0]
    wide = end - start - 1.5
    lines = (shorten(words[0], _TEXT, wide), words[1])
    for line, y in zip(lines, (1.2, -3.2), strict=True):
        if line and text_width(line, _TEXT) <= wide:
            text = Text(((start + end) / 2, high / 2 + y), line, _TEXT, "middle")
            region = region.difference(text_box(text).buffer(0.8, join_style="mitre"))
            yield text
    if cut.wood:
        yield from waste(region, _HATCH)


def _whose(lane: Lane, name: str, clear: Sequence[Span], high: float) -> Iterator[Primitive]:
    """In the widest clear stretch the marks of the parts; wherever there is room the stick's name and the face."""
    marks = " ".join(lane.marks[:4]) + (" …" if len(lane.marks) > 4 else "")
    signs = part_marks(lane.faces, high, written=shorten(marks, high / 5, 60.0, bold=True))
    words = f"{name}: {lane.title}, for {counted(len(lane.marks), lane.faces[0][0].slot.role.word)}"
    wide, told = bounds(signs)[2] + 4.0, text_width(words, _TEXT) + 4.0
    for number, (start, end) in enumerate(clear):
        if number == 0 and end - start >= wide:
            yield from shift(signs, start + 2.0, 0.0)
            start += wide
        if end - start >= told:
            yield Text((start + 2.0, figure_middle(high / 2, _TEXT)), words, _TEXT)
