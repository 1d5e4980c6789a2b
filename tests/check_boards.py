"""The smallest frames that trip the checks of what levels carry, each with a neighbour that does not. [mm]

The plain stand: legs of 70 along and 45 deep, rails 22 thick and 70 wide from 200 to 270, 1200 by 500 over the legs.
"""

import attrs
from boarded import BATTEN, POST, RAIL, SLAT

from benchjoin import Bearers, Boards, Clear, Frame, Leg, Level, Notch, Stock


def carrying(*runs, **more):
    """The stand, with runs on its only level."""
    sides = {"front": 70, "back": 70, "ends": 70, **more}
    return Frame(
        name="Stand",
        length=1200,
        depth=500,
        front=Leg(POST, height=600),
        back=Leg(POST, height=600),
        rail_stock=RAIL,
        stack=[Clear(200), Level("shelf", carries=runs, **sides)],
        tape="1 mm",
    )


UP = Frame(
    name="Slatted front",
    length=1200,
    depth=500,
    front=Leg(POST, height=600),
    back=Leg(POST, height=600),
    rail_stock=RAIL,
    stack=[
        Clear(100),
        Level(
            "low",
            front=70,
            carries=[Boards(SLAT, run="up", side="front", face="inner", to="high", count=8, left=-50, right=-50)],
        ),
        Clear(),
        Level("high", front=70, back=70, ends=70),
        Clear(50),
    ],
    tape="1 mm",
)
"""Slats behind the front rails; those at both ends are cut round legs of 70 that reach 20 beside them."""
PAIR = Bearers(BATTEN, at=[400, 800])
WIDE = Stock("wide board", thickness=20, width=100)
DEEP = Stock("deep batten", thickness=20, width=90)

CASES = {
    "a bearer outside its level": (
        "rests on nothing",
        "error",
        "shelf/bearer 2",
        {"at": 230},
        ["shelf/bearer 2 rests on nothing", "shelf/front rail at 270 mm", "Put a rail or bearers under it"],
        carrying(Bearers(BATTEN, at=[400, 1400])),
        carrying(PAIR),
    ),
    "boards whose back rail stands higher": (
        "held at one end",
        "error",
        "shelf/board 1",
        {"at": 270},
        ["held only by shelf/front rail", "tips", "under its other end"],
        carrying(Boards(SLAT, run="across", count=5, left=-80, right=-80), back=100),
        carrying(Boards(SLAT, run="across", count=5, left=-80, right=-80)),
    ),
    "a notch deeper than its rail": (
        "cut in two",
        "error",
        "shelf/front rail",
        {"start": 390, "end": 410},
        ["nothing is left of it from 390 mm to 410 mm", "shelf/bearer 1", "less deep"],
        carrying(Bearers(DEEP, at=[400], joint=Notch())),
        carrying(Bearers(DEEP, at=[400], joint=Notch(60))),
    ),
    "a leg through the middle of a board": (
        "leg through a board",
        "error",
        "shelf/board 1",
        {"before": 30, "after": 25},
        ["front left leg goes through shelf/board 1", "30 mm and 25 mm", "Change the count"],
        carrying(PAIR, Boards(WIDE, count=3, front=30)),
        carrying(PAIR, Boards(WIDE, count=3)),
    ),
    "a board with little left beside a leg": (
        "thin beside a leg",
        "warning",
        "shelf/board 1",
        {"left": 15},
        ["only 15 mm of it is left beside the leg", "at least 20 mm"],
        carrying(PAIR, Boards(SLAT, count=5)),
        carrying(PAIR, Boards(SLAT, count=5, within="legs")),
    ),
    "boards ripped from too narrow stock": (
        "wider than its stock",
        "error",
        "shelf/board 1",
        {"width": 62.5, "stock": 60},
        ["has to be 62.5 mm wide", "its stock is 60 mm", "one board more"],
        carrying(PAIR, Boards(SLAT, count=8, remainder="rip", within="legs")),
        carrying(PAIR, Boards(SLAT, count=9, remainder="rip", within="legs")),
    ),
    "gaps that come out less than the least": (
        "gap too narrow",
        "error",
        "shelf/board 1",
        {"gap": 20, "least": 25, "over": 30},
        ["leave gaps of 20 mm", "25 mm is the least", "30 mm too much in all", "Take 6 boards"],
        carrying(PAIR, Boards(Stock("board", thickness=20, width=380 / 7), count=7, gap=25, within="legs")),
        carrying(PAIR, Boards(SLAT, count=6, gap=25, within="legs")),
    ),
    "narrow boards that leave room for another": (
        "another count",
        "note",
        "shelf/board 1",
        {"gap": 42.4},
        ["7 boards would go in now", "stays as drawn"],
        attrs.evolve(
            carrying(PAIR, Boards(SLAT, gap=15, within="legs")),
            measured={f"shelf/board {number}.width": 48 for number in range(1, 7)},
        ),
        carrying(PAIR, Boards(SLAT, gap=15, within="legs")),
    ),
    "bearers that stand higher than the end rails": (
        "supports at unequal height",
        "warning",
        "shelf/board 1",
        {"down": 4},
        ["shelf/left rail under it ends at 270 mm", "4 mm lower", "Shim it"],
        carrying(Bearers(BATTEN, at=[400, 800], lowered=-4), Boards(SLAT, count=5)),
        carrying(PAIR, Boards(SLAT, count=5)),
    ),
    "boards that are free too far": (
        "long span",
        "warning",
        "shelf/board 2",
        {"span": 1156, "most": 500},
        ["is free over 1156 mm, 58 times its 20 mm of height", "every 500 mm"],
        carrying(Boards(SLAT, count=5)),
        carrying(PAIR, Boards(SLAT, count=5)),
    ),
}
