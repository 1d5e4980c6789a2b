"""Shaped edges against geometry of other people's making.

Chord and rise of an arc: r = c²/8h + h/2 (Machinery's Handbook, "Segments of circles", from memory; any textbook of
geometry). Points of an arc are read from the printed template by pypdfium2 and fitted to a circle by numpy's least
squares; areas are those of shapely on the polygon that is drawn, and by Green's theorem on the points read back.
"""

from __future__ import annotations

import numpy as np
import pytest
from read_paper import read_pages
from topped import CURVES

from benchjoin import Arc, Clear, Frame, Leg, Level, Rail, Stock, lay_out
from benchjoin.curves import ArcCurve, OgeeCurve
from benchjoin.drafting.writers.pdf import bind_pdf
from benchjoin.drawings.templates.edge.pages import edge_templates

WIDE = 0.5


BENCH = Frame(
    name="Small bench",
    length=460,
    depth=300,
    front=Leg(Stock("post", thickness=40, width=40), height=420),
    back=Leg(Stock("post", thickness=40, width=40), height=420),
    rail_stock=Stock("rail", thickness=20),
    stack=[Clear(), Level("seat", front=Rail(90, lower_edge=Arc(40)), back=90, ends=90, flush="front leg top")],
    tape="1 mm",
)
"""Between legs of 40 there are 380, less flats of 12: a chord of 356 with a rise of 40."""
RADIUS = 356**2 / (8 * 40) + 20


def drawn_arc(path):
    """The wide line with the most points on the page of the template. [mm]"""
    path.write_bytes(bind_pdf(edge_templates(lay_out(BENCH), paper="A4"), title="edges"))
    (page,) = read_pages(path)
    line = max((stroke for stroke in page.strokes if abs(stroke.width - WIDE) < 0.01), key=lambda s: len(s.points))
    return np.array(line.points)


def circle_through(points):
    """Centre and radius of the circle that lies nearest to points: x² + y² = 2ax + 2by + c."""
    x, y = np.transpose(points)
    (a, b, c), *_ = np.linalg.lstsq(np.column_stack([2 * x, 2 * y, np.ones_like(x)]), x**2 + y**2, rcond=None)
    return (a, b), np.sqrt(c + a**2 + b**2)


@pytest.mark.parametrize("chord, rise, radius", [(1000, 50, 2525), (600, 100, 500), (48, 12, 30), (80, 40, 40)])
def test_radius_by_chord_and_rise(chord, rise, radius):
    """600 and 100: 360000/800 + 50 = 500. A half circle of 80 has a rise of 40."""
    assert ArcCurve(0.0, float(chord), float(rise)).radius == pytest.approx(radius)


def test_area_of_a_half_circle_and_of_a_quarter():
    """π r²/2; and the segment of 90°, (π/4 − 1/2) r²."""
    assert ArcCurve(0.0, 80.0, 40.0).area(0.0, 80.0) == pytest.approx(np.pi * 1600 / 2)
    chord, rise = 40 * np.sqrt(2), 40 * (1 - np.sqrt(0.5))
    assert ArcCurve(5.0, 5.0 + chord, rise).area(0.0, 200.0) == pytest.approx((np.pi / 4 - 0.5) * 1600)


def test_an_ogee_takes_half_of_its_box_at_each_end():
    """An S-curve is its own image about its middle, so over its run it takes half of run × fall."""
    curve = OgeeCurve(10.0, 510.0, 30.0, 120.0)
    assert curve.area(10.0, 130.0) == pytest.approx(30 * 120 / 2, rel=1e-6)
    assert curve.area(0.0, 520.0) == pytest.approx(30 * (500 - 120), rel=1e-6)


HALL_BENCH = lay_out(CURVES)


@pytest.mark.parametrize(
    "name",
    ["seat/front rail", "seat/back rail", "seat/left rail", "crest/back rail", "shelf/front rail", "shelf/board 1"],
)
def test_area_of_each_shaped_part_is_that_of_its_polygon(name):
    """Shapely's area of the outline that is drawn; chords lie within 0.05 of the curve."""
    part = HALL_BENCH.part(name)
    length = part.length
    gone = sum(profile.area(0.0, length) for profile in part.shaped.values())
    assert part.size[0] * part.size[1] - gone == pytest.approx(
        part.outline.polygon.area, abs=0.05 * length * len(part.shaped)
    )
    assert gone > 0


def test_points_of_the_printed_template_lie_on_the_circle(tmp_path):
    """Half of the rail, 230 from its datum end: straight to 52, then the arc to the middle, 40 below the edge."""
    points = drawn_arc(tmp_path / "edges.pdf")
    points = points[np.argsort(points[:, 0])]
    along, deep = points[:, 0] - points[0, 0], points[0, 1] - points[:, 1]
    assert along[-1] == pytest.approx(230, abs=0.05)
    assert deep.max() == pytest.approx(40, abs=0.05)
    arc = points[along >= 52 - 0.01]
    (x, y), radius = circle_through(arc)
    assert radius == pytest.approx(RADIUS, rel=2e-3)
    assert np.abs(np.hypot(arc[:, 0] - x, arc[:, 1] - y) - radius).max() < 0.05
    assert x - points[0, 0] == pytest.approx(230, abs=0.1)


def test_area_under_the_printed_curve_by_greens_theorem(tmp_path):
    """Half of the segment: (r² arcsin(c/2r) − (c/2)(r − h)) / 2, chords of 0.05 off at most."""
    points = drawn_arc(tmp_path / "edges.pdf")
    points = points[np.argsort(points[:, 0])]
    ring = np.vstack([points, [[points[-1, 0], points[0, 1]]]])
    x, y = ring.T
    green = abs(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))) / 2
    half = (RADIUS**2 * np.arcsin(178 / RADIUS) - 178 * (RADIUS - 40)) / 2
    assert green == pytest.approx(half, abs=0.05 * 230)
    part = lay_out(BENCH).part("seat/front rail")
    assert part.shaped["bottom"].area(0.0, 460.0) == pytest.approx(2 * half, rel=1e-9)
