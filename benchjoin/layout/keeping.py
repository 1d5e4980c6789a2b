"""Keeping: parts that have been sized, marked or cut are written down as they are, and stay so.

`keep` gives a new frame in which some parts of a layout are finished. Whatever is measured or changed after that, their
lengths, shoulders and depths do not move; what no longer fits is a finding with its size.
"""

from __future__ import annotations

import attrs

from ..errors import AddressError, told
from ..frame.finished import STATES, Finished, FinishedCut, State
from ..frame.frame import Frame
from ..frame.identity import of_piece, piece_of
from ..solids import Box, placement
from .blanks import OUT, Blank, RailBlank
from .joints.meeting import Cut
from .layout import Layout
from .parts import Part


def keep(layout: Layout, *names: str, state: State = "cut") -> Frame:
    """The frame of a layout with some parts finished as they are in it.

    Parameters
    ----------
    layout : Layout
    names : str
        Parts by name; without a piece, in every piece.
    state : {"sized", "marked", "cut"}
        How far they are: a sized part keeps its length and section, a marked or cut one its shoulders and depths too.

    Raises
    ------
    AddressError
        If a name is no part of the layout, or the state is none of the three.

    Examples
    --------
    ``later = keep(layout, "back left leg", "back right leg", state="cut")``
    """
    if state not in STATES:
        raise AddressError(f"state is {told(state)}. Choose one of {', '.join(STATES)}.", address=state)
    finished, measured = dict(layout.frame.finished), dict(layout.frame.measured)
    for part in (part for name in names for part in _parts(layout, name)):
        finished[part.name] = Finished(state, part.length, () if state == "sized" else _cuts(part))
        measured[part.name] = _section(layout.frame, part)
    return attrs.evolve(layout.frame, finished=finished, measured=measured)


def _parts(layout: Layout, name: str) -> list[Part]:
    piece, identity = piece_of(name)
    pieces = range(1, layout.frame.quantity + 1) if piece is None else (piece,)
    return [layout.part(of_piece(number, identity)) for number in pieces]


def _section(frame: Frame, part: Part) -> dict[str, float]:
    """Thickness and width of a part in the sense of its stock: a rail's width stands upright."""
    x, y, z = part.blank.size()
    if part.role == "rail":
        return {"thickness": y if part.side in ("front", "back") else x, "width": z}
    leg = next(leg for name, _, _, leg in frame.legs() if name == part.identity)
    return {"thickness": y, "width": x} if leg.wide == "front" else {"thickness": x, "width": y}


def _cuts(part: Part) -> tuple[FinishedCut, ...]:
    return tuple(
        FinishedCut(cut.mate, cut.face, cut.kind, box.low, box.high)
        for cut, box in zip(part.cuts, part.local_cuts, strict=True)
    )


def held_leg(frame: Frame, piece: int, leg: Blank) -> Blank:
    """A leg as long as it was finished, or as it is."""
    done = frame.finished.get(of_piece(piece, leg.name))
    return leg if done is None else attrs.evolve(leg, box=_long(leg.box, 2, done.length))


def held_rail(frame: Frame, piece: int, rail: RailBlank) -> RailBlank:
    """A rail as long as it was finished, from its datum end, or as it is."""
    done = frame.finished.get(of_piece(piece, rail.name))
    return rail if done is None else attrs.evolve(rail, box=_long(rail.box, 0 if rail.slot.long else 1, done.length))


def _long(box: Box, axis: int, length: float) -> Box:
    high = list(box.high)
    high[axis] = box.low[axis] + length
    return Box(box.low, (high[0], high[1], high[2]))


def held_cuts(frame: Frame, part: Part) -> Part:
    """A part with the cuts that were marked or made in it, or as it is."""
    done = frame.finished.get(part.name)
    if done is None or done.state == "sized":
        return part
    marked = part.marked if part.role == "leg" or not done.cuts else done.cuts[0].face
    own = placement(part.blank, along=part.placement.u, out=OUT[marked])
    cuts = tuple(
        Cut(part=part.identity, mate=c.mate, face=c.face, kind=c.kind, box=own.world(Box(c.low, c.high)))
        for c in done.cuts
    )
    return attrs.evolve(part, cuts=cuts, marked=marked, placement=own)
