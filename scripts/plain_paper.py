"""Plain ways to the same paper, for scripts/bench: strings, cairo and matplotlib with a sheet's own primitives.

None of them is how the library works; they are floors and neighbours to measure it against, each as good as its means
allow: what is alike is drawn in one go, and a font is chosen when it changes. Needs cairo; matplotlib is measured where
it is installed.
"""

from __future__ import annotations

import io
import math
from collections.abc import Iterable, Sequence
from operator import attrgetter
from typing import Any

import cairocffi

from benchjoin.drafting.lettering import font_size, text_width
from benchjoin.drafting.linework import KINDS
from benchjoin.drafting.primitives import SHARES, Disc, Drawing, Fill, Line, Text, flat
from benchjoin.drafting.sheets.sheet import Sheet
from benchjoin.drafting.writers.cairo import drawing_fonts
from benchjoin.drafting.writers.png import wrapped

OWN = cairocffi.cairo  # its own functions, without the wrapper that asks after each whether all is well
POINT = 25.4 / 72  # mm
Points = Sequence[tuple[float, float]]


def as_strings(drawing: Drawing, down: float) -> str:
    """The primitives of a sheet as plain strings with their numbers: a path for each kind of line, as SVG has it."""

    def path(points: Points, end: str) -> str:
        return "M" + "L".join([f"{x:.3f} {down - y:.3f}" for x, y in points]) + end

    paths: dict[str, list[str]] = {}
    others = []
    for item in flat(drawing):
        if isinstance(item, Line):
            paths.setdefault(item.kind, []).append(path(item.points, "Z" if item.closed else ""))
        elif isinstance(item, Fill):
            paths.setdefault(item.tone, []).extend([path(ring, "Z") for ring in item.rings])
        elif isinstance(item, Disc):
            x, y = item.centre
            others.append(f'<circle cx="{x:.3f}" cy="{down - y:.3f}" r="{item.radius:.3f}"/>')
        elif isinstance(item, Text):
            x, y = item.at
            others.append(f'<text x="{x:.3f}" y="{down - y:.3f}" font-size="{item.height:.3f}">{item.string}</text>')
    return "\n".join([f'<path d="{"".join(own)}" class="{kind}"/>' for kind, own in paths.items()] + others)


def cairo_pdf(sheets: Sequence[Sheet]) -> bytes:
    """The primitives straight to the pages of a cairo PDF surface."""
    font = drawing_fonts()
    out = io.BytesIO()
    surface = cairocffi.PDFSurface(out, 1, 1)
    for sheet in sheets:
        surface.set_size(sheet.width / POINT, sheet.height / POINT)
        context = cairocffi.Context(surface)
        context.scale(1 / POINT, 1 / POINT)
        _with_cairo(context, sheet, {False: wrapped(font.plain), True: wrapped(font.bold)})
        surface.show_page()
    surface.finish()
    return out.getvalue()


def _with_cairo(context: Any, sheet: Sheet, fonts: dict[bool, Any]) -> None:
    """White below, then all lines of a kind in one stroke, black fills in one, and texts by their font."""
    items, down = list(flat(sheet.whole)), sheet.height
    fills = [item for item in items if isinstance(item, Fill)]
    context.set_source_rgb(1, 1, 1)
    _fill(context, [item for item in fills if item.tone == "white"], (), down)
    context.set_source_rgb(0, 0, 0)
    for kind in KINDS:
        lines = [item for item in items if isinstance(item, Line) and item.kind == kind]
        rings = [item for item in items if isinstance(item, Disc) and item.kind == kind and not item.filled]
        if not (lines or rings):
            continue
        for line in lines:
            _path(context, line.points, down, closed=line.closed)
        _circles(context, rings, down)
        pen = sheet.linework.pen(kind)
        context.set_line_width(pen.width)
        context.set_dash(list(pen.dashes))
        context.stroke()
    dots = [item for item in items if isinstance(item, Disc) and item.filled]
    _fill(context, [item for item in fills if item.tone == "black"], dots, down)
    texts = [item for item in items if isinstance(item, Text)]
    _texts(context, sorted(texts, key=attrgetter("bold", "height")), fonts, down)


def _fill(context: Any, fills: Iterable[Fill], dots: Iterable[Disc], down: float) -> None:
    for item in fills:
        for ring in item.rings:
            _path(context, ring, down, closed=True)
    _circles(context, dots, down)
    context.fill()


def _path(context: Any, points: Points, down: float, *, closed: bool) -> None:
    (x, y), *rest = points
    at, line_to = context._pointer, OWN.cairo_line_to
    OWN.cairo_move_to(at, x, down - y)
    for x, y in rest:
        line_to(at, x, down - y)
    if closed:
        OWN.cairo_close_path(at)


def _circles(context: Any, discs: Iterable[Disc], down: float) -> None:
    for disc in discs:
        context.new_sub_path()
        context.arc(disc.centre[0], down - disc.centre[1], disc.radius, 0.0, 2 * math.pi)


def _texts(context: Any, texts: Iterable[Text], fonts: dict[bool, Any], down: float) -> None:
    chosen: tuple[bool, float] | None = None
    for text in texts:
        if (text.bold, text.height) != chosen:
            chosen = text.bold, text.height
            context.set_font_face(fonts[text.bold])
            context.set_font_size(font_size(text.height))
        x, y = text.at
        share = SHARES[text.anchor]
        back = -share * text_width(text.string, text.height, bold=text.bold) if share else 0.0
        if not text.turn:
            OWN.cairo_move_to(context._pointer, x + back, down - y)
            OWN.cairo_show_text(context._pointer, text.string.encode())
            continue
        context.save()
        context.translate(x, down - y)
        context.rotate(-math.radians(text.turn))
        context.move_to(back, 0.0)
        context.show_text(text.string)
        context.restore()


def matplotlib_pdf(sheets: Sequence[Sheet], *, collections: bool) -> bytes:
    """The primitives with matplotlib, a figure a page: an artist for each of them, or collections of lines and fills.

    Raises
    ------
    ImportError
        If matplotlib is not installed.
    """
    from matplotlib.backends.backend_pdf import PdfPages
    from matplotlib.figure import Figure

    out = io.BytesIO()
    with PdfPages(out) as pages:
        for sheet in sheets:
            figure = Figure(figsize=(sheet.width / 25.4, sheet.height / 25.4))
            axes = figure.add_axes((0, 0, 1, 1))
            axes.set(xlim=(0, sheet.width), ylim=(0, sheet.height))
            axes.axis("off")
            items = list(flat(sheet.whole))
            (_collections if collections else _artists)(axes, items, sheet)
            for item in items:
                if isinstance(item, Text):
                    align = {"start": "left", "middle": "center", "end": "right"}[item.anchor]
                    size = font_size(item.height) / POINT
                    how = {"ha": align, "rotation": item.turn, "rotation_mode": "anchor"}
                    axes.text(*item.at, item.string, fontsize=size, weight="bold" if item.bold else "normal", **how)
            figure.savefig(pages, format="pdf")
    return out.getvalue()


def _artists(axes: Any, items: Iterable[Any], sheet: Sheet) -> None:
    from matplotlib.lines import Line2D
    from matplotlib.patches import Circle, Polygon

    for item in items:
        if isinstance(item, Line):
            pen = sheet.linework.pen(item.kind)
            axes.add_line(Line2D(*zip(*_round(item), strict=True), linewidth=pen.width / POINT, color="black"))
        elif isinstance(item, Fill):
            axes.add_patch(Polygon(item.rings[0], color=item.tone))
        elif isinstance(item, Disc):
            axes.add_patch(Circle(item.centre, item.radius, fill=item.filled, linewidth=0.25 / POINT))


def _collections(axes: Any, items: Sequence[Any], sheet: Sheet) -> None:
    from matplotlib.collections import LineCollection, PatchCollection, PolyCollection
    from matplotlib.patches import Circle

    for tone in ("white", "black"):
        rings = [item.rings[0] for item in items if isinstance(item, Fill) and item.tone == tone]
        axes.add_collection(PolyCollection(rings, facecolors=tone), autolim=False)
    for kind in KINDS:
        lines = [_round(item) for item in items if isinstance(item, Line) and item.kind == kind]
        width = sheet.linework.pen(kind).width / POINT
        axes.add_collection(LineCollection(lines, linewidths=width, colors="black"), autolim=False)
    for filled in (False, True):
        discs = [Circle(d.centre, d.radius) for d in items if isinstance(d, Disc) and d.filled == filled]
        face = "black" if filled else "none"
        own = PatchCollection(discs, facecolors=face, edgecolors="black", linewidths=0.25 / POINT)
        axes.add_collection(own, autolim=False)


def _round(line: Line) -> Points:
    return [*line.points, line.points[0]] if line.closed else line.points
