"""Hatching: inside its region, evenly spaced, continuous across a seam."""

from __future__ import annotations

import math

import pytest
import shapely

from benchjoin.drafting.hatch import hatch, outline
from benchjoin.errors import PaperError

PIECE = shapely.Polygon([(0, 0), (60, 0), (60, 40), (0, 40)], [[(10, 10), (30, 10), (30, 30), (10, 30)]])


def strokes(polygon, **how):
    return [shapely.LineString(line.points) for line in hatch(polygon, **how)]


@pytest.mark.parametrize("angle", [0, 30, 45, 90, 135, -45])
def test_hatching_stays_inside_and_off_holes(angle):
    inside = PIECE.buffer(1e-6)
    lines = strokes(PIECE, angle=angle)
    assert lines
    assert all(inside.contains(line) for line in lines)


@pytest.mark.parametrize("spacing", [1.0, 2.0, 3.5])
def test_hatching_covers_its_region_evenly(spacing):
    # the length of parallel lines over a region is its area over their spacing
    total = sum(line.length for line in strokes(PIECE, spacing=spacing))
    assert total * spacing == pytest.approx(PIECE.area, rel=0.06)


def test_neighbours_are_hatched_as_one():
    left, right = shapely.box(0, 0, 20, 30), shapely.box(20, 0, 50, 30)
    both = shapely.union_all(strokes(left) + strokes(right))
    whole = shapely.union_all(strokes(shapely.box(0, 0, 50, 30)))
    assert whole.difference(both.buffer(1e-6)).length < 0.2


def test_lines_lie_on_the_paper_grid():
    for line in hatch(PIECE, 2.0, 45.0):
        (x, y) = line.points[0]
        number = (y - x) / math.sqrt(2) / 2.0
        assert number == pytest.approx(round(number), abs=1e-9)


def test_the_same_region_is_hatched_the_same():
    assert hatch(PIECE) == hatch(PIECE)


def test_nothing_is_hatched_with_nothing():
    assert hatch(shapely.Polygon()) == ()
    assert outline(shapely.Polygon()) == ()


@pytest.mark.parametrize("spacing", [0, -1, math.nan, math.inf])
def test_a_spacing_that_is_none_is_refused(spacing):
    with pytest.raises(PaperError, match="spacing"):
        hatch(PIECE, spacing)


def test_an_outline_has_a_line_for_every_ring():
    lines = outline(shapely.MultiPolygon([PIECE, shapely.box(100, 0, 110, 5)]), "cut")
    assert [len(line.points) for line in lines] == [4, 4, 4]
    assert all(line.closed and line.kind == "cut" for line in lines)


@pytest.mark.parametrize("angle", [30, 45, 135])
def test_a_plain_box_is_hatched_as_a_region_of_any_shape_is(angle):
    box = shapely.box(3.1, -7.4, 41.7, 12.9)
    as_any_other = strokes(shapely.MultiPolygon([box]), angle=angle)
    alone = strokes(box, angle=angle)
    assert len(alone) == len(as_any_other) > 10
    assert all(a.equals_exact(b, 1e-9) for a, b in zip(alone, as_any_other, strict=True))
