"""Which pages must be printed again when a layout takes the place of another."""

from __future__ import annotations

import pytest
from designs import bench
from samples import SAMPLES

from benchjoin import alter, changed_sheets, keep, lay_out
from benchjoin.binding import sheets
from benchjoin.errors import NotLaidOut

OLD = lay_out(bench)


def names(layout):
    return [sheet.name for sheet in sheets(layout)]


@pytest.mark.slow
@pytest.mark.parametrize("frame", [bench, SAMPLES["four pairs, lapped"]], ids=["bench", "lapped"])
def test_nothing_is_printed_again_where_nothing_changed(frame):
    assert changed_sheets(lay_out(frame), lay_out(frame)) == ()


@pytest.mark.slow
def test_a_narrower_hook_rail_is_seen_on_these_pages():
    new = lay_out(alter(bench, {"hook rail/back rail.width": "3 7/16 in"}))
    found = changed_sheets(OLD, new)
    assert {"cut-list", "set-a", "set-a-reduced", "elevation-back", "settings-notches"} <= set(found)
    assert not {"plan", "section-foot-shelf", "settings-lengths", "contents"} & set(found)


@pytest.mark.slow
def test_they_come_in_the_order_of_the_binder():
    new = lay_out(alter(bench, {"length": "60 in"}))
    found = changed_sheets(OLD, new)
    assert list(found) == [name for name in names(new) if name in found]
    assert "plan" in found


@pytest.mark.slow
def test_the_number_of_a_page_is_no_reason():
    # a note in the findings puts a page before all others
    new = lay_out(alter(bench, {"foot shelf/front rail.thickness": "9/16 in"}))
    found, before = changed_sheets(OLD, new), {sheet.name: sheet for sheet in sheets(OLD)}
    kept = [sheet for sheet in sheets(new) if sheet.name not in (*found, "contents")]
    assert "findings" in found
    assert kept
    assert all(sheet.drawing == before[sheet.name].drawing for sheet in kept)
    assert any(sheet.number != before[sheet.name].number for sheet in kept)


def test_a_change_of_one_piece_asks_for_the_page_of_its_set_only():
    new = lay_out(alter(keep(OLD, "3/back left leg"), {"1/hook rail/back rail.width": "3 7/16 in"}))
    found = changed_sheets(OLD, new)
    assert {"set-a", "set-b"} <= set(found)  # set A is unlike the others now, which share a page of their own
    assert "set-c" not in names(new)


def test_a_paper_may_be_named():
    found = changed_sheets(OLD, lay_out(alter(bench, {"length": "60 in"})), paper="A3")
    assert "elevation-front" in found
    assert "section-foot-shelf" in found


def test_frames_are_told_to_be_laid_out():
    with pytest.raises(NotLaidOut, match=r"layout = lay_out\(frame\)"):
        changed_sheets(OLD, bench)
