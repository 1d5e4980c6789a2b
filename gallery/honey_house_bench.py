"""The bee club's honey-house bench: a boarded foot shelf, a top with a drip section that lifts out over a bin, hooks
for the smokers, a small shelf over an arched head rail. Make three."""

from benchjoin import Arc, Bearers, Bin, Boards, Clear, Frame, Leg, Level, Panel, Rail, Stock, Top

leg = Stock("larch 2x4, milled", thickness="1 5/16 in", width="3 1/4 in")
rail = Stock("larch 1x6, planed", thickness="5/8 in")
slat = Stock("larch slat, planed", thickness="3/4 in", width="2 1/2 in")
batten = Stock("larch batten", thickness="5/8 in", width="1 1/2 in")
deck = Stock("larch top board, planed", thickness="7/8 in", width="2 3/4 in")

close = Boards(deck, run="across", gap="1/8 in")
drip = Panel("16 in", boards=Boards(deck, run="across", gap="1/2 in"), cleats=batten, covers="bin")

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
        Level(
            "bench",
            front="3 1/2 in",
            back="3 1/2 in",
            ends="3 1/2 in",
            flush="front leg top",
            carries=[Top([close, drip, close], front="3/4 in", supports=batten)],
        ),
        Clear(),
        Level("hook rail", back="3 1/2 in"),
        Clear(),
        Level(
            "head rail",
            back=Rail("5 1/4 in", lower_edge=Arc("1 1/2 in")),
            flush="back leg top",
            carries=[Boards(slat, count=1, front="-20 7/8 in", back="3/8 in")],
        ),
    ],
    bins=[Bin("bin", length="14 in", depth="16 in", height="10 in", on="foot shelf")],
    quantity=3,
)
