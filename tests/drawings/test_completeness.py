"""From the part drawings alone every part can be made: a reader of printed numbers rebuilds it.

The reader takes sizes only from what is printed; places on the sheet tell it which block, which face and which edge a
number belongs to, as they tell a person.
"""

import re
from collections import defaultdict
from fractions import Fraction

import pytest
from designs import PLAIN_DESIGNS as DESIGNS
from designs import PLAIN_SAMPLES as SAMPLES

from benchjoin import lay_out
from benchjoin.drafting.primitives import Line, Text, text_box
from benchjoin.drawings.making.house import House
from benchjoin.drawings.views.part_drawing import part_drawings
from benchjoin.layout.parts import face_up
from benchjoin.lengths import INCH
from benchjoin.shop.marks import marks

FRAMES = {**DESIGNS, **SAMPLES}
NUMBER = r"\(?(?:\d+ )?\d+(?:/\d+)?(?:\.\d+)?(?: full| scant)?\)?"


def millimetres(printed, unit):
    """What a printed reading says."""
    words = printed.strip("()").replace("full", "").replace("scant", "").split()
    return float(sum(map(Fraction, words))) * (INCH if unit == "in" else 1.0)


class Block:
    """What is printed about one kind of part: its faces from the top down, each with what belongs to it."""

    def __init__(self, number):
        self.number = number
        self.texts = []
        self.lines = []


def is_head(text, texts):
    """The first line of a heading: bold, and no bold line right above it."""
    above = [t for t in texts if t.bold and abs(t.at[0] - text.at[0]) < 0.1 and 3.0 < t.at[1] - text.at[1] < 5.0]
    return text.bold and not above


def blocks(sheet, kinds):
    """Blocks of a sheet, one a figure, by the first mark of its heading."""
    found = []
    for figure in sheet.figures:
        texts = [item for item in figure.drawing if isinstance(item, Text)]
        (head,) = (text for text in texts if is_head(text, texts))
        block = Block(kinds[re.match(r"[A-Z]+\d*", head.string)[0]])
        block.texts = texts
        block.lines = [item for item in figure.drawing if isinstance(item, Line) and item.kind == "thin"]
        found.append(block)
    return found


def middle(text):
    x0, y0, x1, y1 = text_box(text).bounds
    return (x0 + x1) / 2, (y0 + y1) / 2


def drawn_faces(block):
    """Faces of a block by name, from the top down, with the numbers beside and below and the notes over each."""
    names = sorted((t for t in block.texts if re.fullmatch(r"\w+ (face|edge)", t.string)), key=lambda t: -t.at[1])
    heights = [t.at[1] for t in names]
    numbers = [t for t in block.texts if re.fullmatch(NUMBER, t.string)]
    zeros = [t for t in numbers if t.string == "0"]
    left = min(middle(t)[0] for t in zeros)
    across = sorted((t for t in numbers if middle(t)[0] < left - 3.0), key=lambda t: -middle(t)[1])
    assert len(across) == len(names), "each face has one width, from the top down"
    faces = []
    for place, name in enumerate(names):
        over = heights[place - 1] if place else 1e9
        under = heights[place + 1] if place + 1 < len(heights) else -1e9
        notes = [t for t in block.texts if re.search(r"deep|thick| up$", t.string) and name.at[1] < t.at[1] < over]
        # a note over the next face lies between the two names as well, but below the running line of this one
        row = [z.at[1] for z in zeros if under < z.at[1] < name.at[1]]
        ends = [t for t in numbers if middle(t)[0] >= left - 0.5 and row and abs(t.at[1] - row[0]) < 0.6]
        faces.append((name.string.split()[0], across[place].string, sorted(ends, key=lambda t: middle(t)[0]), notes))
    return faces


def foot_of(text, lines):
    """Where on the view the thin line comes from that ends at a text."""
    x, y = middle(text)

    def gap(line):
        end = line.points[-1]
        return abs(end[0] - x) + abs(end[1] - y)

    return min((line for line in lines if len(line.points) > 1), key=gap).points[0][0]


def cuts_read(ends, notes, lines, unit):
    """Cuts of a face: each depth note stands over the stretch between the two edges that it is read from."""
    edges = sorted((foot_of(t, lines), millimetres(t.string, unit)) for t in ends)
    columns = defaultdict(list)
    for note in notes:
        columns[round(middle(note)[0], 1)].append(note)
    found = []
    for stack in columns.values():
        deep = [n for n in stack if n.string.endswith("deep")]
        if not deep:
            continue
        (deep,) = deep
        at = foot_of(deep, lines)
        start = max((e for e in edges if e[0] < at), key=lambda e: e[0])[1]
        end = min((e for e in edges if e[0] > at), key=lambda e: e[0])[1]
        up = [n for n in stack if n.string.endswith(" up")]
        low, high = (millimetres(s, unit) for s in up[0].string[:-3].split(" to ")) if up else (None, None)
        found.append((start, end, millimetres(deep.string[:-5], unit), low, high))
    return sorted(found)


def wanted_cuts(part, face):
    turned = face_up(part, face)
    length, across, _ = turned.local(part.blank).size()
    found = []
    for cut in part.cuts:
        if cut.face == face:
            (u0, v0, w0), (u1, v1, w1) = turned.local(cut.box).low, turned.local(cut.box).high
            whole = v0 < 1e-6 and v1 > across - 1e-6
            band = (None, None) if whole else (max(v0, 0.0), min(v1, across))
            found.append((max(u0, 0.0), min(u1, length), w1 - max(w0, 0.0), *band))
    return sorted(found)


@pytest.fixture(scope="module", params=FRAMES)
def drawn(request):
    layout = lay_out(FRAMES[request.param])
    read, kinds = {}, {part.mark: part.kind for part in layout.parts}
    for sheet in part_drawings(layout, plain_parts=True):
        for block in blocks(sheet, kinds):
            assert block.number not in read
            read[block.number] = block
    return layout, read


def test_every_kind_of_part_is_drawn_once(drawn):
    layout, read = drawn
    assert set(read) == {part.kind for part in layout.parts}


def test_plain_boards_are_drawn_only_where_they_are_asked_for(drawn):
    layout, read = drawn
    plain = {p.identity for p in layout.parts if not p.marked_faces and p.outline.plain}
    shown = {name for sheet in part_drawings(layout) for figure in sheet.figures for name in figure.shows}
    assert shown == {part.identity for part in layout.parts if part.identity not in plain}
    assert set(read) == {part.kind for part in layout.parts}


def test_a_reader_of_the_printed_numbers_rebuilds_every_part(drawn):
    layout, read = drawn
    unit, half = layout.frame.tape.unit, layout.frame.tape.division / 2 + 1e-6

    def near(value):
        return None if value is None else pytest.approx(value, abs=half)

    for number, block in read.items():
        part = next(p for p in layout.parts if p.kind == number)
        faces = drawn_faces(block)
        cut = {face for face in {c.face for c in part.cuts}}
        assert cut <= {name for name, *_ in faces}, part
        sides = set()
        for name, across, ends, notes in faces:
            _, wide, through = face_up(part, name).local(part.blank).size()
            assert millimetres(across, unit) == near(wide), (part, name)
            sides.add(round(wide, 3))
            if ends:
                assert millimetres(ends[-1].string, unit) == near(part.length), (part, name)
            thick = [n for n in notes if n.string.endswith("thick")]
            if thick:
                assert millimetres(thick[0].string[:-6], unit) == near(through), (part, name)
                sides.add(round(through, 3))
            got, want = cuts_read(ends, notes, block.lines, unit), wanted_cuts(part, name)
            assert len(got) == len(want), (part, name, got, want)
            for one, other in zip(got, want, strict=True):
                assert one == tuple(map(near, other)), (part, name)
        assert sides == {round(part.width, 3), round(part.thickness, 3)}, part
        assert any(ends for _, _, ends, _ in faces), part


def test_marks_and_counts_are_printed_for_every_part(drawn):
    layout, read = drawn
    for number, block in read.items():
        same = [part for part in layout.parts if part.kind == number]
        told = " ".join(text.string for text in sorted(block.texts, key=lambda t: -t.at[1]))
        role = same[0].slot.role
        assert f"for {len(same)} {role.word if len(same) == 1 else role.plural}" in told
        assert told.startswith(marks(part.mark for part in same))
        if same[0].handed:
            assert f"{same[0].handed} hand" in told


OVER = {"third angle": 1, "first angle": -1}


@pytest.mark.parametrize("projection", OVER)
def test_the_second_face_stands_where_the_projection_sign_says(projection):
    """Of a leg that lies with its foot to the left and its back up, the left face is the upper or the lower edge."""
    layout = lay_out(DESIGNS["bench"])
    leg = layout.leg("back left")
    up = face_up(leg, leg.marked).v
    sheets = part_drawings(layout, house=House(projection=projection))
    (block,) = (b for s in sheets for b in blocks(s, {p.mark: p.kind for p in layout.parts}) if b.number == leg.kind)
    faces = [t for t in block.texts if re.fullmatch(r"\w+ face", t.string)]
    rows = {t.string.split()[0]: t.at[1] for t in faces}
    out = {"left": (-1, 0, 0), "right": (1, 0, 0)}
    for face in rows.keys() & out.keys():
        side = sum(a * b for a, b in zip(out[face], up, strict=True))
        assert (rows[face] - rows["back"]) * side * OVER[projection] > 0
    assert rows.keys() & out.keys()
