"""Frames with tops in sections, panels, trays, bins, ledgers, shaped edges: `from topped import TOPPED`. [mm or in]"""

from benchjoin import (
    Arc,
    Bearers,
    Bin,
    Boards,
    Clear,
    Frame,
    HalfLap,
    Ledger,
    Leg,
    Level,
    Ogee,
    Panel,
    Planted,
    Points,
    Rail,
    Scallop,
    Stock,
    Top,
    Tray,
    alter,
)
from benchjoin.frame.address import addresses

POST = Stock("larch post", thickness=45, width=70, species="western larch")
SQUARE = Stock("spruce post", thickness=45, width=45)
RAIL = Stock("larch rail", thickness=22, species="western larch")
SLAT = Stock("larch slat", thickness=20, width=60, species="western larch")
BATTEN = Stock("larch batten", thickness=20, width=40, species="western larch")
THICK = Stock("larch slat, thick", thickness=30, width=60, species="western larch")
WAVE = Points([(0.2, 15, 0.05), (0.35, 25), (0.5, 5, -0.1, 0.1)], flat=14, leave=50, tool=9)
LATH = Stock("spruce lath", thickness=30, width=45)

DRIP = Frame(
    name="Washing-up stand",
    length="46 in",
    depth="20 in",
    front=Leg(Stock("pine 2x3, planed", thickness="1 1/4 in", width="2 1/4 in")),
    back=Leg(Stock("pine 2x3, planed", thickness="1 1/4 in", width="2 1/4 in"), height="50 in"),
    rail_stock=Stock("pine 1x4, planed", thickness="3/4 in"),
    stack=[
        Clear("6 in"),
        Level(
            "shelf",
            front="3 in",
            back="3 in",
            ends="3 in",
            carries=[
                Bearers(Stock("pine batten", thickness="3/4 in", width="1 1/2 in"), count=2),
                Boards(Stock("pine slat", thickness="3/4 in", width="3 in"), gap="1/4 in"),
            ],
        ),
        Clear(),
        Level(
            "top",
            front="3 in",
            back="3 in",
            ends="3 in",
            flush="front leg top",
            top_at="34 in",
            carries=[
                Top(
                    [
                        Boards(Stock("pine slat", thickness="3/4 in", width="3 in"), run="across", gap="1/8 in"),
                        Panel(
                            "15 in",
                            boards=Boards(Stock("pine slat", thickness="3/4 in", width="3 in"), run="across", gap=12),
                            cleats=Stock("pine batten", thickness="3/4 in", width="1 1/2 in"),
                            clear="3/16 in",
                            ease="1/8 in",
                            grip="4 in",
                            covers="tub",
                            name="drip board",
                        ),
                        Boards(
                            Stock("pine slat", thickness="3/4 in", width="3 in"),
                            run="across",
                            gap="1/8 in",
                            width="12 in",
                        ),
                    ],
                    front="1/2 in",
                    left="-1/4 in",
                    right="-1/4 in",
                    supports=Stock("pine batten", thickness="3/4 in", width="1 1/2 in"),
                    doubled=True,
                    name="worktop",
                )
            ],
        ),
        Clear("10 in", at="surface"),
        Level("rail", back=Rail("4 in", lower_edge=Arc("1 in", flat="1 in", leave="2 1/2 in", tool="1/4 in"))),
    ],
    bins=[Bin("tub", length="11 in", depth="13 in", height="9 in", base_length="9 in", base_depth=300, on="shelf")],
)

LIDS = Frame(
    name="Tool chest on legs",
    length=1300,
    depth=480,
    front=Leg(POST, height=420),
    back=Leg(POST, height=760),
    rail_stock=RAIL,
    stack=[
        Clear(),
        Level(
            "seat",
            front=70,
            back=110,
            ends=70,
            flush="front leg top",
            carries=[
                Ledger(Stock("larch ledger", thickness=22, width=60), on="back legs"),
                Top(
                    [
                        Panel(440, boards=Boards(SLAT, gap=6)),
                        Clear(240),
                        Panel(boards=Boards(SLAT, run="across", gap=6, remainder="rip"), cleats=BATTEN),
                    ],
                    back=-10,
                    bearing=6,
                    supports=BATTEN,
                ),
            ],
        ),
        Clear(),
        Level("crest", back=80, flush="back leg top"),
    ],
    bins=[Bin("caddy", length=212, depth=340, height=220, on="seat", rim=6, at=560, from_front=40)],
    tape="1 mm",
)

TRAYS = Frame(
    name="Seed trays",
    length=800,
    depth=450,
    front=Leg(SQUARE, height=700),
    back=Leg(SQUARE, height=700),
    rail_stock=RAIL,
    stack=[
        Clear(120),
        Level(
            "low",
            front=Rail(45, joint=HalfLap()),
            back=Rail(45, joint=HalfLap()),
            ends=Rail(45, joint=HalfLap(), raised=45),
            carries=[
                Bearers(LATH, run="across", joint=Planted(), flat=True, lowered=10),
                Tray(Boards(BATTEN, run="across", gap=20), sides=LATH, out="back", clear=4, ease=3, stop=BATTEN),
            ],
        ),
        Clear(),
        Level(
            "high",
            front=60,
            back=60,
            ends=60,
            top=700,
            carries=[
                Ledger(LATH, on="left rail", flat=True, lowered=25, name="left runner"),
                Ledger(LATH, on="right rail", flat=True, lowered=25, name="right runner"),
                Tray(Boards(LATH, gap=20), sides=LATH, out="up", bearing=12, name="sieve"),
            ],
        ),
    ],
    tape="1 mm",
    quantity=2,
)

CURVES = Frame(
    name="Hall bench",
    length=1700,
    depth=400,
    front=Leg(POST, height=450),
    back=Leg(POST, height=900),
    rail_stock=RAIL,
    bays=[Clear(700), Clear()],
    stack=[
        Clear(110),
        Level(
            "shelf",
            front=Rail(80, lower_edge=Scallop(2, 15, flat=14, leave=50, tool=9)),
            back=80,
            ends=80,
            cross=80,
            carries=[Boards(THICK, gap=10, front=-50, back=-50, edge=Arc(8, length=300), far_edge=Scallop(1, 6))],
        ),
        Clear(),
        Level(
            "seat",
            front=Rail(90, lower_edge=Ogee(25, 120, flat=14, leave=50, tool=9)),
            back=Rail(90, joint=HalfLap(), lower_edge=Points([(0.3, 30), (0.6, 10)], symmetrical=False)),
            ends=Rail(90, lower_edge=Arc(20)),
            flush="front leg top",
        ),
        Clear(),
        Level(
            "crest",
            back=Rail(
                110,
                upper_edge=WAVE,
                lower_edge=Arc(20),
            ),
            flush="back leg top",
        ),
    ],
    tape="1 mm",
)


def straight(frame):
    """A frame with all its edges straight: for readers of wood that know boxes only."""
    edges = ("upper_edge", "lower_edge", "edge", "grip")
    return alter(frame, {at: None for at in addresses(frame) if at.rpartition(".")[2] in edges})


TOPPED = {"drip board": straight(DRIP), "lids": LIDS, "trays": TRAYS}
