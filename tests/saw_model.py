"""A little saw, for tests: it takes a printed table of settings to the wood and says what was cut away.

It knows intervals and nothing of how settings are found. Figures are read off the table by its own reader, so what it
cuts is what a maker would cut who sets the machine to the printed mark.
"""

import re
from fractions import Fraction

INCH = 25.4
AXIS = {"front": 0, "back": 0, "left": 1, "right": 1, "cross": 1}
FACES = {"front": (1, -1), "back": (1, 1), "left": (0, -1), "right": (0, 1)}


def figure(text, unit):
    """'-1 3/4 full' as mm: the mark itself, whatever lies off it."""
    words = text.replace("full", "").replace("scant", "").split()
    sign = -1 if words[0].startswith("-") else 1
    words[0] = words[0].lstrip("-")
    total = sum(Fraction(word) for word in words)
    return float(sign * total) * (INCH if unit == "in" else 1.0)


def figures(text, unit):
    """The figures of a cell: '7, stands', 'lines 1 and 2', 'guides -6 and 186'."""
    plain = re.sub(r"^(lines?|guides|no stop|no guide)\b|, stands$", "", text)
    return [figure(piece, unit) for piece in plain.split(" and ") if piece.strip()]


def printed_marks(cell):
    """The marks of the parts in a cell: 'A1–A3, B1' as A1, A2, A3, B1."""
    found = set()
    for letter, first, last in re.findall(r"\b([A-Z]+)(\d+)(?:–[A-Z]+(\d+))?", cell):
        found |= {f"{letter}{n}" for n in range(int(first), int(last or first) + 1)}
    return found


def wanted(part):
    """What the layout wants out of a part: (face, low, high, depth) from its datum end, read off its boxes."""
    axis = 2 if part.role == "leg" else AXIS[part.side]
    for cut in part.cuts:
        low = max(cut.box.low[axis], part.blank.low[axis]) - part.blank.low[axis]
        high = min(cut.box.high[axis], part.blank.high[axis]) - part.blank.low[axis]
        across, side = FACES[cut.face]
        if side < 0:
            depth = cut.box.high[across] - part.blank.low[across]
        else:
            depth = part.blank.high[across] - cut.box.low[across]
        yield cut.face, low, high, depth


def cut(found):
    """Run the printed settings: for each part and face what is cut away, (low, high, depth) from the datum end."""
    unit, shop = found.tape.unit, found.shop
    removed = {}
    rows = [row for row in found.table().rows if row[0]]
    assert len(rows) == len(found.notching)
    for row, setting in zip(rows, found.notching, strict=True):
        height, places = figure(row[2], unit), figures(row[3], unit)
        assert printed_marks(row[4]) == {o.notch.part.mark for o in setting.operations}
        assert int(row[5]) == sum(o.passes * o.steps for o in setting.operations)
        for o in setting.operations:
            length = o.notch.part.length
            for low, high in _intervals(row[1], row[3], places, o, length, shop, found.tape):
                low, high = max(low, 0.0), min(high, length)
                if o.notch.end == "top":
                    low, high = length - high, length - low
                removed.setdefault((o.notch.part.name, o.notch.face), []).append((low, high, height))
    return removed


def _intervals(tool, told, places, o, length, shop, tape):
    if tool == "saw and chisel":
        low = 0.0 if o.edge in ("far", "through") else places[0]
        high = length if o.edge in ("near", "through") else places[-1]
        return [(low, high)]
    width = o.tool.width
    overlap = min(max(shop.overlap, tape.division), width / 2)
    step = width - overlap
    if tool.endswith("bit"):
        return _routed(places, o, length, width, step, (shop.router.base - width) / 2)
    return _sawn(places, told.startswith("line"), o, length, width, step, tape)


def _routed(places, o, length, width, step, offset):
    low = 0.0 if o.edge in ("far", "through") else places[0] + offset
    high = length if o.edge in ("near", "through") else places[-1] - offset
    starts = [min(low + n * step, high - width) for n in range(o.passes)]
    return [(start, start + width) for start in starts] if o.passes > 1 else [(low, low + width)]


def _sawn(places, to_line, o, length, width, step, tape):
    far_line = round(o.notch.high / tape.division) * tape.division  # struck on the wood as it is printed
    if o.edge == "through":
        return [(n * step, n * step + width) for n in range(o.passes)]
    if o.edge == "far":
        start = places[0] - width if to_line else places[0]
        starts = [start - n * step for n in range(o.passes)]
    elif o.edge == "near":
        most = length if o.notch.high >= length - 1e-6 else far_line - width
        starts = [places[0], *(min(places[0] + n * step, most) for n in range(1, o.passes))]
    else:
        starts = [places[0]]
    return [(start, start + width) for start in starts]


def left_of(intervals, others):
    """What is left of some intervals when others are taken off them."""
    found = list(intervals)
    for low, high in others:
        rest = []
        for a, b in found:
            rest += [(a, min(b, low))] if a < low else []
            rest += [(max(a, high), b)] if b > high else []
        found = [(a, b) for a, b in rest if b - a > 1e-6]
    return found


def faults(layout, found, parts=None):
    """Where the printed settings leave wood in a notch, or take wood outside one, by more than the printed rounding."""
    removed, off = cut(found), found.tape.division / 2 + 1e-6
    for part in parts or layout.parts:
        own = {}
        for face, low, high, depth in wanted(part):
            own.setdefault(face, []).append((low, high, depth))
        for face in {*own, *(f for name, f in removed if name == part.name)}:
            yield from _faults(part, face, own.get(face, []), removed.get((part.name, face), []), off)


def _faults(part, face, own, gone, off):
    for low, high, depth in own:
        deep = [(a, b) for a, b, d in gone if abs(d - depth) <= off or d > depth]
        if stays := left_of([(low + off, high - off)], deep):
            yield f"{part.name}, {face} face: wood stays at {stays} of {low}–{high}"
    for a, b, deep in gone:
        allowed = [(low - off, high + off) for low, high, depth in own if depth >= deep - off]
        if over := left_of([(a, b)], allowed):
            yield f"{part.name}, {face} face: cut away at {over}, {deep} deep"
