"""Print again: the sheets that are not what they were, each with what changed on it, in words.

A sheet is compared with the one of its name, without its number. What moved of the parts that it shows is told mark by
mark; where none of these moved, whether its scale or its paper is another, or only its words are.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

import attrs

from ...drafting.sheets.sheet import Sheet
from ...frame.identity import in_short, piece_of
from ...layout.layout import Layout
from ...layout.moved import Change, what_moved
from ...layout.parts import Part
from ...shop.marks import marks
from ...tables import Table
from .contents import CONTENTS

MOST = 3
"""So many changes are told of a sheet; the rest are counted."""
NEW, GONE = "New.", "Gone: throw it away."


class Changed(str):
    """The name of a sheet that must be printed again; `what` says in a sentence what changed on it."""

    what: str

    def __new__(cls, name: str, what: str) -> Changed:
        """A name, and what changed."""
        made = super().__new__(cls, name)
        made.what = what
        return made

    def __reduce__(self) -> tuple[type[Changed], tuple[str, str]]:
        return Changed, (str(self), self.what)


class PrintAgain(tuple[Changed, ...]):
    """Names of the sheets that must be printed again, in order; `gone` are those that there are no more.

    It is a tuple of strings, and shows itself as a table of what changed on each.
    """

    gone: tuple[Changed, ...]

    def __new__(cls, again: Iterable[Changed] = (), gone: Iterable[Changed] = ()) -> PrintAgain:
        """Sheets to print, and sheets to throw away."""
        made = super().__new__(cls, tuple(again))
        made.gone = tuple(gone)
        return made

    def __reduce__(self) -> tuple[type[PrintAgain], tuple[tuple[Changed, ...], tuple[Changed, ...]]]:
        return PrintAgain, (tuple(self), self.gone)

    def table(self) -> Table:
        """Sheet, and what changed on it."""
        rows = tuple((str(one), one.what) for one in (*self, *self.gone))
        return Table("Print again", ("Sheet", "What changed"), rows, () if rows else ("Nothing changed.",), "ll")

    def __repr__(self) -> str:
        return self.table().text()

    def _repr_html_(self) -> str:
        return self.table().html()


def print_again(old: Layout, new: Layout, before: Sequence[Sheet], after: Sequence[Sheet]) -> PrintAgain:
    """What is not what it was among sheets of two layouts of one design."""
    known, names = {sheet.name: _plain(sheet) for sheet in before}, {sheet.name for sheet in after}
    left = [sheet for sheet in known.values() if sheet.name not in names]
    for sheet in after:  # lists may share pages otherwise now
        same = max(left, key=lambda own: len(_shared(own, sheet)), default=None)
        if sheet.name not in known and same and _shared(same, sheet):
            known[sheet.name] = same
            known.pop(same.name, None)
    moved = what_moved(old, new).changes
    again = [
        Changed(sheet.name, _what(old, new, moved, known.get(sheet.name), sheet))
        for sheet in after
        if known.get(sheet.name) != _plain(sheet)
    ]
    return PrintAgain(again, [Changed(name, GONE) for name in known if name not in names])


def _shared(one: Sheet, other: Sheet) -> set[str]:
    """What both tell of."""
    return set(one.chapters) & set(other.chapters)


def _plain(sheet: Sheet) -> Sheet:
    """A sheet without its number and without the contents."""
    contents = {id(stroke) for figure in sheet.figures if figure.name == CONTENTS for stroke in figure.drawing}
    drawing = [stroke for stroke in sheet.drawing if id(stroke) not in contents]
    return attrs.evolve(sheet, number=None, count=None, drawing=drawing)


def _what(old: Layout, new: Layout, moved: Sequence[Change], before: Sheet | None, after: Sheet) -> str:
    """What changed on a sheet, in a sentence."""
    if before is None:
        return NEW
    told = list(_of_the_page(before, after))
    if _plain(before).drawing != _plain(after).drawing:
        shown = {identity for sheet in (before, after) for figure in sheet.figures for identity in figure.shows}
        own = [change for change in moved if not shown or piece_of(change.part)[1] in shown]
        lines = _told(old, new, own)
        told = [*lines[:MOST], *([f"{len(lines) - MOST} more"] if len(lines) > MOST else []), *told]
    said = "; ".join(told) or "its words or its places"
    return f"{said[0].upper()}{said[1:]}."


def _of_the_page(before: Sheet, after: Sheet) -> Iterator[str]:
    """What is another about the page itself."""
    if before.title != after.title:
        yield f"called {after.title!r}, was {before.title!r}"
    if before.scale != after.scale:
        yield f"drawn at {after.scale}, was at {before.scale}"
    if (before.width, before.height) != (after.width, after.height):
        yield "on other paper"


def _told(old: Layout, new: Layout, changes: Sequence[Change]) -> list[str]:
    """'A3, A4: bench bottom 32 → 32 1/16', by the marks of all parts that have moved so."""
    own: dict[str, list[str]] = {}
    for change in changes:
        piece, identity = piece_of(change.part)
        parts = [p for p in (*new.parts, *old.parts) if p.identity == identity and piece in (None, p.piece)]
        own.setdefault(_change(new, change, parts[0]), []).extend(part.mark for part in parts)
    return [f"{marks(found)}: {what}" for what, found in own.items()]


def _change(new: Layout, change: Change, part: Part) -> str:
    """'bench bottom 32 → 32 1/16', or 'width 3 1/2 → 3 7/16'."""
    read = new.frame.tape.read
    was, now = ("–" if length is None else read(length) for length in (change.old, change.new))
    cut, comma, what = change.what.partition(", ")
    mate = in_short(cut.partition(" for ")[2], along_length=part.slot.long)
    return f"{f'{mate} {what}' if comma else change.what} {was} → {now}"
