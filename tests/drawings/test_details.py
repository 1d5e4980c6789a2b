"""Joint details: every kind of joint once, at a standard scale, with three views, depths, heights and fit."""

from __future__ import annotations

import re

import pytest
from designs import PLAIN_DESIGNS as DESIGNS
from designs import PLAIN_SAMPLES as SAMPLES

from benchjoin import alter, lay_out
from benchjoin.drafting.primitives import Line, Text
from benchjoin.drawings.making.house import House
from benchjoin.drawings.views.joint.pages import joint_details
from benchjoin.frame.faces import AXIS
from benchjoin.trade.standards import SCALES

FRAMES = {**DESIGNS, **SAMPLES}
MARK = re.compile(r"[A-Z]+\d+")
THIRD, FIRST = House(projection="third angle"), House(projection="first angle")
STEP_RIGHT = {"front": "right", "right": "back", "back": "left", "left": "front"}


def texts(sheets):
    return [item for sheet in sheets for item in sheet.drawing if isinstance(item, Text)]


def headings(sheets):
    return [t for t in texts(sheets) if t.bold and t.string.startswith("Joint ")]


def joined(sheets):
    return " ".join(t.string for t in texts(sheets))


@pytest.fixture(scope="module", params=FRAMES)
def layout(request):
    return lay_out(FRAMES[request.param])


def test_details_cover_all_joints_of_a_piece(layout):
    sheets = joint_details(layout)
    counts = [int(n) for n in re.findall(r"(\d+) alike in each piece", joined(sheets))]
    alone = len(headings(sheets)) - len(counts)
    if len(layout.alike) == 1:
        assert sum(counts) + alone == sum(joint.piece == 1 for joint in layout.joints)


def test_where_pieces_differ_details_say_how_many_each_has():
    layout = lay_out(FRAMES["measured batch"])
    told = joined(joint_details(layout))
    for piece in (1, 2, 3):
        counts = [int(n) for n in re.findall(rf"[Pp]iece {piece} has (\d+)", told)]
        assert sum(counts) == sum(joint.piece == piece for joint in layout.joints)


def test_details_are_drawn_at_a_standard_scale_and_named_in_words(layout):
    sheets = joint_details(layout)
    views = [t.string for t in texts(sheets) if t.string.startswith("from ") and t.anchor == "middle"]
    assert len(views) == 3 * len(headings(sheets))
    assert views.count("from above") == len(headings(sheets))
    for sheet in sheets:
        (scale,) = (scale for scale in SCALES if scale.label == sheet.scale)
        assert 0.1 <= scale.ratio <= 0.5


def test_every_depth_and_height_of_a_notch_is_told(layout):
    words = joined(joint_details(layout))
    read = layout.frame.tape.read
    for joint in layout.joints:
        if joint.piece == 1:
            for cut in joint.cuts:
                size, host = cut.box.size(), layout.part(joint.host)
                assert f"{read(size[AXIS[cut.face]])} deep" in words
                if cut.part == joint.host:
                    assert read(size[host.slot.axes[0]]) in words


def test_depths_of_the_gallery_by_hand():
    """A leg of 1 5/16 less 5/8 is 11/16; a post of 45 less 10 is 35, a batten of 20 less 10 is 10."""
    told = joined(joint_details(lay_out(DESIGNS["bench"])))
    assert "Cut into the leg 5/8 deep, 11/16 left" in told
    assert "h = 2 3/4 at A5; h = 3 1/2 at A9, A10, A13; h = 4 1/4 at A6; h = 5 1/4 at A14" in told
    assert "Cut into the leg 10 deep, 35 left; rail 10 deep, 10 left" in joined(joint_details(lay_out(DESIGNS["rack"])))


def test_what_is_left_of_the_leg_is_a_size_on_the_view_from_above():
    figures = [t.string for t in texts(joint_details(lay_out(DESIGNS["bench"]))) if t.turn]
    assert "11/16" in figures
    assert "h" in figures  # four heights: each is told in words


def test_leg_and_rail_carry_their_marks_on_every_view(layout):
    sheets = joint_details(layout)
    for number, rail, leg, _ in told_of(sheets):
        del number
        assert MARK.fullmatch(rail)
        assert MARK.fullmatch(leg)
    marks = [t.string for t in texts(sheets) if t.bold and MARK.fullmatch(t.string)]
    assert len(marks) > 3 * len(headings(sheets))  # of six, the covered ones may have no room


def test_wood_that_goes_on_ends_in_a_break_line():
    sheet = joint_details(lay_out(DESIGNS["bench"]))[0]
    thin = [line for line in sheet.drawing if isinstance(line, Line) and line.kind == "thin"]
    broken = [line for line in thin if len(line.points) == 6]
    assert len(broken) >= 6  # above and below the leg, and the rail, on each view


def test_a_leg_is_shown_with_its_whole_section():
    """The wide face of the bench's leg, 3 1/4 in, at 1/4 of its size: 20.6 mm."""
    sheet = joint_details(lay_out(DESIGNS["bench"]))[0]
    scale = next(scale.ratio for scale in SCALES if scale.label == sheet.scale)
    ends = [line.points for line in sheet.drawing if isinstance(line, Line) and len(line.points) == 6]
    widths = {round(abs(p[-1][0] - p[0][0]) - 2.4, 1) for p in ends}
    assert round(3.25 * 25.4 * scale, 1) in widths


def test_fit_is_told_or_that_there_is_none():
    assert "without fit" in joined(joint_details(lay_out(DESIGNS["bench"])))
    loose = lay_out(alter(DESIGNS["bench"], {"fit": "1/16 in"}))
    assert "with 1/16 in of fit" in joined(joint_details(loose))
    # those at the legs' tops are open above and take no fit: 3 1/2 on the front legs, 5 1/4
    heights = re.findall(r"h = ([\d /]+) at", joined(joint_details(loose)))
    assert heights == ["2 13/16", "3 1/2", "3 9/16", "4 5/16", "5 1/4"]


@pytest.mark.parametrize("house, way", [(THIRD, 1), (FIRST, -1)])
def test_views_stand_where_the_projection_puts_them(house, way):
    sheet = joint_details(lay_out(DESIGNS["bench"]), house=house)[0]
    views = {t.string: t.at for t in texts([sheet]) if t.string in ("from the front", "from the right")}
    front, side = views["from the front"], views["from the right"]
    above = min((t.at for t in texts([sheet]) if t.string == "from above"), key=lambda at: abs(at[0] - front[0]))
    assert (side[0] - front[0]) * way > 0  # third angle: what is seen from the right stands on the right
    assert (above[1] - front[1]) * way > 0


def told_of(sheets):
    """What stands from each heading to the next: number, rail, leg, and names of the views."""
    words = " ".join(f"<{t.string}>" for t in texts(sheets))
    for block in re.split(r"(?=<Joint \d+: )", words)[1:]:
        number, rail, leg = re.match(r"<Joint (\d+): [\w-]+, (\w+) to (\w+)>", block).groups()
        yield int(number), rail, leg, set(re.findall(r"<from (?:the )?(\w+)>", block))


ALONG = {"front": (0, 1), "back": (0, -1), "left": (1, -1), "right": (1, 1)}  # which way the page's right is


@pytest.mark.parametrize("house", [THIRD, FIRST])
def test_the_end_is_seen_from_the_side_to_which_the_rail_runs_off(layout, house):
    seen = list(told_of(joint_details(layout, house=house)))
    assert sorted(number for number, *_ in seen) == list(range(1, len(seen) + 1))
    own = {part.mark: part for part in layout.parts}
    for _, rail_mark, leg_mark, views in seen:
        rail_name = own[rail_mark].identity
        leg, rail = own[leg_mark].blank, own[rail_mark].blank
        slot = next(slot for slot in layout.frame.slots() if slot.name == rail_name)
        if slot.run:
            continue  # what a level carries is no rail at a leg: it has no side to run off to
        front = next((way for way in (slot.side, slot.of.face) if way in STEP_RIGHT), "left")
        front = STEP_RIGHT[STEP_RIGHT[front]] if slot.of.face == "inner" else front
        axis, sign = ALONG[front]
        right, left = rail.high[axis] - leg.high[axis], leg.low[axis] - rail.low[axis]
        right, left = (right, left) if sign > 0 else (left, right)
        turns = 3 if left > right + 1e-6 else 1
        side = front
        for _ in range(turns):
            side = STEP_RIGHT[side]
        assert views == {front, side, "above"}, rail_name


def test_a_line_is_thin_where_leg_or_rail_go_on():
    sheet = joint_details(lay_out(DESIGNS["bench"]))[0]
    kinds = {item.kind for item in sheet.drawing if isinstance(item, Line)}
    assert {"visible", "thin", "hidden"} <= kinds


def test_a_finding_about_a_joint_stands_beside_it():
    layout = lay_out(DESIGNS["stand"])
    warned = next(finding for finding in layout.findings if "boot rack/left rail" in finding.sentence)
    words = joined(joint_details(layout))
    assert f"Warning: {warned.sentence}" in words
