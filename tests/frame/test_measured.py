"""Sizes found on the wood: by part, by piece, and never by a name that nobody looks up."""

from __future__ import annotations

import copy
import pickle

import attrs
import pytest

from benchjoin import lay_out
from benchjoin.errors import BenchjoinError, DescriptionError, LengthError
from benchjoin.frame.frame import Frame
from benchjoin.frame.leg import Leg
from benchjoin.frame.measured import measured
from benchjoin.frame.stack import Clear, Level
from benchjoin.frame.stock import Stock

POST = Stock("ash 2x3", thickness="1 1/2 in", width="2 1/2 in")


def laid_section(frame, piece, name):
    part = lay_out(frame).part(f"{piece}/{name}")
    return round(part.thickness, 6), round(part.width, 6)


def frame(**changed):
    plain = {
        "name": "Saw bench",
        "length": "40 in",
        "depth": "16 in",
        "front": Leg(POST, height="24 in"),
        "back": Leg(POST, height="24 in"),
        "rail_stock": Stock("ash 1x4", thickness="3/4 in"),
        "stack": [Clear("6 in"), Level("stretcher", front="2 in", ends="2 in")],
        "quantity": 2,
    }
    return Frame(**{**plain, **changed})


def test_sizes_are_kept_by_part_in_millimetres():
    found = measured({"back left leg.size": ("1 7/16 in", 62), "stretcher/front rail.width": "1 15/16 in"})
    assert {part: dict(sizes) for part, sizes in found.items()} == {
        "back left leg": {"thickness": 36.5125, "width": 62.0},
        "stretcher/front rail": {"width": 49.2125},
    }


def test_thickness_and_width_of_one_part_may_come_one_by_one():
    one_by_one = measured({"back left leg.thickness": 37, "back left leg.width": 62})
    assert one_by_one == measured({"back left leg.size": (37, 62)})


def test_what_is_measured_passes_the_door_again_as_itself():
    found = measured({"2/back left leg.size": (37, 62), "stretcher/front rail.width": 49})
    assert measured(found) == found
    assert attrs.evolve(frame(measured=found)).measured == found


def test_nobody_changes_a_measurement_behind_the_frame():
    sizes = {"back left leg": {"width": 62}}
    found = measured(sizes)
    sizes["back left leg"]["width"] = 1
    assert found["back left leg"]["width"] == 62
    with pytest.raises(TypeError):
        found["back left leg"]["width"] = 1


def test_one_piece_holds_over_all_pieces_and_measured_over_drawn():
    found = frame(measured={"back left leg.size": (37, 62), "2/back left leg.width": 61})
    assert laid_section(found, 1, "back left leg") == (37, 62)
    assert laid_section(found, 2, "back left leg") == (37, 61)
    assert laid_section(found, 2, "back right leg") == (38.1, 63.5)


@pytest.mark.parametrize("copied", [lambda thing: pickle.loads(pickle.dumps(thing)), copy.copy, copy.deepcopy])
def test_a_frame_with_its_measurements_survives_pickling_and_copying(copied):
    sized = frame(measured={"2/back left leg.size": (37, 62)})
    assert copied(sized) == sized
    assert copied(sized).measured["2/back left leg"] == {"thickness": 37, "width": 62}
    assert copied(frame()) == frame() != sized


def test_measurements_show_themselves_plainly():
    found = measured({"back left leg.width": 62, "back left leg.thickness": 37})
    assert repr(found) == "{'back left leg': {'thickness': 37.0, 'width': 62.0}}"


@pytest.mark.parametrize("typed", ["2/back left leg", "02/back left leg", " 2/back left leg"])
def test_a_piece_is_found_again_however_its_number_was_typed(typed):
    found = frame(measured={f"{typed}.width": 61})
    assert laid_section(found, 2, "back left leg") == (38.1, 61)


@pytest.mark.parametrize(
    "address, given",
    [
        ("back left leg", 62),
        ("back left leg.length", 62),
        ("back left leg.size", 62),
        ("back left leg.size", "62 mm"),
        ("back left leg.size", (37, 62, 900)),
        ("width", 62),
        (7, 62),
        ("back left leg", {"widht": 62}),
        ("back left leg", {"width": 62, "length": 600}),
    ],
)
def test_what_is_not_a_size_of_a_part_is_refused_with_a_good_example(address, given):
    with pytest.raises(BenchjoinError, match=r'"part.size": \(thickness, width\), for example'):
        measured({address: given})


@pytest.mark.parametrize("given", ["62", 0, -1, None, float("nan"), True])
def test_a_measured_size_is_a_length_like_any_other(given):
    with pytest.raises(LengthError, match=r"given for 2/back left leg.width"):
        measured({"2/back left leg.width": given})


@pytest.mark.parametrize("value", [None, 62, "back left leg", [("back left leg.width", 62)]])
def test_measurements_are_given_by_address(value):
    with pytest.raises(BenchjoinError, match=r"Write for example \{\"back left leg.size\""):
        measured(value)


@pytest.mark.parametrize(
    "address, said",
    [
        ("bakc left leg.width", "is no part of this frame. Parts are front left leg"),
        ("stretcher/back rail.width", "is no part of this frame"),
        ("3/back left leg.width", "is of piece 3, and the quantity is 2"),
        ("0/back left leg.width", "is of piece 0, and the quantity is 2"),
        ("9" * 5000 + "/back left leg.width", "is no part of this frame"),
    ],
    ids=["slip", "no such rail", "no third piece", "pieces count from one", "far too many"],
)
def test_a_part_that_is_not_there_cannot_be_measured(address, said):
    with pytest.raises(DescriptionError, match=said) as caught:
        frame(measured={address: 62})
    assert [fault.field for fault in caught.value.faults] == ["measured"]
