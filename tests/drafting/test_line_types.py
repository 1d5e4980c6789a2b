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
        "hidden short",
        "centre",
        "phantom",
    }
    assert pens["shade"].width == 0.13  # a tint, the finest of the series
    assert pens["border"].width == 0.7


def test_only_hidden_centre_and_neighbouring_lines_are_broken():
    assert {kind for kind in KINDS if Linework().pen(kind).dashes} == {"hidden", "hidden short", "centre", "phantom"}


def test_short_hidden_lines_have_shorter_dashes_and_the_same_gaps():
    long, short = (Linework().pen(kind) for kind in ("hidden", "hidden short"))
    assert short.dashes == (long.dashes[0] / 2, long.dashes[1])
    assert Linework().readable("hidden") == 3.0 + 0.75 + 3.0  # two dashes and a gap
    assert Linework().readable("hidden short") == 1.5 + 0.75 + 1.5


@pytest.mark.parametrize(
    "apart, group",
    [(2.0, (0.5, 0.25)), (1.0, (0.5, 0.25)), (0.9, (0.35, 0.18)), (0.66, (0.25, 0.13)), (0.1, (0.25, 0.13))],
)
def test_a_view_with_close_edges_takes_a_thinner_group_of_lines(apart, group):
    fitted = Linework().fitted(apart)
    assert (fitted.wide, fitted.narrow) == group


def test_a_group_that_the_shop_chose_is_made_no_wider():
    assert Linework(wide=0.35, narrow=0.18).fitted(10.0) == Linework(wide=0.35, narrow=0.18)


def test_a_border_is_never_thinner_than_an_outline():
    assert Linework(wide=1.0, narrow=0.5).pen("border").width == 1.0


@pytest.mark.parametrize("wide", [0.6, 0, float("nan"), -0.5])
def test_a_width_outside_the_series_is_refused(wide):
    with pytest.raises(PaperError, match="series"):
        Linework(wide=wide)
