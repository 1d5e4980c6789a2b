"""The general arrangement, and what a binder draws beside it."""

from __future__ import annotations

import pytest
import shapely
from boarded_designs import bench as boarded_bench
from designs import DESIGNS
from samples import SAMPLES

from benchjoin import (
    Bearers,
    Butt,
    Clear,
    Frame,
    HalfLap,
    Leg,
    Level,
    Notch,
    Overall,
    Pair,
    Rail,
    Stock,
    arrangement,
    elevation,
    lay_out,
)
from benchjoin.binding import sheets
from benchjoin.drafting.linework import Linework
from benchjoin.drafting.primitives import Line, Text, text_box
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.making.house import House
from benchjoin.drawings.views.arrangement import mirrored
from benchjoin.drawings.views.plan import plan
from benchjoin.drawings.views.view import view
from benchjoin.trade.standards import SCALES

FRAMES = {**DESIGNS, **SAMPLES}
RATIO = {scale.label: scale.ratio for scale in SCALES}
SIDES = ("front", "back", "left", "right")
NAMES = ("Front elevation", "Left end", "Plan from above")


@pytest.fixture(scope="module", params=FRAMES)
def layout(request):
    return lay_out(FRAMES[request.param])


def texts(sheet):
    return [item for item in sheet.drawing if isinstance(item, Text)]


def words(sheet):
    return [text.string for text in texts(sheet)]


def place(sheet, name):
    (text,) = (text for text in texts(sheet) if text.string == name)
    return text_box(text).centroid.coords[0]


def test_the_bench_goes_on_letter_at_half_an_inch_to_the_foot():
    sheet = arrangement(lay_out(DESIGNS["bench"]))
    assert sorted((sheet.width, sheet.height)) == pytest.approx([215.9, 279.4])
    assert RATIO[sheet.scale] == 1 / 24
    assert set(NAMES) <= set(words(sheet))


@pytest.mark.parametrize("design", ["rack", "stand"])
def test_the_rack_and_the_stand_go_on_a3_at_a_standard_scale(design):
    sheet = arrangement(lay_out(DESIGNS[design]), paper="A3")
    assert RATIO[sheet.scale] >= 1 / 20


@pytest.mark.parametrize("projection, over", [("third angle", 1), ("first angle", -1)])
def test_views_stand_where_the_projection_sign_says(projection, over):
    sheet = arrangement(lay_out(DESIGNS["stand"]), house=House(projection=projection), paper="A3")
    (fx, fy), (ex, _), (_, py) = (place(sheet, name) for name in NAMES)
    assert (py - fy) * over > 0  # third angle: the plan over the front
    assert (fx - ex) * over > 0  # and the left end on the left


def test_it_can_be_read(layout):
    sheet = arrangement(layout)
    assert [str(clash) for clash in clashes(sheet.whole)] == []
    assert {"FRONT"} <= set(words(sheet))
    assert {part.mark for part in layout.piece(1) if part.slot.upright} <= set(words(sheet))
    assert words(sheet).count("FRONT") >= 2  # on the plan and on the end


def test_levels_are_named_once_on_the_front_of_an_arrangement(layout):
    told = " ".join(words(arrangement(layout)))
    for level in layout.frame.levels():
        assert level.name in told


@pytest.mark.parametrize("seen", SIDES)
def test_every_level_is_named_on_every_elevation(layout, seen):
    told = " ".join(words(elevation(layout, seen)))
    for level in layout.frame.levels():
        assert level.name in told, (seen, level.name)


def test_front_stands_on_plan_and_ends_and_nowhere_else():
    layout = lay_out(DESIGNS["stand"])
    assert words(plan(layout)).count("FRONT") == 1
    for seen in SIDES:
        assert words(elevation(layout, seen)).count("FRONT") == (seen in ("left", "right"))


def test_an_end_that_is_the_mirror_image_of_the_other_is_drawn_once():
    alike, unlike = (lay_out(frame).piece(1) for frame in (boarded_bench, FRAMES["left and right differ"]))
    assert mirrored(view(alike, "left"), view(alike, "right"))
    assert not mirrored(view(unlike, "left"), view(unlike, "right"))
    made = [sheet.name for sheet in sheets(lay_out(boarded_bench), only=["views"])]
    assert made == ["arrangement", "elevation-front", "elevation-left"]
    made = [sheet.name for sheet in sheets(lay_out(FRAMES["left and right differ"]), only=["views"])]
    assert "elevation-right" in made


def test_a_back_with_sizes_of_its_own_is_drawn():
    made = [sheet.name for sheet in sheets(lay_out(FRAMES["overhangs"]), only=["views"])]
    assert "elevation-back" in made


def test_a_section_is_drawn_for_new_sizes_alone_and_its_plane_is_shown():
    layout = lay_out(FRAMES["ends in wide faces"])
    made = {sheet.name: sheet for sheet in sheets(layout, only=["views"])}
    (name,) = (name for name in made if name.startswith("section"))
    assert made[name].title.startswith("A–A: ")
    assert "A–A" in words(made[name])
    assert words(made["arrangement"]).count("A") == 2  # one at each end of the chain line
    assert [line for line in made["arrangement"].drawing if isinstance(line, Line) and line.kind == "centre"]


def test_the_views_of_a_binder_stand_at_one_scale(layout):
    made = [sheet for sheet in sheets(layout, only=["views"]) if "arrangement" not in sheet.name]
    by_paper = {}
    for sheet in made:
        by_paper.setdefault((min(sheet.width, sheet.height), sheet.name.partition("-piece")[2]), set()).add(sheet.scale)
    assert all(len(scales) == 1 for scales in by_paper.values())


def test_where_all_sizes_go_on_no_view_has_a_sheet_of_its_own():
    made = sheets(lay_out(FRAMES["tops aligned"]), only=["views"], paper="A3")
    assert [sheet.name for sheet in made] == ["arrangement"]
    assert RATIO[made[0].scale] >= 1 / 16


@pytest.mark.parametrize("seen", SIDES)
def test_dashes_can_be_read_as_dashes(layout, seen):
    """Two dashes and a gap at the least, of straight line."""
    sheet = elevation(layout, seen)
    for line in sheet.drawing:
        if isinstance(line, Line) and line.kind.startswith("hidden"):
            runs = [shapely.LineString(ends).length for ends in zip(line.points, line.points[1:], strict=False)]
            assert max(runs) >= sheet.linework.readable(line.kind) - 1e-6


def test_wide_lines_of_a_small_view_are_thinner():
    """A rail of 5/8 in is 0.66 mm at 1:24: lines of 0.25 mm leave as much white as black."""
    assert arrangement(lay_out(boarded_bench)).linework == Linework(wide=0.25, narrow=0.13)
    assert elevation(lay_out(boarded_bench), "front").linework == Linework()


def test_an_open_side_of_a_cut_has_no_hidden_edge():
    """From the left, the notch of the foot shelf's front rail is open at the front, where the leg ends: y = 0."""
    layout = lay_out(DESIGNS["bench"])
    leg = layout.leg("front right")
    front_rail = layout.part("1/foot shelf/front rail")
    board = layout.part("1/foot shelf/left rail").moved((-2000.0, 0.0, 0.0))
    shade = board.standing(board.blank.__class__((-2100.0, -50.0, 0.0), (-2000.0, 700.0, 1800.0)))
    hidden = view([shade, leg], "left").hidden
    edge = shapely.LineString([(0.0, front_rail.blank.low[2]), (0.0, front_rail.blank.high[2])]).buffer(1e-3)
    assert hidden.length > 0
    assert hidden.intersection(edge).length < 0.01


def test_small_pieces_are_drawn_larger_than_one_to_five():
    sheet = elevation(lay_out(FRAMES["over all"]), "front", paper="A1")
    assert RATIO[sheet.scale] > 0.2


def test_a_cutting_plane_leaves_out_the_words_that_lie_on_its_way():
    # heights stand where the plane through the lower rail reaches its arrow
    post = Stock("upright", thickness=30, width=30)
    levels = [Level("foot", front=Rail(20, overhang=-3)), Level("shelf", front=Rail(80, joint=Butt(), face="middle"))]
    row = Frame(
        name="Row of pegs",
        length=Overall(490),
        front=Leg(post, height=477, wide="front"),
        against="wall",
        rail_stock=Stock("board", thickness=12),
        stack=[Clear(117, at="front"), levels[0], Clear(260, at="front"), levels[1]],
        bays=[Clear(), Pair(front=Leg(post, height=477, wide="front")), Clear()],
        tape="1 mm",
    )
    sheet, *_ = sheets(lay_out(row), only=["views"])
    assert [str(clash) for clash in clashes(sheet.whole)] == []
    (line,) = (item for item in sheet.drawing if isinstance(item, Line) and item.kind == "centre")
    (foot,) = (text for text in texts(sheet) if text.string == "137" and text.anchor == "start")
    assert line.points[1][0] == pytest.approx(foot.at[0] - 1.0)
    arrows = [text.at[0] for text in texts(sheet) if text.string == "A"]
    assert min(arrows) < line.points[0][0] < line.points[1][0] < max(arrows)


def test_the_name_of_a_level_stands_clear_of_what_is_let_into_its_rail():
    # the bearer lets a bite into the upper edge of the end rail, just where the name would stand
    thin, slim = (Stock(name, thickness=t, width=w) for name, t, w in (("batten", 19, 40), ("lath", 14, 30)))
    level = Level(
        "foot",
        back=Rail(95, joint=HalfLap(0.6)),
        left=Rail(70, joint=HalfLap(0.25), face="inner"),
        align="tops",
        carries=[
            Bearers(thin, run="across", at=(217, 295), joint=Butt(), crossing=Notch(), flat=True),
            Bearers(slim, run="along", count=1, joint=Notch(), crossing=HalfLap(), name="cross bearer"),
        ],
    )
    frame = Frame(
        name="Foot rest",
        length=Overall(362),
        depth=Overall(478),
        front=Leg(Stock("post", thickness=41, width=81), height=213, wide="front"),
        back=Leg(Stock("post", thickness=56, width=51), height=298, wide="front"),
        rail_stock=Stock("board", thickness=27),
        stack=[Clear(117), level, Clear()],
        tape="1 mm",
    )
    for paper in ("Letter", "A4"):
        sheet = elevation(lay_out(frame), "left", paper=paper)
        assert [str(clash) for clash in clashes(sheet.whole)] == []
        assert "foot" in words(sheet)
