"""Gaps between boards through the seasons, each case on the wood that it was worked for.

The Wood Handbook gives both equations on p. 13-18 of FPL-GTR-190 (Eq. 13-2 from 6 to 14 %, Eq. 13-3 for other contents
below the start of shrinkage); its coefficients are those of Table 13-5, its shrinkage that of Table 4-3. No standard
for the gaps themselves was found: what is left at the wettest is common practice and is marked so.
"""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchjoin.shop.gaps import gap_to_lay
from benchjoin.shop.swelling import board_change
from benchjoin.sources import COMMON_PRACTICE
from benchjoin.trade.practice import LEAST_GAP
from benchjoin.trade.species import SPECIES, species
from benchjoin.wood.gaps import gaps_after, least_gaps
from benchjoin.wood.movement import change, change_from_total, coefficient, larger_change, total_shrinkage


def test_a_gap_of_white_fir_closes_by_what_the_published_example_swells():
    # the handbook's example to Eq. 13-2, FPL-GTR-190 p. 13-18: white fir 232 mm wide, 8 to 11 %: +1.7 mm, 233.7 mm.
    # Table 4-3 gives it 7.0 %. Two boards, 3 mm apart: 3 - 1.7
    moved = larger_change([232.0, 232.0], 7.0, coefficient(7.0), 8, 11)
    assert moved.round(1).tolist() == [1.7, 1.7]
    assert gaps_after([3.0], moved).round(1).tolist() == [1.3]


def test_a_gap_of_red_alder_matches_the_published_figure():
    # a woodworking magazine, September 2021: 8 in of alder, 6 to 12 %, coefficient rounded to 0.0026: 0.1248 in
    moved = larger_change([8.0, 8.0], np.nan, 0.0026, 6, 12)
    assert gaps_after([0.25], moved) == pytest.approx([0.25 - 0.1248], abs=5e-5)


# Slats of 88.9 mm, flat-sawn, from 8 to 18 %, worked by hand with Eq. 13-3: D × 10 / (100 M / S − M + 8), M the start
@pytest.mark.parametrize(
    "wood, total, start, worked",
    [
        ("western redcedar", Fraction(5), 22, 2.09),
        ("Douglas-fir, coast", Fraction(76, 10), 30, 2.39),
        ("white oak", Fraction(105, 10), 30, 3.37),
    ],
)
def test_a_slat_of_each_wood_moves_as_worked_by_eq_13_3(wood, total, start, worked):
    by_hand = Fraction(889, 10) * 10 / (100 * start / total - start + 8)
    assert float(by_hand) == pytest.approx(worked, abs=0.005)
    assert board_change(88.9, species(wood), 8, 18, "flat") == pytest.approx(float(by_hand), abs=0.005)
    assert gap_to_lay(88.9, wood, laid=8, wettest=18, least=2, grain="flat") == pytest.approx(2 + worked, abs=0.01)


def test_bought_red_oak_takes_the_larger_of_both_movements():
    # 100 mm from 8 to 13 %: Eq. 13-2 with the commercial 0.00369 is 100 × 0.00369 × 5 = 1.845; Eq. 13-3 with northern
    # red oak's 8.6 % is 100 × 5 / (3000 / 8.6 − 22) = 1.53, a sixth less
    assert change(100, 0.00369, 8, 13) == pytest.approx(1.845)
    assert change_from_total(100, 8.6, 8, 13) == pytest.approx(1.53, abs=0.005)
    assert board_change(100, species("red oak"), 8, 13, "flat") == pytest.approx(1.845)
    assert board_change(100, species("red oak"), 13, 8, "flat") == pytest.approx(-1.845)


def test_bought_red_oak_takes_the_larger_where_eq_13_2_does_not_hold():
    # 0.00369 stands for 0.00369 × 30 / (1 + 0.00369 × 20) = 10.31 % from green to oven-dry; from 8 to 18 % that is
    # 100 × 10 / (3000 / 10.31 − 22) = 3.72 by Eq. 13-3, and 3.06 with the species' 8.6 %
    assert total_shrinkage(0.00369) == pytest.approx(10.31, abs=0.005)
    assert board_change(100, species("red oak"), 8, 18, "flat") == pytest.approx(3.72, abs=0.005)
    assert change_from_total(100, 8.6, 8, 18) == pytest.approx(3.06, abs=0.005)


def test_white_oak_is_the_other_way_about():
    # its own 10.5 % moves more than the commercial 0.00365: 100 × 5 / (3000 / 10.5 − 22) = 1.896 against 1.825
    assert board_change(100, species("white oak"), 8, 13, "flat") == pytest.approx(1.896, abs=0.001)
    assert change(100, 0.00365, 8, 13) == pytest.approx(1.825)


# Table 13-5, 5 1/2 in from 8 to 14 %: western redcedar flat 0.0772 in, quarter 0.0366 in
@pytest.mark.parametrize("grain, worked", [("flat", 0.0772), ("quarter", 0.0366), ("unknown", 0.0772)])
def test_quarter_sawn_redcedar_takes_half_the_gap_and_unknown_grain_the_larger(grain, worked):
    wet = board_change(5.5, species("western redcedar"), 8, 14, grain)
    assert wet == pytest.approx(worked, abs=0.0004)  # Eq. 13-3 is more by as much as the table is rounded


def test_redcedar_takes_up_nothing_above_22_percent():
    assert gap_to_lay(140, "western redcedar", laid=22, wettest=28, least=1) == 1
    assert gap_to_lay(140, "Douglas-fir", laid=22, wettest=28, least=1) > 1


def test_stock_that_is_laid_green_opens():
    # white oak laid at 30 % and never wetter than 18 %: 140 × 0.105 × 12 / 30 = 5.88 mm less
    assert board_change(140, species("white oak"), 30, 18, "flat") == pytest.approx(-5.88)
    moved = [-5.88, -5.88]
    assert gaps_after([1.0], moved) == pytest.approx([6.88])
    assert least_gaps(moved, 2.0).tolist() == [0.0]  # laid tight, it has 5.88 left
    assert gap_to_lay(140, "white oak", laid=30, wettest=18, least=8) == pytest.approx(8 - 5.88)
    assert board_change(140, species("white oak"), 80, 18, "flat") == board_change(
        140, species("white oak"), 30, 18, "flat"
    )


def test_boards_of_unlike_width_take_half_each_of_their_gap():
    assert gaps_after([5.0, 5.0], [1.0, 3.0, 2.0]).tolist() == [3.0, 2.5]
    assert least_gaps([1.0, 3.0, 2.0], 1.0).tolist() == [3.0, 3.5]
    assert gaps_after(np.full((4, 2), 5.0), np.ones((4, 3))).shape == (4, 2)


def test_a_movement_of_unknown_content_is_unknown():
    assert np.isnan(larger_change(100, 8.6, 0.00369, -1, 5))
    assert larger_change(100, 8.6, np.nan, 8, 13) == change_from_total(100, 8.6, 8, 13)


@pytest.mark.parametrize("one", SPECIES, ids=lambda one: one.name)
def test_a_coefficient_stands_for_the_total_shrinkage_that_it_was_made_from(one):
    if not one.coefficients.wood:
        for way in ("radial", "tangential"):
            total = {"radial": one.shrinkage.radial, "tangential": one.shrinkage.tangential}[way]
            assert total_shrinkage(one.coefficient(way), one.shrinkage.start) == pytest.approx(total, abs=0.03)


@given(
    st.floats(20, 300),
    st.sampled_from(SPECIES),
    st.floats(0, 60),
    st.floats(5, 30),
    st.floats(0, 8),
    st.sampled_from(["flat", "quarter", "unknown"]),
)
def test_what_is_laid_as_told_keeps_its_least_at_the_wettest(width, wood, laid, wettest, least, grain):
    gap = gap_to_lay(width, wood, laid=laid, wettest=wettest, least=least, grain=grain)
    moved = board_change(width, wood, laid, wettest, grain)
    left = float(gaps_after([gap], [moved, moved])[0])
    assert left >= least - 1e-9
    assert gap == 0 or left == pytest.approx(least)


def test_the_least_gap_is_marked_as_common_practice():
    assert LEAST_GAP == 2.0
    assert COMMON_PRACTICE.standing == "common practice"
