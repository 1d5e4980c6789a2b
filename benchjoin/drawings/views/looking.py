"""Ways to look at a whole: how far one has walked round it, and from how high one looks.

The picture of a look is worked out on a slanting page, on which edges along two of the world's axes are level and
upright and those along the third, the one that the look runs along most, slant by counts of a part. Places of the
wood are whole counts of a grid, and so is all on the page: edges that coincide are one.
"""

from __future__ import annotations

import math
from functools import cached_property
from typing import Any

import attrs
import numpy as np
import numpy.typing as npt
import shapely

from ...solids import Vector
from .view import EYES, Eye

STEP = 1e-4
"""Places of the wood are held to this. [mm]"""
PARTS = 32
"""A slant is a count of so many parts."""
GRID = STEP / PARTS
"""The grid of the slanting page. [mm]"""
FULL = math.sqrt(1.5)
"""So much larger than it is seen a picture is drawn: the axes of an isometric one are at full scale (ISO 5456-3)."""
BELOW = Eye("below", "From below", (1.0, 0.0, 0.0), (0.0, -1.0, 0.0))
SIDES = (
    {1: EYES["left"], -1: EYES["right"]},
    {1: EYES["front"], -1: EYES["back"]},
    {1: BELOW, -1: EYES["above"]},
)
"""For x, y and z: the eye that looks with the axis, and the one that looks against it."""


@attrs.frozen(slots=False)
class Look:
    """A parallel glance into the wood: its way along x, y and z in parts of the longest, none of them nought."""

    way: tuple[int, int, int]

    @property
    def eyes(self) -> tuple[Eye, ...]:
        """Who sees the faces that this look sees: from above or below, from front or back, from left or right."""
        return tuple(SIDES[axis][self._signs[axis]] for axis in (2, 1, 0))

    @cached_property
    def _signs(self) -> tuple[int, ...]:
        return tuple(1 if part > 0 else -1 for part in self.way)

    @cached_property
    def _axes(self) -> tuple[int, int, int]:
        """Which axis is level on the slanting page, which upright, and which slants."""
        slants = max((1, 0, 2), key=lambda axis: abs(self.way[axis]))
        level, stands = (axis for axis in range(3) if axis != slants)
        return level, stands, slants

    @cached_property
    def _drawn(self) -> npt.NDArray[np.float64]:
        """Where a step to the right and a step up of the slanting page go on the paper, shape (2, 2)."""
        x, y, z = self.way
        flat = math.hypot(x, y)
        right = np.array([y, -x, 0.0]) / flat
        up = np.array([-z * x, -z * y, flat * flat]) / (flat * math.hypot(flat, z))
        level, stands, _ = self._axes
        return FULL * np.array([[right[axis], up[axis]] for axis in (level, stands)])

    def slant(self, points: npt.ArrayLike) -> npt.NDArray[np.float64]:
        """Points of the world on the slanting page, shape (..., 3) to (..., 2), to the grid. [mm]

        >>> ISOMETRIC.slant([(10.0, 4.0, 1.0)]).tolist()
        [[6.0, 5.0]]
        """
        level, stands, slants = self._axes
        steps = (np.asarray(points, dtype=float) / STEP).round()
        sign = self._signs[slants]
        page = [PARTS * steps[..., axis] - sign * self.way[axis] * steps[..., slants] for axis in (level, stands)]
        return np.stack(page, axis=-1) / (PARTS / STEP)

    def upright(self, shapes: Any) -> Any:
        """A shape of the slanting page, or an array of them, on the paper."""
        return shapely.transform(shapes, lambda at: at @ self._drawn)

    def project(self, points: npt.ArrayLike) -> npt.NDArray[np.float64]:
        """Points of the world on the paper, shape (..., 3) to (..., 2). [mm]

        >>> ISOMETRIC.project([(1.0, 0.0, 0.0), (0.0, 0.0, 1.0)]).round(4).tolist()
        [[0.866, 0.5], [0.0, 1.0]]
        """
        return self.slant(points) @ self._drawn

    def silhouettes(self, wood: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
        """Outlines of boxes on the slanting page, shape (n, 2, 3) to (n, 6, 2): no nearest and no farthest corner."""
        near, far = (
            np.stack([wood[:, end if sign > 0 else 1 - end, axis] for axis, sign in enumerate(self._signs)])
            for end in (0, 1)
        )
        (x0, y0, z0), (x1, y1, z1) = near, far
        ring = [(x1, y0, z0), (x1, y1, z0), (x0, y1, z0), (x0, y1, z1), (x0, y0, z1), (x1, y0, z1)]
        return self.slant(np.stack([np.stack(corner, axis=-1) for corner in ring], axis=1))


ISOMETRIC = Look((PARTS, PARTS, -PARTS))
"""From the front left and above, all three axes at one scale and 120 degrees apart (ISO 5456-3)."""


def look_from(turn: float, height: float) -> Look:
    """The look of someone who has walked round the wood, from the front to the right, and looks down on it.

    Parameters
    ----------
    turn : float
        How far one has walked: 0 is before the front, 90 to the right, −45 at the front left corner. [degrees]
    height : float
        How steeply one looks down; less than nought looks up from below. [degrees]

    Examples
    --------
    >>> look_from(-45, 35) == ISOMETRIC
    True
    """
    about, steep = math.radians(turn), math.radians(height)
    way: Vector = (-math.sin(about) * math.cos(steep), math.cos(about) * math.cos(steep), -math.sin(steep))
    longest = max(map(abs, way))
    x, y, z = (round(PARTS * part / longest) or (1 if part > 0 else -1) for part in way)
    return Look((x, y, z))
