"""A clear that is measured at one side is there as it was given, whatever levels lie between on the other sides."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchjoin import Clear, Frame, Leg, Level, Rail, Stock, alter, lay_out
from benchjoin.errors import DescriptionError, RunError

POST = Stock("oak post", thickness=45, width=70)


def rack(*stack, height=1600, **more):
    fields = {"length": 900, "depth": 400, "rail_stock": Stock("oak board", thickness=20), "tape": "1 mm"}
    legs = Leg(POST, height=height)
    return Frame(name="Smoker rack", front=legs, back=legs, stack=stack, **{**fields, **more})


def rails(layout):
    found = {part.identity: part.blank for part in layout.piece(1) if part.role == "rail"}
    return {name: (box.low[2], box.high[2]) for name, box in found.items()}


def test_it_reaches_past_a_level_that_has_no_rail_there():
    # by hand: two starts 70 over one's front rail, 545 + 70 = 615; three 180 over one's back rail, 620 + 180 = 800
    three = rack(
        Clear(500),
        Level("one", front=45, back=120),
        Clear(70, at="front"),
        Level("two", front=35),
        Clear(180, at="back"),
        Level("three", back=60),
    )
    assert rails(lay_out(three)) == {
        "one/front rail": (500.0, 545.0),
        "one/back rail": (500.0, 620.0),
        "two/front rail": (615.0, 650.0),
        "three/back rail": (800.0, 860.0),
    }
    higher = rails(lay_out(alter(three, {"clear above one.size": 90, "two.front.width": 50})))
    assert higher["two/front rail"] == (635.0, 685.0)
    assert higher["three/back rail"] == (800.0, 860.0)


def test_it_reaches_upwards_as_well():
    stack = (Level("one", back=60), Clear(300, at="back"), Level("two", front=40), Clear(100), Level("three", back=60))
    found = rails(lay_out(rack(Clear(100), *stack)))
    assert found["three/back rail"][0] - found["one/back rail"][1] == 300.0
    assert found["three/back rail"][0] - found["two/front rail"][1] == 100.0


def test_what_it_passes_must_be_known():
    stack = (Level("one", front=45, back=120), Clear(), Level("two", front=35), Clear(180, at="back"))
    with pytest.raises(RunError, match="clear above two is measured to a rail beyond the clear above one"):
        lay_out(rack(Clear(500), *stack, Level("three", back=60, top=900)))


def test_two_clears_that_reach_past_each_other_are_refused_and_not_worked_out_for_ever():
    stack = (Level("one", back=60), Clear(200, at="back"), Level("two", front=35), Clear(200, at="back"))
    with pytest.raises(RunError, match="not known before"):
        lay_out(rack(Clear(100), *stack, Level("three", back=60)))


@pytest.mark.parametrize("below", [True, False])
def test_where_nothing_lies_on_that_side_it_says_so(below):
    one, two = Level("one", front=45), Level("two", front=35, back=35)
    stack = (one, Clear(70, at="back"), two) if below else (two, Clear(70, at="back"), one)
    with pytest.raises(DescriptionError, match=f"no rail lies there {'below' if below else 'above'} it"):
        rack(Clear(500), *stack)


def test_from_the_floor_it_is_measured_to_the_first_rail_on_its_side():
    found = rails(lay_out(rack(Clear(400, at="back"), Level("low", front=60), Clear(100), Level("high", back=40))))
    assert found["high/back rail"][0] == 400.0
    assert found["low/front rail"] == (240.0, 300.0)


def test_a_clear_of_nought_lies_lower_than_the_band_however_it_is_worded():
    """The front rail of the upper level stands on that of the lower, 75 under the lower's back rail's top."""
    low, high = Level("low", front=45, back=120), Level("high", front=60)
    closed = rails(lay_out(rack(Clear(300), low, Clear(0, at="front"), high)))
    opened = rails(lay_out(rack(Clear(300), low, Clear(0, at="front"), high, Clear())))
    shared = rails(lay_out(rack(Clear(300), low, Clear(at="front"), Level("high", front=60, bottom=345))))
    assert closed == opened == shared
    assert closed["high/front rail"] == (345.0, 405.0)


WIDTHS = st.integers(20, 120)


@given(st.data())
def test_any_clear_at_a_side_measures_what_was_given(data):
    """Levels with rails at the front, the back or both; each clear is measured at a side that has a rail below."""
    stack, levels, wanted = [Clear(200)], [], {}
    for number in range(data.draw(st.integers(2, 6))):
        sides = data.draw(st.sampled_from([("front",), ("back",), ("front", "back")]))
        rails_ = {side: Rail(data.draw(WIDTHS), raised=data.draw(st.sampled_from([0, 0, 15]))) for side in sides}
        name = f"level {number}"
        if levels:
            known = [side for side in sides if any(side in own for _, own in levels)]
            side = data.draw(st.sampled_from(known)) if known else None
            size = data.draw(st.integers(150, 400))
            stack.append(Clear(size, at=side))
            if side:
                below = next(level for level, own in reversed(levels) if side in own)
                wanted[below, name, side] = size
        stack.append(Level(name, **rails_))
        levels.append((name, sides))
    found = rails(lay_out(rack(*stack, height=5000)))
    for (below, above, side), size in wanted.items():
        assert found[f"{above}/{side} rail"][0] - found[f"{below}/{side} rail"][1] == pytest.approx(size)
