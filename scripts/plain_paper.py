"""Plain ways to the same paper, for scripts/bench: strings, cairo and matplotlib with a sheet's own primitives, and
hidden lines by subtracting intervals.

None of them is how the library works; they are floors and neighbours to measure it against. Needs cairo; matplotlib
is measured where it is installed.
"""

from __future__ import annotations

import io
import math
from collections.abc import Iterator, Sequence
from typing import Any

import cairocffi

from benchjoin.drafting.lettering import font_size
from benchjoin.drafting.primitives import Disc, Drawing, Fill, Line, Primitive, Text, flat
from benchjoin.drafting.sheets.sheet import Sheet
from benchjoin.drafting.widths import FAMILY
from benchjoin.layout.parts import Part
from benchjoin.solids import boxes

POINT = 25.4 / 72  # mm
Points = Sequence[tuple[float, float]]


def as_strings(drawing: Drawing, down: float) -> str:
    """The primitives of a sheet, each as a plain string with its numbers."""

    def path(points: Points) -> str:
        return "M" + "L".join(f"{x:.3f} {down - y:.3f}" for x, y in points)

    told = []
    for item in flat(drawing):
        if isinstance(item, Line):
            told.append(f'<path d="{path(item.points)}" class="{item.kind}"/>')
        elif isinstance(item, Fill):
            told.append(f'<path d="{"".join(map(path, item.rings))}"/>')
        elif isinstance(item, Disc):
            x, y = item.centre
            told.append(f'<circle cx="{x:.3f}" cy="{down - y:.3f}" r="{item.radius:.3f}"/>')
        elif isinstance(item, Text):
            x, y = item.at
            told.append(f'<text x="{x:.3f}" y="{down - y:.3f}" font-size="{item.height:.3f}">{item.string}</text>')
    return "\n".join(told)


def cairo_pdf(sheets: Sequence[Sheet]) -> bytes:
    """The primitives straight to the pages of a cairo PDF surface."""
    out = io.BytesIO()
    surface = cairocffi.PDFSurface(out, 1, 1)
    for sheet in sheets:
        surface.set_size(sheet.width / POINT, sheet.height / POINT)
        context = cairocffi.Context(surface)
        context.scale(1 / POINT, 1 / POINT)
        for item in flat(sheet.whole):
            _with_cairo(context, item, sheet)
        surface.show_page()
    surface.finish()
    return out.getvalue()


def _with_cairo(context: Any, item: Primitive, sheet: Sheet) -> None:
    down = sheet.height
    if isinstance(item, Text):
        weight = cairocffi.FONT_WEIGHT_BOLD if item.bold else cairocffi.FONT_WEIGHT_NORMAL
        context.select_font_face(FAMILY, cairocffi.FONT_SLANT_NORMAL, weight)
        context.set_font_size(font_size(item.height))
        context.save()
        context.translate(item.at[0], down - item.at[1])
        context.rotate(-math.radians(item.turn))
        if item.anchor != "start":
            wide = context.text_extents(item.string)[4]
            context.translate(-wide if item.anchor == "end" else -wide / 2, 0.0)
        context.show_text(item.string)
        context.restore()
        return
    if isinstance(item, Disc):
        context.arc(item.centre[0], down - item.centre[1], item.radius, 0.0, 2 * math.pi)
    else:
        for ring in item.rings if isinstance(item, Fill) else (item.points,):
            context.move_to(ring[0][0], down - ring[0][1])
            for x, y in ring[1:]:
                context.line_to(x, down - y)
            if isinstance(item, Fill) or item.closed:
                context.close_path()
    if isinstance(item, Fill) or (isinstance(item, Disc) and item.filled):
        context.fill()
        return
    pen = sheet.linework.pen(item.kind)
    context.set_line_width(pen.width)
    context.set_dash(list(pen.dashes))
    context.stroke()


def matplotlib_pdf(sheets: Sequence[Sheet]) -> bytes:
    """The primitives as artists of matplotlib, a figure a page.

    Raises
    ------
    ImportError
        If matplotlib is not installed.
    """
    from matplotlib.backends.backend_pdf import PdfPages
    from matplotlib.figure import Figure
    from matplotlib.lines import Line2D
    from matplotlib.patches import Circle, Polygon

    out = io.BytesIO()
    with PdfPages(out) as pages:
        for sheet in sheets:
            figure = Figure(figsize=(sheet.width / 25.4, sheet.height / 25.4))
            axes = figure.add_axes((0, 0, 1, 1))
            axes.set(xlim=(0, sheet.width), ylim=(0, sheet.height))
            axes.axis("off")
            for item in flat(sheet.whole):
                if isinstance(item, Line):
                    pen = sheet.linework.pen(item.kind)
                    points = [*item.points, item.points[0]] if item.closed else item.points
                    x, y = zip(*points, strict=True)
                    axes.add_line(Line2D(x, y, linewidth=pen.width / POINT, color="black"))
                elif isinstance(item, Fill):
                    axes.add_patch(Polygon(item.rings[0], color="black" if item.tone == "black" else "white"))
                elif isinstance(item, Disc):
                    axes.add_patch(Circle(item.centre, item.radius, fill=item.filled, linewidth=0.25 / POINT))
                else:
                    align = {"start": "left", "middle": "center", "end": "right"}[item.anchor]
                    axes.text(
                        *item.at, item.string, fontsize=font_size(item.height) / POINT, ha=align, rotation=item.turn
                    )
            figure.savefig(pages, format="pdf")
    return out.getvalue()


Interval = tuple[float, float]


def hidden_by_intervals(parts: Sequence[Part], across: int, away: int) -> tuple[list[Points], list[Points]]:
    """Visible and covered pieces of the edges of all boxes that the parts are of, seen along an axis.

    Each edge of a box is an interval less those that nearer boxes cover. Edges between two boxes of one part are in it
    too. `across` and `away` are the axes to the right and away from the eye; up is z.
    """
    wood = [box for part in parts for box in boxes(part.blank, [cut.box for cut in part.cuts])]
    flat_wood = sorted((b.low[away], b.low[across], b.low[2], b.high[across], b.high[2]) for b in wood)
    seen: list[Points] = []
    covered: list[Points] = []
    for near, x0, y0, x1, y1 in flat_wood:
        before = [b for b in flat_wood if b[0] < near - 1e-6 and b[1] < x1 and b[3] > x0 and b[2] < y1 and b[4] > y0]
        for y in (y0, y1):
            cover = [(b[1], b[3]) for b in before if b[2] < y < b[4]]
            for kept, (low, high) in _less((x0, x1), cover):
                (seen if kept else covered).append(((low, y), (high, y)))
        for x in (x0, x1):
            cover = [(b[2], b[4]) for b in before if b[1] < x < b[3]]
            for kept, (low, high) in _less((y0, y1), cover):
                (seen if kept else covered).append(((x, low), (x, high)))
    return seen, covered


def _less(edge: Interval, cover: list[Interval]) -> Iterator[tuple[bool, Interval]]:
    """Pieces of an edge, and whether they are left when all that covers it is taken away."""
    at, end = edge
    for low, high in sorted(cover):
        if low > at:
            yield True, (at, min(low, end))
        if high > at:
            yield False, (max(at, low), min(high, end))
            at = high
        if at >= end:
            return
    yield True, (at, end)
