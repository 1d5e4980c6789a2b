"""Pages of edge templates: each distinct shaped edge once, cut into page-long pieces like a story stick."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Unpack

from ....drafting.full_size.desk_page import DeskPage
from ....drafting.full_size.strip import cut_strip
from ....drafting.full_size.tiling import row_name
from ....drafting.primitives import Box
from ....drafting.sheets.figure import Figure
from ....drafting.sheets.sheet import Sheet
from ....layout.edges import ShapedEdge, shaped_edges
from ....layout.layout import Layout
from ....lengths import steady
from ....shop.done import marked_notes
from ...making.asked import Asked, OnDeskPaper, ask
from ...making.buildable import must_be_buildable
from ...making.desk import packed_on_desks
from ...making.house import both_ways
from ..marking import ranges
from .draw import EdgeTemplate, draw_edge

GAP = 2.5
"""Between two pieces. [mm]"""
RIM = (0.5, 0.5, 0.0, 0.5)
"""What stays free at the sides of the room. [mm]"""


def edge_templates(layout: Layout, **options: Unpack[OnDeskPaper]) -> tuple[Sheet, ...]:
    """Pages of full-size templates of shaped edges; none where all edges are straight.

    Parameters
    ----------
    layout : Layout
    **options
        paper, margin, printer and house, as `Asked` has them.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    PaperError
        If there is no such paper, margins leave too little of it, or a curve is deeper than a page.
    """
    return edge_pages(layout, ask(layout, OnDeskPaper, options))


def edge_pages(layout: Layout, asked: Asked) -> tuple[Sheet, ...]:
    """The templates of shaped edges, always on lying paper."""
    must_be_buildable(layout, "The template of an edge is not drawn")
    made = _distinct(layout)
    if not made:
        return ()

    def head(number: int, pages: int) -> tuple[str, ...]:
        return _head(layout, made, number, pages)

    def figures(page: DeskPage, _: Box) -> list[Figure]:
        return [page.lay(piece) for number, one in enumerate(made) for piece in _pieces(layout, one, number, page)]

    lying = [both_ways(paper)[1:] for paper in asked.papers]
    return packed_on_desks(asked, lying, head, figures, name="edges", title="Shaped edges", rim=RIM, gap=GAP)


def _distinct(layout: Layout) -> list[EdgeTemplate]:
    """Each shaped edge once, with the marks of all parts that have it; a part that is turned over has it, too."""
    found: dict[object, tuple[ShapedEdge, list[str]]] = {}
    for part in layout.parts:
        for edge in shaped_edges(part):
            ends = tuple(steady(*one) for one in edge.ends)
            key = (edge.of, edge.name, steady(part.length, edge.deepest), ends)
            found.setdefault(key, (edge, []))[1].append(part.mark)
    return [EdgeTemplate(edge, tuple(dict.fromkeys(own))) for edge, own in found.values()]


def _pieces(layout: Layout, one: EdgeTemplate, number: int, page: DeskPage) -> list[Figure]:
    strip = draw_edge(layout, one, row_name(number), page.holds[0] - 1.0)
    pieces = cut_strip(strip, read=layout.frame.tape.read)
    shows = (one.edge.part.identity,)
    return [Figure(name=f"Edge {piece.key}", drawing=piece.drawing, shows=shows) for piece in pieces]


def _head(layout: Layout, made: Sequence[EdgeTemplate], number: int, pages: int) -> tuple[str, ...]:
    of = f" {number} of {pages}" if pages > 1 else ""
    unit = "inches" if layout.frame.tape.unit == "in" else "millimetres"
    lines = [
        f"{row_name(n)}, for {ranges(one.marks)}: {one.edge.told(layout.frame.tape)}"
        + ("; half, flip it at the centre line." if one.half else ".")
        for n, one in enumerate(made)
    ]
    return (
        f"Shaped edges{of}. {layout.frame.name}",
        *lines,
        f"Cut out; glue each piece on the tab of the one before, its left line on that one's last line, and check the "
        f"distances from the datum end, in {unit}, with a tape. Lay the upper straight line flush with the edge, the "
        "left end with the datum end. Cut on the waste side (hatched), and fair to the line.",
        *marked_notes(layout.frame, layout.parts),
    )
