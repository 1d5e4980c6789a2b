"""The rule of what is cut out of paper: each piece has its own caption, inside its own outline, and no other.

A caption is a block of writing that begins "Pattern 7"; a piece is a closed line that lies in no other, with a dashed
or a wider line in it, as a frame round words has none. The pages that have pieces say so in their bookmark or head.
"""

from __future__ import annotations

import re

import numpy as np
import shapely

from .fault import fault
from .writing import blocks_of

CAPTION = re.compile(r"Pattern \d+\b")
PAGE_OF_PATTERNS = re.compile(r"\bpatterns?\b", re.IGNORECASE)
LEAST = 100.0
"""What is smaller is no piece of paper to be cut out. [mm²]"""


def outlines(page):
    """Closed lines that lie in no other, but for a border round the whole page."""
    closed = [(shapely.Polygon(s.points), s) for s in page.strokes if len(s.points) > 3 and s.points[0] == s.points[-1]]
    sizeable = [(ring.buffer(0), s) for ring, s in closed if LEAST < ring.area < 0.9 * page.size[0] * page.size[1]]
    found = []
    for ring, stroke in sorted(sizeable, key=lambda one: -one[0].area):
        if not any(other.buffer(0.05).contains(ring) for other in found) and _is_a_piece(page, ring, stroke):
            found.append(ring)
    return found


def _is_a_piece(page, ring, outline):
    """Whether a closed line has a dashed or a wider line in it."""
    marks = [s for s in page.strokes if s.dashes or s.width > 1.4 * outline.width]
    return any(ring.buffer(0.05).contains(shapely.LineString(mark.points)) for mark in marks if len(mark.points) > 1)


def is_of_patterns(seen):
    """Whether the bookmark or the head of a page, its largest line of writing, speaks of patterns."""
    head = max(seen.lines, key=lambda line: line.size, default=None)
    return bool(PAGE_OF_PATTERNS.search(f"{seen.page.title} {head.text if head else ''}"))


def captions_beside(seen):
    """On a page of patterns: captions outside an outline or over its edge, and outlines without one or with two."""
    if not is_of_patterns(seen):
        return
    rings = outlines(seen.page)
    captions = [block for block in blocks_of(seen.lines) if CAPTION.match(block[0].text)]
    holds = np.zeros(len(rings), dtype=int)
    for block in captions:
        place = shapely.union_all([line.ink for line in block])
        inside = [n for n, ring in enumerate(rings) if ring.contains(place)]
        for n in inside:
            holds[n] += 1
        if not inside:
            words = f"{block[0].text!r} and its {len(block) - 1} lines stand in no outline"
            yield fault("caption beside its outline", seen.page, place, words)
    for ring, count in zip(rings, holds, strict=True):
        if count != 1:
            yield fault("caption beside its outline", seen.page, ring, f"an outline holds {count} captions")
