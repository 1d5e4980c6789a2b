"""The settings sheet and the error budget on paper: cautions, boxes to tick, the words of the settings."""

import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from samples import SAMPLES

from benchjoin import Notch, Rail, Shop, alter, error_budget, lay_out, settings
from benchjoin.binding import sheets
from benchjoin.drafting.primitives import Line, Text, bounds
from benchjoin.drafting.sheets.clashes import clashes
from benchjoin.drawings.lists.budget_sheet import KINDS, error_budget_sheets
from benchjoin.drawings.lists.settings_sheet import settings_sheets
from benchjoin.errors import CannotDraw, PaperError
from benchjoin.trade.cautions import cautions

FRAMES = {**SAMPLES, "bench": bench, "rack": rack}


def words(pages):
    return " ".join(" ".join(item.string for page in pages for item in page.drawing if isinstance(item, Text)).split())


def boxes(pages):
    return [
        item
        for page in pages
        for item in page.drawing
        if isinstance(item, Line) and item.closed and bounds((item,))[2] - bounds((item,))[0] == pytest.approx(3.2)
    ]


@pytest.mark.parametrize("name", FRAMES)
def test_settings_of_every_frame_go_on_paper(name):
    layout = lay_out(FRAMES[name])
    for page in (*settings_sheets(layout), *error_budget_sheets(layout)):
        assert [str(clash) for clash in clashes(page.whole)] == []
        assert min(item.height for item in page.drawing if isinstance(item, Text)) >= 2.5


@pytest.mark.parametrize("frame", [bench, rack])
def test_every_setting_has_a_line_with_its_boxes(frame):
    layout = lay_out(frame)
    pages = settings_sheets(layout)
    found = settings(layout)
    tests = len(found.table().rows) - len(found.notching)
    assert len(boxes(pages)) == 2 * len(found.notching) + tests + len(found.crosscuts) + len(found.rips)
    told = words(pages)
    for setting in found.notching:
        if setting.stop is not None:
            assert frame.tape.read(setting.stop) in told
    assert "Rail laid" in told
    assert "lay its own rail between its lines" in told


@pytest.mark.parametrize("shop, work", [(Shop(), "dado head"), (Shop(dado=None), "router")])
def test_cautions_stand_above_the_first_line(shop, work):
    (first, *_) = settings_sheets(lay_out(bench), shop)
    texts = [item for item in first.drawing if isinstance(item, Text)]
    (head,) = [item for item in texts if item.string == "No."]
    above = " ".join(" ".join(item.string for item in texts if item.at[1] > head.at[1]).split())
    for caution in cautions(work):
        assert caution in above


def test_the_test_cut_comes_first():
    (first, *_) = settings_sheets(lay_out(bench))
    told = words([first])
    assert told.index("Test cut") < told.index("foot shelf far shoulder")


def test_what_must_be_thought_about_again_stands_under_the_table():
    layout = lay_out(SAMPLES["ends in wide faces"])
    told = words(settings_sheets(layout))
    warnings = [finding.sentence for finding in settings(layout).findings if finding.severity == "warning"]
    assert len(warnings) == 1
    assert all(sentence in told for sentence in warnings)


def test_a_frame_that_cannot_be_built_has_no_settings_on_paper():
    faulty = lay_out(alter(bench, {"bench.ends": Rail("3 1/2 in", joint=Notch()), "corners": "staggered"}))
    assert faulty.errors()
    with pytest.raises(CannotDraw, match="want the same wood"):
        settings_sheets(faulty)
    assert not any(page.name.startswith("settings") for page in sheets(faulty))


def test_the_binder_holds_settings_and_error_budget():
    names = [page.name for page in sheets(lay_out(bench))]
    assert any("settings" in name for name in names)
    assert any("error-budget" in name for name in names)


def test_every_way_of_marking_has_its_own_kind_of_line_and_its_name():
    layout = lay_out(bench)
    (page,) = error_budget_sheets(layout)
    budget = error_budget(layout)
    assert len(set(KINDS.values())) == len(KINDS) == len(budget.ways)
    marks = len(budget.ways_marks)
    drawn = [item.kind for item in page.drawing if isinstance(item, Line) and len(item.points) == marks]
    assert sorted(drawn) == sorted(2 * list(KINDS.values()))
    assert all(words([page]).count(way) >= 3 for way in ("printed strip", "stop block"))


@pytest.mark.parametrize("draw", [settings_sheets, error_budget_sheets])
def test_paper_that_is_not_there_is_answered_with_what_there_is(draw):
    with pytest.raises(PaperError, match=r"There is A0.*Letter"):
        draw(lay_out(bench), paper="A9")


def test_a_frame_without_notches_has_no_error_budget():
    assert error_budget_sheets(lay_out(SAMPLES["over all"])) == ()
