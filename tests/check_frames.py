"""The smallest frames that trip each check, each with a neighbour that does not, the numbers worked by hand. [mm]

The plain frame: legs of 60 along and 40 deep, 500 high, rails 20 thick, 600 over the legs and 300 deep.
"""

import attrs

from benchjoin import Butt, Clear, Frame, HalfLap, Leg, Level, Notch, Pair, Planted, Rail, Stock, alter, keep, lay_out

POST = Stock("ash", thickness=40, width=60)
PLAIN = Frame(
    name="Plain",
    length=600,
    depth=300,
    front=Leg(POST, height=500),
    back=Leg(POST, height=500),
    rail_stock=Stock("ash board", thickness=20),
    stack=[Clear(100), Level("low", front=60)],
    tape="1 mm",
)


def with_stack(*stack, **more):
    return attrs.evolve(PLAIN, stack=stack, **more)


def level(**sides):
    """A frame with one level, its bottom at 100."""
    return with_stack(Clear(100), Level("low", **sides))


def finished(frame, *names, state="cut"):
    """The frame with some parts sized or cut as they were drawn."""
    return keep(lay_out(frame), *names, state=state)


notched = Rail(60, joint=Notch())
lapped = Rail(60, joint=HalfLap())
planted = Rail(60, joint=Planted())
butted = Rail(60, joint=Butt())

# kind, severity, where, numbers, words of the sentence, the frame that trips it, its neighbour
CASES = {
    "two rails that want one corner": (
        "clash",
        "error",
        "low/front rail",
        {"x": 20, "y": 20, "z": 60, "bottom": 100},
        ["low/left rail", "at 100 mm over the floor", "20 mm along, 20 mm deep, 60 mm high"],
        alter(level(front=60, left=notched), {"corners": "staggered"}),
        alter(level(front=60, left=Rail(60, joint=Notch(), raised=60)), {"corners": "staggered"}),
    ),
    "legs that measured too deep for the frame": (
        "clash",
        "error",
        "front left leg",
        {"x": 60, "y": 1, "z": 500, "bottom": 0},
        ["back left leg"],
        attrs.evolve(PLAIN, depth=80, measured={"front left leg.thickness": 41}),
        attrs.evolve(PLAIN, depth=80),
    ),
    "a notch deeper than half of the leg": (  # 21 of 40 leave 19, 47.5 %
        "deep notch",
        "warning",
        "front left leg and front right leg",
        {"depth": 21, "left": 0.475},
        ["low/front rail", "21 mm of 40 mm", "leaves 48%"],
        alter(PLAIN, {"rail_stock.thickness": 21}),
        PLAIN,  # 20 of 40 are half
    ),
    "a deep notch in the edge of a leg": (  # 24 of 40 leave 16
        "deep notch",
        "warning",
        "front left leg and back left leg",
        {"depth": 24, "left": 0.4},
        ["low/left rail", "24 mm of 40 mm", "leaves 40%"],
        alter(level(left=notched), {"rail_stock.thickness": 24, "front.wide": "end", "back.wide": "end"}),
        alter(level(left=notched), {"rail_stock.thickness": 24}),  # 24 of 60
    ),
    "two notches that meet inside a leg": (
        # the end rail stops behind the front rail, 20..40 deep and 20 wide: 2400 - 1200 - 400 = 800 of 2400
        "notches meet",
        "warning",
        "front left leg",
        {"bottom": 100, "top": 160, "left": 1 / 3},
        ["low/front rail and low/left rail", "from 100 mm to 160 mm", "33% of its section"],
        level(front=60, left=notched),
        level(front=60, left=Rail(60, joint=Notch(), raised=60)),
    ),
    "notches that meet over part of their height": (
        "notches meet",
        "warning",
        "front left leg",
        {"bottom": 140, "top": 160, "left": 1 / 3},
        ["from 140 mm to 160 mm"],
        level(front=60, left=Rail(60, joint=Notch(), raised=40)),
        level(front=60, left=60),
    ),
    "a leg cut in two": (
        "leg cut in two",
        "error",
        "front left leg and front right leg",
        {"height": 100},
        ["nothing holds the leg together at 100 mm"],
        alter(PLAIN, {"rail_stock.thickness": 40}),
        alter(PLAIN, {"rail_stock.thickness": 39}),
    ),
    "a leg of which nothing is left": (
        "leg cut in two",
        "error",
        "front left leg and front right leg",
        {"height": 0},
        ["nothing holds the leg together at 0 mm"],
        alter(with_stack(Level("low", front=60)), {"rail_stock.thickness": 40, "front.height": 60}),
        alter(with_stack(Level("low", front=60)), {"rail_stock.thickness": 39, "front.height": 60}),
    ),
    "a sliver above a notch": (
        "sliver",
        "warning",
        "front left leg and front right leg",
        {"land": 5},
        ["a sliver of 5 mm stands above the notch for low/front rail", "flush"],
        alter(PLAIN, {"front.height": 165}),
        alter(PLAIN, {"front.height": 160}),
    ),
    "a thin end that is no sliver": (  # 6 is what a sliver is less than; it is a short land
        "short land",
        "warning",
        "front left leg and front right leg",
        {"land": 6, "needed": 20},
        ["only 6 mm", "between the top of the leg and the notch for low/front rail", "at least 20 mm"],
        alter(PLAIN, {"front.height": 166}),
        alter(PLAIN, {"front.height": 180}),
    ),
    "short land between two notches": (
        "short land",
        "warning",
        "front left leg and front right leg",
        {"land": 19, "needed": 20},
        ["only 19 mm", "between the notches for low/front rail and high/front rail"],
        with_stack(Clear(100), Level("low", front=60), Clear(19), Level("high", front=60)),
        with_stack(Clear(100), Level("low", front=60), Clear(20), Level("high", front=60)),
    ),
    "land shorter than the notch is deep": (  # 24 deep asks for 24
        "short land",
        "warning",
        "front left leg and front right leg",
        {"land": 22, "needed": 24},
        ["only 22 mm", "between the foot and the notch for low/front rail", "at least 24 mm"],
        alter(with_stack(Clear(22), Level("low", front=60)), {"rail_stock.thickness": 24}),
        alter(with_stack(Clear(24), Level("low", front=60)), {"rail_stock.thickness": 24}),
    ),
    "a rail wider than the leg can take at its top": (
        "wider than the leg can take",
        "warning",
        "low/front rail",
        {"over": 10, "leg": 150},
        ["stands 10 mm over the top of the front left leg", "ends at 150 mm"],
        alter(PLAIN, {"front.height": 150}),
        alter(PLAIN, {"front.height": 160}),
    ),
    "a level above every leg": (
        "above every leg",
        "error",
        "low",
        {"bottom": 500, "leg": 500},
        ['"low" starts at 500 mm', "ends at 500 mm"],
        with_stack(Clear(500), Level("low", front=60)),
        with_stack(Clear(499), Level("low", front=60)),
    ),
    "an end rail with no length left": (
        "no length left",
        "error",
        "low/left rail",
        {"length": 0},
        ["nothing left for its length"],
        alter(level(left=60), {"depth": 80}),
        alter(level(left=60), {"depth": 81}),
    ),
    "an end rail with less than no length": (  # 80 - 41 - 40
        "no length left",
        "error",
        "low/left rail",
        {"length": -1},
        ["1 mm too little left"],
        attrs.evolve(level(left=60), depth=80, measured={"front left leg.thickness": 41}),
        attrs.evolve(level(left=60), depth=82, measured={"front left leg.thickness": 41}),
    ),
    "two laps in one leg at one height": (
        "two laps at one height",
        "error",
        "front left leg",
        {"bottom": 110, "top": 160},
        ["low/front rail and low/left rail", "from 110 mm to 160 mm", "at least 50 mm"],
        level(front=lapped, left=Rail(60, joint=HalfLap(), raised=10)),
        level(front=lapped, left=Rail(60, joint=HalfLap(), raised=60)),
    ),
    "a rail that comes to one leg and misses the other": (
        "a leg is missed",
        "warning",
        "low/left rail",
        {"bottom": 100, "top": 160},
        ["(100 mm to 160 mm over the floor)", "does not come to back left leg"],
        alter(level(left=notched), {"back.height": 90}),
        alter(level(left=notched), {"back.height": 101}),
    ),
    "a rail that misses all its legs": (
        "no leg holds it",
        "error",
        "low/back rail",
        {"bottom": 100, "top": 160},
        ["does not come to back left leg or back right leg"],
        alter(level(front=60, back=60), {"back.height": 100}),
        alter(level(front=60, back=60), {"back.height": 101}),
    ),
    "a rail that misses a tall enough middle leg": (  # planted at 0, while the middle leg's face is at 0, too
        "a leg is missed",
        "warning",
        "low/front rail",
        {"bottom": 100, "top": 160},
        ["does not come to front middle leg 1"],
        attrs.evolve(
            level(front=Rail(60, joint=Planted(), face="inner")),
            bays=[Clear(), Pair(front=Leg(Stock("thin", thickness=30, width=60), height=500)), Clear()],
        ),
        attrs.evolve(
            level(front=Rail(60, joint=Planted(), face="inner")),
            bays=[Clear(), Pair(front=Leg(Stock("thin", thickness=30, width=60), height=100)), Clear()],
        ),
    ),
    "a leg that was sized before it was drawn longer": (
        "finished length",
        "warning",
        "front left leg",
        {"length": 500, "wanted": 510},
        ["finished at 500 mm", "should now be 510 mm", "10 mm too short", "Shim its end by 10 mm"],
        alter(finished(PLAIN, "front left leg", state="sized"), {"front.height": 510}),
        alter(finished(PLAIN, "front left leg", state="sized"), {"back.height": 510}),
    ),
    "a cut notch and a rail that came out wider": (
        "does not go in",
        "error",
        "front left leg",
        {"gap": -2, "to": 60},
        ["low/front rail needs 62 mm", "60 mm wide", "2 mm too narrow", "Re-rip low/front rail to 60 mm"],
        alter(finished(PLAIN, "front left leg"), {"low/front rail.width": 62}),
        alter(finished(PLAIN, "front left leg", state="sized"), {"low/front rail.width": 62}),
    ),
    "a cut notch of which only the fit is used up": (  # cut 61 for 60; 60.5 and 1 of fit want 61.5
        "tight",
        "warning",
        "front left leg",
        {"gap": -0.5, "clearance": 1, "to": 60},
        ["leaves 0.50 mm of clearance, and 1 mm is wanted", "to 60 mm"],
        alter(finished(attrs.evolve(PLAIN, fit=1), "front left leg"), {"low/front rail.width": 60.5}),
        alter(finished(attrs.evolve(PLAIN, fit=1), "front left leg"), {"low/front rail.width": 60.1}),
    ),
    "a cut notch and a rail that came out narrower": (
        "gap",
        "warning",
        "front left leg",
        {"gap": 2, "near": 0, "far": 2},
        ["60 mm wide", "58 mm is needed", "a gap of 2 mm", "Shim low/front rail (2 mm above)"],
        alter(finished(PLAIN, "front left leg"), {"low/front rail.width": 58}),
        alter(finished(PLAIN, "front left leg"), {"low/front rail.width": 59.9}),
    ),
    "a cut notch of a level that went up": (
        "cut elsewhere",
        "warning",
        "front left leg",
        {"shift": -5},
        ["it lies 5 mm below where low/front rail comes now", "make front left leg again"],
        alter(finished(PLAIN, "front left leg"), {"clear below low.size": 105}),
        alter(finished(PLAIN, "front right leg", state="sized"), {"clear below low.size": 105}),
    ),
    "a cut notch and a rail that came out thinner": (
        "depth is off",
        "warning",
        "front left leg",
        {"depth": -2},
        ["off by 2 mm", "low/front rail sits deep; shim the floor"],
        alter(finished(PLAIN, "front left leg"), {"low/front rail.thickness": 18}),
        alter(finished(PLAIN, "front left leg"), {"low/front rail.thickness": 19.9}),
    ),
    "a cut notch for an end rail that now starts further forward": (  # behind 16 of front rail, and not behind 20
        "stops short",
        "warning",
        "front left leg",
        {"short": 4},
        ["notch for low/left rail", "ends 4 mm short across the leg", "trim low/left rail"],
        alter(finished(level(front=60, left=notched), "front left leg"), {"low/front rail.thickness": 16}),
        alter(finished(level(front=60, left=notched), "front left leg"), {"low/front rail.thickness": 21}),
    ),
    "a cut leg of which the rail is gone": (
        "cut without a mate",
        "warning",
        "front left leg",
        {},
        ["is cut for low/front rail, which does not come there now"],
        alter(finished(PLAIN, "front left leg"), {"low.front": None, "low.back": 60}),
        alter(finished(PLAIN, "front left leg"), {"low.back": 60}),
    ),
    "a rail that was added when its leg was cut": (
        "another cut",
        "warning",
        "front left leg",
        {"low": 160, "high": 220, "depth": 20},
        ["is cut and has no notch for low/left rail yet", "from 160 mm to 220 mm, 20 mm deep"],
        alter(finished(PLAIN, "front left leg"), {"low.left": Rail(60, joint=Notch(), raised=60)}),
        alter(finished(PLAIN, "front left leg"), {"low.left": 60}),
    ),
    "a leg that measured deeper than the others": (
        "legs differ",
        "warning",
        "front left leg",
        {"spread": 1, "least": 40},
        ["1 mm more in depth, as it stands, than front right leg", "Plane all to 40 mm"],
        attrs.evolve(PLAIN, measured={"front left leg.thickness": 41}),
        attrs.evolve(PLAIN, measured={"front left leg.thickness": 40.1}),
    ),
    "end rails between legs that measured differently": (  # 300 - 41 - 40 and 300 - 40 - 40
        "lengths differ",
        "warning",
        "low/right rail",
        {"long": 220, "short": 219},
        ["1 mm longer than low/left rail (220 mm and 219 mm)", "share one stop", "leave a gap of 1 mm"],
        attrs.evolve(level(left=60, right=60), measured={"front left leg.thickness": 41}),
        attrs.evolve(
            level(left=60, right=60), measured={"front left leg.thickness": 41, "front right leg.thickness": 41}
        ),
    ),
    "a rail narrower than the other of its level": (
        "size to the narrowest",
        "note",
        "low/back rail",
        {"found": 60, "width": 58},
        ["60 mm wide; size it to 58 mm", "2 mm less"],
        attrs.evolve(level(front=60, back=60), measured={"low/front rail.width": 58}),
        attrs.evolve(level(front=60, back=60), measured={"low/front rail.width": 58}, uneven="own"),
    ),
    "a rail narrower than the notches of its level": (
        "gap accepted",
        "note",
        "low/front rail",
        {"gap": 2},
        ["2 mm narrower than its notches", "the widest of its level"],
        attrs.evolve(level(front=60, back=60), measured={"low/front rail.width": 58}, uneven="widest"),
        attrs.evolve(level(front=butted, back=60), measured={"low/front rail.width": 58}, uneven="widest"),
    ),
    "a rail thicker than the other of its level": (
        "stands proud",
        "note",
        "low/back rail",
        {"proud": 1},
        ["1 mm thicker than the thinnest rail of its level"],
        attrs.evolve(level(front=60, back=60), measured={"low/front rail.thickness": 19}),
        attrs.evolve(level(front=lapped, back=lapped), measured={"low/front rail.thickness": 19}),
    ),
    "a rail that covers a corner outside the legs": (
        "covers a corner",
        "note",
        "low/front rail",
        {"low": 20, "high": 0, "length": 620},
        ["runs past the legs by 20 mm at the left to cover", "620 mm long"],
        level(front=planted, left=planted),
        level(front=planted, left=60),
    ),
    "a measure of all rails after one of them was cut": (
        "measure not taken",
        "warning",
        "low/front rail",
        {"measured": 58, "kept": 60},
        ["stays 60 mm wide", "when it was cut", "the 58 mm measured for every piece", '"1/low/front rail.width"'],
        attrs.evolve(finished(PLAIN, "low/front rail"), measured={"low/front rail.width": 58}),
        attrs.evolve(finished(PLAIN, "low/front rail"), measured={"1/low/front rail.width": 58}),
    ),
    "a rail drawn wider than it was measured": (
        "measured holds",
        "note",
        "low/front rail",
        {"drawn": 70, "measured": 60},
        ["drawn 70 mm wide and measures 60 mm"],
        alter(level(front=60), {"low/front rail.width": 60, "low.front.width": 70}),
        alter(level(front=60), {"low/front rail.width": 58, "low.front.width": 60}),
    ),
    "a clear with a size and a weight": (
        "value not used",
        "note",
        "clear above low",
        {},
        ["it has a size, so its weight shares nothing"],
        with_stack(Clear(100), Level("low", front=60), Clear(80, weight=2), Level("high", front=60)),
        with_stack(Clear(100), Level("low", front=60), Clear(80), Level("high", front=60)),
    ),
    "both ends beside left and right": (
        "value not used",
        "note",
        "low.ends",
        {},
        ["left and right are given too"],
        level(ends=60, left=50, right=50),
        level(ends=60, left=50),
    ),
    "a measure for all where each piece has its own": (
        "value not used",
        "note",
        "low/front rail.width",
        {},
        ["every piece was measured by its own name"],
        attrs.evolve(PLAIN, measured={"low/front rail.width": 59, "1/low/front rail.width": 58}),
        attrs.evolve(PLAIN, measured={"low/front rail.width": 59, "1/low/front rail.thickness": 19}),
    ),
    "a fit where nothing is let in": (
        "value not used",
        "note",
        "fit",
        {},
        ["nothing takes a fit"],
        attrs.evolve(level(left=60, right=60), fit=0.4),
        attrs.evolve(level(front=60), fit=0.4),
    ),
}
