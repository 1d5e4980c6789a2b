"""The words of a tile, each placed for what that tile shows: no seam runs through one, and a tile is read by itself.

Every face says whose it is and which way is up, every line its reading, every waste the rail and the depth, wherever
there is room; what stands on two tiles is written on both.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs

from ....drafting.full_size.clearing import Clearing
from ....drafting.full_size.windows import Pane
from ....drafting.lettering import ascent, descent, text_width
from ....drafting.primitives import Box, Drawing, Line, Text, bounds, figure_middle, flat, shift
from ....frame.identity import in_short
from ....layout.layout import Layout
from ....layout.parts import Part
from ....layout.sets import Band, PartSet, Taker
from ..marking import Rows, part_marks
from .wood import box_of

READINGS = (7.0, 5.0, 3.5, 2.5)
"""Heights to try for a reading. [mm]"""
NAMES = (3.5, 2.5)
_BESIDE = 1.2
_FINE, _ASIDE = 3.0, 12.0


@attrs.frozen(kw_only=True)
class Shown:
    """What a tile shows: a band of a set, where its faces lie, and the pane. [mm]"""

    layout: Layout
    part_set: PartSet
    band: Band
    rows: Rows
    pane: Pane

    def seen(self, box: Box) -> Box | None:
        """What is seen of a box, if anything that a word could stand in."""
        a, b, c, d = self.pane.cut
        x0, y0, x1, y1 = max(box[0], a), max(box[1], b), min(box[2], c), min(box[3], d)
        return (x0, y0, x1, y1) if x1 - x0 > 1.0 and y1 - y0 > 1.0 else None

    def faces(self) -> Iterator[tuple[int, Part, str, Box]]:
        """Members that the tile is for: number, part, face, and what is seen of it.

        Those are the faces that it shows whole, and the part of one that is higher than the tile. What it shows of
        others is left out, so that no line of theirs is laid on the wrong part.
        """
        _, bottom, _, top = self.pane.cut
        for number, (part, face) in enumerate(zip(self.part_set.members, self.band.faces, strict=True)):
            low, high = self.rows[number]
            seen = self.seen((0.0, low, part.length, high))
            if seen and ((bottom < low and high < top) or high - low > top - bottom):
                yield number, part, face, seen


def tile_words(shown: Shown, clear: Clearing) -> Drawing:
    """Readings first, since nothing else may take their place, then whose each face is, then the waste."""
    faces = tuple(shown.faces())
    found: list[Text] = []
    for number, part, _, seen in faces:
        found += _readings(shown, number, seen, clear)
        found += _end(shown, part, seen, clear)
    signs: list[Drawing] = []
    for number, part, face, seen in faces:
        signs.append(_mark(shown, number, (part, face), seen, clear, signs[-1:]))
    for _, part, face, seen in faces:
        found += _name(part, face, seen, clear)
    for number, _, _, _ in faces:
        found += _waste_words(shown, number, clear)
    return (*(item for sign in signs for item in sign), *found)


def texts(drawing: Drawing) -> list[Text]:
    """The words of a drawing."""
    return [item for item in flat(drawing) if isinstance(item, Text)]


def _readings(shown: Shown, number: int, seen: Box, clear: Clearing) -> Iterator[Text]:
    read, low = shown.layout.frame.tape.read, shown.rows[number][0]
    for line in shown.band.lines:
        takers = [taker for taker in line.takers if taker.member == number]
        if takers and seen[0] < line.at < seen[2]:
            ends = max(low + min(t.low for t in takers), seen[1]), min(low + max(t.high for t in takers), seen[3])
            tries = list(_beside(read(line.at), line.at, ends, _outward(takers)))
            yield clear.freest(tries)


def _outward(takers: Sequence[Taker]) -> int:
    """On which side of its line a reading stands first: outside the notch."""
    return -1 if takers[0].edge == "near" else 1


def _beside(words: str, at: float, ends: tuple[float, float], out: int) -> Iterator[Text]:
    """A reading along its line, the largest first, on either side; then level, beside it."""
    middle, long = (ends[0] + ends[1]) / 2, ends[1] - ends[0]
    for height in READINGS:
        spare = (long - text_width(words, height, bold=True)) / 2 - 0.8
        if spare >= 0:
            for up in (0.0, spare, -spare):
                yield from (_upright(words, at, middle + up, height, way) for way in (out, -out))
    for height in READINGS[1:]:
        for up in (0.0, long / 3, -long / 3):
            for way in (out, -out):
                x, y = at + way * _BESIDE, figure_middle(middle + up, height)
                yield Text((x, y), words, height, "start" if way > 0 else "end", 0.0, True)


def _upright(words: str, at: float, middle: float, height: float, way: int) -> Text:
    x = at + _BESIDE + ascent(height) if way > 0 else at - _BESIDE - descent(height)
    return Text((x, middle), words, height, "middle", 90.0, True)


def _end(shown: Shown, part: Part, seen: Box, clear: Clearing) -> Iterator[Text]:
    """Which end is seen, and the length at the far one."""
    role, middle, height = part.slot.role, (seen[1] + seen[3]) / 2, 2.5
    ends = ((0.0, -1, role.datum), (part.length, 1, f"{role.end} {shown.layout.frame.tape.read(part.length)}"))
    for at, way, words in ends:
        if shown.pane.cut[0] < at < shown.pane.cut[2]:
            x = at + 1.0 + ascent(height) if way > 0 else at - 1.0 - descent(height)
            found = clear.first([Text((x, middle), words, height, "middle", 90.0)])
            yield from [found] if found else []


def _mark(
    shown: Shown, number: int, up: tuple[Part, str], seen: Box, clear: Clearing, before: Sequence[Drawing]
) -> Drawing:
    """The mark with the signs of true face and true edge and the arrow, where the whole face is seen; or the mark.

    It stands aside from that of the face before, so that no two signs meet at an edge and make a cross.
    """
    (low, high), part = shown.rows[number], up[0]
    if low >= seen[1] - 1e-6 and high <= seen[3] + 1e-6:
        tries = []
        for arrow in (True, False):
            drawn = shift(part_marks((up,), high - low, arrows=arrow), 0.0, low)
            others = [bounds(sign)[0] for sign in before if _reaches(sign, high) and _reaches(drawn, high)]
            tries += [shift(drawn, x, 0.0) for x in _grid(seen) if all(abs(x - other) >= _ASIDE for other in others)]
        found = clear.block(tries, (low + 1.0, high - 1.0), anywhere=False)
        if found:
            return found
    middle = (seen[1] + seen[3]) / 2
    marks = (
        Text((x, figure_middle(middle, height)), part.mark, height, bold=True)
        for height in READINGS
        for x in _grid(seen)
    )
    mark = clear.first(marks, anywhere=False)
    return (mark,) if mark else ()


def _reaches(sign: Drawing, edge: float) -> bool:
    """Whether a line of a sign comes to an edge."""
    return any(abs(y - edge) < 0.01 for item in flat(sign) if isinstance(item, Line) for _, y in item.points)


def _grid(seen: Box) -> Iterator[float]:
    yield from (seen[0] + 1.0 + _FINE * n for n in range(int((seen[2] - seen[0]) / _FINE)))


def _name(part: Part, face: str, seen: Box, clear: Clearing) -> Iterator[Text]:
    """The words beside the mark: which part it is and which face is up."""
    middle, third = (seen[1] + seen[3]) / 2, (seen[3] - seen[1]) / 3
    for words in (f"{part.identity.replace('/', ' ')}, {face} face up", f"{face} face up"):
        tries = [
            Text((x, figure_middle(middle + up, height)), words, height)
            for height in NAMES
            for up in (0.0, third, -third)
            for x in _grid(seen)
        ]
        found = clear.first(tries, anywhere=False)
        if found:
            yield found
            return


def _waste_words(shown: Shown, number: int, clear: Clearing) -> Iterator[Text]:
    """The mate and the depth in what is seen of each waste, level or upright, or the depth alone."""
    part, read = shown.part_set.members[number], shown.layout.frame.tape.read
    for item in (*shown.band.waste, *shown.band.touches):
        seen = shown.seen(box_of(item.cut, shown.rows[number][0])) if item.member == number else None
        if seen:
            lines = (in_short(item.cut.mate, along_length=part.slot.long), item.cut.told(read))
            yield from texts(clear.block(_centred(lines, seen)))


def _centred(lines: tuple[str, str], box: Box) -> Iterator[Drawing]:
    x, y = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
    for said in (lines, lines[1:]):
        for height in NAMES:
            pitch, count = height * 1.6, len(said)
            places = [pitch * ((count - 1) / 2 - n) - height / 2 for n in range(count)]
            quarter = (box[2] - box[0]) / 4, (box[3] - box[1]) / 4
            for dx, dy in ((0.0, 0.0), (0.0, quarter[1]), (0.0, -quarter[1]), (quarter[0], 0.0), (-quarter[0], 0.0)):
                yield tuple(
                    Text((x + dx, y + dy + up), line, height, "middle") for line, up in zip(said, places, strict=True)
                )
                yield tuple(
                    Text((x + dx - up, y + dy), line, height, "middle", 90.0)
                    for line, up in zip(said, places, strict=True)
                )
