"""Shift figures apart so that none touches the next, each as near as can be to where it belongs.

Running and chain dimensions hand in where their figures want to stand and how far neighbours must keep; what
comes back is in the same order, moved as little as possible in the sense of least squares.

>>> spread([0, 10, 11, 30], [4, 4, 4])
[0.0, 8.5, 12.5, 30.0]
"""

from __future__ import annotations

from collections.abc import Sequence

from ...errors import PaperError


def spread(
    wanted: Sequence[float],
    apart: Sequence[float],
    *,
    within: tuple[float, float] | None = None,
) -> list[float]:
    """Places for figures in a row.

    Parameters
    ----------
    wanted : sequence of n floats, rising
        Where each would best stand. [mm]
    apart : sequence of n - 1 floats
        Least distance of each from the next. [mm]
    within : pair of floats, optional
        Places of the first and of the last may not go past these. [mm]

    Raises
    ------
    PaperError
        If they do not go in between the two limits.

    Notes
    -----
    Taking the distances off leaves the question of the nearest row that does not fall, which pooling neighbours that
    are out of order answers exactly.
    """
    needed = [0.0]
    for distance in apart:
        needed.append(needed[-1] + distance)
    pools: list[tuple[float, int]] = []  # mean place, how many
    for place, offset in zip(wanted, needed, strict=True):
        mean, count = float(place) - offset, 1
        while pools and pools[-1][0] > mean:
            other, others = pools.pop()
            mean, count = (mean * count + other * others) / (count + others), count + others
        pools.append((mean, count))
    level = [mean for mean, count in pools for _ in range(count)]
    if within is not None:
        low, high = within[0], within[1] - needed[-1]
        if high < low:
            raise PaperError(
                f"{len(level)} figures need {needed[-1]:.1f} mm side by side and there are "
                f"{within[1] - within[0]:.1f}. Take larger paper, or a detail."
            )
        level = [min(max(place, low), high) for place in level]
    return [place + offset for place, offset in zip(level, needed, strict=True)]
