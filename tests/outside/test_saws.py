"""Kerfs and dado heads, by secondary pages on saw blades and dado heads; sizes of chippers from memory."""

import pytest

from benchjoin.shop.settings.heads import DadoHead, stacks
from benchjoin.shop.settings.ways.operation import passes_for
from benchjoin.trade.saws import CHIPPERS, FULL_KERF, OUTSIDE_PAIR, SHIM_MOST, THIN_KERF, WIDEST_HEAD

INCH = 25.4


# thesawblog.com, how thick are table saw blades: full kerf 1/8 in (3.2 mm), thin kerf 3/32 in (2.4 mm)
def test_matches_trade_kerfs():
    assert FULL_KERF.width == pytest.approx(3.2, abs=0.05)
    assert THIN_KERF.width == pytest.approx(2.4, abs=0.05)


# powertoolsandwoodworking.com: the outside pair alone cuts a 1/4 in groove; usual range to 13/16 in, from memory:
# with four chippers of 1/8 and one of 1/16 every sixteenth from 1/4 to 13/16 is reached
def test_roughly_matches_the_usual_range():
    assert [stack.width / INCH * 16 for stack in stacks(DadoHead())] == pytest.approx(list(range(4, 14)))


# the same, from memory: one pair, four chippers of 1/8 and one of 1/16 in, shims up to 0.020 in, 13/16 in all together
def test_a_usual_set_roughly_matches_what_is_sold_from_memory():
    assert (OUTSIDE_PAIR.count, OUTSIDE_PAIR.width / INCH) == (1, 0.25)
    assert [(chip.count, chip.width / INCH) for chip in CHIPPERS] == [(4, 0.125), (1, 0.0625)]
    assert pytest.approx(0.020) == SHIM_MOST / INCH
    assert pytest.approx(0.8125) == WIDEST_HEAD / INCH


def test_three_quarters_is_the_pair_and_four_chippers():
    (stack,) = [s for s in stacks(DadoHead()) if abs(s.width - 0.75 * INCH) < 1e-6]
    assert [size / INCH for size in stack.chippers] == pytest.approx([1 / 8] * 4)


# arithmetic: 1 1/2, 3 1/2 and 5 1/2 in by a head of 13/16 in
@pytest.mark.parametrize("width, count", [(1.5, 2), (3.5, 5), (5.5, 7)])
def test_passes_of_a_full_head(width, count):
    assert passes_for(width * INCH, 13 / 16 * INCH) == count
