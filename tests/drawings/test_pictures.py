"""Pictures: the whole as it stands, and drawn apart so that one sees which way each rail enters its notches."""

from __future__ import annotations

import math
from collections import defaultdict
from itertools import combinations

import numpy as np
import pytest
import shapely
from boarded_designs import bench as boarded_bench
from designs import STRAIGHT_DESIGNS
from samples import SAMPLES
from solid_wood import apart as far_apart

from benchjoin import lay_out
from benchjoin.drafting.primitives import Line, bounds
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.views.isometric import apart, drawn_apart, exploded, isometric, picture
from benchjoin.drawings.views.looking import ISOMETRIC
from benchjoin.drawings.views.shade import FINEST, SPACING

FRAMES = {**STRAIGHT_DESIGNS, **SAMPLES}
FACES = {"front": (1, -1), "back": (1, 1), "left": (0, -1), "right": (0, 1), "top": (2, 1)}


@pytest.fixture(scope="module", params=FRAMES)
def layout(request):
    return lay_out(FRAMES[request.param])


def spread_out(layout):
    shifts = apart(layout, 1)
    return [part.moved(shifts[part.identity]) for part in layout.piece(1)]


def seen_area(faces):
    found = defaultdict(float)
    for face in faces:
        found[face.part] += face.region.area
    return found


def test_drawn_apart_no_part_is_in_the_place_of_another(layout):
    if any(part.slot.run for part in layout.parts):
        pytest.skip("boards that go up may come to the level above")
    for one, other in combinations(spread_out(layout), 2):
        assert far_apart(one.blank, other.blank), (one, other)


def test_drawn_apart_enough_of_every_part_is_seen_to_know_it(layout):
    if any(part.slot.run for part in layout.parts):
        pytest.skip("boards lie over what carries them, and stand before it where they run up")
    seen = seen_area(drawn_apart(layout, 1).faces)
    for part in spread_out(layout):
        alone = sum(face.region.area for face in picture([part]).faces)
        assert seen[part.name] > 0.4 * alone, part


def test_a_rail_leaves_its_legs_by_the_face_that_is_notched(layout):
    shifts = apart(layout, 1)
    for joint in layout.joints:
        for cut in joint.cuts:
            if joint.piece == 1 and cut.part == joint.host:
                away = np.subtract(shifts[joint.guest], shifts[joint.host])
                axis, out = FACES[cut.face]
                assert away[axis] * out > 10, joint


def test_a_way_leads_from_each_rail_to_each_leg_that_lets_it_in():
    layout = lay_out(STRAIGHT_DESIGNS["bench"])
    ways = drawn_apart(layout, 1).ways
    shifts = apart(layout, 1)
    rail, leg = layout.part("1/bench/front rail"), layout.part("1/front left leg")
    place = [(max(a, c) + min(b, d)) / 2 for a, b, c, d in zip(*ends(leg), *ends(rail), strict=True)]
    line = shapely.LineString(ISOMETRIC.project([np.add(place, shifts[name.identity]) for name in (leg, rail)]))
    assert ways.intersection(line.buffer(0.01)).length > 10  # all of it but what wood covers


def ends(part):
    return part.blank.low, part.blank.high


def test_the_picture_shows_the_same_wood_as_the_lines_enclose(layout):
    seen = picture(layout.piece(1))
    wood = shapely.union_all([face.region for face in seen.faces])
    assert wood.boundary.difference(seen.lines.buffer(0.01)).length == pytest.approx(0, abs=0.1)


@pytest.mark.parametrize("draw", [isometric, exploded])
def test_edges_run_along_the_three_axes_and_fill_the_sheet(layout, draw):
    sheet = draw(layout)
    for item in sheet.drawing:
        if isinstance(item, Line) and item.kind == "visible":
            for (x0, y0), (x1, y1) in zip(item.points, item.points[1:], strict=False):
                if math.hypot(x1 - x0, y1 - y0) > 0.5:
                    angle = math.degrees(math.atan2(y1 - y0, x1 - x0)) % 180
                    assert min(abs(angle - axis) for axis in (30, 90, 150)) < 0.5
    x0, y0, x1, y1 = bounds(sheet.drawing)
    assert max((x1 - x0) / sheet.width, (y1 - y0) / (sheet.height - 36)) > 0.6
    assert sheet.scale == "not to scale"
    assert clashes(sheet.whole) == []


def test_light_and_shade_are_told_by_lines_of_the_finest_width_on_faces_away_from_the_light():
    """Light comes from above and the front right: of a cube the top and the front are bright, the left is in shade."""
    seen = picture(lay_out(boarded_bench).piece(1))
    shade = [line for line in seen.drawing(1 / 10) if line.kind == "shade"]
    dark = shapely.transform(shapely.union_all(seen.shade), lambda at: at / 10).buffer(1e-6)
    assert len(shade) > 100
    assert all(dark.contains(shapely.LineString(line.points)) for line in shade)
    bright = [face.region for face in seen.faces if not any(face.region.equals(region) for region in seen.shade)]
    assert dark.intersection(shapely.transform(shapely.union_all(bright), lambda at: at / 10)).area < 0.01
    # parallel lines cover a region with its area over their spacing
    wide = [one for one in seen.shade if 2 * one.area / one.length / 10 >= FINEST]
    area = sum(one.area for one in wide) / 100
    assert sum(shapely.LineString(line.points).length for line in shade) * SPACING == pytest.approx(area, rel=0.1)


def test_no_line_of_shade_runs_with_an_edge():
    seen = picture(lay_out(STRAIGHT_DESIGNS["rack"]).piece(1))
    for line in seen.drawing(1 / 10):
        if line.kind == "shade":
            (x0, y0), (x1, y1) = line.points
            assert round(math.degrees(math.atan2(y1 - y0, x1 - x0))) % 180 == 120
