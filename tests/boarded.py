"""Frames whose levels carry boards and bearers, of every kind of crossing: `from boarded import BOARDED`. [mm or in]"""

from benchjoin import (
    Bearers,
    Boards,
    Butt,
    Clear,
    Frame,
    HalfLap,
    Laid,
    Leg,
    Level,
    Notch,
    Over,
    Pair,
    Planted,
    Rail,
    Stock,
)

POST = Stock("larch post", thickness=45, width=70, species="western larch")
RAIL = Stock("larch rail", thickness=22, species="western larch")
SLAT = Stock("larch slat", thickness=20, width=60, species="western larch")
BATTEN = Stock("larch batten", thickness=20, width=40, species="western larch")

FOOT_SHELF = Frame(
    name="Bench with a foot shelf",
    length="57 in",
    depth="23 in",
    front=Leg(Stock("larch 2x4, milled", thickness="1 5/16 in", width="3 1/4 in"), height="35 1/2 in"),
    back=Leg(Stock("larch 2x4, milled", thickness="1 5/16 in", width="3 1/4 in"), height="48 in"),
    rail_stock=Stock("larch 1x6, planed", thickness="5/8 in"),
    stack=[
        Clear("7 in"),
        Level(
            "foot shelf",
            front="2 3/4 in",
            back="4 1/4 in",
            ends="2 3/4 in",
            carries=[
                Bearers(Stock("larch batten", thickness="5/8 in", width="1 1/2 in"), count=2),
                Boards(Stock("larch slat, planed", thickness="3/4 in", width="2 1/2 in"), gap="5/16 in"),
            ],
        ),
        Clear(),
        Level("bench", front="3 1/2 in", back="3 1/2 in", ends="3 1/2 in", flush="front leg top"),
        Clear(),
        Level("head rail", back="3 1/2 in", flush="back leg top"),
    ],
    quantity=2,
)

SLATTED_SEAT = Frame(
    name="Seat with a slatted back",
    length=1700,
    depth=450,
    front=Leg(POST, height=420),
    back=Leg(POST, height=900),
    rail_stock=RAIL,
    bays=[Clear(), Pair(), Clear()],
    stack=[
        Clear(120),
        Level(
            "rack",
            front=70,
            back=70,
            ends=70,
            carries=[
                Bearers(BATTEN, run="along", joint=Planted(), lowered=20, name="ledger"),
                Boards(SLAT, run="across", gap=12, remainder="rip", within="rails", left=-60, right=-60),
            ],
        ),
        Clear(),
        Level(
            "seat",
            front=70,
            back=70,
            ends=70,
            cross=70,
            flush="front leg top",
            carries=[
                Bearers(BATTEN, span=380),
                Boards(SLAT, gap=8, remainder="margins", front=12, left=10, right=10, clear=2),
                Boards(SLAT, run="up", gap=40, name="back slat", to="crest", top=-15, bottom=-10),
            ],
        ),
        Clear(),
        Level("crest", back=70, flush="back leg top"),
    ],
    fit=0.5,
    tape="1 mm",
)

EGG_CRATE = Frame(
    name="Glove rack",
    length=1000,
    depth=400,
    front=Leg(POST, height=700),
    back=Leg(POST, height=700),
    rail_stock=RAIL,
    stack=[
        Clear(250),
        Level(
            "gloves",
            front=90,
            back=90,
            ends=90,
            carries=[
                Bearers(Stock("thin board", thickness=12, width=80), run="along", count=2, name="divider"),
                Bearers(
                    Stock("thin board", thickness=12, width=80),
                    run="across",
                    at=[200, 350, 500, 650, 800],
                    joint=Butt(),
                ),
            ],
        ),
        Clear(),
        Level(
            "top",
            front=70,
            back=70,
            ends=70,
            flush="front leg top",
            carries=[
                Bearers(BATTEN, count=3, joint=HalfLap(), front=25, back=25),
                Boards(SLAT, gap=5, remainder="both", front=25, back=25),
            ],
        ),
    ],
    fit=0.4,
    tape="1 mm",
    quantity=2,
)

CROSSINGS = Frame(
    name="Plant stand",
    length=1300,
    depth=500,
    front=Leg(POST, height=1400),
    back=Leg(POST, height=1400),
    rail_stock=RAIL,
    bays=[Clear(), Clear()],
    stack=[
        Clear(150),
        Level(
            "tees",
            front=84,
            back=110,
            carries=[
                Bearers(BATTEN, at=[90, 400, 900, 1210], joint=HalfLap(share=0.4)),
                Boards(SLAT, gap=12, remainder="back", within="legs", clear=6),
            ],
        ),
        Clear(),
        Level(
            "let in",
            ends=80,
            cross=80,
            carries=[
                Bearers(BATTEN, run="along", count=3, joint=Notch(30)),
                Boards(SLAT, run="across", count=12, gap=10, left=-80, right=-80),
            ],
        ),
        Clear(),
        Level(
            "over",
            front=80,
            back=80,
            ends=80,
            cross=80,
            carries=[
                Bearers(BATTEN, at=[180, 420, 880, 1120], joint=Over(15), front=30),
                Bearers(BATTEN, run="along", count=3, flat=True, joint=Laid(), name="batten"),
                Boards(SLAT, run="across", gap=20, left=-175, right=-175, front=30),
            ],
        ),
        Clear(),
        Level(
            "butted",
            front=84,
            back=84,
            ends=84,
            cross=Rail(84, joint=Butt()),
            flush="front leg top",
            carries=[
                Bearers(BATTEN, run="along", count=2),
                Boards(SLAT, run="across", count=15, gap=12, within="legs"),
            ],
        ),
    ],
    tape="1 mm",
)

BOARDED = {
    "boarded foot shelf": FOOT_SHELF,
    "slatted seat and back": SLATTED_SEAT,
    "egg crate": EGG_CRATE,
    "bearers of every kind": CROSSINGS,
}
