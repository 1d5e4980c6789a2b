"""A page as it is seen: what clips and white patches leave of its strokes, and its lines of writing.

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

    And what is seen of strokes, in segments, and of fills, as white patches and dark blots.
    """

    def __init__(self, page):
        self.page = page
        self.lines = lines_of(page.letters)
        written = [(letter, n) for n, line in enumerate(self.lines) for letter in line.letters if letter.ink.area > 0]
        wide, high = page.size
        whole = shapely.box(0.0, 0.0, wide, high)
        inks = [_within(_within(letter.ink, letter.clip), whole) for letter, _ in written]
        self.letters = [one for one, ink in zip(written, inks, strict=True) if ink.area > 0]
        self.inks = np.array([ink for ink in inks if ink.area > 0], dtype=object)

    @cached_property
    def ink_tree(self):
        return shapely.STRtree(self.inks)

    @cached_property
    def gaps(self):
        """White between neighbours of a line of writing, as high as both are, with the number of the line."""
        found = []
        for (_, n), one, (_, m), other in zip(self.letters, self.inks, self.letters[1:], self.inks[1:], strict=False):
            if n == m:
                (a0, b0, a1, b1), (c0, d0, c1, d1) = one.bounds, other.bounds
                level = abs(self.lines[n].along.real) > 0.99
                x0, x1 = (min(a1, c1), max(a0, c0)) if level else (max(a0, c0), min(a1, c1))
                y0, y1 = (max(b0, d0), min(b1, d1)) if level else (min(b1, d1), max(b0, d0))
                if x1 > x0 and y1 > y0:
                    found.append((shapely.box(x0, y0, x1, y1), n))
        return found

    @cached_property
    def patches(self):
        """White regions in the order of painting, but for those under all else."""
        first = min((stroke.order for stroke in self.page.strokes), default=0)
        first = min([first, *(letter.order for letter, _ in self.letters)])
        fills = [fill for fill in self.page.fills if fill.white and fill.order >= first]
        return [(_within(fill.region, fill.clip), fill.order) for fill in fills]

    @cached_property
    def blots(self):
        """Dark regions, one by one."""
        found = [_within(fill.region, fill.clip) for fill in self.page.fills if not fill.white]
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


def _within(region, clip):
    return region if clip is None else region.intersection(clip)
