"""Sizes over the legs, piece by piece: what all places along the length and the depth are held to.

A length or depth over everything, or by the end rails, differs from the size over the legs by what rails stand out
or stop short, and that does not depend on the size itself. So a trial frame is placed, measured as the maker asked,
and corrected by the difference.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import attrs
import numpy as np

from ..errors import DescriptionError
from ..frame.doors import Fault
from ..frame.frame import Frame
from ..frame.governing import EndRails, Overall
from ..frame.stack import Clear
from ..lengths import TOUCH
from ..runs import Array
from .bands import Band
from .blanks import Blank, Over, RailBlank
from .place import place

Placed = tuple[Mapping[str, Blank], Mapping[str, RailBlank]]


def over_legs(frame: Frame, bands: Sequence[Band]) -> Over:
    """Length and depth over the legs in every piece, each of shape (quantity,). [mm]

    Raises
    ------
    DescriptionError
        If end rails of different lengths are to give the depth.
    """
    given = [span if isinstance(span, float) else span.size for span in (frame.length, frame.depth)]
    room = sum(leg.stock.thickness + (leg.stock.width or 0.0) for *_, leg in frame.legs())
    trial = Over(*(np.full(frame.quantity, size + room) for size in given))
    if isinstance(frame.length, float) and isinstance(frame.depth, float):
        return Over(*(np.full(frame.quantity, size) for size in given))
    loose = attrs.evolve(frame, length=given[0] + room, depth=given[1] + room, bays=_open(frame))
    placed = [place(loose, bands, trial, piece) for piece in range(frame.quantity)]
    sizes = [
        _held(frame, span, placed, axis, size, room)
        for axis, (span, size) in enumerate(zip((frame.length, frame.depth), given, strict=True))
    ]
    return Over(*sizes)


def _open(frame: Frame) -> tuple[object, ...]:
    """The same pairs with every bay open and none held at a place."""
    return tuple(Clear() if isinstance(bay, Clear) else attrs.evolve(bay, at=None) for bay in frame.bays)


def _held(frame: Frame, span: object, placed: Sequence[Placed], axis: int, size: float, room: float) -> Array:
    measure: Mapping[type, Callable[[Frame, Placed, int], float]] = {Overall: _over_all, EndRails: _end_rails}
    if type(span) not in measure:
        return np.full(len(placed), size)
    found = np.array([measure[type(span)](frame, one, axis) for one in placed])
    return size + (size + room - found)


def _over_all(frame: Frame, placed: Placed, axis: int) -> float:
    """Size over legs and rails along an axis. [mm]"""
    boxes = [blank.box for blanks in placed for blank in blanks.values()]
    return max(box.high[axis] for box in boxes) - min(box.low[axis] for box in boxes)


def _end_rails(frame: Frame, placed: Placed, axis: int) -> float:
    """Length that all end rails have. [mm]"""
    lengths = {name: rail.box.size()[axis] for name, rail in placed[1].items() if rail.slot.side in ("left", "right")}
    if max(lengths.values()) - min(lengths.values()) > TOUCH:
        said = ", ".join(f"{name} {frame.tape.say(length)}" for name, length in lengths.items())
        what = f"the end rails are of different lengths ({said} in a trial). Give the depth over the legs."
        raise DescriptionError(f'Frame "{frame.name}": depth: {what}', faults=(Fault("depth", what),))
    return next(iter(lengths.values()))
