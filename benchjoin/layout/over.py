"""Sizes over the legs, piece by piece: what all places along the length and the depth are held to.

A length or depth over everything, or by the end rails, differs from the size over the legs by what rails stand out
or stop short, and that does not depend on the size itself. So a trial frame is placed, measured as the maker asked,
and corrected by the difference.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import attrs

from ..errors import DescriptionError
from ..frame.doors import Fault
from ..frame.frame import Frame, across_leg
from ..frame.governing import EndRails, Overall
from ..frame.joints import Butt
from ..frame.pair import Pair
from ..frame.stack import Clear
from ..lengths import TOUCH
from ..runs import Array, most, over_pieces
from .bands import Band
from .blanks import Blank, Over, RailBlank
from .place import place
from .sizes import Pick

Placed = tuple[Mapping[str, Blank], Mapping[str, RailBlank]]


def over_legs(frame: Frame, bands: Sequence[Band], picks: Sequence[Pick]) -> Over:
    """Length and depth over the legs in every piece, each of shape (quantity,), from a pick for each piece. [mm]

    Raises
    ------
    DescriptionError
        If end rails drawn at different lengths are to give the depth, or it leaves no room for the legs.
    """
    given = [span.size if isinstance(span, Overall | EndRails) else span for span in (frame.length, frame.depth)]
    every = [over_pieces([size] * frame.quantity) for size in given]
    room = sum(leg.stock.thickness + (leg.stock.width or 0.0) for *_, leg in frame.legs())
    if not any(isinstance(span, Overall | EndRails) for span in (frame.length, frame.depth)):
        return Over(*every)
    trial = Over(*(size + room for size in every))
    placed = [place(frame, bands, trial, pick, bays=_open(frame)) for pick in picks]
    sizes = [
        _held(frame, span, placed, axis, size, room)
        for axis, (span, size) in enumerate(zip((frame.length, frame.depth), every, strict=True))
    ]
    _room_for_legs(frame, sizes[1])
    return Over(*sizes)


def _room_for_legs(frame: Frame, depths: Array) -> None:
    """Refuse a depth that comes out smaller than a front and a back leg."""
    pairs: dict[str, float] = {}
    for _, _, pair, leg in frame.legs():
        pairs[pair] = pairs.get(pair, 0.0) + across_leg(leg, "end")
    need, short = max(pairs.values()), most(pairs.values()) > depths + TOUCH
    if short.any():
        least = float(depths.min())
        say = frame.tape.say
        what = f"it leaves {say(max(least, 0.0))} over the legs, and these alone take {say(need)}. Make it more."
        raise DescriptionError(f'Frame "{frame.name}": depth: {what}', faults=(Fault("depth", what),), pieces=short)


def _open(frame: Frame) -> tuple[Clear | Pair, ...]:
    """The same pairs with every bay open and none held at a place."""
    return tuple(Clear() if isinstance(bay, Clear) else attrs.evolve(bay, at=None) for bay in frame.bays)


def _held(frame: Frame, span: object, placed: Sequence[Placed], axis: int, size: Array, room: float) -> Array:
    measure: Mapping[type, Callable[[Frame, Placed, int], float]] = {Overall: _over_all, EndRails: _end_rails}
    if type(span) not in measure:
        return size
    found = over_pieces([measure[type(span)](frame, one, axis) for one in placed])
    return size + (size + room - found)


def _over_all(frame: Frame, placed: Placed, axis: int) -> float:
    """Size over legs and rails along an axis. [mm]"""
    boxes = [blank.box for blanks in placed for blank in blanks.values()]
    return max(box.high[axis] for box in boxes) - min(box.low[axis] for box in boxes)


def _end_rails(frame: Frame, placed: Placed, axis: int) -> float:
    """Length of the shortest end rail; all must be drawn alike. It is held, whatever the legs measured. [mm]"""
    rails = [rail for rail in placed[1].values() if rail.slot.side in ("left", "right")]
    drawn = {rail.name: rail.box.size()[axis] + _thicker(frame, placed, rail, axis) for rail in rails}
    if max(drawn.values()) - min(drawn.values()) > TOUCH:
        said = ", ".join(f"{name} {frame.tape.say(length)}" for name, length in drawn.items())
        what = f"the end rails are of different lengths ({said} in a trial). Give the depth over the legs."
        raise DescriptionError(f'Frame "{frame.name}": depth: {what}', faults=(Fault("depth", what),))
    return min(rail.box.size()[axis] for rail in rails)


def _thicker(frame: Frame, placed: Placed, rail: RailBlank, axis: int) -> float:
    """How much shorter a rail between two legs comes out because of what these measured. [mm]"""
    if not isinstance(rail.slot.joint, Butt):
        return 0.0
    drawn = {name: across_leg(leg, "end") for name, _, _, leg in frame.legs()}
    return sum(placed[0][name].box.size()[axis] - drawn[name] for name in rail.slot.legs)
