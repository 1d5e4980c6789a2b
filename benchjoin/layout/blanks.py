"""Blanks: each part as a plain box where it stands, before any joint takes wood from it.

Legs stand at their places along the length (a run of leg pairs and bays) with their outer faces held at the size
over the legs. Rails go to a face of their legs by as much as their joint lets them in.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import attrs

from ..frame.frame import Frame
from ..frame.joints import Butt
from ..frame.leg import Leg
from ..frame.pair import Pair
from ..frame.slots import Slot
from ..frame.stack import Clear
from ..runs import Array, Member, Pin, lay_run, most
from ..solids import Box, Vector
from .sizes import Pick, RailSizes, leg_section

OUT: Mapping[str, Vector] = {
    "front": (0.0, -1.0, 0.0),
    "back": (0.0, 1.0, 0.0),
    "left": (-1.0, 0.0, 0.0),
    "right": (1.0, 0.0, 0.0),
    "top": (0.0, 0.0, 1.0),
    "bottom": (0.0, 0.0, -1.0),
}
"""The way each face looks."""
UP: Vector = (0.0, 0.0, 1.0)
X, Y, Z = 0, 1, 2


@attrs.frozen(kw_only=True)
class Blank:
    """A part before joints: its box in the world, which way it runs, and the face that is marked."""

    name: str
    box: Box
    along: Vector
    marked: str


@attrs.frozen(kw_only=True)
class RailBlank(Blank):
    """A rail before joints; face is the face of the legs that it goes to.

    flush is the depth that lets it in flush, spare how much wider its notches are than the rail itself. [mm]
    """

    slot: Slot
    face: str
    flush: float
    spare: float


@attrs.frozen
class Over:
    """Length and depth over the legs in every piece, each of shape (quantity,). [mm]"""

    length: Array
    depth: Array

    def of(self, pick: Pick) -> tuple[float, float]:
        """Length and depth of one piece. [mm]"""
        return pick(self.length), pick(self.depth)


def pair_edges(frame: Frame, over: Over, bays: Sequence[Clear | Pair]) -> Array:
    """Edges of leg pairs and bays along the length, shape (quantity, 2 × pairs). [mm]

    Raises
    ------
    RunError
        If bays and legs do not come out over the length.
    """
    widths: dict[str, list[Array]] = {}
    for name, _, pair, leg in frame.legs():
        widths.setdefault(pair, []).append(leg_section(frame, name, leg).across(leg, "front"))
    names, say = frame.pairs(), frame.tape.say
    members = [Member(name="left legs", size=most(widths["left"]))]
    pins = [Pin(edge=0, at=0.0, name="the left end")]
    for place, item in enumerate(bays):
        if isinstance(item, Clear):
            members.append(Member(name=f"bay {place // 2 + 1}", size=item.size, share=item.weight))
            continue
        name = names[place // 2 + 1]
        wide = most(widths[name])
        if item.at is not None:
            pins.append(Pin(edge=len(members), at=item.at - wide / 2, name=f"{name} pair (middle at {say(item.at)})"))
        members.append(Member(name=f"{name} legs", size=wide))
    members.append(Member(name="right legs", size=most(widths["right"])))
    end = f"the right end (at {say(float(over.length.flat[0]))})"
    return lay_run(
        "Legs along the length", members, [*pins, Pin(edge=len(members), at=over.length, name=end)], frame.tape
    )


def leg_blanks(frame: Frame, edges: Array, over: Over, pick: Pick) -> dict[str, Blank]:
    """Legs of one piece, front row first, from the left."""
    depth = over.of(pick)[1]
    return {name: _leg(frame, edges, depth, pick, name, row, pair, leg) for name, row, pair, leg in frame.legs()}


def _leg(frame: Frame, edges: Array, depth: float, pick: Pick, name: str, row: str, pair: str, leg: Leg) -> Blank:
    section = leg_section(frame, name, leg)
    wide, deep = pick(section.across(leg, "front")), pick(section.across(leg, "end"))
    number = frame.pairs().index(pair)
    low, high = pick(edges[..., 2 * number]), pick(edges[..., 2 * number + 1])
    x = {"left": low, "right": high - wide}.get(pair, (low + high - wide) / 2)
    y = 0.0 if row == "front" else depth - deep
    return Blank(name=name, box=Box((x, y, 0.0), (x + wide, y + deep, leg.height)), along=UP, marked=row)


def rail_blank(
    slot: Slot,
    rise: tuple[float, float],
    legs: Mapping[str, Blank],
    over: tuple[float, float],
    sizes: RailSizes,
    pick: Pick,
    let_in: LetIn,
) -> RailBlank:
    """One rail where it stands, before corners are turned; rise is its bottom and top, over its frame's size. [mm]"""
    thick, flush = pick(sizes.own.thickness), pick(sizes.flush)
    along, across = (X, Y) if slot.long else (Y, X)
    own = [legs[name].box for name in slot.legs]
    face, looks = _face(slot)
    low, high = _across(slot, own, across, thick, let_in(slot.joint, thick, flush), looks)
    start, end = _along(over, slot, own, along)
    box = Box(*(_corner(along, a, c, z) for a, c, z in ((start, low, rise[0]), (end, high, rise[1]))))
    run: Vector = (1.0, 0.0, 0.0) if slot.long else (0.0, 1.0, 0.0)
    spare = pick(sizes.notch - sizes.own.width)
    return RailBlank(name=slot.name, box=box, along=run, marked=face, slot=slot, face=face, flush=flush, spare=spare)


LetIn = Callable[[object, float, float], float]
"""How deep a joint lets a rail of some thickness into its leg, flush being the depth of the thinnest. [mm]"""
OPPOSITE = {"front": "back", "back": "front", "left": "right", "right": "left"}


def _face(slot: Slot) -> tuple[str, int]:
    """The face of the legs that a rail goes to, and which way along the axis across the rail it looks."""
    face: str
    if slot.side == "cross":
        face = slot.rail.face if slot.rail.face in OPPOSITE else "left"
    else:
        face = OPPOSITE[slot.side] if slot.rail.face == "inner" else slot.side
    return face, (-1 if face in ("front", "left") else 1)


def _across(slot: Slot, own: list[Box], axis: int, thick: float, let_in: float, looks: int) -> tuple[float, float]:
    """Extent of a rail across its run: by the face it goes to, or in the middle of its legs."""
    lows, highs = [box.low[axis] for box in own], [box.high[axis] for box in own]
    middle = slot.rail.face == "middle" or (slot.side == "cross" and slot.rail.face == "outer")
    if middle:
        low = (max(lows) + min(highs) - thick) / 2
        return low, low + thick
    if looks < 0:
        face = min(lows)
        return face + let_in - thick, face + let_in
    face = max(highs)
    return face - let_in, face - let_in + thick


def _along(over: tuple[float, float], slot: Slot, own: list[Box], axis: int) -> tuple[float, float]:
    """Extent of a rail along its run: between its legs, or over them with its overhang."""
    if isinstance(slot.joint, Butt):
        return own[0].high[axis], own[-1].low[axis]
    return -slot.rail.overhang, over[axis] + slot.rail.overhang


def _corner(along: int, a: float, c: float, z: float) -> Vector:
    return (a, c, z) if along == X else (c, a, z)
