"""A curve that is deeper in one variant than in another: numbers as each by itself."""

from __future__ import annotations

import attrs
import pytest
from stand import STAND

from benchjoin import Arc, Clear, Level, Ogee, Points, Rail, Scallop, alter, lay_out
from benchjoin.sweep import sweep

EDGES = {
    "arc": (Arc(10), "rise"),
    "scallop": (Scallop(2, 8), "depth"),
    "ogee": (Ogee(10, 90), "depth"),
    "ogee's run": (Ogee(5, 90), "run"),
    "points, their flats": (Points([(0.3, 5)]), "flat"),
}


@pytest.mark.parametrize("name", EDGES)
def test_volumes_of_a_sweep_are_those_of_each_variant_by_itself(name):
    edge, field = EDGES[name]
    low = Level("low", front=Rail(60, lower_edge=edge), back=60, ends=60)
    frame = attrs.evolve(STAND, quantity=1, stack=[Clear(100), low, *STAND.stack[2:]])
    address, values = f"low.front.lower_edge.{field}", [6, 8, 12, 15]
    swept = sweep(frame, {address: values}, ["volumes", "findings"]).outputs["volumes"]
    alone = [lay_out(alter(frame, {address: value})).part("low/front rail").volume for value in values]
    assert len(set(alone)) == len(values)
    assert swept["low/front rail"] == pytest.approx(alone)
