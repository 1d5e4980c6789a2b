"""Binding: the drawings of a layout in order, numbered, as one PDF.

The order is data: `SECTIONS` names each kind of sheet and the function that draws it; a new kind is one line. A layout
with errors is bound without what is `FOR_THE_WOOD`, and its findings say why. What tells of all the others is drawn
last: the cover and the list of findings, which hold what was found about the sheets, and the contents.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from pathlib import Path
from typing import Unpack

import attrs

from .drafting.sheets.sheet import Sheet
from .drafting.writers.pdf import bind_pdf
from .drafting.writers.saving import write_whole
from .drawings.lists.budget_sheet import budget_pages
from .drawings.lists.contents import contents_pages
from .drawings.lists.cover import cover_pages
from .drawings.lists.milling_sheet import milling_pages
from .drawings.lists.parts_sheet import apart_pages
from .drawings.lists.print_again import PrintAgain, print_again
from .drawings.lists.settings_sheet import settings_pages
from .drawings.lists.table_sheets import cut_list_pages, findings_pages, moved_pages
from .drawings.making.asked import Asked, Bound, ask
from .drawings.templates.set.full import full_size_pages
from .drawings.templates.set.reduced import set_pages
from .drawings.views.all_views import view_pages
from .drawings.views.joint_detail import joint_pages
from .drawings.views.part_drawing import part_pages
from .errors import AddressError, PaperError, typed
from .findings import Finding, in_order
from .layout.layout import Layout
from .template_pages import all_templates

Section = Callable[[Layout, Asked], Iterable[Sheet | Finding]]
"""Draws a layout as it is asked; a finding stands for a sheet that could not be made."""


def _appendix(layout: Layout, asked: Asked) -> Iterable[Sheet | Finding]:
    """The sets at full size, or the templates on desk paper, or neither."""
    if asked.appendix is None:
        return ()
    return all_templates(layout, asked) if asked.appendix == "desk paper" else full_size_pages(layout, asked)


SECTIONS: Mapping[str, Section] = {
    "cover": cover_pages,
    "findings": findings_pages,
    "what moved": moved_pages,
    "cut list": cut_list_pages,
    "milling": milling_pages,
    "sets": set_pages,
    "views": view_pages,
    "parts": apart_pages,
    "part drawings": part_pages,
    "joints": joint_pages,
    "settings": settings_pages,
    "error budget": budget_pages,
    "appendix": _appendix,
}
"""Sheets of the binder by kind, in its order. The contents come after the cover and are not asked for by name."""
FOR_THE_WOOD = frozenset({"milling", "sets", "settings", "appendix"})
"""Sheets that are not made of a layout with errors."""
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
        paper (of all that is not full size), house, shop, milling, before and appendix, as `Asked` has them.

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
    made = _made(layout, ask(layout, Bound, options), SECTIONS if only is None else only)
    front = made.pop("cover", [])
    rest = [sheet for own in made.values() for sheet in own]
    listed = _contents(ask(layout, Bound, options), front, rest) if only is None else []
    return _numbered([*front, *listed, *rest])


def _made(layout: Layout, asked: Asked, wanted: Collection[str]) -> dict[str, list[Sheet]]:
    """The sheets of each kind, in the order of the binder."""
    names = [n for n in SECTIONS if n in set(wanted) and not (n in FOR_THE_WOOD and layout.errors())]
    made = {name: list(SECTIONS[name](layout, asked)) for name in names if name not in LAST}
    found = in_order(dict.fromkeys([*asked.findings, *_findings(made.values())]))
    whole = attrs.evolve(asked, known=found)
    made |= {name: list(SECTIONS[name](layout, whole)) for name in names if name in LAST}
    return {name: [sheet for sheet in made[name] if isinstance(sheet, Sheet)] for name in names}


def _findings(made: Iterable[Sequence[Sheet | Finding]]) -> Iterable[Finding]:
    """What was found about sheets, and in the place of sheets."""
    for one in (one for own in made for one in own):
        yield from one.findings if isinstance(one, Sheet) else (one,)


def _contents(asked: Asked, front: list[Sheet], rest: list[Sheet]) -> list[Sheet]:
    """Contents of what follows them, whose numbers depend on how many sheets the contents take."""
    taken = 1
    while True:
        found = contents_pages(asked, rest, len(front) + taken + 1)
        if len(found) == taken:
            return list(found)
        taken = len(found)


def _numbered(made: list[Sheet]) -> tuple[Sheet, ...]:
    return tuple(attrs.evolve(sheet, number=n, count=len(made)) for n, sheet in enumerate(made, 1))


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
    return [*sheets(layout, paper=paper, only=SECTIONS), *([] if layout.errors() else all_templates(layout, asked))]


def bind(layout: Layout, path: str | Path, *, only: Collection[str] | None = None, **options: Unpack[Bound]) -> Path:
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
    return write_whole(target, bind_pdf(sheets(layout, only=only, **options), title=layout.frame.name))
