"""What is written on every part before it is cut: its mark, the true face and the true edge, and which way is up.

A loop stands on the true face and its long tail runs to the true edge; a V on the true edge points to the true face.
They are signs that a pencil makes and need no colour. Common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from ...drafting.dimensions.style import arrow
from ...drafting.lettering import text_width
from ...drafting.primitives import Drawing, Line, Primitive, Text, bounds, figure_middle, shift
from ...frame.faces import OUT
from ...layout.parts import Part, face_up
from ...layout.sets import Band, PartSet
from ...lengths import TOUCH
from ...solids import Vector

Rows = Sequence[tuple[float, float]]
"""Lower and upper edge of each part of a band on the page. [mm]"""

LEGEND = ("Loop: true face, its tail to the true edge.", "V: true edge, its point to the true face.")
_LOOP = 3.0
_APART = 4.0
_CLEAR = 5.0
_HOLE = 4.0
"""A mark keeps so far from the centre of a hole. [mm]"""
_STAGGER = 12.0
"""Signs of neighbours stand so far apart. [mm]"""
HEIGHTS = (7.0, 5.0, 3.5, 2.5)
"""Of lettering, ISO 3098. [mm]"""


def legend(part_set: PartSet, band: Band) -> str:
    """What the signs mean that stand on the faces of a band."""
    up = list(zip(part_set.members, band.faces, strict=True))
    shown = (any(face == part.marked for part, face in up), any(face == part.slot.true_edge for part, face in up))
    return " ".join(said for said, is_shown in zip(LEGEND, shown, strict=True) if is_shown)


def member_marks(
    part_set: PartSet, band: Band, rows: Rows, bored: Sequence[Sequence[float]] = ()
) -> Iterator[Primitive]:
    """Marks of all parts of a band, each in the first stretch from its datum end that has room for them.

    bored has for each part where holes lie along it. [mm]
    """
    for number, (part, face) in enumerate(zip(part_set.members, band.faces, strict=True)):
        low, high = rows[number]
        drawn = part_marks(((part, face),), high - low)
        wide, aside = bounds(drawn)[2], _STAGGER * (number % 2)  # no two signs meet at an edge and make a cross
        for start, end in _clear(part, face, band, bored[number] if bored else ()):
            if end - start >= wide + aside + 2 * _CLEAR:
                yield from shift(drawn, start + _CLEAR + aside, low)
                break


def part_marks(faces: Sequence[tuple[Part, str]], high: float, *, written: str = "", arrows: bool = True) -> Drawing:
    """Marks of a face that lies from y = 0 to `high`, its datum end on the left, from x = 0. [mm]

    For several parts only those signs are drawn that are the same on all; written stands for their marks. Without
    arrows it does not say which way is up.
    """
    text = next((height for height in HEIGHTS if height <= high / 5), HEIGHTS[-1])
    drawn: list[Primitive] = list(signs(faces, high))
    x = (bounds(tuple(drawn))[2] + _APART) if drawn else 0.0
    word = Text((x, figure_middle(high / 2, text)), written or faces[0][0].mark, text, bold=True)
    drawn.append(word)
    x += text_width(word.string, text, bold=True) + _APART
    return (*drawn, *(up_arrow(faces, x, high) if arrows else ()))


def signs(faces: Sequence[tuple[Part, str]], high: float) -> Drawing:
    """The loop on the true face, the V on the true edge; nothing on other faces, or where parts differ in it."""
    found = {_sign(part, face, high) for part, face in faces}
    return found.pop() if len(found) == 1 else ()


def _sign(part: Part, face: str, high: float) -> Drawing:
    edge = part.slot.true_edge
    if face == part.marked:
        return _turned(_loop(high), high, upper=_is_upper(part, face, edge))
    if face == edge:
        return _turned(_vee(high), high, upper=_is_upper(part, face, part.marked))
    return ()


def _is_upper(part: Part, face: str, other: str) -> bool:
    """Whether another face lies along the upper edge of this one on the page."""
    return face_up(part, face).v == OUT[other]


def _turned(lines: Drawing, high: float, *, upper: bool) -> Drawing:
    """A sign that stands on y = 0, or hangs from the upper edge."""
    if not upper:
        return lines
    return tuple(Line(tuple((x, high - y) for x, y in line.points), line.kind) for line in lines)  # type: ignore[union-attr]


def _loop(high: float) -> Drawing:
    """A loop in the middle of the face, its tail to the edge at y = 0."""
    middle, r = high / 2 + min(1.0, high / 10), min(_LOOP, high / 5)
    round_ = [(r + r * math.cos(math.radians(a)), middle + r * math.sin(math.radians(a))) for a in range(-30, 211, 15)]
    end = (r * 1.8, middle - 1.9 * r)
    return (Line(((r, 0.0), (r * 0.9, middle - 2.2 * r), *round_, end), "visible"),)


def _vee(high: float) -> Drawing:
    """A V whose point is on the edge at y = 0."""
    tall, half = min(7.0, high / 2), min(3.0, high / 4)
    return (Line(((0.0, tall), (half, 0.0), (2 * half, tall)), "visible"),)


def up_arrow(faces: Sequence[tuple[Part, str]], x: float, high: float) -> Drawing:
    """An arrow that points up in the finished frame, and the word; nothing where parts differ in it."""
    found = {_up(part, face, x, high) for part, face in faces}
    return found.pop() if len(found) == 1 else ()


def _up(part: Part, face: str, x: float, high: float) -> Drawing:
    """An arrow that points up in the finished frame, and the word."""
    turned, up = face_up(part, face), OUT["top"]
    middle, text = high / 2, 3.5 if high >= 12 else 2.5
    if turned.u == up:
        tip = (x + 14.0, middle)
        return (
            Line(((x, middle), tip)),
            arrow(tip, (1.0, 0.0)),
            Text((x + 16.0, figure_middle(middle, text)), "up", text),
        )
    way = 1.0 if turned.v == up else -1.0 if _minus(turned.v) == up else 0.0
    if not way:
        return ()
    reach = min(7.0, high / 3)
    tail, tip = (x + 1.0, middle - way * reach), (x + 1.0, middle + way * reach)
    return (
        Line((tail, tip)),
        arrow(tip, (0.0, way)),
        Text((x + 4.0, figure_middle(middle, text)), "up", text),
    )


def _minus(v: Vector) -> Vector:
    return (0.0 - v[0], 0.0 - v[1], 0.0 - v[2])


def _clear(part: Part, face: str, band: Band, bored: Sequence[float]) -> Iterator[tuple[float, float]]:
    """Stretches of a face that no line of the band crosses, no cut takes and no hole lies in. [mm from its end]"""
    turned = face_up(part, face)
    boxes = [turned.local(cut.box) for cut in part.cuts]
    taken = [(box.low[0], box.high[0]) for box in boxes if box.low[2] <= TOUCH]
    taken += [(at - _HOLE, at + _HOLE) for at in bored]
    places = sorted({0.0, part.length, *(line.at for line in band.lines), *(end for cut in taken for end in cut)})
    inside = [place for place in places if 0.0 <= place <= part.length]
    for start, end in pairwise(inside):
        if not any(low < (start + end) / 2 < high for low, high in taken):
            yield start, end


def ranges(marks: Sequence[str]) -> str:
    """Marks in order, runs of three and more drawn together.

    >>> ranges(["A1", "A3", "A2", "A4", "B1", "B2", "A4"])
    'A1–A4 B1 B2'
    """
    runs: list[list[str]] = []
    for mark in sorted(dict.fromkeys(marks), key=_order):
        if runs and _order(mark) == (*_order(runs[-1][-1])[:2], _order(runs[-1][-1])[2] + 1):
            runs[-1].append(mark)
        else:
            runs.append([mark])
    told = (f"{run[0]}\N{EN DASH}{run[-1]}" if len(run) > 2 else " ".join(run) for run in runs)
    return " ".join(told)


def _order(mark: str) -> tuple[int, str, int]:
    """Marks rise as sets are lettered: A2, A10, B1, AA1."""
    letters = mark.rstrip("0123456789")
    return len(letters), letters, int(mark[len(letters) :] or 0)
