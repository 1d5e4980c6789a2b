"""A plain line plot of a sweep, for those who have matplotlib."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Protocol

import numpy as np

from ..borrowed import borrowed
from ..errors import AddressError, LengthError
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
    plt = borrowed("matplotlib.pyplot", "Plots")
    own = plt.subplots(layout="constrained")[1] if ax is None else ax
    first, *others = axes
    across = _positions(axes[first])
    count = 0
    asked = list(words) or list(arrays)
    lines = len(asked) * int(np.prod([len(axes[name]) for name in others]))
    if lines > MOST:
        raise AddressError(
            f"{lines} lines are too many for one plot. Name the numbers that it should show, at most {MOST} lines: "
            f"plot({arrays.output.name!r}, {asked[0]!r}).",
            known=tuple(asked),
        )
    for key in asked:
        for place in np.ndindex(*(len(axes[name]) for name in others)):
            at = ", ".join(f"{axis} {axes[axis][n]}" for axis, n in zip(others, place, strict=True))
            label = "; ".join(filter(None, (key if isinstance(key, str) else ", ".join(key), at)))
            own.plot(across, arrays[key][(slice(None), *place)], DASHES[count % len(DASHES)], label=label)
            count += 1
    unit = f" [{arrays.output.unit}]" if arrays.output.unit else ""
    own.set_xlabel(f"{first} [mm]" if across != list(range(len(across))) else first)
    own.set_ylabel(f"{arrays.output.name}{unit}")
    _labelled(own)
    return own


MOST = 12
"""More lines than these no plot shows without its labels running together."""


def _labelled(own: Any) -> None:
    """A label at the right end of each line, moved apart where ends come close; no legend to look up."""
    lines = own.get_lines()
    ends = sorted(((line.get_ydata()[-1], line) for line in lines if len(line.get_ydata())), key=lambda end: end[0])
    low, high = own.get_ylim()
    step, at = (high - low) * 0.05, float("-inf")
    for end, line in ends:
        at = max(end, at + step) if np.isfinite(end) else at + step
        own.annotate(
            line.get_label(),
            xy=(1.0, at),
            xycoords=("axes fraction", "data"),
            xytext=(4, 0),
            textcoords="offset points",
            va="center",
            color=line.get_color(),
            annotation_clip=False,
        )


def _positions(values: Sequence[Any]) -> list[Any]:
    """Where values stand along the axis: lengths in mm, or one after the other where they are none."""
    try:
        return [signed_mm(value) for value in values]
    except LengthError:
        return list(range(len(values)))
