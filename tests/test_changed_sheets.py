"""Which pages must be printed again when a layout takes the place of another."""

from __future__ import annotations

import copy
import pickle

import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from samples import SAMPLES

from benchjoin import alter, changed_sheets, keep, lay_out
from benchjoin.binding import sheets
from benchjoin.errors import NotLaidOut
from benchjoin.template_pages import template_sheets

OLD = lay_out(bench)


def names(layout):
    """The sheets of the binder, then the desk pages."""
    return [sheet.name for sheet in (*sheets(layout), *template_sheets(layout))]


@pytest.mark.slow
@pytest.mark.parametrize("frame", [bench, SAMPLES["four pairs, lapped"]], ids=["bench", "lapped"])
def test_nothing_is_printed_again_where_nothing_changed(frame):
    assert changed_sheets(lay_out(frame), lay_out(frame)) == ()


@pytest.mark.slow
def test_a_narrower_hook_rail_is_seen_on_these_pages():
    new = lay_out(alter(bench, {"hook rail/back rail.width": "3 7/16 in"}))
    found = changed_sheets(OLD, new)
    assert {"set-a", "set-a-reduced", "arrangement", "elevation-front", "settings-1"} <= set(found)
    assert any("cut-list" in name for name in found)
    assert not [name for name in found if name.startswith(("section", "set-b"))]


@pytest.mark.slow
def test_they_come_in_the_order_of_the_binder():
    new = lay_out(alter(bench, {"length": "60 in"}))
    found = changed_sheets(OLD, new)
    assert list(found) == [name for name in names(new) if name in found]
    assert "arrangement" in found


@pytest.mark.slow
def test_the_number_of_a_page_is_no_reason():
    # a note in the findings puts a page before all others
    new = lay_out(alter(bench, {"foot shelf/front rail.thickness": "9/16 in"}))
    found, before = changed_sheets(OLD, new), {sheet.name: sheet for sheet in sheets(OLD)}
    kept = [sheet for sheet in sheets(new) if sheet.name not in found and "Contents" not in sheet.fingerprints]
    assert any("findings" in name for name in found)
    assert kept
    assert all(sheet.drawing == before[sheet.name].drawing for sheet in kept)


def test_a_change_of_one_piece_asks_for_the_page_of_its_set_only():
    new = lay_out(alter(keep(OLD, "3/back left leg"), {"1/hook rail/back rail.width": "3 7/16 in"}))
    found = changed_sheets(OLD, new)
    assert {"set-a", "set-b"} <= set(found)  # set A is unlike the others now, which share a page of their own
    assert "set-c" not in names(new)


def test_a_paper_may_be_named():
    found = changed_sheets(OLD, lay_out(alter(bench, {"length": "60 in"})), paper="A3")
    assert "arrangement" in found
    assert "elevation-front" not in found  # it has all sizes on A3


def test_frames_are_told_to_be_laid_out():
    with pytest.raises(NotLaidOut, match=r"layout = lay_out\(frame\)"):
        changed_sheets(OLD, bench)


HIGHER = lay_out(alter(bench, {"2/bench/front rail.width": "3 7/16 in"}))
"""Bench 2 has a front rail that measures 1/16 in less."""


@pytest.fixture(scope="module")
def higher():
    return changed_sheets(OLD, HIGHER)


def what(found, name):
    return found[found.index(name)].what


def test_each_says_what_changed_by_the_marks_on_the_wood(higher):
    assert what(higher, "story-sticks-1").startswith("B1–B4: bench bottom 32 → 32 1/16; ")
    assert "3 1/2 → 3 7/16" in what(higher, "patterns-1")
    assert "B1–B4: bench " in what(higher, next(name for name in higher if "cut-list" in name))


def test_sticks_patterns_and_tiles_are_among_them(higher):
    assert {"story-sticks-1", "patterns-1", "set-a-a1", "set-b", "set-b-a1"} <= set(higher)


def test_what_is_there_for_the_first_time_is_new(higher):
    assert what(higher, "set-b") == what(higher, "elevation-front-piece-2") == "New."


def test_what_has_another_title_only_says_so(higher):
    told = "Called 'Pieces 1 and 3: Front elevation', was 'Front elevation'."
    assert what(higher, "elevation-front") == told


def test_what_there_is_no_more_is_to_be_thrown_away():
    found = changed_sheets(HIGHER, OLD)
    assert {"set-b", "set-b-a1", "elevation-front-piece-2"} <= set(found.gone)
    assert not set(found.gone) & set(found)
    assert {gone.what for gone in found.gone} == {"Gone: throw it away."}


def test_it_shows_itself_as_a_table(higher):
    assert repr(higher).startswith("Print again\n")
    assert "<table" in higher._repr_html_()


def test_it_can_be_kept(higher):
    for kept in (pickle.loads(pickle.dumps(higher)), copy.deepcopy(higher)):
        assert (kept, kept.gone) == (higher, higher.gone)
        assert [one.what for one in kept] == [one.what for one in higher]


def test_of_a_layout_with_errors_no_desk_page_is_asked_for():
    wrong = lay_out(alter(rack, {"tray 1.ends.raised": 0}))
    assert wrong.errors()
    assert not [name for name in changed_sheets(lay_out(rack), wrong) if name.startswith(("story", "patterns", "set-"))]


@pytest.mark.slow
def test_a_page_that_is_not_printed_again_bears_the_same_fingerprint(higher):
    before = {sheet.name: sheet.fingerprint for sheet in (*sheets(OLD), *template_sheets(OLD))}
    after = {sheet.name: sheet.fingerprint for sheet in (*sheets(HIGHER), *template_sheets(HIGHER))}
    kept = (set(before) & set(after)) - set(higher) - {"contents-1", "contents-2", "contents"}
    assert kept
    assert all(before[name] == after[name] for name in kept)
