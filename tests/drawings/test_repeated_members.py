"""Members that repeat are told once on every sheet: how many, how wide, the gaps; and the places that say where."""

from __future__ import annotations

import re

import pytest
from boarded import BATTEN, BOARDED, SLAT
from boarded_designs import bench, rack, stand
from check_boards import carrying

from benchjoin import Bearers, Boards, elevation, lay_out, plan
from benchjoin.drafting.primitives import Line, Text, flat
from benchjoin.drawings.views.isometric import drawn_apart
from benchjoin.drawings.views.joint.pages import joint_details
from benchjoin.drawings.views.part_drawing import part_drawings
from benchjoin.drawings.views.view import view
from benchjoin.drawings.views.view_sizes import said
from benchjoin.layout.spacing import common_lines, spacings

INCH = 25.4
BENCH, RACK, STAND = (lay_out(frame) for frame in (bench, rack, stand))


def strings(*sheets):
    return [item.string for sheet in sheets for item in flat(sheet.drawing) if isinstance(item, Text)]


def near(places, at):
    return any(abs(place - at) < 1e-6 for place in places)


def test_an_end_gives_the_first_board_and_the_far_edge_of_the_last():
    parts = BENCH.piece(1)
    depths = said(parts, view(parts, "left"))[1]
    boards = [part.blank for part in parts if part.slot.run == "boards"]
    assert near(depths, 2.5 * INCH)
    assert near(depths, 22.375 * INCH)
    between = [edge for box in boards[1:-1] for edge in (box.low[1], box.high[1])]
    assert not [edge for edge in (*between, boards[-1].low[1]) if near(depths, edge)]


def test_the_words_count_boards_and_gaps_with_their_marks_and_prove_the_sum():
    told = "foot shelf: 8 boards 2 1/2 (D1, D2, F), 7 gaps 5/16 full: 20 + 2 3/8 = 22 3/8."
    assert told in " ".join(strings(elevation(BENCH, "left")))
    assert told in " ".join(strings(plan(BENCH)))
    # (1764 - 13 × 15) / 14 is 112 1/14: twelve gaps are 1344 6/7
    told = "glove rack: 13 dividers 15 (C1–C13), 12 gaps 112: 195 + 1345 scant = 1540 scant."
    assert told in " ".join(strings(plan(STAND)))


def test_levels_alike_are_told_in_one_line():
    told = [words for words in strings(elevation(RACK, "front")) if "boards" in words]
    assert [words[:51] for words in told] == ["tray 1 to tray 6 (6 levels): 12 boards 34 (D), 11 g"]


@pytest.mark.parametrize("name", BOARDED)
def test_no_view_gives_every_board(name):
    parts = lay_out(BOARDED[name]).piece(1)
    for eye in ("front", "left", "above"):
        places = said(parts, view(parts, eye))
        for spacing in spacings(parts):
            own = [edge for ends in spacing.lines for edge in ends]
            others = [
                edge
                for part in parts
                if part not in spacing.members
                for edge in (part.blank.low[spacing.axis], part.blank.high[spacing.axis])
            ]
            told = [edge for edge in own if near(places.get(spacing.axis, ()), edge) and not near(others, edge)]
            assert len(told) <= 4


def test_a_plan_bears_the_mark_of_each_board_where_there_is_room():
    sheet = plan(BENCH)
    marks = [words for words in strings(sheet) if re.fullmatch(r"D\d|F", words)]
    assert sorted(marks) == ["D1", "D2", *["F"] * 6]


def test_what_carries_boards_has_all_their_lines_and_one_line_of_words():
    sheets = part_drawings(BENCH)
    assert strings(*sheets).count("8 boards 2 1/2, 7 gaps 5/16 full") == 2  # on end rails and on bearers
    assert strings(*sheets).count("laid, no waste") == 3  # and the front rail under its board
    assert "13 notches 15, 12 lands 112" in " ".join(strings(*part_drawings(STAND)))


def test_members_of_unlike_length_are_clamped_on_a_common_line():
    # D1 begins over the front of the front rail; a bearer butts behind that rail, an end rail behind the leg.
    words = " ".join(strings(*part_drawings(BENCH)))
    assert "Clamp beside A7, A8 on a common line, where D1 begins: 0 is 5/8 in beyond it." in words
    assert "Clamp beside E on a common line, where D1 begins: 0 is 1 5/16 in beyond it." in words
    # In the stand the boards begin 45 behind the front; its legs are 42 deep, its rails 18 thick.
    told = {name: line.beyond for name, (line,) in common_lines(STAND.piece(1)).items()}
    assert told["1/boot rack/left rail"] == pytest.approx(42 - 45)
    assert told["1/boot rack/bearer 1"] == pytest.approx(18 - 45)


def test_members_that_agree_in_their_ends_need_no_common_line():
    alike = carrying(Bearers(BATTEN, count=3), Boards(SLAT, count=5), ends=None)  # on bearers alone
    assert common_lines(lay_out(alike).parts) == {}


def test_a_board_cut_round_a_leg_is_drawn_once_from_above():
    words = strings(*part_drawings(BENCH))
    assert words.count("top face") == 2
    assert [one for one in words if "3/4 thick" in one]
    assert words.count("right through") == 4


def test_what_only_lies_on_another_has_no_detail_and_crossings_have_their_names():
    assert not [words for words in strings(*joint_details(RACK)) if "laid" in words]
    assert [words for words in strings(*joint_details(STAND)) if re.search(r"^Joint \d+: cross lap, C1 to B1", words)]
    tees = lay_out(BOARDED["bearers of every kind"])
    assert [words for words in strings(*joint_details(tees)) if "tee lap" in words]
    assert len([words for words in strings(*joint_details(BENCH)) if words.startswith("Joint ")]) == 5


def test_a_detail_of_a_crossing_shows_no_length_of_what_runs_on():
    assert not [words for words in strings(*joint_details(STAND)) if words in ("1637", "1764")]


def test_drawn_apart_the_first_and_the_last_board_show_the_way():
    """Lifted off two end rails and two bearers, and the first off the front rail: nine ways, not 33."""
    lines = [line for line in drawn_apart(BENCH, 1).drawing(0.1) if isinstance(line, Line) and line.kind == "centre"]
    upright = {round(line.points[0][0], 1) for line in lines if abs(line.points[0][0] - line.points[-1][0]) < 1e-6}
    assert 2 <= len(upright) <= 9
