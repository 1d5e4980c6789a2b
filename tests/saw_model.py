"""A little saw, for tests: it takes a printed table of settings to the wood and says what was cut away.

It knows intervals and nothing of how settings are found. Figures are read off the table by its own reader, so what it
cuts is what a maker would cut who sets the machine to the printed mark. `faults` looks at every face by itself,
`wood_faults` at the wood: a head goes right across its face, whatever it meets there, a router and a chisel keep to the
notch where the table says that it is stopped.
"""

import itertools
import re
from fractions import Fraction

import numpy as np

INCH = 25.4
AXIS = {"front": 0, "back": 0, "left": 1, "right": 1, "cross": 1}
FACES = {"front": (1, -1), "back": (1, 1), "left": (0, -1), "right": (0, 1), "top": (2, 1), "bottom": (2, -1)}


def runs_along(part):
    """The axis along a part: of a leg up, of a rail by its side, of what is carried as its run says."""
    if part.slot.run:
        return {"along": 0, "across": 1, "up": 2}[part.slot.of.run]
    return 2 if part.role == "leg" else AXIS[part.side]


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
    axis = runs_along(part)
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
    removed = {}
    for o, low, high, depth in passes(found):
        removed.setdefault((o.notch.part.name, o.notch.face), []).append((low, high, depth))
    return removed


def passes(found):
    """Every pass of the printed settings: its operation, low, high and depth from the datum end."""
    unit, shop = found.tape.unit, found.shop
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
                yield o, low, high, height


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


def wood_faults(layout, found, parts=None):
    """Where the printed settings leave wood in a notch, or take wood that no notch wants, seen in all three directions.

    Printed rounding is allowed along the part and in depth. A notch that is buried is taken from its face.
    """
    removed, off = {}, found.tape.division / 2 + 1e-6
    for o, low, high, depth in passes(found):
        part, (axis, across) = o.notch.part, _axes(o.notch.part, o.notch.face)
        box = [[*part.blank.low], [*part.blank.high]]
        box[0][axis], box[1][axis] = part.blank.low[axis] + low, part.blank.low[axis] + high
        _to_depth(box, o.notch.face, across, depth)
        if o.tool.way != "dado head" and not o.notch.across:
            (own,) = [each for each in part.cuts if each.mate == o.notch.cut.mate and each.face == o.notch.face]
            _like(box, own.box, 3 - axis - across)
        removed.setdefault(part.name, []).append(box)
    for part in parts or layout.parts:
        yield from _wood(part, removed.get(part.name, []), off)


def _axes(part, face):
    return runs_along(part), FACES[face][0]


def _to_depth(box, face, across, depth):
    if FACES[face][1] < 0:
        box[1][across] = box[0][across] + depth
    else:
        box[0][across] = box[1][across] - depth


def _like(box, other, axis):
    box[0][axis], box[1][axis] = max(box[0][axis], other.low[axis]), min(box[1][axis], other.high[axis])


def _wood(part, gone, off):
    least, most = [], []
    for each in part.cuts:
        axis, across = _axes(part, each.face)
        box = [[*part.blank.low], [*part.blank.high]]
        for way in (axis, 3 - axis - across):
            _like(box, each.box, way)
        side = FACES[each.face][1]
        box[side < 0][across] = (each.box.high if side < 0 else each.box.low)[across]
        for boxes, by in ((least, -off), (most, off)):
            grown = [[*box[0]], [*box[1]]]
            grown[0][axis], grown[1][axis] = box[0][axis] - by, box[1][axis] + by
            grown[side < 0][across] += by if side < 0 else -by
            boxes.append(grown)
    corners = [*least, *most, *gone, [part.blank.low, part.blank.high]]
    edges = [sorted({round(end[n], 7) for box in corners for end in box}) for n in range(3)]
    middles = [np.array([(a + b) / 2 for a, b in itertools.pairwise(own) if b - a > 1e-5]) for own in edges]
    at = np.meshgrid(*middles, indexing="ij")

    def within(boxes):
        inside = np.zeros(at[0].shape, dtype=bool)
        for low, high in boxes:
            inside |= np.all([(low[n] < at[n]) & (at[n] < high[n]) for n in range(3)], axis=0)
        return inside

    blank, took = within([(part.blank.low, part.blank.high)]), within(gone)
    for told, wrong in (("wood stays", blank & within(least) & ~took), ("cut away", blank & took & ~within(most))):
        if wrong.any():
            place = [round(float(own[wrong][0]), 3) for own in at]
            yield f"{part.name}: {told} at {place}"
