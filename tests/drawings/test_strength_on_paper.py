"""Loads on paper: what is near its limit, a picture of what bends most, when it tips, and the cautions."""

from __future__ import annotations

import pytest
from designs import DESIGNS, plain_bench
from paper_reader.checking import faults

from benchjoin import Case, Push, Spread, bind, lay_out, strength
from benchjoin.binding import sheets
from benchjoin.drafting.primitives import Disc, Line, Text
from benchjoin.drawings.lists.strength_sheet import strength_lists, strength_sheets
from benchjoin.drawings.making.asked import Asked

LAYOUT = lay_out(plain_bench)
CASES = [
    Case("full shelves", [Spread("bench", "90 kg")]),
    Case("pulled", [Push("60 N", "back")], "short"),
]
FOUND = strength(LAYOUT, CASES, wood="western larch", corner_blocks=["butt"])


def written(sheet_list):
    return " ".join(item.string for sheet in sheet_list for item in sheet.drawing if isinstance(item, Text))


def test_the_sheet_has_loads_checks_pictures_helps_stability_and_cautions():
    words = written(strength_sheets(FOUND))
    for said in ("Loads", "How near each member and joint is", "What would help", "Stability", "bends most at"):
        assert said in words
    assert "not an engineering" in words
    assert "leg, " in words  # a leg is always pictured


def test_a_picture_has_its_dot_where_the_member_bends_most():
    """The dot stands over the wood at the place that the title says, in the scale of the picture."""
    (listed,) = strength_lists(LAYOUT, Asked(layout=LAYOUT, strength=FOUND))
    figure = next(one for one in listed.figures(180.0) if " leg, " in one.name)
    name, case = figure.name.split(": ")[0].split(", ")
    bent = next(one for one in FOUND.of(name) if one.kind == "bending" and one.case == case)
    wood = max(
        (item for item in figure.drawing if isinstance(item, Line) and item.closed), key=lambda one: len(one.points)
    )
    left, right = (end(x for x, _ in wood.points) for end in (min, max))
    (dot,) = [item for item in figure.drawing if isinstance(item, Disc)]
    share = bent.place / LAYOUT.part(name).length
    assert dot.centre[0] == pytest.approx(left + share * (right - left), abs=1e-6)
    assert len(wood.points) > 8  # its notches are drawn


def test_a_mechanism_is_told_on_its_sheet_and_nothing_is_pictured():
    loose = strength(LAYOUT, CASES, wood="western larch")
    words = written(strength_sheets(loose))
    assert "Nothing keeps the frame upright" in words
    assert "bends most at" not in words


def test_the_binder_has_the_section_and_its_findings_only_with_a_strength():
    with_it = sheets(LAYOUT, only=["strength", "findings"], strength=FOUND)
    assert "Strength and stability" in " ".join(sheet.title for sheet in with_it)
    assert FOUND.findings[0].sentence[:24] in written(with_it)
    assert not sheets(LAYOUT, only=["strength"])


@pytest.mark.parametrize(
    "name", ["tools", *(pytest.param(n, marks=pytest.mark.slow) for n in ("bench", "stand", "rack"))]
)
def test_paper_with_loads_has_no_clash(name, tmp_path):
    layout = lay_out(DESIGNS[name])
    found = strength(layout, wood="western larch", corner_blocks=["butt"])
    path = bind(layout, tmp_path / "binder.pdf", only=["strength", "findings"], strength=found, appendix=None)
    assert not list(faults(path.read_bytes()))
