"""Building one piece: its blanks placed, corners turned, finished parts held, joints cut, and parts made of it all.

`lay_out` builds every piece of a batch; `sweep` builds one piece in many variants at once. Both come through here, so
that a place is worked out once.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import attrs

from ..frame.frame import Frame
from ..frame.identity import of_piece
from ..lengths import TOUCH
from ..solids import along
from .bands import Band
from .blanks import Blank, Over, RailBlank
from .joining import join
from .joints.meeting import Cut, Joint
from .keeping import held_cuts, held_leg, held_rail
from .parts import Part, part_of
from .place import place
from .sizes import Pick


@attrs.frozen(kw_only=True)
class Built:
    """Parts and joints of one piece; lengths of lost rails, and those that finished parts should have, by name. [mm]"""

    parts: tuple[Part, ...]
    joints: tuple[Joint, ...]
    lost: Mapping[str, float]
    wanted: Mapping[str, float]


def build(frame: Frame, bands: Sequence[Band], over: Over, piece: int, pick: Pick) -> Built:
    """One piece, by its number from 1 and its pick of the sizes; parts have no marks or kinds yet.

    A rail that was finished too short or too long is joined as the rail that it should be; a check says what is off.

    Raises
    ------
    RunError
        If bays and legs do not come out over the length.
    """
    placed, rails_placed = place(frame, bands, over, pick)
    legs = {name: held_leg(frame, piece, leg) for name, leg in placed.items()}
    rails = {name: held_rail(frame, piece, rail) for name, rail in rails_placed.items()}
    sound = {name: rail for name, rail in rails.items() if _run(rail) > TOUCH}
    joints = tuple(join(piece, legs, {name: rails_placed[name] for name in sound}, frame.fit_of))
    return Built(
        parts=tuple(held_cuts(frame, part) for part in _parts(frame, piece, legs, sound, joints)),
        joints=joints,
        lost={name: _run(rail) for name, rail in rails.items() if name not in sound},
        wanted={
            name: _run(blank)
            for name, blank in {**placed, **rails_placed}.items()
            if of_piece(piece, name) in frame.finished
        },
    )


def _run(blank: Blank) -> float:
    """Length of a part along the way it runs. [mm]"""
    return along(blank.box.high, blank.along) - along(blank.box.low, blank.along)


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
