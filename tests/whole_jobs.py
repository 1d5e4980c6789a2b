"""What must hold of any job, whatever happened to it: `from whole_jobs import holds, is_drawn, is_read`.

An error of our own that says something, or a layout in which no two parts share wood that no finding tells of, marks
close on the length of their leg, and the description reads back as it was written; and where it is drawn, every sheet
stays inside its border.
"""

from __future__ import annotations

import itertools
import warnings
from collections import Counter

import shapely
from added_up import heights, knows
from paper_reader.checking import faults_of
from paper_reader.page import read_pages
from solid_wood import clashing, sharing

from benchjoin import fasten, lay_out
from benchjoin.binding import sheets
from benchjoin.drafting.primitives import Line
from benchjoin.drafting.writers.pdf import bind_pdf
from benchjoin.errors import BenchjoinError, CannotDraw, DesignFileError, PaperError
from benchjoin.frame.design.file import read_design, write_design
from benchjoin.frame.identity import of_piece


def holds(frame):
    """The layout of a frame that keeps the rules, or None where it is refused in words."""
    assert read_design(write_design(frame)) == frame, "the description does not read back"
    try:
        layout = lay_out(frame)
    except BenchjoinError as error:
        assert str(error).strip().endswith("."), f"{error!r} is no sentence"  # noqa: PT017
        return None
    is_right(layout)
    return layout


def is_right(layout):
    """No wood is shared untold, every notch lies on its leg, every sentence ends, and the heights add up."""
    told = {name for finding in layout.findings for name in (*finding.parts, finding.where)}
    for piece, one, other in sharing(layout) - clashing(layout):  # what was measured too long is told by other checks
        names = {one, other, f"{piece}/{one}", f"{piece}/{other}"}
        assert names & told, f"{one} and {other} of piece {piece} share wood, and nobody is told"
    for leg in layout.legs():
        for notch in leg.notches:
            assert -1e-6 <= notch.bottom <= notch.top <= leg.length + 1e-6, f"{notch} lies off its leg"
            assert notch.depth <= notch.size[2] + 1e-6, f"{notch} is deeper than its leg"
    for finding in layout.findings:
        assert finding.sentence.strip().endswith("."), finding.sentence
    if knows(layout.frame):
        for number in range(1, layout.frame.quantity + 1):
            adds_up(layout, number)


def adds_up(layout, number):
    """Every rail of a piece stands where an exact sum from the foot puts it."""
    for name, reckoned in (heights(layout.frame, number) or {}).items():
        if name not in {part.identity for part in layout.piece(number)}:
            assert any(f.kind == "no length left" and name in f.where for f in layout.findings), f"{name} is not there"
            continue
        rail = layout.part(of_piece(number, name)).blank
        off = max(abs(rail.low[2] - reckoned[0]), abs(rail.high[2] - reckoned[1]))
        assert off <= 1e-6, f"{name} of piece {number} stands {float(off):g} mm off its sum"


def is_drawn(layout):
    """Every sheet of the binder, inside its border; none where nothing fits the paper, in words."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        try:
            made = sheets(layout)
        except (PaperError, CannotDraw) as error:
            assert str(error).strip().endswith("."), f"{error!r} is no sentence"  # noqa: PT017
            return ()
    for sheet in made:
        borders = [item for item in sheet.whole if isinstance(item, Line) and item.kind == "border"]
        assert len(borders) <= 1, sheet.name
        for border in borders:
            inside = shapely.Polygon(border.points).buffer(1e-6)
            points = [p for item in sheet.drawing if isinstance(item, Line) for p in item.points]
            assert not points or inside.contains(shapely.MultiPoint(points)), f"{sheet.name} reaches over its border"
        assert "nan" not in sheet.svg(), sheet.name
    return made


def is_bound(made, name):
    """Sheets in a file, read back: a page for each, its title among its words. The pages that were read."""
    pages = read_pages(bind_pdf(made, title=name)) if made else []
    assert len(pages) == len(made), f"{len(made)} sheets come to {len(pages)} pages"
    for sheet, page in zip(made, pages, strict=True):
        words = "".join(letter.text for letter in page.letters).replace(" ", "")
        assert sheet.title.split()[0] in words, f"{sheet.title} is not on its page, which says {words[:200]}"
    return pages


def clashes_on(pages):
    """How many faults a reader of clashes finds on pages, by rule."""
    return Counter(f"paper: {fault.rule}" for fault in faults_of(pages))


def is_read(text):
    """A design file, damaged or not: a frame, or an error of our own with a sentence."""
    try:
        return read_design(text if "\n" in text else text + "\n")
    except DesignFileError as error:
        assert str(error).strip(), text  # noqa: PT017
        return None


def is_fastened(layout):
    """How many fasteners hold it together: each ends inside the part that it goes to, and none meets another."""
    work = fasten(layout, wood="western larch")
    for finding in work.findings:
        assert finding.sentence.strip().endswith("."), finding.sentence
    for one in work.driven:
        into = layout.part(of_piece(one.piece, one.point)).blank
        inside = all(low <= at <= high for low, at, high in zip(into.low, one.tip, into.high, strict=True))
        assert inside, f"the point of {one} comes out of {one.point}"
    shafts = [(one, one.cylinder()) for one in work.driven if one.piece == 1]
    for (one, own), (other, its) in itertools.combinations(shafts, 2):
        assert own.meet(its) is None, f"{one} and {other} meet"
    return len(work.driven)
