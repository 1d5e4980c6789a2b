"""Random frames, for tests that state a rule: `from strategies import frames`.

A description that comes out of here is always valid and its runs come out; its layout may have findings. Sizes are
whole counts of a unit, one millimetre or a sixteenth of an inch, so that nothing touches by less than that.
"""

from __future__ import annotations

import attrs
from boards_at_random import UNITS, Tape, carries, sometimes, stocks
from hypothesis import strategies as st

from benchjoin import Butt, Clear, EndRails, Frame, HalfLap, Leg, Level, Notch, Overall, Pair, Planted, Rail
from benchjoin.frame.stack import FLUSH

CORNERS = ("front through", "ends through", "staggered")
SIDES = ("front", "back", "left", "right", "cross")
NAMES = ("foot", "shelf", "bench", "head")


def joints(tape):
    part_way = tape.counts(4, 11).map(lambda count: Notch(tape.write(count)))
    laps = st.sampled_from([0.25, 0.5, 0.6]).map(lambda share: HalfLap(share=share))
    return st.one_of(st.none(), st.just(Notch()), part_way, laps, st.just(Butt()), st.just(Planted()))


def faces(side, joint):
    """Faces that a rail can go to with its joint."""
    butts = isinstance(joint, Butt) or (joint is None and side in ("left", "right", "cross"))
    if side == "cross":
        return ("outer", "middle", "left", "right") if butts else ("left", "right")
    return ("outer", "middle", "inner") if butts else ("outer", "inner")


@st.composite
def rails(draw, tape, side):
    """A rail, and its bottom and top over the edge of the level, as counts, when bottoms are shared."""
    width, joint = draw(tape.counts(20, 110)), draw(joints(tape))
    butts = isinstance(joint, Butt) or (joint is None and side in ("left", "right", "cross"))
    overhang = 0 if butts else draw(sometimes(tape.counts(-30, 70), otherwise=0))
    raised = draw(sometimes(tape.counts(-120, 120), otherwise=0))
    return Rail(
        tape.write(width),
        stock=draw(sometimes(stocks(tape, "odd board", (12, 30)), otherwise=None, one_in=5)),
        joint=joint,
        face=draw(st.sampled_from(faces(side, joint))),
        overhang=tape.write(overhang),
        raised=tape.write(raised),
    )


@st.composite
def levels(draw, tape, name, pairs):
    """Fields of a level, and each side's bottom and top over the lowest edge of its band. [mm]"""
    known = SIDES if pairs > 2 else SIDES[:4]
    sides = draw(st.lists(st.sampled_from(known), min_size=1, max_size=len(known), unique=True))
    fields = {side: draw(rails(tape, side)) for side in sides}
    if "left" in fields and "right" in fields and draw(st.booleans()):
        fields["ends"] = fields.pop("left")
        del fields["right"]
    align = draw(st.sampled_from(["bottoms", "bottoms", "tops"]))
    level = Level(name, align=align, **fields)
    at = {}
    for side, rail in level.sides().items():
        low = rail.raised if align == "bottoms" else rail.raised - rail.width
        at[side] = (low, low + rail.width)
    lowest = min(low for low, _ in at.values())
    return level, {side: (low - lowest, high - lowest) for side, (low, high) in at.items()}


@attrs.define
class Rising:
    """A stack while it grows from the foot; tops holds the heights of legs that a level is flush with. [mm]"""

    tape: Tape
    stack: list = attrs.field(factory=list)
    z: float = 0.0
    below: dict = attrs.field(factory=dict)
    tops: dict = attrs.field(factory=dict)
    shared: bool = False

    def add(self, draw, level, at, *, last):
        """Put a clear and a level on top: both fixed, or the level pinned above an open clear."""
        gap = draw(self.tape.counts(40, 260)) * self.tape.unit
        bottom, height = self.z + gap, max(high for _, high in at.values())
        pin = draw(st.sampled_from(["", "bottom", "top", "flush", "next"]))
        if pin == "next" and last:
            pin = "bottom"
        clear, pins = self._clear(draw, pin, gap, at), {}
        if pin == "bottom":
            pins["bottom"] = bottom
        elif pin in ("top", "flush"):
            pins = self._top(pin, level, at, bottom, height)
        elif self.shared and pin == "":  # an open clear below still waits for a pin
            pins["bottom"] = bottom
            clear = Clear(weight=clear.weight)
        self.shared = pin == "next"
        self.stack += [clear, attrs.evolve(level, **pins)]
        self.z, self.below = bottom + height, {side: height - high for side, (_, high) in at.items()}

    def _clear(self, draw, pin, gap, at):
        both = {*at, *self.below} if not self.stack else {*at} & {*self.below}  # the first is measured from the floor
        side = draw(sometimes(st.sampled_from(sorted(both)), otherwise=None)) if both else None
        step = self.below.get(side, 0.0) + (at[side][0] if side in at else 0.0)
        if self.shared or pin == "next":
            return Clear(weight=draw(st.sampled_from([1, 2, 0.5])))
        return Clear(at=side) if pin else Clear(gap + step, at=side)

    def _top(self, pin, level, at, bottom, height):
        row = next((row for row in ("front", "back") if row in at and row not in self.tops), None)
        if pin == "top" or row is None:
            return {"top": bottom + height}
        self.tops[row] = bottom + at[row][1]
        return {"flush": next(words for words, side in FLUSH.items() if side == row)}


@st.composite
def stacks(draw, tape, pairs, carried):
    """A stack, and the heights of legs that it asks for, with its own height. [mm]"""
    rising = Rising(tape)
    count = draw(st.integers(1, 3))
    for number, name in enumerate(NAMES[:count]):
        level, at = draw(levels(tape, name, pairs))
        rising.add(draw, level, at, last=number == count - 1)
    if carried:
        rising.stack = [draw(carries(tape, item, rising.stack)) for item in rising.stack]
    return rising


@st.composite
def legs(draw, tape, name, height):
    stock = draw(stocks(tape, name, (30, 60), (30, 90)))
    return Leg(stock, height=height, wide=draw(st.sampled_from(["front", "end"])))


def along(leg):
    return leg.stock.width if leg.wide == "front" else leg.stock.thickness


@st.composite
def rows(draw, tape, front, back, pairs, *, loose):
    """Bays and pairs, and the length over the legs; loose leaves every bay open and no pair held. [mm]"""
    items, pinned, heights = [], [0], (0.5 * front.height, front.height)
    end = max(along(front), along(back))
    x = end
    for number in range(pairs - 1):
        bay = draw(tape.counts(200, 600)) * tape.unit
        items.append([bay, True])
        x += bay
        if number < pairs - 2:
            own = draw(sometimes(legs(tape, "odd post", draw(st.sampled_from(heights))), otherwise=None))
            wide = max(along(own or front), along(back))
            items.append(Pair(front=own, at=None))
            if not loose and draw(st.booleans()):
                items[-1] = attrs.evolve(items[-1], at=x + wide / 2)
                pinned.append(len(items))
            x += wide
    x += end
    for first, last in zip(pinned, [*pinned[1:], len(items) + 1], strict=True):
        bays = [item for item in items[first:last] if isinstance(item, list)]
        for item in bays[1:]:  # the first bay between two held places stays open
            item[1] = loose or draw(st.booleans())
    bays = [item if isinstance(item, Pair) else Clear() if item[1] else Clear(item[0]) for item in items]
    return bays, x


@st.composite
def frames(draw, *, fits=True, most_pairs=4, overall=True, carried=True):
    """Any frame that can be described and laid out."""
    tape = Tape(draw(st.sampled_from(sorted(UNITS))))
    pairs = draw(st.integers(2, most_pairs))
    rising = draw(stacks(tape, pairs, carried))
    free = st.sampled_from([0.7, 1.0, 1.1, 1.4]).map(lambda part: max(round(part * rising.z / tape.unit), 60))
    heights = {row: rising.tops.get(row) or draw(free) * tape.unit for row in ("front", "back")}
    front = draw(legs(tape, "post", heights["front"]))
    back = draw(legs(tape, draw(st.sampled_from(["post", "back post"])), heights["back"]))
    if max(heights.values()) > rising.z + 40 and not rising.shared and draw(st.booleans()):
        rising.stack.append(Clear())
    over = draw(st.sampled_from(["legs", "overall", "end rails"] if overall else ["legs"]))
    bays, length = draw(rows(tape, front, back, pairs, loose=over == "overall"))
    frame = Frame(
        name="Any frame",
        length=Overall(length) if over == "overall" else length,
        depth=draw(tape.counts(420, 600)) * tape.unit,
        front=front,
        back=back,
        rail_stock=draw(stocks(tape, "board", (12, 30))),
        bays=bays,
        stack=rising.stack,
        corners=draw(st.sampled_from(CORNERS)),
        fit=draw(sometimes(st.sampled_from([0.25, 1.0]), otherwise=0.0, one_in=2)) if fits else 0.0,
        tape=tape.name,
        quantity=draw(st.integers(1, 2)),
    )
    if over == "end rails" and ends_are_alike(frame):
        return attrs.evolve(frame, depth=EndRails(frame.depth))
    if over == "overall":
        frame = attrs.evolve(frame, depth=Overall(frame.depth))
    return attrs.evolve(frame, measured=draw(measures(frame)))


def ends_are_alike(frame):
    """Whether all end rails butt between the legs alone, so that they have one length."""
    ends = [slot for slot in frame.rails() if slot.side in ("left", "right")]
    inside = [slot for slot in frame.rails() if slot.long and slot.of.face != "outer"]
    return bool(ends) and not inside and all(isinstance(slot.joint, Butt) for slot in ends)


@st.composite
def measures(draw, frame):
    """Sizes found on the wood, up to 2 mm off, in one piece or in all."""
    drawn = {leg.name: (leg.stock.thickness, leg.stock.width) for leg in frame.legs()}
    drawn |= {slot.name: (slot.stock.thickness, slot.of.width) for slot in frame.rails()}
    drawn |= {slot.name: (slot.stock.thickness, slot.stock.width) for slot in frame.carried()}
    names = draw(st.lists(st.sampled_from(sorted(drawn)), max_size=2, unique=True))
    found = {}
    for name in names:
        off = draw(st.sampled_from([-2, -1, 1, 2]))
        piece = draw(sometimes(st.integers(1, frame.quantity).map("{}/".format), otherwise=""))
        thickness, width = (size + off for size in drawn[name])
        field = draw(st.sampled_from(["size", "width", "thickness"]))
        given = {"size": (thickness, width), "width": width, "thickness": thickness}[field]
        found[f"{piece}{name}.{field}"] = given
    return found
