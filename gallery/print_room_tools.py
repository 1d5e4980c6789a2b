"""The print room's tool rack: one row of uprights against the wall; spatulas, brayers and squeegees hang in front."""

from benchjoin import Clear, Frame, HalfLap, Leg, Level, Rail, Stock

upright = Stock("spruce, planed", thickness=45, width=70)

tools = Frame(
    name="Print-room tool rack",
    length=1400,
    front=Leg(upright, height=1200),
    against="wall",
    rail_stock=Stock("spruce batten, planed", thickness=20),
    bays=[Clear(), Clear()],
    stack=[
        Clear(60),
        Level("wall strip", front=Rail(70, face="inner")),
        Clear(),
        Level("spatulas", front=70),
        Clear(),
        Level("brayers", front=70),
        Clear(),
        Level("squeegees", front=Rail(90, joint=HalfLap())),
        Clear(60),
        Level("wall cleat", front=Rail(90, face="inner"), top=1200),
    ],
    tape="1 mm",
    quantity=2,
)
