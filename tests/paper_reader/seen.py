"""A page as it is seen: what clips and light patches leave of its strokes, and its lines of writing.

The rules ask it in arrays and trees, so that a page of a thousand strokes takes no longer than it must.
"""

from __future__ import annotations

from functools import cached_property

import numpy as np
import shapely

from .writing import lines_of

SPECK = 0.02
"""What is smaller than this is not seen. [mm]"""


class Seen:
    """A page: its lines of writing, its letters with the number of the line of each, what is seen of their ink.

    And what is seen of strokes, in segments, and of fills, as light patches and dark blots. `shares` says how much is
    seen of each letter that has ink, with the number of its line.
    """

    def __init__(self, page):
        self.page = page
        self.lines = lines_of(page.letters)
        written = [(letter, n) for n, line in enumerate(self.lines) for letter in line.letters if _has_ink(letter)]
        inks = shapely.box(*np.array([letter.ink for letter, _ in written]).reshape(-1, 4).T)
        left = self._left([letter for letter, _ in written], inks)
        areas = shapely.area(left)
        self.shares = [(share, n) for share, (_, n) in zip(areas / shapely.area(inks), written, strict=True)]
        self.letters = [one for one, area in zip(written, areas, strict=True) if area > 0]
        self.inks = left[areas > 0]

    def _left(self, letters, inks):
        """What the page, clips and later patches leave of letters."""
        wide, high = self.page.size
        left = _within_all(inks, shapely.box(0.0, 0.0, wide, high))
        clips = {id(letter.clip): letter.clip for letter in letters if letter.clip is not None}
        for which, clip in clips.items():
            own = np.array([id(letter.clip) == which for letter in letters])
            left[own] = _within_all(left[own], clip)
        orders = np.array([letter.order for letter in letters])
        for patch, order in self.patches:
            under = orders < order
            left[under] = shapely.difference(left[under], patch)
        return left

    @cached_property
    def ink_tree(self):
        return shapely.STRtree(self.inks)

    @cached_property
    def gaps(self):
        """White between neighbours of a line of writing, as high as both are, with the number of the line."""
        whose = np.array([n for _, n in self.letters], dtype=int)
        upright = np.array([abs(line.along.imag) > 0.5 for line in self.lines], dtype=bool)[whose[:-1]]
        (a0, b0, a1, b1), (c0, d0, c1, d1) = shapely.bounds(self.inks[:-1]).T, shapely.bounds(self.inks[1:]).T
        across = (np.minimum(a1, c1), np.maximum(b0, d0), np.maximum(a0, c0), np.minimum(b1, d1))
        upwards = (np.maximum(a0, c0), np.minimum(b1, d1), np.minimum(a1, c1), np.maximum(b0, d0))
        x0, y0, x1, y1 = np.where(upright, upwards, across)
        there = (whose[:-1] == whose[1:]) & (x1 > x0) & (y1 > y0)
        boxes = shapely.box(x0[there], y0[there], x1[there], y1[there])
        return list(zip(boxes, whose[:-1][there], strict=True))

    @cached_property
    def patches(self):
        """White and tinted regions in the order of painting, but for those under all else."""
        first = min([one.order for one in (*self.page.strokes, *self.page.letters)], default=0)
        fills = [fill for fill in self.page.fills if not fill.dark and fill.order >= first]
        return [(_within(fill.region, fill.clip), fill.order) for fill in fills]

    @cached_property
    def blots(self):
        """Dark regions, one by one."""
        found = [_within(fill.region, fill.clip) for fill in self.page.fills if fill.dark]
        return [part for region in found for part in getattr(region, "geoms", [region]) if part.area > 0]

    @cached_property
    def strokes(self):
        """Strokes, and of each what is seen as one or more lines."""
        lines = [shapely.LineString(stroke.points) for stroke in self.page.strokes]
        seen = []
        for stroke, line in zip(self.page.strokes, lines, strict=True):
            left = line if stroke.clip is None or stroke.clip.contains(line) else line.intersection(stroke.clip)
            for patch, order in self.patches:
                if order > stroke.order and patch.intersects(left):
                    left = left.difference(patch)
            seen.append(left)
        return list(zip(self.page.strokes, seen, strict=True))

    @cached_property
    def segments(self):
        """Straight pieces of what is seen: ends, shape (n, 2, 2), and the number of the stroke of each, shape (n,)."""
        ends, whose = [], []
        for n, (_, left) in enumerate(self.strokes):
            for part in getattr(left, "geoms", [left]):
                if part.geom_type == "LineString" and part.length > SPECK:
                    points = np.asarray(part.coords)
                    ends.append(np.stack([points[:-1], points[1:]], axis=1))
                    whose.append(np.full(len(points) - 1, n))
        if not ends:
            return np.zeros((0, 2, 2)), np.zeros(0, dtype=int)
        return np.concatenate(ends), np.concatenate(whose)

    @cached_property
    def widths(self):
        """Width of each stroke, shape (n,)."""
        return np.array([stroke.width for stroke in self.page.strokes])


def _has_ink(letter):
    left, low, right, high = letter.ink
    return right > left and high > low


def _within(region, clip):
    return region if clip is None else region.intersection(clip)


def _within_all(regions, clip):
    """What a clip leaves of regions; those that it leaves whole are not touched."""
    shapely.prepare(clip)
    found, over = regions.copy(), ~shapely.covers(clip, regions)
    found[over] = shapely.intersection(regions[over], clip)
    return found
