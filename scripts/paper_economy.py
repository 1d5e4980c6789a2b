"""Counts desk pages: all sets of a design in tiles, on story sticks and as lay-on patterns, against the area bound.

The bound is what is laid on the wood over what a page has between its margins: the faces of the clamped parts, the
strips, the patterns. No way of cutting takes fewer pages.
"""

import math
import runpy
from pathlib import Path

from benchjoin import lay_out
from benchjoin.drafting.full_size.desk_page import MARGIN
from benchjoin.drawings.making.house import both_ways
from benchjoin.drawings.templates.set.wood import face_width
from benchjoin.drawings.templates.stick.draw import LEAST_LANE
from benchjoin.layout.patterns import lay_ons
from benchjoin.layout.sticks import sticks
from benchjoin.tables import Table
from benchjoin.template_pages import template_sheets

GALLERY = Path(__file__).resolve().parent.parent / "gallery"
DESIGNS = {"honey_house_bench": "bench", "print_room_rack": "rack", "boot_room_stand": "stand"}


def areas(layout):
    """What each way lays on the wood. [mm²]"""
    first = {one.alike[0]: one for one in layout.sets if one.bands}
    faces = [pair for one in first.values() for band in one.bands for pair in zip(one.members, band.faces, strict=True)]
    patterns = [one for group in lay_ons(layout) for one in group]
    return {
        "tiles": sum(part.length * face_width(part, face) for part, face in faces),
        "sticks": sum(stick.length * LEAST_LANE * len(stick.lanes) for stick in sticks(layout)),
        "patterns": sum((p.end - p.start) * (p.size[1] + p.flap * len(p.folds)) for p in patterns),
    }


def rows():
    for file, name in DESIGNS.items():
        layout = lay_out(runpy.run_path(str(GALLERY / f"{file}.py"))[name])
        for paper in ("Letter", "A4", "A3"):
            (width, height), _ = both_ways(paper)
            room = (width - 2 * MARGIN) * (height - 2 * MARGIN)
            cells = []
            for kind, area in areas(layout).items():
                pages = len(template_sheets(layout, kinds=[kind], paper=paper))
                cells.append(f"{pages} ({math.ceil(area / room)})")
            yield (layout.frame.name, paper, *cells)


if __name__ == "__main__":
    print(
        Table(
            "Desk pages for all sets, and the area bound",
            ("Design", "Paper", "Tiles", "Sticks", "Patterns"),
            tuple(rows()),
        ).markdown()
    )
