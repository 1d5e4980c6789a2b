"""lay_out: from a frame to where everything is, on one screen.

Heights come from the run up the legs, places along the length from the run of pairs and bays; blanks stand there,
corners are turned, joints take their wood, parts are named and marked, sets clamped, and the checks look at it all.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import attrs

from ..frame.frame import Frame
from ..frame.identity import of_piece
from ..lengths import TOUCH
from .bands import level_bands
from .blanks import Blank, RailBlank
from .checking import check
from .joining import join
from .joints.meeting import Cut, Joint
from .kinds import with_kinds
from .layout import Layout
from .over import over_legs
from .parts import Part, part_of
from .place import place
from .sets import make_sets, with_marks


def lay_out(frame: Frame) -> Layout:
    """Lay out a frame.

    Raises
    ------
    RunError
        If levels and clears, or legs and bays, do not come out. Whatever else is wrong is a finding.
    """
    bands = level_bands(frame)
    over = over_legs(frame, bands)
    parts: list[Part] = []
    joints: list[Joint] = []
    lost: dict[str, float] = {}
    for piece in range(frame.quantity):
        legs, rails = place(frame, bands, over, piece)
        sound = {name: rail for name, rail in rails.items() if _run(rail) > TOUCH}
        lost.update((of_piece(piece + 1, name), _run(rail)) for name, rail in rails.items() if name not in sound)
        made = tuple(join(piece + 1, legs, sound, frame.fit))
        joints += made
        parts += _parts(frame, piece + 1, legs, sound, made)
    marked = with_marks(with_kinds(parts))
    layout = Layout(frame=frame, parts=marked, joints=tuple(joints), sets=make_sets(marked), lost=lost)
    return attrs.evolve(layout, findings=check(layout))


def _run(rail: RailBlank) -> float:
    """Length of a rail. [mm]"""
    x, y, _ = rail.box.size()
    return x if rail.slot.long else y


def _parts(
    frame: Frame, piece: int, legs: Mapping[str, Blank], rails: Mapping[str, RailBlank], joints: Sequence[Joint]
) -> Iterator[Part]:
    taken: dict[str, list[Cut]] = {}
    for joint in joints:
        for cut in joint.cuts:
            taken.setdefault(cut.part, []).append(cut)
    for name, row, pair, leg in frame.legs():
        yield part_of(legs[name], piece, "leg", leg.stock.name, tuple(taken.get(name, ())), side=row, pair=pair)
    for name, rail in rails.items():
        slot, cuts = rail.slot, tuple(taken.get(name, ()))
        yield part_of(rail, piece, "rail", slot.stock.name, cuts, side=slot.side, level=slot.level.name)
