"""A shelf of frames that differ in kind, for tests: `from samples import SAMPLES`. What each one is by hand stands in
tests/layout/test_samples_by_hand.py.
"""

from boarded import BOARDED
from honey_bench import HONEY_BENCH
from topped import TOPPED

from benchjoin import Butt, Clear, EndRails, Frame, HalfLap, Leg, Level, Notch, Overall, Pair, Planted, Rail, Stock

LATH = Stock("ash lath", thickness=20)
BATTEN = Stock("ash batten", thickness=24)
BOARD = Stock("pine 1x4, planed", thickness="3/4 in")
SQUARE = Stock("ash post", thickness=50, width=50)
POST = Stock("ash post, small", thickness=45, width=45)
FLAT = Stock("ash board, thick", thickness=40, width=60)

PLANTED = Rail(90, joint=Planted())


def lapped(width=60, **more):
    return Rail(width, joint=HalfLap(), **more)


LEGS_TURNED = Frame(
    name="Potting bench",
    length="48 in",
    depth="24 in",
    front=Leg(Stock("pine 2x4, planed", thickness="1 1/2 in", width="3 1/2 in"), height="34 in", wide="end"),
    back=Leg(Stock("pine 2x3, planed", thickness="1 1/2 in", width="2 1/2 in"), height="40 in"),
    rail_stock=BOARD,
    stack=[
        Clear("6 in"),
        Level("shelf", front="3 in", back="3 in", ends="3 in"),
        Clear(),
        Level("top", front="4 in", back="4 in", ends="4 in", flush="front leg top"),
    ],
)

RAILS_INSIDE = Frame(
    name="Linen stand",
    length=1000,
    depth=400,
    front=Leg(FLAT, height=800),
    back=Leg(FLAT, height=800),
    rail_stock=LATH,
    stack=[
        Clear(100),
        Level("low", front=Rail(80, face="inner"), back=Rail(80, face="inner"), ends=80),
        Clear(),
        Level("high", front=Rail(80, face="inner"), back=Rail(80, face="inner"), top=800),
    ],
    tape="1 mm",
)

PLANTED_FRONT_THROUGH = Frame(
    name="Apron table",
    length=1200,
    depth=500,
    front=Leg(SQUARE, height=700),
    back=Leg(SQUARE, height=700),
    rail_stock=Stock("ash, thin", thickness=15),
    stack=[
        Clear(150),
        Level("stretcher", front=60, back=60, ends=60),
        Clear(),
        Level("apron", front=PLANTED, back=PLANTED, ends=PLANTED, flush="front leg top"),
    ],
    tape="1 mm",
)

PLANTED_ENDS_THROUGH = Frame(
    name="Apron table, ends through",
    length=1200,
    depth=500,
    front=Leg(SQUARE, height=700),
    back=Leg(SQUARE, height=700),
    rail_stock=Stock("ash, thin", thickness=15),
    stack=[Clear(), Level("apron", front=PLANTED, back=PLANTED, ends=PLANTED, flush="back leg top")],
    corners="ends through",
    tape="0.5 mm",
)

LET_IN_PART_WAY = Frame(
    name="Hall seat",
    length="36 in",
    depth="18 in",
    front=Leg(Stock("fir 2x4, planed", thickness="1 1/2 in", width="3 1/2 in"), height="30 in"),
    back=Leg(Stock("fir 2x4, planed", thickness="1 1/2 in", width="3 1/2 in"), height="30 in"),
    rail_stock=BOARD,
    stack=[
        Clear("5 in"),
        Level("stretcher", front=Rail("2 1/2 in", joint=Notch("1/4 in")), back=Rail("2 1/2 in", joint=Notch("1/4 in"))),
        Clear(),
        Level(
            "seat",
            front=Rail("3 1/2 in", joint=Notch("1/4 in")),
            back=Rail("3 1/2 in", joint=Notch("1/4 in")),
            ends="3 1/2 in",
            flush="front leg top",
        ),
    ],
    fit="1/32 in",
    tape="1/32 in",
)

ENDS_IN_WIDE_FACES = Frame(
    name="Seed rack",
    length=900,
    depth=400,
    front=Leg(Stock("ash board, broad", thickness=40, width=80), height=600, wide="end"),
    back=Leg(Stock("ash board, broad", thickness=40, width=80), height=600, wide="end"),
    rail_stock=Stock("ash, thin", thickness=18),
    stack=[
        Clear(60),
        Level("outer", front=60, back=60, ends=Rail(60, joint=Notch())),
        Clear(),
        Level("inner", ends=Rail(60, joint=Notch(), face="inner")),
        Clear(),
        Level("middle", front=60, ends=Rail(60, joint=Butt(), face="middle"), flush="front leg top"),
    ],
    tape="1 mm",
)

OVERHANGS = Frame(
    name="Coat rail bench",
    length=1000,
    depth=350,
    front=Leg(POST, height=900),
    back=Leg(POST, height=900),
    rail_stock=LATH,
    stack=[
        Clear(120),
        Level("low", front=70, back=70),
        Clear(),
        Level("high", front=Rail(70, overhang=100), back=Rail(70, overhang=-15), ends=70, top=900),
    ],
    tape="1 mm",
)

TOPS_ALIGNED = Frame(
    name="Tool stand",
    length=800,
    depth=400,
    front=Leg(FLAT, height=1000),
    back=Leg(FLAT, height=1100),
    rail_stock=LATH,
    stack=[
        Clear(80),
        Level("rack", align="tops", front=100, back=60, ends=Rail(40, raised=-30)),
        Clear(200, at="back"),
        Level("shelf", front=50, back=Rail(70, raised=20)),
        Clear(),
        Level("crown", front=80, ends=Rail(60, raised=-20), flush="front leg top"),
    ],
    fit=0.5,
    tape="0.5 mm",
)

WEIGHED_CLEARS = Frame(
    name="Bottle rack",
    length=700,
    depth=300,
    front=Leg(FLAT, height=1200),
    back=Leg(FLAT, height=1200),
    rail_stock=LATH,
    stack=[
        Clear(100),
        Level("low", front=100, back=60),
        Clear(at="back"),
        Level("mid", front=100, back=100),
        Clear(weight=2),
        Level("high", front=100, back=100, top=1110),
    ],
    tape="1 mm",
)

THREE_PAIRS = Frame(
    name="Counter",
    length=1680,
    depth=500,
    front=Leg(FLAT, height=850),
    back=Leg(FLAT, height=850),
    rail_stock=LATH,
    bays=[Clear(), Clear()],
    stack=[
        Clear(100),
        Level("low", front=80, back=80, cross=80),
        Clear(300),
        Level("high", front=80, back=80, cross=Rail(80, joint=Notch(), face="left")),
    ],
    tape="1 mm",
)

FOUR_PAIRS_LAPPED = Frame(
    name="Drying stand",
    length=2000,
    depth=450,
    front=Leg(POST, height=900),
    back=Leg(POST, height=900),
    rail_stock=BATTEN,
    bays=[Clear(400), Clear(), Clear(400)],
    stack=[
        Clear(150),
        Level("tray", front=lapped(), back=lapped(), ends=lapped(raised=60)),
        Clear(),
        Level("head", front=Rail(60, joint=HalfLap(share=0.25)), back=Rail(60, joint=HalfLap(share=0.25)), top=900),
    ],
    tape="1 mm",
)

SHORT_MIDDLE_PAIR = Frame(
    name="Sideboard",
    length=2000,
    depth=450,
    front=Leg(SQUARE, height=900),
    back=Leg(SQUARE, height=900),
    rail_stock=LATH,
    bays=[Clear(), Pair(at="1300 mm", front=Leg(SQUARE, height=700), back=Leg(SQUARE, height=700)), Clear()],
    stack=[
        Clear(100),
        Level("plinth", front=Rail(80, joint=Butt()), back=80),
        Clear(),
        Level("top", front=80, back=80, ends=80, top="0.9 m"),
    ],
    tape="1 mm",
)

BY_END_RAILS = Frame(
    name="Shoe shelf",
    length=Overall(1500),
    depth=EndRails(400),
    front=Leg(Stock("oak, planed", thickness=42, width=70), height=500),
    back=Leg(Stock("oak, thin", thickness=30, width=70), height=500),
    rail_stock=Stock("oak board", thickness=18),
    stack=[
        Clear(90),
        Level("low", front=Rail(60, overhang=30), back=60, ends=60),
        Clear(),
        Level("high", front=Rail(60, joint=Planted()), back=60, ends=60, bottom=440),
    ],
    tape="1 mm",
)

OVER_ALL = Frame(
    name="Plant table",
    length=Overall("30 in"),
    depth=Overall("20 in"),
    front=Leg(Stock("pine 2x2", thickness="1 1/2 in", width="1 1/2 in"), height="28 in"),
    back=Leg(Stock("pine 2x2", thickness="1 1/2 in", width="1 1/2 in"), height="28 in"),
    rail_stock=BOARD,
    stack=[
        Clear(),
        Level(
            "apron",
            front=Rail("3 in", joint=Planted()),
            back=Rail("3 in", joint=Planted()),
            ends=Rail("3 in", joint=Planted()),
            flush="front leg top",
        ),
    ],
    corners="ends through",
)

LEFT_AND_RIGHT_DIFFER = Frame(
    name="Corner shelf",
    length=900,
    depth=350,
    front=Leg(FLAT, height=700),
    back=Leg(FLAT, height=700),
    rail_stock=LATH,
    stack=[
        Clear(100),
        Level("low", front=60, back=60, left=Rail(70, stock=BATTEN), right=Rail(50, joint=Notch(12), raised=90)),
        Clear(150),
        Level("high", front=60, back=Rail(60, joint=Planted()), left=Rail(60, joint=HalfLap(), raised=80), right=60),
    ],
    tape="1 mm",
)

MEASURED_BATCH = Frame(
    name="Stool",
    length=400,
    depth=320,
    front=Leg(FLAT, height=450),
    back=Leg(FLAT, height=450),
    rail_stock=LATH,
    stack=[
        Clear(80),
        Level("low", front=50, back=50, ends=50),
        Clear(),
        Level("seat", front=70, back=70, ends=70, flush="front leg top"),
    ],
    quantity=3,
    measured={
        "seat/front rail.width": 69,
        "3/seat/front rail.width": 66,
        "2/back left leg.size": (38, 58),
        "low/left rail.thickness": 19,
    },
    uneven="own",
    tape="0.5 mm",
)

STAGGERED = Frame(
    name="Log store",
    length=1400,
    depth=600,
    front=Leg(Stock("larch post", thickness=60, width=60), height=1000),
    back=Leg(Stock("larch post", thickness=60, width=60), height=900),
    rail_stock=LATH,
    stack=[
        Clear(100),
        Level("low", front=70, back=70, ends=Rail(70, joint=Notch(), raised=100)),
        Clear(),
        Level("high", front=70, back=70, ends=Rail(70, joint=Notch(), raised=-100), flush="back leg top"),
    ],
    corners="staggered",
    fit=1,
    tape="1 mm",
)

ENDS_THROUGH = Frame(
    name="Crate stand",
    length=800,
    depth=500,
    front=Leg(Stock("larch post", thickness=60, width=60), height=400),
    back=Leg(Stock("larch post", thickness=60, width=60), height=400),
    rail_stock=LATH,
    stack=[
        Clear(200),
        Level("only", front=80, back=80, ends=Rail(80, joint=Notch())),
    ],
    corners="ends through",
    tape="1 mm",
)

SINGLE_ROW = Frame(
    name="Ladle rack",
    length=900,
    front=Leg(FLAT, height=700),
    against="wall",
    rail_stock=LATH,
    bays=[Clear(), Clear()],
    stack=[
        Clear(80),
        Level("low", front=60),
        Clear(),
        Level("mid", front=lapped(70)),
        Clear(),
        Level("cleat", front=Rail(80, joint=Planted(), face="inner"), top=700),
    ],
    tape="1 mm",
)

SINGLE_ROW_TURNED = Frame(
    name="Scullery rail",
    length="40 in",
    front=Leg(Stock("pine 1x3, planed", thickness="3/4 in", width="2 1/2 in"), height="30 in", wide="end"),
    against="wall",
    rail_stock=BOARD,
    bays=[
        Clear(),
        Pair(
            at="15 in",
            front=Leg(Stock("pine 1x2, planed", thickness="3/4 in", width="2 in"), height="24 in", wide="end"),
        ),
        Clear(),
    ],
    stack=[
        Clear("4 in"),
        Level("low", front=Rail("3 in", joint=Butt(), face="middle")),
        Clear(),
        Level("high", front=Rail("2 in", face="inner"), flush="front leg top"),
    ],
)

LARCH = Stock("larch, planed", thickness=42, width=70)
BOOT_STAND = Frame(
    name="Boot-room stand, plain",
    length=1800,
    depth=420,
    front=Leg(LARCH, height=450),
    back=Leg(LARCH, height=1680),
    rail_stock=Stock("larch board, planed", thickness=18),
    bays=[Clear(1000), Clear()],
    stack=[
        Clear(110),
        Level("boot rack", front=70, back=70, ends=Rail(70, joint=Notch()), cross=70),
        Clear(),
        Level("seat", front=70, back=70, ends=Rail(70, joint=Notch()), cross=70, flush="front leg top"),
        Clear(),
        Level("hooks", back=95),
        Clear(120),
        Level("shelf", back=70, top=1680),
    ],
    tape="1 mm",
)

SPRUCE = Stock("spruce, planed", thickness=45, width=45)


def _tray(number, **pin):
    side, end = Rail(45, joint=HalfLap()), Rail(45, joint=HalfLap(), raised=45)
    return Level(f"tray {number}", front=side, back=side, ends=end, **pin)


DRYING_RACK = Frame(
    name="Print-room drying rack, plain",
    length=900,
    depth=500,
    front=Leg(SPRUCE, height=1750),
    back=Leg(SPRUCE, height=1750),
    rail_stock=Stock("spruce batten, planed", thickness=20),
    stack=[
        Clear(160),
        *(item for number in range(1, 6) for item in (_tray(number), Clear())),
        _tray(6, top=1750),
    ],
    tape="1 mm",
)

SAMPLES: dict[str, Frame] = {
    "legs turned": LEGS_TURNED,
    "rails inside": RAILS_INSIDE,
    "planted, front through": PLANTED_FRONT_THROUGH,
    "planted, ends through": PLANTED_ENDS_THROUGH,
    "let in part-way": LET_IN_PART_WAY,
    "ends in wide faces": ENDS_IN_WIDE_FACES,
    "overhangs": OVERHANGS,
    "tops aligned": TOPS_ALIGNED,
    "weighed clears": WEIGHED_CLEARS,
    "three pairs": THREE_PAIRS,
    "four pairs, lapped": FOUR_PAIRS_LAPPED,
    "short middle pair": SHORT_MIDDLE_PAIR,
    "by end rails": BY_END_RAILS,
    "over all": OVER_ALL,
    "left and right differ": LEFT_AND_RIGHT_DIFFER,
    "measured batch": MEASURED_BATCH,
    "staggered": STAGGERED,
    "ends through": ENDS_THROUGH,
    "single row": SINGLE_ROW,
    "single row, turned": SINGLE_ROW_TURNED,
    "honey bench": HONEY_BENCH,
    "boot-room stand": BOOT_STAND,
    **BOARDED,
    **TOPPED,
}
