"""The gallery's designs with boards and bearers on their levels, and no tops, trays or curves.

`from boarded_designs import bench, rack, stand`.
"""

from benchjoin import Bearers, Boards, Clear, Frame, HalfLap, Leg, Level, Rail, Stock

leg = Stock("larch 2x4, milled", thickness="1 5/16 in", width="3 1/4 in")
rail = Stock("larch 1x6, planed", thickness="5/8 in")
slat = Stock("larch slat, planed", thickness="3/4 in", width="2 1/2 in")
batten = Stock("larch batten", thickness="5/8 in", width="1 1/2 in")

bench = Frame(
    name="Honey-house bench",
    length="57 in",
    depth="23 in",
    front=Leg(leg, height="35 1/2 in"),
    back=Leg(leg, height="70 in"),
    rail_stock=rail,
    stack=[
        Clear("7 in"),
        Level(
            "foot shelf",
            front="2 3/4 in",
            back="4 1/4 in",
            ends="2 3/4 in",
            carries=[Bearers(batten, count=2), Boards(slat, gap="5/16 in")],
        ),
        Clear(),
        Level("bench", front="3 1/2 in", back="3 1/2 in", ends="3 1/2 in", flush="front leg top"),
        Clear(),
        Level("hook rail", back="3 1/2 in"),
        Clear(),
        Level("head rail", back="5 1/4 in", flush="back leg top"),
    ],
    quantity=3,
)

post = Stock("spruce, planed", thickness=45, width=45)
side = Rail(45, joint=HalfLap())
end = Rail(45, joint=HalfLap(), raised=45)
slats = Boards(Stock("spruce slat, planed", thickness=20, width=34), run="across", gap=36, left=-28, right=-28)


def tray(number, **pin):
    return Level(f"tray {number}", front=side, back=side, ends=end, carries=[slats], **pin)


rack = Frame(
    name="Print-room drying rack",
    length=900,
    depth=500,
    front=Leg(post, height=1750),
    back=Leg(post, height=1750),
    rail_stock=Stock("spruce batten, planed", thickness=20),
    stack=[
        Clear(160),
        *(item for number in range(1, 6) for item in (tray(number), Clear())),
        tray(6, top=1750),
    ],
    tape="1 mm",
)

upright = Stock("larch, planed", thickness=42, width=70)
boot_slat = Stock("larch slat, planed", thickness=20, width=45)
boot_batten = Stock("larch batten, planed", thickness=20, width=45)
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
            carries=[Bearers(boot_batten, span=500), Boards(boot_slat, gap=12, front=-45, back=-45)],
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
