"""Slots: every member of a frame with its defaults filled in, before anything is placed.

A slot says what a part is of: its description and its stock, which way it lies, what it is joined to and how. Legs come
first, front row first, each row from the left; then the rails, level by level from the foot. Long rails (front, back)
are let in flush on the outer face unless the maker says otherwise; end and cross rails butt. A long rail that butts is
one rail for each bay; a cross rail stands at each inner pair.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Any

import attrs

from .clear import Side
from .faces import AXIS, OPPOSITE, X, Y, Z
from .identity import leg_name, rail_name
from .joints import How, RailJoint
from .leg import Leg
from .pair import Pair
from .rail import Rail
from .roles import LEG, RAIL, Role
from .stack import Level, default_joint
from .stock import Stock

if TYPE_CHECKING:
    from .top import Section
    from .tray import Tray

Axes = tuple[int, int, int]


@attrs.frozen(eq=False, kw_only=True, repr=False)
class Slot:
    """One member of a frame; compared and hashed as itself, since its stock may hold many variants.

    name is its identity, of its description, side its row or the side of its level, axes the axes of the world along
    its length, width and thickness, width its width as drawn [mm], true_edge the face it is gauged from beside the
    marked one. A leg has its pair; a rail its level, its joint, the names of its hosts in order along it, and the face
    of them that it goes to. also holds other joints with other hosts, such as of a board that is cut round a leg.
    What a level carries has the key of its run, its number in it, and the line that it lies on, which bearers that end
    against cross rails share; the last board of a run is the far one; a ledger has the pair before its bay. Its height
    goes by its hosts, or by what is named as under it. What is a part of a section of a top, or of a tray, has it; what
    lifts out together has one group.
    """

    name: str
    role: Role
    of: Any
    stock: Stock
    side: str
    axes: Axes
    width: float
    true_edge: str
    pair: str = ""
    level: Level | None = None
    joint: How | None = None
    hosts: tuple[str, ...] = ()
    face: str = ""
    also: tuple[tuple[How, tuple[str, ...]], ...] = ()
    run: str = ""
    number: int = 0
    line: int = 0
    far: bool = False
    part_of: Section | Tray | None = None
    group: str = ""
    under: tuple[str, ...] = ()

    @property
    def goes_by(self) -> tuple[str, ...]:
        """What its height goes by."""
        return self.under or self.hosts

    @property
    def joints(self) -> tuple[tuple[How, tuple[str, ...]], ...]:
        """All its joints, each with its hosts."""
        return self.also if self.joint is None else ((self.joint, self.hosts), *self.also)

    def marked(self, cut_from: Sequence[str] = ()) -> str:
        """The face that is marked: of a guest that is cut the first it is cut from, else the one that looks out.

        It is never that of the true edge, nor of the edge across from it.
        """
        out = self.face or self.side
        if not self.hosts:
            return out
        return next((face for face in cut_from if AXIS[face] != AXIS[self.true_edge]), out)

    @property
    def long(self) -> bool:
        """Whether it runs along the length of the frame."""
        return self.axes[0] == X

    @property
    def upright(self) -> bool:
        """Whether it stands."""
        return self.axes[0] == Z

    @property
    def between(self) -> bool:
        """Whether it ends against its hosts."""
        return self.joint is not None and self.joint.between

    @property
    def lies_on(self) -> int:
        """The axis that its hosts' face looks along."""
        return AXIS[self.face]

    @property
    def thickness(self) -> float:
        """Thickness as drawn. [mm]"""
        return self.stock.thickness

    def size(self, axis: int) -> float:
        """Width or thickness as drawn, whichever lies along an axis of the world. [mm]"""
        return self.width if axis == self.axes[1] else self.thickness

    def __repr__(self) -> str:
        return f"<Slot {self.name}>"


def leg_slots(front: Leg, back: Leg | None, pairs: Sequence[tuple[str, Pair]]) -> tuple[Slot, ...]:
    """Every leg: the front row from the left, then the back row if there is one; pairs by name."""
    rows = [("front", [pair.front or front for _, pair in pairs])]
    if back is not None:
        rows.append(("back", [pair.back or back for _, pair in pairs]))
    return tuple(
        Slot(
            name=leg_name(row, pair),
            role=LEG,
            of=leg,
            stock=leg.stock,
            side=row,
            axes=(Z, X, Y) if leg.wide == "front" else (Z, Y, X),
            width=leg.stock.width or 0.0,
            true_edge="right" if pair == "right" else "left",
            pair=pair,
        )
        for row, legs in rows
        for (pair, _), leg in zip(pairs, legs, strict=True)
    )


def rail_slots(levels: Iterable[Level], pairs: Sequence[str], stock: Stock) -> tuple[Slot, ...]:
    """Every rail of the levels, for leg pairs named from the left."""
    return tuple(
        Slot(
            name=rail_name(level.name, side, count),
            role=RAIL,
            of=rail,
            stock=rail.stock or stock,
            side=side,
            axes=(X, Z, Y) if side in ("front", "back") else (Y, Z, X),
            width=rail.width,
            true_edge="top" if level.align == "tops" else "bottom",
            level=level,
            joint=joint_of(side, rail),
            hosts=legs,
            face=_face(side, rail),
        )
        for level in levels
        for side, rail in level.sides().items()
        for count, legs in _goes_to(side, rail, pairs)
    )


def joint_of(side: Side, rail: Rail) -> RailJoint:
    """The joint that a rail says, or that of its side."""
    return rail.joint or default_joint(side)


def _face(side: Side, rail: Rail) -> str:
    """The face of its legs that a rail goes to."""
    if side == "cross":
        return rail.face if rail.face in OPPOSITE else "left"
    return OPPOSITE[side] if rail.face == "inner" else side


def _goes_to(side: Side, rail: Rail, pairs: Sequence[str]) -> Iterator[tuple[int | None, tuple[str, ...]]]:
    """Count (None for the only one) and legs of each rail of a side."""
    if side in ("left", "right"):
        yield None, (leg_name("front", side), leg_name("back", side))
    elif side == "cross":
        for count, pair in enumerate(pairs[1:-1], 1):
            yield count, (leg_name("front", pair), leg_name("back", pair))
    elif joint_of(side, rail).between and len(pairs) > 2:
        for count, bay in enumerate(itertools.pairwise(pairs), 1):
            yield count, tuple(leg_name(side, pair) for pair in bay)
    else:
        yield None, tuple(leg_name(side, pair) for pair in pairs)
