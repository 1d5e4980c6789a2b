"""Joint details: every kind of joint once, at a standard scale, with three views, depths, heights and fit."""

from __future__ import annotations

import re

import attrs
import pytest
from designs import DESIGNS
from samples import SAMPLES

from benchjoin import alter, lay_out
from benchjoin.drafting.primitives import Line, Text
from benchjoin.drawings.detail import joint_details
from benchjoin.drawings.page import House
from benchjoin.trade.drawing import SCALES

FRAMES = {**DESIGNS, **SAMPLES}
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
    assert sum(counts) + alone == sum(joint.piece == 1 for joint in layout.joints)


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
                x, y, z = cut.box.size()
                assert f"{read(y if cut.face in ('front', 'back') else x)} deep" in words
                if cut.part == joint.leg:
                    assert read(z) in words


def test_depths_of_the_gallery_by_hand():
    assert "Cut into the leg 5/8 deep; notches 2 3/4, 3 1/2, 4 1/4, 5 1/4 high" in joined(
        joint_details(lay_out(DESIGNS["bench"]))
    )
    assert "Cut into the leg 10 deep; rail 10 deep" in joined(joint_details(lay_out(DESIGNS["rack"])))


def test_fit_is_told_or_that_there_is_none():
    assert "without fit" in joined(joint_details(lay_out(DESIGNS["bench"])))
    loose = lay_out(alter(DESIGNS["bench"], {"fit": "1/16 in"}))
    assert "with 1/16 in of fit" in joined(joint_details(loose))
    assert "notches 2 13/16, 3 9/16, 4 5/16, 5 1/4 high" in joined(joint_details(loose))  # the last one is open above


def views_of(sheets, number=1):
    """The three views of a joint by name: the middle of each name on the page."""
    (head,) = (t for t in headings(sheets) if t.string.startswith(f"Joint {number}:"))
    sheet = next(sheet for sheet in sheets if head in sheet.drawing)
    below = [t for t in texts([sheet]) if t.anchor == "middle" and t.string.startswith("from ") and t.at[1] < head.at[1]]
    right = [t for t in below if t.at[0] > head.at[0]]
    return {t.string.removeprefix("from the ").removeprefix("from "): t.at for t in sorted(right, key=order)[:3]}


def order(text):
    return (-text.at[1] // 200, text.at[0])


@pytest.mark.parametrize("house, way", [(THIRD, 1), (FIRST, -1)])
def test_views_stand_where_the_projection_puts_them(house, way):
    layout = lay_out(alter(DESIGNS["bench"], {"ends": None} if False else {"quantity": 1}))
    sheets = joint_details(layout, house=house)
    views = views_of(sheets)
    front, side, above = views["front"], views["right"], views["above"]
    assert (side[0] - front[0]) * way > 0  # third angle: what is seen from the right stands on the right
    assert (above[1] - front[1]) * way > 0


@pytest.mark.parametrize("house", [THIRD, FIRST])
def test_the_end_is_seen_from_the_side_to_which_the_rail_runs_off(layout, house):
    """The rail's cut end is thin, since it only ends there because the view does; the eye looks at it."""
    sheets = joint_details(layout, house=house)
    for sheet in sheets:
        names = {t.string for t in texts([sheet]) if t.string.startswith("from the ")}
        assert names  # each block has its own
    first = next(joint for joint in layout.joints if joint.piece == 1)
    leg, rail = layout.part(f"1/{first.leg}").blank, layout.part(f"1/{first.rail}").blank
    slot = next(slot for slot in layout.frame.rails() if slot.name == first.rail)
    looks = {"front": "back", "back": "front"}.get(slot.side, slot.side) if slot.rail.face == "inner" else slot.side
    if looks not in STEP_RIGHT:
        return
    axis, sign = {"front": (0, 1), "back": (0, -1), "left": (1, -1), "right": (1, 1)}[looks]
    right, left = rail.high[axis] - leg.high[axis], leg.low[axis] - rail.low[axis]
    if sign < 0:
        right, left = left, right
    side = STEP_RIGHT[looks] if right >= left else {v: k for k, v in STEP_RIGHT.items()}[looks]
    head = next(t for t in headings(sheets) if t.string.startswith("Joint 1:"))
    sheet = next(sheet for sheet in sheets if head in sheet.drawing)
    beside = [t.string for t in texts([sheet]) if t.string == f"from the {side}"]
    assert beside


def test_a_line_is_thin_where_leg_or_rail_go_on():
    sheet = joint_details(lay_out(DESIGNS["bench"]))[0]
    kinds = {item.kind for item in sheet.drawing if isinstance(item, Line)}
    assert {"visible", "thin", "hidden"} <= kinds


def test_a_finding_about_a_joint_stands_beside_it():
    layout = lay_out(DESIGNS["stand"])
    warned = next(finding for finding in layout.findings if "boot rack/left rail" in finding.parts)
    words = joined(joint_details(layout))
    assert any(warned.sentence[:60] in words for _ in (0,))
    assert attrs.evolve(warned, sentence="nothing").sentence != warned.sentence
