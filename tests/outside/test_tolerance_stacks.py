"""Worst case and root sum square, by published worked examples (secondary pages that follow Scholz, Tolerance Stack
Analysis Methods, Boeing ISSTECH 1995).
"""

import pytest

from benchjoin.shop.budget.tolerance import root_sum_square, worst


# ficientdesign.com/tolerance-stack-up-analysis: 2.000 ± .005, 1.500 ± .003, .500 ± .002 in a housing of 4.020 ± .005:
# gap .020, worst case ± .015, root sum square ± .00794
def test_matches_three_parts_in_a_housing():
    errors = [0.005, 0.003, 0.002, 0.005]
    assert worst(errors) == pytest.approx(0.015, abs=1e-9)
    assert root_sum_square(errors) == pytest.approx(0.00794, abs=5e-6)


# two class pages on RSS tolerance analysis: ten parts ± .1; and .20, .10, .15
@pytest.mark.parametrize("errors, most, likely", [([0.1] * 10, 1.0, 0.316), ([0.20, 0.10, 0.15], 0.45, 0.269)])
def test_matches_published_stacks(errors, most, likely):
    assert worst(errors) == pytest.approx(most, abs=1e-9)
    assert root_sum_square(errors) == pytest.approx(likely, abs=5e-4)
