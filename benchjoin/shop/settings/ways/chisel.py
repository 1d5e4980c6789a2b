"""Notches with a saw and a chisel: kerfs inside the lines, down to a gauged floor, and the slices chopped out.

The gauge is set once to the depth and scribes the floor on both edges of every part. Kerfs go down the waste side of
each line, and a few more between them so that the wood breaks out in slices. A notch that goes right through a board is
sawn out: down its lines and along the line that is gauged from the edge.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from ....lengths import TOUCH
from ....readings import Tape
from ..notching import Notching
from ..shop import Shop
from .operation import Operation, Tool, edge_of


def why_not(notch: Notching, shop: Shop, tape: Tape) -> str | None:
    """Nothing keeps a saw and a chisel out."""
    return None


def kerfs(width: float, kerf: float, apart: float) -> int:
    """Kerfs from shoulder to shoulder, both included, no further apart than wanted; 1 where they would meet.

    >>> kerfs(70.0, 3.0, 12.0), kerfs(5.0, 3.0, 12.0)
    (7, 1)
    """
    if width <= 2 * kerf + TOUCH:
        return 1
    return math.ceil((width - kerf) / apart - TOUCH) + 1


def tools(notches: Sequence[Notching], shop: Shop) -> tuple[Tool, ...]:
    """The one saw."""
    return (Tool(way="saw and chisel", width=shop.kerf),)


def operations(notches: Sequence[Notching], tool: Tool, shop: Shop, tape: Tape) -> tuple[Operation, ...]:
    """One operation a notch, to its lines."""
    return tuple(_all(notches, tool, shop))


def _all(notches: Sequence[Notching], tool: Tool, shop: Shop) -> Iterator[Operation]:
    for notch in notches:
        lines = ([] if notch.open_near else [notch.low]) + ([] if notch.open_far else [notch.high])
        slices = kerfs(notch.width, shop.kerf, shop.slices) - notch.open_near - notch.open_far
        through = notch.cut.through  # sawn down its lines and along the one that is gauged from the edge
        yield Operation(
            notch=notch,
            tool=tool,
            height=notch.depth,
            edge=edge_of(notch),
            passes=len(lines) + 1 if through else max(1, slices),
            lines=tuple(lines),
        )
