"""A picture is drawn of whatever can be laid out: no hair of wood is left where a rail and a leg end at one height."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from benchjoin import Clear, Frame, Leg, Level, Stock, lay_out
from benchjoin.drawings.views.isometric import picture
from benchjoin.errors import BenchjoinError


def tenths(low, high):
    return st.integers(low * 10, high * 10).map(lambda count: count / 10)


@st.composite
def flush_at_the_back(draw):
    """Ordinary frames in tenths of a millimetre with rails flush with the top of the back legs."""

    def leg(name):
        stock = Stock(name, thickness=draw(tenths(20, 60)), width=draw(tenths(60, 110)))
        return Leg(stock, height=draw(tenths(300, 1200)), wide=draw(st.sampled_from(["front", "end"])))

    sides = draw(st.sampled_from([("back",), ("front", "back"), ("front", "back", "ends"), ("back", "ends")]))
    return Frame(
        name="Any",
        length=draw(tenths(250, 1500)),
        depth=draw(tenths(200, 700)),
        front=leg("one"),
        back=leg("other"),
        rail_stock=Stock("rail", thickness=draw(tenths(10, 30))),
        stack=[Clear(), Level("top", **{side: draw(tenths(50, 200)) for side in sides}, flush="back leg top")],
    )


@given(flush_at_the_back())
def test_it_is_drawn_of_any_frame(frame):
    try:
        parts = lay_out(frame).piece(1)
    except BenchjoinError:
        assume(False)
    seen = picture(parts)
    assert {face.part for face in seen.faces} <= {part.name for part in parts}
    assert seen.lines.length > 0


@pytest.mark.parametrize("turned", ["front", "end"])
def test_it_is_drawn_where_a_wide_rail_ends_with_its_leg(turned):
    slim, thick = Stock("slim", thickness=39.3, width=40), Stock("thick", thickness=40, width=50)
    frame = Frame(
        name="Short",
        length=254.1,
        depth=300,
        front=Leg(slim, height=700),
        back=Leg(thick, height=700, wide=turned),
        rail_stock=Stock("rail", thickness=20),
        stack=[Clear(), Level("top", back=200, flush="back leg top")],
    )
    assert picture(lay_out(frame).piece(1)).lines.length > 0
