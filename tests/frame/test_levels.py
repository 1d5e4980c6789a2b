"""Levels and clears as the maker says them."""

from __future__ import annotations

import pytest

from benchjoin.errors import DescriptionError
from benchjoin.frame.identity import leg_name, of_piece, piece_of, plain, rail_name
from benchjoin.frame.rail import Rail
from benchjoin.frame.stack import Clear, Level


def test_a_side_may_be_just_its_width():
    assert Level("bench", front="3 1/2 in").front == Rail("3 1/2 in") == Rail(88.9)


def test_ends_stand_for_left_and_right():
    sides = Level("bench", front=90, ends="3 in").sides()
    assert {side: rail.width for side, rail in sides.items()} == {"front": 90, "left": 76.2, "right": 76.2}


def test_a_side_of_its_own_holds_over_ends():
    sides = Level("bench", ends=70, left=Rail(45, raised=10)).sides()
    assert sides == {"left": Rail(45, raised=10), "right": Rail(70)}


def test_sides_stand_in_one_order_however_they_are_written():
    level = Level("bench", cross=50, right=60, left=65, back=70, front=80)
    assert list(level.sides()) == ["front", "back", "left", "right", "cross"]


def test_a_level_without_a_rail_is_refused():
    with pytest.raises(DescriptionError, match="it has no rail") as caught:
        Level("bench")
    assert caught.value.faults[0].field == "front"


@pytest.mark.parametrize("flush, missing", [("front leg top", "front"), ("back leg top", "back")])
def test_only_a_rail_that_is_there_can_be_flush(flush, missing):
    with pytest.raises(DescriptionError, match=f"holds the {missing} rail, and there is none. Give {missing}="):
        Level("bench", ends=70, flush=flush)
    assert Level("bench", **{missing: 70}, flush=flush).flush == flush


@pytest.mark.parametrize("flush", ["left leg top", "top", True, 0])
def test_a_level_is_flush_with_the_front_or_the_back_legs(flush):
    with pytest.raises(DescriptionError, match="Choose one of 'front leg top', 'back leg top'"):
        Level("bench", front=70, flush=flush)


def test_the_faces_of_a_cross_rail_are_left_middle_and_right():
    assert Level("bench", cross=Rail(70, face="left")).cross.face == "left"
    with pytest.raises(DescriptionError, match="A cross rail knows left, middle, right, outer"):
        Level("bench", cross=Rail(70, face="inner"))
    with pytest.raises(DescriptionError, match="A front rail knows outer, middle, inner"):
        Level("bench", front=Rail(70, face="left"))


def test_a_level_may_stand_on_the_floor_but_not_end_there():
    assert Level("sill", front=70, bottom="0 in").bottom == 0
    with pytest.raises(DescriptionError, match="more than zero"):
        Level("sill", front=70, top=0)


def test_a_clear_may_be_open_or_nothing_but_never_less():
    assert Clear().size is None
    assert Clear("0 mm").size == 0
    with pytest.raises(DescriptionError, match="zero or more"):
        Clear(-1)


@pytest.mark.parametrize("weight", [0, -1, float("inf"), "2", None, True])
def test_a_clear_shares_by_a_weight_above_nothing(weight):
    with pytest.raises(DescriptionError, match="weight"):
        Clear(weight=weight)


def test_a_clear_is_measured_at_a_side_that_there_is():
    assert Clear(60, at="front").at == "front"
    with pytest.raises(DescriptionError, match="Choose one of 'front', 'back', 'left', 'right', 'cross'"):
        Clear(60, at="ends")


def test_names_of_parts_are_put_together_from_piece_level_side_and_count():
    assert leg_name("back", "left") == "back left leg"
    assert leg_name("front", "middle 2") == "front middle leg 2"
    assert rail_name("bench", "front") == "bench/front rail"
    assert rail_name("bench", "cross", 2) == "bench/cross rail 2"
    assert of_piece(2, "bench/front rail") == "2/bench/front rail"


@pytest.mark.parametrize(
    "typed, piece, rest",
    [
        ("2/bench/front rail", 2, "bench/front rail"),
        (" 02/back left leg ", 2, "back left leg"),
        ("bench/front rail", None, "bench/front rail"),
        ("back left leg", None, "back left leg"),
        ("", None, ""),
        ("2/", None, "2/"),
        ("9" * 5000 + "/leg", None, "9" * 5000 + "/leg"),
    ],
    ids=["piece", "zero before it", "rail", "leg", "nothing", "piece alone", "no piece is numbered so"],
)
def test_a_name_is_split_into_its_piece_and_the_rest(typed, piece, rest):
    assert piece_of(typed) == (piece, rest)


@pytest.mark.parametrize("typed", ["2/back left leg", "02/back left leg", " 2/back left leg "])
def test_a_name_is_looked_up_alike_whoever_typed_it(typed):
    assert plain(typed) == "2/back left leg"
