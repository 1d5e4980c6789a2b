"""The honey-house bench in a million variants, as one would write it by hand for this bench alone, with numpy.

`scripts/bench` holds the sweep against it: the same marks and lengths for the same lengths and front rails.
"""

from __future__ import annotations

import numpy as np

INCH = 25.4
FRONT_TOP, BACK_TOP = 35.5 * INCH, 70 * INCH
SHELF, SHELF_FRONT, SHELF_BACK = 7 * INCH, 2.75 * INCH, 4.25 * INCH
RAIL, HEAD, DEPTH, LEG = 3.5 * INCH, 5.25 * INCH, 23 * INCH, (1 + 5 / 16) * INCH
LEGS = 2 * 3.25 * INCH


def by_hand(length: np.ndarray, width: np.ndarray) -> dict[tuple[str, ...], np.ndarray]:
    """Marks of all legs and lengths of all rails by name, for a length over the legs and a width of the front rail."""
    bottom = FRONT_TOP - width
    top = bottom + np.maximum(width, RAIL)
    clear = (BACK_TOP - HEAD - RAIL - top) / 2
    hook = top + clear
    sound = (length >= LEGS) & (bottom >= SHELF + SHELF_BACK) & (clear >= 0)

    def told(value: float | np.ndarray) -> np.ndarray:
        return np.where(sound, value, np.nan)

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
