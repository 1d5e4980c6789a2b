"""Frames that trip the checks of what lifts out, of bins and of shaped edges: `from check_tops import TOP_CASES`. [mm]

Worked by hand on one small bench: legs of 40 × 40 and 500 high, 1000 by 400 over them, rails of 20 × 60 let in flush,
end rails between the legs, the top's rails flush with them: their tops are at 500, their inner faces at 20 and 380.
"""

import attrs

from benchjoin import Arc, Bin, Boards, Clear, Frame, Ledger, Leg, Level, Ogee, Panel, Rail, Scallop, Stock, Top

POST = Stock("post", thickness=40, width=40)
SLAT = Stock("slat", thickness=20, width=50)
WIDE = Stock("wide board", thickness=20, width=90)
LATH = Stock("lath", thickness=20, width=30)
LID = Panel(400, boards=Boards(SLAT, run="across", gap=10), cleats=LATH)
SHORT = Boards(SLAT, run="across", gap=10, front=-21, back=-21)
FIXED = Boards(SLAT, run="across", gap=10)


def bench(*carries, front=60, back=60, height=500, flush="front leg top", bins=(), shelf=(), over=(), **more):
    """The bench with something on its top; over holds levels above it, then the back legs are 900 high."""
    top = Level("top", front=front, back=back, ends=60, flush=flush, carries=carries, **more)
    return Frame(
        name="Bench",
        length=1000,
        depth=400,
        front=Leg(POST, height=height),
        back=Leg(POST, height=900),
        rail_stock=Stock("rail", thickness=20),
        stack=[Clear(100), Level("shelf", front=60, back=60, ends=60, carries=shelf), Clear(), top, *over],
        bins=bins,
        tape="1 mm",
    )


def top(lid=LID, **more):
    return bench(Top([FIXED, lid, FIXED]), **more)


SHELF = [Boards(Stock("shelf slat", thickness=30, width=45), run="across", gap=10)]
UP = Boards(SLAT, run="up", side="front", gap=5, to="top", name="front slat")
COVERED = Panel(400, boards=Boards(SLAT, run="across", gap=10), cleats=LATH, covers="tub")
TUB = Bin("tub", length=300, depth=250, height=200, on="shelf")
OVER = [Clear(), Level("rail", back=60, flush="back leg top")]
CROSSED = attrs.evolve(
    top(attrs.evolve(LID, width=620)),
    bays=[Clear(), Clear()],
    stack=[
        Clear(100),
        Level("shelf", front=60, back=60, ends=60),
        Clear(),
        Level(
            "top",
            front=60,
            back=60,
            ends=60,
            cross=60,
            flush="front leg top",
            carries=[Top([Panel(boards=FIXED, cleats=LATH)])],
        ),
    ],
)


def shaped(edge, **more):
    return bench(front=Rail(60, lower_edge=edge, **more))


TOP_CASES = {
    "a board that nothing of its panel holds": (
        "loose board",
        "error",
        "top/panel 1",
        {},
        ["top/panel 1 board 1", "would stay behind"],
        CROSSED,
        top(),
    ),
    "a panel with short bearing": (
        "short bearing",
        "error",
        "top/panel 1",
        {"bearing": 8.0, "least": 10.0},
        ["pushed away from top/front rail", "rests on it by 8 mm, and 10 mm is the least"],
        bench(Top([FIXED, attrs.evolve(LID, ease=12), FIXED])),
        top(),
    ),
    "a panel that rests on nothing": (
        "rests on nothing",
        "error",
        "top/panel 1",
        {},
        ["rests on nothing", "Put ledgers, bearers or rails under its ends"],
        bench(
            Top(
                [Panel(boards=Boards(SLAT, run="across", gap=10, front=-21, back=-21), cleats=LATH)],
                left=-30,
                right=-30,
            )
        ),
        top(),
    ),
    "a panel that only one side carries": (
        "held at one end",
        "error",
        "top/panel 1",
        {},
        ["rests only on top/front rail", "Support both ends"],
        top(back=90),
        bench(Ledger(LATH, on="back rail"), Top([FIXED, LID, FIXED]), back=90),
    ),
    "a panel under a rail, between legs": (
        "does not come out",
        "error",
        "top/panel 1",
        {},
        ["on its way up it meets rail/front rail and rail/back rail", "Raise or leave out"],
        bench(
            Top([Panel(boards=FIXED, cleats=LATH)]),
            height=900,
            flush=None,
            top=500,
            over=[Clear(), Level("rail", front=60, back=60, top=900)],
        ),
        top(over=OVER),
    ),
    "a panel that is drawn out to the front": (
        "way out",
        "note",
        "top/panel 1",
        {"lift": 25.0},
        ["is lifted 25 mm and drawn out to the front"],
        top(over=OVER),
        top(),
    ),
    "a bin that meets a rail": (
        "bin meets wood",
        "error",
        "tub",
        {"x": 300.0, "y": 20.0, "z": 60.0},
        ["tub stands where", "300 mm along, 20 mm deep and 60 mm high", "take a smaller one"],
        top(COVERED, bins=[attrs.evolve(TUB, depth=400, height=400)], shelf=SHELF),
        top(COVERED, bins=[TUB], shelf=SHELF),
    ),
    "a bin that stands on nothing": (
        "bin rests on nothing",
        "error",
        "tub",
        {"at": 160.0},
        ["has nothing under both sides of its middle at 160 mm"],
        top(COVERED, bins=[TUB]),
        top(COVERED, bins=[TUB], shelf=SHELF),
    ),
    "a bin that hangs from nothing": (
        "bin rests on nothing",
        "error",
        "tub",
        {"at": 500.0},
        ["hangs from nothing at both ends at 500 mm"],
        bench(Top([FIXED, Clear(400), FIXED]), bins=[attrs.evolve(TUB, on="top", rim=10)]),
        bench(Top([FIXED, Clear(310), FIXED], supports=LATH), bins=[attrs.evolve(TUB, on="top", rim=20, length=280)]),
    ),
    "a bin larger than its opening": (
        "bin larger than its opening",
        "error",
        "tub",
        {"opening length": 383.0, "opening depth": 360.0},
        ["the opening under its lid is 383 mm by 360 mm, the bin 390 mm by 250 mm", "a wider panel"],
        bench(Top([FIXED, COVERED, FIXED], supports=LATH), bins=[attrs.evolve(TUB, length=390)], shelf=SHELF),
        bench(Top([FIXED, COVERED, FIXED], supports=LATH), bins=[TUB], shelf=SHELF),
    ),
    "what is known of a bin": (
        "bin",
        "note",
        "tub",
        {"opening length": 383.0, "opening depth": 360.0},
        ["with 110 mm from its rim to the lid"],
        bench(Top([FIXED, COVERED, FIXED], supports=LATH), bins=[TUB], shelf=SHELF),
        top(),
    ),
    "a bin under a fixed top": (
        "bin does not come out",
        "error",
        "tub",
        {},
        ["on its way it meets", "cover it with a panel that lifts off"],
        bench(
            FIXED,
            bins=[attrs.evolve(TUB, height=300)],
            shelf=[*SHELF, Boards(SLAT, run="up", side="front", gap=5, to="top", name="front slat")],
        ),
        top(COVERED, bins=[TUB], shelf=SHELF),
    ),
    "a board on one rail": (
        "carried along one edge",
        "error",
        "rail/board 1",
        {},
        ["is carried by rail/back rail along one edge only, and turns over it", "brackets"],
        bench(over=[Clear(), Level("rail", back=60, top=800, carries=[Boards(WIDE, count=1, front=-305, back=-5)])]),
        bench(over=[Clear(), Level("rail", back=60, top=800, carries=[Boards(WIDE, count=1, front=-335, back=25)])]),
    ),
    "an arc with no room": (
        "no room for the curve",
        "error",
        "top/front rail",
        {"room": 20.0, "least": 40.0},
        ["a curve 20 mm deep has 20 mm between its ends, and needs 40 mm"],
        shaped(Arc(20, flat=450)),
        shaped(Arc(20)),
    ),
    "scallops too tight for the cutter": (
        "hollow too tight",
        "error",
        "top/front rail",
        {"radius": 8.78515625, "tool": 9.0},
        ["its tightest hollow has a radius of", "and the cutter one of 9 mm"],
        shaped(Scallop(48, 8, tool=9, flat=40)),
        shaped(Scallop(20, 8, tool=9)),
    ),
    "a curve that leaves too little": (
        "too little left",
        "error",
        "top/front rail",
        {"left": 25.0, "least": 30.0},
        ["25 mm of 60 mm is left where it is deepest, and 30 mm is the least"],
        shaped(Arc(35)),
        shaped(Arc(35, leave=20)),
    ),
    "a curve where boards lie": (
        "curve in a joint",
        "error",
        "top/front rail",
        {"low": 190 / 3, "high": 340 / 3, "back": 10.0},
        ["stands back 10 mm, where top/board 2 is joined to it"],
        bench(Boards(SLAT, run="across", gap=10), front=Rail(60, upper_edge=Ogee(10, 40))),
        bench(Boards(SLAT, run="across", gap=10), front=Rail(60, lower_edge=Ogee(10, 40))),
    ),
}
