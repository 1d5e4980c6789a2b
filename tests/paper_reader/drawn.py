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
WIDE = 0.3
"""No line is a wide one below this. [mm]"""
ALONG = 1.0
"""How far two lines run beside each other before they run together. [mm]"""
SAME = 0.3
"""Lines that are closer than this are seen as one, of their width."""


def lines_through_text(seen):
    """Lines of writing with a stroke or a dark patch in the ink of their letters, or between two of them."""
    places = np.array([*seen.inks, *(gap for gap, _ in seen.gaps)], dtype=object)
    lines = [*(n for _, n in seen.letters), *(n for _, n in seen.gaps)]
    inner = shapely.buffer(places, -THROUGH, join_style="mitre")
    places = np.where(shapely.is_empty(inner), places, inner)
    ends, whose = seen.segments
    tree, hits = shapely.STRtree(places), defaultdict(list)
    for _, b in tree.query(shapely.linestrings(ends), predicate="dwithin", distance=seen.widths[whose] / 2).T:
        hits[lines[b]].append(places[b])
    for _, b in tree.query(np.array(seen.blots, dtype=object), predicate="intersects").T:
        hits[lines[b]].append(places[b])
    for n, own in sorted(hits.items()):
        yield fault("line through text", seen.page, shapely.union_all(own), f"{seen.lines[n].text!r}")


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


def wide_lines_close(seen):
    """Wide lines that run beside each other, closer from middle to middle than twice their width; not in pictures."""
    ends, whose = seen.segments
    least = max(WIDE, 1.4 * seen.widths.min()) if len(seen.widths) else WIDE
    wide = seen.widths[whose] >= least - 1e-3
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
