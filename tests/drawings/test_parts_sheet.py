"""The parts sheet: item numbers agree with the table, the part drawings, and the wood that they point at."""

from __future__ import annotations

import re

import pytest
import shapely
from designs import DESIGNS
from samples import SAMPLES

from benchjoin import lay_out
from benchjoin.drafting.primitives import Disc, Line, Text, bounds
from benchjoin.drawings.lists.parts_sheet import RADIUS, parts_sheet
from benchjoin.drawings.views.isometric import drawn_apart
from benchjoin.drawings.views.part_drawing import part_drawings
from benchjoin.shop.cut_list import parts_table

FRAMES = {**DESIGNS, **SAMPLES}


@pytest.fixture(scope="module", params=FRAMES)
def layout(request):
    return lay_out(FRAMES[request.param])


def balloons(sheet):
    """Number of each balloon, and the place at which its line points."""
    rings = [item for item in sheet.drawing if isinstance(item, Disc) and item.radius == RADIUS]
    texts = [item for item in sheet.drawing if isinstance(item, Text)]
    lines = [item for item in sheet.drawing if isinstance(item, Line) and item.kind == "thin" and len(item.points) == 2]
    for ring in rings:
        (number,) = (text.string for text in texts if near(text.at, ring.centre) < RADIUS)
        (line,) = (line for line in lines if abs(near(line.points[0], ring.centre) - RADIUS) < 1e-6)
        yield int(number), line.points[1]


def is_of_the_picture(line):
    """No edge of the picture is level, and all lines of the table are."""
    return line.kind == "visible" and abs(line.points[0][1] - line.points[1][1]) > 1e-6


def near(one, other):
    return shapely.Point(one).distance(shapely.Point(other))


def test_numbers_are_those_of_the_table_and_of_the_part_drawings(layout):
    sheet = parts_sheet(layout)
    numbers = sorted(number for number, _ in balloons(sheet))
    assert numbers == sorted({part.kind for part in layout.piece(1)})
    told = " ".join(item.string for item in sheet.drawing if isinstance(item, Text))
    numbers = sorted([*numbers, *(int(n) for n in re.findall(r"Item (\d+): ", told))])  # what only other pieces have
    assert numbers == sorted(int(row[0]) for row in parts_table(layout).rows)
    heads = [t.string for sheet in part_drawings(layout) for t in sheet.drawing if isinstance(t, Text) and t.bold]
    assert numbers == sorted(int(m[1]) for head in heads if (m := re.match(r"Part (\d+): ", head)))


def test_a_balloon_points_at_a_part_of_its_kind(layout):
    sheet, shown = parts_sheet(layout), drawn_apart(layout, 1)
    kinds = {part.name: part.kind for part in layout.piece(1)}
    drawn = bounds(tuple(item for item in sheet.drawing if isinstance(item, Line) and is_of_the_picture(item)))
    x0, y0, x1, _ = shown.lines.bounds
    scale = (drawn[2] - drawn[0]) / (x1 - x0)
    for number, (x, y) in balloons(sheet):
        place = shapely.Point((x - drawn[0]) / scale + x0, (y - drawn[1]) / scale + y0)
        own = [face for face in shown.faces if face.region.contains(place)]
        assert [kinds[face.part] for face in own] == [number]


def test_the_table_gives_count_and_finished_sizes_of_every_kind():
    layout = lay_out(DESIGNS["bench"])
    rows = {row[0]: row for row in parts_table(layout).rows}
    words = [item.string for item in parts_sheet(layout).drawing if isinstance(item, Text)]
    assert rows["2"][1:] == ("back leg", "6", "70", "3 1/4", "1 5/16")  # three benches with two back legs each
    assert {cell for row in rows.values() for cell in row} <= set(words)


def test_a_way_through_the_sheet_leads_no_line_through_a_number(layout):
    rings = [item for item in parts_sheet(layout).drawing if isinstance(item, Disc) and item.radius == RADIUS]
    for n, ring in enumerate(rings):
        for other in rings[n + 1 :]:
            assert near(ring.centre, other.centre) > 2 * RADIUS
