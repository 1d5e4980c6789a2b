"""The page of a set: what is laid on the clamped legs, every shoulder line struck across those that take it.

The parts lie side by side as they are clamped, datum ends flush on the left, one band for each way up. Each line
carries its reading from the datum end and says whose it is; waste is hatched and names its rail and depth. Without a
paper the page is full size, as large as it needs to be; on desk paper it is a reduced picture of the same.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs
import shapely

from ..drafting.arrange import place_in
from ..drafting.checkbar import check_bar
from ..drafting.hatch import hatch
from ..drafting.lettering import text_width, wrap
from ..drafting.primitives import Drawing, Line, Primitive, Text, bounds, figure_middle, shift, text_box
from ..drafting.sheet import Sheet
from ..drafting.spread import spread
from ..drafting.title_block import TitleBlock, block_size
from ..errors import CannotDraw, PaperError
from ..layout.blanks import OPPOSITE, OUT
from ..layout.layout import Layout
from ..layout.parts import Part, face_up
from ..layout.sets import Band, PartSet, Taker, Waste
from ..layout.sets import Line as MarkLine
from ..lengths import TOUCH
from ..trade.drawing import FULL_SIZE, MARGIN, SCALES
from ..trade.paper import PDF_LONGEST
from .page import PLAIN, House, block, both_ways, room, system

INSET = 6.0
"""Between the border and the drawing. [mm]"""


@attrs.frozen(kw_only=True)
class Look:
    """How the page is drawn at its scale. [mm]"""

    scale: float
    text: float
    reading: float
    hatch: float
    gap: float = 3.0


FULL = Look(scale=1.0, text=3.5, reading=7.0, hatch=6.0)


def set_page(layout: Layout, letter: str, *, paper: str | None = None, house: House | None = None) -> Sheet:
    """The page of one set: at full size, or reduced to a paper.

    Parameters
    ----------
    layout : Layout
    letter : str
        The set's letter; sets that are alike give the same page.
    paper : str, optional
        "Letter", "A4", "Tabloid", "A3" … for a reduced picture; full size without it.

    house : House, optional
        What the shop's sheets have in common, for the title block.

    Raises
    ------
    CannotDraw
        If the layout has errors: it is not for the wood.
    AddressError
        If there is no such set.
    PaperError
        If it does not fit the paper at any scale.
    """
    one = layout.set(letter)
    errors = layout.errors()
    if errors:
        told = "\n".join(f"  {finding.sentence}" for finding in errors)
        raise CannotDraw(f"Set {letter} is not drawn, because the frame cannot be built:\n{told}", findings=errors)
    return _full_size(layout, one, house or PLAIN) if paper is None else _reduced(layout, one, paper, house or PLAIN)


def _full_size(layout: Layout, one: PartSet, house: House) -> Sheet:
    """As large as it needs to be: the gang, an upright check bar on its left, a lying one beside the title block."""
    words = _words(layout, one, FULL_SIZE.label, house)
    gang = place_in(_gang(layout, one, FULL), (0.0, 0.0, 1e6, 1e6), "below left")
    upright, lying = check_bar((0.0, 0.0), "y"), check_bar((0.0, 0.0), "x")
    _, _, long, tall = bounds(gang)
    bar_width, bar_height = bounds(upright)[2], bounds(upright)[3]
    block_width, block_height = block_size(1000.0)
    left, foot = MARGIN + INSET, MARGIN + block_height + INSET
    width = left + max(bar_width + INSET + long, bar_height + INSET + block_width) + INSET + MARGIN
    height = foot + max(tall, bar_height) + INSET + MARGIN
    drawing = (
        *shift(gang, left + bar_width + INSET, height - MARGIN - INSET - tall),
        *shift(upright, left, foot),
        *shift(lying, left, MARGIN + INSET),
    )
    return _sheet(one, width, height, drawing, words, full_size=True)


def _reduced(layout: Layout, one: PartSet, paper: str, house: House) -> Sheet:
    """The largest scale at which the gang fits and its parts are wide enough to be named."""
    scales = [s for s in SCALES if s.system in (system(layout.frame), "both") and s.ratio < 1.0]
    thinnest = min(
        _across(part, face) for band in one.bands for part, face in zip(one.members, band.faces, strict=True)
    )
    for scale in sorted(scales, key=lambda s: -s.ratio):
        look = Look(scale=scale.ratio, text=2.5, reading=2.5, hatch=1.8, gap=2.0)
        if thinnest * scale.ratio < look.text * 1.4:
            break
        drawing = _gang(layout, one, look)
        words = _words(layout, one, scale.label, house)
        for width, height in reversed(both_ways(paper)):
            x0, y0, x1, y1 = room(width, height, words)
            inside = (x0 + 3.0, y0 + 3.0, x1 - 3.0, y1 - 3.0)
            a, b, c, d = bounds(drawing)
            if c - a <= inside[2] - inside[0] and d - b <= inside[3] - inside[1]:
                return _sheet(one, width, height, place_in(drawing, inside, "above"), words, full_size=False)
    raise PaperError(f"Set {one.letter} does not fit {paper} with its parts named. Take larger paper.")


def _sheet(one: PartSet, width: float, height: float, drawing: Drawing, words: TitleBlock, *, full_size: bool) -> Sheet:
    return Sheet(
        name=f"set-{one.letter.lower()}" + ("" if full_size else "-reduced"),
        title=f"Set {one.letter}: {one.title}" + ("" if full_size else ", reduced"),
        width=width,
        height=height,
        drawing=drawing,
        block=words,
        scale=words.scale,
        full_size=full_size,
    )


def _words(layout: Layout, one: PartSet, scale: str, house: House) -> TitleBlock:
    make = f"make {len(one.alike)}: {', '.join(one.alike)}"
    return block(layout.frame, house, kind="Set page", piece=f"Set {one.letter}, {one.title}, {make}", scale=scale)


def _gang(layout: Layout, one: PartSet, look: Look) -> Drawing:
    """The heading, and below it all bands, one below the other."""
    bands = tuple(_band(layout, one, band, look) for band in one.bands)
    left = min(bounds(band)[0] for band in bands)
    wide = max(bounds(band)[2] for band in bands) - left
    heading = tuple(_heading(layout, one, look, wide))
    drawn: list[Primitive] = list(heading)
    low = bounds(heading)[1] - look.gap
    for band in bands:
        drawn += shift(band, -left, low - bounds(band)[3])
        low -= bounds(band)[3] - bounds(band)[1] + 2 * look.gap
    return tuple(drawn)


def _heading(layout: Layout, one: PartSet, look: Look, wide: float) -> Iterator[Text]:
    """What to do with the page, in a few lines as wide as the gang."""
    legs = one.members[0].role == "leg"
    datum, flush = ("foot", "feet") if legs else ("datum end", "datum ends")
    unit = "inches" if layout.frame.tape.unit == "in" else "millimetres"
    trust = "Where paper and tape disagree, trust the tape."
    if look.scale < 1.0:
        trust = "This picture is reduced: do not lay it on the wood."
        if max(part.length for part in one.members) + 200.0 > PDF_LONGEST:
            trust += " At full size it is longer than a page can be: mark from the readings."
    first, last, mate = one.members[0].mark, one.members[-1].mark, "rail" if legs else "leg"
    told = (
        f"Clamp {first} to {last} side by side, {flush} flush; write {one.letter} on the end grain. "
        f"Readings are from the {datum}, in {unit}. Lay the {mate} itself between its lines, tick it, and cross the "
        f"waste before you cut. {trust}"
    )
    pitch = look.text * 1.6
    for number, line in enumerate(wrap(told, look.text, max(wide, 60 * look.text))):
        yield Text((0.0, -pitch * number), line, look.text)


def _band(layout: Layout, one: PartSet, band: Band, look: Look) -> Drawing:
    """One way up: its title and whose face is up, the parts, the waste, the lines with their labels."""
    rows = _rows(one.members, band, look)
    drawn: list[Primitive] = [*_parts(layout, one, band, rows, look), *_waste(layout, one, band, rows, look)]
    drawn += _lines(layout, one, band, rows, look)
    x0, _, x1, y1 = bounds(tuple(drawn))
    title = Text((x0, y1 + 1.5 * look.gap), f"{band.title[0].upper()}{band.title[1:]}", look.text, bold=True)
    whose = f"{_rolled(one, band)}{_whose(one, band)}. {_depths(layout, band)}"
    after = x0 + text_width(title.string, look.text, bold=True) + 2 * look.gap
    if look.scale == 1.0:
        return (*drawn, title, Text((after, title.at[1]), f"{_rolled(one, band)}{_depths(layout, band)}", look.text))
    lines = wrap(whose, look.text, max(x1 - after, 60 * look.text))
    pitch = look.text * 1.6
    high = title.at[1] + pitch * (len(lines) - 1)
    told = [Text((after, high - pitch * n), line, look.text) for n, line in enumerate(lines)]
    return (*drawn, Text((x0, high), title.string, look.text, bold=True), *told)


def _depths(layout: Layout, band: Band) -> str:
    """'Every cut is 5/8 deep', or each depth with its rails."""
    found: dict[str, list[str]] = {}
    for item in band.waste:
        depth = layout.frame.tape.read(item.box.high[2] - max(item.box.low[2], 0.0))
        found.setdefault(depth, []).append(item.mate)
    if len(found) == 1:
        return f"Every cut is {next(iter(found))} deep."
    return "; ".join(f"{depth} deep for {', '.join(dict.fromkeys(rails))}" for depth, rails in found.items()) + "."


def _rolled(one: PartSet, band: Band) -> str:
    """How each part comes from lying with its marked face up to this: the maker stands at the foot of the page."""
    ways: dict[str, list[str]] = {}
    for part, face in zip(one.members, band.faces, strict=True):
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


def _whose(one: PartSet, band: Band) -> str:
    """'A1 front left leg (front face), …'; of many rails only the faces that are up."""
    if len(one.members) > 8:
        return f"{len(one.members)} parts, the face that is cut up"
    return ", ".join(
        f"{part.mark} {part.identity} ({face} face)" for part, face in zip(one.members, band.faces, strict=True)
    )


def _rows(members: Sequence[Part], band: Band, look: Look) -> list[tuple[float, float]]:
    """Lower and upper edge of each member on the page, the first on top."""
    rows, top = [], 0.0
    for part, face in zip(members, band.faces, strict=True):
        high = _across(part, face) * look.scale
        rows.append((top - high, top))
        top -= high
    return rows


def _across(part: Part, face: str) -> float:
    """Width of a face of a part. [mm]"""
    return face_up(part, face).local(part.blank).size()[1]


def _parts(
    layout: Layout, one: PartSet, band: Band, rows: Sequence[tuple[float, float]], look: Look
) -> Iterator[Primitive]:
    """Outlines, the name of each part on the left, its length on the right, and which end is the datum."""
    read = layout.frame.tape.read
    legs = one.members[0].role == "leg"
    for part, face, (low, high) in zip(one.members, band.faces, rows, strict=True):
        yield from _openings(part, face, low, look)
        end = part.length * look.scale
        yield Line(((0.0, low), (end, low), (end, high), (0.0, high)), "visible", closed=True)
        middle = figure_middle((low + high) / 2, look.text)
        name = f"{part.mark}  {part.identity}, {face} face up" if look.scale == 1.0 else part.mark
        yield Text((-look.gap - 2 * look.text, middle), name, look.text, "end")
        yield Text((end + look.gap, middle), f"{'top' if legs else 'end'} {read(part.length)}", look.text)
    centre = rows[-1][0] / 2
    yield Text((-look.gap, centre), "foot" if legs else "datum", look.text, "middle", 90)


def _openings(part: Part, face: str, low: float, look: Look) -> Iterator[Line]:
    """Thin outlines where cuts from other faces break out on the face that is up."""
    turned, (length, width, _) = face_up(part, face), face_up(part, face).local(part.blank).size()
    for cut in part.cuts:
        (u0, v0, w0), (u1, v1, _) = turned.local(cut.box).low, turned.local(cut.box).high
        if cut.face != face and w0 <= TOUCH:
            x0, x1 = max(u0, 0.0) * look.scale, min(u1, length) * look.scale
            y0, y1 = low + max(v0, 0.0) * look.scale, low + min(v1, width) * look.scale
            yield Line(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), "thin", closed=True)


def _waste(
    layout: Layout, one: PartSet, band: Band, rows: Sequence[tuple[float, float]], look: Look
) -> Iterator[Primitive]:
    """Hatched wood between shoulder lines, with rail and depth where there is room to write them."""
    for item in band.waste:
        low = rows[item.member][0]
        (u0, v0, _w0), (u1, v1, _w1) = item.box.low, item.box.high
        length = one.members[item.member].length
        x0, x1 = max(u0, 0.0) * look.scale, min(u1, length) * look.scale
        y0, y1 = low + max(v0, 0.0) * look.scale, min(low + v1 * look.scale, rows[item.member][1])
        region = shapely.box(x0, y0, x1, y1)
        words = _waste_words(layout, item, (x0, y0, x1, y1), look)
        for text in words:
            region = region.difference(text_box(text).buffer(look.text * 0.3, join_style="mitre"))
        yield from hatch(region, look.hatch)
        yield from words


def _waste_words(layout: Layout, item: Waste, room: tuple[float, float, float, float], look: Look) -> list[Text]:
    x0, y0, x1, y1 = room
    depth = item.box.high[2] - max(item.box.low[2], 0.0)
    lines = [item.mate, f"{layout.frame.tape.read(depth)} deep"]
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


@attrs.frozen
class _Label:
    """A line of the set, where its label goes, and what is written there."""

    line: MarkLine
    above: bool
    reading: str
    words: str


def _lines(
    layout: Layout, one: PartSet, band: Band, rows: Sequence[tuple[float, float]], look: Look
) -> Iterator[Primitive]:
    labels = [_label(layout, one, line) for line in band.lines]
    for line in band.lines:
        for taker in line.takers:
            low = rows[taker.member][0]
            x = line.at * look.scale
            yield Line(((x, low + taker.low * look.scale), (x, low + taker.high * look.scale)), "visible")
    for above in (True, False):
        mine = [label for label in labels if label.above == above]
        if mine:
            yield from _label_row(mine, rows, look, above=above)


def _label(layout: Layout, one: PartSet, line: MarkLine) -> _Label:
    members = sorted({taker.member for taker in line.takers})
    above = members[0] == 0 or members[-1] != len(one.members) - 1
    whose = dict.fromkeys(_edge_words(one, taker) for taker in line.takers)
    marks = "" if len(members) == len(one.members) else " · " + " ".join(one.members[m].mark for m in members)
    return _Label(line, above, layout.frame.tape.read(line.at), f"{', '.join(whose)}{marks}")


def _edge_words(one: PartSet, taker: Taker) -> str:
    """'foot shelf, bottom' of a leg; 'shoulder' of a rail."""
    if one.members[taker.member].role == "rail":
        return "shoulder"
    return f"{taker.mate.partition('/')[0]} {'bottom' if taker.edge == 'near' else 'top'}"


def _label_row(
    labels: Sequence[_Label], rows: Sequence[tuple[float, float]], look: Look, *, above: bool
) -> Iterator[Primitive]:
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
