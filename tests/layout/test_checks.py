"""Each check with the smallest frame that trips it and a neighbour that does not; they stand in check_frames.py."""

from __future__ import annotations

from functools import cache

import attrs
import pytest
from check_frames import CASES, PLAIN, level, notched

from benchjoin import Notch, Rail, alter, lay_out, set_page
from benchjoin.errors import CannotDraw
from benchjoin.layout.checking import CHECKS
from benchjoin.layout.checks.piece import Piece


def found(frame, kind):
    return [finding for finding in lay_out(frame).findings if finding.kind == kind]


@pytest.mark.parametrize("case", CASES)
class TestFindings:
    def test_it_says_how_bad_where_and_how_much(self, case):
        kind, severity, where, numbers, words, trips, _ = CASES[case]
        finding = next((f for f in found(trips, kind) if f.where == where), None)
        assert finding is not None, [str(f) for f in lay_out(trips).findings]
        assert finding.severity == severity
        assert finding.numbers == pytest.approx(numbers, abs=1e-9)
        assert all(word in finding.sentence for word in [where, *words]), finding.sentence
        assert finding.sentence.endswith(".")
        assert str(finding) == f"{severity}: {finding.sentence} [{finding.source}]"
        assert str(finding.source)

    def test_its_neighbour_is_fine(self, case):
        kind, *_, fine = CASES[case]
        assert found(fine, kind) == []

    def test_an_error_stops_the_page_of_the_set_but_not_the_layout(self, case):
        _, severity, *_, trips, _ = CASES[case]
        layout = lay_out(trips)
        if severity == "error":
            with pytest.raises(CannotDraw) as caught:
                set_page(layout, layout.sets[0].letter)
            assert caught.value.findings == layout.errors()
            assert all(finding.sentence in str(caught.value) for finding in layout.errors())
        else:
            assert layout.errors() == ()


@cache
def tripped(case):
    return lay_out(CASES[case][5])


@pytest.mark.parametrize("check", CHECKS)
def test_each_check_is_tripped_by_one_of_the_frames(check):
    told = []
    for case, (_, _, _, _, _, trips, _) in CASES.items():
        layout = tripped(case)
        parts = {part.identity: part for part in layout.piece(1)}
        lost = {name.removeprefix("1/"): length for name, length in layout.lost.items()}
        joints, wanted = layout.joints, layout.wanted
        told += check(Piece(frame=trips, label="", parts=parts, joints=joints, lost=lost, wanted=wanted))
    assert told
    assert {finding.kind for finding in told} <= {kind for kind, *_ in CASES.values()}


def test_a_deep_notch_is_told_once_for_each_kind_of_leg():
    frame = alter(level(front=60, back=60), {"rail_stock.thickness": 21, "back.height": 600})
    assert [finding.where for finding in found(frame, "deep notch")] == [
        "front left leg and front right leg",
        "back left leg and back right leg",
    ]


def test_legs_that_are_notched_from_different_faces_are_told_apart():
    # the front legs lose 30 of 40 inside, the back ones 30 of 60 at the end: only the front legs are cut too deep;
    # behind the front rail, which covers all of the front leg's depth from 10 on, the end rail starts at 40
    frame = alter(
        level(front=Rail(60, joint=Notch(), face="inner"), left=notched, right=notched), {"rail_stock.thickness": 30}
    )
    assert [finding.where for finding in found(frame, "deep notch")] == ["front left leg and front right leg"]


def test_a_rail_without_length_in_one_piece_is_there_in_the_others():
    frame = attrs.evolve(
        level(left=60), depth=81, quantity=3, measured={"2/front left leg.thickness": 41}, corners="front through"
    )
    layout = lay_out(frame)
    assert [part.name for part in layout.parts if part.role == "rail"] == ["1/low/left rail", "3/low/left rail"]
    assert [finding.where for finding in found(frame, "no length left")] == ["2/low/left rail"]


def test_where_pieces_differ_a_finding_names_its_piece():
    frame = attrs.evolve(PLAIN, quantity=2, measured={"2/low/front rail.thickness": 22})
    (deep,) = found(frame, "deep notch")
    assert deep.where == "2/front left leg and front right leg"
    assert deep.numbers == pytest.approx({"depth": 22, "left": 0.45})
