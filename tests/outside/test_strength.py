"""Strength against published figures: beams, columns, notches, working factors, net sections.

Wood Handbook, FPL-GTR-282 (2021), ch. 9: Tables 9-1, 9-2, Eq. 9-2 to 9-30; its Table 5-3b through the species. EN
1995-1-1, Eq. 6.60 to 6.63 and Table 3.1. NDS 3.4.3.2. trimesh, a general library, for moments of net sections.
"""

from __future__ import annotations

import numpy as np
import pytest
from shapely import box, unary_union
from trimesh.path.polygons import second_moments

from benchjoin.shop.strength.section import section_of
from benchjoin.solids import Box
from benchjoin.trade.working import TIME, working
from benchjoin.wood.bars import Bar, Model, Node, Support, solve
from benchjoin.wood.beams import bending, grown, notch_share_en, notch_share_nds, ylinen

INCH, POUND, PSI = 25.4, 4.4482216, 0.00689475729
LONG, WIDE, HIGH, STIFF = 2000.0, 40.0, 90.0, 9000.0
INERTIA = WIDE * HIGH**3 / 12
CLAMPED, PINNED, FREE = (True,) * 6, (True, True, True, True, False, False), None


def beam(held, loads=None, spread=0.0, *, pieces=16, long=LONG, inertia=INERTIA, stiff=STIFF):
    """A beam along x in our model, its ends held as said; how far it bends at its middle, or at its free end."""
    nodes = tuple(Node((long * n / pieces, 0.0, 0.0)) for n in range(pieces + 1))
    bars = tuple(
        Bar(n, n + 1, axis=0, area=WIDE * HIGH, inertia=(inertia, 4e5), torsion=1e6, stiff=stiff, shear=500.0)
        for n in range(pieces)
    )
    supports = tuple(Support(n, own) for n, own in zip((0, pieces), held, strict=True) if own)
    given = {int(n * pieces): (0.0, 0.0, -load, 0.0, 0.0, 0.0) for n, load in (loads or {}).items()}
    lying = {n: (0.0, 0.0, -spread / long) for n in range(pieces)} if spread else None
    return solve(Model(nodes, bars, supports), given, lying), pieces


class TestTable91:
    """k_b of the Wood Handbook's Table 9-1, as printed; W is the whole load."""

    @pytest.mark.parametrize(
        ("held", "loads", "spread", "constant"),
        [
            ((PINNED, PINNED), {}, 1.0, 5 / 384),
            ((CLAMPED, CLAMPED), {}, 1.0, 1 / 384),
            ((PINNED, PINNED), {0.5: 1.0}, 0.0, 1 / 48),
            ((CLAMPED, CLAMPED), {0.5: 1.0}, 0.0, 1 / 192),
            ((PINNED, PINNED), {0.25: 0.5, 0.75: 0.5}, 0.0, 11 / 768),
            ((CLAMPED, FREE), {}, 1.0, 1 / 8),
            ((CLAMPED, FREE), {1.0: 1.0}, 0.0, 1 / 3),
        ],
    )
    def test_a_beam_bends_as_the_table_has_it(self, held, loads, spread, constant):
        whole = 1000.0
        found, last = beam(held, {n: own * whole for n, own in loads.items()}, spread * whole)
        place = last if held[1] is FREE else last // 2
        expected = float(bending(constant, whole, LONG, STIFF, INERTIA))
        assert -found.moved[place][2] == pytest.approx(expected, rel=1e-6)

    def test_a_two_by_four_of_redcedar_bends_0_0775_inch(self):
        """On edge, E 1.11 × 10⁶ psi, 48 in, 200 lb in the middle; 0.0775 in by Eq. 9-2 and by another's program."""
        inertia = 1.5 * 3.5**3 / 12 * INCH**4
        found, last = beam((PINNED, PINNED), {0.5: 200 * POUND}, long=48 * INCH, inertia=inertia, stiff=1.11e6 * PSI)
        assert -found.moved[last // 2][2] / INCH == pytest.approx(0.0775, abs=5e-5)
        most = np.abs(found.forces[:, [4, 10]]).max()
        assert most / (1.5 * 3.5**2 / 6 * INCH**3) / PSI == pytest.approx(784, abs=1)

    def test_a_fixed_and_a_hinged_end_share_a_load_five_to_three(self):
        """A beam clamped at one end and propped at the other: reactions 5/8 and 3/8, moment W L / 8 (statics books)."""
        found, last = beam((CLAMPED, PINNED), {}, 800.0)
        assert (found.held[0][2], found.held[last][2]) == pytest.approx((500.0, 300.0), rel=1e-6)
        assert abs(found.held[0][4]) == pytest.approx(800 * LONG / 8, rel=1e-6)


def test_ylinen_meets_the_printed_shares():
    """Eq. 9-29 where crushing and Euler agree: 0.691, 0.760, 0.828 of it, for c of 0.8, 0.9 and 0.957."""
    for c, share in ((0.8, 0.691), (0.9, 0.760), (0.957, 0.828)):
        assert float(ylinen(20.0, 20.0, c)) / 20.0 == pytest.approx(share, abs=6e-4)


def test_an_eccentric_press_of_half_the_buckling_load_doubles_its_arm():
    """Eq. 9-8: δ + e₀ = e₀ / (1 − P / P_cr), so that δ is e₀ at a half."""
    assert float(grown(0.5)) == pytest.approx(2.0)
    assert np.isinf(grown(1.2))


def test_an_even_column_buckles_at_euler_s_load():
    from benchjoin.shop.strength.check import buckling
    from benchjoin.shop.strength.solved import Felt

    own = section_of((Box((0.0, 0.0, 0.0), (40.0, 60.0, 1000.0)),), 2)
    felt = [Felt(place=at, section=own, force=(0.0,) * 3, moment=(0.0,) * 3) for at in (0.0, 400.0, 400.0, 1000.0)]
    for about, inertia in ((0, 40 * 60**3 / 12), (1, 60 * 40**3 / 12)):
        assert buckling(felt, about, 0.0, 1000.0, 9000.0) == pytest.approx(np.pi**2 * 9000 * inertia / 1e6, rel=1e-9)


def test_a_column_weak_in_its_middle_buckles_as_a_fine_row_of_bars_does():
    """Half the inertia over the middle fifth, against the eigenvalue of a row of 200 bars (finite differences)."""
    from benchjoin.shop.strength.check import buckling
    from benchjoin.shop.strength.solved import Felt

    thick = section_of((Box((0.0, 0.0, 0.0), (40.0, 60.0, 1000.0)),), 2)
    thin = section_of((Box((0.0, 0.0, 0.0), (40.0, 60.0 / 2 ** (1 / 3), 1000.0)),), 2)
    felt = [
        Felt(place=at, section=own, force=(0.0,) * 3, moment=(0.0,) * 3)
        for low, high, own in ((0.0, 400.0, thick), (400.0, 600.0, thin), (600.0, 1000.0, thick))
        for at in (low, high)
    ]
    count = 200
    step = 1000.0 / count
    places = np.arange(1, count) * step
    inertia = np.where(abs(places - 500) < 100, thin.inertia[0], thick.inertia[0])
    second = (2 * np.eye(count - 1) - np.eye(count - 1, k=1) - np.eye(count - 1, k=-1)) / step**2
    least = np.linalg.eigvals(np.diag(9000 * inertia) @ second).real.min()
    assert buckling(felt, 0, 0.0, 1000.0, 9000.0) == pytest.approx(least, rel=0.01)


def test_notches_leave_what_en_and_nds_say():
    """k_v, EN 1995-1-1 Eq. 6.62, k_n 5, worked by hand; the square of NDS 3.4.3.2 on a 2x4 notched by a quarter."""
    for high, left, away, share in ((89, 66.75, 20, 0.897), (89, 44.5, 20, 0.718), (140, 105, 30, 0.724)):
        assert float(notch_share_en(high, left, away)) == pytest.approx(share, abs=6e-4)
    whole = 2 / 3 * 180 * 1.5 * 3.5
    assert whole * 0.75 * float(notch_share_nds(3.5, 0.75 * 3.5)) == pytest.approx(265.8, abs=0.1)
    assert float(notch_share_en(90, 90, 20)) == 1.0


def test_time_and_wet_are_those_of_table_3_1():
    """k_mod of solid timber, service classes 1 and 2, and 3."""
    printed = "permanent .6 .50, long .7 .55, medium .8 .65, short .9 .70, instant 1.1 .90"
    for row in printed.split(", "):
        time, dry, wet = row.split()
        assert (TIME[False][time], TIME[True][time]) == (float(dry), float(wet))


def test_what_is_worked_with_is_the_product_of_its_factors():
    """0.7368 of the average is the weakest in twenty at 16 %; by a half, 0.65, 1.3 and 1.5 is 0.1228."""
    assert working(100.0, "rupture", time="medium", outdoors=True) == pytest.approx(12.28, abs=0.01)


SHAPES = {
    "whole": [(0, 0, 75, 30)],
    "notched on its face": [(0, 0, 75, 14)],
    "notched on two faces": [(10, 0, 75, 14)],
    "a corner gone": [(0, 0, 75, 12), (20, 12, 75, 30)],
    "a groove": [(0, 0, 25, 30), (25, 0, 50, 18), (50, 0, 75, 30)],
}


class TestNetSections:
    """What laps and notches leave, in closed form and by another library."""

    @pytest.mark.parametrize("name", SHAPES)
    def test_area_middle_and_moments(self, name):
        own = SHAPES[name]
        ours = section_of(tuple(Box((a, b, 0.0), (c, d, 100.0)) for a, b, c, d in own), 2)
        shape = unary_union([box(*one) for one in own])
        (about_x, about_y, _), *_ = second_moments(shape, return_centered=True)
        middle, (left, low, right, high) = shape.centroid, shape.bounds
        assert ours.area == pytest.approx(shape.area, rel=1e-9)
        assert ours.middle == pytest.approx((middle.x, middle.y), rel=1e-9)
        assert ours.inertia == pytest.approx((about_x, about_y), rel=1e-9)
        assert ours.modulus(0) == pytest.approx(about_x / max(middle.y - low, high - middle.y), rel=1e-9)
        assert ours.modulus(1) == pytest.approx(about_y / max(middle.x - left, right - middle.x), rel=1e-9)

    def test_half_the_depth_leaves_a_quarter_and_an_eighth_half_the_thickness_a_half_of_both(self):
        whole = section_of((Box((0.0, 0.0, 0.0), (9.0, 20.0, 90.0)),), 0)
        lapped = section_of((Box((0.0, 0.0, 0.0), (9.0, 20.0, 45.0)),), 0)
        thin = section_of((Box((0.0, 0.0, 0.0), (9.0, 10.0, 90.0)),), 0)
        assert lapped.modulus(0) / whole.modulus(0) == pytest.approx(1 / 4)
        assert lapped.inertia[0] / whole.inertia[0] == pytest.approx(1 / 8)
        assert thin.modulus(0) / whole.modulus(0) == pytest.approx(1 / 2)
        assert thin.inertia[0] / whole.inertia[0] == pytest.approx(1 / 2)

    def test_a_press_down_the_old_middle_of_a_leg_notched_by_half_is_felt_eightfold(self):
        """N / A' + N e / S', A' = A / 2, e = d / 4, S' = S / 4."""
        whole = section_of((Box((0.0, 0.0, 0.0), (40.0, 80.0, 9.0)),), 2)
        half = section_of((Box((0.0, 0.0, 0.0), (20.0, 80.0, 9.0)),), 2)
        arm = whole.middle[0] - half.middle[0]
        assert (1 / half.area + arm / half.modulus(1)) / (1 / whole.area) == pytest.approx(8.0)
