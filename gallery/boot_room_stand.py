"""The boot room's stand: slats for wet boots, a seat, hooks, a crate for gloves above; three pairs of legs."""

from benchjoin import Bearers, Boards, Clear, Frame, Leg, Level, Stock

upright = Stock("larch, planed", thickness=42, width=70)
slat = Stock("larch slat, planed", thickness=20, width=45)
batten = Stock("larch batten, planed", thickness=20, width=45)
divider = Stock("larch lath, planed", thickness=15, width=90)

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
            carries=[Bearers(batten, span=500), Boards(slat, gap=12, front=-45, back=-45)],
        ),
        Clear(),
        Level("seat", front=70, back=70, ends=70, cross=70, top=450),
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
