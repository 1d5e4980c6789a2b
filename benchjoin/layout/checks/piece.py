"""What a check is given: one piece of the batch, and how to say where and how much."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property

import attrs

from ...frame.finished import Finished
from ...frame.frame import Frame
from ...frame.identity import of_piece
from ...phrases import listed
from ...runs import Array
from ...trade.practice import MARKED
from ..joints.meeting import Joint
from ..kinds import Key, shape_keys
from ..parts import Part
from ..placing.sizes import RailSizes, in_piece, rail_sizes


@attrs.frozen(kw_only=True, eq=False, repr=False, slots=False)
class Piece:
    """One piece: its parts by name, its joints, the rails without length; label is set where pieces differ."""

    frame: Frame
    label: str
    parts: Mapping[str, Part]
    joints: tuple[Joint, ...]
    lost: Mapping[str, float]
    wanted: Mapping[str, float] = attrs.field(factory=dict)
    number: int = 1

    @cached_property
    def rail_sizes(self) -> Mapping[str, RailSizes]:
        """Sizes of every rail by its name, in every piece."""
        return rail_sizes(self.frame)

    @cached_property
    def held(self) -> Mapping[str, Sequence[Joint]]:
        """The joints of each guest, by its name."""
        found: dict[str, list[Joint]] = {}
        for joint in self.joints:
            found.setdefault(joint.guest, []).append(joint)
        return found

    def finished(self, identity: str) -> Finished | None:
        """How a part of this piece was finished; None where it is still to be made."""
        return self.frame.finished.get(of_piece(self.number, identity))

    @property
    def legs(self) -> tuple[Part, ...]:
        """The legs, front row first."""
        return tuple(part for part in self.parts.values() if part.slot.role.stands)

    @property
    def holds(self) -> float:
        """How far off a finished part may be and still be as it should: a hair, or what a struck line can hold. [mm]"""
        return max(self.frame.tape.hair, MARKED)

    def of(self, sizes: Array) -> float:
        """The number of this piece out of an array over the pieces."""
        return in_piece(self.number - 1)(sizes)

    def say(self, length: float) -> str:
        """A length as the design's tape reads it, with its unit."""
        return self.frame.tape.say(length)

    def amount(self, length: float) -> str:
        """A difference: as the design's tape reads it, or in mm where that reads as nothing or is off the mark."""
        return self.frame.tape.amount(length)

    def where(self, name: str) -> str:
        """A part's name, with the piece where pieces differ."""
        return f"{self.label}{name}"

    @cached_property
    def kinds_of_legs(self) -> list[tuple[str, Part, tuple[str, ...]]]:
        """The names of like legs in words (mirror images count as alike), one of them, and their identities."""
        groups: dict[Key, list[Part]] = {}
        for leg in self.legs:
            groups.setdefault(min(shape_keys(leg)), []).append(leg)
        return [
            (self.where(_together(members)), members[0], tuple(leg.identity for leg in members))
            for members in groups.values()
        ]


def _together(legs: list[Part]) -> str:
    """'front left leg and front right leg'."""
    return listed([leg.identity for leg in legs])
