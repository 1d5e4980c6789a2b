"""Goldens: recordings of what the library said when a person last looked at it. They prove nothing but a change.

Next to this file lie the marks of each set and the cut list as text, the lines and texts of some sheets, and an SVG of
each design; the picture of the README lies in gallery/. After a change that is meant, look at the sheets first, then
write the goldens anew: pytest tests/golden --force-regen
"""

from __future__ import annotations

from collections import defaultdict
from itertools import pairwise

import pytest
from designs import DESIGNS as OF_THE_GALLERY
from designs import GALLERY
from designs import plain_bench as bench
from designs import plain_rack as rack
from designs import plain_stand as stand
from recorded import marks

from benchjoin import cut_list, elevation, lay_out, set_page
from benchjoin.drafting.primitives import Disc, Fill, Line, Text
from benchjoin.drawings.lists.parts_sheet import parts_sheet
from benchjoin.drawings.views.isometric import isometric
from benchjoin.drawings.views.joint.pages import joint_details
from benchjoin.drawings.views.part_drawing import part_drawings
from benchjoin.drawings.views.plan import plan
from benchjoin.drawings.views.section import section

DESIGNS = {"bench": bench, "rack": rack}
REDUCED = {"bench": "Letter", "rack": "A3"}


@pytest.fixture(params=DESIGNS)
def design(request):
    return request.param


def test_marks_of_the_sets(design, file_regression):
    file_regression.check("\n".join(marks(lay_out(DESIGNS[design]))), encoding="utf-8")


def test_cut_list(design, file_regression):
    file_regression.check(f"{cut_list(lay_out(DESIGNS[design]))}\n", encoding="utf-8")


def figure(value):
    """Hundredths of a millimetre; halves go up whatever the last bit says, and there is no minus nought."""
    return f"{round(value + 1e-7, 2) + 0.0:.2f}"


def place(points):
    return " ".join(f"{figure(x)},{figure(y)}" for x, y in points)


def is_hatching(item):
    if item.kind != "thin" or len(item.points) != 2 or item.closed:
        return False
    (x0, y0), (x1, y1) = item.points
    return abs(abs(x1 - x0) - abs(y1 - y0)) < 1e-6 < abs(x1 - x0)


def strokes(lines):
    """Straight strokes of some lines; upright and level ones that touch are one, however the lines were cut up."""
    rows, whole = defaultdict(list), []
    for line in lines:
        for start, end in pairwise((*line.points, line.points[0]) if line.closed else line.points):
            (x0, y0), (x1, y1) = sorted((start, end))
            if figure(x0) == figure(x1):
                rows["x", figure(x0)].append((y0, y1))
            elif figure(y0) == figure(y1):
                rows["y", figure(y0)].append((x0, x1))
            else:
                whole.append(place([(x0, y0), (x1, y1)]))
    for (axis, at), spans in rows.items():
        for low, high in merged(spans):
            whole.append(f"{at},{high} {at},{low}" if axis == "x" else f"{low},{at} {high},{at}")
    return whole


def merged(spans):
    """Spans that touch or overlap, drawn together."""
    spans = sorted((min(span), max(span)) for span in spans)
    found = spans[:1]
    for low, high in spans[1:]:
        if low <= found[-1][1] + 0.005:
            found[-1] = (found[-1][0], max(found[-1][1], high))
        else:
            found.append((low, high))
    return [(figure(low), figure(high)) for low, high in found]


def recorded(sheet):
    """Strokes by kind and texts of a drawing, one a row from the top left; hatching and arrowheads are only counted."""
    rows, lines, counts = defaultdict(list), defaultdict(list), defaultdict(int)
    for item in sheet.drawing:
        if isinstance(item, Line) and is_hatching(item):
            counts["hatching"] += 1
        elif isinstance(item, Line):
            lines[item.kind].append(item)
        elif isinstance(item, Text):
            more = f" turned {item.turn:g}" * bool(item.turn) + " bold" * item.bold
            rows["texts"].append(f"{place([item.at])} {item.height:g} {item.anchor}{more}: {item.string}")
        elif isinstance(item, Disc):
            rows["discs"].append(f"{place([item.centre])} radius {figure(item.radius)}")
        elif isinstance(item, Fill):
            counts[f"{item.tone} fills"] += 1
    rows.update((f"{kind} lines", strokes(found)) for kind, found in lines.items())
    size = f"{sheet.title}: {figure(sheet.width)} x {figure(sheet.height)} mm, {sheet.scale}"
    ordered = {kind: sorted(found, key=_from_top) for kind, found in rows.items()}
    return {"sheet": size, "counts": dict(counts), **ordered}


def _from_top(row):
    x, y = map(float, row.split(" ")[0].split(","))
    return -y, x, row


def test_front_elevation_recorded(design, data_regression):
    data_regression.check(recorded(elevation(lay_out(DESIGNS[design]), "front")))


def test_reduced_set_page_recorded(design, data_regression):
    data_regression.check(recorded(set_page(lay_out(DESIGNS[design]), "A", paper=REDUCED[design])))


DRAWINGS = {
    "left end of the stand": lambda: elevation(lay_out(stand), "left"),
    "plan of the rack": lambda: plan(lay_out(rack)),
    "section of the bench at its bench": lambda: section(lay_out(bench), "bench"),
    "parts of the stand": lambda: part_drawings(lay_out(stand))[0],
    "joints of the rack": lambda: joint_details(lay_out(rack))[0],
    "parts of the bench drawn apart": lambda: parts_sheet(lay_out(bench)),
}


@pytest.mark.parametrize("name", DRAWINGS)
def test_drawing_recorded(name, data_regression):
    data_regression.check(recorded(DRAWINGS[name]()))


@pytest.mark.parametrize("name", ["bench", "rack", "stand"])
def test_front_elevation_as_svg(name, file_regression):
    svg = elevation(lay_out({"bench": bench, "rack": rack, "stand": stand}[name]), "front").svg().replace("><", ">\n<")
    file_regression.check(svg + "\n", extension=".svg", encoding="utf-8")


def test_the_picture_of_the_readme_is_up_to_date(tmp_path):
    """Draw it anew: elevation(lay_out(bench), "front").save("gallery/honey-house-front.svg")."""
    drawn = elevation(lay_out(bench), "front").save(tmp_path / "front.svg")
    assert (GALLERY / "honey-house-front.svg").read_text(encoding="utf-8") == drawn.read_text(encoding="utf-8")


PICTURES = {"bench": "honey-house-bench", "stand": "boot-room-stand", "rack": "print-room-rack"}


@pytest.mark.parametrize("name, file", PICTURES.items())
def test_the_pictures_of_the_readme_are_up_to_date(name, file, tmp_path):
    """Draw one anew: isometric(lay_out(bench)).save("gallery/honey-house-bench.svg")."""
    drawn = isometric(lay_out(OF_THE_GALLERY[name])).save(tmp_path / "picture.svg")
    assert (GALLERY / f"{file}.svg").read_text(encoding="utf-8") == drawn.read_text(encoding="utf-8")
