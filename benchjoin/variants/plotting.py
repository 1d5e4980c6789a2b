"""A plain line plot of a sweep, for those who have matplotlib."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

import numpy as np

from ..errors import LengthError, MissingLibrary
from ..lengths import signed_mm

if TYPE_CHECKING:
    from .swept import Swept, Words

DASHES = ("-", "--", "-.", ":")
"""Lines differ in more than their colour."""


def plotted(swept: Swept, name: str, words: Sequence[Words | str], ax: Any) -> Any:
    """Axes of matplotlib with a line for each number and each place along all axes but the first."""
    try:
        import matplotlib.pyplot as plt
    except ImportError as error:
        raise MissingLibrary("Plots are made by matplotlib. Install it: pip install matplotlib") from error
    arrays = swept[name]
    own = plt.subplots(layout="constrained")[1] if ax is None else ax
    first, *others = swept.axes
    across = _positions(swept.axes[first])
    count = 0
    for key in words or list(arrays):
        for place in np.ndindex(swept.shape[1:]):
            at = ", ".join(f"{axis} {swept.axes[axis][n]}" for axis, n in zip(others, place, strict=True))
            label = ", ".join(filter(None, (key if isinstance(key, str) else ", ".join(key), at)))
            own.plot(across, arrays[key][(slice(None), *place)], DASHES[count % len(DASHES)], label=label)
            count += 1
    own.set_xlabel(first)
    own.set_ylabel(" ".join(filter(None, (name, f"[{arrays.output.unit}]" if arrays.output.unit else ""))))
    own.legend()
    return own


def _positions(values: Sequence[Any]) -> list[Any]:
    """Where values stand along the axis: lengths in mm, or one after the other where they are none."""
    try:
        return [signed_mm(value) for value in values]
    except LengthError:
        return list(range(len(values)))
