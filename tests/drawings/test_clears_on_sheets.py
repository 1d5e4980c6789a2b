"""Clears on paper, in brackets: on elevations beside the heights that they lie between, on set pages in words."""

from __future__ import annotations

import pytest
from designs import DESIGNS
from designs import plain_bench as bench
from designs import plain_rack as rack
from designs import plain_stand as stand
from samples import SAMPLES

from benchjoin import elevation, lay_out, set_page
from benchjoin.drafting.primitives import Text
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.layout.clears import openings

BENCH = lay_out(bench)
FRAMES = {**DESIGNS, **SAMPLES}


def bracketed(sheet):
    """Figures in brackets that read upwards, from the left and then from below."""
    found = [t for t in sheet.drawing if isinstance(t, Text) and t.turn == 90 and t.string.startswith("(")]
    return [text.string for text in sorted(found, key=lambda t: (t.at[0], t.at[1]))]


def test_the_front_of_the_bench_gives_its_own_clear_on_the_left_and_the_others_on_the_right():
    # front: 32 less 9 3/4; back: 32 less 11 1/4, 48 3/8 less 35 1/2, 64 3/4 less 51 7/8
    assert bracketed(elevation(BENCH, "front")) == ["(22 1/4)", "(20 3/4)", "(12 7/8)", "(12 7/8)"]
    assert bracketed(elevation(BENCH, "back")) == ["(20 3/4)", "(12 7/8)", "(12 7/8)", "(22 1/4)"]


def test_an_end_gives_the_clears_of_its_own_rails():
    assert bracketed(elevation(BENCH, "left")) == ["(22 1/4)"]


def test_a_clear_is_not_told_twice():
    assert bracketed(elevation(lay_out(rack), "front")) == ["(255)"] * 5


def test_a_clear_without_room_for_its_figure_is_left_out():
    told = bracketed(elevation(lay_out(stand), "front"))  # at 1:20 the lowest is 10 mm high
    assert "(945)" in told
    assert "(200)" not in told


@pytest.mark.parametrize("name", FRAMES)
@pytest.mark.parametrize("seen", ["front", "right"])
def test_what_an_elevation_tells_is_true_and_stands_clear(name, seen):
    layout = lay_out(FRAMES[name])
    sheet = elevation(layout, seen)
    read = layout.frame.tape.read
    sizes = {f"({read(each.size)})" for found in openings(layout.piece(1)).values() for each in found}
    assert set(bracketed(sheet)) <= sizes
    assert [str(clash) for clash in clashes(sheet.whole)] == []


def words(sheet):
    return " ".join(text.string for text in sheet.drawing if isinstance(text, Text))


@pytest.mark.parametrize("how", [{}, {"paper": "Letter"}], ids=["full size", "reduced"])
def test_the_page_of_the_legs_gives_the_clears_in_words(how):
    told = words(set_page(BENCH, "A", **how))
    assert "Clears between rails, from below: front, left and right (22 1/4), back (20 3/4, 12 7/8, 12 7/8)." in told


def test_equal_clears_in_a_row_are_counted():
    told = words(set_page(lay_out(rack), "A"))
    assert "Clears between rails, from below: front, back, left and right (5 of 255)." in told


def test_a_page_of_rails_tells_no_clears():
    assert "Clears" not in words(set_page(lay_out(rack), "B"))
