"""Random single rows of uprights, for tests that state a rule: `from row_strategies import single_rows`."""

from __future__ import annotations

import attrs
from hypothesis import strategies as st
from strategies import CORNERS, NAMES, UNITS, Rising, Tape, legs, measures, rails, rows, sometimes, stocks

from benchjoin import Clear, Frame, Level, Overall


@st.composite
def front_stacks(draw, tape):
    """A stack of levels that have front rails alone."""
    rising = Rising(tape)
    count = draw(st.integers(1, 4))
    for number, name in enumerate(NAMES[:count]):
        rail = draw(rails(tape, "front"))
        level = Level(name, align=draw(st.sampled_from(["bottoms", "tops"])), front=rail)
        rising.add(draw, level, {"front": (0.0, rail.width)}, last=number == count - 1)
    return rising


@st.composite
def single_rows(draw):
    """Any single row that can be described and laid out."""
    tape = Tape(draw(st.sampled_from(sorted(UNITS))))
    rising = draw(front_stacks(tape))
    free = st.sampled_from([1.0, 1.1, 1.4]).map(lambda part: max(round(part * rising.z / tape.unit), 60))
    upright = draw(legs(tape, "upright", rising.tops.get("front") or draw(free) * tape.unit))
    if upright.height > rising.z + 40 and not rising.shared and draw(st.booleans()):
        rising.stack.append(Clear())
    overall = draw(st.booleans())
    bays, length = draw(rows(tape, upright, upright, draw(st.integers(2, 4)), loose=overall))
    frame = Frame(
        name="Any row",
        length=Overall(length) if overall else length,
        front=upright,
        against="wall",
        rail_stock=draw(stocks(tape, "board", (12, 30))),
        bays=bays,
        stack=rising.stack,
        corners=draw(st.sampled_from(CORNERS)),
        fit=draw(sometimes(st.sampled_from([0.25, 1.0]), otherwise=0.0, one_in=2)),
        tape=tape.name,
        quantity=draw(st.integers(1, 2)),
    )
    return attrs.evolve(frame, measured=draw(measures(frame)))
