"""What moved: every mark, length, notch and depth that is not where it was in an earlier layout.

A re-measured rail or a changed description gives a new layout; this says, part by part, what changed by more than a
hair, so that the maker knows which lines to strike again. Changes that are the same in every piece are told once.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import attrs

from ..frame.identity import of_piece
from ..lengths import steady
from ..readings import Tape
from ..tables import ShownAsTable, Table
from .laid_out import of_a_layout
from .layout import Layout
from .parts import Part


@attrs.frozen(slots=False)
class Change:
    """One size that changed: of which part, what it is, before and after; None where it was not there. [mm]"""

    part: str
    what: str
    old: float | None
    new: float | None

    @property
    def by(self) -> float | None:
        """The difference. [mm]"""
        return None if self.old is None or self.new is None else self.new - self.old


@attrs.frozen(repr=False, slots=False)
class Moved(ShownAsTable):
    """The changes from one layout to another, in the order of the parts."""

    changes: tuple[Change, ...]
    tape: Tape
    title: str

    def table(self) -> Table:
        """Part, what, old, new and difference, as the tape reads them."""
        rows = tuple(
            (change.part, change.what, self._say(change.old), self._say(change.new), self._difference(change))
            for change in self.changes
        )
        unit = self.tape.unit
        columns = ("Part", "What", f"Old ({unit})", f"New ({unit})", f"By ({unit})")
        notes = () if rows else ("Nothing moved by more than a hair.",)
        return Table(self.title, columns, rows, notes, "llrrr")

    def __str__(self) -> str:
        return self.table().text()

    def __repr__(self) -> str:
        return self.table().text()

    def _say(self, length: float | None) -> str:
        return "–" if length is None else self.tape.read(length)

    def _difference(self, change: Change) -> str:
        if change.by is None:
            return "new" if change.old is None else "gone"
        return f"{'+' if change.by >= 0 else '-'}{self.tape.decimals(abs(change.by))}"


@of_a_layout
def what_moved(old: Layout, new: Layout, *, hair: float | None = None) -> Moved:
    """Changes from one layout to another.

    Parameters
    ----------
    old, new : Layout
        Of one design, before and after.
    hair : float, optional
        What is no more than this does not count; an eighth of the tape's division if not given. [mm]
    """
    least = new.frame.tape.hair if hair is None else hair
    before, after = _sizes(old), _sizes(new)
    found: dict[tuple[str, str, float | None, float | None], list[int]] = {}
    for key in dict.fromkeys((*before, *after)):
        piece, part, what = key
        a, b = before.get(key), after.get(key)
        if a is None or b is None or abs(b - a) > least:
            found.setdefault((part, what, _steady(a), _steady(b)), []).append(piece)
    pieces = set(range(1, max(old.frame.quantity, new.frame.quantity) + 1))
    changes = [
        (part, Change(named, what, a, b))
        for (part, what, a, b), own in found.items()
        for named in ([part] if set(own) == pieces else [of_piece(piece, part) for piece in own])
    ]
    order = {name: n for n, name in enumerate(dict.fromkeys(p.identity for p in (*new.parts, *old.parts)))}
    changes.sort(key=lambda pair: order[pair[0]])
    return Moved(tuple(change for _, change in changes), new.frame.tape, f"What moved: {new.frame.name}")


def _steady(value: float | None) -> float | None:
    return None if value is None else steady(value)[0]


def _sizes(layout: Layout) -> Mapping[tuple[int, str, str], float]:
    """Every size that a maker marks or cuts, by piece, part and what it is. [mm]"""
    return {(part.piece, part.identity, what): size for part in layout.parts for what, size in _of_part(part)}


def _of_part(part: Part) -> Iterator[tuple[str, float]]:
    yield "length", part.length
    yield "width", part.width
    yield "thickness", part.thickness
    role = part.slot.role
    for cut in map(part.on_face, part.cuts):
        where = f"{cut.kind} for {cut.mate}"
        yield f"{where}, {role.low}", cut.start
        yield f"{where}, {role.high}", cut.end
        yield f"{where}, {role.between}", cut.length
        yield f"{where}, depth", cut.depth
    for touch in map(part.on_face, part.touches):
        where = f"{touch.kind} of {touch.mate}"
        yield f"{where}, {role.low}", touch.start
        yield f"{where}, {role.high}", touch.end
