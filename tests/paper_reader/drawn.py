"""Rules of lines: those through writing, dashes that cannot be read as dashes, wide lines that run together."""

from __future__ import annotations

from collections import defaultdict
from itertools import pairwise

import numpy as np
import shapely

from .fault import fault
from .pictures import pictures

THROUGH = 0.1
"""How deep a line goes into the ink of a letter before it is through it. [mm]"""
SHORT = 0.05
"""How much two dashes and a gap may be short of it. [mm]"""
WIDER, HALF = 1.4, 0.51
"""A wide line is so much wider than the narrowest of a page, and no narrower than so much of its widest."""
COMMON = 5
"""What the widest and the narrowest are is asked of widths of so many strokes: a border is none of them."""
ALONG = 1.0
"""How far two lines run beside each other before they run together. [mm]"""
SAME = 0.3
"""Lines that are closer than this are seen as one, of their width."""


def lines_through_text(seen):
    """Lines of writing with a stroke or a dark patch in the ink of their letters, or between two of them."""
    places = _inner(np.array([*seen.inks, *(gap for gap, _ in seen.gaps)], dtype=object))
    lines = [*(n for _, n in seen.letters), *(n for _, n in seen.gaps)]
    ends, whose = seen.segments
    tree, hits = shapely.STRtree(places), defaultdict(list)
    for _, b in tree.query(shapely.linestrings(ends), predicate="dwithin", distance=seen.widths[whose] / 2).T:
        hits[lines[b]].append(places[b])
    for _, b in tree.query(np.array(seen.blots, dtype=object), predicate="intersects").T:
        hits[lines[b]].append(places[b])
    for n, own in sorted(hits.items()):
        yield fault("line through text", seen.page, shapely.union_all(own), f"{seen.lines[n].text!r}")


def _inner(places):
    """The inner part of boxes that a line must reach to be through them; of the narrowest, the line in their middle."""
    x0, y0, x1, y1 = shapely.bounds(places).T
    within_x, within_y = np.minimum(THROUGH, (x1 - x0) / 2), np.minimum(THROUGH, (y1 - y0) / 2)
    return shapely.box(x0 + within_x, y0 + within_y, x1 - within_x, y1 - within_y)


def _spot(place):
    """Where something is, to tell it from all that lies elsewhere: lines are often drawn more than once."""
    return tuple(round(value * 2) for value in place.bounds)


def short_dashes(seen):
    """Dashed strokes without two dashes and the gap between them, but for those that a clip cuts off."""
    found = {}
    for stroke, left in seen.strokes:
        whole = sum(np.hypot(bx - ax, by - ay) for (ax, ay), (bx, by) in pairwise(stroke.points))
        if not stroke.dashes or left.length < whole - 0.01:
            continue
        least = sum(stroke.dashes[:2]) + stroke.dashes[2 % len(stroke.dashes)]
        if whole < least - SHORT:
            words = f"{whole:.2f} mm long, two dashes and a gap take {least:.2f}"
            found[_spot(left)] = fault("short dashes", seen.page, left, words)
    yield from found.values()


NARROW = 0.26
"""Lines of a page that has no others are narrow ones where they are no wider. [mm]"""


def wide_lines_close(seen):
    """Wide lines that run beside each other, closer from middle to middle than twice their width; not in pictures."""
    ends, whose = seen.segments
    wide = seen.widths[whose] > _narrower(seen.widths)
    ends, widths = ends[wide], seen.widths[whose[wide]]
    apart = shapely.union_all(pictures(ends))
    pieces = shapely.linestrings(ends)
    found, tree = {}, shapely.STRtree(pieces)
    for a, b in tree.query(pieces, predicate="dwithin", distance=2 * widths).T:
        if a < b:
            distance, overlap = beside(ends[a], ends[b])
            limit, both = 2 * max(widths[a], widths[b]), shapely.union(pieces[a], pieces[b])
            if overlap > ALONG and SAME * limit / 2 < distance < limit - 0.02 and not apart.covers(both):
                found[_spot(both)] = (both, distance, overlap, limit)
    for place, distance, overlap, limit in found.values():
        words = f"{distance:.2f} mm apart for {overlap:.1f} mm, less than {limit:.2f}"
        yield fault("wide lines close", seen.page, place, words)


def _narrower(widths):
    """The width below which no line of a page is a wide one."""
    known, counts = np.unique(np.round(widths, 2), return_counts=True)
    common = known[counts >= COMMON] if (counts >= COMMON).any() else known
    if not len(common):
        return 0.0
    two = common.max() > WIDER * common.min()
    if not two and common.max() <= NARROW:
        return NARROW  # a list or a plot, in one narrow width but for a few lines
    return max(HALF * common.max(), WIDER * common.min() if two else 0.0) - 1e-3


def beside(one, other):
    """How far apart two pieces are that run the same way, and how far beside each other; never, if they do not."""
    along = (one[1] - one[0]) / np.linalg.norm(one[1] - one[0])
    way = (other[1] - other[0]) / np.linalg.norm(other[1] - other[0])
    if abs(along[0] * way[1] - along[1] * way[0]) > 0.02:
        return np.inf, 0.0
    across = np.array([-along[1], along[0]])
    places = (other - one[0]) @ along
    low, high = max(min(places), 0.0), min(max(places), float((one[1] - one[0]) @ along))
    return abs(((other - one[0]) @ across).mean()), high - low
