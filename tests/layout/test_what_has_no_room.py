"""Curves that take more than there is, or have no room at all: told in words, and what is left is still wood."""

from __future__ import annotations

import itertools

import attrs
import numpy as np
import pytest
from check_tops import FIXED, LATH, bench
from stand import STAND

from benchjoin import (
    Arc,
    Bearers,
    Boards,
    Butt,
    Clear,
    Frame,
    HalfLap,
    Laid,
    Leg,
    Level,
    Notch,
    Ogee,
    Planted,
    Points,
    Rail,
    Scallop,
    Stock,
    Top,
    lay_out,
)
from benchjoin.drawings.views.isometric import picture
from benchjoin.drawings.views.view import view
from benchjoin.errors import DescriptionError
from benchjoin.frame.design.file import read_design
from benchjoin.outlines import SAG, Outline


def kinds(layout):
    return {finding.kind for finding in layout.errors()}


@attrs.frozen
class Hollow:
    """An edge that stands back evenly between two places, and not at all outside them."""

    start: float
    end: float
    back: float

    def depth(self, at):
        return np.where((self.start <= at) & (at <= self.end), self.back, 0.0)

    def points(self, sag):
        return [self.start - 1, self.start, self.end, self.end + 1]


def test_an_arc_deeper_than_its_rail_leaves_two_ends():
    layout = lay_out(bench(front=Rail(60, lower_edge=Arc(70))))
    assert "too little left" in kinds(layout)
    rail = layout.part("top/front rail")
    assert rail.outline.polygon.is_valid
    assert len(rail.outline.polygon.geoms) == 2
    assert picture(layout.piece(1))


def test_edges_that_meet_leave_what_lies_between_them_and_nothing_else():
    """By hand: 300 by 60; a third is sawn 40 deep from below and 40 from above, so 100 by 60 is left at each end."""
    left = Outline(300.0, 60.0, low=Hollow(101.0, 199.0, 40.0), high=Hollow(101.0, 199.0, 40.0)).polygon
    assert left.is_valid
    ends = 2 * 100 * 60
    slopes = 4 * 0.5 * 30 * 0.75  # each edge falls to the middle over three quarters of a millimetre
    assert left.area == pytest.approx(ends + slopes, abs=1e-6)


def test_a_curve_through_points_in_a_bay_as_long_as_its_flats_has_no_room():
    frame = Frame(
        name="Short",
        length=84,
        depth=300,
        front=Leg(Stock("post", thickness=30, width=30), height=200),
        back=Leg(Stock("post", thickness=30, width=30), height=200),
        rail_stock=Stock("rail", thickness=12),
        stack=[Clear(40), Level("foot", front=Rail(40, lower_edge=Points([(0.3, 5)])), back=40, ends=40)],
    )
    assert "no room for the curve" in kinds(lay_out(frame))


def test_a_rail_whose_curve_takes_just_its_width_is_pictured():
    """The curve leaves nothing at one place, so that faces there only touch along a line."""
    back = Rail(25.4, joint=HalfLap(0.6), upper_edge=Points([(0.113, 9.525), (0.4563, 25.4)]))
    low = Level("low", front=60, back=back, ends=60)
    layout = lay_out(attrs.evolve(STAND, length=1057, stack=[Clear(100), low, *STAND.stack[2:]]))
    assert "too little left" in kinds(layout)
    assert picture(layout.piece(1))


def test_no_curve_is_drawn_past_the_ends_of_its_part():
    """Two falls of 170 mm each in a rail of 320 between the legs: told, and nothing is seen beyond the bench."""
    layout = lay_out(bench(left=Rail(60, joint=Planted(), upper_edge=Ogee(15, 250)), right=60, back=60))
    assert "no room for the curve" in kinds(layout)
    low, _, high, _ = layout.part("top/left rail").outline.polygon.bounds
    assert (low, high) == (0, layout.part("top/left rail").length)


def test_a_curve_that_touches_the_other_edge_is_seen_from_the_side():
    """A lower edge as deep as its rail is wide, on the slant of rounding: the view of the end is drawn all the same."""
    edge = Points([(0.1231961792019525, "1 1/16 in"), (0.45467395700120616, "1/2 in")])
    left = Rail("1 1/16 in", joint=Notch("3/8 in"), face="inner", raised="4 1/16 in", lower_edge=edge)
    frame = attrs.evolve(
        STAND,
        front=Leg(Stock("post", thickness="1 11/16 in", width="1 5/16 in"), height=500, wide="end"),
        back=Leg(Stock("back post", thickness="2 in", width="2 9/16 in"), height=500, wide="end"),
        length=1228.725,
        depth=466.725,
        rail_stock=Stock("board", thickness="1 in"),
        stack=[Clear(100), Level("low", front=60, back=60, left=left), *STAND.stack[2:]],
    )
    seen = view(lay_out(frame).piece(1), "right")
    assert seen.bounds == pytest.approx((0, 0, 466.725, 500), abs=1e-6)


HAIR = """
name = "A face that is thinner than a hair"
format = 1
length = "55 in"
depth = "18 3/4 in"
front = { stock = "post", height = "55 1/8 in" }
back = { stock = "back post", height = "39 3/8 in", wide = "end" }
rail_stock = "board"
stack = [
  { clear = "open", at = "right" },
  { level = "foot", ends = { width = "3 15/16 in", face = "middle", raised = "-4 1/4 in" }, top = "11 11/16 in",
    align = "tops" },
  { clear = "open", weight = 0.5 },
  { level = "shelf", front = { width = "1 in", joint = { notch = "3/16 in" }, face = "inner", raised = "-3 7/8 in" },
    back = { width = "2 1/2 in", joint = { half-lap = 0.6 }, face = "inner", raised = "3 5/16 in" },
    left = { width = "3 3/16 in", joint = { notch = "3/8 in" }, raised = "2 1/8 in",
    lower_edge = { arc = "1 1/4 in" } },
    right = { width = "1 1/16 in", stock = "odd board" },
    cross = { width = "4 1/4 in", joint = "half-lap", face = "left" } },
  { clear = "open" },
  { level = "bench", front = { width = "4 1/4 in", joint = "butt", face = "middle" },
    back = { width = "1 13/16 in", joint = "planted" },
    ends = { width = "2 1/8 in", joint = "notch", face = "inner", raised = "2 5/8 in" },
    cross = { width = "2 13/16 in", face = "middle" }, bottom = "32 1/2 in", align = "tops" },
  { clear = "open" },
]
bays = [{ clear = "open" }, { pair = "20 23/32 in" }, { clear = "open" },
  { pair = "open", front = { stock = "odd post", height = "55 1/8 in" } }, { clear = "18 1/8 in" }]
tape = "1/16 in"
[stocks]
post = { thickness = "1 5/8 in", width = "2 7/16 in" }
"back post" = { thickness = "1 11/16 in", width = "3 5/16 in" }
board = { thickness = "1 in" }
"odd board" = { thickness = "15/16 in" }
"odd post" = { thickness = "2 1/8 in", width = "1 13/16 in" }
"""


def test_a_face_that_is_thinner_than_a_hair_is_no_line_in_a_view():
    layout = lay_out(read_design(HAIR.replace(",\n    ", ", ").replace(",\n  {", ", {")))
    left, low, right, high = view(layout.parts, "front").bounds
    assert (right - left, high - low) == pytest.approx((55 * 25.4, 55.125 * 25.4), abs=30)


@pytest.mark.parametrize("length", [260.35, 300, 333.3, 1000 / 3])
def test_where_scallops_meet_is_one_place(length):
    """The end of one arc and the beginning of the next are one point, whatever rounding says."""
    low = Level("low", front=Rail(41, lower_edge=Scallop(4, 9)), back=Rail(80, joint=Butt(), upper_edge=Scallop(7, 6)))
    layout = lay_out(attrs.evolve(STAND, length=length, stack=[Clear(100), low, *STAND.stack[2:]]))
    for rail in ("low/front rail", "low/back rail"):
        outline = layout.part(f"1/{rail}").outline
        places = outline.places(SAG, outline.low, outline.high)
        assert min(b - a for a, b in itertools.pairwise(places)) > 1e-6
    assert picture(layout.piece(1))


def test_supports_of_a_top_ask_for_a_rail_that_they_end_at():
    with pytest.raises(DescriptionError, match="supports of the deck go to a front or back rail, and there is none"):
        Level("end", left=60, right=60, carries=[Top([FIXED, FIXED], supports=LATH)])
    assert Level("end", left=60, right=60, carries=[Top([FIXED, FIXED])]).carries


@pytest.mark.parametrize("front", [None, 60])
@pytest.mark.parametrize("kind", [Boards, Bearers])
@pytest.mark.parametrize("run", ["along", "across"])
def test_what_lies_on_a_cross_rail_that_has_lost_its_inner_pair_is_told(kind, run, front):
    how = {Boards: {"gap": 8}, Bearers: {"count": 1, "joint": Butt() if front else Laid()}}[kind]
    post, slat = Stock("post", thickness=40, width=60), Stock("slat", thickness=20, width=50)
    frame = Frame(
        name="Rest",
        length=900,
        depth=400,
        front=Leg(post, height=500),
        back=Leg(post, height=500),
        rail_stock=Stock("board", thickness=20),
        stack=[Clear(100), Level("shelf", front=front, cross=Rail(50), carries=[kind(slat, run=run, **how)]), Clear()],
        bays=[Clear(), Clear()],
        tape="1 mm",
    )
    with pytest.raises(DescriptionError, match='"shelf" has a cross rail, and there is no inner pair'):
        attrs.evolve(frame, bays=[Clear()])
