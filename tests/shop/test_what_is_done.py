"""What is done is done: parts that are sized, marked or cut leave the plans of the work, and stand there as done.

The stand stands in stand.py: two pieces of four legs (sets A and B), two levels of four rails.
"""

from __future__ import annotations

import csv
import io
import re
from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st
from stand import CUT, LAPPED, LEGS, STAND, every_part, kept
from strategies import frames

from benchjoin import Rail, alter, cut_list, keep, lay_out, milling_plan, settings
from benchjoin.binding import sheets
from benchjoin.drawings.lists.milling_sheet import milling_sheets
from benchjoin.drawings.templates.pattern.pages import notch_patterns
from benchjoin.drawings.templates.stick.pages import story_sticks
from benchjoin.drawings.views.part_drawing import part_drawings
from benchjoin.frame.finished import STATES
from benchjoin.layout.patterns import lay_ons
from benchjoin.layout.sticks import sticks
from benchjoin.shop.cut_list import parts_table
from benchjoin.shop.settings.notching import notchings

PIECE = [f"1/{leg}" for leg in LEGS]


def items(plan):
    return [item for batch in plan.batches for line in batch.lines for item in line.items]


def words(*drawn):
    return " ".join(getattr(primitive, "string", "") for sheet in drawn for primitive in sheet.whole)


@pytest.mark.parametrize("state", STATES)
class TestMilling:
    def test_a_part_that_is_done_needs_no_blank_and_no_line_to_measure(self, state):
        plan = milling_plan(lay_out(kept(CUT, "1/low/left rail", state=state)))
        milled = {item.name for item in items(plan)}
        assert milled.isdisjoint({CUT, "1/low/left rail"})
        assert "2/front left leg" in milled
        assert [row[0] for row in csv.reader(io.StringIO(plan.csv())) if row[0] == CUT] == []
        assert CUT not in {row[1] for row in plan.measuring().rows}

    def test_it_stands_below_the_lists_with_its_mark_and_what_it_is(self, state):
        plan = milling_plan(lay_out(kept(CUT, "1/low/left rail", state=state)))
        (told,) = [note for note in plan.table().notes if note.startswith("Done: ")]
        assert told == f"Done: A1, A7 {state} (front leg; low: end rail)."
        assert told in plan.measuring().notes
        assert "Done: A1, A7" in words(*milling_sheets(plan.layout))

    def test_a_spare_leg_is_milled_while_any_leg_is_to_be_made_and_not_after(self, state):
        spares = [
            [item.name for item in items(milling_plan(lay_out(kept(*names, state=state)))) if item.name == "spare leg"]
            for names in (PIECE, LEGS)
        ]
        assert spares == [["spare leg"], []]

    def test_when_all_is_made_there_is_nothing_to_mill_and_no_sheet_of_it(self, state):
        layout = lay_out(kept(*every_part(STAND), state=state))
        plan = milling_plan(layout)
        assert plan.batches == ()
        assert plan.table().rows == plan.measuring().rows == plan.steps().rows == ()
        assert "milling" not in {sheet.name.partition("-")[0] for sheet in sheets(layout)}


class TestSettings:
    def test_the_notches_of_a_cut_part_leave_and_those_of_a_marked_part_stay(self):
        layout = lay_out(keep(lay_out(kept("1/front left leg")), "1/front right leg", state="marked"))
        cut = {notch.part.name for notch in notchings(layout)}
        assert "1/front left leg" not in cut
        assert "1/front right leg" in cut

    def test_what_is_done_is_told_below_each_list(self):
        found = settings(lay_out(keep(lay_out(kept(CUT)), "1/front right leg", "1/low/left rail", state="sized")))
        assert "Done: A1 cut (front leg)." in found.table().notes
        for table in (found.crosscut_table(), found.rip_table()):
            assert any(note.startswith("Done: A1 cut (front leg); A2, ") for note in table.notes)

    def test_a_notch_that_came_into_a_cut_leg_later_is_still_to_be_cut(self):
        layout = lay_out(alter(kept(CUT), {"low.front": Rail(40, face="inner")}))
        assert [(notch.cut.cut.mate, notch.face) for notch in notchings(layout) if notch.part.name == CUT] == [
            ("low/front rail", "back")
        ]

    def test_settings_of_one_set_tell_of_that_set_alone(self):
        layout = lay_out(kept(CUT))
        assert not any("Done: A1" in note for note in settings(layout, letter="B").table().notes)


class TestPatterns:
    def places(self, frame):
        return sorted(use.part.name for group in lay_ons(lay_out(frame)) for one in group for use in one.uses)

    @pytest.mark.parametrize("state", ["marked", "cut"])
    def test_places_that_are_marked_leave_the_list_and_the_count(self, state):
        frame = kept(CUT, state=state)
        assert CUT not in self.places(frame)
        assert len(self.places(frame)) == len(self.places(STAND)) - 2
        told = words(*notch_patterns(lay_out(frame)))
        assert "for 7 notches" in told
        assert len(re.findall(r"\bA1\b", told)) == 1
        assert f"Done: A1 {state} (front leg)." in told

    def test_a_sized_part_still_wants_its_marks(self):
        assert self.places(kept(CUT, state="sized")) == self.places(STAND)

    def test_a_pattern_with_no_place_left_is_gone(self):
        assert notch_patterns(lay_out(kept(*LEGS))) == ()

    def test_the_other_half_of_a_lap_is_still_there_and_says_no_number_of_a_pattern_that_is_gone(self):
        frame = kept(*LEGS, frame=LAPPED)
        assert {one.part.slot.role.word for group in lay_ons(lay_out(frame)) for one in group} == {"rail"}
        assert "half of a lap" not in words(*notch_patterns(lay_out(frame)))


class TestSticks:
    @pytest.mark.parametrize("state, left", [("sized", 8), ("marked", 7), ("cut", 7)])
    def test_a_stick_counts_what_is_still_to_be_marked(self, state, left):
        layout = lay_out(kept(CUT, state=state))
        (stick,) = sticks(layout)
        assert len(stick.parts) == left
        assert f"for {left} legs:" in words(*story_sticks(layout))
        assert ("Done: A1" in words(*story_sticks(layout))) == (state != "sized")

    def test_a_stick_for_which_all_is_marked_is_gone(self):
        assert story_sticks(lay_out(kept(*LEGS, state="marked"))) == ()

    def test_a_notch_that_came_later_brings_its_leg_back(self):
        layout = lay_out(alter(kept(CUT), {"low.front": Rail(40, face="inner")}))
        assert CUT in {part.name for stick in sticks(layout) for part in stick.parts}


class TestCutList:
    def test_make_is_what_is_to_be_made_and_the_note_says_what_is_done(self):
        layout = lay_out(keep(lay_out(kept(CUT)), "1/front right leg", state="sized"))
        (legs,) = [row for row in cut_list(layout).rows if row[0] == "front and back leg"]
        assert (legs[1], legs[7]) == ("6", "2 notches; done: A1 cut, A2 sized")

    def test_a_line_of_which_all_is_done_makes_none(self):
        (legs,) = [row for row in cut_list(lay_out(kept(*LEGS))).rows if row[0] == "front and back leg"]
        assert (legs[1], legs[7]) == ("0", "2 notches; done: A1–A4, B1–B4 cut")

    def test_the_pictures_of_its_parts_say_the_same(self):
        layout = lay_out(kept(CUT))
        (legs,) = [row for row in parts_table(layout).rows if "leg" in row[1]]
        assert legs[:2] == ("A1–A4", "front and back leg; done: A1 cut")
        assert "front and back leg, for 7 legs (done: A1 cut)" in words(*part_drawings(layout))


ROW = r"((?:[A-Z]+\d+(?:–[A-Z]+\d+)?(?:, )?)+)(?: to ([^()]*) \((\d+) sets\))?"


def count(told, layout):
    """How many parts marks name: 'A1–A4, B1' five, 'A1, A2 to F1, F2 (6 sets)' twelve, 'D' all that share it."""
    shared = Counter(part.mark for part in layout.parts if part.mark.isalpha())
    total = sum(shared[mark] for mark in re.findall(r"\b[A-Z]+\b", told))
    for first, last, sets in re.findall(ROW, told):
        own = 0
        for one in filter(None, first.split(", ")):
            numbers = [int(re.sub(r"\D", "", mark)) for mark in one.split("–")]
            own += numbers[-1] - numbers[0] + 1
        total += own * (int(sets) if last else 1)
    return total


@given(frames(), st.data())
def test_what_is_to_be_made_and_what_is_done_are_the_quantity(frame, data):
    layout = lay_out(frame)
    names = [part.name for part in layout.parts]
    for name in data.draw(st.lists(st.sampled_from(names), max_size=6, unique=True)):
        frame = keep(layout, name, state=data.draw(st.sampled_from(STATES)))
        layout = lay_out(frame)
    rows = cut_list(layout).rows
    done = sum(count(row[7].partition("done: ")[2], layout) for row in rows)
    assert done == len(frame.finished)
    assert sum(int(row[1]) for row in rows) + done == len(layout.parts)
    for row in rows:
        assert int(row[1]) + count(row[7].partition("done: ")[2], layout) == count(row[6], layout)
    milled = [item.name for item in items(milling_plan(layout)) if item.part]
    assert sorted([*milled, *frame.finished]) == sorted(part.name for part in layout.parts)
