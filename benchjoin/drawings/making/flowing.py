"""Lists that run on down the pages and share them, and what is read beside them.

A list is figures for a width, one below the other. Lists that follow each other in a binder are handed over together:
each goes on where the one before it ends, and a page says which lists it carries.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress

import attrs

from ...drafting.sheets.figure import Figure
from ...drafting.sheets.flow import flow
from ...drafting.sheets.sheet import Sheet
from ...errors import PaperError
from ...phrases import listed
from .asked import Asked
from .maker import make, ruled

GAP = 6.0
"""Between one table and the next. [mm]"""


@attrs.frozen(kw_only=True)
class Listed:
    """A list before it has its pages.

    Parameters
    ----------
    name, title : str
        For files and for people: "cut-list", "Cut list".
    figures : callable
        Its figures for a width, one below the other; no two lists of a run have figures of one name. [mm]
    """

    name: str
    title: str
    figures: Callable[[float], Sequence[Figure]]


def flowing_sheets(asked: Asked, lists: Sequence[Listed]) -> tuple[Sheet, ...]:
    """Upright sheets of lists one below the other, on the first paper that takes all of their rows.

    A sheet is named by the lists that it carries, "cut-list-and-milling"; several with the same ones are numbered.

    Raises
    ------
    PaperError
        If a row does not fit the paper.
    """
    for paper in asked.papers[:-1]:
        with suppress(PaperError):
            return _on(asked, lists, paper)
    return _on(asked, lists, asked.papers[-1])


def _on(asked: Asked, lists: Sequence[Listed], paper: str) -> tuple[Sheet, ...]:
    page = ruled(asked, paper)
    wide = page.inside[2] - page.inside[0]
    laid = [(one, figure) for one in lists for figure in one.figures(wide)]
    known = {figure.name: one for one, figure in laid}
    if not laid:
        return ()
    pages = list(flow([figure for _, figure in laid], page.inside, GAP))
    carried = [tuple(dict.fromkeys(known[figure.name] for figure in own)) for own in pages]
    sheets = []
    for number, (own, figures) in enumerate(zip(carried, pages, strict=True)):
        title = _titles([one.title for one in own])
        same = [n for n, other in enumerate(carried) if other == own]
        count = f"{same.index(number) + 1}" if len(same) > 1 else ""
        sheet = make(
            *figures,
            house=asked.house,
            name="-".join(filter(None, ("-and-".join(one.name for one in own), count))),
            title=f"{title} {count}".rstrip(),
            size=page.size,
            words=attrs.evolve(page.words, piece=title),
            chapters=tuple(one.title for one in own),
        )
        sheets.append(sheet)
    return tuple(sheets)


def _titles(titles: Sequence[str]) -> str:
    """'Findings, cut list and milling'."""
    return listed([titles[0], *(title[:1].lower() + title[1:] for title in titles[1:])])
