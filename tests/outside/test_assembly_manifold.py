"""Putting it together, as solids of another kernel (manifold3d): what goes in meets nothing that is in, on all its way.

Parts are cells of their blanks, swept along each move as the hull of where they are and where they go; drivers are
cylinders before the heads of what is driven in a step. Nothing here knows how the order was found.
"""

from __future__ import annotations

import numpy as np
import pytest
import row_strategies
import strategies
from designs import DESIGNS
from hypothesis import HealthCheck, given, settings
from manifold3d import Manifold, OpType
from samples import SAMPLES
from solid_wood import SHARED, carved, cells, on_the_way

from benchjoin import assembly, fasten, lay_out
from benchjoin.errors import AssemblyError

FRAMES = {name: frame for name, frame in {**DESIGNS, **SAMPLES}.items() if not lay_out(frame).errors()}
QUICK = ("bench", "tools", "single row, turned")
ALL = [pytest.param(name, marks=() if name in QUICK else pytest.mark.slow) for name in FRAMES]
DRIVER, BIT = 240.0, 5.0  # mm: a little less than what is said to be free


def meets_nothing(plan):
    """Every move of a plan on its way; the first one of an assembly has none."""
    parts = {part.identity: part for part in plan.layout.piece(plan.piece)}
    for move in plan.moves:
        if not move.present:
            continue
        gone = -np.sum(move.steps, axis=0)
        boxes = [cell.shifted(tuple(gone)) for name in move.parts for cell in cells(parts[name])]
        stays = [parts[name] for name in move.present]
        assert on_the_way(boxes, move.steps, stays) <= SHARED * len(boxes), f"{move.unit} into {move.into}"


def complete(plan):
    """All parts end in the piece, each of them once, and what is said to be in is what came."""
    names = [part.identity for part in plan.layout.piece(plan.piece)]
    whole = [name for move in plan.moves if move.into == "the piece" for name in move.parts]
    assert sorted(whole) == sorted(names)
    into = {}
    for move in plan.moves:
        assert set(move.present) == into.get(move.into, set())
        into.setdefault(move.into, set()).update(move.parts)


@pytest.mark.parametrize("name", ALL)
def test_nothing_that_is_in_blocks_what_goes_in(name):
    plan = assembly(lay_out(FRAMES[name]))
    complete(plan)
    meets_nothing(plan)


@pytest.mark.parametrize("begin", ["ends first", "rows first", "part by part"])
def test_nothing_blocks_whichever_way_it_is_begun(begin):
    plan = assembly(lay_out(DESIGNS["bench"]), begin)
    complete(plan)
    meets_nothing(plan)


@settings(deadline=None, max_examples=6, suppress_health_check=list(HealthCheck))
@given(strategies.frames())
def test_random_frames_go_together(frame):
    layout = lay_out(frame)
    if layout.errors():
        return
    try:
        plan = assembly(layout)
    except AssemblyError as error:
        assert error.blocked  # noqa: PT017, it says who is in the way
        return
    complete(plan)
    meets_nothing(plan)


@settings(deadline=None, max_examples=4, suppress_health_check=list(HealthCheck))
@given(row_strategies.single_rows())
def test_random_single_rows_go_together(frame):
    layout = lay_out(frame)
    if not layout.errors():
        plan = assembly(layout)
        complete(plan)
        meets_nothing(plan)


@pytest.mark.parametrize(
    "name", ["bench", pytest.param("stand", marks=pytest.mark.slow), pytest.param("rack", marks=pytest.mark.slow)]
)
def test_every_screw_is_reached_in_the_step_that_drives_it(name):
    """A cylinder before each head meets nothing that is in, and every fastener of the piece is driven once."""
    layout = lay_out(DESIGNS[name])
    work = fasten(layout, wood="western larch")
    plan = assembly(layout, fastening=work)
    parts = {part.identity: part for part in layout.piece(1)}
    wood = {name: carved(part) for name, part in parts.items()}
    told = {id(fixing) for step in plan.steps for fixing, _ in step.unreached}
    driven = []
    for step in plan.steps:
        there = {name for move in step.moves for name in (*move.present, *move.parts)}
        for fixing in step.fixings:
            driven.append(id(fixing))
            assert {fixing.host, fixing.guest} <= there
            first = next(move for move in step.moves if {fixing.host, fixing.guest} <= {*move.present, *move.parts})
            others = {*first.present, *first.parts} - {fixing.host, fixing.guest}
            stays = Manifold.batch_boolean([wood[one] for one in others], OpType.Add) if others else Manifold()
            blocked = any((before(one) ^ stays).volume() > SHARED for one in fixing.driven)
            assert not blocked or id(fixing) in told
    alike = {id(fixing) for step in plan.steps for fixing in step.fixings}
    assert len(driven) == len(alike)
    seen = {(f.host, f.guest) for step in plan.steps for f in step.fixings}
    twins = {name for step in plan.steps for name in step.names[1:]}
    lost = [
        f
        for f in work.fixings
        if f.piece == 1 and f.driven and (f.host, f.guest) not in seen and not in_a_twin(plan, f, twins)
    ]
    assert not lost


def in_a_twin(plan, fixing, twins):
    """Whether a joint lies in a sub-assembly that is told with another one like it."""
    inside = [{name for move in plan.moves if move.into == twin for name in move.parts} for twin in twins]
    return any({fixing.host, fixing.guest} <= own for own in inside)


def before(one):
    """The cylinder that a driver takes up before a head."""
    bar = Manifold.cylinder(DRIVER, BIT / 2).translate((0.0, 0.0, 0.5))
    way = -np.array(one.way)
    turned = {0: (0.0, 90.0 * way[0], 0.0), 1: (-90.0 * way[1], 0.0, 0.0), 2: (0.0, 0.0, 0.0)}[one.axis]
    if one.axis == 2 and way[2] < 0:
        turned = (180.0, 0.0, 0.0)
    return bar.rotate(turned).translate(tuple(one.at))
