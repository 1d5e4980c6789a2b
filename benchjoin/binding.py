"""Binding: the drawings of a layout in order, numbered, as one PDF.

The order is data: `SECTIONS` names each kind of sheet and the function that draws it; a new kind is one line. A layout
with errors is bound without what is for the wood (set pages, milling, settings), and its findings say why.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from pathlib import Path
from typing import Literal

import attrs

from .drafting.sheets.sheet import Sheet
from .drafting.writers.pdf import bind_pdf
from .drafting.writers.saving import write_whole
from .drawings.lists.budget_sheet import error_budget_sheets
from .drawings.lists.contents import contents
from .drawings.lists.cover import cover
from .drawings.lists.milling_sheet import milling_sheets
from .drawings.lists.parts_sheet import parts_sheet
from .drawings.lists.settings_sheet import settings_sheets
from .drawings.lists.table_sheets import list_sheets
from .drawings.making.house import House, first_that_fits, papers_from
from .drawings.templates.set.page import set_page
from .drawings.views.elevation import elevation
from .drawings.views.joint_detail import joint_details
from .drawings.views.part_drawing import part_drawings
from .drawings.views.plan import plan
from .drawings.views.section import section
from .errors import AddressError, PaperError, told
from .layout.layout import Layout
from .layout.moved import what_moved
from .shop.cut_list import cut_list
from .shop.found import all_findings, findings_table
from .shop.settings.shop import Shop
from .template_pages import template_sheets
from .trade.allowances import Milling
from .trade.paper import PDF_LONGEST

Appendix = Literal["full size", "desk paper"]


@attrs.frozen(kw_only=True)
class Ask:
    """What a maker asks of the binder: paper, house, machines, milling habits, an earlier layout, the appendix."""

    paper: str | None = None
    house: House | None = None
    shop: Shop | None = None
    milling: Milling | None = None
    before: Layout | None = None
    appendix: Appendix | None = "full size"


Section = Callable[[Layout, Ask], Iterable[Sheet]]


def _cover(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    return [
        first_that_fits(lambda size: cover(layout, paper=size, house=ask.house), papers_from(layout.frame, ask.paper))
    ]


def _findings(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    table = findings_table(layout, all_findings(layout, shop=ask.shop, milling=ask.milling))
    if not table.rows:
        return ()
    return list_sheets(layout, table, name="findings", kind="Findings", paper=ask.paper, house=ask.house)


def _moved(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    if ask.before is None:
        return ()
    table = what_moved(ask.before, layout).table()
    return list_sheets(layout, table, name="what-moved", kind="What moved", paper=ask.paper, house=ask.house)


def _cut_list(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    table = cut_list(layout)
    return list_sheets(layout, table, name="cut-list", kind="Cut list", paper=ask.paper, house=ask.house)


def _milling(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    if layout.errors():
        return ()
    return milling_sheets(layout, practice=ask.milling, paper=ask.paper, house=ask.house)


def _parts_apart(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    return [parts_sheet(layout, paper=ask.paper, house=ask.house)]


def _views(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    for seen in ("front", "back", "left", "right"):
        yield elevation(layout, seen, paper=ask.paper, house=ask.house)
    yield plan(layout, paper=ask.paper, house=ask.house)
    for level in _unlike_levels(layout):
        yield section(layout, level, paper=ask.paper, house=ask.house)


def _unlike_levels(layout: Layout) -> list[str]:
    """The lowest level of each kind: levels are alike whose rails are on the same sides, let in alike."""
    kinds: dict[object, str] = {}
    here = {part.identity for part in layout.piece(1)}
    for level in layout.frame.levels():
        own = tuple(
            (slot.side, slot.joint, slot.of.face, slot.thickness, slot.of.overhang)
            for slot in layout.frame.rails_of[level.name]
            if slot.name in here
        )
        if own:
            kinds.setdefault(own, level.name)
    return list(kinds.values())


def _parts(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    return part_drawings(layout, paper=ask.paper, house=ask.house)


def _joints(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    return joint_details(layout, paper=ask.paper, house=ask.house)


def _sets(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    papers = papers_from(layout.frame, ask.paper)
    for letter in _letters(layout):
        yield first_that_fits(
            lambda size, letter=letter: set_page(layout, letter, paper=size, house=ask.house),  # type: ignore[misc]
            papers,
        )


def _settings(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    return () if layout.errors() else settings_sheets(layout, ask.shop, paper=ask.paper, house=ask.house)


def _error_budget(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    return error_budget_sheets(layout, paper=ask.paper, house=ask.house)


def _appendix(layout: Layout, ask: Ask) -> Iterable[Sheet]:
    if ask.appendix is None or layout.errors():
        return ()
    if ask.appendix == "desk paper":
        return template_sheets(layout, paper=ask.paper, house=ask.house)
    pages = [set_page(layout, letter, house=ask.house) for letter in _letters(layout)]
    return [page for page in pages if max(page.width, page.height) <= PDF_LONGEST]


def _letters(layout: Layout) -> list[str]:
    """The first letter of each kind of set; none where the layout has errors."""
    return [] if layout.errors() else list(dict.fromkeys(one.alike[0] for one in layout.sets))


SECTIONS: Mapping[str, Section] = {
    "cover": _cover,
    "findings": _findings,
    "what moved": _moved,
    "cut list": _cut_list,
    "milling": _milling,
    "sets": _sets,
    "views": _views,
    "parts": _parts_apart,
    "part drawings": _parts,
    "joints": _joints,
    "settings": _settings,
    "error budget": _error_budget,
    "appendix": _appendix,
}
"""Sheets of the binder by kind, in its order. The contents come after the cover and are not asked for by name."""


def sheets(
    layout: Layout,
    *,
    paper: str | None = None,
    only: Collection[str] | None = None,
    house: House | None = None,
    shop: Shop | None = None,
    milling: Milling | None = None,
    before: Layout | None = None,
    appendix: Appendix | None = "full size",
) -> tuple[Sheet, ...]:
    """All sheets of a layout in the order of the binder, numbered n of N.

    Parameters
    ----------
    layout : Layout
    paper : str, optional
        Paper of all that is not full size; the desk paper of the design's tape, or larger where needed, if not given.
    only : collection of str, optional
        Kinds of sheets, of `SECTIONS`; all if not given.
    house : House, optional
        Shop, names, date, revision and the like for the title blocks.
    shop, milling : optional
        The maker's machines and milling habits, for the settings and the milling plan.
    before : Layout, optional
        An earlier layout of the design; what moved since then is listed.
    appendix : "full size", "desk paper" or None
        The gang pages at full size, or the templates on desk paper, or neither (they can be a file of their own).

    Raises
    ------
    AddressError
        If a kind of sheet that is asked for does not exist.
    PaperError
        If something does not fit the paper.
    """
    for name in only or ():
        if name not in SECTIONS:
            known = ", ".join(SECTIONS)
            raise AddressError(f"There are no sheets called {told(name)}. There are {known}.", address=name)
    ask = Ask(paper=paper, house=house, shop=shop, milling=milling, before=before, appendix=appendix)
    made = {name: list(draw(layout, ask)) for name, draw in SECTIONS.items() if only is None or name in set(only)}
    front = made.pop("cover", [])
    rest = [sheet for own in made.values() for sheet in own]
    listed = _contents(layout, front, rest, ask) if only is None else []
    return _numbered([*front, *listed, *rest])


def _contents(layout: Layout, front: list[Sheet], rest: list[Sheet], ask: Ask) -> list[Sheet]:
    """Contents of what follows them, whose numbers depend on how many sheets the contents take."""
    taken = 1
    while True:
        found = contents(layout, rest, len(front) + taken + 1, paper=ask.paper, house=ask.house)
        if len(found) == taken:
            return list(found)
        taken = len(found)


def _numbered(made: list[Sheet]) -> tuple[Sheet, ...]:
    return tuple(attrs.evolve(sheet, number=n, count=len(made)) for n, sheet in enumerate(made, 1))


def changed_sheets(old: Layout, new: Layout, *, paper: str | None = None) -> tuple[str, ...]:
    """Names of the sheets that must be printed again when a layout takes the place of another, in the binder's order.

    Parameters
    ----------
    old, new : Layout
        Of one design, before and after.
    paper : str, optional
        As for `sheets`.

    Notes
    -----
    A sheet counts if its drawing, its page or its title block is not what it was; numbers of sheets do not count, nor
    do the contents, which follow them.

    Examples
    --------
    ``for name in changed_sheets(before, after): print(name)``
    """
    before, after = (sheets(layout, paper=paper, only=SECTIONS) for layout in (old, new))
    known = {sheet.name: attrs.evolve(sheet, number=None, count=None) for sheet in before}
    again = (sheet.name for sheet in after if known.get(sheet.name) != attrs.evolve(sheet, number=None, count=None))
    return tuple(again)


def bind(
    layout: Layout,
    path: str | Path,
    *,
    paper: str | None = None,
    only: Collection[str] | None = None,
    house: House | None = None,
    shop: Shop | None = None,
    milling: Milling | None = None,
    before: Layout | None = None,
    appendix: Appendix | None = "full size",
) -> Path:
    """Write the binder of a layout as one PDF, whole or not at all, and give its path.

    What can be asked for is as for `sheets`.

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
    made = sheets(
        layout, paper=paper, only=only, house=house, shop=shop, milling=milling, before=before, appendix=appendix
    )
    return write_whole(target, bind_pdf(made, title=layout.frame.name))
