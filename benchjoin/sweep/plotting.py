"""A plain line plot of a sweep, for those who have matplotlib."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Protocol

import numpy as np

from ..errors import LengthError, MissingLibrary
from ..lengths import signed_mm
from .outputs import Output

DASHES = ("-", "--", "-.", ":")
"""Lines differ in more than their colour."""


class Numbers(Protocol):
    """Arrays by their words, all of one output."""

    output: Output

    def __getitem__(self, words: Any, /) -> Any: ...

    def __iter__(self) -> Any: ...


def plotted(arrays: Numbers, axes: Mapping[str, Any], words: Sequence[Any], ax: Any) -> Any:
    """Axes of matplotlib with a line for each number and each place along all axes but the first."""
    try:
        import matplotlib.pyplot as plt
    except ImportError as error:
        raise MissingLibrary("Plots are made by matplotlib. Install it: pip install matplotlib") from error
    own = plt.subplots(layout="constrained")[1] if ax is None else ax
    first, *others = axes
    across = _positions(axes[first])
    count = 0
    for key in words or list(arrays):
        for place in np.ndindex(*(len(axes[name]) for name in others)):
            at = ", ".join(f"{axis} {axes[axis][n]}" for axis, n in zip(others, place, strict=True))
            label = "; ".join(filter(None, (key if isinstance(key, str) else ", ".join(key), at)))
            own.plot(across, arrays[key][(slice(None), *place)], DASHES[count % len(DASHES)], label=label)
            count += 1
    unit = f" [{arrays.output.unit}]" if arrays.output.unit else ""
    own.set_xlabel(f"{first} [mm]" if across != list(range(len(across))) else first)
    own.set_ylabel(f"{arrays.output.name}{unit}")
    own.legend()
    return own


def _positions(values: Sequence[Any]) -> list[Any]:
    """Where values stand along the axis: lengths in mm, or one after the other where they are none."""
    try:
        return [signed_mm(value) for value in values]
    except LengthError:
        return list(range(len(values)))
