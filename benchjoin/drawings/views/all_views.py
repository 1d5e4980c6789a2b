"""The views of a binder, of each kind of piece: the general arrangement, and what it does not tell.

Where the arrangement has all sizes no other view is drawn. Where it is small, the front and one end follow with their
sizes; the other end, the back, the plan and sections only where they show what no sheet before them gives. All of them
stand at one scale where the paper allows.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

import attrs

from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ...trade.standards import SCALES
from ..making.asked import Asked
from ..making.fitting import LARGEST
from ..making.pieces import of_each_kind, shown_parts
from .arrangement import arrangement_page, is_full, views_of
from .cutting import Lettered
from .elevation import elevation_page
from .section import cut_away, section_page, sections_by_level
from .view import View, view
from .view_sizes import said, unsaid

Page = Callable[[float], Sheet]
"""A sheet at no larger a scale than is given."""


def view_pages(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    """All views of the first piece of each kind that a binder needs."""
    for own in of_each_kind(asked):
        yield from _of_a_piece(layout, own)


def _of_a_piece(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    parts, views = shown_parts(asked), views_of(asked)
    shown: list[View] = [views.front, *views.ends]
    known = [said(parts, look) for look in shown]
    back = view(parts, "back")
    if unsaid(said(parts, back), known):
        shown.append(back)
        known.append(said(parts, back))
    extra = unsaid(said(parts, views.plan), known)
    known.append(said(parts, views.plan))
    cuts: list[tuple[Lettered, str, View]] = []
    for cut, level, look in sections_by_level(layout, asked):
        sizes = said(cut_away(parts, cut), look)
        if unsaid(sizes, known):
            known.append(sizes)
            cuts.append((Lettered(cut, "ABCDEFGHJKLMNPRSTUVWXYZ"[len(cuts)]), level, look))
    views = attrs.evolve(views, sections=tuple(cut for cut, _, _ in cuts), extra=extra)
    first = arrangement_page(layout, asked, views)
    yield first
    pages: list[Page] = []
    if not is_full(first):
        pages += [partial(elevation_page, layout, asked, look) for look in shown]
    elif back in shown:
        pages.append(partial(elevation_page, layout, asked, back))
    pages += [partial(_section, layout, asked, *cut) for cut in cuts]
    yield from at_one_scale(pages)


def _section(layout: Layout, asked: Asked, one: Lettered, level: str, look: View, largest: float) -> Sheet:
    return section_page(layout, asked, one.cut, level, seen=look, letter=one.letter, largest=largest)


def at_one_scale(pages: list[Page]) -> Iterator[Sheet]:
    """Sheets at the scale of the one that comes out smallest; those that would need other paper stay as they are."""
    sheets = [page(LARGEST) for page in pages]
    scales = [_ratio(sheet) for sheet in sheets]
    for page, sheet, scale in zip(pages, sheets, scales, strict=True):
        again = page(min(scales)) if scale > min(scales) else sheet
        yield again if {again.width, again.height} == {sheet.width, sheet.height} else sheet


def _ratio(sheet: Sheet) -> float:
    return next(scale.ratio for scale in SCALES if scale.label == sheet.scale)
