"""Pieces that came out unlike: every sheet says which of them it is true of, and each kind has its own views."""

from __future__ import annotations

import pytest
from designs import plain_bench as bench

from benchjoin import alter, elevation, lay_out
from benchjoin.binding import sheets
from benchjoin.drafting.primitives import Text
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.lists.cover import cover
from benchjoin.drawings.lists.parts_sheet import parts_sheet
from benchjoin.drawings.views.isometric import isometric
from benchjoin.drawings.views.joint.pages import joint_details
from benchjoin.shop.overview import key_numbers, marks_list

ALIKE = lay_out(bench)
ONE_NARROW = lay_out(alter(bench, {"2/hook rail/back rail.width": "3 1/4 in"}))
"""Bench 2 has a hook rail that measures less."""
NARROW_LEG = lay_out(alter(bench, {"2/front left leg.width": "3 1/8 in"}))


def words(sheet):
    return [item.string for item in sheet.whole if isinstance(item, Text)]


def test_benches_that_are_alike_have_one_set_of_views_that_names_no_piece():
    assert ALIKE.alike == ((1, 2, 3),)
    titles = [sheet.title for sheet in sheets(ALIKE, only=["cover", "views", "parts", "joints"])]
    assert len(titles) == 6
    assert not any("iece" in title for title in titles)
    assert not any(word.startswith("Piece") for word in words(cover(ALIKE)))


def test_a_measurement_that_changes_nothing_makes_no_other_bench():
    same = lay_out(alter(bench, {"2/hook rail/back rail.width": "3 1/2 in"}))
    assert same.alike == ((1, 2, 3),)


def test_the_bench_that_differs_has_views_of_its_own():
    assert ONE_NARROW.alike == ((1, 3), (2,))
    made = {sheet.name: sheet for sheet in sheets(ONE_NARROW, only=["views"])}
    first, other = made["elevation-front"], made["elevation-front-piece-2"]
    assert "Pieces 1 and 3: Front elevation" in words(first)
    assert "Piece 2: Front elevation" in words(other)
    assert "48 3/8" in words(first)
    assert "48 1/2" in words(other)  # the bottom of the narrower rail, between equal clears
    assert len(made) == 6  # arrangement, front and left end of each


def test_a_view_that_is_asked_for_by_itself_says_whose_it_is():
    assert elevation(ALIKE, "back", piece=2) == elevation(ALIKE, "back")
    assert elevation(ONE_NARROW, "back", piece=3) == elevation(ONE_NARROW, "back")
    assert elevation(ONE_NARROW, "back", piece=2).title == "Piece 2: Back elevation"
    assert isometric(ONE_NARROW).title == "Pieces 1 and 3: Isometric picture"
    assert parts_sheet(ONE_NARROW).title == "Pieces 1 and 3: Parts, drawn apart"
    assert "Pieces 1 and 3" in words(cover(ONE_NARROW))


def test_sizes_over_everything_are_told_of_each_bench_where_they_differ():
    long = lay_out(alter(bench, {"2/bench/front rail.length": "58 in"}))
    told = [row for row in key_numbers(long).rows if "over everything" in row[0]]
    assert len(told) == len({tuple(long.overall(n)) for n in (1, 2, 3)})
    assert len([row for row in key_numbers(ALIKE).rows if "over everything" in row[0]]) == 1
    assert marks_list(ONE_NARROW, 2).title.endswith(", piece 2")


def test_joints_are_told_of_the_benches_that_have_them():
    told = " ".join(word for sheet in joint_details(NARROW_LEG) for word in words(sheet))
    assert "Pieces 1 and 3 have 12, piece 2 has 10." in told
    assert "Piece 2 has 2." in told


@pytest.mark.parametrize("layout", [ONE_NARROW, NARROW_LEG], ids=["rail", "leg"])
def test_all_of_it_can_be_read(layout):
    made = sheets(layout, only=["cover", "views", "parts", "part drawings", "joints"])
    assert [str(clash) for sheet in made for clash in clashes(sheet.whole)] == []
