"""The parts sheet: every part has its mark, which points at its wood and stands in the table."""

from __future__ import annotations

import attrs
import pytest
import shapely
from designs import DESIGNS
from samples import SAMPLES

from benchjoin import Clear, Level, lay_out
from benchjoin.drafting.primitives import Disc, Line, Text, bounds
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.lists.parts_sheet import RADIUS, parts_sheet
from benchjoin.drawings.views.isometric import drawn_apart
from benchjoin.shop.cut_list import parts_table

FRAMES = {**DESIGNS, **SAMPLES}


@pytest.fixture(scope="module", params=FRAMES)
def layout(request):
    return lay_out(FRAMES[request.param])


def balloons(sheet):
    """Mark of each balloon, and the place at which its line points."""
    rings = [item for item in sheet.drawing if isinstance(item, Disc) and item.radius == RADIUS]
    texts = [item for item in sheet.drawing if isinstance(item, Text)]
    lines = [item for item in sheet.drawing if isinstance(item, Line) and item.kind == "thin" and len(item.points) == 2]
    for ring in rings:
        (number,) = (text.string for text in texts if near(text.at, ring.centre) < RADIUS)
        (line,) = (line for line in lines if abs(near(line.points[0], ring.centre) - RADIUS) < 1e-6)
        yield number, line.points[1]


def is_of_the_picture(line):
    """No edge of the picture is level, and all lines of the table are."""
    return line.kind == "visible" and abs(line.points[0][1] - line.points[1][1]) > 1e-6


def near(one, other):
    return shapely.Point(one).distance(shapely.Point(other))


def test_every_part_of_the_piece_has_its_mark(layout):
    assert sorted(mark for mark, _ in balloons(parts_sheet(layout))) == sorted(p.mark for p in seen(layout))


def seen(layout):
    """Parts of which a face is seen."""
    faces = {face.part for face in drawn_apart(layout, 1).faces}
    return [part for part in layout.piece(1) if part.name in faces]


def test_a_balloon_points_at_the_part_of_its_mark(layout):
    sheet, shown = parts_sheet(layout), drawn_apart(layout, 1)
    marks = {part.name: part.mark for part in layout.piece(1)}
    drawn = bounds(tuple(item for item in sheet.drawing if isinstance(item, Line) and is_of_the_picture(item)))
    x0, y0, x1, _ = shown.lines.bounds
    scale = (drawn[2] - drawn[0]) / (x1 - x0)
    for mark, (x, y) in balloons(sheet):
        place = shapely.Point((x - drawn[0]) / scale + x0, (y - drawn[1]) / scale + y0)
        own = [face for face in shown.faces if face.region.contains(place)]
        assert [marks[face.part] for face in own] == [mark]


def test_the_table_gives_the_finished_sizes_by_the_marks():
    layout = lay_out(DESIGNS["bench"])
    rows = {row[0]: row for row in parts_table(layout).rows}
    words = [item.string for item in parts_sheet(layout).drawing if isinstance(item, Text)]
    assert rows["A3, A4"][1:] == ("back leg", "70", "3 1/4", "1 5/16")
    assert {cell for row in rows.values() for cell in row} <= set(words)


def test_sixty_parts_are_marked_on_desk_paper():
    levels = [item for n in range(12) for item in (Clear(40), Level(f"tray {n}", front=45, back=45, ends=45))]
    layout = lay_out(attrs.evolve(DESIGNS["rack"], stack=levels))
    sheet = parts_sheet(layout, paper="A4")
    told = {item.string for item in sheet.drawing if isinstance(item, Text)}
    assert {part.mark for part in seen(layout)} <= told
    assert clashes(sheet.whole) == []


def test_a_way_through_the_sheet_leads_no_line_through_a_number(layout):
    rings = [item for item in parts_sheet(layout).drawing if isinstance(item, Disc) and item.radius == RADIUS]
    for n, ring in enumerate(rings):
        for other in rings[n + 1 :]:
            assert near(ring.centre, other.centre) > 2 * RADIUS
