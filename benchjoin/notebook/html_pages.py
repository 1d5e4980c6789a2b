"""Values as small pages of HTML: a picture where there is one, and the numbers that matter.

`notebook` registers these with IPython; nothing below knows that notebooks exist.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterable, Sequence

from ..drafting.linework import Linework
from ..drafting.primitives import Drawing, bounds
from ..drafting.sheets.arrange import place_in
from ..drafting.sheets.sheet import Sheet
from ..drafting.writers.svg import fluid, svg_text
from ..drawings.lists.board_sheet import board_sheets
from ..drawings.making.house import PLAIN, House
from ..drawings.making.maker import make
from ..drawings.making.pieces import whose
from ..drawings.views.isometric import picture
from ..errors import BenchjoinError
from ..findings import Finding
from ..frame.frame import Frame
from ..layout.lay_out import lay_out
from ..layout.layout import Layout
from ..layout.on_face import Housing, OnFace
from ..layout.parts import Part
from ..layout.sets import PartSet
from ..readings import Tape
from ..shop.assembly.assembly import Assembly
from ..shop.boards.plan import BoardPlan
from ..shop.fasteners.fasten import Fastening
from ..shop.milling.milling import MillingPlan
from ..shop.overview import key_numbers, marks_list
from ..shop.strength.result import Strength
from ..tables import Table

WIDE, HIGH, MARGIN = 110.0, 90.0, 3.0
"""Room for a picture. [mm]"""
FINE = House(linework=Linework(wide=0.25, narrow=0.13))
"""Lines of a small picture, so that near ones stay apart."""
SIDES = re.compile(r"\b(left|right)\b")
SIGNS = {"error": "✗ error", "warning": "! warning", "note": "· note"}
"""Severities differ in more than their colour."""
ROW = "display:flex;flex-wrap:wrap;gap:2em;align-items:flex-start;background:#fff;color:#000;padding:0.5em"
"""Side by side, and black on white in a dark notebook too."""


def frame_page(frame: Frame) -> str:
    """A picture of the frame and its key numbers, or why it cannot be laid out."""
    try:
        layout = lay_out(frame)
    except BenchjoinError as error:
        return f"<div><strong>{html.escape(frame.name)}</strong>{refusal(error)}</div>"
    return f'<div style="{ROW}">{_pictured(layout)}<div>{key_numbers(layout).html()}</div></div>'


def layout_page(layout: Layout) -> str:
    """A picture, key numbers, marks leg by leg, and the findings."""
    found, marks = findings_page(layout.findings), marks_list(layout).html()
    return (
        f'<div style="{ROW}">{_pictured(layout)}<div>{marks}</div><div>{key_numbers(layout).html()}{found}</div></div>'
    )


def _pictured(layout: Layout) -> str:
    """The picture, and of which pieces it is where they differ."""
    of = whose(layout, 1)
    return f"<div>{picture_svg(layout)}{f'<p>{of[0].upper()}{of[1:]}</p>' if of else ''}</div>"


def picture_svg(layout: Layout) -> str:
    """The isometric picture alone, as large as its room allows."""
    seen = picture(layout.piece(1))
    x0, y0, x1, y1 = seen.lines.bounds
    scale = min((WIDE - 2 * MARGIN) / (x1 - x0), (HIGH - 2 * MARGIN) / (y1 - y0))
    return cropped(seen.drawing(scale), layout.frame.name, house=FINE)


def cropped(drawing: Drawing, title: str, *, house: House = PLAIN) -> str:
    """A drawing without border and title block, as SVG."""
    a, b, c, d = bounds(drawing)
    width, height = c - a + 2 * MARGIN, d - b + 2 * MARGIN
    placed = place_in(drawing, (MARGIN, MARGIN, width - MARGIN, height - MARGIN))
    return make(placed, house=house, name="picture", title=title, size=(width, height)).svg()


def finding_page(finding: Finding, same: Sequence[Finding] = ()) -> str:
    """One finding: how grave, the sentence, on whose authority, and where else the same is true."""
    also = f" The same: {html.escape(', '.join(own.where for own in same))}." if same else ""
    return f'<p style="margin:0.2em 0"><strong>{SIGNS[finding.severity]}</strong> {_sentence(finding)}{also}</p>'


def findings_page(findings: Iterable[Finding]) -> str:
    """Findings one below the other; what is true of left and right is told once."""
    told: dict[object, list[Finding]] = {}
    for own in findings:
        told.setdefault((own.severity, own.kind, SIDES.sub("", own.sentence)), []).append(own)
    return "".join(finding_page(same[0], same[1:]) for same in told.values()) or "<p>no findings</p>"


def _sentence(finding: Finding) -> str:
    return f"{html.escape(finding.sentence)} <small>[{html.escape(str(finding.source))}]</small>"


def refusal(error: BenchjoinError) -> str:
    """Why there is no layout."""
    return f'<pre style="white-space:pre-wrap"><strong>✗ error</strong> {html.escape(str(error))}</pre>'


def part_page(part: Part) -> str:
    """A part in a picture, and what is cut in it, over its datum end in mm."""
    seen = picture([part])
    x0, y0, x1, y1 = seen.lines.bounds
    scale = min(WIDE / (x1 - x0), HIGH / (y1 - y0) / 2)
    size = " × ".join(map(part.tape.both, (part.length, part.width, part.thickness)))
    title = f"{part.name} {part.mark}: {size}"
    table = _cuts(title, map(part.on_face, part.cuts), part.tape)
    drawn = cropped(seen.drawing(scale), part.name, house=FINE)
    return f'<div style="{ROW}"><div>{drawn}</div><div>{table.html()}</div></div>'


def notches_page(notches: Sequence[Housing]) -> str:
    """Notches of a leg, as the tape reads them."""
    return _cuts("", notches, notches[0].tape).html()


def _cuts(title: str, cuts: Iterable[OnFace], tape: Tape) -> Table:
    heads = ("For", "Joint", "From", "To", "Deep", "Face")
    rows = tuple((own.mate, own.kind, *map(tape.both, (own.start, own.end, own.depth)), own.called) for own in cuts)
    return Table(title, heads, rows, (), "llrrrl")


def set_page(own: PartSet) -> str:
    """What is struck across a set of clamped legs, or other parts, from the datum end."""
    tape = own.members[0].tape
    rows = tuple(
        (
            tape.both(line.at),
            band.title,
            ", ".join(dict.fromkeys(own.members[t.member].mark for t in line.takers)),
        )
        for band in own.bands
        for line in band.lines
    )
    title = f"Set {own.letter}: {own.title}, {', '.join(part.mark for part in own.members)}"
    return Table(title, ("Line at", "Which faces up", "On"), rows, (), "rll").html()


def sheet_page(sheet: Sheet) -> str:
    """A sheet as wide as its cell, and how large it is on paper."""
    scale = f", drawn {sheet.scale}" if sheet.scale else ""
    said = f"{sheet.title}: {sheet.width:.6g} × {sheet.height:.6g} mm on paper{scale}; here it is as wide as the cell."
    drawn = fluid(svg_text(sheet, embed=True))
    wide = f"max-width:{sheet.width:.6g}mm"
    return f'<figure style="margin:0;{wide}">{drawn}<figcaption>{html.escape(said)}</figcaption></figure>'


def boards_page(plan: BoardPlan) -> str:
    """The boards as they are cut, and the list of the cuts."""
    return "".join(map(sheet_page, board_sheets(plan)[:1])) + _tables(plan.table())


def milling_page(plan: MillingPlan) -> str:
    """What goes through the planer together, and the steps."""
    return _tables(plan.table(), plan.steps())


def strength_page(found: Strength) -> str:
    """What is nearest its limit, when it tips, and what was found."""
    return _tables(found.table(most=10), found.stability()) + findings_page(found.findings)


def assembly_page(plan: Assembly) -> str:
    """The steps, and what was found."""
    return _tables(plan.table()) + findings_page(plan.findings)


def fastening_page(work: Fastening) -> str:
    """What to buy, joint by joint, and what was found."""
    return _tables(work.schedule(), work.table()) + findings_page(work.findings)


def _tables(*tables: Table) -> str:
    return f'<div style="{ROW}">{"".join(f"<div>{table.html()}</div>" for table in tables)}</div>'
