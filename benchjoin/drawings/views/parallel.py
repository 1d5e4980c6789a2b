"""Lines that run beside each other: how close they come, and which are to give way where they would run together."""

from __future__ import annotations

import math

import numpy as np
import numpy.typing as npt
import shapely
from shapely import get_coordinates, get_parts
from shapely.geometry.base import BaseGeometry

_SQUARE = 1e-6
"""Lines that lean by no more are level or upright. [mm]"""


def _straight(lines: BaseGeometry) -> dict[str, npt.NDArray[np.float64]]:
    """Level and upright stretches, rows of place across, start, end."""
    points, owners = get_coordinates(get_parts(lines), return_index=True)
    same = owners[1:] == owners[:-1]
    a, b = points[:-1][same], points[1:][same]
    found = {}
    for name, along, across in (("level", 0, 1), ("upright", 1, 0)):
        own = np.abs(a[:, across] - b[:, across]) <= _SQUARE
        ends = np.sort(np.stack([a[own, along], b[own, along]], axis=1), axis=1)
        found[name] = np.column_stack([a[own, across], ends])
    return found


def closest(lines: BaseGeometry, run: float = 1.0) -> float:
    """Least distance between two level or two upright lines that run beside each other; infinite if none do. [mm]"""
    least = math.inf
    for stretches in _straight(lines).values():
        gaps, _ = _pairs(stretches, run)
        beside = gaps[np.isfinite(gaps)]
        least = min(least, float(beside.min(initial=math.inf)))
    return least


def _pairs(stretches: npt.NDArray[np.float64], run: float) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
    """Distance of each pair that runs beside each other, infinite where it does not, and all lengths. [mm]"""
    at, start, end = stretches.T
    gaps = np.abs(at[:, None] - at[None])
    beside = np.minimum(end[:, None], end[None]) - np.maximum(start[:, None], start[None]) > run
    gaps[~beside | (gaps <= _SQUARE)] = math.inf
    return gaps, end - start


def close(lines: BaseGeometry, least: float, run: float) -> BaseGeometry | None:
    """The shorter of every two lines that lie closer than so much; None where all stand apart. [mm]"""
    found = []
    for name, stretches in _straight(lines).items():
        gaps, lengths = _pairs(stretches, run)
        order = np.lexsort((stretches[:, 0], lengths))  # the shortest first; of two alike, the lower
        kept = np.ones(len(stretches), dtype=bool)
        for n in order.tolist():
            if (gaps[n][kept] < least - _SQUARE).any():
                kept[n] = False
                at, start, end = stretches[n]
                ends = [(start, at), (end, at)] if name == "level" else [(at, start), (at, end)]
                found.append(shapely.LineString(ends))
    return shapely.union_all(found) if found else None
