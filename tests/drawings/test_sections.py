"""Sections: what is cut is exactly the wood that stands there; end and long grain look different in black only."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
import shapely
from designs import PLAIN_DESIGNS as DESIGNS
from designs import PLAIN_SAMPLES as SAMPLES
from manifold3d import CrossSection, Manifold
from solid_wood import carved

from benchjoin import Clear, Frame, Leg, Level, Rail, Stock, lay_out
from benchjoin.drafting.primitives import Line, Text
from benchjoin.drawings.views.section import section
from benchjoin.errors import AddressError, BenchjoinError
from benchjoin.frame.edges import Arc
from benchjoin.trade.standards import SCALES

FRAMES = {**DESIGNS, **SAMPLES}
RATIO = {scale.label: scale.ratio for scale in SCALES}
TO_UP = {  # world axes turned so that the axis that is cut points up
    "x": [(0.0, 1.0, 0.0, 0.0), (0.0, 0.0, 1.0, 0.0), (1.0, 0.0, 0.0, 0.0)],
    "y": [(0.0, 0.0, 1.0, 0.0), (1.0, 0.0, 0.0, 0.0), (0.0, 1.0, 0.0, 0.0)],
    "z": [(1.0, 0.0, 0.0, 0.0), (0.0, 1.0, 0.0, 0.0), (0.0, 0.0, 1.0, 0.0)],
}


@pytest.fixture(scope="module", params=FRAMES)
def layout(request):
    return lay_out(FRAMES[request.param])


def cut_wood(sheet):
    """Area inside the outlines of what is cut, rings less the holes in them. [mm² at full size]"""
    lines = [item for item in sheet.drawing if isinstance(item, Line)]
    if not all(line.closed for line in lines if line.kind == "cut"):
        return hatched_cells(lines) / RATIO[sheet.scale] ** 2
    whole = shapely.Polygon()
    for ring in sorted((shapely.Polygon(line.points) for line in lines if line.kind == "cut"), key=lambda r: -r.area):
        whole = whole.symmetric_difference(ring)
    return whole.area / RATIO[sheet.scale] ** 2


def hatched_cells(lines):
    """Area of what is hatched, where an outline is thin in places since it would run together with another. [mm²]"""
    drawn = [shapely.LineString([*line.points, *line.points[: int(line.closed)]]) for line in lines]
    slanted = [all(a != b for a, b in zip(line.points[0], line.points[-1], strict=True)) for line in lines]
    hatching = [line for line, slants in zip(drawn, slanted, strict=True) if slants and len(line.coords) == 2]
    edges = [line for line, slants in zip(drawn, slanted, strict=True) if not slants or len(line.coords) > 2]
    edges = shapely.union_all(edges, grid_size=0.05)  # what gives way stops a hair before
    cells = shapely.get_parts(shapely.polygonize(shapely.get_parts(edges)))
    tree = shapely.STRtree([line.interpolate(0.5, normalized=True) for line in hatching])
    return sum(cell.area for cell in cells if len(tree.query(cell, predicate="contains")))


def sliced(layout, axis, at):
    """Area of the wood of a piece at a place of an axis, by another kernel. [mm²]"""
    wood = sum((carved(part) for part in layout.piece(1)), Manifold())
    return wood.transform(TO_UP[axis]).slice(at).area()


def places(layout, axis):
    """Places that meet wood and no face: a little inside of edges, and through the middle."""
    n = "xyz".index(axis)
    boxes = [box for part in layout.piece(1) for box in (part.blank, *(cut.box for cut in part.cuts))]
    edges = sorted({round(end, 3) for box in boxes for end in (box.low[n], box.high[n])})
    found = [(a + b) / 2 for a, b in pairwise(edges) if b - a > 0.5]
    return [at for at in (found[0], found[len(found) // 2], found[-1]) if at > 0]


@pytest.mark.parametrize("axis", "xyz")
def test_what_is_cut_is_the_wood_that_stands_there(layout, axis):
    for at in places(layout, axis):
        asked = {"at": at} if axis == "z" else {axis: at}
        if sliced(layout, axis, at) == 0:
            with pytest.raises(AddressError, match="meets no wood"):
                section(layout, **asked)
            continue
        sheet = section(layout, **asked)
        whole = all(item.closed for item in sheet.drawing if isinstance(item, Line) and item.kind == "cut")
        assert cut_wood(sheet) == pytest.approx(sliced(layout, axis, at), rel=1e-6 if whole else 2e-3), (axis, at)


def test_a_section_at_a_level_cuts_its_highest_rails_and_those_that_share_a_height_with_them(layout):
    for level in layout.frame.levels():
        own = [part.blank for part in layout.piece(1) if part.level == level.name and part.role == "rail"]
        low = max(b.low[2] for b in own)
        high = min(b.high[2] for b in own if b.high[2] > low + 1e-6)
        area = cut_wood(section(layout, level.name))
        assert area == pytest.approx(sliced(layout, "z", (low + high) / 2), rel=1e-6)


def test_a_rail_with_an_arc_is_cut_where_its_wood_still_is():
    """By hand: the arc runs 856 from shoulder to shoulder and rises 20, so its radius is 4589.6; where it has risen
    over 10, 2 √(20 · 4589.6 − 100) = 605.6 of the rail are gone. Four legs 50 × 60 have lost 22 × 60 each to the rails.
    """
    post, lath = Stock("oak post", thickness=50, width=60), Stock("oak lath", thickness=22)
    frame = Frame(
        name="Arched",
        length=1000,
        depth=400,
        front=Leg(post, height=500),
        back=Leg(post, height=500),
        rail_stock=lath,
        stack=[Clear(200), Level("low", front=Rail(90, lower_edge=Arc(20)), back=90)],
    )
    wood = 4 * 28 * 60 + (1000 - 605.6) * 22 + 1000 * 22
    assert cut_wood(section(lay_out(frame), 210)) == pytest.approx(wood, rel=1e-3)


def test_wood_that_ends_at_the_place_is_not_cut():
    layout = lay_out(DESIGNS["rack"])  # front and back rails end at 205, where end rails begin
    wood = sum((carved(part) for part in layout.piece(1)), Manifold())
    both_sides = wood.slice(204.99) ^ wood.slice(205.01)
    apart = sum((carved(part).slice(204.99) ^ carved(part).slice(205.01) for part in layout.piece(1)), CrossSection())
    assert 0 < apart.area() < both_sides.area()
    assert cut_wood(section(layout, 205)) == pytest.approx(apart.area(), rel=1e-6)


def hatching(sheet):
    """Angles of the lines inside of what is cut, in degrees."""
    rings = [shapely.Polygon(line.points) for line in sheet.drawing if isinstance(line, Line) and line.kind == "cut"]
    inside = shapely.union_all(rings)
    for line in sheet.drawing:
        if isinstance(line, Line) and line.kind == "thin" and len(line.points) == 2:
            stroke = shapely.LineString(line.points)
            if stroke.interpolate(0.5, normalized=True).within(inside) and stroke.within(inside.buffer(1e-6)):
                (x0, y0), (x1, y1) = line.points
                yield round(math.degrees(math.atan2(y1 - y0, x1 - x0))) % 180, stroke


def test_end_grain_and_long_grain_slant_two_ways_so_that_no_line_is_taken_for_a_joint():
    layout = lay_out(DESIGNS["bench"])
    sheet = section(layout, "bench")  # legs are cut across, front and back rails along x, end rails along y
    assert {angle for angle, _ in hatching(sheet)} == {45, 135}
    legs_only = section(layout, 100)
    assert {angle for angle, _ in hatching(legs_only)} == {45}
    upright = section(layout, y=5)  # front rails are cut along their length; they cover the notched legs
    assert 135 in {angle for angle, _ in hatching(upright)}


def test_nothing_is_dashed_over_hatching(layout):
    sheet = section(layout, layout.frame.levels()[0].name)
    cut = [shapely.Polygon(line.points) for line in sheet.drawing if isinstance(line, Line) and line.kind == "cut"]
    inside = shapely.union_all(cut).buffer(-1e-3)
    for line in sheet.drawing:
        if isinstance(line, Line) and line.kind.startswith("hidden"):
            assert shapely.LineString(line.points).intersection(inside).length == pytest.approx(0, abs=1e-6)


def test_every_bit_of_cut_wood_is_hatched(layout):
    sheet = section(layout, layout.frame.levels()[0].name)
    strokes = shapely.union_all([stroke for _, stroke in hatching(sheet)])
    for line in sheet.drawing:
        if isinstance(line, Line) and line.kind == "cut":
            assert shapely.Polygon(line.points).intersection(strokes).length > 0


def test_a_section_says_where_it_is_and_from_where_it_is_seen():
    layout = lay_out(DESIGNS["bench"])
    assert section(layout, "12 in").title == "Horizontal section at 12 in over the floor"
    assert section(layout, x="10 in").title == "Section 10 in from the left end, seen from the left"
    assert section(layout, y="1/4 in").title == "Section 1/4 in from the front, seen from the front"
    assert "bench" in section(layout, "bench").title


def test_what_lies_before_the_cut_is_gone():
    layout = lay_out(DESIGNS["bench"])
    sheet = section(layout, y="22 in")
    words = [item.string for item in sheet.drawing if isinstance(item, Text)]
    assert "35 1/2" in words  # of the bench's back rail
    assert "9 3/4" not in words  # of the foot shelf's front rail


@pytest.mark.parametrize(
    "asked",
    [{"at": "no such level"}, {"at": "9 m"}, {"x": "9 m"}, {"y": "5000 mm"}, {}, {"at": 100, "x": 5}, {"at": -5}],
)
def test_a_place_without_wood_is_answered(asked):
    with pytest.raises(BenchjoinError):
        section(lay_out(DESIGNS["bench"]), **asked)


def test_an_unknown_level_is_answered_with_those_there_are():
    with pytest.raises(AddressError, match="foot shelf, bench, hook rail, head rail"):
        section(lay_out(DESIGNS["bench"]), "shelf")
