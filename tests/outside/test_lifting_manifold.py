"""What comes out of a frame, moved as solids of another kernel (manifold3d): it meets nothing on its way, and rests.

A part is cells of its blank between the planes of its cuts, each swept along a move as the hull of where it is and
where it goes; what stays is carved from blanks and cuts. Edges are taken as they were before they were shaped: more
wood.
"""

from __future__ import annotations

import numpy as np
import pytest
from designs import DESIGNS
from manifold3d import Manifold, OpType
from samples import SAMPLES
from solid_wood import SHARED, carved, cells, on_the_way, solid

from benchjoin import lay_out
from benchjoin.layout.bodies import bodies
from benchjoin.layout.lifting import lift_outs
from benchjoin.solids import Box

FRAMES = {
    name: frame
    for name, frame in {**DESIGNS, **SAMPLES}.items()
    if frame.bins or any(part.slot.group for part in lay_out(frame).piece(1))
}
LAYOUTS = {name: lay_out(frame) for name, frame in FRAMES.items()}


def groups():
    return [(name, lift.name) for name, layout in LAYOUTS.items() for lift in lifts_of(layout)]


def lifts_of(layout):
    return lift_outs(layout.piece(1), layout.joints_of(1))


def lift_of(name, group):
    return next(lift for lift in lifts_of(LAYOUTS[name]) if lift.name == group)


@pytest.mark.parametrize("name, group", groups())
class TestLiftOuts:
    def test_it_meets_nothing_on_its_way(self, name, group):
        lift = lift_of(name, group)
        assert lift.moves.steps
        boxes = [cell for part in lift.parts for cell in cells(part)]
        assert on_the_way(boxes, lift.moves.steps, lift.others) <= SHARED * len(boxes)

    def test_it_is_clear_of_all_others_in_the_end(self, name, group):
        lift = lift_of(name, group)
        gone = np.sum(lift.moves.steps, axis=0)
        low, high = np.array(lift.box.low) + gone, np.array(lift.box.high) + gone
        wood = np.array([[*part.blank.low, *part.blank.high] for part in lift.others])
        assert ((low > wood[:, 3:].max(axis=0)) | (high < wood[:, :3].min(axis=0))).any()

    def test_pushed_to_either_side_it_meets_nothing_and_keeps_its_bearing_at_both_ends(self, name, group):
        lift = lift_of(name, group)
        stays = Manifold.batch_boolean([carved(part) for part in lift.others], OpType.Add)
        own = Manifold.batch_boolean([carved(part) for part in lift.parts], OpType.Add)
        for axis, play in enumerate(lift.ease):
            for way in (-play, play):
                by = np.zeros(3)
                by[axis] = way
                pushed = own.translate(by)
                assert (pushed ^ stays).volume() <= SHARED * len(lift.parts)
                seat = pushed.translate((0.0, 0.0, -0.1)) ^ stays
                boxes = [one.bounding_box() for one in seat.decompose()]
                spans = {n: (min(b[n] for b in boxes), max(b[n + 3] for b in boxes)) for n in (0, 1)}
                middles = [(lift.box.low[n] + lift.box.high[n]) / 2 for n in (0, 1)]
                assert any(
                    spans[n][0] < middles[n] - lift.bearing and spans[n][1] > middles[n] + lift.bearing for n in (0, 1)
                )
                assert max(min(b[3] - b[0], b[4] - b[1]) for b in boxes) >= lift.bearing - 1e-6


def things():
    return [(name, body.name) for name, layout in LAYOUTS.items() for body in bodies_of(layout)]


def bodies_of(layout):
    return list(bodies(layout.frame, {part.identity: part for part in layout.piece(1)}))


@pytest.mark.parametrize("name, thing", things())
def test_a_bin_clears_the_wood_stands_on_it_and_comes_out(name, thing):
    body = next(one for one in bodies_of(LAYOUTS[name]) if one.name == thing)
    wood = Manifold.batch_boolean([carved(part) for part in body.parts], OpType.Add)
    assert (solid(body.box) ^ wood).volume() <= SHARED
    if body.of.rim is None:
        foot = solid(Box((*body.foot.low[:2], body.box.low[2] - 0.1), (*body.foot.high[:2], body.box.low[2])))
        below = (foot ^ wood).bounding_box()
        middle = [(a + b) / 2 for a, b in zip(body.box.low, body.box.high, strict=True)]
        assert below[0] < middle[0] < below[3]
        assert below[1] < middle[1] < below[4]
    assert on_the_way([body.box], body.moves.steps, body.others) <= SHARED
