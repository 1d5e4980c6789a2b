"""Where a page has pictures in which lines may run together: wide lines in the directions of an isometric view.

Nobody is asked what is a picture. Lines that hang together, and of which far more run at 30 degrees to the level than
level, are one, and so is what lies among them: an isometric view has no level lines, and every other view has some.
"""

from __future__ import annotations

import numpy as np
import shapely

TOGETHER = 1.5
"""How far apart lines of one picture stand at most. [mm]"""
MORE = 2.0
"""How much more of its lines runs at 30 degrees than level, at least."""


def pictures(ends):
    """Regions of pictures, from the ends of wide lines, shape (n, 2, 2)."""
    if not len(ends):
        return []
    way = ends[:, 1] - ends[:, 0]
    length = np.hypot(*way.T)
    angle = np.degrees(np.arctan2(way[:, 1], way[:, 0])) % 180
    slanting = (np.abs(angle - 30) < 1.5) | (np.abs(angle - 150) < 1.5)
    grown = shapely.union_all(shapely.buffer(shapely.linestrings(ends), TOGETHER / 2))
    groups = np.array(getattr(grown, "geoms", [grown]), dtype=object)
    middles = shapely.points(ends.mean(axis=1))
    which, piece = shapely.STRtree(middles).query(groups, predicate="intersects")
    level = np.minimum(angle, 180 - angle) < 1.5
    flat = np.bincount(which, (length * level)[piece], len(groups))
    own = np.bincount(which, (length * slanting)[piece], len(groups))
    return [shapely.buffer(one.convex_hull, TOGETHER) for one in groups[own > MORE * flat]]
