"""Holes on paper: crosses stand where the fasteners are, circles are as wide as their drills, words say the same."""

from __future__ import annotations

import pytest
from designs import DESIGNS
from paper_reader.checking import faults

from benchjoin import bind, lay_out, set_page
from benchjoin.drafting.primitives import Clipped, Disc, Text
from benchjoin.drawings.lists.fastener_sheet import fastener_sheets
from benchjoin.drawings.lists.settings_sheet import settings_lists
from benchjoin.drawings.making.asked import Asked
from benchjoin.drawings.templates.drill.draw import cards, draw_card
from benchjoin.drawings.templates.drill.pages import drilling_cards
from benchjoin.drawings.templates.set.draw import gang
from benchjoin.drawings.templates.set.tiles import set_tiles
from benchjoin.drawings.views.joint.pages import joint_details
from benchjoin.drawings.views.part_drawing import part_drawings
from benchjoin.shop.fasteners.fasten import fasten
from benchjoin.template_pages import template_sheets

INCH = 25.4
LAYOUT = lay_out(DESIGNS["bench"])
WORK = fasten(LAYOUT, wood="western larch")


def discs(drawing):
    """Every disc of a drawing, those behind a window too."""
    inner = [disc for item in drawing if isinstance(item, Clipped) for disc in discs(item.drawing)]
    return [item for item in drawing if isinstance(item, Disc)] + inner


def written(sheet):
    return " ".join(item.string for item in sheet.drawing if isinstance(item, Text))


def test_crosses_on_the_gang_stand_at_the_heights_of_the_screws():
    """Of the front left leg, its outer face up: each hole from that face, over the foot and as wide as its drill."""
    own = LAYOUT.set("A")
    before, after = (discs(gang(LAYOUT, own, fastening=work)) for work in (None, WORK))
    new = [disc for disc in after if disc not in before]
    holes = [hole for part in own.members for hole in WORK.holes(part)]
    seen = [hole for hole in holes if abs(hole.way[1]) == 1.0]  # all are drilled along the depth
    assert len(new) == len(seen) > 0
    left = min(disc.centre[0] for disc in new) - min(hole.start[2] for hole in seen)
    heights = sorted(round(disc.centre[0] - left, 3) for disc in new)
    assert heights == sorted(round(hole.start[2], 3) for hole in seen)
    assert sorted(round(2 * d.radius, 4) for d in new) == sorted(round(h.diameter, 4) for h in seen)


def test_a_reduced_page_has_no_holes_and_a_full_one_says_what_they_are():
    plain, full = set_page(LAYOUT, "A", paper="A3", fastening=WORK), set_page(LAYOUT, "A", fastening=WORK)
    assert "Crosses in circles" not in written(plain)
    assert "5/64, 3/8 deep" in written(full)


def test_tiles_carry_the_crosses():
    tiles = set_tiles(LAYOUT, "A", fastening=WORK)
    bare = set_tiles(LAYOUT, "A")
    assert len(tiles) == len(bare)
    assert sum(len(discs(t.drawing)) for t in tiles) > sum(len(discs(t.drawing)) for t in bare)
    assert all("Crosses in circles" in written(tile) for tile in tiles if "Outer faces up" in written(tile))


def test_a_card_has_its_holes_where_they_are_from_the_edge_and_the_end():
    """The foot shelf's front rail at its left end: flush there, holes as far from the end as on the part."""
    found = [card for card in cards(LAYOUT, WORK) if card.uses[0].part.identity == "foot shelf/front rail"]
    card = next(card for card in found if card.flush[0])
    fixing = next(f for f in WORK.fixings if (f.guest, f.host) == ("foot shelf/front rail", "front left leg"))
    bottom = LAYOUT.part("foot shelf/front rail").blank.low[2]
    expected = sorted((round(d.at[0], 3), round(d.at[2] - bottom, 3)) for d in fixing.driven)
    drawn = sorted((round(d.centre[0], 3), round(d.centre[1], 3)) for d in discs(draw_card(LAYOUT, card, 1)))
    assert drawn == expected
    assert {use.part.mark for use in card.uses} == {"A5", "B5", "C5"}


def test_cards_are_made_only_with_a_fastening():
    assert drilling_cards(LAYOUT) == ()
    assert drilling_cards(LAYOUT, fastening=WORK)
    assert template_sheets(LAYOUT, kinds=["drilling"], fastening=WORK)


def test_part_drawings_tell_every_hole_of_a_let_in_rail():
    """It was a plain board; now its holes are told from the left end × from the lower edge."""
    words = " ".join(written(sheet) for sheet in part_drawings(LAYOUT, fastening=WORK))
    fixing = next(f for f in WORK.fixings if (f.guest, f.host) == ("foot shelf/front rail", "front left leg"))
    bottom = LAYOUT.part("foot shelf/front rail").blank.low[2]
    read = LAYOUT.frame.tape.read
    for one in fixing.driven:
        assert f"{read(one.at[0])} × {read(one.at[2] - bottom)}" in words.replace("  ", " ")


def test_details_say_what_is_driven():
    words = " ".join(written(sheet) for sheet in joint_details(LAYOUT, fastening=WORK))
    assert "2 × No. 8 screw, 1 in long, from the rail: 11/64 through, countersunk; 5/64, 3/8 deep." in words


def test_lists_have_the_schedule_the_joints_and_the_drill_stops():
    words = " ".join(written(sheet) for sheet in fastener_sheets(WORK))
    assert "Fasteners, drills and their stops" in words
    assert "No engineering design" in words
    (listed,) = settings_lists(LAYOUT, Asked(layout=LAYOUT, fastening=WORK))
    assert any(figure.name == "Settings, drilling" for figure in listed.figures(180.0))


@pytest.mark.parametrize(
    "name", ["tools", *(pytest.param(n, marks=pytest.mark.slow) for n in ("bench", "stand", "rack"))]
)
def test_paper_with_holes_has_no_clash(name, tmp_path):
    layout = lay_out(DESIGNS[name])
    path = bind(layout, tmp_path / "binder.pdf", fastening=fasten(layout, wood="western larch"))
    assert not list(faults(path.read_bytes()))
