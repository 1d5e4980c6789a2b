"""The gang: parts side by side as they are clamped, datum ends flush on the left, one band for each way up.

Every shoulder line is struck across the parts that take it, waste is hatched and names its rail and depth; near the
datum end of each part stands whose it is, which face and edge are true, and which way is up. The page of a set
carries it at full size or reduced; tiles carry it cut into desk pages.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs
import shapely

from ....drafting.hatch import hatch
from ....drafting.lettering import text_width, wrap
from ....drafting.primitives import Drawing, Line, Primitive, Text, bounds, figure_middle, shift, text_box
from ....frame.faces import OPPOSITE, OUT
from ....frame.identity import in_short
from ....layout.joining import JOINTS
from ....layout.layout import Layout
from ....layout.on_face import OnFace
from ....layout.parts import Part, face_up
from ....layout.sets import Band, PartSet
from ....lengths import TOUCH
from ..marking import LEGEND, Rows, member_marks
from .lines import Look, band_lines

FULL = Look(scale=1.0, text=3.5, reading=7.0, hatch=6.0)

TRUST = "Where paper and tape disagree, trust the tape."


@attrs.frozen(kw_only=True)
class Gang:
    """The gang drawn, where its datum end and its lowest edge lie, and the places of its lines and edges. [mm]"""

    drawing: Drawing
    foot: float
    edge: float
    along: tuple[float, ...]
    across: tuple[float, ...]


def gang(layout: Layout, part_set: PartSet, look: Look = FULL, *, trust: str = TRUST, heading: bool = True) -> Gang:
    """The heading, if any, and below it all bands; trust is what the heading says of the paper."""
    ways = part_set.bands or (_plain(part_set),)
    bands = tuple(_band(layout, part_set, band, look) for band in ways)
    left = min(bounds(band)[0] for band in bands)
    wide = max(bounds(band)[2] for band in bands) - left
    drawn: list[Primitive] = [*_heading(layout, part_set, look, wide, trust)] if heading else []
    low = bounds(tuple(drawn))[1] - look.gap if drawn else 0.0
    edges: list[float] = []
    for band, drawing in zip(ways, bands, strict=True):
        up = low - bounds(drawing)[3]
        drawn += shift(drawing, -left, up)
        low -= bounds(drawing)[3] - bounds(drawing)[1] + 2 * look.gap
        edges += [up + edge for row in _rows(part_set.members, band, look) for edge in row]
    places = {0.0, *(line.at for line in part_set.lines), *(part.length for part in part_set.members)}
    along = tuple(place * look.scale - left for place in sorted(places))
    return Gang(drawing=tuple(drawn), foot=-left, edge=min(edges), along=along, across=tuple(edges))


def _plain(part_set: PartSet) -> Band:
    """The one way up of parts that no wood is taken from."""
    return Band(part_set.members[0].slot.role.faces["marked"], tuple(part.marked for part in part_set.members), (), ())


def _heading(layout: Layout, part_set: PartSet, look: Look, wide: float, trust: str) -> Iterator[Text]:
    """What to do with the page, in a few lines as wide as the gang."""
    role = part_set.members[0].slot.role
    unit = "inches" if layout.frame.tape.unit == "in" else "millimetres"
    first, last = part_set.members[0].mark, part_set.members[-1].mark
    told = (
        f"Clamp {first} to {last} side by side, {role.flush} flush; write {part_set.letter} on the end grain. "
        f"Readings are from the {role.datum}, in {unit}. Lay the {role.mate} itself between its lines, tick it, and "
        f"cross the waste before you cut.{_fits(layout, part_set)}{_beside(layout, part_set)}{_done(layout, part_set)}"
        f" {trust}{f' {LEGEND}' if look.scale == 1.0 else ''}"
    )
    pitch = look.text * 1.6
    for number, line in enumerate(wrap(told, look.text, max(wide, 60 * look.text))):
        yield Text((0.0, -pitch * number), line, look.text)


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


def _band(layout: Layout, part_set: PartSet, band: Band, look: Look) -> Drawing:
    """One way up: its title and whose face is up, the parts, the waste, the lines with their labels."""
    rows = _rows(part_set.members, band, look)
    drawn: list[Primitive] = [*_parts(layout, part_set, band, rows, look), *_waste(layout, part_set, band, rows, look)]
    drawn += band_lines(layout, part_set, band, rows, look)
    if look.scale == 1.0:
        drawn += member_marks(part_set, band, rows)
    x0, _, x1, y1 = bounds(tuple(drawn))
    title = Text((x0, y1 + 1.5 * look.gap), f"{band.title[0].upper()}{band.title[1:]}", look.text, bold=True)
    whose = f"{_rolled(part_set, band)}{_whose(part_set, band)}. {_depths(layout, band)}"
    after = x0 + text_width(title.string, look.text, bold=True) + 2 * look.gap
    if look.scale == 1.0:
        how = f"{_rolled(part_set, band)}{_depths(layout, band)}"
        return (*drawn, title, Text((after, title.at[1]), how, look.text))
    lines = wrap(whose, look.text, max(x1 - after, 60 * look.text))
    pitch = look.text * 1.6
    high = title.at[1] + pitch * (len(lines) - 1)
    told = [Text((after, high - pitch * n), line, look.text) for n, line in enumerate(lines)]
    return (*drawn, Text((x0, high), title.string, look.text, bold=True), *told)


def _depths(layout: Layout, band: Band) -> str:
    """'Every cut is 5/8 deep', or each depth with its rails; 'butt, no waste' of what only comes to the face."""
    found: dict[str, list[str]] = {}
    for item in (*band.waste, *band.touches):
        found.setdefault(item.cut.told(layout.frame.tape.read), []).append(item.cut.mate)
    if not found:
        return "No wood is taken from these faces."
    if len(found) == 1:
        told = next(iter(found))
        return f"Every cut is {told}." if band.waste else f"Fine lines: {told}."
    return "; ".join(f"{told} for {', '.join(dict.fromkeys(rails))}" for told, rails in found.items()) + "."


def _rolled(part_set: PartSet, band: Band) -> str:
    """How each part comes from lying with its marked face up to this: the maker stands at the foot of the page."""
    ways: dict[str, list[str]] = {}
    for part, face in zip(part_set.members, band.faces, strict=True):
        if face != part.marked:
            ways.setdefault(_way(part, face), []).append(part.mark)
    if not ways:
        return ""
    told = ", ".join(f"{' '.join(marks)} {way}" for way, marks in ways.items())
    return f"Unclamp; roll {told}; clamp again. "


def _way(part: Part, face: str) -> str:
    """Which way a part is rolled so that a face comes up."""
    if face == OPPOSITE[part.marked]:
        return "half over"
    upper = face_up(part, part.marked).v
    return "a quarter turn towards you" if OUT[face] == upper else "a quarter turn away from you"


def _whose(part_set: PartSet, band: Band) -> str:
    """'A1 front left leg (front face), …'; of many rails only the faces that are up."""
    if len(part_set.members) > 8:
        return f"{len(part_set.members)} parts, the face that is cut up"
    return ", ".join(
        f"{part.mark} {part.identity} ({face} face)" for part, face in zip(part_set.members, band.faces, strict=True)
    )


def _rows(members: Sequence[Part], band: Band, look: Look) -> Rows:
    """Lower and upper edge of each member on the page, the first on top."""
    rows, top = [], 0.0
    for part, face in zip(members, band.faces, strict=True):
        high = face_width(part, face) * look.scale
        rows.append((top - high, top))
        top -= high
    return rows


def face_width(part: Part, face: str) -> float:
    """Width of a face of a part. [mm]"""
    return face_up(part, face).local(part.blank).size()[1]


def _parts(layout: Layout, part_set: PartSet, band: Band, rows: Rows, look: Look) -> Iterator[Primitive]:
    """Outlines, the name of each part on the left, its length on the right, and which end is the datum."""
    read = layout.frame.tape.read
    role = part_set.members[0].slot.role
    for part, face, (low, high) in zip(part_set.members, band.faces, rows, strict=True):
        yield from _openings(part, face, low, look)
        end = part.length * look.scale
        yield Line(((0.0, low), (end, low), (end, high), (0.0, high)), "visible", closed=True)
        middle = figure_middle((low + high) / 2, look.text)
        name = f"{part.mark}  {part.identity}, {face} face up" if look.scale == 1.0 else part.mark
        yield Text((-look.gap - 2 * look.text, middle), name, look.text, "end")
        yield Text((end + look.gap, middle), f"{role.end} {read(part.length)}", look.text)
    centre = rows[-1][0] / 2
    yield Text((-look.gap, centre), role.datum.removesuffix(" end"), look.text, "middle", 90)


def _openings(part: Part, face: str, low: float, look: Look) -> Iterator[Line]:
    """Thin outlines where cuts from other faces break out on the face that is up."""
    turned, (length, width, _) = face_up(part, face), face_up(part, face).local(part.blank).size()
    for cut in part.cuts:
        (u0, v0, w0), (u1, v1, _) = turned.local(cut.box).low, turned.local(cut.box).high
        if cut.face != face and w0 <= TOUCH:
            x0, x1 = max(u0, 0.0) * look.scale, min(u1, length) * look.scale
            y0, y1 = low + max(v0, 0.0) * look.scale, low + min(v1, width) * look.scale
            yield Line(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), "thin", closed=True)


def _waste(layout: Layout, part_set: PartSet, band: Band, rows: Rows, look: Look) -> Iterator[Primitive]:
    """Between shoulder lines the rail and its depth where there is room to write them, and the waste hatched."""
    for item in (*band.waste, *band.touches):
        low = rows[item.member][0]
        x0, x1 = item.cut.start * look.scale, item.cut.end * look.scale
        y0, y1 = low + item.cut.low * look.scale, low + item.cut.high * look.scale
        region = shapely.box(x0, y0, x1, y1)
        words = _waste_words(layout, item.cut, (x0, y0, x1, y1), look)
        for text in words:
            region = region.difference(text_box(text).buffer(look.text * 0.3, join_style="mitre"))
        if item.cut.wood:
            yield from hatch(region, look.hatch)
        yield from words


def _waste_words(layout: Layout, cut: OnFace, room: tuple[float, float, float, float], look: Look) -> list[Text]:
    x0, y0, x1, y1 = room
    lines = [cut.mate, cut.told(layout.frame.tape.read)]
    pitch, x, y = look.text * 1.7, (x0 + x1) / 2, (y0 + y1) / 2
    wide = max(text_width(line, look.text) for line in lines) + 2 * look.text
    tall = pitch * len(lines) + look.text
    if wide <= x1 - x0 and tall <= y1 - y0:
        return [Text((x, y + pitch * (0.5 - n) - look.text / 2), s, look.text, "middle") for n, s in enumerate(lines)]
    if wide <= y1 - y0 and tall <= x1 - x0:
        return [
            Text((x + pitch * (n - 0.5) + look.text / 2, y), s, look.text, "middle", 90) for n, s in enumerate(lines)
        ]
    return []
