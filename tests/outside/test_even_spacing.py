"""Even spacing held against exact rational arithmetic: Python's fractions, which round nothing.

Boards of one width over a room: gaps that share what is left, margins that share what a true spacer leaves, boards
ripped to suit, and as many as go in with a least gap.
"""

from fractions import Fraction

import pytest
from boarded import POST, RAIL
from hypothesis import given
from hypothesis import strategies as st

from benchjoin import Boards, Clear, Frame, Leg, Level, Stock, lay_out
from benchjoin.errors import RunOverfull

INCH = Fraction(254, 10)
SIXTY_FOURTHS = 64
NEAR = 1e-9  # mm


def sixty_fourths(low, high):
    return st.integers(low * SIXTY_FOURTHS, high * SIXTY_FOURTHS).map(lambda count: Fraction(count, SIXTY_FOURTHS))


def laid(room, width, **more):
    """Low and high edges of boards across a frame that is as deep as the room. [in]"""
    frame = Frame(
        name="Room",
        length=1200,
        depth=float(room * INCH),
        front=Leg(POST, height=600),
        back=Leg(POST, height=600),
        rail_stock=RAIL,
        stack=[
            Clear(200),
            Level(
                "shelf",
                front=70,
                back=70,
                ends=70,
                carries=Boards(Stock("slat", thickness=20, width=float(width * INCH)), **more),
            ),
        ],
        tape="1/16 in",
    )
    return [(p.blank.low[1], p.blank.high[1]) for p in lay_out(frame).parts if p.role == "board"]


def agree(found, exact):
    assert len(found) == len(exact)
    for ends, wanted in zip(found, exact, strict=True):
        assert ends == pytest.approx([float(end * INCH) for end in wanted], abs=NEAR)


def steps(start, width, gap, count):
    return [(start + n * (width + gap), start + n * (width + gap) + width) for n in range(count)]


@given(sixty_fourths(12, 40), sixty_fourths(1, 4), st.integers(2, 12))
def test_gaps_share_what_boards_leave(room, width, count):
    if count * width > room:
        with pytest.raises(RunOverfull) as told:
            laid(room, width, count=count)
        assert told.value.over == pytest.approx(float((count * width - room) * INCH), abs=1e-6)
        return
    gap = (room - count * width) / (count - 1)
    agree(laid(room, width, count=count), steps(Fraction(0), width, gap, count))


@given(sixty_fourths(12, 40), sixty_fourths(1, 4), sixty_fourths(0, 1))
def test_as_many_go_in_as_a_least_gap_lets_through(room, width, gap):
    count = (room + gap) // (width + gap)
    even = (room - count * width) / (count - 1)
    assert even >= gap
    assert (room - (count + 1) * width) / count < gap
    agree(laid(room, width, gap=float(gap * INCH)), steps(Fraction(0), width, even, count))


@given(sixty_fourths(12, 40), sixty_fourths(1, 4), sixty_fourths(0, 1))
def test_margins_share_what_a_true_spacer_leaves(room, width, gap):
    count = (room + gap) // (width + gap)
    margin = (room - count * width - (count - 1) * gap) / 2
    found = laid(room, width, gap=float(gap * INCH), remainder="margins")
    agree(found, steps(margin, width, gap, count))


@given(sixty_fourths(12, 40), sixty_fourths(1, 4), sixty_fourths(0, 1))
def test_ripped_boards_fill_the_room_with_their_gap(room, width, gap):
    count = -(-(room + gap) // (width + gap))
    ripped = (room - (count - 1) * gap) / count
    assert 0 < ripped <= width
    agree(laid(room, width, gap=float(gap * INCH), remainder="rip"), steps(Fraction(0), ripped, gap, count))
