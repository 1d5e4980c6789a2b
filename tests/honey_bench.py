"""The honey-house bench without its boards: `from honey_bench import HONEY_BENCH`."""

from benchjoin import Clear, Frame, Leg, Level, Stock

HONEY_BENCH = Frame(
    name="Honey-house bench, plain",
    length="57 in",
    depth="23 in",
    front=Leg(Stock("larch 2x4, milled", thickness="1 5/16 in", width="3 1/4 in"), height="35 1/2 in"),
    back=Leg(Stock("larch 2x4, milled", thickness="1 5/16 in", width="3 1/4 in"), height="70 in"),
    rail_stock=Stock("larch 1x6, planed", thickness="5/8 in"),
    stack=[
        Clear("7 in"),
        Level("foot shelf", front="2 3/4 in", back="4 1/4 in", ends="2 3/4 in"),
        Clear(),
        Level("bench", front="3 1/2 in", back="3 1/2 in", ends="3 1/2 in", flush="front leg top"),
        Clear(),
        Level("hook rail", back="3 1/2 in"),
        Clear(),
        Level("head rail", back="5 1/4 in", flush="back leg top"),
    ],
    quantity=3,
)
