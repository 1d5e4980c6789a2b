"""Binders are few pages, and there is one for every frame on desk paper, whatever does not fit."""

from __future__ import annotations

import attrs
import pytest
from designs import DESIGNS, plain_stand
from hypothesis import HealthCheck, given, settings
from samples import SAMPLES
from strategies import frames

from benchjoin import Clear, Level, lay_out
from benchjoin.binding import sheets
from benchjoin.drafting.primitives import Text, bounds
from benchjoin.drafting.sheets.clashes import clashes

PAPERS = ("Letter", "A4")
VIEWS = {"elevation-back", "elevation-right", "plan", "section-foot-shelf", "section-hook-rail"}
"""What a general arrangement holds, and sections without a size of their own: together they are one sheet."""


def holds(frame, paper):
    """The sheets of a binder, if nothing lies on anything or leaves the paper and each has its own name."""
    bound = sheets(lay_out(frame), paper=paper, appendix=None)
    assert len({sheet.name for sheet in bound}) == len(bound)
    for sheet in bound:
        assert [str(clash) for clash in clashes(sheet.whole)] == [], sheet.name
        x0, y0, x1, y1 = bounds(sheet.whole)
        assert (x0 >= 10 - 1e-6, y0 >= 10 - 1e-6, x1 <= sheet.width - 10 + 1e-6, y1 <= sheet.height - 10 + 1e-6) == (
            (True,) * 4
        ), sheet.name
    return bound


def words(bound):
    return " ".join(item.string for sheet in bound for item in sheet.drawing if isinstance(item, Text))


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", ["three pairs", "ends in wide faces", "measured batch"])
def test_frames_whose_sets_are_wide_are_bound_on_desk_paper(name, paper):
    holds(SAMPLES[name], paper)


@pytest.mark.slow
@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", {**DESIGNS, **SAMPLES})
def test_every_frame_is_bound_on_desk_paper(name, paper):
    holds({**DESIGNS, **SAMPLES}[name], paper)


@pytest.mark.slow
@given(frame=frames())
@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
def test_any_frame_is_bound_on_desk_paper(frame):
    for paper in PAPERS:
        holds(frame, paper)


def test_the_binder_of_the_bench_is_no_more_than_fifteen_pages():
    """Two of them are settings, since notches of 5/8 are cut in two bites."""
    bound = sheets(lay_out(SAMPLES["honey bench"]), appendix=None)
    arranged = [sheet for sheet in bound if sheet.name in VIEWS]
    assert len(bound) - max(len(arranged) - 1, 0) <= 15


def test_no_list_of_a_gallery_design_is_left_with_two_rows_on_a_page_of_its_own():
    for frame in DESIGNS.values():
        lists = sheets(lay_out(frame), only=["findings", "cut list", "milling"])
        last = lists[-1]
        assert len([item for item in last.drawing if isinstance(item, Text)]) > 12


def test_findings_stand_once_and_are_pointed_to_by_number():
    bound = sheets(lay_out(plain_stand), appendix=None)
    told = " ".join(words(bound).split())
    for finding in lay_out(plain_stand).findings:
        assert told.count(" ".join(finding.sentence.split())) == 1
    assert "Findings 1 to 4: see the list." in told


def test_a_sheet_drawn_alone_keeps_its_findings_in_full():
    from benchjoin import elevation

    told = words([elevation(lay_out(plain_stand), "front")])
    assert "Warning: " in told
    assert "see the list" not in told


@pytest.mark.parametrize("paper", PAPERS)
def test_names_of_sixty_letters_and_sixty_levels_flow_on(paper):
    long = "Bench for the honey house by the old gate, with a high back"
    assert len(long) >= 58
    levels = [item for n in range(60) for item in (Clear(10), Level(f"tray {n + 1}", front=15, back=15))]
    tall = attrs.evolve(DESIGNS["rack"], name=long, stack=levels)
    holds_lists = sheets(lay_out(tall), only=["cover", "findings", "cut list", "milling", "parts"], paper=paper)
    for sheet in holds_lists:
        assert [str(clash) for clash in clashes(sheet.whole)] == [], sheet.name
    renamed = attrs.evolve(
        DESIGNS["bench"],
        name=long,
        bins=[attrs.evolve(own, on=f"{own.on} {long}") for own in DESIGNS["bench"].bins],
        stack=[attrs.evolve(i, name=f"{i.name} {long}") if isinstance(i, Level) else i for i in DESIGNS["bench"].stack],
    )
    lists = ["cover", "findings", "cut list", "milling", "parts", "settings", "error budget"]
    for sheet in sheets(lay_out(renamed), only=lists, paper=paper):
        assert [str(clash) for clash in clashes(sheet.whole)] == [], sheet.name
        assert bounds(sheet.whole)[2] <= sheet.width - 10 + 1e-6
