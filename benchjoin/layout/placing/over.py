"""Sizes over the legs, piece by piece: what all places along the length and the depth are held to.

A length or depth over everything, or by the end rails, differs from the size over the legs by what rails stand out
or stop short, and that does not depend on the size itself. So a trial frame is placed, measured as the maker asked,
and corrected by the difference.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import attrs

from ...errors import DescriptionError
from ...frame.clear import Clear
from ...frame.doors import Fault
from ...frame.faces import Y
from ...frame.frame import Frame
from ...frame.governing import EndRails, Overall
from ...frame.pair import Pair
from ...lengths import TOUCH
from ...runs import Array, most, over_pieces
from ..blank import Blank
from .bands import Band
from .place import place
from .site import Over
from .sizes import Pick, section

Placed = Mapping[str, Blank]


def over_legs(frame: Frame, bands: Sequence[Band], picks: Sequence[Pick]) -> Over:
    """Length and depth over the legs in every piece, each of shape (quantity,), from a pick for each piece. [mm]

    Raises
    ------
    DescriptionError
        If end rails drawn at different lengths are to give the depth, or it leaves no room for the legs.
    """
    every = [_given(frame, span) for span in (frame.length, frame.depth)]
    room = sum(leg.thickness + leg.width for leg in frame.legs())
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


def _given(frame: Frame, span: float | Overall | EndRails | None) -> Array:
    """A size as the maker gave it; where none was given, how deep the uprights of a single row are. [mm]"""
    if span is None:
        return most(section(frame, leg).along(leg, Y) for leg in frame.legs())
    return over_pieces([span.size if isinstance(span, Overall | EndRails) else span] * frame.quantity)


def _room_for_legs(frame: Frame, depths: Array) -> None:
    """Refuse a depth that comes out smaller than a front and a back leg; a single row has room for itself."""
    if frame.back is None:
        return
    pairs: dict[str, float] = {}
    for leg in frame.legs():
        pairs[leg.pair] = pairs.get(leg.pair, 0.0) + leg.size(Y)
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
    boxes = [blank.box for blank in placed.values()]
    return max(box.high[axis] for box in boxes) - min(box.low[axis] for box in boxes)


def _end_rails(frame: Frame, placed: Placed, axis: int) -> float:
    """Length of the shortest end rail; all must be drawn alike. It is held, whatever the legs measured. [mm]"""
    rails = [blank for blank in placed.values() if blank.slot.side in ("left", "right")]
    drawn = {rail.name: rail.length + _thicker(placed, rail) for rail in rails}
    if max(drawn.values()) - min(drawn.values()) > TOUCH:
        said = ", ".join(f"{name} {frame.tape.say(length)}" for name, length in drawn.items())
        what = f"the end rails are of different lengths ({said} in a trial). Give the depth over the legs."
        raise DescriptionError(f'Frame "{frame.name}": depth: {what}', faults=(Fault("depth", what),))
    return min(rail.length for rail in rails)


def _thicker(placed: Placed, rail: Blank) -> float:
    """How much shorter a rail between two legs comes out because of what these measured. [mm]"""
    if not rail.slot.between:
        return 0.0
    legs = [placed[name] for name in rail.slot.hosts]
    return sum(leg.box.size()[rail.axis] - leg.slot.size(rail.axis) for leg in legs)
