"""What the shop asks of its sheets shows on them; every paper works or says what to do; crowded sheets say so."""

from __future__ import annotations

import re

import pytest
from designs import PLAIN_DESIGNS as DESIGNS

from benchjoin import Clear, Frame, Leg, Level, Stock, alter, elevation, lay_out
from benchjoin.binding import SECTIONS, sheets
from benchjoin.drafting.linework import Linework
from benchjoin.drafting.primitives import Disc, Line, Text, bounds
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.making.house import House
from benchjoin.drawings.views.isometric import exploded, isometric
from benchjoin.drawings.views.plan import plan
from benchjoin.drawings.views.section import section
from benchjoin.errors import PaperError
from benchjoin.trade.paper import paper_size

HOUSE = House(
    owner="Linden Lane shop",
    drawn_by="M. Reed",
    approved_by="T. Ash",
    date="2031-03-04",
    revision="C",
    number="LL-0042",
    linework=Linework(wide=0.7, narrow=0.35),
)
BENCH, STAND = lay_out(DESIGNS["bench"]), lay_out(DESIGNS["stand"])
DRAWN = ("views", "parts", "part drawings", "joints")
PAPERS = ("A4", "A3", "A2", "A1", "Letter", "Tabloid", "ANSI C", "ANSI D", "ANSI E", "300 x 400 mm", "12 × 18 in")


def words(sheet):
    return [item.string for item in sheet.whole if isinstance(item, Text)]


def pictures(layout, **asked):
    return [isometric(layout, **asked), exploded(layout, **asked)]


def all_drawings(layout, **asked):
    own = sheets(layout, only=DRAWN, **asked)
    return [*own, *pictures(layout, **asked), section(layout, y=5, **asked)]


def test_the_kinds_of_sheets_are_those_of_the_binder():
    assert set(DRAWN) <= set(SECTIONS)


def test_every_drawing_carries_what_the_shop_asks_for():
    for sheet in all_drawings(BENCH, house=HOUSE):
        for field in (HOUSE.owner, HOUSE.drawn_by, HOUSE.approved_by, HOUSE.date, HOUSE.revision, HOUSE.number):
            assert field in words(sheet), (sheet, field)
        assert sheet.linework.wide <= HOUSE.linework.wide  # thinner where wide lines would run together
    assert elevation(BENCH, "front", house=HOUSE).linework == HOUSE.linework
    assert 'stroke-width="0.7"' in elevation(BENCH, "front", house=HOUSE).svg()


def test_a_date_that_is_not_given_is_not_made_up():
    assert "date" not in " ".join(words(elevation(BENCH, "front"))).lower().replace("date ", "").split()


def test_dual_units_stand_in_brackets_behind_the_tapes_reading():
    both = House(dual=True)
    assert "32 [813]" in words(elevation(BENCH, "front", house=both))  # 812.8 mm
    assert "450 [17 11/16]" in words(elevation(STAND, "front", house=both))  # 17.717 in; a sixteenth is 0.0625
    for sheet in all_drawings(BENCH, house=both):
        assert "inches [mm]" in words(sheet)
        assert clashes(sheet.whole) == []


def sign(sheet):
    """The cone of the projection symbol: whether it stands on the left of its circles."""
    block = [item for item in sheet.whole[: len(sheet.whole) - len(sheet.drawing)]]
    circles = [item for item in block if isinstance(item, Disc)]
    cone = next(
        item
        for item in block
        if isinstance(item, Line) and item.closed and item.kind == "thin" and len({y for _, y in item.points}) == 4
    )
    return bounds((cone,))[2] < circles[0].centre[0]


@pytest.mark.parametrize("layout, own", [(BENCH, "third angle"), (STAND, "first angle")])
def test_projection_is_the_tapes_own_or_the_shops(layout, own):
    first = {"first angle": True, "third angle": False}  # ISO 5456-2: in first angle the circles stand on the right
    assert sign(elevation(layout, "front")) == first[own]
    for asked, left in first.items():
        for sheet in all_drawings(layout, house=House(projection=asked)):
            assert sign(sheet) == left


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("layout", [BENCH, STAND], ids=["bench", "stand"])
def test_every_paper_is_taken_as_it_is_asked_for(layout, paper):
    for sheet in (elevation(layout, "front", paper=paper), plan(layout, paper=paper), *pictures(layout, paper=paper)):
        assert sorted((sheet.width, sheet.height)) == pytest.approx(sorted(paper_size(paper)))
        assert clashes(sheet.whole) == []


@pytest.mark.slow
@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("layout", [BENCH, STAND], ids=["bench", "stand"])
def test_all_drawings_go_on_every_paper(layout, paper):
    for sheet in all_drawings(layout, paper=paper):
        assert sorted((sheet.width, sheet.height)) == pytest.approx(sorted(paper_size(paper)))
        assert clashes(sheet.whole) == []


@pytest.mark.parametrize("paper, words", [("60 x 90 mm", "no room for a title block"), ("9 x 9 cm", "300 x 400 mm")])
def test_paper_that_is_too_small_or_not_understood_is_answered(paper, words):
    with pytest.raises(PaperError, match=words):
        elevation(BENCH, "front", paper=paper)


# --- crowded sheets ---


def many(levels):
    """Thin rails close above each other near the foot of tall legs."""
    stack = []
    for number in range(levels):
        stack += [Clear(12 if number else 60), Level(f"slat {number + 1}", front=12, back=12)]
    leg = Leg(Stock("ash", thickness=40, width=40), height=2400)
    return Frame(
        name="Slat stand",
        length=900,
        depth=400,
        front=leg,
        back=leg,
        rail_stock=Stock("ash lath", thickness=10),
        stack=stack,
        tape="1 mm",
    )


def test_figures_are_staggered_first():
    sheet = elevation(lay_out(many(2)), "front")
    assert (sheet.width, sheet.height) == paper_size("A4")
    assert not any("crowd" in word for word in words(sheet))


def test_then_larger_paper_is_taken_and_the_sheet_says_so():
    sheet = elevation(lay_out(many(5)), "front")
    assert min(sheet.width, sheet.height) > 210
    assert "since the figures would crowd on A4" in " ".join(words(sheet))
    assert clashes(sheet.whole) == []


def test_where_no_paper_helps_the_sheet_sends_one_to_the_part_drawings():
    layout = lay_out(many(16))
    for sheet in (elevation(layout, "front"), elevation(layout, "front", paper="A3")):
        assert "the part drawings show these places larger" in " ".join(words(sheet))
        assert clashes(sheet.whole) == []


# --- what paper finds is in the list of the binder ---


@pytest.mark.parametrize("levels, kind", [(5, "larger paper"), (16, "crowded figures")])
def test_figures_that_crowd_are_in_the_list_of_findings(levels, kind):
    layout = lay_out(many(levels))
    sheet = elevation(layout, "front")
    (found,) = [finding for finding in sheet.findings if finding.kind == kind]
    assert found.parts
    assert found.where == "Front elevation"
    made = sheets(layout, only=["cover", "findings", "views"])
    rows = [word for one in made if one.name.startswith("findings") for word in words(one)]
    listed = " ".join(rows)
    assert listed.count("Front elevation: ") == 1
    assert "Left end: " in listed
    (front,) = [one for one in made if one.name == "cover"]
    count = int(re.search(r"(\d+) notes", " ".join(words(front)))[1])
    assert count == rows.count("note")


def test_nothing_is_found_where_nothing_crowds():
    assert elevation(BENCH, "front").findings == ()


def test_a_set_that_is_longer_than_a_page_can_be_is_in_the_list_once():
    layout = lay_out(alter(DESIGNS["rack"], {"length": 6000}))
    made = sheets(layout)
    told = [one for one in made if one.name.startswith("findings")]
    listed = " ".join(" ".join(word for one in told for word in words(one)).split())
    assert listed.count("Set B: at full size its page is") == 1
    reduced = next(one for one in made if one.name.startswith("set-b-reduced"))
    assert [finding.kind for finding in reduced.findings][-1] == "longer than a page"
    assert "At full size it is longer than a page can be" in " ".join(words(reduced))
    assert not any(one.name == "set-b" for one in made)


# --- findings ---


def test_warnings_of_the_work_are_told_where_their_parts_are_shown_and_its_notes_are_not():
    told = " ".join(words(plan(STAND)))
    assert "2 parts are shorter than the 350 mm" in told or "see the sheet of findings" in told
    drawn = [word for sheet in sheets(STAND, only=["views", "part drawings"]) for word in words(sheet)]
    assert any("shorter than the 350 mm" in word or "more: see the sheet" in word for word in drawn)
    assert not any("is milled from is not said" in word or "beyond the stop" in word for word in drawn)


def test_a_sheet_tells_the_findings_that_concern_the_parts_it_shows():
    finding = STAND.findings[0]
    assert "front left leg" in finding.parts
    for sheet in (elevation(STAND, "front"), elevation(STAND, "left"), plan(STAND), section(STAND, "seat")):
        told = " ".join(words(sheet))
        assert f"Warning: {finding.sentence}" in told or "notes on these parts: see the sheet of findings" in told
    for sheet in all_drawings(BENCH):
        assert not any(word.startswith(("Warning:", "Error:", "Note:")) for word in words(sheet))


def test_a_part_drawing_tells_the_findings_of_its_part_and_of_no_other():
    drawn = sheets(STAND, only=["part drawings"])
    told = " ".join(word for sheet in drawn for word in words(sheet))
    for finding in STAND.findings:
        assert finding.sentence in told
    rails = [finding for finding in STAND.findings if any("rail" in name for name in finding.parts)]
    assert told.count("Warning:") >= len(STAND.findings)
    assert rails == []


def test_notes_do_not_make_a_view_smaller():
    quiet = type(STAND)(frame=STAND.frame, parts=STAND.parts, joints=STAND.joints, sets=STAND.sets)
    for seen in ("front", "left"):
        assert elevation(STAND, seen).scale == elevation(quiet, seen).scale
