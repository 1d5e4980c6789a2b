"""Sizes of lumber, held against what standards and mills print: PS 20, the NHLA rules, EN 336."""

from __future__ import annotations

import pint
import pytest

from benchjoin import Stock
from benchjoin.errors import LumberError
from benchjoin.trade import lumber
from benchjoin.trade.lumber import deviation, dressed, planed, quarters, rough

UNITS = pint.UnitRegistry()

# American Softwood Lumber Standard PS 20-20, Table 3, dry: inches, and the whole mm printed beside them
DRY = {
    "1x2": ((0.75, 1.5), (19, 38)),
    "1x3": ((0.75, 2.5), (19, 64)),
    "1x4": ((0.75, 3.5), (19, 89)),
    "1x6": ((0.75, 5.5), (19, 140)),
    "1x8": ((0.75, 7.25), (19, 184)),
    "1x10": ((0.75, 9.25), (19, 235)),
    "1x12": ((0.75, 11.25), (19, 286)),
    "5/4x4": ((1.0, 3.5), (25, 89)),
    "5/4x6": ((1.0, 5.5), (25, 140)),
    "6/4x6": ((1.25, 5.5), (32, 140)),
    "2x2": ((1.5, 1.5), (38, 38)),
    "2x3": ((1.5, 2.5), (38, 64)),
    "2x4": ((1.5, 3.5), (38, 89)),
    "2x5": ((1.5, 4.5), (38, 114)),
    "2x6": ((1.5, 5.5), (38, 140)),
    "2x8": ((1.5, 7.25), (38, 184)),
    "2x10": ((1.5, 9.25), (38, 235)),
    "2x12": ((1.5, 11.25), (38, 286)),
    "3x4": ((2.5, 3.5), (64, 89)),
    "2-1/2x2-1/2": ((2.0, 2.0), (51, 51)),
    "2x14": ((1.5, 13.25), (38, 337)),
    "2x16": ((1.5, 15.25), (38, 387)),
    "4x4": ((3.5, 3.5), (89, 89)),
    "4x6": ((3.5, 5.5), (89, 140)),
    "6x6": ((5.5, 5.5), (140, 140)),
    "5x5": ((4.5, 4.5), (114, 114)),
}
# the same table, green, in inches
GREEN = {
    "2x4": (1.5625, 3.5625),
    "2x5": (1.5625, 4.625),
    "2x6": (1.5625, 5.625),
    "2x8": (1.5625, 7.5),
    "2x10": (1.5625, 9.5),
    "2x12": (1.5625, 11.5),
    "3x4": (2.5625, 3.5625),
    "4x4": (3.5625, 3.5625),
    "2x14": (1.5625, 13.5),
    "2x16": (1.5625, 15.5),
    "2-1/2x2-1/2": (2.0625, 2.0625),
    "5x5": (4.5, 4.5),
    "6x6": (5.5, 5.5),
}
# the same table, green boards, from memory; inches
GREEN_BOARDS = {"1x4": 0.78125, "5/4x4": 1.03125, "6/4x4": 1.28125}
# minimum rough dry sizes, Tenn. Comp. R. & Regs. 0080-07-07-.06 Table 4, as PS 20 has them; inches
ROUGH = {"2": 1.625, "4": 3.625, "6": 5.625, "8": 7.375}
# NHLA rules: rough thickness; mills' lists: surfaced on two sides; inches
QUARTERS = {"4/4": (1.0, 0.8125), "5/4": (1.25, 1.0625), "6/4": (1.5, 1.3125), "8/4": (2.0, 1.75)}


# NHLA rules, thicker stock, from memory; inches
THICK = {"10/4": 2.5, "12/4": 3.0, "16/4": 4.0}


def by_pint(inches):
    return UNITS.Quantity(inches, "inch").to("mm").magnitude


@pytest.mark.parametrize("nominal, sizes", DRY.items())
def test_dry_sizes_match_ps_20_table_3(nominal, sizes):
    inches, millimetres = sizes
    found = dressed(nominal)
    assert found[:2] == pytest.approx([by_pint(size) for size in inches], abs=1e-9)
    assert tuple(round(size) for size in found[:2]) == millimetres
    assert found.source.document.startswith("PS 20")


@pytest.mark.parametrize("nominal, inches", GREEN.items())
def test_green_sizes_match_ps_20_table_3(nominal, inches):
    assert dressed(nominal, green=True)[:2] == pytest.approx([by_pint(size) for size in inches], abs=1e-9)


@pytest.mark.parametrize("nominal, inches", GREEN_BOARDS.items())
def test_green_boards_match_ps_20_from_memory(nominal, inches):
    found = dressed(nominal, green=True)
    assert found.thickness == pytest.approx(by_pint(inches), abs=1e-9)
    assert found.source.standing == "from memory"


@pytest.mark.parametrize("name, inches", THICK.items())
def test_thick_quarters_match_the_nhla_rules_from_memory(name, inches):
    found = quarters(name)
    assert float(found.rough) == inches
    assert found.surfaced is None
    assert found.source.standing == "from memory"


def test_the_step_in_width_changes_between_six_and_eight():
    # trap: lists from before 1970 give a 1x6 as 5 1/4 in
    assert 6 * 25.4 - dressed("1x6").width == pytest.approx(by_pint(0.5))
    assert 8 * 25.4 - dressed("1x8").width == pytest.approx(by_pint(0.75))


def test_green_boards_thinner_than_two_inches_are_marked_from_memory():
    assert dressed("1x6", green=True).source.standing == "from memory"
    assert dressed("1x6").source.standing == "secondary"


@pytest.mark.parametrize("nominal, inches", ROUGH.items())
def test_rough_dry_sizes_match_ps_20(nominal, inches):
    assert rough(f"{nominal}x{nominal}")[:2] == pytest.approx([by_pint(inches)] * 2)


@pytest.mark.parametrize("name, inches", QUARTERS.items())
def test_hardwood_quarters_match_the_nhla_rules(name, inches):
    row = quarters(name)
    assert (float(row.rough), row.surfaced and float(row.surfaced)) == inches


@pytest.mark.parametrize("nominal", ["8x8", "6x8", "10x10"])
def test_a_timber_with_two_rules_in_print_is_refused(nominal):
    with pytest.raises(LumberError, match="two rules are in print"):
        dressed(nominal)


# EN 336:2003, permitted deviations by tolerance class, mm
@pytest.mark.parametrize(
    "size, tolerance_class, under_and_over",
    [
        (100, "T1", (1, 3)), (101, "T1", (2, 4)), (100, "T2", (1, 1)), (101, "T2", (1.5, 1.5)),
        (145, "T1", (145 - 143, 149 - 145)), (145, "T2", (145 - 143.5, 146.5 - 145)),
    ],
)  # fmt: skip
def test_deviations_match_en_336(size, tolerance_class, under_and_over):
    assert deviation(size, tolerance_class) == under_and_over


@pytest.mark.parametrize("name, size", {"38x63": (38, 63), "38x89": (38, 89), "38x140": (38, 140)}.items())
def test_planed_construction_sizes_from_memory_match_en_1313_1(name, size):
    found = planed(name)
    assert found[:2] == size
    assert found.source.standing == "from memory"


def test_every_row_says_where_it_is_from():
    sources = [row.source for row in (*lumber.SOFTWOOD, *lumber.HARDWOOD)] + [source for *_, source in lumber.PLANED]
    assert all(source.document or source.standing == "common practice" for source in sources)


@pytest.mark.parametrize(
    "make", [lambda: dressed("2x7"), lambda: dressed("0x4"), lambda: rough("3x3"), lambda: quarters("3/4"),
             lambda: planed("46x95"), lambda: planed("1/0x2"), lambda: dressed("two by four"), lambda: dressed(24)]
)  # fmt: skip
def test_a_size_that_nobody_prints_is_refused(make):
    with pytest.raises(LumberError, match=r"Stock\(|section by its name"):
        make()


# Common practice, no source: one-by trim, rough on one face and 7/8 in thick, finishes at 3/4; a dressed 2x4 gives
# about an eighth each way before it is clean.


def test_one_by_trim_of_seven_eighths_finishes_at_three_quarters_by_common_practice():
    trim = Stock("trim", thickness="7/8 in", width="5 1/2 in", state="rough on one face")
    assert trim.milled().thickness == pytest.approx(by_pint(0.75))


def test_a_dressed_two_by_four_gives_an_eighth_each_way_by_common_practice():
    milled = Stock.dressed("2x4").milled()
    assert (milled.thickness, milled.width) == pytest.approx((by_pint(1.375), by_pint(3.375)))


def test_four_quarters_rough_finishes_at_three_quarters_by_common_practice():
    assert Stock.rough("4/4").milled().thickness == pytest.approx(by_pint(0.75))
