"""A layout: where everything of a frame falls. It is what all later stages read; `lay_out` makes it."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property

import attrs

from ..display import page
from ..errors import AddressError, typed
from ..findings import Finding, counts
from ..frame.frame import Frame
from ..frame.identity import of_piece, piece_of
from .batch import same_wood
from .joints.meeting import Joint
from .parts import Part
from .sets import PartSet


@attrs.frozen(kw_only=True, repr=False, slots=False)
class Layout:
    """Where everything of a frame falls: its parts and joints in every piece, its sets, and what the checks found.

    wanted holds, for parts that stay as they were finished, the length that they would have now; lost holds the rails
    that have no length left, by name, with the length that was left for them. [mm]
    """

    frame: Frame
    parts: tuple[Part, ...]
    joints: tuple[Joint, ...]
    sets: tuple[PartSet, ...]
    lost: Mapping[str, float] = attrs.field(factory=dict, hash=False)
    wanted: Mapping[str, float] = attrs.field(factory=dict, hash=False)
    findings: tuple[Finding, ...] = ()

    @cached_property
    def _pieces(self) -> Mapping[int, tuple[Part, ...]]:
        found: dict[int, list[Part]] = {}
        for part in self.parts:
            found.setdefault(part.piece, []).append(part)
        return {piece: tuple(parts) for piece, parts in found.items()}

    @cached_property
    def _joints(self) -> Mapping[int, tuple[Joint, ...]]:
        found: dict[int, list[Joint]] = {}
        for joint in self.joints:
            found.setdefault(joint.piece, []).append(joint)
        return {piece: tuple(joints) for piece, joints in found.items()}

    @cached_property
    def alike(self) -> tuple[tuple[int, ...], ...]:
        """Numbers of the pieces whose wood is the same, kind by kind: one picture is true of all of a kind."""
        return same_wood(self._pieces)

    @cached_property
    def _by_name(self) -> Mapping[str, Part]:
        return {part.name: part for part in self.parts}

    def part(self, name: str) -> Part:
        """A part by its name: "2/bench/front rail"; without a piece, the first one's.

        Raises
        ------
        AddressError
            If there is no such part.
        """
        piece, identity = piece_of(name) if isinstance(name, str) else (None, "")
        found = self._by_name.get(of_piece(1 if piece is None else piece, identity))
        if found is None:
            known = tuple(dict.fromkeys(part.identity for part in self.parts))
            each = f"{self.frame.quantity} of each of {', '.join(known)}"
            raise AddressError(f"{typed(name)} is no part of this layout, which has {each}.", address=name, known=known)
        return found

    def mate(self, part: Part, name: str) -> Part | None:
        """The part of the same piece that a cut is for; None where a finished part is cut for what is gone since."""
        return self._by_name.get(of_piece(part.piece, name))

    def leg(self, name: str, piece: int = 1) -> Part:
        """A leg by its row and pair: "back left".

        Raises
        ------
        AddressError
            If there is no such leg, or no such piece.
        """
        legs = {part.identity: part for part in self.legs(piece)}
        found = legs.get(f"{name} leg") or legs.get(f"{name}")
        if found is None:
            said = f"There is no leg {typed(name)} in piece {piece}. Legs are {', '.join(legs)}."
            raise AddressError(said, address=name, known=tuple(legs))
        return found

    def set(self, letter: str) -> PartSet:
        """A set by its letter.

        Raises
        ------
        AddressError
            If there is no such set.
        """
        for part_set in self.sets:
            if part_set.letter == letter:
                return part_set
        known = tuple(part_set.letter for part_set in self.sets)
        said = f"There is no set {typed(letter)}. Sets are {', '.join(known)}."
        raise AddressError(said, address=letter, known=known)

    def overall(self, piece: int = 1) -> tuple[float, float, float]:
        """Length, depth and height of a piece over everything: legs, planted rails and overhangs. [mm]"""
        boxes = [part.blank for part in self.piece(piece)]
        x, y, z = (max(b.high[n] for b in boxes) - min(b.low[n] for b in boxes) for n in range(3))
        return x, y, z

    def piece(self, number: int) -> tuple[Part, ...]:
        """The parts of one piece.

        Raises
        ------
        AddressError
            If there is no such piece.
        """
        if number not in range(1, self.frame.quantity + 1):
            said = f"There is no piece {typed(number)}. The quantity is {self.frame.quantity}; pieces count from 1."
            raise AddressError(said, address=number, known=tuple(range(1, self.frame.quantity + 1)))
        return self._pieces[number]

    def joints_of(self, number: int = 1) -> tuple[Joint, ...]:
        """The joints of one piece."""
        return self._joints.get(number, ())

    def joined(self, joint: Joint) -> tuple[Part, Part]:
        """Host and guest of a joint."""
        return self.part(of_piece(joint.piece, joint.host)), self.part(of_piece(joint.piece, joint.guest))

    def legs(self, piece: int = 1) -> tuple[Part, ...]:
        """The legs of one piece, front row first.

        Raises
        ------
        AddressError
            If there is no such piece.
        """
        return tuple(part for part in self.piece(piece) if part.slot.role.stands)

    def _repr_html_(self) -> str:
        return page("layout_page", self)

    def errors(self) -> tuple[Finding, ...]:
        """The findings that stop the wood from being marked."""
        return tuple(finding for finding in self.findings if finding.severity == "error")

    def __repr__(self) -> str:
        found = counts(self.findings) or "no findings"
        parts, sets = len(self.parts), len(self.sets)
        return f"<Layout of {self.frame.name}: {parts} parts, {sets} sets, make {self.frame.quantity}, {found}>"
