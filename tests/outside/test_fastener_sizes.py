"""Sizes, holes and steel of fasteners, typed in again from what prints them."""

from __future__ import annotations

import pint
import pytest

from benchjoin.trade.fasteners import (
    BOLT_INCHES,
    BOLT_METRIC,
    BOLT_OVER,
    GAUGES,
    HEAD_SHARE,
    LEAD_SHARE,
    NAILS,
    ROOT_SHARE,
    THREAD_SHARE,
    drill,
    steel_of,
)

UNITS = pint.UnitRegistry()


def mm(inches):
    return UNITS.Quantity(inches, "inch").to("mm").magnitude


# Wood Handbook FPL-GTR-282 Table 8-9: shank of a wood screw by its gauge, mm; by the rule 0.060 + 0.013 N in
SHANKS = {
    4: 2.84,
    5: 3.18,
    6: 3.51,
    7: 3.84,
    8: 4.17,
    9: 4.50,
    10: 4.83,
    11: 5.16,
    12: 5.49,
    14: 6.15,
    16: 6.81,
    18: 7.47,
    20: 8.13,
    24: 9.45,
}
# the same, Table 8-1: common nails, length and diameter in mm
COMMON_NAILS = {
    "6d": (50.8, 2.87),
    "8d": (63.5, 3.33),
    "10d": (76.2, 3.76),
    "12d": (82.6, 3.76),
    "16d": (88.9, 4.11),
    "20d": (101.6, 4.88),
    "60d": (152.4, 6.65),
}
# NDS Appendix I, from memory: bending yield up to a diameter, inches and psi
YIELD = [(0.142, 100_000), (0.177, 90_000), (0.236, 80_000), (0.273, 70_000), (0.344, 60_000), (0.375, 45_000)]


def test_shanks_match_table_8_9():
    assert GAUGES == SHANKS


def test_nails_match_table_8_1():
    assert {nail.name: (nail.length, nail.diameter) for nail in NAILS} == COMMON_NAILS


@pytest.mark.parametrize("inches, psi", YIELD)
def test_steel_roughly_matches_nds_appendix_i_from_memory(inches, psi):
    printed = UNITS.Quantity(psi, "psi").to("megapascal").magnitude
    assert steel_of(mm(inches)) == pytest.approx(printed)
    assert steel_of(mm(inches - 0.01)) == pytest.approx(printed)


def test_steel_yields_less_just_past_each_step():
    for inches, _ in YIELD[:-1]:
        assert steel_of(mm(inches + 0.001)) < steel_of(mm(inches))


def test_lead_holes_match_the_text_at_eq_8_10():
    """Wood Handbook ch. 8: about 70 % of the root in softwood, 90 % in hardwood; the root two thirds of the shank."""
    assert (LEAD_SHARE[False], LEAD_SHARE[True]) == (0.7, 0.9)
    assert pytest.approx(0.667, abs=0.001) == ROOT_SHARE


def test_bolt_holes_match_nds_12_1_3():
    """1/32 to 1/16 in over the bolt; the smaller is taken."""
    assert pytest.approx(mm(1 / 32)) == BOLT_OVER


def test_heads_and_threads_roughly_match_asme_b18_6_1_from_memory():
    assert HEAD_SHARE == 2.0
    assert pytest.approx(0.667, abs=0.001) == THREAD_SHARE


@pytest.mark.parametrize("name, inches", {"1/4": 0.25, "5/16": 0.3125, "3/8": 0.375, "1/2": 0.5}.items())
def test_a_bolt_is_as_thick_as_it_is_called(name, inches):
    assert BOLT_INCHES[name] == pytest.approx(mm(inches), abs=1e-9)
    assert len(BOLT_INCHES) == 4


def test_a_metric_bolt_is_as_thick_as_it_is_called():
    assert {f"M{size}": float(size) for size in (6, 8, 10, 12)} == BOLT_METRIC


@pytest.mark.parametrize("size, hard, inches", [(0.109, False, "5/64"), (0.127, True, "7/64")])
def test_drills_for_lead_holes_lie_by_those_of_the_trade(size, hard, inches):
    """Arithmetic: No. 8, root 0.109 in, 70 % is 0.077; No. 10, root 0.127 in, 90 % is 0.114, and 7/64 is 0.109."""
    share = LEAD_SHARE[hard]
    top, bottom = map(int, inches.split("/"))
    assert drill(mm(size * share), inches=True) == pytest.approx(mm(top / bottom))
