"""What is driven into a joint: each fastener with its place, its holes, and what all of a joint hold."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

import attrs

from ...frame.identity import of_piece
from ...solids import Box, Vector, vector
from .duty import Drive, Duty
from .fastener import Fastener

HoleKind = Literal["clearance", "lead", "bolt"]


@attrs.frozen(kw_only=True)
class Hole:
    """A cylinder beside a part, taken off no volume: from where it is drilled, the way, how deep and how wide. [mm]

    part is the part's name with its piece, mate that of the other part of the joint; sunk is the diameter of a
    countersink or counterbore at its mouth, nought without.
    """

    part: str
    mate: str
    kind: HoleKind
    start: Vector
    way: Vector
    depth: float
    diameter: float
    sunk: float = 0.0
    slot: float = 0.0

    @property
    def end(self) -> Vector:
        """Where it ends. [mm]"""
        return vector(at + self.depth * step for at, step in zip(self.start, self.way, strict=True))


@attrs.frozen(kw_only=True)
class Driven:
    """One fastener in its place: the middle of its head on the face, the way that it goes, its length. [mm]

    thick is the wood under its head with any gap behind it, inside how far its point goes into the other part; slot is
    how long the hole under its head is made so that a board can move, nought for a round one.
    """

    piece: int
    head: str
    point: str
    size: Fastener
    at: Vector
    way: Vector
    length: float
    thick: float
    inside: float
    slot: float = 0.0

    @property
    def tip(self) -> Vector:
        """Where it ends. [mm]"""
        return vector(at + self.length * step for at, step in zip(self.at, self.way, strict=True))

    @property
    def axis(self) -> int:
        """The axis of the world that it runs along."""
        return next(n for n, step in enumerate(self.way) if step)

    def cylinder(self, radius: float | None = None) -> Box:
        """The box around it, or around a cylinder of another radius. [mm]"""
        wide = self.size.diameter / 2 if radius is None else radius
        ends = (self.at, self.tip)
        lows = [min(one[n] for one in ends) - (0.0 if n == self.axis else wide) for n in range(3)]
        highs = [max(one[n] for one in ends) + (0.0 if n == self.axis else wide) for n in range(3)]
        return Box(vector(lows), vector(highs))

    def reach(self, radius: float, long: float) -> Box:
        """What a driver takes up before its head. [mm]"""
        back = vector(at - long * step for at, step in zip(self.at, self.way, strict=True))
        ends = (back, self.at)
        lows = [min(one[n] for one in ends) - (0.0 if n == self.axis else radius) for n in range(3)]
        highs = [max(one[n] for one in ends) + (0.0 if n == self.axis else radius) for n in range(3)]
        return Box(vector(lows), vector(highs))

    def holes(self, *, hardwood: bool) -> Iterator[Hole]:
        """The holes that are drilled for it, that under its head first."""
        head, point = (of_piece(self.piece, name) for name in (self.head, self.point))
        mate = vector(at + self.thick * step for at, step in zip(self.at, self.way, strict=True))
        kind: HoleKind = "bolt" if self.size.through else "clearance"
        yield Hole(
            part=head,
            mate=point,
            kind=kind,
            start=self.at,
            way=self.way,
            depth=self.thick,
            diameter=self.size.clearance(),
            sunk=self.size.head if self.size.kind == "screw" else 0.0,
            slot=self.slot,
        )
        yield Hole(
            part=point,
            mate=head,
            kind="bolt" if self.size.through else "lead",
            start=mate,
            way=self.way,
            depth=self.inside,
            diameter=self.size.lead(hardwood=hardwood),
        )


@attrs.frozen(kw_only=True, eq=False)
class Fixing:
    """How one joint is fastened: by what, with how many in their places, and what these hold together. [N]

    lateral and withdrawal are None where the wood is not known. asked tells that the maker chose the fastener; full
    whether its places keep the distances of what carries; before names parts that come over its heads later.
    """

    drive: Drive
    size: Fastener
    driven: tuple[Driven, ...]
    full: bool
    asked: bool
    lateral: float | None = None
    withdrawal: float | None = None
    before: tuple[str, ...] = ()

    @property
    def piece(self) -> int:
        """Of which piece of the batch."""
        return self.drive.joint.piece

    @property
    def host(self) -> str:
        """Who the guest comes to."""
        return self.drive.joint.host

    @property
    def guest(self) -> str:
        """The part that comes."""
        return self.drive.joint.guest

    @property
    def duty(self) -> Duty:
        """What is asked of it."""
        return self.drive.duty

    @property
    def length(self) -> float:
        """Of its fasteners. [mm]"""
        return self.driven[0].length if self.driven else 0.0
