"""A stand for tests of wood that is measured and cut, and how to look at a part: `from stand import STAND, kept, look`.

Legs 60 along and 40 deep, 500 high; rails 20 thick; 600 over the legs and 300 deep; a level of 60 on a clear of 100, a
level of 80 flush with the front legs' top.
"""

import attrs

from benchjoin import Clear, Frame, HalfLap, Leg, Level, Rail, Stock, alter, keep, lay_out
from benchjoin.frame.identity import of_piece

POST = Stock("oak", thickness=40, width=60, species="white oak")
STAND = Frame(
    name="Stand",
    length=600,
    depth=300,
    front=Leg(POST, height=500),
    back=Leg(POST, height=500),
    rail_stock=Stock("oak board", thickness=20, species="white oak"),
    stack=[
        Clear(100),
        Level("low", front=60, back=60, ends=60),
        Clear(),
        Level("top", front=80, back=80, ends=80, flush="front leg top"),
    ],
    quantity=2,
    tape="1 mm",
)
LAPPED = alter(
    attrs.evolve(STAND, name="Lapped stand"),
    {"low.front": Rail(60, joint=HalfLap()), "low.back": Rail(60, joint=HalfLap()), "low.ends": None},
)
LEGS = ("front left leg", "front right leg", "back left leg", "back right leg")
CUT = "1/front left leg"


def kept(*names, state="cut", frame=STAND):
    return keep(lay_out(frame), *names, state=state)


def look(part):
    """All that is marked or cut on a part, in its own frame."""
    boxes = sorted(
        (cut.face, cut.mate, *map(near, (*b.low, *b.high))) for cut, b in zip(part.cuts, part.local_cuts, strict=True)
    )
    return tuple(map(near, part.size)), boxes


def near(size):
    return round(size, 6) + 0.0


def told(layout, kind, where):
    """The numbers of the one finding of a kind at a part."""
    (found,) = [f for f in layout.findings if f.kind == kind and f.where == where]
    return found.numbers


def about(layout, identity):
    """Kinds of the findings in which a part is named."""
    return {finding.kind for finding in layout.findings if identity in finding.parts}


def every_part(frame):
    """Names of the parts of all pieces."""
    return [of_piece(n, name) for n in range(1, frame.quantity + 1) for name in frame.part_names()]
