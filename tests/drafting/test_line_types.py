"""Line types: weights, dashes, and groups that a person makes."""

from __future__ import annotations

import pytest

from benchjoin.drafting.linework import KINDS, Linework
from benchjoin.errors import PaperError


def test_outlines_are_wide_and_all_that_measures_is_narrow():
    pens = {kind: Linework().pen(kind) for kind in KINDS}
    assert {kind for kind, pen in pens.items() if pen.width == 0.5} == {"visible", "cut"}
    assert {kind for kind, pen in pens.items() if pen.width == 0.25} == {
        "thin",
        "hidden",
        "centre",
        "phantom",
    }
    assert pens["border"].width == 0.7


def test_only_hidden_centre_and_neighbouring_lines_are_broken():
    assert {kind for kind in KINDS if Linework().pen(kind).dashes} == {"hidden", "centre", "phantom"}


def test_a_border_is_never_thinner_than_an_outline():
    assert Linework(wide=1.0, narrow=0.5).pen("border").width == 1.0


@pytest.mark.parametrize("wide", [0.6, 0, float("nan"), -0.5])
def test_a_width_outside_the_series_is_refused(wide):
    with pytest.raises(PaperError, match="series"):
        Linework(wide=wide)
