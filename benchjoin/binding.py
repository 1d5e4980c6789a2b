"""Binding: the drawings of a layout in order, numbered, as one PDF.

The order is data: `SECTIONS` names each kind of sheet and the function that draws it; a new kind is one line. Lists
that follow each other share pages. A layout with errors is bound without what is `FOR_THE_WOOD`, and its findings say
why. What tells of all the others is drawn last: the list of findings, which holds what was found about the sheets as
well, and the cover with the contents. Other sheets point to findings by their numbers in that list.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Unpack

import attrs

from .drafting.lettering import unwritten
from .drafting.sheets.sheet import Sheet
from .drafting.writers.pdf import bind_pdf
from .drafting.writers.saving import place, write_whole
from .drawings.lists.assembly_sheet import assembly_lists
from .drawings.lists.board_sheet import board_lists
from .drawings.lists.budget_sheet import budget_lists
from .drawings.lists.contents import entries
from .drawings.lists.cover import cover_pages, covers
from .drawings.lists.fastener_sheet import fastener_lists
from .drawings.lists.milling_sheet import milling_lists
from .drawings.lists.parts_sheet import apart_pages
from .drawings.lists.print_again import PrintAgain, print_again
from .drawings.lists.settings_sheet import settings_lists
from .drawings.lists.strength_sheet import strength_lists
from .drawings.lists.table_sheets import cut_lists, findings_lists, moved_lists
from .drawings.making.asked import Asked, Bound, ask
from .drawings.making.flowing import Listed, flowing_sheets
from .drawings.templates.set.full import full_size_pages
from .drawings.templates.set.reduced import set_pages
from .drawings.views.all_views import view_pages
from .drawings.views.joint.pages import joint_pages
from .drawings.views.part_drawing import part_pages
from .errors import AddressError, PaperError, typed
from .findings import Finding, in_order
from .layout.laid_out import of_a_layout
from .layout.layout import Layout
from .phrases import counted
from .shop.cut_list import cut_list
from .shop.overview import marks_list
from .shop.settings.sizing import TICK
from .sources import COMMON_PRACTICE
from .tables import Table
from .template_pages import all_templates

Drawn = Sheet | Listed | Finding
"""A sheet, a list that shares pages with its neighbours, or a finding in the place of a sheet."""
Section = Callable[[Layout, Asked], Iterable[Drawn]]
"""Draws a layout as it is asked."""


def _appendix(layout: Layout, asked: Asked) -> Iterable[Sheet | Finding]:
    """The sets at full size, or the templates on desk paper, or neither."""
    if asked.appendix is None:
        return ()
    return all_templates(layout, asked) if asked.appendix == "desk paper" else full_size_pages(layout, asked)


SECTIONS: Mapping[str, Section] = {
    "cover": cover_pages,
    "findings": findings_lists,
    "what moved": moved_lists,
    "cut list": cut_lists,
    "fasteners": fastener_lists,
    "strength": strength_lists,
    "board plan": board_lists,
    "milling": milling_lists,
    "sets": set_pages,
    "views": view_pages,
    "parts": apart_pages,
    "part drawings": part_pages,
    "joints": joint_pages,
    "settings": settings_lists,
    "error budget": budget_lists,
    "assembly": assembly_lists,
    "appendix": _appendix,
}
"""Sheets of the binder by kind, in its order. The contents go with the cover and are not asked for by name."""
FOR_THE_WOOD = frozenset({"milling", "sets", "settings", "appendix"})
"""Sheets that are not made of a layout with errors."""
ROUNDS = 8
"""So often the contents are set anew until their own numbers are right; two do, but where they just fill a page."""
LAST = ("cover", "findings")
"""Sheets that tell of all the others, and are drawn when these are."""


def sheets(layout: Layout, *, only: Collection[str] | None = None, **options: Unpack[Bound]) -> tuple[Sheet, ...]:
    """All sheets of a layout in the order of the binder, numbered n of N.

    Parameters
    ----------
    layout : Layout
    only : collection of str, optional
        Kinds of sheets, of `SECTIONS`; all if not given. The findings are those of the sheets that are made.
    **options
        paper (of all that is not full size), house, fastening, strength, assembly, shop, milling, plan, before,
        appendix and told, as `Asked` has them.

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
            raise AddressError(f"There are no sheets called {typed(name)}. There are {known}.", address=name)
    asked = ask(layout, Bound, options)
    if only is not None:
        whole, made = _made(layout, asked, only)
        return _numbered(_paged(whole, made.values()))
    whole, made = _made(layout, asked, SECTIONS.keys() - {"cover"})
    return _with_contents(layout, whole, [_laid_once(one) for own in made.values() for one in own])


def _laid_once(one: Drawn) -> Drawn:
    """A list that keeps its figures while the pages are set anew."""
    return attrs.evolve(one, figures=cache(one.figures)) if isinstance(one, Listed) else one


def _with_contents(layout: Layout, asked: Asked, rest: Sequence[Drawn]) -> tuple[Sheet, ...]:
    """All sheets with the cover before them, and its contents, whose numbers depend on what has no room on it."""
    cover = covers(layout, asked)
    alone = _paged(asked, [rest])
    listed = entries(alone, 2)
    bound: tuple[Sheet, ...] = ()
    for _ in range(ROUNDS):
        first, more = cover(listed)
        bound = _numbered(_paged(asked, [[first, *more], rest]) if more else [first, *alone])
        found = entries(bound[1:], 2)
        if found == listed:
            break
        listed = found
    return bound


def _made(layout: Layout, asked: Asked, wanted: Collection[str]) -> tuple[Asked, dict[str, list[Drawn]]]:
    """What is drawn of each kind, in the order of the binder, and what is asked with all that was found."""
    names = [n for n in SECTIONS if n in set(wanted) and not (n in FOR_THE_WOOD and layout.errors())]
    first = attrs.evolve(asked, known=asked.findings, numbered="findings" in names)
    drawn = _whatever_fits if first.numbered else _all
    made = {name: list(_heard(drawn(name, layout, first), asked)) for name in names if name not in LAST}
    found = [*_findings(made.values()), *_without_sign(layout)]
    more = (finding for finding in found if finding not in asked.findings)
    whole = attrs.evolve(first, known=(*asked.findings, *in_order(dict.fromkeys(more))))
    made |= {name: list(SECTIONS[name](layout, whole)) for name in names if name in LAST}
    return whole, {name: made[name] for name in names}


def _without_sign(layout: Layout) -> Iterator[Finding]:
    """A warning where names have letters that the drawing font lacks."""
    parts = layout.parts
    names = dict.fromkeys([layout.frame.name, *(own.name for own in parts), *(own.stock.name for own in parts)])
    lacking = {name: unwritten([name]) for name in names}
    odd = [name for name, letters in lacking.items() if letters]
    if odd:
        yield Finding(
            severity="warning",
            kind="no sign in the lettering",
            where=odd[0],
            sentence=f"The lettering has no sign for some letters of {counted(len(odd), 'name')}, first "
            f"{typed(odd[0])}: empty boxes are printed. Write names in Latin, Greek or Cyrillic letters.",
            source=COMMON_PRACTICE,
        )


def _heard(drawn: Iterable[Drawn], asked: Asked) -> Iterator[Drawn]:
    """What is drawn, each told when it is."""
    for one in drawn:
        if not isinstance(one, Finding):
            asked.told(one.title)
        yield one


def _all(name: str, layout: Layout, asked: Asked) -> Iterator[Drawn]:
    yield from SECTIONS[name](layout, asked)


def _whatever_fits(name: str, layout: Layout, asked: Asked) -> Iterator[Drawn]:
    """What is drawn of a kind; of what fits no paper a warning in its place, for the list of findings."""
    try:
        yield from SECTIONS[name](layout, asked)
    except PaperError as error:
        yield Finding(
            severity="warning",
            kind="left out",
            where=name,
            sentence=f"{name.capitalize()}, left out of the binder: {error}",
            source=COMMON_PRACTICE,
        )


def _findings(made: Iterable[Sequence[Drawn]]) -> Iterable[Finding]:
    """What was found about sheets, and in the place of sheets."""
    for one in (one for own in made for one in own):
        if isinstance(one, Sheet):
            yield from one.findings
        elif isinstance(one, Finding):
            yield one


def _paged(asked: Asked, made: Iterable[Sequence[Drawn]]) -> list[Sheet]:
    """All sheets in order; lists that follow each other on pages that they share."""
    drawn = (one for own in made for one in own if not isinstance(one, Finding))
    found: list[Sheet] = []
    lists: list[Listed] = []
    for one in drawn:
        if isinstance(one, Listed):
            lists.append(one)
            continue
        found += [*flowing_sheets(asked, lists), one]
        lists = []
    return [*found, *flowing_sheets(asked, lists)]


def _numbered(made: Sequence[Sheet]) -> tuple[Sheet, ...]:
    return tuple(attrs.evolve(sheet, number=n, count=len(made)) for n, sheet in enumerate(made, 1))


@of_a_layout
def changed_sheets(old: Layout, new: Layout, *, paper: str | None = None) -> PrintAgain:
    """Names of the sheets that must be printed again when a layout takes the place of another, with what changed.

    Parameters
    ----------
    old, new : Layout
        Of one design, before and after.
    paper : str, optional
        As for `sheets`.

    Returns
    -------
    again : PrintAgain
        A tuple of names: the sheets of the binder in its order, then sticks, patterns and tiles. Each name has `what`,
        a sentence; `gone` has the names of sheets that there are no more.

    Notes
    -----
    A sheet counts if its drawing, its page or its title block is not what it was; numbers of sheets do not count, nor
    do the contents, which follow them. Of a layout with errors nothing is for the wood.

    Examples
    --------
    ``for name in changed_sheets(before, after): print(name, name.what)``
    """
    before, after = (_on_paper(layout, paper) for layout in (old, new))
    return print_again(old, new, before, after)


def _on_paper(layout: Layout, paper: str | None) -> list[Sheet]:
    """All sheets of the binder, and all desk pages."""
    asked = ask(layout, Bound, {"paper": paper})
    return [*sheets(layout, paper=paper), *([] if layout.errors() else all_templates(layout, asked))]


@of_a_layout
def bind(layout: Layout, path: str | Path, *, only: Collection[str] | None = None, **options: Unpack[Bound]) -> Path:
    """Write the binder of a layout as one file, whole or not at all, and give its path.

    A PDF is for paper; an .html is one page for a tablet, with lists as tables, sheets that zoom and boxes to tick.
    What can be asked for is as for `sheets`.

    Raises
    ------
    PaperError
        If the path ends neither in .pdf nor in .html, or a page would not come out true.
    MissingLibrary
        If cairo is not installed, for a PDF.
    """
    target = place(path)
    ending = target.suffix.lower()
    if ending not in (".pdf", ".html"):
        told = f"A binder is one PDF, or one HTML page; {target.name!r} ends neither in .pdf nor in .html."
        raise PaperError(told)
    drawn = sheets(layout, only=only, **options)
    if ending == ".html":
        from .drafting.writers.tablet import tablet_page

        asked = ask(layout, Bound, options)
        page = tablet_page(layout.frame.name, drawn, tuple(_read_as_tables(layout, asked, only)))
        return write_whole(target, page.encode())
    return write_whole(target, bind_pdf(drawn, title=layout.frame.name))


def _read_as_tables(layout: Layout, asked: Asked, only: Collection[str] | None) -> Iterator[Table]:
    """Lists that are read as tables on a tablet, the work in its order."""
    wanted = SECTIONS if only is None else only
    if "cut list" in wanted:
        yield _ticked(attrs.evolve(cut_list(layout), title="Cut list"))
        yield _ticked(attrs.evolve(marks_list(layout), title="Marks"))
    if "fasteners" in wanted and asked.fastening is not None:
        yield attrs.evolve(asked.fastening.schedule(), title="Fasteners and drills")
    if "strength" in wanted and asked.strength is not None:
        yield attrs.evolve(asked.strength.table(), title="How near each member and joint is")
        yield attrs.evolve(asked.strength.stability(), title="Stability")
    if "assembly" in wanted and asked.assembly is not None:
        yield attrs.evolve(asked.assembly.table(), title="Putting it together")
        yield attrs.evolve(asked.assembly.square(), title="Is it square?")


def _ticked(table: Table) -> Table:
    """A list with a box to tick at the end of each row."""
    rows = tuple((*row, TICK) for row in table.rows)
    return attrs.evolve(table, columns=(*table.columns, "Done"), rows=rows, align=table.aligned() + "c")
