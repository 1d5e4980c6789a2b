"""Rows: a frame stands on a front and a back row of legs, or on one row of uprights that is held by a wall.

A single row has no depth of its own: it is as deep as its uprights and what is planted on them. So it has no back legs,
and its levels have front rails alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from .clear import Clear
from .doors import Fault
from .leg import Leg
from .pair import Pair
from .stack import Level

TWO_ROWS = "or leave against out, and give the frame back legs and a depth."


def row_faults(
    against: str | None, depth: object, back: Leg | None, bays: Sequence[Clear | Pair], levels: Sequence[Level]
) -> Iterator[Fault]:
    """What a frame is given that its rows cannot have, or is not given that they need."""
    if against is None:
        yield from _of_two(depth, back)
        return
    if back is not None:
        yield Fault(
            "back", f"a single row against the {against} has no back legs. Leave back out, or leave against out."
        )
    if depth is not None:
        what = "a single row is as deep as its uprights and what is planted on them. Leave depth out, "
        yield Fault("depth", f"{what}{TWO_ROWS}")
    if any(isinstance(item, Pair) and item.back is not None for item in bays):
        what = "a pair has a back leg of its own, and a single row has none. Leave back out of the Pair, "
        yield Fault("bays", f"{what}{TWO_ROWS}")
    for level in levels:
        yield from _of_level(level, against)


def _of_two(depth: object, back: Leg | None) -> Iterator[Fault]:
    examples = {"depth": (depth, 'depth="23 in"'), "back": (back, 'back=Leg(stock, height="70 in")')}
    for field, (given, example) in examples.items():
        if given is None:
            what = f'it has none. Write {example}, or against="wall" for a rack on a single row of uprights.'
            yield Fault(field, what)


def _of_level(level: Level, against: str) -> Iterator[Fault]:
    """Rails of a level that need a second row."""
    sides = [side for side in level.sides() if side != "front"]
    for given in dict.fromkeys("ends" if _by_ends(level, side) else side for side in sides):
        what = f'"{level.name}" has {given}, and a single row against the {against} has front rails alone. '
        inner = ' A rail on its wall side is a front one: front=Rail(…, face="inner").' if given == "back" else ""
        yield Fault("stack", f"{what}Leave {given} out, {TWO_ROWS}{inner}")


def _by_ends(level: Level, side: str) -> bool:
    return side in ("left", "right") and getattr(level, side) is None
