"""From a sketch to a first frame: what is assumed is told, what is open stays open until it is settled; ranges."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchjoin import Range, Stock, alter, lay_out, sketch
from benchjoin.errors import AddressError, LengthError
from benchjoin.notebook import explore
from benchjoin.sweep import sweep


def first(**more):
    return sketch("Potting bench", **{"length": 1500, "depth": 600, "height": 850, **more})


def test_a_few_sizes_make_a_frame_that_can_be_built():
    found = first(back=1200, shelf=200)
    layout = lay_out(found.settled())
    assert not layout.errors()
    assert max(part.blank.high[2] for part in layout.piece(1) if part.level == "worktop") == pytest.approx(850.0)
    assert layout.leg("back left").length == 1200.0
    shelf = [part.blank.high[2] for part in layout.piece(1) if part.level == "shelf" and part.role == "rail"]
    assert shelf == pytest.approx([200.0] * 4)


def test_every_assumed_value_is_told_and_what_is_given_is_not_assumed():
    said = first(shelf=200).table().text()
    for what in ("leg, thickness", "rails of the worktop", "top board, width", "corners"):
        assert what in said
    own = first(leg=Stock("larch", thickness=60, width=60))
    assert "leg, thickness" not in own.table().text()
    assert own.frame.front.stock.name == "larch"


def test_what_is_undecided_stays_a_range_until_it_is_settled():
    found = sketch("Stand", length="59 in", depth="24 in", height="33 to 34 in", shelf="8 to 9 in")
    assert set(found.open) == {"front.height", "shelf.top"}
    assert found.open["shelf.top"] == Range("8 in", "9 in")
    with pytest.raises(AddressError, match=r"front\.height, shelf\.top is open yet"):
        found.settled()
    frame = found.settled({"front.height": "32 1/2 in", "shelf.top": "8 1/2 in"})
    assert frame.levels()[0].top == pytest.approx(8.5 * 25.4)
    assert frame.tape.unit == "in"


def test_open_ranges_go_into_a_sweep_and_under_sliders():
    found = first(shelf="200 to 230 mm")
    swept = sweep(found.frame, {"shelf.top": Range(200, 230, 10)}, ["marks"])
    assert swept["marks"]["front left leg", "shelf/front rail", "top"].tolist() == [200.0, 210.0, 220.0, 230.0]
    sliders = explore(found.frame, found.open)
    sliders.move("shelf.top", 221)
    assert sliders.frame == alter(found.frame, {"shelf.top": 221})


@given(st.floats(1, 2000), st.floats(1, 500), st.floats(0.5, 50))
def test_a_range_has_both_ends_and_rises_by_its_step(low, more, step):
    own = Range(low, low + more, min(step, more))
    values = own.values(1.0)
    assert values[0] == pytest.approx(low)
    assert values[-1] == pytest.approx(low + more)
    assert all(0 < b - a <= own.step + 1e-6 for a, b in pairwise(values))


@pytest.mark.parametrize("words", ["8 to", "to 9 in", "8-9 in", "", "9 to 8 in", "8 to 9", "a to b in", None])
def test_no_range_is_told(words):
    with pytest.raises(LengthError):
        Range.said(words)


def test_a_unit_said_once_is_that_of_both_ends():
    assert Range.said("8 1/2 to 9 in") == Range("8 1/2 in", "9 in")
    assert Range.said("20 cm to 9 in") == Range(200, "9 in")


def test_steps_that_cannot_be_are_refused():
    for step in (0, -1, 500):
        with pytest.raises(LengthError):
            Range(100, 200, step)
    with pytest.raises(LengthError, match="too fine"):
        Range(0, 100_000, 0.01).values(1.0)


def test_a_planed_section_is_found_either_way_about():
    assert Stock.planed("70x45").thickness == Stock.planed("45x70").thickness == 45.0


def test_a_name_that_addresses_use_is_refused_with_those_that_are_kept():
    from benchjoin.errors import DescriptionError

    with pytest.raises(DescriptionError, match=r"not name, length, depth, front, back.*clear below"):
        alter(first().frame, {"worktop.name": "back"})
