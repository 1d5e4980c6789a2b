"""Templates: everything that is laid on the wood, as one PDF for the desk printer.

Story sticks first, since they are the fewest pages, then lay-on patterns, shaped edges, drilling cards where the
fastening is known, and the tiles of each kind of set; pages that no desk printer takes are left to `set_page`, on its
roll. Every page is numbered, and says how to check it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path
from typing import Unpack

import attrs

from .drafting.sheets.sheet import Sheet
from .drafting.writers.pdf import bind_pdf
from .drafting.writers.saving import place, write_whole
from .drawings.making.asked import Asked, OnDeskPaper, ask
from .drawings.making.buildable import must_be_buildable
from .drawings.templates.drill.pages import drill_pages
from .drawings.templates.edge.pages import edge_pages
from .drawings.templates.pattern.pages import pattern_pages
from .drawings.templates.set.tiles import tile_pages
from .drawings.templates.stick.pages import stick_pages
from .errors import PaperError
from .layout.laid_out import of_a_layout
from .layout.layout import Layout

KINDS: Mapping[str, Callable[[Layout, Asked], Iterable[Sheet]]] = {
    "sticks": stick_pages,
    "patterns": pattern_pages,
    "edges": edge_pages,
    "drilling": drill_pages,
    "tiles": tile_pages,
}
"""What there is, in the order of the pages."""


def all_templates(layout: Layout, asked: Asked, kinds: Sequence[str] = tuple(KINDS)) -> list[Sheet]:
    """The templates of some kinds."""
    made: list[Sheet] = []
    for draw in (draw for kind, draw in KINDS.items() if kind in kinds):
        for sheet in draw(layout, asked):
            asked.told(sheet.title)
            made.append(sheet)
    return made


def template_sheets(
    layout: Layout, *, kinds: Sequence[str] = tuple(KINDS), **options: Unpack[OnDeskPaper]
) -> tuple[Sheet, ...]:
    """The pages of `templates`, numbered n of N.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    PaperError
        If there is no such kind or paper, or something does not fit.
    """
    unknown = [kind for kind in kinds if kind not in KINDS]
    if unknown or isinstance(kinds, str) or not kinds:
        raise PaperError(f"Templates are {', '.join(KINDS)}, any of them in a list, not {kinds!r}.")
    must_be_buildable(layout, "A template is not drawn")
    made = all_templates(layout, ask(layout, OnDeskPaper, options), kinds)
    return tuple(attrs.evolve(sheet, number=n, count=len(made)) for n, sheet in enumerate(made, 1))


@of_a_layout
def templates(
    layout: Layout, path: str | Path, *, kinds: Sequence[str] = tuple(KINDS), **options: Unpack[OnDeskPaper]
) -> Path:
    """Write what is laid on the wood as one PDF, whole or not at all, and give its path.

    Parameters
    ----------
    layout : Layout
    path : path
        Ends in .pdf.
    kinds : sequence of str
        Any of "sticks", "patterns", "edges", "drilling" and "tiles"; all of them if not given.
    **options
        paper, margin, printer, house and told, as `Asked` has them; patterns that do not fit go on the next larger one.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    PaperError
        If the path does not end in .pdf, there is no such kind or paper, something does not fit, or no part is cut.
    MissingLibrary
        If cairo is not installed.
    """
    target = place(path)
    if target.suffix.lower() != ".pdf":
        raise PaperError(f"Templates are one PDF; {target.name!r} does not end in .pdf.")
    made = template_sheets(layout, kinds=kinds, **options)
    if not made:
        raise PaperError("No part of this frame is cut, so there is nothing to lay on the wood.")
    return write_whole(target, bind_pdf(made, title=f"{layout.frame.name}, templates"))
