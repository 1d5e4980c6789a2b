"""The lines of a gang: each shoulder struck across the parts that take it, with its reading and whose it is.

Labels stand above or below the gang and read along their lines; where lines are close they are spread apart, each
joined to its line by a thin one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs

from ....drafting.dimensions.spread import spread
from ....drafting.lettering import text_width
from ....drafting.primitives import Line, Primitive, Text
from ....frame.identity import in_short
from ....layout.layout import Layout
from ....layout.sets import Band, PartSet, Taker
from ....layout.sets import Line as MarkLine
from ..marking import Rows
from .wood import struck


@attrs.frozen(kw_only=True)
class Look:
    """How the page is drawn at its scale; brief, with no more beside a reading than the level, once. [mm]"""

    scale: float
    text: float
    reading: float
    hatch: float
    gap: float = 3.0
    brief: bool = False


@attrs.frozen
class _Label:
    """A line of the set, where its label goes, and what is written there."""

    line: MarkLine
    above: bool
    reading: str
    words: str


def band_lines(layout: Layout, part_set: PartSet, band: Band, rows: Rows, look: Look) -> Iterator[Primitive]:
    """Lines of a band, and their labels above and below it."""
    labels = [_label(layout, part_set, line, brief=look.brief) for line in band.lines]
    yield from struck(part_set.members, band, rows, look.scale)
    for above in (True, False):
        mine = [label for label in labels if label.above == above]
        if mine:
            yield from _label_row(mine, rows, look, above=above)


def _label(layout: Layout, part_set: PartSet, line: MarkLine, *, brief: bool) -> _Label:
    members = sorted({taker.member for taker in line.takers})
    above = members[0] == 0 or members[-1] != len(part_set.members) - 1
    if brief:
        near = [
            in_short(t.mate, along_length=part_set.members[t.member].slot.long) for t in line.takers if t.edge == "near"
        ]
        told = ", ".join(dict.fromkeys(near)) if not part_set.members[0].slot.role.struck else ""
        return _Label(line, above, layout.frame.tape.read(line.at), told)
    whose = dict.fromkeys(_edge_words(part_set, taker) for taker in line.takers)
    marks = "" if len(members) == len(part_set.members) else " · " + " ".join(part_set.members[m].mark for m in members)
    return _Label(line, above, layout.frame.tape.read(line.at), f"{', '.join(whose)}{marks}")


def _edge_words(part_set: PartSet, taker: Taker) -> str:
    """'foot shelf, bottom' of a leg; 'shoulder' of a rail."""
    part = part_set.members[taker.member]
    role = part.slot.role
    level = in_short(taker.mate, along_length=part.slot.long)
    return role.struck or f"{level} {role.low if taker.edge == 'near' else role.high}"


def _label_row(labels: Sequence[_Label], rows: Rows, look: Look, *, above: bool) -> Iterator[Primitive]:
    """Labels turned to read along their lines, spread apart, each joined to its line by a thin one."""
    pitch = max(look.reading, look.text) * 1.5
    wanted = [label.line.at * look.scale for label in labels]
    places = spread(wanted, [pitch] * (len(wanted) - 1))
    shifted = max((abs(p - w) for p, w in zip(places, wanted, strict=True)), default=0.0)
    edge, out = (rows[0][1], 1) if above else (rows[-1][0], -1)
    bend = 0.0 if shifted < 0.02 else max(look.gap, shifted * 0.6)
    tail = edge + out * (look.gap + (bend + look.gap if bend else 0.0))
    for label, at, place in zip(labels, wanted, places, strict=True):
        taker = label.line.takers[0 if above else -1]
        start = rows[taker.member][0] + (taker.high if above else taker.low) * look.scale
        bent = ((at, edge + out * look.gap), (place, edge + out * (look.gap + bend))) if bend else ()
        yield Line(((at, start), *bent, (place, tail)))
        gap, anchor = tail + out * 1.0, "start" if above else "end"
        reading = Text((place + look.reading / 2, gap), label.reading, look.reading, anchor, 90, True)  # type: ignore[arg-type]
        yield from _two_texts(reading, label.words, place, look, above=above)


def _two_texts(reading: Text, words: str, place: float, look: Look, *, above: bool) -> tuple[Text, Text]:
    """Reading next to its line, the words after it on the same line of writing."""
    width = text_width(reading.string, look.reading, bold=True)
    _x, y = reading.at
    if above:
        return reading, Text((place + look.text / 2, y + width + look.gap), words, look.text, "start", 90)
    return reading, Text((place + look.text / 2, y - width - look.gap), words, look.text, "end", 90)
