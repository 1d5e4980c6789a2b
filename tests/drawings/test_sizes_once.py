"""Every edge of a view is reached by one size: without those in brackets, sizes form a tree from the datum.

Along each axis of a view the edges are knots and the sizes are what ties them. Running sizes all start at the datum,
so the tree is a star: every edge is reached once, none twice, and none is left out. The reader follows the thin line
from a figure to the edge it stands for, and takes the size from the figure.
"""

from __future__ import annotations

import re
from collections import Counter
from fractions import Fraction

import pytest
import shapely
from designs import PLAIN_DESIGNS as DESIGNS
from designs import PLAIN_SAMPLES as SAMPLES

from benchjoin import elevation, lay_out
from benchjoin.drafting.primitives import Disc, Line, Text, text_box
from benchjoin.drawings.views.plan import plan
from benchjoin.drawings.views.section import section
from benchjoin.drawings.views.view import EYES, view
from benchjoin.lengths import INCH
from benchjoin.trade.standards import SCALES

FRAMES = {**DESIGNS, **SAMPLES}
UPRIGHT = ("front", "back", "left", "right")
VIEWS = (*UPRIGHT, "above")
FIGURE = re.compile(r"((?:\d+ )?\d+(?:/\d+)?(?:\.\d+)?)( full| scant)?")
RATIO = {scale.label: scale.ratio for scale in SCALES}


def millimetres(figure, unit):
    """What a figure says, or None for words."""
    found = FIGURE.fullmatch(figure)
    return None if found is None else float(sum(map(Fraction, found[1].split()))) * (INCH if unit == "in" else 1.0)


def drawn(layout, seen):
    return plan(layout) if seen == "above" else elevation(layout, seen)


def start_of(text, lines):
    """Where the thin line comes from that ends at a figure, and which way it runs."""
    box = text_box(text)

    def gap(line):
        return box.distance(shapely.Point(line.points[-1]))

    line = min(lines, key=gap)
    assert gap(line) < 2.0, text.string
    (x0, y0), (_, y1) = line.points[:2]
    return (x0, y0), "y" if abs(y1 - y0) < 1e-6 else "x"


def reached(sheet, unit):
    """Sizes not in brackets: axis, place on the page, size, and place of the origin mark. [mm]"""
    thin = [item for item in sheet.drawing if isinstance(item, Line) and item.kind == "thin" and len(item.points) > 1]
    origins = [item.centre for item in sheet.drawing if isinstance(item, Disc) and not item.filled]
    for text in sheet.drawing:
        if not isinstance(text, Text) or (size := millimetres(text.string, unit)) is None:
            continue
        (x, y), axis = start_of(text, thin)
        place = x if axis == "x" else y
        across = 1 if axis == "x" else 0
        at = text_box(text).centroid.coords[0][across]
        origin = min(origins, key=lambda centre: abs(centre[across] - at))  # the mark of the figure's own row
        yield axis, place, size, origin[1 - across]


@pytest.fixture(scope="module", params=FRAMES)
def layout(request):
    return lay_out(FRAMES[request.param])


def edges(layout, seen):
    """Edges along each axis, from the datum: those that are seen, all heights, the legs the view is for. [mm]"""
    parts, eye = layout.piece(1), EYES[seen]
    lines = view(parts, seen).visible
    found = {"x": set(), "y": set()}
    for axis, way in (("x", eye.right), ("y", eye.up)):
        n = next(i for i, step in enumerate(way) if step)
        for part in parts:
            legs = part.role == "leg" and (seen in (part.side, "above") or n == 1)
            for at in (round(part.blank.low[n], 6), round(part.blank.high[n], 6)):
                if n == 2 or legs or runs_along(lines, axis, way[n] * at):
                    found[axis].add(at)
    return found


def grows(seen, axis):
    """Whether places of the world grow with those of the page, 1, or fall, -1."""
    return sum(EYES[seen].right if axis == "x" else EYES[seen].up)


def runs_along(lines, axis, at):
    """Whether a line stands at a place of an axis, square to it."""
    x0, y0, x1, y1 = lines.bounds
    ends = [(at, y0 - 9), (at, y1 + 9)] if axis == "x" else [(x0 - 9, at), (x1 + 9, at)]
    return lines.intersection(shapely.LineString(ends).buffer(1e-4)).length > 0.5


@pytest.mark.parametrize("seen", VIEWS)
def test_every_edge_is_reached_once_from_the_datum(layout, seen):
    sheet, unit = drawn(layout, seen), layout.frame.tape.unit
    half = layout.frame.tape.division / 2 + 1e-6
    wanted = edges(layout, seen)
    counts = {"x": Counter(), "y": Counter()}
    for axis, place, size, datum in reached(sheet, unit):
        if size == 0:
            continue
        at = size * (1 if (place - datum) * grows(seen, axis) > 0 else -1)
        near = min(wanted[axis], key=lambda edge: abs(edge - at))
        assert near == pytest.approx(at, abs=half), (axis, size)
        counts[axis][near] += 1
    for axis, found in counts.items():
        assert {at for at in wanted[axis] if abs(at) > 1e-6} == set(found), axis
        assert set(found.values()) <= {1}, (axis, found)


@pytest.mark.parametrize("seen", VIEWS)
def test_a_size_stands_at_its_edge(layout, seen):
    sheet, unit = drawn(layout, seen), layout.frame.tape.unit
    half = layout.frame.tape.division / 2
    ratio = RATIO[sheet.scale]
    for _, place, size, datum in reached(sheet, unit):
        assert abs(place - datum) == pytest.approx(size * ratio, abs=half * ratio + 1e-6)


@pytest.mark.parametrize("seen", VIEWS)
def test_the_size_over_everything_repeats_a_sum_and_is_in_brackets(layout, seen):
    texts = [item for item in drawn(layout, seen).drawing if isinstance(item, Text)]
    level = [item.string for item in texts if seen == "above" or not item.turn]  # clears of elevations read upwards
    bracketed = [text for text in level if re.fullmatch(r"\(.*\)", text)]
    length, depth, _ = layout.overall()
    sides = {"above": (length, depth), "left": (depth,), "right": (depth,)}.get(seen, (length,))
    assert sorted(bracketed) == sorted(f"({layout.frame.tape.read(side)})" for side in sides)


@pytest.mark.parametrize("design", DESIGNS)
def test_a_section_gives_every_edge_once_too(design):
    layout = lay_out(DESIGNS[design])
    for level in layout.frame.levels():
        sizes = [(axis, size) for axis, _, size, _ in reached(section(layout, level.name), layout.frame.tape.unit)]
        assert len(sizes) == len(set(sizes)) > 6


def test_a_size_that_is_given_twice_is_found():
    layout = lay_out(DESIGNS["bench"])
    sheet = elevation(layout, "front")
    sizes = [(axis, size) for axis, _, size, _ in reached(sheet, "in")]
    assert ("y", 32 * INCH) in sizes
    twice = next(item for item in sheet.drawing if isinstance(item, Text) and item.string == "32")
    again = type(sheet)(name="again", title="", width=sheet.width, height=sheet.height, drawing=(*sheet.drawing, twice))
    assert [(axis, size) for axis, _, size, _ in reached(again, "in")].count(("y", 32 * INCH)) == 2
