"""Frames that grow, for scripts/bench: more levels, more pieces, more legs; and how fast the work grows with them.

A job that takes twice as long for twice as much has exponent 1, four times as long has 2.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import attrs
import numpy as np

from benchjoin import Boards, Clear, Frame, Leg, Level, Stock

POST, BOARD = Stock("post", thickness=45, width=70), Stock("board", thickness=20)
SLAT = Stock("slat", thickness=20, width=60)
LOW, HIGH = Level("low", front=60, back=60, ends=60), Level("high", front=90, back=90, ends=90, flush="front leg top")


def tall(levels: int) -> Frame:
    """A rack of so many levels, 150 mm apart."""
    stack = [item for n in range(levels) for item in (Clear(), Level(f"level {n + 1}", front=60, back=60, ends=60))]
    return _frame(height=60 + 150 * levels, length=1200, stack=[*stack, Clear()])


def long(pairs: int) -> Frame:
    """A bench on so many pairs of legs, 450 mm apart."""
    bays = [Clear()] * (pairs - 1)
    return _frame(height=900, length=450 * (pairs - 1), stack=[Clear(100), LOW, Clear(), HIGH], bays=bays)


def many(pieces: int) -> Frame:
    """So many plain benches."""
    return attrs.evolve(long(2), length=1200, quantity=pieces)


def slatted(boards: int) -> Frame:
    """A bench with so many slats across it, 70 mm apart."""
    top = attrs.evolve(HIGH, carries=[Boards(SLAT, run="across", count=boards, left=-80, right=-80)])
    return _frame(height=900, length=70 * boards + 160, stack=[Clear(100), LOW, Clear(), top])


def _frame(*, height: float, length: float, **more: object) -> Frame:
    leg = Leg(POST, height=height)
    return Frame(name="Grown", length=length, depth=500, front=leg, back=leg, rail_stock=BOARD, **more)


GROWN: Mapping[str, tuple[Callable[[int], Frame], int, Sequence[int]]] = {
    "levels": (tall, 1, (3, 10, 30, 100, 300)),
    "pieces": (many, 1, (1, 3, 10, 30, 100, 300)),
    "boards": (slatted, 1, (10, 30, 100, 300, 1000)),
    "legs": (long, 2, (2, 6, 20, 60, 200)),
}
"""What grows: how a frame of a size is made, how many there are for each of that size, and the sizes."""


def exponent(sizes: Sequence[float], times: Sequence[float]) -> float:
    """Slope of the straight line that lies nearest to the logarithms of times over those of sizes."""
    return float(np.polyfit(np.log(sizes), np.log(times), 1)[0])
