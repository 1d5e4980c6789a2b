"""How a lay-on pattern is drawn: the face with the notch, and over a dashed fold the edge with its depth.

It lies with the foot on the left, at full size, its lower left corner in (0, 0). Shoulder lines run over the fold down
to the floor of the notch; waste is hatched; words stand on the wood beside it, so they stay on what is cut out.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import shapely

from ....drafting.dimensions.style import arrow
from ....drafting.hatch import waste
from ....drafting.lettering import shorten, text_width, wrap
from ....drafting.primitives import Box as PaperBox
from ....drafting.primitives import Drawing, Line, Primitive, Text, bounds, shift, text_box
from ....frame.identity import in_short
from ....layout.layout import Layout
from ....layout.patterns import LayOn
from ....lengths import TOUCH
from ....solids import Box
from ...views.strokes import strokes
from ..marking import signs, up_arrow

_TEXT, _PITCH = 2.5, 3.8
_HATCH = 4.0
_SIGN_ROOM = 9.0


def draw_lay_on(layout: Layout, one: LayOn, number: int, mate: int | None) -> Drawing:
    """A pattern with its number, and that of the other half of a half-lap."""
    lower = one.flap if "lower" in one.folds else 0.0
    upper = one.flap if "upper" in one.folds else 0.0
    wide, across = one.end - one.start, one.size[1]
    ring = ((0.0, -lower), (wide, -lower), (wide, across + upper), (0.0, across + upper))
    drawn: list[Primitive] = [Line(ring, "thin", closed=True)]
    drawn += [Line(((0.0, fold), (wide, fold)), "hidden") for fold in _fold_places(one)]
    drawn += _ends(one, -lower, across + upper)
    drawn += _shoulders(one)
    words = tuple(_words(layout, one, number, mate))
    texts = [item for item in words if isinstance(item, Text)]
    drawn += [*words, *_openings(one, wide, texts), *_waste(one, texts)]
    return shift(tuple(drawn), 0.0, lower)


def _fold_places(one: LayOn) -> list[float]:
    return [{"lower": 0.0, "upper": one.size[1]}[side] for side in one.folds]


def _on_flap(one: LayOn, side: str, depth: float) -> float:
    """Where a depth from the face lies on the page, past the fold of a side. [mm]"""
    return one.size[1] + depth if side == "upper" else -depth


def _ends(one: LayOn, low: float, high: float) -> Iterator[Primitive]:
    """Wide lines where the pattern ends with the part, and their names outside the cutting line."""
    role = one.part.slot.role
    names = (role.end, role.end) if role.turns_over else (role.datum, role.end)
    for at, is_end, name in (
        (0.0, one.start <= TOUCH, names[0]),
        (one.end - one.start, one.end >= one.size[0] - TOUCH, names[1]),
    ):
        if is_end:
            yield Line(((at, low), (at, high)), "visible")
            x = at - 1.0 if at <= 0.0 else at + 1.0 + _TEXT
            yield Text((x, (low + high) / 2), f"flush with the {name}", _TEXT, "middle", 90.0)


def _shoulders(one: LayOn) -> Iterator[Line]:
    """Shoulder lines on the face and down the edges, and the floor of the notch on the edges."""
    (u0, v0, _), (u1, v1, _) = one.cut.low, one.cut.high
    near, far = u0 - one.start, u1 - one.start
    for at, whole in ((near, u0 > TOUCH), (far, u1 < one.size[0] - TOUCH)):
        if whole:
            yield Line(((at, v0), (at, v1)), "visible")
            for side in one.folds:
                yield Line(((at, _on_flap(one, side, 0.0)), (at, _on_flap(one, side, one.depth))), "visible")
    for v in (v0, v1):
        if TOUCH < v < one.size[1] - TOUCH:
            yield Line(((near, v), (far, v)), "visible")
    for side in one.folds:
        floor = _on_flap(one, side, one.depth)
        yield Line(((near, floor), (far, floor)), "visible")


def _openings(one: LayOn, wide: float, words: Sequence[Text]) -> Iterator[Line]:
    """Thin outlines where other cuts of the part break out on the face or on an edge of the pattern."""
    for box in one.others:
        x0, x1 = max(box.low[0], 0.0), min(box.high[0], wide)
        for y0, y1 in _breaks_out(one, box):
            if x1 - x0 > TOUCH and y1 - y0 > TOUCH:
                ring = shapely.box(x0, y0, x1, y1).exterior
                for text in words:
                    ring = ring.difference(text_box(text).buffer(0.5))
                yield from strokes(ring, "thin", 1.0)


def _breaks_out(one: LayOn, box: Box) -> Iterator[tuple[float, float]]:
    """Extents across the page of a cut, on the face and on the edges."""
    if box.low[2] <= TOUCH:
        yield box.low[1], box.high[1]
    for side in one.folds:
        if (side == "upper" and box.high[1] >= one.size[1] - TOUCH) or (side == "lower" and box.low[1] <= TOUCH):
            ends = (_on_flap(one, side, min(depth, one.flap)) for depth in (box.low[2], box.high[2]))
            low, high = sorted(ends)
            yield low, high


def _waste(one: LayOn, words: Sequence[Text]) -> Iterator[Primitive]:
    (u0, v0, _), (u1, v1, _) = one.cut.low, one.cut.high
    regions = [shapely.box(u0 - one.start, v0, u1 - one.start, v1)]
    for side in one.folds:
        low, high = sorted((_on_flap(one, side, 0.0), _on_flap(one, side, one.depth)))
        regions.append(shapely.box(u0 - one.start, low, u1 - one.start, high))
    for region in regions:
        for text in words:
            region = region.difference(text_box(text).buffer(0.8, join_style="mitre"))
        yield from waste(region, _HATCH)


def _words(layout: Layout, one: LayOn, number: int, mate: int | None) -> Iterator[Primitive]:
    """On the land that has room: what it is for; in the waste its depth; on the edge which way to fold."""
    x0, x1 = _land(one)
    across = one.size[1]
    faces = [(use.part, use.face) for use in one.uses]
    stands = one.part.slot.upright
    if stands:
        y = 3.2
        yield Line(((x0 + 2.5, y), (x0 + 12.0, y)))
        yield arrow((x0 + 2.0, y), (-1.0, 0.0))
        yield Text((x0 + 13.5, y - 1.2), "foot", _TEXT)
    low = 6.5 if stands else 1.0
    room: PaperBox = (x0 + 1.5, low, x1 - 1.0, across - 1.0)
    yield from _told(layout, one, number, mate, room)
    if not one.turned and one.end - one.cut.high[0] >= _SIGN_ROOM and x1 < one.cut.low[0] - one.start + 1.0:
        sign = (*signs(faces, across), *(() if stands else up_arrow(faces, 0.0, across)))
        if sign and bounds(sign)[2] < one.end - one.cut.high[0] - 2.0:
            yield from shift(sign, one.cut.high[0] - one.start + 4.0, 0.0)
    yield from _depth(layout, one)
    for side in one.folds:
        y = _on_flap(one, side, one.flap - 1.5 if side == "lower" else one.flap - 1.5 - _TEXT)
        text = Text((x0 + 1.5, y), shorten("edge, fold over", _TEXT, x1 - x0 - 3.0), _TEXT)
        if text.string:
            yield text


def _land(one: LayOn) -> tuple[float, float]:
    """The wider of the two lands, on the page. [mm]"""
    before, after = (0.0, one.cut.low[0] - one.start), (one.cut.high[0] - one.start, one.end - one.start)
    return before if before[1] - before[0] >= after[1] - after[0] else after


def _depth(layout: Layout, one: LayOn) -> Iterator[Text]:
    """The depth in the middle of the waste."""
    (u0, v0, _), (u1, v1, _) = one.cut.low, one.cut.high
    words = f"{layout.frame.tape.read(one.depth)} deep"
    wide = text_width(words, _TEXT) + 2.0
    turn = 0.0 if wide <= u1 - u0 else 90.0
    if min(wide, _TEXT * 2) <= (v1 - v0 if turn == 0.0 else u1 - u0):
        x, y = (u0 + u1) / 2 - one.start, (v0 + v1) / 2
        at = (x, y - _TEXT / 2) if turn == 0.0 else (x + _TEXT / 2, y)
        yield Text(at, words, _TEXT, "middle", turn)


def _told(layout: Layout, one: LayOn, number: int, mate: int | None, room: PaperBox) -> Iterator[Text]:
    """Number, how many, which level at which height on which parts; what does not go in ends in dots."""
    wide = room[2] - room[0]
    lines = [(line, True) for line in wrap(_title(number, mate), _TEXT, wide, bold=True)]
    short = [f"make {len(one.uses)}", *_places(layout, one)]
    lines += [(line, False) for text in short for line in wrap(text, _TEXT, wide)]
    most = max(1, int((room[3] - room[1]) / _PITCH))
    for n, (line, bold) in enumerate(lines[:most]):
        cut = n == most - 1 and len(lines) > most
        shown = shorten(line + " …", _TEXT, wide, bold=bold) if cut else line
        yield Text((room[0], room[3] - _PITCH * (n + 1) + (_PITCH - _TEXT)), shown, _TEXT, bold=bold)


def _title(number: int, mate: int | None) -> str:
    return f"Pattern {number}, half of a lap with {mate}" if mate else f"Pattern {number}"


def _places(layout: Layout, one: LayOn) -> list[str]:
    """For each face: on which parts, and for which levels at which height."""
    read = layout.frame.tape.read
    marks: dict[tuple[str, str], list[str]] = {}
    for use in one.uses:
        where = (
            "both ends"
            if one.part.slot.role.turns_over
            else f"{in_short(use.mate, along_length=False)} at {read(use.at)}"
        )
        marks.setdefault((use.way, where), []).append(use.part.mark)
    places: dict[str, list[str]] = {}
    for (way, where), found in marks.items():
        places.setdefault(f"{way} of {ranges(found)}", []).append(where)
    return [f"{whose}: {', '.join(where)}" for whose, where in places.items()]


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


def uses_list(layout: Layout, one: LayOn, number: int, mate: int | None, wide: float) -> Drawing:
    """All places of a pattern, to stand beside the patterns where there is room. [mm]"""
    lines = [(line, True) for line in wrap(f"{_title(number, mate)}, make {len(one.uses)}", _TEXT, wide, bold=True)]
    lines += [(line, False) for text in _places(layout, one) for line in wrap(text, _TEXT, wide)]
    return tuple(Text((0.0, -_PITCH * n), line, _TEXT, bold=bold) for n, (line, bold) in enumerate(lines))
