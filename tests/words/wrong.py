"""Lines that a type checker refuses, each of them: the words and types that makers mistake. It is not run."""

from benchjoin import (
    Boards,
    Case,
    Clear,
    Frame,
    Leg,
    Level,
    Push,
    Rail,
    Stock,
    assembly,
    bind,
    elevation,
    fasten,
    lay_out,
    strength,
)

leg = Stock("larch 2x4", thickness="33 mm", width=82)
bench = Frame(name="Bench", length=1200, depth=400, front=Leg(leg, height=860), rail_stock=leg, stack=[Clear()])
Stock("larch", thickness=None)  # wrong
Stock("larch", thickness=["33"])  # wrong
Stock(3, thickness=33)  # wrong
Leg(leg, height=leg)  # wrong
Leg("2x4", height=860)  # wrong
Leg(leg, wide="side")  # wrong
Rail("89 mm", face="outside")  # wrong
Rail("89 mm", joint="half-lap")  # wrong
Level("low", front=[60])  # wrong
Level("low", flush="top")  # wrong
Level("low", align="middles")  # wrong
Clear(at="ceiling")  # wrong
Boards(leg, run="diagonal")  # wrong
Boards(leg, count="8")  # wrong
Push(100, "up")  # wrong
Case("a", [], "forever")  # wrong
elevation(lay_out(bench), "top")  # wrong
elevation(bench, "front")  # wrong
strength(lay_out(bench), braced=["up"])  # wrong
strength(lay_out(bench), outdoors="yes")  # wrong
Frame(name="a", length=1200, depth=400, front=leg, rail_stock=leg, stack=[])  # wrong
Frame(name="a", length=1200, front=Leg(leg), rail_stock=leg, stack=[], tape=1)  # wrong
Frame(name="a", length=1200, front=Leg(leg), rail_stock=leg, stack=[], corners="round")  # wrong
Frame(name="a", length=1200, front=Leg(leg), rail_stock=leg)  # wrong
Frame(name="a", length=1200, front=Leg(leg), rail_stock=leg, stack=[Stock])  # wrong
bind(lay_out(bench), "a.pdf", appendix="all")  # wrong
bind(lay_out(bench), "a.pdf", papers="A4")  # wrong
fasten(lay_out(bench), {"butt": 8})  # wrong
assembly(bench)  # wrong
Level(front=60)  # wrong
Leg()  # wrong
