"""The papers of a design: what can be written, by name, each made when its turn comes."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import Protocol

import attrs

from ..binding import bind, sheets
from ..drafting.sheets.sheet import Sheet
from ..drafting.writers.naming import file_name
from ..drafting.writers.saving import write_whole
from ..layout.layout import Layout
from ..shop.cut_list import cut_list
from ..template_pages import templates

PAPERS = ("binder", "cut-list", "sheets", "tablet", "templates")
USUAL = ("binder", "cut-list")


@attrs.frozen(kw_only=True)
class Wishes:
    """What the maker wants: paper, whether full-size templates as well, or only some of PAPERS."""

    paper: str | None = None
    templates: bool = False
    only: tuple[str, ...] = ()

    def wanted(self) -> tuple[str, ...]:
        """The papers to write."""
        chosen = self.only or USUAL
        return tuple(paper for paper in PAPERS if paper in chosen or (paper == "templates" and self.templates))


Told = Callable[[str], object]
"""Is told of each sheet that is drawn."""


class Write(Protocol):
    """Makes a file at a path, and tells of its sheets."""

    def __call__(self, path: Path, told: Told) -> object:
        """Make it."""


@attrs.frozen
class Job:
    """A file to write: its name, and what makes it at a path and tells of its sheets."""

    name: str
    write: Write


def papers(layout: Layout, wishes: Wishes) -> tuple[Job, ...]:
    """The files that are wished for, in order; none of them is made yet but the drawings that have to be counted."""
    stem = file_name(layout.frame.name)
    wanted = wishes.wanted()
    jobs: list[Job] = []
    if "binder" in wanted:
        jobs.append(Job(f"{stem}.pdf", lambda path, told: bind(layout, path, paper=wishes.paper, told=told)))
    if "cut-list" in wanted:
        table = cut_list(layout)
        jobs.append(Job(f"{stem}-cut-list.txt", lambda path, told: write_whole(path, f"{table.text()}\n".encode())))
        jobs.append(Job(f"{stem}-cut-list.csv", lambda path, told: write_whole(path, table.csv().encode("utf-8-sig"))))
    if "tablet" in wanted:
        jobs.append(Job(f"{stem}.html", lambda path, told: bind(layout, path, paper=wishes.paper, told=told)))
    if "sheets" in wanted:
        jobs += _sheets(layout, wishes.paper, stem)
    if "templates" in wanted and not layout.errors():  # a layout with errors is not for the wood
        jobs.append(
            Job(f"{stem}-templates.pdf", lambda path, told: templates(layout, path, paper=wishes.paper, told=told))
        )
    return tuple(jobs)


def _save(sheet: Sheet, path: Path, told: Told) -> None:
    told(sheet.title)
    sheet.save(path)


def _sheets(layout: Layout, paper: str | None, stem: str) -> Iterator[Job]:
    """Every sheet of the binder as SVG."""
    for sheet in sheets(layout, paper=paper):
        name = f"{stem}-{sheet.number or 1:02}-{file_name(sheet.name)}.svg"
        yield Job(name, partial(_save, sheet))
