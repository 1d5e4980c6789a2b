"""The sample frames and the boot-room stand against the sums a maker does with a tape, to a millionth of a micrometre.

A table gives each rail as bottom, top and length; "ends" stands for the left and the right rail, "long" for the front
and the back one, "all" for these four. Sums stand in the comments: heights from the foot, depth of a frame less its
legs, and so on, all from the rules of layout.
"""

from __future__ import annotations

from pathlib import Path
from runpy import run_path

import attrs
import pytest
from boarded import BOARDED
from by_hand import inches
from samples import SAMPLES
from topped import TOPPED

from benchjoin import lay_out

GALLERY = Path(__file__).parents[2] / "gallery"
FRAMES = {
    **SAMPLES,
    "print-room tools": run_path(str(GALLERY / "print_room_tools.py"))["tools"],
}
SIDES = {
    "all": ("front rail", "back rail", "left rail", "right rail"),
    "long": ("front rail", "back rail"),
    "ends": ("left rail", "right rail"),
}


@attrs.frozen(kw_only=True)
class Hand:
    """What a maker works out: rails (bottom, top, length), depth of notches by rail, edges of notches that are not the
    rail's own, notches a leg, places (x, y) of parts, size over everything, parts and handed parts."""

    rails: dict[str, tuple[float, float, float]]
    depths: dict[str, float]
    notches: dict[str, int]
    overall: tuple[float, float, float]
    parts: int
    handed: int = 0
    edges: dict[str, tuple[float, float]] = attrs.field(factory=dict)
    places: dict[str, tuple[tuple[float, float], tuple[float, float]]] = attrs.field(factory=dict)


def tape(*texts):
    return tuple(inches(text) for text in texts)


def row(front, back):
    """Notches of the four legs at the corners."""
    return {"front left": front, "front right": front, "back left": back, "back right": back}


HANDS = {
    "legs turned": Hand(
        # 34 - 4 = 30. The front legs are 3 1/2 deep, the back ones 1 1/2: 24 - 3 1/2 - 1 1/2 = 19.
        rails={
            "shelf/long": tape("6", "9", "48"),
            "shelf/ends": tape("6", "9", "19"),
            "top/long": tape("30", "34", "48"),
            "top/ends": tape("30", "34", "19"),
        },
        depths={"shelf/long": inches("3/4"), "top/long": inches("3/4")},
        notches=row(2, 2),
        # 48 - 1 1/2 = 46 1/2, 48 - 2 1/2 = 45 1/2, 24 - 1 1/2 = 22 1/2.
        places={
            "front left leg": (tape("0", "1 1/2"), tape("0", "3 1/2")),
            "front right leg": (tape("46 1/2", "48"), tape("0", "3 1/2")),
            "back left leg": (tape("0", "2 1/2"), tape("22 1/2", "24")),
            "back right leg": (tape("45 1/2", "48"), tape("22 1/2", "24")),
            "shelf/left rail": (tape("0", "3/4"), tape("3 1/2", "22 1/2")),
        },
        overall=tape("48", "24", "40"),
        parts=4 + 8,
    ),
    "rails inside": Hand(
        # 800 - 80 = 720; end rails 400 - 2 × 40. The inner face of a front leg is at 40, and the rail 20 thick.
        rails={"low/long": (100, 180, 1000), "low/ends": (100, 180, 320), "high/long": (720, 800, 1000)},
        depths={"low/long": 20, "high/long": 20},
        notches=row(2, 2),
        places={"low/front rail": ((0, 1000), (20, 40)), "high/back rail": ((0, 1000), (360, 380))},
        overall=(1000, 400, 800),
        parts=4 + 6,
    ),
    "planted, front through": Hand(
        # 700 - 90 = 610. Planted end rails run over the legs, 500; the front ones cover their 15 at each end: 1230.
        # The stretcher's ends: 500 - 2 × 50. Over all 1200 + 2 × 15, 500 + 2 × 15.
        rails={
            "stretcher/long": (150, 210, 1200),
            "stretcher/ends": (150, 210, 400),
            "apron/long": (610, 700, 1230),
            "apron/ends": (610, 700, 500),
        },
        depths={"stretcher/long": 15},
        notches=row(1, 1),
        places={"apron/front rail": ((-15, 1215), (-15, 0)), "apron/left rail": ((-15, 0), (0, 500))},
        overall=(1230, 530, 700),
        parts=4 + 8,
    ),
    "planted, ends through": Hand(
        # Now the end rails cover the front ones: 500 + 2 × 15.
        rails={"apron/long": (610, 700, 1200), "apron/ends": (610, 700, 530)},
        depths={},
        notches=row(0, 0),
        places={"apron/back rail": ((0, 1200), (500, 515)), "apron/right rail": ((1200, 1215), (-15, 515))},
        overall=(1230, 530, 700),
        parts=4 + 4,
    ),
    "let in part-way": Hand(
        # 30 - 3 1/2 = 26 1/2; end rails 18 - 2 × 1 1/2. A rail let in 1/4 stands 1/2 proud: 18 + 2 × 1/2 deep.
        # The fit of 1/32 opens the stretcher's notch to 7 1/2 + 1/32; at the leg's top there is nothing to open.
        rails={
            "stretcher/long": tape("5", "7 1/2", "36"),
            "seat/long": tape("26 1/2", "30", "36"),
            "seat/ends": tape("26 1/2", "30", "15"),
        },
        depths={"stretcher/long": inches("1/4"), "seat/long": inches("1/4")},
        notches=row(2, 2),
        edges={"stretcher/long": tape("5", "7 17/32")},
        places={"seat/front rail": (tape("0", "36"), (-inches("1/2"), inches("1/4")))},
        overall=tape("36", "19", "30"),
        parts=4 + 6,
    ),
    "ends in wide faces": Hand(
        # Legs 40 along, 80 deep. Outer ends stop behind the front and back rails: 400 - 2 × 18. Inner ones meet none:
        # 400. Those in the middle butt between the legs: 400 - 2 × 80, at (40 - 18) / 2 = 11.
        # From 120 to 540 there are 420; less 60, half of it to each clear: 180.
        rails={
            "outer/long": (60, 120, 900),
            "outer/ends": (60, 120, 364),
            "inner/ends": (300, 360, 400),
            "middle/front rail": (540, 600, 900),
            "middle/ends": (540, 600, 240),
        },
        depths={"outer/all": 18, "inner/ends": 18, "middle/front rail": 18},
        notches=row(4, 3),
        places={
            "front right leg": ((860, 900), (0, 80)),
            "outer/left rail": ((0, 18), (18, 382)),
            "inner/left rail": ((22, 40), (0, 400)),
            "inner/right rail": ((860, 878), (0, 400)),
            "middle/left rail": ((11, 29), (80, 320)),
            "middle/right rail": ((871, 889), (80, 320)),
        },
        overall=(900, 400, 600),
        parts=4 + 4 + 2 + 3,
        handed=4,  # each leg is notched on one end face only at the height of "outer"
    ),
    "overhangs": Hand(
        # 900 - 70 = 830; 1000 + 2 × 100; 1000 - 2 × 15; 350 - 2 × 45. The back rail starts 15 into the leg.
        rails={
            "low/long": (120, 190, 1000),
            "high/front rail": (830, 900, 1200),
            "high/back rail": (830, 900, 970),
            "high/ends": (830, 900, 260),
        },
        depths={"low/long": 20, "high/long": 20},
        notches=row(2, 2),
        places={"high/front rail": ((-100, 1100), (0, 20)), "high/back rail": ((15, 985), (330, 350))},
        overall=(1200, 350, 900),
        parts=4 + 6,
        handed=2,  # the back legs: their upper notch stops 15 from the outer end face
    ),
    "tops aligned": Hand(
        # The widest rail starts at 80, so the tops are at 180: 180 - 60 = 120; ends hang 30 lower, 150 - 40 = 110.
        # 200 above the back rail, at 380, the next one starts, which is raised 20: the shelf is at 360.
        # Crown: 1000 - 80 = 920, ends 920 - 20 = 900. End rails 400 - 2 × 40.
        rails={
            "rack/front rail": (80, 180, 800),
            "rack/back rail": (120, 180, 800),
            "rack/ends": (110, 150, 320),
            "shelf/front rail": (360, 410, 800),
            "shelf/back rail": (380, 450, 800),
            "crown/front rail": (920, 1000, 800),
            "crown/ends": (900, 960, 320),
        },
        depths={"rack/long": 20, "shelf/long": 20, "crown/front rail": 20},
        notches=row(3, 2),
        edges={  # the fit of 0.5 goes down from the common tops, up from the common bottoms
            "rack/front rail": (79.5, 180),
            "rack/back rail": (119.5, 180),
            "shelf/front rail": (360, 410.5),
            "shelf/back rail": (380, 450.5),
        },
        overall=(800, 400, 1100),
        parts=4 + 4 + 2 + 3,
    ),
    "weighed clears": Hand(
        # From the low back rail's top at 160 to 1010 there are 850; less 100 for mid, 750: one share 250, two 500.
        # 160 + 250 = 410; 510 + 500 = 1010.
        rails={
            "low/front rail": (100, 200, 700),
            "low/back rail": (100, 160, 700),
            "mid/long": (410, 510, 700),
            "high/long": (1010, 1110, 700),
        },
        depths={"low/long": 20, "mid/long": 20, "high/long": 20},
        notches=row(3, 3),
        overall=(700, 300, 1200),
        parts=4 + 6,
    ),
    "three pairs": Hand(
        # (1680 - 3 × 60) / 2 = 750: the middle pair from 810 to 870, its middle at 840. Cross rails: 500 - 2 × 40
        # where they butt, 500 - 2 × 20 where they stop behind the long ones.
        rails={
            "low/long": (100, 180, 1680),
            "low/cross rail 1": (100, 180, 420),
            "high/long": (480, 560, 1680),
            "high/cross rail 1": (480, 560, 460),
        },
        depths={"low/long": 20, "high/long": 20, "high/cross rail 1": 20},
        notches={**row(2, 2), "front middle leg 1": 3, "back middle leg 1": 3},
        places={
            "front middle leg 1": ((810, 870), (0, 40)),
            "back right leg": ((1620, 1680), (460, 500)),
            "low/cross rail 1": ((830, 850), (40, 460)),
            "high/cross rail 1": ((810, 830), (20, 480)),
        },
        overall=(1680, 500, 850),
        parts=6 + 3 + 3,
        handed=2,  # the middle legs: one end face takes the cross rail behind the long ones
    ),
    "four pairs, lapped": Hand(
        # 2000 - 4 × 45 - 2 × 400 = 1020 is left for the middle bay. Legs at 0, 445, 1510, 1955.
        # Half of 24 is 12, a quarter 6. End rails stand on the long ones: 150 + 60.
        rails={"tray/long": (150, 210, 2000), "tray/ends": (210, 270, 450), "head/long": (840, 900, 2000)},
        depths={"tray/all": 12, "head/long": 6},
        notches={
            **row(3, 3),
            "front middle leg 1": 2,
            "front middle leg 2": 2,
            "back middle leg 1": 2,
            "back middle leg 2": 2,
        },
        places={
            "front middle leg 1": ((445, 490), (0, 45)),
            "back middle leg 2": ((1510, 1555), (405, 450)),
            "tray/front rail": ((0, 2000), (0, 24)),
            "tray/right rail": ((1976, 2000), (0, 450)),
        },
        overall=(2000, 450, 900),
        parts=8 + 6,
        handed=4,  # the corner legs
    ),
    "short middle pair": Hand(
        # The middle pair from 1300 - 25 to 1300 + 25; front bays 1275 - 50 = 1225 and 1950 - 1325 = 625.
        # The top rails, 900 - 80 = 820, pass over the middle legs, which end at 700. End rails 450 - 2 × 50.
        rails={
            "plinth/front rail 1": (100, 180, 1225),
            "plinth/front rail 2": (100, 180, 625),
            "plinth/back rail": (100, 180, 2000),
            "top/long": (820, 900, 2000),
            "top/ends": (820, 900, 350),
        },
        depths={"plinth/back rail": 20, "top/long": 20},
        notches={**row(1, 2), "front middle leg 1": 0, "back middle leg 1": 1},
        places={
            "front middle leg 1": ((1275, 1325), (0, 50)),
            "plinth/front rail 1": ((50, 1275), (0, 20)),
            "plinth/front rail 2": ((1325, 1950), (0, 20)),
        },
        overall=(2000, 450, 900),
        parts=6 + 3 + 4,
    ),
    "by end rails": Hand(
        # Over the legs 400 + 42 + 30 = 472 deep, 1500 - 2 × 30 = 1440 long. The planted rail adds 18 to the depth.
        rails={
            "low/front rail": (90, 150, 1500),
            "low/back rail": (90, 150, 1440),
            "low/ends": (90, 150, 400),
            "high/long": (440, 500, 1440),
            "high/ends": (440, 500, 400),
        },
        depths={"low/long": 18, "high/back rail": 18},
        notches=row(1, 2),
        places={
            "front left leg": ((0, 70), (0, 42)),
            "back right leg": ((1370, 1440), (442, 472)),
            "low/front rail": ((-30, 1470), (0, 18)),
            "high/front rail": ((0, 1440), (-18, 0)),
        },
        overall=(1500, 490, 500),
        parts=4 + 8,
    ),
    "over all": Hand(
        # Over the legs 30 - 2 × 3/4 and 20 - 2 × 3/4; end rails run through over all the depth. 28 - 3 = 25.
        rails={"apron/long": tape("25", "28", "28 1/2"), "apron/ends": tape("25", "28", "20")},
        depths={},
        notches=row(0, 0),
        places={
            "back right leg": (tape("27", "28 1/2"), tape("17", "18 1/2")),
            "apron/left rail": ((-inches("3/4"), 0), (-inches("3/4"), inches("19 1/4"))),
        },
        overall=tape("30", "20", "28"),
        parts=4 + 4,
    ),
    "left and right differ": Hand(
        # Low is a band from 100 to 100 + 90 + 50 = 240; 150 over it is 390. The left lap: 390 + 80, half of 20 deep.
        # Butted: 350 - 2 × 40. The right rail is let in 12 of 20 and stands 8 proud; the planted one 20.
        rails={
            "low/long": (100, 160, 900),
            "low/left rail": (100, 170, 270),
            "low/right rail": (190, 240, 350),
            "high/long": (390, 450, 900),
            "high/left rail": (470, 530, 350),
            "high/right rail": (390, 450, 270),
        },
        depths={"low/long": 20, "low/right rail": 12, "high/front rail": 20, "high/left rail": 10},
        notches={"front left": 3, "front right": 3, "back left": 2, "back right": 2},
        places={
            "low/left rail": ((0, 24), (40, 310)),
            "low/right rail": ((888, 908), (0, 350)),
            "high/back rail": ((0, 900), (350, 370)),
            "high/left rail": ((0, 20), (0, 350)),
        },
        overall=(908, 370, 700),
        parts=4 + 8,
        handed=0,  # no leg is the mirror image of another
    ),
    "staggered": Hand(
        # Low: 100 to 170, the ends 30 over that: 200 to 270. High: 900 - 70 = 830, the ends 100 lower.
        rails={
            "low/long": (100, 170, 1400),
            "low/ends": (200, 270, 600),
            "high/long": (830, 900, 1400),
            "high/ends": (730, 800, 600),
        },
        depths={"low/all": 20, "high/all": 20},
        notches=row(4, 4),
        edges={  # the fit of 1 goes up; over the back leg's top, at 900, there is nothing to open
            "low/long": (100, 171),
            "low/ends": (200, 271),
            "high/front rail": (830, 901),
            "high/back rail": (830, 900),
            "high/ends": (730, 801),
        },
        overall=(1400, 600, 1000),
        parts=4 + 8,
        handed=4,
    ),
    "ends through": Hand(
        # The long rails stop behind the end rails: 800 - 2 × 20.
        rails={"only/long": (200, 280, 760), "only/ends": (200, 280, 500)},
        depths={"only/all": 20},
        notches=row(2, 2),
        places={"only/front rail": ((20, 780), (0, 20)), "only/left rail": ((0, 20), (0, 500))},
        overall=(800, 500, 400),
        parts=4 + 4,
        handed=0,  # the square legs lose 20 all along two neighbouring faces: a mirror image is the same wood
    ),
    "boot-room stand": Hand(
        # 1800 - 3 × 70 - 1000 = 590 for the open bay; the middle pair from 1070 to 1140, its middle at 1105.
        # End rails stop behind the long ones: 420 - 2 × 18. Cross rails: 420 - 2 × 42. Seat: 450 - 70 = 380.
        # Shelf: 1680 - 70 = 1610; hooks end 120 below it, at 1490, and start at 1395.
        rails={
            "boot rack/long": (110, 180, 1800),
            "boot rack/ends": (110, 180, 384),
            "boot rack/cross rail 1": (110, 180, 336),
            "seat/long": (380, 450, 1800),
            "seat/ends": (380, 450, 384),
            "seat/cross rail 1": (380, 450, 336),
            "hooks/back rail": (1395, 1490, 1800),
            "shelf/back rail": (1610, 1680, 1800),
        },
        depths={"boot rack/all": 18, "seat/all": 18, "hooks/back rail": 18, "shelf/back rail": 18},
        notches={**row(4, 6), "front middle leg 1": 2, "back middle leg 1": 4},
        places={
            "front middle leg 1": ((1070, 1140), (0, 42)),
            "back right leg": ((1730, 1800), (378, 420)),
            "seat/left rail": ((0, 18), (18, 402)),
            "seat/right rail": ((1782, 1800), (18, 402)),
            "seat/cross rail 1": ((1096, 1114), (42, 378)),
        },
        overall=(1800, 420, 1680),
        parts=6 + 12,
        handed=4,
    ),
    "single row": Hand(
        # 80 + 60 = 140, 700 - 80 = 620; 620 - 140 - 70 = 410, half of it 205: 140 + 205 = 345. The mid rail is lapped
        # by half of 20; the cleat is planted behind the uprights, which are 40 deep: 40 + 20.
        rails={
            "low/front rail": (80, 140, 900),
            "mid/front rail": (345, 415, 900),
            "cleat/front rail": (620, 700, 900),
        },
        depths={"low/front rail": 20, "mid/front rail": 10},
        notches={"front left": 2, "front middle leg 1": 2, "front right": 2},
        # (900 - 3 × 60) / 2 = 360: 60 + 360 = 420, 480 + 360 = 840.
        places={
            "front left leg": ((0, 60), (0, 40)),
            "front middle leg 1": ((420, 480), (0, 40)),
            "front right leg": ((840, 900), (0, 40)),
            "low/front rail": ((0, 900), (0, 20)),
            "mid/front rail": ((0, 900), (0, 20)),
            "cleat/front rail": ((0, 900), (40, 60)),
        },
        overall=(900, 60, 700),
        parts=3 + 3,
    ),
    "single row, turned": Hand(
        # The middle upright has its middle at 15, 3/4 wide: 14 5/8 to 15 3/8. 14 5/8 - 3/4 = 13 7/8, and
        # 40 - 3/4 - 15 3/8 = 23 7/8. It is 24 high, so the high rail, 28 to 30, passes over it.
        rails={
            "low/front rail 1": tape("4", "7", "13 7/8"),
            "low/front rail 2": tape("4", "7", "23 7/8"),
            "high/front rail": tape("28", "30", "40"),
        },
        depths={"high/front rail": inches("3/4")},
        notches={"front left": 1, "front middle leg 1": 0, "front right": 1},
        # The middle upright is 2 deep: (2 - 3/4) / 2 = 5/8. The inner face of the others lies at 2 1/2.
        places={
            "front left leg": (tape("0", "3/4"), tape("0", "2 1/2")),
            "front middle leg 1": (tape("14 5/8", "15 3/8"), tape("0", "2")),
            "front right leg": (tape("39 1/4", "40"), tape("0", "2 1/2")),
            "low/front rail 1": (tape("3/4", "14 5/8"), tape("5/8", "1 3/8")),
            "low/front rail 2": (tape("15 3/8", "39 1/4"), tape("5/8", "1 3/8")),
            "high/front rail": (tape("0", "40"), tape("1 3/4", "2 1/2")),
        },
        overall=tape("40", "2 1/2", "30"),
        parts=3 + 3,
    ),
    "print-room tools": Hand(
        # 60 + 70 = 130; 1200 - 90 = 1110, less 60 and 90: 960. 960 - 130 - 2 × 70 = 690, a third of it 230.
        rails={
            "wall strip/front rail": (60, 130, 1400),
            "spatulas/front rail": (360, 430, 1400),
            "brayers/front rail": (660, 730, 1400),
            "squeegees/front rail": (960, 1050, 1400),
            "wall cleat/front rail": (1110, 1200, 1400),
        },
        depths={
            "wall strip/front rail": 20,
            "spatulas/front rail": 20,
            "brayers/front rail": 20,
            "squeegees/front rail": 10,
            "wall cleat/front rail": 20,
        },
        notches={"front left": 5, "front middle leg 1": 5, "front right": 5},
        # (1400 - 3 × 70) / 2 = 595: 70 + 595 = 665. What is let in flush at the wall: 45 - 20 = 25.
        places={
            "front middle leg 1": ((665, 735), (0, 45)),
            "brayers/front rail": ((0, 1400), (0, 20)),
            "wall strip/front rail": ((0, 1400), (25, 45)),
        },
        overall=(1400, 45, 1200),
        parts=2 * (3 + 5),
    ),
}


def near(value):
    return pytest.approx(value, abs=1e-9)


def spread(table):
    """The table with every rail by its own name."""
    found = {}
    for name, entry in table.items():
        level, _, side = name.partition("/")
        found.update({f"{level}/{one}": entry for one in SIDES.get(side, (side,))})
    return found


@pytest.fixture(scope="module", params=HANDS)
def laid(request):
    return lay_out(FRAMES[request.param]), HANDS[request.param]


def rails(layout):
    return {part.identity: part for part in layout.piece(1) if part.role == "rail"}


def legs(layout):
    return {part.identity: part for part in layout.piece(1) if part.role == "leg"}


def test_rails_stand_at_the_heights_the_tape_says_and_are_as_long(laid):
    layout, hand = laid
    found = {name: (part.blank.low[2], part.blank.high[2], part.length) for name, part in rails(layout).items()}
    assert found == {name: tuple(map(near, entry)) for name, entry in spread(hand.rails).items()}


def test_notches_are_as_deep_as_their_rails_are_let_in(laid):
    layout, hand = laid
    found = {}
    for leg in legs(layout).values():
        for notch in leg.notches:
            found.setdefault(notch.rail, []).append(notch.depth)
    by_hand = spread(hand.depths)
    assert set(found) == set(by_hand)
    for rail, depths in found.items():
        assert depths == [near(by_hand[rail])] * len(depths), rail


def test_each_leg_has_as_many_notches(laid):
    layout, hand = laid
    by_hand = {name if " leg" in name else f"{name} leg": count for name, count in hand.notches.items()}
    assert {name: len(leg.notches) for name, leg in legs(layout).items()} == by_hand


def test_a_notch_is_its_rail_wide_but_for_the_fit(laid):
    layout, hand = laid
    heights = {name: entry[:2] for name, entry in spread(hand.rails).items()} | spread(hand.edges)
    for name, leg in legs(layout).items():
        for notch in leg.notches:
            assert (notch.bottom, notch.top) == tuple(map(near, heights[notch.rail])), (name, notch.rail)


def test_parts_stand_where_the_tape_says(laid):
    layout, hand = laid
    for name, (x, y) in hand.places.items():
        box = layout.part(name).blank
        assert (box.low[0], box.high[0]) == tuple(map(near, x)), name
        assert (box.low[1], box.high[1]) == tuple(map(near, y)), name


def test_it_is_as_large_over_everything(laid):
    layout, hand = laid
    assert layout.overall() == tuple(map(near, hand.overall))


def test_parts_and_handed_parts_are_counted(laid):
    layout, hand = laid
    assert len(layout.parts) == hand.parts
    hands = [part.handed for part in layout.parts]
    assert (hands.count("left"), hands.count("right")) == (hand.handed / 2, hand.handed / 2)


def test_it_can_be_built(laid):
    assert laid[0].errors() == ()


def test_every_sample_has_a_table():
    told_below = {"measured batch", "honey bench"}  # its pieces differ; three_weekends and the designs tell of it
    assert set(FRAMES) - set(HANDS) == {*told_below, *BOARDED, *TOPPED}  # by hand in test_boards.py and test_tops.py


@pytest.fixture(scope="module")
def stools():
    return lay_out(SAMPLES["measured batch"])


class TestMeasuredBatch:
    """Seat: the front rail ends at 450 and measures 69, in the third piece 66, so the level starts at 381 or 384, and
    the rails of 70 that share its bottom end at 451 or 454. Ends: 320 - 2 × 40, in the second piece on the left 320 -
    40 - 38."""

    @pytest.mark.parametrize("piece, bottom", [(1, 381), (2, 381), (3, 384)])
    def test_the_seat_starts_where_its_measured_front_rail_does(self, stools, piece, bottom):
        for side, top in (("front", 450), ("back", bottom + 70), ("left", bottom + 70), ("right", bottom + 70)):
            box = stools.part(f"{piece}/seat/{side} rail").blank
            assert (box.low[2], box.high[2]) == (near(bottom), near(top)), side
        assert stools.leg("front left", piece).notches[1].bottom == near(bottom)
        assert stools.leg("back left", piece).notches[1].bottom == near(bottom)
        assert stools.overall(piece) == (near(400), near(320), near(bottom + 70))

    @pytest.mark.parametrize("piece", [1, 2, 3])
    def test_the_lower_level_stays_where_it_was(self, stools, piece):
        for side in ("front", "back", "left", "right"):
            box = stools.part(f"{piece}/low/{side} rail").blank
            assert (box.low[2], box.high[2]) == (near(80), near(130))

    def test_the_leg_that_measured_smaller_keeps_its_outer_faces(self, stools):
        box = stools.leg("back left", 2).blank
        assert box.low == (near(0), near(320 - 38), near(0))
        assert box.high == (near(58), near(320), near(450))
        assert stools.leg("back left", 1).blank.low == (near(0), near(280), near(0))

    @pytest.mark.parametrize("piece, left", [(1, 240), (2, 242), (3, 240)])
    def test_the_end_rail_beside_it_is_longer(self, stools, piece, left):
        for level in ("low", "seat"):
            assert stools.part(f"{piece}/{level}/left rail").length == near(left)
            assert stools.part(f"{piece}/{level}/right rail").length == near(240)

    def test_the_rail_that_measured_thinner_is_flush_outside(self, stools):
        box = stools.part("low/left rail").blank
        assert (box.low[0], box.high[0]) == (near(0), near(19))

    def test_thirty_six_parts_of_which_none_is_handed(self, stools):
        assert len(stools.parts) == 3 * 12
        assert {part.handed for part in stools.parts} == {""}
