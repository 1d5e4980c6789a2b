"""Fasteners as cylinders in the solids of another kernel (manifold3d), which knows nothing of rules, rooms or lattices.

Each lies in the two parts that it joins and in no other, comes out of no face, keeps off edges, ends, floors of cuts
and other fasteners. Distances are typed in here: 3 diameters from an edge and 7 from an end for what carries
(EN 1995-1-1 Table 8.2, with lead holes), 1.5 and 4 for what carries nothing (common practice, no source); between
fasteners that cross a diameter of wood.
"""

from __future__ import annotations

import itertools

import attrs
import numpy as np
import pytest
from designs import DESIGNS
from finished_paper import random_frames
from manifold3d import Manifold
from samples import SAMPLES
from solid_wood import carved, solid

from benchjoin import lay_out
from benchjoin.shop.fasteners.fasten import fasten
from benchjoin.solids import Box

SLIVER = 0.5  # mm³ that facets of a cylinder may leave
QUICK = ("bench", "tools", "drip board", "rails inside", "planted, front through", "staggered")
CHOICES = {"": {}, "bolts": {"half-lap": "bolt 1/4 in", "planted": "bolt M8", "notch": "bolt M6"}}


def cylinder(at, tip, radius):
    """A cylinder along one of the axes, its facets outside the circle."""
    at, tip = np.array(at), np.array(tip)
    axis = int(np.argmax(np.abs(tip - at)))
    long = float(abs(tip - at)[axis])
    outer = radius / np.cos(np.pi / 24)
    rod = Manifold.cylinder(long, outer, outer, 24)
    turned = {0: (0, 90, 0), 1: (-90, 0, 0), 2: (0, 0, 0)}[axis]
    return rod.rotate(turned).translate(tuple(np.minimum(at, tip)))


def beside(at, tip, part, edge, end):
    """The wood that is asked for round a line: so far to the edges, and so far along the grain."""
    grain = part.slot.axes[0]
    low, high = np.minimum(at, tip), np.maximum(at, tip)
    axis = int(np.argmax(high - low))
    asked = [cylinder(at, tip, edge)]
    if grain != axis:
        reach = np.where(np.arange(3) == axis, 0.0, 0.01)
        reach[grain] = end
        asked.append(solid(Box(tuple(low - reach), tuple(high + reach))))
    return asked


def segments_apart(one, other):
    """Distance of two lines along the axes."""
    a, b = (np.array([line.at, line.tip]) for line in (one, other))
    gap = np.maximum(np.maximum(a.min(axis=0) - b.max(axis=0), b.min(axis=0) - a.max(axis=0)), 0.0)
    return float(np.sqrt((gap**2).sum()))


def faults(layout, work):
    """What is wrong with the fasteners of the first piece."""
    parts = {part.identity: part for part in layout.piece(1)}
    wood = {name: carved(part) for name, part in parts.items()}
    own = [(fixing, one) for fixing in work.fixings if fixing.piece == 1 for one in fixing.driven]
    for fixing, one in own:
        where = f"{fixing.guest} at {fixing.host}, {one.size.name}"
        for found in (*out_of_its_parts(one, parts, wood), *too_near(fixing, one, parts, wood)):
            yield f"{where}: {found}"
    for (_, one), (_, other) in itertools.combinations(own, 2):
        if meet(one, other):
            yield f"{one.head} to {one.point}: too near the {other.size.name} from {other.head} to {other.point}"


def line(one):
    """Where it enters, where it comes to the other part, where it ends in that."""
    at, way = np.array(one.at), np.array(one.way)
    return at, at + one.thick * way, at + (one.thick + one.inside) * way


def out_of_its_parts(one, parts, wood):
    at, _, tip = line(one)
    d, way = one.size.diameter, np.array(one.way)
    if not one.size.through and abs(one.length - one.thick - one.inside) > 1e-6:
        yield "its length is not what lies in wood"
    rod = cylinder(at, tip, d / 2)
    if (rod - (wood[one.head] + wood[one.point])).volume() > SLIVER + 1e-3 * rod.volume():
        yield "comes out of its two parts"
    for name in (one.head, one.point):
        if (rod ^ wood[name]).volume() < 0.4 * d**3:
            yield f"hardly in {name}"
    if not one.size.through and (cylinder(tip, tip + 2.9 * way, d / 2) - wood[one.point]).volume() > SLIVER:
        yield "nearly comes out at its tip"
    for name, part in parts.items():
        if name in (one.head, one.point) or part.blank.meet(one.cylinder()) is None:
            continue
        if (cylinder(at, tip, d / 2 - 0.01) ^ wood[name]).volume() > SLIVER:
            yield f"goes into {name}"


def too_near(fixing, one, parts, wood):
    at, mate, tip = line(one)
    d = one.size.diameter
    edge, end = (3.0, 7.0) if fixing.full and not one.size.through else (1.5, 4.0)
    for name, first, last in ((one.head, at, mate), (one.point, mate, tip)):
        for asked in beside(first, last, parts[name], edge * d * 0.999, end * d * 0.999):
            if (asked - wood[name]).volume() > SLIVER + 2e-3 * asked.volume():
                yield f"too near an edge, an end or a cut of {name}"


def meet(one, other):
    d, e = one.size.diameter, other.size.diameter
    least = (d + e) / 2
    if {one.head, one.point} & {other.head, other.point}:
        least = least + max(d, e) if one.axis != other.axis else 3.0 * min(d, e)
    return segments_apart(one, other) < least - 1e-6


ALL = {**SAMPLES, **DESIGNS}


@pytest.mark.parametrize("choices", CHOICES)
@pytest.mark.parametrize(
    "name", [name if name in QUICK else pytest.param(name, marks=pytest.mark.slow) for name in ALL]
)
def test_every_fastener_lies_where_it_may(name, choices):
    layout = lay_out(ALL[name])
    if layout.errors():
        return
    work = fasten(layout, CHOICES[choices])
    assert not list(faults(layout, work))


@pytest.mark.slow
def test_every_fastener_of_random_frames_lies_where_it_may():
    driven = 0
    for frame in random_frames(60):
        layout = lay_out(frame)
        if not layout.errors():
            work = fasten(layout)
            driven += len(work.driven)
            assert not list(faults(layout, work))
    assert driven > 100


def test_the_test_finds_a_screw_that_is_too_long_and_one_too_near_an_edge():
    layout = lay_out(ALL["bench"])
    work = fasten(layout)
    fixing = next(f for f in work.fixings if f.driven and f.drive.joint.kind == "notch")
    one = fixing.driven[0]
    for bad in (
        attrs.evolve(one, length=one.length + 20, inside=one.inside + 20),
        attrs.evolve(one, at=(one.at[0] - 25, one.at[1], one.at[2])),
    ):
        spoilt = attrs.evolve(work, fixings=(attrs.evolve(fixing, driven=(bad,)),))
        assert list(faults(layout, spoilt))
