"""The boot room's stand: slats for wet boots cut round the legs, a seat that lifts up in two sections, hooks, a crate
for gloves above; three pairs of legs."""

from benchjoin import Bearers, Boards, Clear, Frame, Ledger, Leg, Level, Panel, Stock, Top

upright = Stock("larch, planed", thickness=42, width=70)
slat = Stock("larch slat, planed", thickness=20, width=70)
batten = Stock("larch batten, planed", thickness=20, width=45)
divider = Stock("larch lath, planed", thickness=15, width=90)
between_legs = Boards(slat, run="across", count=1, clear=2, width=70)
lid = Boards(slat, run="across", gap=8)

stand = Frame(
    name="Boot-room stand",
    length=1800,
    depth=420,
    front=Leg(upright, height=1680),
    back=Leg(upright, height=1680),
    rail_stock=Stock("larch board, planed", thickness=18),
    bays=[Clear(1000), Clear()],
    stack=[
        Clear(110),
        Level(
            "boot rack",
            front=70,
            back=70,
            ends=70,
            cross=70,
            carries=[Bearers(batten, span=500), Boards(slat, gap=12, clear=2)],
        ),
        Clear(),
        Level(
            "seat",
            front=70,
            back=95,
            ends=70,
            cross=70,
            top_at=470,
            carries=[
                Ledger(batten, on="back rail"),
                Ledger(batten, on="left rail", flat=True, name="left ledger"),
                Ledger(batten, on="right rail", flat=True, name="right ledger"),
                Top(
                    [
                        between_legs,
                        Panel(994, boards=lid, cleats=batten, grip=100),
                        between_legs,
                        Panel(boards=lid, cleats=batten, grip=100),
                        between_legs,
                    ],
                    back=-6,
                ),
            ],
        ),
        Clear(),
        Level("hooks", back=95),
        Clear(120),
        Level(
            "glove rack",
            front=90,
            back=90,
            ends=90,
            top=1680,
            carries=[
                Bearers(divider, run="along", count=2, name="long divider"),
                Bearers(divider, count=13, name="divider"),
            ],
        ),
    ],
    tape="1 mm",
)
