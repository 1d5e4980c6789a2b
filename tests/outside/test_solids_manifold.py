"""Parts as solids of another kernel: boxes less boxes by manifold3d, from blanks and cuts in the world's axes.

The library weighs and draws a part by its slabs; here nothing reads a slab but the last comparison.
"""

from __future__ import annotations

from itertools import combinations

import attrs
import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from manifold3d import Manifold

from benchjoin import Butt, Clear, HalfLap, Notch, Planted, Rail, alter, lay_out

SHARED = 1e-3  # mm³ that rounding may leave between two parts that touch
TRAYS = range(1, 7)


VARIANTS = {
    "honey-house bench": bench,
    "drying rack": rack,
    "bench, longer, with a loose fit": alter(bench, {"length": "60 in", "fit": 0.5}),
    "bench, end rails notched behind the front rail": alter(
        bench,
        {"bench.ends": Rail("3 1/2 in", joint=Notch("3/8 in")), "bench.front": Rail("3 1/2 in", joint=Notch("3/8 in"))},
    ),
    "bench, end rails run through": alter(
        bench, {"bench.ends": Rail("3 1/2 in", joint=Notch()), "corners": "ends through"}
    ),
    "bench, planted, front through": alter(
        bench, {"bench.ends": Rail("3 1/2 in", joint=Planted()), "bench.front": Rail("3 1/2 in", joint=Planted())}
    ),
    "bench, planted, ends through": alter(
        bench,
        {
            "bench.ends": Rail("3 1/2 in", joint=Planted()),
            "bench.front": Rail("3 1/2 in", joint=Planted()),
            "corners": "ends through",
        },
    ),
    "bench, staggered, end rails raised clear": alter(
        bench, {"bench.ends": Rail("2 in", joint=Notch(), raised="3 1/2 in"), "corners": "staggered"}
    ),
    "bench, uneven laps that stop short": alter(
        bench, {"hook rail.back": Rail("3 1/2 in", joint=HalfLap(share=0.3), overhang="-1 in"), "fit": 0.3}
    ),
    "bench, hook rail past the legs": alter(bench, {"hook rail.back": Rail("3 1/2 in", overhang="2 in")}),
    "bench, front rail on the inner face": alter(bench, {"bench.front": Rail("3 1/2 in", face="inner")}),
    "bench, front rail butted in the middle": alter(
        bench, {"bench.front": Rail("3 1/2 in", joint=Butt(), face="middle")}
    ),
    "bench, legs turned": alter(bench, {"front.wide": "end", "back.wide": "end"}),
    "bench, measured": alter(
        bench,
        {
            "2/back left leg.size": ("33.1 mm", "82.4 mm"),
            "bench/front rail.thickness": "14 mm",
            "3/hook rail/back rail.width": "90 mm",
        },
    ),
    "rack, three pairs of legs and cross rails": alter(
        attrs.evolve(rack, bays=[Clear(), Clear()], length=1500),
        {"tray 2.cross": Rail(30, raised=90), "tray 4.cross": Rail(30, joint=Notch(), face="left", raised=90)},
    ),
    "rack, one tray from its tops": alter(rack, {"tray 3.align": "tops", "tray 3.ends.raised": -45}),
    "rack, end rails raised further and lapped a third": alter(
        rack, {f"tray {n}.ends": Rail(45, joint=HalfLap(share=1 / 3), raised=70) for n in TRAYS}
    ),
}


def solid(box):
    return Manifold.cube(box.size()).translate(box.low)


def carved(part):
    wood = solid(part.blank)
    for cut in part.cuts:
        wood = wood - solid(cut.box)
    return wood


def shared(parts):
    """Pairs that share volume, by identity, in one piece."""
    solids = [(part.identity, carved(part)) for part in parts]
    return {(a, b) for (a, one), (b, other) in combinations(solids, 2) if (one ^ other).volume() > SHARED}


def pieces(layout):
    return [layout.piece(number) for number in range(1, layout.frame.quantity + 1)]


@pytest.fixture(scope="module", params=VARIANTS)
def layout(request):
    return lay_out(VARIANTS[request.param])


def test_it_can_be_built(layout):
    assert layout.errors() == ()


def test_no_two_parts_of_a_piece_share_wood(layout):
    for parts in pieces(layout):
        assert len(parts) > 4
        assert shared(parts) == set()


def test_a_part_is_its_blank_less_the_union_of_its_cuts(layout):
    for part in layout.parts:
        blank, cuts = solid(part.blank), sum((solid(cut.box) for cut in part.cuts), Manifold())
        left = carved(part).volume()
        assert left == pytest.approx(blank.volume() - (blank ^ cuts).volume(), rel=1e-6)
        assert part.volume == pytest.approx(left, rel=1e-6)


def test_every_cut_takes_wood(layout):
    for part in layout.parts:
        for cut in part.cuts:
            assert (solid(part.blank) ^ solid(cut.box)).volume() > 1


def test_every_cut_is_for_the_mate_that_fills_it_but_for_the_fit(layout):
    for parts in pieces(layout):
        mates = {part.identity: part for part in parts}
        for part in parts:
            for cut in part.cuts:
                empty = (solid(part.blank) ^ solid(cut.box)) - carved(mates[cut.mate])
                _, middle, longest = sorted(cut.box.size())
                assert empty.volume() <= layout.frame.fit * middle * longest + SHARED, (part.name, cut.mate)


@pytest.mark.parametrize("raised", ["0 in", "1 in", "3 7/16 in"])
def test_parts_that_share_wood_are_the_clashes_that_the_layout_finds(raised):
    ends = Rail("3 1/2 in", joint=Notch(), raised=raised)
    layout = lay_out(alter(bench, {"bench.ends": ends, "corners": "staggered"}))
    found = [finding.where for finding in layout.findings if finding.kind == "clash"]
    assert sorted(one for one, _ in shared(layout.piece(1))) == sorted(found)
    assert len(found) == 4


def test_two_rails_that_want_one_corner_do_share_wood():
    layout = lay_out(alter(bench, {"bench.ends": Rail("3 1/2 in", joint=Notch()), "corners": "staggered"}))
    corners = {(f"bench/{long} rail", f"bench/{end} rail") for long in ("front", "back") for end in ("left", "right")}
    assert shared(layout.piece(1)) == corners
    assert {finding.kind for finding in layout.errors()} == {"clash"}
