"""Rails with their defaults filled in: what each one is called, what it is of, how it is joined, which legs it meets.

Long rails (front, back) are let in flush on the outer face unless the maker says otherwise; end and cross rails
butt. A long rail that butts is one rail for each bay; a cross rail stands at each inner pair.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Sequence

import attrs

from .identity import leg_name, rail_name
from .joints import Butt, RailJoint
from .rail import Rail
from .stack import Level, Side, default_joint
from .stock import Stock


@attrs.frozen(kw_only=True)
class Slot:
    """One rail of one level; legs are the names of those it goes to, in order along it."""

    name: str
    level: Level
    side: Side
    rail: Rail
    stock: Stock
    joint: RailJoint
    legs: tuple[str, ...]

    @property
    def long(self) -> bool:
        """Whether the rail runs along the length of the frame."""
        return self.side in ("front", "back")


def slots(levels: Iterable[Level], pairs: Sequence[str], stock: Stock) -> tuple[Slot, ...]:
    """Every rail of the levels, for leg pairs named from the left."""
    return tuple(
        Slot(
            name=rail_name(level.name, side, count),
            level=level,
            side=side,
            rail=rail,
            stock=rail.stock or stock,
            joint=rail.joint or default_joint(side),
            legs=legs,
        )
        for level in levels
        for side, rail in level.sides().items()
        for count, legs in _goes_to(side, rail, pairs)
    )


def _goes_to(side: Side, rail: Rail, pairs: Sequence[str]) -> Iterator[tuple[int | None, tuple[str, ...]]]:
    """Count (None for the only one) and legs of each rail of a side."""
    if side in ("left", "right"):
        yield None, (leg_name("front", side), leg_name("back", side))
    elif side == "cross":
        for count, pair in enumerate(pairs[1:-1], 1):
            yield count, (leg_name("front", pair), leg_name("back", pair))
    elif isinstance(rail.joint, Butt) and len(pairs) > 2:
        for count, bay in enumerate(itertools.pairwise(pairs), 1):
            yield count, tuple(leg_name(side, pair) for pair in bay)
    else:
        yield None, tuple(leg_name(side, pair) for pair in pairs)
