"""The print room's drying rack: six slatted trays that slide out, equal clears, the frame half-lapped flush."""

from benchjoin import Bearers, Boards, Clear, Frame, HalfLap, Leg, Level, Planted, Rail, Stock, Tray

post = Stock("spruce, planed", thickness=45, width=45)
side = Rail(45, joint=HalfLap())
end = Rail(45, joint=HalfLap(), raised=45)
lath = Stock("spruce lath, planed", thickness=32, width=45)
slats = Boards(Stock("spruce slat, planed", thickness=16, width=40), run="across", gap=50)
runners = Bearers(lath, run="across", joint=Planted(), flat=True, lowered=13)


def tray(number, **pin):
    slides = Tray(slats, sides=lath, clear=5, stop=Stock("spruce batten, planed", thickness=20, width=45))
    return Level(f"tray {number}", front=side, back=side, ends=end, carries=[runners, slides], **pin)


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
