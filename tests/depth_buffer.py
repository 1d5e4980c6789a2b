"""An independent renderer: a plain depth buffer in numpy, `from depth_buffer import looks, labels`.

Each part is its blank less its cuts; along the ray of every pixel the blank is an interval, each cut takes one out of
it, and the first wood that is left is how far the part lies from the eye. The nearest part owns the pixel. Nothing
here asks the library for faces or slabs.
"""

from __future__ import annotations

import math

import attrs
import numpy as np

ISO_RIGHT, ISO_UP = (math.sqrt(3) / 2, -math.sqrt(3) / 2, 0.0), (0.5, 0.5, 1.0)
HAIR = 1e-6
NOTHING, TWICE = -1, -2


@attrs.frozen
class Look:
    """A way of looking: page coordinates are dot products with right and up, and the ray goes away from the eye."""

    right: tuple
    up: tuple
    ray: tuple

    def at(self, pages):
        """A point of the world for each point of the page, shape (n, 2) to (n, 3)."""
        axes = np.array([self.right, self.up, self.ray], dtype=float)
        return np.linalg.solve(axes, np.column_stack([pages, np.zeros(len(pages))]).T).T


LOOKS = {
    "front": Look((1, 0, 0), (0, 0, 1), (0, 1, 0)),
    "back": Look((-1, 0, 0), (0, 0, 1), (0, -1, 0)),
    "left": Look((0, -1, 0), (0, 0, 1), (1, 0, 0)),
    "right": Look((0, 1, 0), (0, 0, 1), (-1, 0, 0)),
    "above": Look((1, 0, 0), (0, 1, 0), (0, 0, -1)),
    "isometric": Look(ISO_RIGHT, ISO_UP, (1, 1, -1)),
}


def corners(box, look):
    """Corners of a box on the page, shape (8, 2)."""
    ends = np.array([box.low, box.high], dtype=float)
    points = np.array([[ends[i, 0], ends[j, 1], ends[k, 2]] for i in (0, 1) for j in (0, 1) for k in (0, 1)])
    return points @ np.array([look.right, look.up], dtype=float).T


def through(box, points, look):
    """Where rays from points go into a box and come out again; inside out where they miss it."""
    near, far = np.full(len(points), -np.inf), np.full(len(points), np.inf)
    for axis, step in enumerate(look.ray):
        low, high = box.low[axis] - points[:, axis], box.high[axis] - points[:, axis]
        if step:
            near = np.maximum(near, np.minimum(low / step, high / step))
            far = np.minimum(far, np.maximum(low / step, high / step))
        else:
            missed = (low >= 0) | (high <= 0)
            near[missed], far[missed] = np.inf, -np.inf
    return near, far


def first_wood(part, points, look):
    """How far along each ray the part's first wood lies; infinity where there is none."""
    at, end = through(part.blank, points, look)
    taken = [through(cut.box, points, look) for cut in part.cuts]
    for _ in taken:  # each round lets a ray through at least one more cut
        for low, high in taken:
            at = np.where((low <= at + HAIR) & (high > at), high, at)
    return np.where(at < end - HAIR, at, np.inf)


@attrs.frozen
class Raster:
    """Pixels of a page: middles of columns and rows. [mm]"""

    x: np.ndarray
    y: np.ndarray

    @classmethod
    def over(cls, parts, look, pixel):
        found = np.vstack([corners(part.blank, look) for part in parts])
        low, high = found.min(axis=0) - 3.3 * pixel, found.max(axis=0) + 3.7 * pixel  # off the edges of the wood
        return cls(np.arange(low[0], high[0], pixel), np.arange(low[1], high[1], pixel))

    def within(self, low, high):
        """Slices of rows and columns inside a rectangle, and their points, shape (n, 2)."""
        columns = slice(*np.searchsorted(self.x, [low[0], high[0]]))
        rows = slice(*np.searchsorted(self.y, [low[1], high[1]]))
        x, y = np.meshgrid(self.x[columns], self.y[rows])
        return (rows, columns), np.column_stack([x.ravel(), y.ravel()])

    def blank(self, value):
        return np.full((len(self.y), len(self.x)), value)


def labels(parts, look, raster):
    """The number of the part that is nearest to the eye, at each pixel; and its distance. [mm along the ray]"""
    depth, owner = raster.blank(np.inf), raster.blank(NOTHING)
    for number, part in enumerate(parts):
        found = corners(part.blank, look)
        place, pages = raster.within(found.min(axis=0), found.max(axis=0))
        at = first_wood(part, look.at(pages), look).reshape(depth[place].shape)
        nearer = at < depth[place] - HAIR
        depth[place] = np.where(nearer, at, depth[place])
        owner[place] = np.where(nearer, number, owner[place])
    return owner, depth


def inside(owner, depth):
    """Pixels more than one pixel from an edge: all around them are of the same part and lie in one plane."""
    rows, columns = owner.shape
    same = np.zeros(owner.shape, dtype=bool)
    same[1:-1, 1:-1] = True
    middle = (slice(1, -1), slice(1, -1))
    flat = np.where(np.isfinite(depth), depth, 0.0)
    for dy, dx in ((0, 1), (1, 0), (1, 1), (1, -1)):
        one, other = (
            (slice(1 + way * dy, rows - 1 + way * dy), slice(1 + way * dx, columns - 1 + way * dx)) for way in (1, -1)
        )
        same[middle] &= (owner[one] == owner[middle]) & (owner[other] == owner[middle])
        same[middle] &= np.abs(flat[one] - 2 * flat[middle] + flat[other]) < HAIR
    return same
