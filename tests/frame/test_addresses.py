"""Addresses: every value is reached, read back and altered by one grammar."""

from __future__ import annotations

import attrs
import pytest

from benchjoin.errors import AddressError, DescriptionError
from benchjoin.frame.address import addresses, alter, value
from benchjoin.frame.frame import Frame
from benchjoin.frame.joints import HalfLap, Notch
from benchjoin.frame.leg import Leg
from benchjoin.frame.rail import Rail
from benchjoin.frame.stack import Clear, Level
from benchjoin.frame.stock import Stock
from benchjoin.readings import Tape

POST = Stock("ash 2x3", thickness="1 1/2 in", width="2 1/2 in")
BENCH = Frame(
    name="Potting bench",
    length="60 in",
    depth="20 in",
    front=Leg(POST, height="34 in"),
    back=Leg(POST, height="60 in"),
    rail_stock=Stock("ash 1x4", thickness="3/4 in"),
    stack=[
        Clear("6 in"),
        Level("foot shelf", front="2 in", ends=Rail("2 in")),
        Clear(),
        Level("bench", front=Rail("3 in", joint=Notch("1/2 in")), back="3 in", flush="front leg top"),
        Clear(at="back", weight=2),
        Level("head rail", back="4 in", flush="back leg top"),
    ],
    bays=[Clear("24 in"), Clear()],
    quantity=2,
)

REACHED = {
    "name": "Potting bench",
    "length": 1524.0,
    "depth": 508.0,
    "front": Leg(POST, height=863.6),
    "front.height": 863.6,
    "back.stock.thickness": 38.1,
    "rail_stock.thickness": 19.05,
    "rail_stock.width": None,
    "corners": "front through",
    "fit": 0.0,
    "quantity": 2,
    "tape": Tape("1/16 in"),
    "bay 1.size": 609.6,
    "bay 2.size": None,
    "foot shelf.name": "foot shelf",
    "foot shelf.front.width": 50.8,
    "foot shelf.ends.width": 50.8,
    "foot shelf.left": None,
    "bench.front.joint.depth": 12.7,
    "bench.flush": "front leg top",
    "clear below foot shelf.size": 152.4,
    "clear below bench.size": None,
    "clear above foot shelf.size": None,
    "clear above bench.at": "back",
    "clear below head rail.weight": 2.0,
}


@pytest.mark.parametrize("address, found", REACHED.items())
def test_a_value_is_reached_by_its_address(address, found):
    assert value(BENCH, address) == found
    assert address in addresses(BENCH)


def test_spaces_around_an_address_are_not_part_of_it():
    assert value(BENCH, "  length ") == 1524.0


@pytest.mark.parametrize("address", addresses(BENCH))
def test_every_address_is_readable_and_takes_its_own_value_back(address):
    assert alter(BENCH, {address: value(BENCH, address)}) == BENCH


def test_no_address_is_listed_twice():
    assert len(set(addresses(BENCH))) == len(addresses(BENCH)) > 80


@pytest.mark.parametrize(
    "address, given, found",
    [
        ("length", "64 in", 1625.6),
        ("front.height", "36 in", 914.4),
        ("bench.back.width", "2 15/16 in", 74.6125),
        ("foot shelf.front", "4 in", Rail("4 in")),
        ("foot shelf.left", "1 in", Rail("1 in")),
        ("foot shelf.front.joint", HalfLap, HalfLap()),
        ("bench.front.joint.depth", "3/8 in", 9.525),
        ("clear below foot shelf.size", "8 in", 203.2),
        ("clear above bench.size", 400, 400.0),
        ("bay 2.size", "20 in", 508.0),
        ("back.stock.width", "2 3/8 in", 60.325),
        ("tape", "1 mm", Tape("1 mm")),
        ("quantity", 5, 5),
        ("corners", "staggered", "staggered"),
    ],
)
def test_one_change_changes_one_value_and_nothing_else(address, given, found):
    altered = alter(BENCH, {address: given})
    assert value(altered, address) == found
    assert alter(altered, {address: value(BENCH, address)}) == BENCH


def test_several_changes_are_made_at_once():
    altered = alter(
        BENCH,
        {"bench.front.width": "2 7/8 in", "length": "64 in", "bench.back.width": "2 7/8 in", "bay 1.size": "26 in"},
    )
    assert [value(altered, a) for a in ("length", "bench.front.width", "bench.back.width", "bay 1.size")] == [
        1625.6,
        73.025,
        73.025,
        660.4,
    ]
    assert value(altered, "bench.front.joint.depth") == 12.7


def test_no_half_way_state_has_to_make_sense():
    # a level may lose its only rail when it gets another in the same breath
    gone = {"head rail.back": None, "head rail.flush": None, "clear above bench.at": "front"}
    altered = alter(BENCH, {**gone, "head rail.front": "3 in", "head rail.bottom": "50 in"})
    assert set(altered.levels()[-1].sides()) == {"front"}
    with pytest.raises(DescriptionError, match="no rail"):
        alter(BENCH, {"head rail.back": None, "head rail.flush": None})


def test_a_frame_is_left_as_it_was():
    before = attrs.asdict(BENCH, recurse=False)
    alter(BENCH, {"length": "64 in", "bench.front.width": "2 in", "back left leg.width": 60})
    assert attrs.asdict(BENCH, recurse=False) == before


def test_nothing_changed_is_the_same_frame():
    assert alter(BENCH, {}) == BENCH


def test_a_level_renamed_is_reached_by_its_new_name():
    altered = alter(BENCH, {"bench.name": "worktop", "clear below bench.weight": 3})
    assert value(altered, "worktop.back.width") == 76.2
    assert value(altered, "clear below worktop.weight") == 3
    with pytest.raises(AddressError):
        value(altered, "bench.back.width")


@pytest.mark.parametrize(
    "address, near",
    [
        ("lenght", "'length'"),
        ("front.heigth", "'front.height'"),
        ("bench.frnt.width", "'bench.front.width'"),
        ("head rial.back.width", "'head rail.back.width'"),
        ("back lft leg.size", "'back left leg.size'"),
        ("bay 3.size", "'bay 2.size'"),
    ],
)
def test_an_address_that_reaches_nothing_names_near_ones(address, near):
    for reach in (lambda: value(BENCH, address), lambda: alter(BENCH, {address: 1})):
        with pytest.raises(AddressError, match=r"reaches no value of this frame. Did you mean") as caught:
            reach()
        assert near in str(caught.value)
        assert caught.value.address == address
        assert set(caught.value.known) >= set(addresses(BENCH))


@pytest.mark.parametrize(
    "address",
    [
        "",
        "  ",
        ".",
        "length.",
        ".length",
        "length.x",
        "stack",
        "bays",
        "measured",
        "bay 0.size",
        "bay 1 .size",
        "bay ².size",
        "foot shelf.left.width",
        "bench.__class__",
        "levels",
        "clear above head rail.size",
        "front.stock.__init__",
        7,
        None,
        ("length",),
    ],
)
def test_what_is_no_address_is_an_address_error(address):
    with pytest.raises(AddressError):
        value(BENCH, address)
    with pytest.raises(AddressError):
        alter(BENCH, {address: 1})


def test_a_bad_value_is_told_with_its_field():
    with pytest.raises(
        DescriptionError, match=r"Frame \"Potting bench\" cannot be built .*\n  length: '64' .* no unit"
    ):
        alter(BENCH, {"length": "64"})
    with pytest.raises(DescriptionError, match=r"Rail cannot be built .*\n  width: '3'"):
        alter(BENCH, {"bench.front.width": "3"})


@pytest.mark.parametrize("given", [{}, {"x": 1}, {"size": 3}])
def test_a_mapping_is_no_length(given):
    with pytest.raises(DescriptionError, match="is not a length"):
        alter(BENCH, {"front.height": given})


@pytest.mark.parametrize(
    "changes",
    [
        {"front": Leg(POST, height="30 in"), "front.height": "36 in"},
        {"front.height": "36 in", "front": Leg(POST, height="30 in")},
        {"length": "64 in", " length": "65 in"},
        {"clear above foot shelf.size": "9 in", "clear below bench.size": "8 in"},
        {"back left leg.size": (37, 62), "back left leg.width": 61},
        {"2/back left leg.width": 61, "02/back left leg.width": 62},
    ],
)
def test_two_changes_of_one_value_are_refused_since_their_order_would_decide(changes):
    one, other = changes
    with pytest.raises(AddressError) as caught:
        alter(BENCH, changes)
    assert str(caught.value) == f"{one!r} and {other!r} change the same value. Write one of them."


class TestMeasuredOnTheWood:
    def test_a_size_is_altered_for_a_part_of_every_piece(self):
        altered = alter(BENCH, {"back left leg.size": ("1 7/16 in", "2 7/16 in")})
        assert value(altered, "back left leg.size") == (36.5125, 61.9125)
        assert value(altered, "back left leg.width") == 61.9125

    def test_a_size_is_altered_for_one_piece_and_leaves_the_other(self):
        altered = alter(BENCH, {"bench/front rail.width": 75, "2/bench/front rail.width": 74})
        assert value(altered, "bench/front rail.width") == 75
        assert value(altered, "2/bench/front rail.width") == 74
        assert value(altered, "1/bench/front rail.width") is None

    def test_width_and_thickness_are_kept_beside_each_other(self):
        altered = alter(alter(BENCH, {"2/back left leg.width": 61}), {"2/back left leg.thickness": 37})
        assert value(altered, "2/back left leg.size") == (37, 61)

    def test_a_new_size_takes_the_place_of_the_old_one(self):
        altered = alter(alter(BENCH, {"back left leg.size": (37, 61)}), {"back left leg.size": (36, 60)})
        assert value(altered, "back left leg.size") == (36, 60)

    def test_what_was_measured_before_stays_when_something_else_changes(self):
        altered = alter(alter(BENCH, {"2/back left leg.size": (37, 61)}), {"length": "64 in"})
        assert value(altered, "2/back left leg.size") == (37, 61)

    def test_what_nobody_measured_has_no_value(self):
        assert value(BENCH, "back left leg.width") is None
        assert value(BENCH, "back left leg.size") == (None, None)

    @pytest.mark.parametrize("given", ["61 mm", 61, (61,), (37, 61, 900)])
    def test_a_size_is_thickness_and_width(self, given):
        with pytest.raises(DescriptionError, match=r"\"part.size\": \(thickness, width\)"):
            alter(BENCH, {"back left leg.size": given})

    def test_a_piece_that_is_not_made_is_refused(self):
        with pytest.raises(DescriptionError, match="of piece 3, and the quantity is 2"):
            alter(BENCH, {"3/back left leg.width": 61})

    @pytest.mark.parametrize("address", ["back left leg", "back left leg.height", "back left leg.size.x"])
    def test_a_part_has_only_its_width_thickness_and_size(self, address):
        with pytest.raises(AddressError, match="a part has its width, thickness and size on the wood") as caught:
            value(BENCH, address)
        assert caught.value.known == ("back left leg.thickness", "back left leg.width", "back left leg.size")
