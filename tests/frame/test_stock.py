"""Stock through its sizes: as it is sold, and as it is milled."""

from __future__ import annotations

import copy
import pickle

import attrs
import pytest

from benchjoin import Clear, Frame, Leg, Level, Stock, alter, lay_out
from benchjoin.errors import DescriptionError, MillingError
from benchjoin.frame.address import addresses, value
from benchjoin.trade.allowances import METRIC_MILLING, Milling

MADE = {
    "dressed": Stock.dressed("2x4"),
    "dressed green, of a wood": Stock.dressed("2x4", green=True, species="Douglas-fir"),
    "boards": Stock.dressed("5/4x6", length="12 ft"),
    "rough hardwood": Stock.rough("8/4", width="7 in", species="white oak"),
    "rough softwood": Stock.rough("2x6"),
    "planed": Stock.planed("45x95"),
    "milled": Stock.dressed("2x4").milled(),
    "milled by hand": Stock.planed("45x95").milled(thickness=42, width=90, name="leg stuff"),
    "as ever": Stock("larch", thickness=40, width=60),
}


@pytest.mark.parametrize("stock", MADE.values(), ids=MADE)
def test_a_stock_survives_evolving_copying_and_pickling(stock):
    assert attrs.evolve(stock) == stock
    assert attrs.evolve(attrs.evolve(stock, name="other"), name=stock.name) == stock
    assert copy.deepcopy(stock) == pickle.loads(pickle.dumps(stock)) == stock
    assert hash(copy.deepcopy(stock)) == hash(stock)


@pytest.mark.parametrize("stock", MADE.values(), ids=MADE)
def test_a_leg_of_it_can_be_laid_out(stock):
    frame = Frame(
        name="Stand",
        length=1200,
        depth=500,
        front=Leg(stock, height=700),
        back=Leg(stock, height=700),
        rail_stock=Stock.dressed("1x4"),
        stack=[Clear(100), Level("shelf", front=80, back=80)],
    )
    leg = lay_out(frame).leg("front left")
    assert (leg.thickness, leg.width) == pytest.approx((stock.thickness, stock.width))


def test_a_size_as_it_is_sold_is_the_same_as_when_it_is_typed_in():
    assert Stock.dressed("2x4").thickness == Stock("x", thickness="1 1/2 in").thickness
    assert Stock.dressed("2x4").width == Stock("x", thickness=1, width="3 1/2 in").width
    assert Stock.rough("5/4", width="6 in").thickness == Stock("x", thickness="1 1/4 in").thickness


def test_a_stock_is_named_by_its_wood_and_its_way():
    assert Stock.dressed("2x4", species="western larch").name == "western larch 2x4, dressed"
    assert Stock.dressed("2x4", green=True).name == "2x4, dressed green"
    assert Stock.rough("4/4").milled().name == "4/4, milled"
    assert Stock("oak board", thickness=30).milled().name == "oak board, milled"
    assert Stock.planed("45x45", name="post").name == "post"


def test_a_wood_is_known_by_its_name_in_the_tables():
    assert Stock.dressed("2x4", species="western red cedar").species == "western redcedar"


def test_milled_stock_remembers_where_it_comes_from_and_what_it_is_of():
    start = Stock.dressed("2x6", species="white oak", length="10 ft")
    milled = start.milled(width="5 in")
    assert milled.start == start
    assert (milled.species, milled.state, milled.length) == ("white oak", "milled", 3048.0)
    assert milled.width == 127.0
    assert milled.thickness == pytest.approx(38.1 - 3.175)


def test_the_makers_own_habits_decide_what_milling_takes():
    gentle = Milling(dressed_side="1/32 in")
    assert Stock.dressed("2x4").milled(practice=gentle).thickness == pytest.approx(38.1 - 25.4 / 16)
    assert Stock.planed("45x95").milled().thickness == 45 - METRIC_MILLING.taken("planed") == 42


def test_milled_once_more_it_loses_nothing_by_itself():
    once = Stock.dressed("2x4").milled()
    assert once.milled().thickness == once.thickness


@pytest.mark.parametrize(
    "make, told",
    [
        (lambda: Stock.dressed("2x7"), ["2x7", "no such dressed softwood"]),
        (lambda: Stock.dressed("8x8"), ["8x8", "two rules"]),
        (lambda: Stock.rough("3/3"), ["3/3", "4/4, 5/4"]),
        (lambda: Stock.planed("44x95"), ["44x95", "45x95"]),
        (lambda: Stock.planed(None), ["None", "by its name"]),
        (lambda: Stock.dressed("2x4", species="oka"), ["species", "'oka'", "white oak"]),
        (lambda: Stock("x", thickness=20, state="sawn"), ["state", "'sawn'", "'rough'"]),
        (lambda: Stock("x", thickness=20, start="2x4"), ["start", "'2x4'", "Stock.dressed"]),
        (lambda: Stock.dressed("2x4").milled(width="4 in"), ["width", "more than", "2x4, dressed"]),
        (lambda: Stock.rough("4/4", width="6"), ["width", "no unit"]),
    ],
)
def test_what_is_not_sold_or_cannot_be_is_refused_in_words(make, told):
    with pytest.raises(DescriptionError) as caught:
        make()
    assert [word for word in told if word not in str(caught.value)] == []


def test_wood_thinner_than_what_milling_takes_is_refused():
    with pytest.raises(MillingError, match="less than what milling takes"):
        Stock("veneer", thickness=2, state="rough").milled()


@pytest.mark.parametrize("field", ["rough_side", "end", "spare_legs", "test_pieces", "planer_least"])
def test_a_habit_that_is_none_is_refused(field):
    with pytest.raises(ValueError, match=field):
        Milling(**{field: "many"})


def test_what_a_stock_is_milled_from_has_addresses():
    frame = Frame(
        name="Stand",
        length=1200,
        depth=500,
        front=Leg(MADE["milled"], height=700),
        back=Leg(MADE["milled"], height=700),
        rail_stock=Stock.dressed("1x4"),
        stack=[Clear(100), Level("shelf", front=80, back=80)],
    )
    assert "front.stock.start.thickness" in addresses(frame)
    changed = alter(frame, {"front.stock.start.width": "5 in", "rail_stock.species": "larch"})
    assert value(changed, "front.stock.start.width") == 127.0
    assert changed.rail_stock.species == "western larch"
