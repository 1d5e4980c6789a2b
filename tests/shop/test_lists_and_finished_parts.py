"""Bad input about what is done is told by name and by line: sizes of finished parts, and of parts that are gone.

The stand stands in stand.py: legs of 60 × 40, 500 high, notched from 100 to 160 and from 420 to their top.
"""

from __future__ import annotations

import csv
import io

import pytest
from stand import CUT, STAND, kept

from benchjoin import alter, lay_out, milling_plan, read_measurements
from benchjoin.errors import MeasurementError
from benchjoin.frame.finished import STATES

BEFORE = milling_plan(lay_out(STAND)).csv()
"""The list that was printed before anything was done."""


def filled(sizes, text=BEFORE):
    """The list with measured cells filled in: {part: (thickness, width)}; and the line of each part."""
    rows = list(csv.reader(io.StringIO(text, newline="")))
    out = io.StringIO(newline="")
    for row in rows[1:]:
        row[5:] = sizes.get(row[0], ("", ""))
    csv.writer(out).writerows(rows)
    return out.getvalue(), {row[0]: number for number, row in enumerate(rows, 1)}


def faults(text, frame):
    with pytest.raises(MeasurementError) as caught:
        read_measurements(text, frame)
    return {fault.line: fault.what for fault in caught.value.faults}


@pytest.mark.parametrize("state", STATES)
class TestRowsOfFinishedParts:
    def test_another_size_is_a_fault_by_its_line_and_says_how_it_was_kept(self, state):
        text, lines = filled({CUT: ("39", "60"), "2/back left leg": ("38", "58")})
        found = faults(text, kept(CUT, state=state))
        assert list(found) == [lines[CUT]]
        assert f"39 mm for the thickness of 1/front left leg, which is {state} and kept at 40 mm" in found[lines[CUT]]
        assert 'alter(frame, {"1/front left leg.thickness": …})' in found[lines[CUT]]

    def test_the_size_it_was_kept_at_changes_nothing_and_the_other_rows_are_taken(self, state):
        frame = kept(CUT, state=state)
        text, _ = filled({CUT: ("40", "60.1"), "2/back left leg": ("38", "58")})
        assert read_measurements(text, frame) == alter(frame, {"2/back left leg.size": (38, 58)})

    def test_a_blank_row_is_no_fault(self, state):
        frame = kept(CUT, state=state)
        assert read_measurements(BEFORE, frame) == frame

    def test_what_was_measured_by_its_name_since_is_what_it_was_kept_at(self, state):
        frame = alter(kept(CUT, state=state), {f"{CUT}.thickness": 39})
        assert read_measurements(filled({CUT: ("39", "60")})[0], frame) == frame

    def test_a_row_for_all_pieces_is_taken_and_the_finished_one_is_named(self, state):
        head = BEFORE.splitlines()[0]
        frame = read_measurements(f"{head}\nfront left leg,,,,,39,60\n", kept(CUT, state=state))
        layout = lay_out(frame)
        assert [layout.part(f"{n}/front left leg").thickness for n in (1, 2)] == [40, 39]
        told = [f for f in layout.findings if f.kind == "measure not taken"]
        assert [(f.where, f.numbers) for f in told] == [("1/front left leg", {"measured": 39, "kept": 40})]


def test_a_list_written_after_they_were_kept_reads_back_whatever_is_filled_in():
    frame = kept(CUT, "low/front rail")
    plan = milling_plan(lay_out(frame))
    text, lines = filled({"2/front left leg": ("39", "59")}, plan.csv())
    assert CUT not in lines
    assert read_measurements(text, frame) == alter(frame, {"2/front left leg.size": (39, 59)})


def test_sizes_of_parts_that_are_gone_and_of_pieces_that_are_gone_are_all_told_by_their_lines():
    text, lines = filled({"1/low/left rail": ("20", "60"), "2/low/front rail": ("20", "60"), CUT: ("39", "60")})
    frame = alter(kept(CUT), {"low.ends": None, "low.left": None, "low.right": None, "quantity": 1})
    found = faults(text, frame)
    assert "'1/low/left rail' is no part of Stand" in found[lines["1/low/left rail"]]
    assert "is of piece 2, and the quantity is 1" in found[lines["2/low/front rail"]]
    assert "is cut and kept at 40 mm" in found[lines[CUT]]


class TestMeasuredShorterThanItIsCut:
    def errors(self, length, *, state="cut", name=CUT):
        layout = lay_out(alter(kept(CUT, state=state), {f"{name}.length": length}))
        return [(f.where, f.numbers) for f in layout.errors() if f.kind == "measured too short"]

    @pytest.mark.parametrize("state", ["marked", "cut"])
    def test_below_its_highest_shoulder_it_is_an_error_by_name(self, state):
        assert self.errors(410, state=state) == [("1/front left leg", {"length": 410, "shoulder": 420})]

    def test_an_open_notch_that_lost_some_of_its_top_contradicts_nothing(self):
        assert self.errors(497) == []

    def test_a_sized_part_has_no_shoulder_yet(self):
        assert self.errors(410, state="sized") == []

    def test_a_length_of_all_pieces_is_not_taken_for_the_cut_one(self):
        assert self.errors(410, name="front left leg") == []
