"""Boards and bearers on the levels of random frames, and what random frames are drawn with: sizes and stock.

Boards are few and narrow, so that every run comes out whatever stands round it.
"""

from __future__ import annotations

import math

import attrs
from hypothesis import strategies as st

from benchjoin import Bearers, Boards, Butt, HalfLap, Laid, Level, Notch, Over, Planted, Stock

UNITS = {"1 mm": 1.0, "1/16 in": 25.4 / 16}


@attrs.frozen
class Tape:
    """Draws whole counts of one unit, and writes them as a maker would. [mm for limits]"""

    name: str

    @property
    def unit(self):
        return UNITS[self.name]

    def counts(self, low, high):
        return st.integers(math.ceil(low / self.unit), math.floor(high / self.unit))

    def write(self, count):
        return count if self.name == "1 mm" else f"{'-' * (count < 0)}{abs(count)}/16 in"


@st.composite
def stocks(draw, tape, name, thickness, width=None):
    wide = None if width is None else tape.write(draw(tape.counts(*width)))
    return Stock(name, thickness=tape.write(draw(tape.counts(*thickness))), width=wide)


def sometimes(strategy, *, otherwise, one_in=3):
    """The strategy once in a while, and mostly what stands there otherwise."""
    return st.integers(1, one_in).flatmap(lambda n: strategy if n == 1 else st.just(otherwise))


@st.composite
def carries(draw, tape, item, stack):
    """A level of a stack that may carry something by now; clears as they are."""
    if not isinstance(item, Level) or not draw(st.booleans()):
        return item
    sides = item.sides()
    runs = [draw(bearers(tape, run, "bearer")) for run in draw(st.lists(ways(sides), max_size=1))]
    if runs and draw(st.integers(1, 3)) > 1:
        other = "along" if runs[0].run == "across" else "across"
        if kinds := joints_of(sides, other):
            runs.append(draw(bearers(tape, (other, draw(st.sampled_from(kinds))), "cross bearer")))
    if draw(st.integers(1, 4)) > 1:
        runs.append(draw(boards(tape, item, stack)))
    return attrs.evolve(item, carries=runs)


def joints_of(sides, run):
    """Joints that bearers which run so can have, by the rails that there are."""
    crossed = ("front", "back") if run == "across" else ("left", "right", "cross")
    beside = ("left", "right") if run == "across" else ("front", "back")
    kinds = [Butt, Notch, HalfLap, Over] if any(side in sides for side in crossed) else []
    return [*kinds, *[Planted] * any(side in sides for side in beside), Laid]


def ways(sides):
    return st.sampled_from([(run, kind) for run in ("along", "across") for kind in joints_of(sides, run)])


@st.composite
def bearers(draw, tape, way, name):
    run, kind = way
    flat = draw(sometimes(st.just(True), otherwise=False))
    stock = draw(stocks(tape, "batten", (12, 20), (25, 45)))
    high = stock.thickness if flat else stock.width
    deep = tape.write(draw(tape.counts(4, high - 6))) if kind in (Notch, Over) and draw(st.booleans()) else None
    joint = (
        kind(deep) if deep is not None else HalfLap(draw(st.sampled_from([0.4, 0.5]))) if kind is HalfLap else kind()
    )
    crossing = draw(st.sampled_from([HalfLap(), HalfLap(0.6), Notch(), Over()]))
    fields = {}
    if kind is not Planted:
        way = draw(st.sampled_from(["count", "at", "span"]))
        middles = draw(st.lists(tape.counts(60, 400), min_size=1, max_size=3, unique=True))
        given = {"count": draw(st.integers(1, 2)), "at": [tape.write(at) for at in sorted(middles)], "span": 300}
        fields[way] = given[way]
    if kind in (Butt, Planted):
        fields["lowered"] = tape.write(draw(sometimes(tape.counts(-10, 25), otherwise=0)))
    else:
        past = ("front", "back") if run == "across" else ("left", "right")
        fields |= {side: tape.write(draw(sometimes(tape.counts(-5, 40), otherwise=0))) for side in past}
    return Bearers(stock, run=run, joint=joint, crossing=crossing, flat=flat, name=name, **fields)


@st.composite
def boards(draw, tape, level, stack):
    stock = draw(stocks(tape, "slat", (12, 22), (30, 42)))
    run = draw(st.sampled_from(["along", "along", "across", "across", "up"]))
    remainder = draw(st.sampled_from(["gaps", "gaps", "margins", "rip", "back", "both"]))
    gap = tape.write(draw(tape.counts(2, 20)))
    count = draw(st.sampled_from([None, None, 2]) if remainder in ("gaps", "margins") else st.none())
    fields = {"within": draw(st.sampled_from([None, None, "legs", "rails"]))}
    fields["clear"] = draw(sometimes(st.sampled_from([0, 2]), otherwise=None))
    margins = ["front", "back", "left", "right"]
    if run == "up":
        side = draw(st.sampled_from([side for side in level.sides() if side != "cross"] or ["cross"]))
        if side == "cross":
            return Boards(stock, run="along", gap=gap)
        upper = [other.name for other in stack if isinstance(other, Level) and side in other.sides()]
        fields |= {"side": side, "face": draw(st.sampled_from(["outer", "inner"])), "to": upper[-1]}
        margins = ["bottom", "top", *(("left", "right") if side in ("front", "back") else ("front", "back"))]
    fields |= {side: tape.write(draw(sometimes(tape.counts(-10, 30), otherwise=0))) for side in margins}
    return Boards(stock, run=run, count=count, gap=gap, remainder=remainder, **fields)
