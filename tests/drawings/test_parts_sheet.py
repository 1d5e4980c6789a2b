"""The parts sheet: marks are those of the table and of the part drawings, and stand on the wood that they name."""

from __future__ import annotations

import re

import attrs
import pytest
import shapely
from designs import DESIGNS, PLAIN_DESIGNS
from samples import SAMPLES

from benchjoin import Clear, Level, lay_out
from benchjoin.drafting.primitives import Disc, Line, Text, text_box
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.lists.parts_sheet import parts_sheet
from benchjoin.drawings.views.flags import flags
from benchjoin.drawings.views.isometric import drawn_apart
from benchjoin.drawings.views.part_drawing import part_drawings
from benchjoin.shop.cut_list import parts_table

FRAMES = {**DESIGNS, **SAMPLES}
MARK = re.compile(r"[A-Z]+\d*\b")
SCALE = 1 / 14


@pytest.fixture(scope="module", params=FRAMES)
def layout(request):
    return lay_out(FRAMES[request.param])


def marked(drawing):
    """Each mark of a picture with the place that it names: where its line begins, or else its own middle."""
    lines = [item for item in drawing if isinstance(item, Line) and item.kind == "thin"]
    dots = [item for item in drawing if isinstance(item, Disc) and item.filled]
    texts = [item for item in drawing if isinstance(item, Text) and item.bold and MARK.fullmatch(item.string)]
    for text in texts:
        box = text_box(text).buffer(1.0)
        ends = [line.points[0] for line in lines if box.intersects(shapely.Point(line.points[-1]))]
        ends = [end for end in ends if any(end == dot.centre for dot in dots)]
        yield text, ends[0] if ends else text_box(text).centroid.coords[0]


def kinds_of(layout):
    return {part.mark: part.kind for part in layout.parts}


def test_one_part_of_each_kind_is_marked(layout):
    kinds = kinds_of(layout)
    told = [text.string for text, _ in marked(parts_sheet(layout).drawing)]
    assert sorted(kinds[mark] for mark in told) == sorted({part.kind for part in layout.piece(1)})


def test_every_kind_of_the_piece_stands_in_the_table_by_its_marks_and_has_its_drawing(layout):
    kinds = kinds_of(layout)
    here = sorted({part.kind for part in layout.piece(1)})
    assert sorted(kinds[MARK.match(row[0])[0]] for row in parts_table(layout).rows) == here
    drawn = part_drawings(layout, plain_parts=True)
    heads = [item.string for one in drawn for item in one.drawing if isinstance(item, Text) and item.bold]
    assert {kinds[MARK.match(head)[0]] for head in heads if MARK.match(head)} == set(kinds.values())


def test_parts_that_are_not_as_drawn_are_named(layout):
    told = " ".join(item.string for item in parts_sheet(layout).drawing if isinstance(item, Text))
    others = {part.kind for part in layout.parts} - {part.kind for part in layout.piece(1)}
    assert ("Not as drawn here:" in told) == bool(others)


def test_no_item_number_is_left_on_paper(layout):
    words = [item.string for item in parts_sheet(layout).drawing if isinstance(item, Text)]
    assert not [word for word in words if re.search(r"\bItem\b", word)]
    heads = [t.string for one in part_drawings(layout) for t in one.drawing if isinstance(t, Text) and t.bold]
    assert not [head for head in heads if re.search(r"\bPart \d|\bmake \d", head)]


def test_a_mark_names_the_wood_that_it_stands_on_or_points_at(layout):
    shown, parts = drawn_apart(layout, 1), layout.piece(1)
    marks = {part.name: part.mark for part in parts}
    for text, (x, y) in marked(tuple(flags(parts, shown, SCALE))):
        place = shapely.Point(x / SCALE, y / SCALE)
        assert [marks[face.part] for face in shown.faces if face.region.contains(place)] == [text.string]


@pytest.mark.parametrize("design", PLAIN_DESIGNS)
def test_no_line_of_a_mark_crosses_another_part(design):
    layout = lay_out(PLAIN_DESIGNS[design])
    shown, parts = drawn_apart(layout, 1), layout.piece(1)
    names = {part.mark: part.name for part in parts}
    drawing = tuple(flags(parts, shown, SCALE))
    lines = {line.points[0]: shapely.LineString(line.points) for line in drawing if isinstance(line, Line)}
    for text, foot in marked(drawing):
        others = [face.region for face in shown.faces if face.part != names[text.string]]
        wood = shapely.transform(shapely.union_all(others), lambda at: at * SCALE)
        assert not text_box(text).intersects(wood) or foot not in lines
        assert foot not in lines or not lines[foot].intersects(wood), text.string


def test_the_table_gives_the_finished_sizes_by_the_marks():
    layout = lay_out(DESIGNS["bench"])
    rows = {row[1]: row for row in parts_table(layout).rows}
    words = [item.string for item in parts_sheet(layout).drawing if isinstance(item, Text)]
    assert rows["back leg"] == ("A3, A4", "back leg", "70", "3 1/4", "1 5/16")
    assert {cell for row in rows.values() for cell in row} <= set(words)


def test_sixty_parts_are_marked_on_desk_paper():
    levels = [item for n in range(12) for item in (Clear(40), Level(f"tray {n}", front=45, back=45, ends=45))]
    layout = lay_out(attrs.evolve(DESIGNS["rack"], stack=levels))
    sheet = parts_sheet(layout, paper="A4")
    kinds = kinds_of(layout)
    assert {kinds[text.string] for text, _ in marked(sheet.drawing)} == {part.kind for part in layout.piece(1)}
    assert clashes(sheet.whole) == []
