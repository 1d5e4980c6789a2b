"""How a lay-on pattern is drawn: the face with the notch, and over a dashed fold the edge with its depth.

It lies with the foot on the left, at full size, its lower left corner in (0, 0). Shoulder lines run over the fold down
to the floor of the notch; waste is hatched. All words stand inside its outline, so they stay on what is cut out: it
covers as much of the part as the list of its places needs.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs
import shapely

from ....drafting.dimensions.style import arrow
from ....drafting.full_size.clearing import Clearing
from ....drafting.lettering import ascent, descent, shorten, wrap
from ....drafting.primitives import Box as PaperBox
from ....drafting.primitives import Drawing, Line, Primitive, Text, bounds, figure_middle, shift, text_box
from ....layout.layout import Layout
from ....layout.patterns import LayOn
from ....lengths import TOUCH
from ....solids import Box
from ...views.strokes import strokes
from ..marking import signs, up_arrow
from ..waste import waste
from .places import told

_TEXT, _PITCH = 2.5, 3.8
_HATCH = 7.0
_SIGN_ROOM = 9.0
WIDEST = 178.0
"""A pattern covers no more of the part for the sake of its words. [mm]"""
LAND = 1.0
"""So much of the part is left past it, so that it is not taken to end with the part. [mm]"""
BAND = ascent(_TEXT) + descent(_TEXT) + 2.0
"""Between a shoulder and the end of the part a word goes in from here on. [mm]"""
CARD = 60.0
"""Width of a card of places. [mm]"""


def draw_lay_on(layout: Layout, one: LayOn, number: int, mate: int | None) -> tuple[Drawing, bool]:
    """A pattern with its number, and that of the other half of a half-lap; and whether all its places stand on it."""
    said = told(layout, one, number, mate)
    one, room = _room_for(one, said)
    lower = one.flap if "lower" in one.folds else 0.0
    upper = one.flap if "upper" in one.folds else 0.0
    wide, across = one.end - one.start, one.size[1]
    ring = ((0.0, -lower), (wide, -lower), (wide, across + upper), (0.0, across + upper))
    strokes_ = (
        Line(ring, "thin", closed=True),
        *(Line(((0.0, fold), (wide, fold)), "hidden") for fold in _fold_places(one)),
        *_ends(one, -lower, across + upper),
        *_shoulders(one),
    )
    lines, whole = _set(said, room)
    if not whole:
        lines, _ = _set((said[0], [*said[1][:1], f"places on card {number}"]), room)
    words = (*_words(layout, one), *_listed(lines, room))
    clear = Clearing((0.4, 0.4 - lower, wide - 0.4, across + upper - 0.4), strokes_)
    clear.written += [text_box(item) for item in words if isinstance(item, Text)]
    words = (*words, *_depth(layout, one, clear), *_flush(one, (-lower, across + upper), clear))
    texts = [item for item in words if isinstance(item, Text)]
    return shift((*strokes_, *words, *_openings(one, wide, texts), *_waste(one, texts)), 0.0, lower), whole


def _room_for(one: LayOn, said: tuple[str, list[str]]) -> tuple[LayOn, PaperBox]:
    """The pattern, covering so much of the part that its words go on the land, and the room for them."""
    for before in (_land(one)[0] <= 0.0, _land(one)[0] > 0.0):
        for more in range(0, 200, 5):
            wider = _wider(one, float(more), before=before)
            if wider is None:
                break
            if _set(said, _land_room(wider))[1]:
                return wider, _land_room(wider)
    (u0, v0, _), (u1, v1, _) = one.cut.low, one.cut.high
    waste_room = (u0 - one.start + 1.5, v0 + 8.0, u1 - one.start - 1.5, v1 - 1.5)
    if waste_room[2] - waste_room[0] > 20.0 and _set(said, waste_room)[1]:
        return one, waste_room
    return one, _land_room(one)


def _wider(one: LayOn, more: float, *, before: bool) -> LayOn | None:
    """The pattern with more land before or after its cut, as far as the part and a desk page go. [mm]"""
    if not more:
        return one
    if one.end - one.start + more > WIDEST:
        return None
    if not before:
        return attrs.evolve(one, end=one.end + more) if one.end + more <= one.size[0] - LAND else None
    if one.start - more < LAND:
        return None
    return attrs.evolve(one, start=one.start - more, others=tuple(b.shifted((more, 0.0, 0.0)) for b in one.others))


def _fold_places(one: LayOn) -> list[float]:
    return [{"lower": 0.0, "upper": one.size[1]}[side] for side in one.folds]


def _on_flap(one: LayOn, side: str, depth: float) -> float:
    """Where a depth from the face lies on the page, past the fold of a side. [mm]"""
    return one.size[1] + depth if side == "upper" else -depth


def _at_ends(one: LayOn) -> Iterator[tuple[float, str]]:
    """Where the pattern ends with the part, and what that end is called."""
    role = one.part.slot.role
    names = (role.end, role.end) if role.turns_over else (role.datum, role.end)
    if one.start <= TOUCH:
        yield 0.0, names[0]
    if one.end >= one.size[0] - TOUCH:
        yield one.end - one.start, names[1]


def _ends(one: LayOn, low: float, high: float) -> Iterator[Line]:
    """Wide lines where the pattern ends with the part."""
    yield from (Line(((at, low), (at, high)), "visible") for at, _ in _at_ends(one))


def _flush(one: LayOn, ends: tuple[float, float], clear: Clearing) -> Iterator[Text]:
    """Along those ends, inside the outline, that they lie flush."""
    low, high = ends
    shoulders = [at for at, whole in _struck(one) if whole]
    for at, name in _at_ends(one):
        if any(0.0 < abs(shoulder - at) < BAND for shoulder in shoulders):
            continue  # no word goes in between
        x = at + 1.0 + ascent(_TEXT) if at <= 0.0 else at - 1.0 - descent(_TEXT)
        yield clear.freest(
            Text((x, low + (high - low) * share), words, _TEXT, "middle", 90.0)
            for words in (f"flush with the {name}", f"flush, {name}", name)
            for share in (0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85)
        )


def _shoulders(one: LayOn) -> Iterator[Line]:
    """Shoulder lines on the face and down the edges, and the floor of the notch on the edges."""
    (u0, v0, _), (u1, v1, _) = one.cut.low, one.cut.high
    near, far = u0 - one.start, u1 - one.start
    for at, whole in _struck(one):
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


def _struck(one: LayOn) -> tuple[tuple[float, bool], ...]:
    """Where the shoulders lie on the page, and whether each is a line: one that runs out at an end is none. [mm]"""
    u0, u1 = one.cut.low[0], one.cut.high[0]
    return (u0 - one.start, u0 > TOUCH), (u1 - one.start, u1 < one.size[0] - TOUCH)


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
        yield from waste(region, _HATCH, words)


def _words(layout: Layout, one: LayOn) -> Iterator[Primitive]:
    """On the land: where the foot is, which face it is for; on the edge which way to fold."""
    x0, x1 = _land(one)
    across = one.size[1]
    faces = [(use.part, use.face) for use in one.uses]
    stands = one.part.slot.upright
    if stands:
        y = 3.2
        yield Line(((x0 + 2.5, y), (x0 + 12.0, y)))
        yield arrow((x0 + 2.0, y), (-1.0, 0.0))
        yield Text((x0 + 13.5, y - 1.2), "foot", _TEXT)
    if not one.turned and one.end - one.cut.high[0] >= _SIGN_ROOM and x1 < one.cut.low[0] - one.start + 1.0:
        sign = (*signs(faces, across), *(() if stands else up_arrow(faces, 0.0, across)))
        if sign and bounds(sign)[2] < one.end - one.cut.high[0] - 2.0:
            yield from shift(sign, one.cut.high[0] - one.start + 4.0, 0.0)
    for side in one.folds:
        y = _on_flap(one, side, one.flap - 1.5 if side == "lower" else one.flap - 1.5 - _TEXT)
        text = Text((x0 + 1.5, y), shorten("edge, fold over", _TEXT, x1 - x0 - 3.0), _TEXT)
        if text.string:
            yield text


def _land(one: LayOn) -> tuple[float, float]:
    """The wider of the two lands, on the page. [mm]"""
    before, after = (0.0, one.cut.low[0] - one.start), (one.cut.high[0] - one.start, one.end - one.start)
    return before if before[1] - before[0] >= after[1] - after[0] else after


def _land_room(one: LayOn) -> PaperBox:
    """The wider land, less what the arrow to the foot takes. [mm]"""
    x0, x1 = _land(one)
    return x0 + 1.5, 6.5 if one.part.slot.upright else 1.0, x1 - 1.0, one.size[1] - 1.0


def _depth(layout: Layout, one: LayOn, clear: Clearing) -> Iterator[Text]:
    """The depth in the middle of the waste, or below the middle of it."""
    (u0, v0, _), (u1, v1, _) = one.cut.low, one.cut.high
    words, x = f"{layout.frame.tape.read(one.depth)} deep", (u0 + u1) / 2 - one.start
    tries = []
    for share in (0.5, 0.3, 0.7, 0.1):
        y = v0 + (v1 - v0) * share
        tries.append(Text((x, figure_middle(y, _TEXT)), words, _TEXT, "middle"))
        tries.append(Text((x + _TEXT / 2, y), words, _TEXT, "middle", 90.0))
    found = clear.first(tries)
    yield from [found] if found else []


Set = tuple[list[tuple[str, bool]], bool]
"""Lines of words, each bold or not, and whether all go in."""


def _set(said: tuple[str, list[str]], room: PaperBox) -> Set:
    """Title and places in lines for a room; where they do not go in, the last line ends in dots."""
    wide = room[2] - room[0]
    if wide < 2 * _TEXT:
        return [], False
    lines = [(line, True) for line in wrap(said[0], _TEXT, wide, bold=True)]
    lines += [(line, False) for text in said[1] for line in wrap(text, _TEXT, wide)]
    most = max(1, int((room[3] - room[1]) / _PITCH))
    if len(lines) <= most:
        return lines, True
    last, bold = lines[most - 1]
    return [*lines[: most - 1], (shorten(last + " …", _TEXT, wide, bold=bold), bold)], False


def _listed(lines: Sequence[tuple[str, bool]], room: PaperBox) -> Iterator[Text]:
    for n, (line, bold) in enumerate(lines):
        yield Text((room[0], room[3] - _PITCH * (n + 1) + (_PITCH - _TEXT)), line, _TEXT, bold=bold)


def places_card(layout: Layout, one: LayOn, number: int, mate: int | None) -> Drawing:
    """All places of a pattern on a card of its own, where its outline has no room for them."""
    title, places = told(layout, one, number, mate)
    said = (f"Card {number}. {title}", places)
    room = (0.0, -1000.0, CARD, 0.0)
    words = tuple(_listed(_set(said, room)[0], room))
    low = bounds(words)[1]
    ring = ((-1.5, low - 1.5), (CARD + 1.5, low - 1.5), (CARD + 1.5, 1.5), (-1.5, 1.5))
    return (Line(ring, "thin", closed=True), *words)
