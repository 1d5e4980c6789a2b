"""A cut as one sees it on its face, and what is reckoned from it: depths, lands, patterns, notes."""

import attrs
import pytest

from benchjoin import Clear, Frame, HalfLap, Leg, Level, Rail, Stock, alter, keep, lay_out, settings
from benchjoin.drawings.making.asked import Asked
from benchjoin.drawings.making.notes import concerning
from benchjoin.layout.joints.meeting import Cut
from benchjoin.layout.patterns import lay_ons
from benchjoin.solids import Box
from benchjoin.trade.practice import LAND

POST = Stock("oak post", thickness=60, width=60)
BOARD = Stock("oak board", thickness=20)


def stand(**changed):
    fields = {
        "name": "Swarm box stand",
        "length": 900,
        "depth": 400,
        "front": Leg(POST, height=600),
        "back": Leg(POST, height=600),
        "rail_stock": BOARD,
        "tape": "1 mm",
        "stack": [Clear(200), Level("low", front=80, back=80, ends=80), Clear(), Level("top", front=80, top=600)],
    }
    return Frame(**{**fields, **changed})


def with_cut(part, box, face="front"):
    return attrs.evolve(part, cuts=(Cut(part=part.identity, mate="low/front rail", face=face, box=box, kind="notch"),))


def test_wood_that_lies_over_a_cut_is_buried_and_no_part_of_its_depth():
    leg = lay_out(stand()).leg("front left")
    seen = with_cut(leg, Box((0, 7, 200), (60, 27, 280))).cuts_on("front")[0]
    assert (seen.buried, seen.depth, seen.floor) == (7.0, 20.0, 27.0)
    above = with_cut(leg, Box((0, -3, 200), (60, 20, 280))).cuts_on("front")[0]
    assert (above.buried, above.depth, above.floor) == (0.0, 20.0, 20.0)


def test_the_depth_of_a_housing_leaves_out_what_is_buried():
    leg = lay_out(stand()).leg("front left")
    notch = with_cut(leg, Box((0, 7, 200), (60, 27, 280))).notches[0]
    assert (notch.depth, notch.bottom, notch.top) == (20.0, 200.0, 280.0)


def test_a_buried_notch_is_told_with_how_much_lies_over_it():
    layout = lay_out(stand(back=Leg(Stock("thin", thickness=30, width=60), height=600)))
    leg = layout.leg("front left")
    buried = with_cut(leg, Box((0, 7, 200), (60, 27, 280)))
    parts = tuple(buried if part is leg else part for part in layout.parts)
    found = [f for f in settings(attrs.evolve(layout, parts=parts)).findings if f.kind == "buried notch"]
    assert [f.numbers["buried"] for f in found] == [7.0]
    assert found[0].parts == ("front left leg",)


def test_a_land_is_held_against_the_deeper_of_the_notches_beside_it():
    """28 deep and 12: the land must be as the deep one asks, whichever lies below; beside the other 27 would do."""
    deep, shallow = Rail(80, stock=Stock("thick oak", thickness=28)), Rail(80, stock=Stock("thin oak", thickness=12))
    need = LAND.needed(28.0)
    assert LAND.needed(12.0) < need - 1
    for low, high in ((deep, shallow), (shallow, deep)):
        stack = [Clear(200), Level("low", front=low), Clear(need - 1), Level("high", front=high), Clear()]
        found = [f for f in lay_out(stand(stack=stack)).findings if f.kind == "short land"]
        assert found, (low, high)
        assert found[0].numbers == {"land": pytest.approx(need - 1), "needed": need}


def test_the_pattern_of_a_half_lap_is_folded_over_both_edges_and_that_of_a_notch_over_one():
    stack = [Clear(200), Level("low", front=Rail(80, joint=HalfLap()), back=80), Clear()]
    folds = {(one.kind, one.part.role): one.folds for group in lay_ons(lay_out(stand(stack=stack))) for one in group}
    assert folds["half-lap", "leg"] == ("upper", "lower")
    assert folds["half-lap", "rail"] == ("upper", "lower")
    assert folds["notch", "leg"] == ("upper",)


def test_a_sheet_of_one_piece_has_no_notes_of_another():
    frame = stand(quantity=3, measured={"2/low/front rail.width": 76})
    layout = lay_out(alter(frame, {"uneven": "own"}))
    kept = keep(layout, "2/front left leg", state="cut")
    later = lay_out(alter(kept, {"low.front.width": 90, "2/low/front rail.width": 90}))
    second = [f for f in later.findings if f.pieces == (2,)]
    assert second
    asked = Asked(layout=later)
    for finding in second:
        assert finding in concerning(asked, finding.parts, 2)
        assert finding not in concerning(asked, finding.parts, 1)
        assert finding not in concerning(asked, finding.parts, 3)


def test_a_finding_is_about_every_piece_that_is_like_the_one_it_was_found_in():
    stack = [Clear(0.5), Level("low", front=Rail(80, joint=HalfLap()), ends=80), Clear()]
    layout = lay_out(stand(quantity=3, stack=stack, measured={"2/front left leg.width": 59}))
    lands = {f.pieces for f in layout.findings if f.kind == "short land"}
    assert lands == {(1, 3), (2,)}


def test_faces_are_called_by_where_they_look():
    legs = {part.identity: part for part in lay_out(stand()).legs()}
    named = {face: legs["back right leg"].face_name(face) for face in ("back", "front", "right", "left")}
    assert named == {"back": "outer face", "front": "inner face", "right": "end face", "left": "bay face"}
    assert legs["front left leg"].face_called("end face") == "left"
