"""The boot room's stand: a rack for wet boots, a seat, hooks above; three pairs of legs, one bay for the long bench."""

from benchjoin import Clear, Frame, Leg, Level, Notch, Rail, Stock

upright = Stock("larch, planed", thickness=42, width=70)
end = Rail(70, joint=Notch())

stand = Frame(
    name="Boot-room stand",
    length=1800,
    depth=420,
    front=Leg(upright, height=450),
    back=Leg(upright, height=1680),
    rail_stock=Stock("larch board, planed", thickness=18),
    bays=[Clear(1000), Clear()],
    stack=[
        Clear(110),
        Level("boot rack", front=70, back=70, ends=end, cross=70),
        Clear(),
        Level("seat", front=70, back=70, ends=end, cross=70, flush="front leg top"),
        Clear(),
        Level("hooks", back=95),
        Clear(120),
        Level("shelf", back=70, top=1680),
    ],
    tape="1 mm",
)
