"""Binding: the drawings of a layout in order, numbered, as one PDF.

The order is data: `SECTIONS` holds the functions that draw each kind of sheet; a new kind is one line. A layout with
errors is bound without its set pages, and its findings say why.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path

import attrs

from .drafting.pdf import bind_pdf
from .drafting.saving import write_whole
from .drafting.sheet import Sheet
from .drawings.detail import joint_details
from .drawings.elevation import elevation
from .drawings.error_budget import error_budget_sheets
from .drawings.lists import list_sheets
from .drawings.milling_sheet import milling_sheets
from .drawings.page import first_that_fits, papers_from
from .drawings.part_drawing import part_drawings
from .drawings.parts_sheet import parts_sheet
from .drawings.plan import plan
from .drawings.set_page import set_page
from .drawings.settings_sheet import settings_sheets
from .errors import PaperError
from .layout.layout import Layout
from .shop.cut_list import cut_list
from .shop.findings_list import findings_list
from .trade.paper import PDF_LONGEST

Section = Callable[[Layout, str | None], Iterable[Sheet]]


def _findings(layout: Layout, paper: str | None) -> Iterable[Sheet]:
    table = findings_list(layout)
    return list_sheets(layout, table, name="findings", kind="Findings", paper=paper) if table.rows else ()


def _cut_list(layout: Layout, paper: str | None) -> Iterable[Sheet]:
    return list_sheets(layout, cut_list(layout), name="cut-list", kind="Cut list", paper=paper)


def _milling(layout: Layout, paper: str | None) -> Iterable[Sheet]:
    return () if layout.errors() else milling_sheets(layout, paper=paper)


def _parts_apart(layout: Layout, paper: str | None) -> Iterable[Sheet]:
    return [parts_sheet(layout, paper=paper)]


def _views(layout: Layout, paper: str | None) -> Iterable[Sheet]:
    elevations = [elevation(layout, seen, paper=paper) for seen in ("front", "back", "left", "right")]
    return [*elevations, plan(layout, paper=paper)]


def _parts(layout: Layout, paper: str | None) -> Iterable[Sheet]:
    return (*part_drawings(layout, paper=paper), *joint_details(layout, paper=paper))


def _reduced_sets(layout: Layout, paper: str | None) -> Iterable[Sheet]:
    papers = papers_from(layout.frame, paper)
    for letter in _letters(layout):
        yield first_that_fits(lambda size, letter=letter: set_page(layout, letter, paper=size), papers)  # type: ignore[misc]


def _full_size_sets(layout: Layout, paper: str | None) -> Iterable[Sheet]:
    pages = [set_page(layout, letter) for letter in _letters(layout)]
    return [page for page in pages if max(page.width, page.height) <= PDF_LONGEST]


def _settings(layout: Layout, paper: str | None) -> Iterable[Sheet]:
    return () if layout.errors() else settings_sheets(layout, paper=paper)


def _error_budget(layout: Layout, paper: str | None) -> Iterable[Sheet]:
    return error_budget_sheets(layout, paper=paper)


def _letters(layout: Layout) -> list[str]:
    """The first letter of each kind of set; none where the layout has errors."""
    return [] if layout.errors() else list(dict.fromkeys(one.alike[0] for one in layout.sets))


SECTIONS: tuple[Section, ...] = (
    _findings,
    _cut_list,
    _milling,
    _parts_apart,
    _views,
    _parts,
    _reduced_sets,
    _full_size_sets,
    _settings,
    _error_budget,
)


def sheets(layout: Layout, *, paper: str | None = None) -> tuple[Sheet, ...]:
    """All sheets of a layout in the order of the binder, numbered n of N.

    Parameters
    ----------
    layout : Layout
    paper : str, optional
        Paper of all that is not full size; the desk paper of the design's tape, or larger where needed, if not given.

    Raises
    ------
    PaperError
        If something does not fit the paper.
    """
    made = [sheet for section in SECTIONS for sheet in section(layout, paper)]
    return tuple(attrs.evolve(sheet, number=n, count=len(made)) for n, sheet in enumerate(made, 1))


def bind(layout: Layout, path: str | Path, *, paper: str | None = None) -> Path:
    """Write the binder of a layout as one PDF, whole or not at all, and give its path.

    Raises
    ------
    PaperError
        If the path does not end in .pdf, or a page would not come out true.
    MissingLibrary
        If cairo is not installed.
    """
    target = Path(path)
    if target.suffix.lower() != ".pdf":
        raise PaperError(f"A binder is one PDF; {target.name!r} does not end in .pdf.")
    return write_whole(target, bind_pdf(sheets(layout, paper=paper), title=layout.frame.name))
