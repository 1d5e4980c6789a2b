"""Every word and number of what loads do: the lists, the findings, what would help. Read one before accepting it.

That the numbers are right is held against other programs and worked examples in tests/outside and by hand in
tests/shop/test_strength; here it is seen when one of them moves.
"""

from __future__ import annotations

import attrs
import pytest
from designs import DESIGNS
from samples import SAMPLES

from benchjoin import (
    Butt,
    Case,
    Clear,
    Filled,
    Frame,
    Leg,
    Level,
    Line,
    Notch,
    Point,
    Push,
    Rail,
    Spread,
    Stock,
    fasten,
    lay_out,
    strength,
    would_help,
)
from benchjoin.shop.strength.check import steadily
from benchjoin.shop.strength.improving import help_table

LEG, SLIM = Stock("fir batten", thickness=36, width=62), Stock("fir lath", thickness=22)
COAT_STAND = Frame(
    name="Coat stand",
    length=950,
    depth=420,
    front=Leg(LEG, height=700),
    back=Leg(LEG, height=1500),
    rail_stock=SLIM,
    stack=[
        Clear(160),
        Level("low", front=Rail(70, joint=Notch(depth=9)), back=Rail(70, joint=Notch(depth=5)), ends=70),
        Clear(),
        Level("seat", front=95, back=Rail(95, joint=Notch(depth=18)), ends=Rail(80, joint=Butt()), top=700),
    ],
)
HUNG = Case("coats", [Push("150 N", "back", height=1450, on="back"), Push("60 N", "left")], "short")
MIXED = Case(
    "a busy day",
    [
        Spread("bench", "70 kg"),
        Point("bench", "45 lb", along="31 in", across="front edge"),
        Point("foot shelf", "200 N", across="4 in"),
        Line("foot shelf", "15 kg", start="10 in", end="40 in"),
        Line("bench", "8 kg", across="front edge"),
        Line("foot shelf", 30, start="20 in", across="5 in"),
        Filled("bin", "12 kg"),
    ],
    "long",
)
POLES = attrs.evolve(
    COAT_STAND,
    name="Poles",
    rail_stock=Stock("fir slat", thickness=9),
    front=Leg(Stock("fir rod", thickness=24, width=26), height=700),
    back=Leg(Stock("fir rod", thickness=24, width=26), height=1500),
    stack=[Clear(620), Level("seat", front=80, back=80, ends=80, top=700)],
)
"""Slender, and loaded until they are bent further by what presses on them."""
BUTTS = {"corner_blocks": ["butt"]}
TOLD = {
    "coat-stand": (COAT_STAND, HUNG, {"corner_blocks": ["seat", "low/left rail"], "walls": ["back"]}),
    "coat-stand-indoors": (COAT_STAND, HUNG, {"braced": ["across"], "outdoors": False, "sound": 0.7}),
    "coat-stand-heavy": (
        COAT_STAND,
        [Case("wet", [Spread("seat", "300 kg")], "permanent"), Case("sat on", [Point("seat", "1 kN", along=300)])],
        {"corner_blocks": ["seat", "low"]},
    ),
    "poles": (POLES, Case("pressed", [Spread("seat", "75 kg"), Push("20 N", "back")], "long"), {"braced": ["across"]}),
    "coat-stand-falls-over": (COAT_STAND, HUNG, {}),
    "bench-in-inches": (DESIGNS["bench"], MIXED, BUTTS),
    "nailed": (SAMPLES["boarded foot shelf"], None, {"fastening": {"laid": "nothing", "butt": "nail 8d"}, **BUTTS}),
    "usual-cases": (DESIGNS["tools"], None, BUTTS),
    "bearers": (
        SAMPLES["bearers of every kind"],
        Case("loaded", [Spread(level, "40 kg") for level in ("tees", "let in", "over", "butted")], "medium"),
        BUTTS,
    ),
    "planted": (SAMPLES["planted, ends through"], Case("pushed", [Push("80 N", "right")], "short"), {}),
    "laps": (SAMPLES["four pairs, lapped"], None, BUTTS),
    "against-the-wall": (SAMPLES["single row"], None, {}),
    "trays": (SAMPLES["trays"], None, BUTTS),
}
WOOD = "western larch"


def numbers(found):
    """The checks nearest their limits, to four figures; of those alike in all of them one."""
    seen = set()
    for one in sorted(found.checks[:120], key=lambda one: (one.case, one.part, one.mate, one.kind)):
        sizes = (one.use, one.felt, one.limit, one.place, one.moment)
        said = ", ".join(f"{steadily(size):.4g}" for size in sizes)
        if said not in seen:
            yield f"{one.case}, {one.part}, {one.mate}, {one.kind}: {said}"
        seen.add(said)


@pytest.mark.parametrize("name", TOLD)
def test_the_words_of_strength(name, file_regression):
    frame, loads, options = TOLD[name]
    layout = lay_out(frame)
    if "fastening" in options:
        options = {**options, "fastening": fasten(layout, options["fastening"], wood=WOOD)}
    found = strength(layout, loads, wood=WOOD, **options)
    tables = [found.loads(), found.table(most=40), found.stability(), help_table(found, would_help(found))]
    findings = (f"{f.severity}, {f.kind}, {f.where}: {f.sentence}" for f in found.findings)
    told = [table.text() for table in tables]
    file_regression.check("\n\n".join([repr(found), *told, *findings]) + "\n\n" + "\n".join(numbers(found)) + "\n")
