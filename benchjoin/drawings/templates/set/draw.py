"""The gang: parts side by side as they are clamped, datum ends flush on the left, one band for each way up.

Every shoulder line is struck across the parts that take it, waste is hatched and names its rail and depth; near the
datum end of each part stands whose it is, which face and edge are true, and which way is up. The page of a set
carries it at full size or reduced, and says in words where the cuts of each part lie, as it is read out at the bench.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence

import shapely

from ....drafting.lettering import text_width, wrap
from ....drafting.primitives import Box, Drawing, Line, Primitive, Text, bounds, figure_middle, shift
from ....frame.faces import OPPOSITE, OUT
from ....frame.identity import in_short
from ....layout.joining import JOINTS
from ....layout.layout import Layout
from ....layout.on_face import OnFace
from ....layout.parts import Part, face_up
from ....layout.sets import Band, PartSet
from ....lengths import TOUCH
from ....shop.fasteners.fasten import Fastening
from ....shop.fasteners.on_face import HoleOnFace
from ..marking import LEGEND, Rows, member_marks
from ..waste import waste
from .lines import Look, band_lines
from .read_out import read_out
from .spans import Span, in_span, outline
from .wood import bores, bores_told, box_of, face_rows, holes_of, openings, ways_up

FULL = Look(scale=1.0, text=3.5, reading=7.0, hatch=8.0)
ROOMY = 1.45
"""A part that is drawn less wide, of the height of its mark, shares the column of marks with its neighbours. [mm]"""
SHARES = (0.5, 0.0, 1.0, 0.25, 0.75)
"""Where words may stand in the room that they have: in its middle first."""
WIDEST = 480.0
"""Lines of writing are no longer on any page. [mm]"""

TRUST = "Where paper and tape disagree, trust the tape."


def gang(
    layout: Layout,
    part_set: PartSet,
    look: Look = FULL,
    *,
    trust: str = TRUST,
    span: Span | None = None,
    fastening: Fastening | None = None,
) -> Drawing:
    """The heading, and below it all bands, or what of them lies in a span; trust is what is said of the paper.

    Holes of a fastening are drawn at full size alone.
    """
    bands = tuple(_band(layout, part_set, in_span(band, span), look, span, fastening) for band in ways_up(part_set))
    left = min(bounds(band)[0] for band in bands)
    wide = max(bounds(band)[2] for band in bands) - left
    drawn: list[Primitive] = [*_heading(layout, part_set, look, wide, trust)]
    low = bounds(tuple(drawn))[1] - look.gap
    for drawing in bands:
        drawn += shift(drawing, -left, low - bounds(drawing)[3])
        low -= bounds(drawing)[3] - bounds(drawing)[1] + 2 * look.gap
    return tuple(drawn)


def _heading(layout: Layout, part_set: PartSet, look: Look, wide: float, trust: str) -> Iterator[Text]:
    """What to do with the page, in a few lines as wide as the gang."""
    role = part_set.members[0].slot.role
    unit = "inches" if layout.frame.tape.unit == "in" else "millimetres"
    first, last = part_set.members[0].mark, part_set.members[-1].mark
    clamped = f"Clamp {first} to {last} side by side, {role.flush} flush" if first != last else f"Clamp {first}"
    signs = f" {' '.join(LEGEND)}" if look.scale == 1.0 else ""
    told = (
        f"{clamped}; write {part_set.letter} on the end grain. "
        f"Readings are from the {role.datum}, in {unit}. Lay the {role.mate} itself between its lines, tick it, and "
        f"cross the waste before you cut.{_fits(layout, part_set)}{_beside(layout, part_set)}{_done(layout, part_set)}"
        f" {trust}{signs}"
    )
    yield from _lines(told, look, 0.0, 0.0, min(max(wide, 60 * look.text), WIDEST))


def _lines(told: str, look: Look, left: float, high: float, wide: float) -> Iterator[Text]:
    for number, line in enumerate(wrap(told, look.text, wide)):
        yield Text((left, high - look.text * 1.6 * number), line, look.text)


def _fits(layout: Layout, part_set: PartSet) -> str:
    """The fit that the lines of a set hold, so that nobody adds it again; nothing where there is none."""
    known = {getattr(how, "word", "") for how in JOINTS}  # a board is cut round a leg by a clear of its own
    kinds = dict.fromkeys(cut.kind for part in part_set.members for cut in part.cuts if cut.kind in known)
    fits = {kind: layout.frame.fit_of(kind) for kind in kinds}
    told = [f"{layout.frame.tape.amount(fit)} of fit for each {kind}" for kind, fit in fits.items() if fit]
    return f" The lines hold {' and '.join(told)}: add none." if told else ""


def _beside(layout: Layout, part_set: PartSet) -> str:
    """What comes to faces that are not drawn since no wood is taken from them, and between which heights."""
    read = layout.frame.tape.read
    told = []
    for band in part_set.beside:
        spans: dict[tuple[str, str], list[int]] = {}
        for item in band.touches:
            level = in_short(item.cut.mate, along_length=part_set.members[item.member].slot.long)
            between = f"{level} {read(item.cut.start)} to {read(item.cut.end)}"
            spans.setdefault((between, item.cut.kind), []).append(item.member)
        every = len(part_set.members)
        ends = [
            f"{between} ({kind}{'' if len(own) == every else f' on {_marks(part_set, own)}'})"
            for (between, kind), own in spans.items()
        ]
        told.append(f" On the {band.called}s fine lines, no waste: {', '.join(ends)}.")
    return "".join(told)


def _marks(part_set: PartSet, members: Sequence[int]) -> str:
    return " ".join(part_set.members[number].mark for number in sorted(set(members)))


def _done(layout: Layout, part_set: PartSet) -> str:
    """Which of the set are marked or cut already."""
    states: dict[str, list[str]] = {}
    for part in part_set.members:
        found = layout.frame.finished.get(part.name)
        if found is not None and found.state != "sized":
            states.setdefault(found.state, []).append(part.mark)
    return "".join(f" Already {state}, and to be left as they are: {', '.join(own)}." for state, own in states.items())


def _band(
    layout: Layout, part_set: PartSet, band: Band, look: Look, span: Span | None, fastening: Fastening | None
) -> Drawing:
    """One way up: its title, how the parts are rolled, their cuts in words, the parts, the waste, the lines."""
    rows = face_rows(part_set.members, band, look.scale)
    drawn: list[Primitive] = [*_parts(layout, part_set, band, rows, look, span)]
    holes = holes_of(fastening if look.scale == 1.0 else None, part_set.members, band)
    lines = tuple(band_lines(layout, part_set, band, rows, look))
    drawn += _waste(layout, part_set, band, rows, look, holes, lines)
    drawn += lines
    if look.scale == 1.0:
        drawn += member_marks(part_set, band, rows, [[one.u for one in own] for own in holes])
        drawn += bores(holes, rows)
    x0, _, x1, y1 = bounds(tuple(drawn))
    title = f"{band.title[0].upper()}{band.title[1:]}"
    after = x0 + text_width(title, look.text, bold=True) + 2 * look.gap
    wide = min(max(x1 - after, 60 * look.text), WIDEST)
    told = [
        f"{rolled(part_set, band)}{depths(layout, band)}",
        *read_out(layout, part_set, band, lengths=is_slim(rows, look)),
        *filter(None, [bores_told(layout.frame.tape, holes)]),
    ]
    count = sum(len(wrap(line, look.text, wide)) for line in told)
    high = y1 + 1.5 * look.gap + look.text * 1.6 * (count - 1)
    drawn.append(Text((x0, high), title, look.text, bold=True))
    for line in told:
        written = tuple(_lines(line, look, after, high, wide))
        drawn += written
        high -= look.text * 1.6 * len(written)
    start = span[0] * look.scale if span else 0.0
    return shift(tuple(drawn), -start, 0.0)


def depths(layout: Layout, band: Band) -> str:
    """'Every cut is 5/8 deep', or each depth with its rails; 'butt, no waste' of what only comes to the face."""
    found: dict[str, list[str]] = {}
    for item in (*band.waste, *band.touches):
        mate = in_short(item.cut.mate, along_length=False)
        found.setdefault(item.cut.told(layout.frame.tape.read), []).append(mate)
    if not found:
        return "No wood is taken from these faces."
    if len(found) == 1:
        told = next(iter(found))
        return f"Every cut is {told}." if band.waste else f"Fine lines: {told}."
    return "; ".join(f"{told} for {', '.join(dict.fromkeys(rails))}" for told, rails in found.items()) + "."


def rolled(part_set: PartSet, band: Band) -> str:
    """How each part comes from lying with its marked face up to this: the maker stands at the foot of the page."""
    ways: dict[str, list[str]] = {}
    for part, face in zip(part_set.members, band.faces, strict=True):
        if face != part.marked:
            ways.setdefault(_way(part, face), []).append(part.mark)
    if not ways:
        return ""
    first = next(iter(ways))
    short = {way: way.removeprefix("a quarter turn ") if first.startswith("a quarter") else way for way in ways}
    told = ", ".join(f"{' '.join(marks)} {short[way] if way != first else way}" for way, marks in ways.items())
    return f"Unclamp; roll {told}; clamp again. "


def _way(part: Part, face: str) -> str:
    """Which way a part is rolled so that a face comes up."""
    if face == OPPOSITE[part.marked]:
        return "half over"
    upper = face_up(part, part.marked).v
    return "a quarter turn towards you" if OUT[face] == upper else "a quarter turn away from you"


def _parts(
    layout: Layout, part_set: PartSet, band: Band, rows: Rows, look: Look, span: Span | None
) -> Iterator[Primitive]:
    """Outlines, the name of each part on the left, its length on the right, and which end is the datum."""
    read = layout.frame.tape.read
    role = part_set.members[0].slot.role
    start = span[0] * look.scale if span else 0.0
    slim, beside = is_slim(rows, look), not _in_words(layout, part_set, band, rows, look)
    away = max(text_width(f"{part.mark} ", look.text) for part in part_set.members)
    left = start - look.gap - 2 * look.text
    for number, (part, face, (low, high)) in enumerate(zip(part_set.members, band.faces, rows, strict=True)):
        if not span:
            yield from openings(part, face, low, look.scale)
        yield from outline(part.length, low, high, look.scale, span)
        middle, level = (low + high) / 2, figure_middle((low + high) / 2, look.text)
        words = f"{part.identity.replace('/', ' ')}, {face} face up"
        name = f"{part.mark}  {words}" if look.scale == 1.0 else part.mark
        second = slim and number % 2 == 1  # marks of slim parts stand in two columns
        yield Text((left - away if second else left, level), name, look.text, "end")
        if second:
            yield Line(((left - away + 1.0, middle), (left + 0.5, middle)))
        if beside and (not span or span[0] < part.length <= span[1]):
            yield Text((part.length * look.scale + look.gap, level), f"{role.end} {read(part.length)}", look.text)
    if not start:
        yield Text((-look.gap, rows[-1][0] / 2), role.datum.removesuffix(" end"), look.text, "middle", 90)


def _in_words(layout: Layout, part_set: PartSet, band: Band, rows: Rows, look: Look) -> bool:
    """Whether lengths are told in words: beside the parts they would touch, or a line to its label runs through one."""
    role, read = part_set.members[0].slot.role, layout.frame.tape.read
    for part in part_set.members:
        start = part.length * look.scale
        end = start + 2 * look.gap + text_width(f"{role.end} {read(part.length)}", look.text)
        if any(start + 0.1 < line.at * look.scale < end for line in band.lines):
            return True
    return is_slim(rows, look)


def is_slim(rows: Rows, look: Look) -> bool:
    """Whether parts are drawn so slim that marks of neighbours would touch."""
    return min(high - low for low, high in rows) < ROOMY * look.text


def _waste(
    layout: Layout,
    part_set: PartSet,
    band: Band,
    rows: Rows,
    look: Look,
    holes: Sequence[Sequence[HoleOnFace]],
    lines: Drawing,
) -> Iterator[Primitive]:
    """Between shoulder lines the rail and its depth where there is room to write them, and the waste hatched."""
    upright = [box for box in (bounds((line,)) for line in lines if isinstance(line, Line)) if box[0] == box[2]]
    for item in (*band.waste, *band.touches):
        low = rows[item.member][0]
        room = box_of(item.cut, low, look.scale)
        crosses = [(one.u, low + one.v, one.u, low + one.v) for one in holes[item.member]]
        keep_off = [*crosses, *(line for line in upright if room[0] + TOUCH < line[0] < room[2] - TOUCH)]
        words = _waste_words(layout, part_set.members[item.member], item.cut, room, look, keep_off)
        if item.cut.wood:
            yield from waste(shapely.box(*room), look.hatch, words, clear=look.text * 0.3)
        yield from words


def _waste_words(
    layout: Layout,
    part: Part,
    cut: OnFace,
    room: tuple[float, float, float, float],
    look: Look,
    keep_off: Sequence[Box],
) -> list[Text]:
    """The words along or across the waste, in its middle or beside what is drawn there; none where there is no room."""
    x0, y0, x1, y1 = room
    lines = [in_short(cut.mate, along_length=part.slot.long), cut.told(layout.frame.tape.read)]
    pitch = look.text * 1.7
    wide = max(text_width(line, look.text) for line in lines) + 2 * look.text
    tall = pitch * len(lines) + look.text
    for turned in (False, True):
        across, up = (tall, wide) if turned else (wide, tall)
        if across > x1 - x0 or up > y1 - y0:
            continue
        for b, a in itertools.product(SHARES, SHARES):
            x, y = x0 + across / 2 + a * (x1 - x0 - across), y0 + up / 2 + b * (y1 - y0 - up)
            box = (x - across / 2 - 1, y - up / 2 - 1, x + across / 2 + 1, y + up / 2 + 1)
            if not any(_overlap(box, other) for other in keep_off):
                return _two_lines(lines, (x, y), pitch, look.text, turned=turned)
    return []


def _overlap(box: Box, other: Box) -> bool:
    return box[0] < other[2] and other[0] < box[2] and box[1] < other[3] and other[1] < box[3]


def _two_lines(lines: Sequence[str], at: tuple[float, float], pitch: float, size: float, *, turned: bool) -> list[Text]:
    x, y = at
    if turned:
        return [Text((x + pitch * (n - 0.5) + size / 2, y), s, size, "middle", 90) for n, s in enumerate(lines)]
    return [Text((x, y + pitch * (0.5 - n) - size / 2), s, size, "middle") for n, s in enumerate(lines)]
