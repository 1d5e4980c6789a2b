"""The bee club's honey-house bench: a boarded foot shelf, a working height, hooks for the smokers. Make three."""

from benchjoin import Bearers, Boards, Clear, Frame, Leg, Level, Stock

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
