"""Building one piece: its blanks placed, corners turned, finished parts held, joints cut, and parts made of it all.

`lay_out` builds every piece of a batch; `sweep` builds one piece in many variants at once. Both come through here, so
that a place is worked out once.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import attrs

from ..frame.frame import Frame
from ..lengths import TOUCH
from .joining import join
from .joints.meeting import Cut, Joint
from .keeping import held, held_cuts
from .parts import Part, part_of
from .placing.bands import Band
from .placing.place import place
from .placing.site import Over
from .placing.sizes import Pick


@attrs.frozen(kw_only=True, eq=False, repr=False, slots=False)
class Built:
    """Parts and joints of one piece; by name the lengths of lost members, and those that finished parts should have."""

    parts: tuple[Part, ...]
    joints: tuple[Joint, ...]
    lost: Mapping[str, float]
    wanted: Mapping[str, float]


def build(frame: Frame, bands: Sequence[Band], over: Over, piece: int, pick: Pick) -> Built:
    """One piece, by its number from 1 and its pick of the sizes; parts have no marks or kinds yet.

    A member that was finished too short or too long is joined as the one that it should be; a check says what is off.

    Raises
    ------
    RunError
        If bays and legs do not come out over the length.
    """
    placed = place(frame, bands, over, pick)
    blanks = {name: held(frame, piece, blank) for name, blank in placed.items()}
    sound = {name: blank for name, blank in blanks.items() if blank.length > TOUCH}
    joints = tuple(join(piece, sound, {name: placed[name] for name in sound}, frame.fit_of))
    taken: dict[str, list[Cut]] = {}
    for cut in (cut for joint in joints for cut in joint.cuts):
        taken.setdefault(cut.part, []).append(cut)
    met: dict[str, list[Joint]] = {}
    for joint in joints:
        if not joint.how.shares:
            met.setdefault(joint.host, []).append(joint)
    parts = (
        part_of(blank, piece, tuple(taken.get(name, ())), tuple(met.get(name, ())), frame.tape)
        for name, blank in sound.items()
    )
    return Built(
        parts=tuple(held_cuts(frame, part) for part in parts),
        joints=joints,
        lost={name: blank.length for name, blank in blanks.items() if name not in sound},
        wanted={name: blank.length for name, blank in placed.items() if blanks[name] is not blank},
    )


def in_piece(built: Built, piece: int) -> Built:
    """The same wood in another piece that is like it in every size."""
    return attrs.evolve(
        built,
        parts=tuple(attrs.evolve(part, piece=piece) for part in built.parts),
        joints=tuple(attrs.evolve(joint, piece=piece) for joint in built.joints),
    )
