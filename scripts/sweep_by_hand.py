"""The honey-house bench in a million variants, as one would write it by hand for this bench alone, with numpy.

`scripts/bench` holds the sweep against it: the same marks and lengths for the same lengths and front rails. As in the
sweep, each number that differs from variant to variant is an array of its own; one that never differs takes no room.
"""

from __future__ import annotations

import numpy as np

INCH = 25.4
FRONT_TOP, BACK_TOP = 35.5 * INCH, 70 * INCH
SHELF, SHELF_FRONT, SHELF_BACK = 7 * INCH, 2.75 * INCH, 4.25 * INCH
RAIL, HEAD, DEPTH, LEG = 3.5 * INCH, 5.25 * INCH, 23 * INCH, (1 + 5 / 16) * INCH
LEGS = 2 * 3.25 * INCH


def by_hand(length: np.ndarray, width: np.ndarray) -> dict[tuple[str, ...], np.ndarray]:
    """Marks of all legs and lengths of all rails by name, for a length over the legs and a width of the front rail.

    The two broadcast: side by side they are a list of variants, across each other a grid.
    """
    shape = np.broadcast_shapes(length.shape, width.shape)
    bottom = FRONT_TOP - width
    top = bottom + np.maximum(width, RAIL)
    clear = (BACK_TOP - HEAD - RAIL - top) / 2
    hook = top + clear
    long_enough, high_enough = length >= LEGS, (bottom >= SHELF + SHELF_BACK) & (clear >= 0)
    sound = True if long_enough.all() and high_enough.all() else long_enough & high_enough

    def told(value: float | np.ndarray) -> np.ndarray:
        if sound is not True:
            return np.where(sound, value, np.nan)
        if np.ndim(value) == 0:
            return np.broadcast_to(np.asarray(value), shape)
        own = np.empty(shape)
        own[...] = value
        return own

    edges = {
        ("front", "foot shelf"): (SHELF, SHELF + SHELF_FRONT),
        ("front", "bench"): (bottom, FRONT_TOP),
        ("back", "foot shelf"): (SHELF, SHELF + SHELF_BACK),
        ("back", "bench"): (bottom, bottom + RAIL),
        ("back", "hook rail"): (hook, hook + RAIL),
        ("back", "head rail"): (BACK_TOP - HEAD, BACK_TOP),
    }
    found = {}
    for (row, level), (low, high) in edges.items():
        for side in ("left", "right"):
            leg, rail = f"{row} {side} leg", f"{level}/{row} rail"
            found[leg, rail, "bottom"], found[leg, rail, "top"] = told(low), told(high)
        found[(f"{level}/{row} rail",)] = told(length)
    for level in ("foot shelf", "bench"):
        for side in ("left", "right"):
            found[(f"{level}/{side} rail",)] = told(DEPTH - 2 * LEG)
    return found
