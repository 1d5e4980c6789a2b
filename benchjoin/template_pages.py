"""Templates: everything that is laid on the wood, as one PDF for the desk printer.

Story sticks first, since they are the fewest pages, then lay-on patterns, then the tiles of each kind of set; pages
that no desk printer takes are left to `set_page`, on its roll. Every page is numbered, and says how to check it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

import attrs

from .drafting.full_size.correction import PrinterScale
from .drafting.full_size.desk_page import MARGIN
from .drafting.sheets.sheet import Sheet
from .drafting.writers.pdf import bind_pdf
from .drafting.writers.saving import write_whole
from .drawings.making.house import House
from .drawings.templates.pattern.pages import notch_patterns
from .drawings.templates.set.page import must_be_buildable
from .drawings.templates.set.tiles import set_tiles
from .drawings.templates.stick.pages import story_sticks
from .errors import PaperError
from .layout.layout import Layout
from .lengths import Length


def _tiles(layout: Layout, **how: object) -> tuple[Sheet, ...]:
    """Tiles of each kind of set once, if lines are struck across it."""
    letters = dict.fromkeys(one.alike[0] for one in layout.sets if one.bands)
    return tuple(sheet for letter in letters for sheet in set_tiles(layout, letter, **how))  # type: ignore[arg-type]


KINDS: Mapping[str, Callable[..., tuple[Sheet, ...]]] = {
    "sticks": story_sticks,
    "patterns": notch_patterns,
    "tiles": _tiles,
}
"""What there is, in the order of the pages."""


def template_sheets(
    layout: Layout,
    *,
    kinds: Sequence[str] = tuple(KINDS),
    paper: str | None = None,
    margin: Length = MARGIN,
    printer: PrinterScale | None = None,
    house: House | None = None,
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
    must_be_buildable(layout, "A template")
    made = [
        sheet
        for kind, draw in KINDS.items()
        if kind in kinds
        for sheet in draw(layout, paper=paper, margin=margin, printer=printer, house=house)
    ]
    return tuple(attrs.evolve(sheet, number=n, count=len(made)) for n, sheet in enumerate(made, 1))


def templates(
    layout: Layout,
    path: str | Path,
    *,
    kinds: Sequence[str] = tuple(KINDS),
    paper: str | None = None,
    margin: Length = MARGIN,
    printer: PrinterScale | None = None,
    house: House | None = None,
) -> Path:
    """Write what is laid on the wood as one PDF, whole or not at all, and give its path.

    Parameters
    ----------
    layout : Layout
    path : path
        Ends in .pdf.
    kinds : sequence of str
        Any of "sticks", "patterns" and "tiles"; all of them if not given.
    paper : str, optional
        The desk paper of the design's tape if not given; patterns that do not fit go on the next larger.
    margin : length
        What the printer leaves blank at each edge.
    printer : PrinterScale, optional
        What the printer does to lengths, to be taken back.
    house : House, optional
        Its linework goes on the pages.

    Raises
    ------
    CannotDraw
        If the layout has errors.
    PaperError
        If the path does not end in .pdf, there is no such kind or paper, something does not fit, or no part is cut.
    MissingLibrary
        If cairo is not installed.
    """
    target = Path(path)
    if target.suffix.lower() != ".pdf":
        raise PaperError(f"Templates are one PDF; {target.name!r} does not end in .pdf.")
    made = template_sheets(layout, kinds=kinds, paper=paper, margin=margin, printer=printer, house=house)
    if not made:
        raise PaperError("No part of this frame is cut, so there is nothing to lay on the wood.")
    return write_whole(target, bind_pdf(made, title=f"{layout.frame.name}, templates"))
