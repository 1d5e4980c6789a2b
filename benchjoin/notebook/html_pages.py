"""Values as small pages of HTML: a picture where there is one, and the numbers that matter.

`notebook` registers these with IPython; nothing below knows that notebooks exist.
"""

from __future__ import annotations

import html
from collections.abc import Iterable

from ..drafting.linework import Linework
from ..drafting.primitives import Drawing, bounds
from ..drafting.sheets.arrange import place_in
from ..drawings.making.house import PLAIN, House
from ..drawings.making.maker import make
from ..drawings.making.pieces import whose
from ..drawings.views.isometric import picture
from ..errors import BenchjoinError
from ..findings import Finding
from ..frame.frame import Frame
from ..layout.lay_out import lay_out
from ..layout.layout import Layout
from ..layout.parts import Part
from ..shop.assembly.assembly import Assembly
from ..shop.fasteners.fasten import Fastening
from ..shop.overview import key_numbers, marks_list
from ..shop.strength.result import Strength
from ..tables import Table

WIDE, HIGH, MARGIN = 110.0, 90.0, 3.0
"""Room for a picture. [mm]"""
FINE = House(linework=Linework(wide=0.25, narrow=0.13))
"""Lines of a small picture, so that near ones stay apart."""
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
    found = findings_page(layout.findings)
    marks = marks_list(layout).html()
    return f'<div style="{ROW}">{_pictured(layout)}<div>{key_numbers(layout).html()}{found}</div></div>{marks}'


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


def finding_page(finding: Finding) -> str:
    """One finding: how grave, the sentence, on whose authority."""
    return f'<p style="margin:0.2em 0"><strong>{SIGNS[finding.severity]}</strong> {_sentence(finding)}</p>'


def findings_page(findings: Iterable[Finding]) -> str:
    """Findings one below the other."""
    return "".join(map(finding_page, findings)) or "<p>no findings</p>"


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
    rows = tuple(
        (cut.cut.mate, cut.cut.kind, *(f"{size:.2f}" for size in (cut.start, cut.end, cut.depth)), cut.called)
        for cut in map(part.on_face, part.cuts)
    )
    size = " × ".join(f"{own:.2f}" for own in (part.length, part.width, part.thickness))
    title = f"{part.name} {part.mark}: {size} mm"
    table = Table(title, ("For", "Joint", "From (mm)", "To (mm)", "Deep (mm)", "Face"), rows, (), "llrrrl")
    drawn = cropped(seen.drawing(scale), part.name, house=FINE)
    return f'<div style="{ROW}"><div>{drawn}</div><div>{table.html()}</div></div>'


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
