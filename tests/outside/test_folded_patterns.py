"""Lay-on patterns folded round the wood: a small computation in space that knows no drawing code.

The wood is a block of the section, from which manifold3d takes the notch. A pattern is read from its PDF by pypdfium2,
its dashed folds bent by a right angle, laid on the face with its near shoulder at the height stated, and every wide
line of it must lie on an edge of the notch; the hatched paper must lie where wood is taken.
"""

from __future__ import annotations

import manifold3d
import numpy as np
import pytest
from designs import plain_bench as bench
from designs import plain_rack as rack
from read_paper import read_pages
from samples import SAMPLES

from benchjoin import lay_out
from benchjoin.drafting.full_size.correction import PrinterScale
from benchjoin.drafting.writers.pdf import bind_pdf
from benchjoin.drawings.templates.pattern.pages import notch_patterns

MARK = 0.05
WIDE, NARROW = 0.5, 0.25
FIT = [SAMPLES["tops aligned"], SAMPLES["let in part-way"]]


def straight(strokes, width):
    for stroke in strokes:
        if abs(stroke.width - width) < 0.01:
            for a, b in zip(stroke.points, stroke.points[1:], strict=False):
                yield np.array(a), np.array(b)


def blocks(page):
    """Cutting outlines of the patterns: the narrow rectangles that lie in no other."""
    found = []
    for stroke in page.strokes:
        if abs(stroke.width - NARROW) < 0.01 and len(stroke.points) == 5 and stroke.points[0] == stroke.points[-1]:
            xs, ys = zip(*stroke.points, strict=True)
            found.append((min(xs), min(ys), max(xs), max(ys)))
    return [a for a in found if not any(b != a and inside(a, b) for b in found) and a[2] - a[0] > 30]


def inside(a, b):
    return a[0] >= b[0] - 0.01 and a[1] >= b[1] - 0.01 and a[2] <= b[2] + 0.01 and a[3] <= b[3] + 0.01


def folds(page, block):
    """Level lines as wide as a pattern from edge to edge that are no part of its outline."""
    found = []
    for a, b in straight(page.strokes, NARROW):
        level, long = abs(a[1] - b[1]) < 1e-3, abs(abs(a[0] - b[0]) - (block[2] - block[0])) < 0.02
        within = block[1] + 0.1 < a[1] < block[3] - 0.1 and abs(min(a[0], b[0]) - block[0]) < 0.02
        if level and long and within:
            found.append(a[1])
    return sorted(set(found))


def bend(point, low, high):
    """A point of the paper on the wood: along, across the face, and down; low and high are folds or None."""
    x, y = point
    if high is not None and y > high:
        return np.array([x, high, y - high])
    if low is not None and y < low:
        return np.array([x, low, low - y])
    return np.array([x, y, 0.0])


def wood_less(section, cut, others, length):
    solid = manifold3d.Manifold.cube((length, *section)).translate((-length / 2, 0, 0))
    for low, high in [cut, *others]:
        box = manifold3d.Manifold.cube(tuple(b - a for a, b in zip(low, high, strict=True))).translate(tuple(low))
        solid -= box
    return solid


@pytest.mark.parametrize("frame", [bench, rack, *FIT], ids=lambda f: f.name)
@pytest.mark.parametrize("corrected", [False, True], ids=["as drawn", "corrected"])
def test_a_folded_pattern_lies_on_the_notch_of_the_solid(frame, corrected, tmp_path):
    layout = lay_out(frame)
    scale = (0.985, 0.992) if corrected else (1.0, 1.0)
    printer = PrinterScale(250 * scale[0], 180 * scale[1]) if corrected else None
    path = tmp_path / "patterns.pdf"
    path.write_bytes(bind_pdf(notch_patterns(layout, printer=printer), title="patterns"))
    pages = [true_size(page, scale) for page in read_pages(path)]
    notches = list(distinct_notches(layout))
    seen = [False] * len(notches)
    for page in pages:
        for block in blocks(page):
            lines = pattern_lines(page, block)
            match = [n for n, notch in enumerate(notches) if lies_on(lines, *notch)]
            assert match, f"a pattern that lies on no notch: {block}"
            for n in match:
                seen[n] = True
    assert all(seen), "a notch without a pattern"


def true_size(page, scale):
    """The page as a printer that is off prints it."""
    along, across = scale if page.size[0] > page.size[1] else scale[::-1]
    strokes = [s._replace(points=[(x * along, y * across) for x, y in s.points]) for s in page.strokes]
    return page._replace(strokes=strokes)


def pattern_lines(page, block):
    """Wide lines of a pattern, folded round a face whose lower edge is at 0 and whose first shoulder is found later."""
    found = folds(page, block)
    middle = (block[1] + block[3]) / 2
    low = next((y for y in found if y < middle), None)
    high = next((y for y in found if y >= middle), None)
    base = low if low is not None else block[1]
    fold_high = None if high is None else high - base
    fold_low = None if low is None else 0.0
    lines = []
    for a, b in straight(page.strokes, WIDE):
        if all(block[0] - 0.3 < p[0] < block[2] + 0.3 and block[1] - 0.3 < p[1] < block[3] + 0.3 for p in (a, b)):
            if abs(a[0] - b[0]) > 1e-3 and abs(a[1] - b[1]) > 1e-3:
                continue  # a sign, not a line of the joint
            ends = [bend((p[0] - block[0], p[1] - base), fold_low, fold_high) for p in (a, b)]
            lines.append((ends, p_outline(a, b, block)))
    return [ends for ends, outline in lines if not outline]


def p_outline(a, b, block):
    """Whether a line is the end of the part, over the whole height of the pattern."""
    return abs(abs(a[1] - b[1]) - (block[3] - block[1])) < 0.05


def distinct_notches(layout):
    """Of every cut: size across and through the part, and the notch from its near shoulder, from the layout's boxes."""
    axes = {"front": (1, 1), "back": (1, -1), "left": (0, 1), "right": (0, -1)}
    done = set()
    for part in layout.parts:
        for cut in part.cuts:
            axis, way = axes[cut.face]
            along = 2 if part.role == "leg" else (0 if part.side in ("front", "back") else 1)
            (across,) = {0, 1, 2} - {axis, along}
            low, high = np.array(part.blank.low), np.array(part.blank.high)
            box = np.clip(np.array([cut.box.low, cut.box.high]), low, high)
            depth = box[:, axis] - low[axis] if way > 0 else high[axis] - box[::-1, axis]
            section = (high[across] - low[across], high[axis] - low[axis])
            start, end = box[:, along]
            v = box[:, across] - low[across]
            notch = (*np.round(section, 4), round(end - start, 4), *np.round(v, 4), *np.round(depth, 4))
            if notch not in done:
                done.add(notch)
                yield section, end - start, v, depth


def lies_on(lines, section, high, across, depth):
    """Whether all lines lie on edges of a notch: as it is seen, or across the other way, or end for end."""
    for flip_v in (False, True):
        for flip_u in (False, True):
            v = section[0] - across[::-1] if flip_v else across
            if fits(lines, section, high, v, depth, flip_u):
                return True
    return False


def fits(lines, section, high, v, depth, flip_u):
    xs = [p[0] for ends in lines for p in ends]
    if not xs or abs(max(xs) - min(xs) - high) > MARK:
        return False
    near = min(xs)
    cut = (np.array([0, v[0], depth[0]]), np.array([high, v[1], depth[1]]))
    moved = [[p - np.array([near, 0, 0]) for p in ends] for ends in lines]
    if flip_u:
        moved = [[np.array([high - p[0], p[1], p[2]]) for p in ends] for ends in moved]
    solid = wood_less(section, cut, [], 2000.0)
    return all(on_an_edge(p, q, cut) and on_the_surface((p + q) / 2, solid) for p, q in moved)


def on_an_edge(p, q, cut):
    """Both ends on one edge of the notch's box: two coordinates are those of the box, the third within it."""
    low, high = cut
    fixed = 0
    for axis in range(3):
        same = abs(p[axis] - q[axis]) < MARK
        at_bound = min(abs(p[axis] - low[axis]), abs(p[axis] - high[axis])) < MARK
        fixed += same and at_bound
        if not (low[axis] - MARK <= min(p[axis], q[axis]) and max(p[axis], q[axis]) <= high[axis] + MARK):
            return False
    return fixed >= 2


def on_the_surface(point, solid):
    """A ball of a tenth of a millimetre at the place is partly wood and partly air."""
    ball = manifold3d.Manifold.cube((0.2, 0.2, 0.2), True).translate(tuple(point))
    return 0 < (ball ^ solid).volume() < ball.volume() - 1e-9
