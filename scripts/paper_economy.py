"""Counts pages: of binders, and of all sets in tiles, on story sticks and as lay-on patterns, against the fewest.

The fewest for sticks and patterns is what is laid on the wood over what a page has between its margins: no way of
cutting takes fewer. For tiles it is the panes that all struck lines take where a page has no head, no bars and no
seams: whole faces side by side, and none where nothing is marked.
"""

import math
import runpy
from pathlib import Path

from benchjoin import lay_out
from benchjoin.binding import sheets
from benchjoin.drafting.full_size.desk_page import MARGIN
from benchjoin.drafting.full_size.windows import RIM, cover
from benchjoin.drawings.making.house import both_ways
from benchjoin.drawings.templates.set.tiles import faces_of
from benchjoin.drawings.templates.set.wood import face_rows
from benchjoin.drawings.templates.stick.draw import LEAST_LANE
from benchjoin.layout.patterns import lay_ons
from benchjoin.layout.sticks import sticks
from benchjoin.tables import Table
from benchjoin.template_pages import template_sheets

GALLERY = Path(__file__).resolve().parent.parent / "gallery"
DESIGNS = {
    "honey_house_bench": "bench",
    "print_room_rack": "rack",
    "boot_room_stand": "stand",
    "print_room_tools": "tools",
}


def areas(layout):
    """What sticks and patterns lay on the wood. [mm²]"""
    patterns = [one for group in lay_ons(layout) for one in group]
    return {
        "sticks": sum(stick.length * LEAST_LANE * len(stick.lanes) for stick in sticks(layout)),
        "patterns": sum((p.end - p.start) * (p.size[1] + p.flap * len(p.folds)) for p in patterns),
    }


def fewest_tiles(layout, size):
    """Panes of the whole page between its margins that show all struck lines of all sets."""
    room = (size[0] - 2 * MARGIN, size[1] - 2 * MARGIN + RIM)
    return sum(
        len(cover(faces_of(one, band, face_rows(one.members, band), ends=False), room, step=1.0, clear=0.0))
        for one in {one.alike[0]: one for one in layout.sets}.values()
        for band in one.bands
    )


def rows():
    for file, name in DESIGNS.items():
        layout = lay_out(runpy.run_path(str(GALLERY / f"{file}.py"))[name])
        for paper in ("Letter", "A4", "A3"):
            (width, height), _ = both_ways(paper)
            room = (width - 2 * MARGIN) * (height - 2 * MARGIN)
            least = {kind: math.ceil(area / room) for kind, area in areas(layout).items()}
            least = {"tiles": min(fewest_tiles(layout, size) for size in both_ways(paper)), **least}
            cells = [str(len(sheets(layout, paper=paper, appendix=None)))]
            for kind, fewest in least.items():
                pages = len(template_sheets(layout, kinds=[kind], paper=paper))
                cells.append(f"{pages} ({fewest})")
            yield (layout.frame.name, paper, *cells)


if __name__ == "__main__":
    print(
        Table(
            "Pages of the binder before its appendix, desk pages for all sets, and the fewest",
            ("Design", "Paper", "Binder", "Tiles", "Sticks", "Patterns"),
            tuple(rows()),
        ).markdown()
    )
