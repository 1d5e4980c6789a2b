"""The milling plan: from the wood as it was bought to blanks at their section, and the list of what they measured.

It says which blanks to cut and how long, which batches go through the planer together, what size to expect and what
size is drawn, and gives a line for each part to write its size on. The same list as CSV, filled in, goes to
`measurements.read_measurements`, and every notch follows the wood.

    plan = milling_plan(layout, starts={"larch 2x4, milled": Stock.dressed("2x4")})
    Path("sizes.csv").write_text(plan.csv(), encoding="utf-8")
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator, Mapping, Sequence

import attrs

from ...cells import row
from ...display import page
from ...errors import MillingError, typed
from ...findings import Finding, in_order
from ...frame.stock import Stock
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ...lengths import INCH, steady
from ...readings import Tape
from ...tables import Table
from ...trade.allowances import Milling, usual_milling
from ...trade.order_of_work import ORDER
from ..done import done_notes
from ..marks import marks
from .batches import Batch, Item, Line, RoughBlank, known_sizes, make_batches
from .checks import find
from .steps import CAUTIONS, steps

__all__ = ["CAUTIONS", "CSV_COLUMNS", "Milling", "MillingPlan", "milling_plan"]

CSV_COLUMNS = (
    "Part",
    "Mark",
    "Batch",
    "Drawn thickness",
    "Drawn width",
    "Measured thickness",
    "Measured width",
)
"""Headings of the list of sizes; those of sizes carry the unit in brackets."""


FINE = {"in": Tape("1/32 in"), "mm": Tape("0.5 mm")}
"""How allowances read: they are small."""


@attrs.frozen(kw_only=True, repr=False)
class MillingPlan:
    """Batches in the order in which they go through the planer, and what the maker must know about them.

    Parts that are sized, marked or cut are in no batch; the notes of its tables name them.
    """

    layout: Layout
    practice: Milling
    batches: tuple[Batch, ...]
    findings: tuple[Finding, ...]

    @property
    def tape(self) -> Tape:
        """How its sizes read."""
        return self.layout.frame.tape

    def table(self) -> Table:
        """Blanks by batch and width, with the size to start from, the size to expect and the size drawn."""
        unit = self.tape.unit
        rows = tuple(row for batch in self.batches for row in _batch_rows(batch, self.practice, self.tape))
        columns = (
            "Batch",
            "Wood to start with",
            f"Start ({unit})",
            f"Clean at ({unit})",
            f"Finish ({unit})",
            "Blanks",
            f"Rough ({unit})",
            "For",
        )
        p, say = self.practice, FINE[self.tape.unit].say
        notes = (
            f"Sections are thickness × width. Clean at: what is left when a sawn side has lost {say(p.rough_side)} and "
            f"a dressed one {say(p.dressed_side)}. Rough lengths have {say(p.end)} at each end and {say(p.parting)} "
            f"between parts, and none is under {say(p.least)}. Common practice, no source: change it to your wood, and "
            "the least length to what your manuals say.",
            *done_notes(self.layout.frame, self.layout.parts),
        )
        return Table(f"Milling plan: {self.layout.frame.name}", columns, rows, notes, "clllrcrl")

    def steps(self) -> Table:
        """The order of work, batch by batch, as far as milling goes; the notes say what comes after."""
        rows = [
            (str(batch.number), str(step.number), told)
            for batch in self.batches
            for step, told in steps(batch, self.tape)
        ]
        after = [step for step in ORDER if step.number > max((int(number) for _, number, _ in rows), default=0)]
        notes = tuple(f"{step}: {step.words}." for step in after)
        return Table("Order of work", ("Batch", "Step", "What to do"), tuple(rows), notes, "ccl")

    def measuring(self) -> Table:
        """A line for each part to make and each spare: the drawn size, and what was measured, or room to write it."""
        unit, read = self.tape.unit, self.tape.read
        fine = (lambda size: f"{size:.1f}") if unit == "mm" else FINE["in"].read
        rows = []
        for batch, item, drawn in self._items():
            known = known_sizes(self.layout, item.part) if item.part else {}
            found = (fine(known[field]) if field in known else "" for field in ("thickness", "width"))
            rows.append((item.mark, item.name, str(batch.number), *map(read, drawn), *found))
        columns = ("Mark", "Part", "Batch", *(f"{name} ({unit})" for name in CSV_COLUMNS[3:]))
        done = done_notes(self.layout.frame, self.layout.parts)
        return Table("Sizes on the wood", columns, tuple(rows), done, "llcrrrr")

    def csv(self) -> str:
        """The list of sizes, to be filled in: decimal numbers in the unit that the headings name (RFC 4180).

        Cells of what was measured already are filled; a blank cell keeps the drawn size. A part that is sized, marked
        or cut has no line: its size is kept.
        """
        unit = self.tape.unit
        out = io.StringIO(newline="")
        rows = csv.writer(out)
        rows.writerow([*CSV_COLUMNS[:3], *(f"{name} ({unit})" for name in CSV_COLUMNS[3:])])
        for batch, item, drawn in self._items():
            if item.part is None:
                continue
            known = known_sizes(self.layout, item.part)
            found = (self._number(known[field]) if field in known else "" for field in ("thickness", "width"))
            rows.writerow(row([item.name, item.mark, batch.number, *map(self._number, drawn), *found]))
        return out.getvalue()

    def _number(self, size: float) -> str:
        return f"{size / (INCH if self.tape.unit == 'in' else 1.0):.10g}"

    def _items(self) -> Iterator[tuple[Batch, Item, tuple[float, float]]]:
        """Everything to be measured, with its batch and its drawn thickness and width. [mm]"""
        for batch in self.batches:
            for line in batch.lines:
                for item in line.items:
                    yield batch, item, (batch.thickness, line.width)

    def _repr_html_(self) -> str:
        return page("milling_page", self)

    def __repr__(self) -> str:
        blanks = sum(len(line.blanks) for batch in self.batches for line in batch.lines)
        return f"<MillingPlan of {self.layout.frame.name}: {len(self.batches)} batches, {blanks} blanks>"


@of_a_layout
def milling_plan(
    layout: Layout, *, practice: Milling | None = None, starts: Mapping[str, Stock] | None = None
) -> MillingPlan:
    """Plan the milling of a layout.

    Parameters
    ----------
    layout : Layout
    practice : Milling, optional
        The maker's habits and machines; INCH_MILLING or METRIC_MILLING by the design's tape, if not given.
    starts : mapping of str to Stock, optional
        What a stock is milled from, by its name, where the stock itself does not say.

    Raises
    ------
    MillingError
        If starts names a stock that the layout has not, or holds anything but stock.
    """
    habits = practice or usual_milling(layout.frame.tape)
    given = dict(starts or {})
    _refuse(given, dict.fromkeys(slot.stock.name for slot in layout.frame.slots()))
    batches = make_batches(layout, habits, given)
    tape, quantity = layout.frame.tape, layout.frame.quantity
    found = in_order(finding for batch in batches for finding in find(batch, habits, tape, quantity))
    return MillingPlan(layout=layout, practice=habits, batches=batches, findings=found)


def _refuse(starts: Mapping[str, object], known: Iterable[str]) -> None:
    for name, start in starts.items():
        if name not in known:
            raise MillingError(f"starts names {typed(name)}, and the stock is {', '.join(known)}.")
        if not isinstance(start, Stock):
            raise MillingError(f'starts[{name!r}] is {typed(start)}. Write for example Stock.dressed("2x4").')


def _batch_rows(batch: Batch, practice: Milling, tape: Tape) -> Iterator[tuple[str, ...]]:
    """Rows of a batch; what it is taken from stands in its first row only."""
    read = tape.read
    source, start = batch.source.name, _section(batch.source.thickness, batch.source.width, tape)
    if not batch.known:
        source = f"rough stock for {source}"
        start = f"{_section(*batch.rough_section(practice), tape)} or more"
    shared = (source, start, _clean(batch, batch.lines[0], tape))
    for line in batch.lines:
        groups: dict[tuple[float, ...], list[RoughBlank]] = {}
        for blank in line.blanks:
            spare = any(item.part is None for item in blank.items)
            groups.setdefault((*steady(blank.length), spare), []).append(blank)
        for (length, *_), blanks in groups.items():
            finish = f"{read(batch.thickness)} × {read(line.width)}"
            yield (str(batch.number), *shared, finish, str(len(blanks)), read(length), _for(blanks))
            shared = ("", "", "")


def _section(thickness: float, width: float | None, tape: Tape) -> str:
    return f"{tape.read(thickness)} × {tape.read(width)}" if width is not None else f"{tape.read(thickness)} thick"


def _clean(batch: Batch, line: Line, tape: Tape) -> str:
    return "" if batch.clean is None else _section(batch.clean, line.clean, tape)


def _for(blanks: Sequence[RoughBlank]) -> str:
    """Marks and spares of some blanks, and how many share one."""
    items = [item for blank in blanks for item in blank.items]
    named = [item.mark for item in items if item.part]
    words = [marks(named)] if named else []
    for name in ("spare leg", "test piece"):
        count = sum(item.name == name and item.part is None for item in items)
        words += [name if count == 1 else f"{count} {name}s"] if count else []
    most = max(len(blank.items) for blank in blanks)
    shared = f", up to {most} in one blank" if most > 1 else ""
    return ", ".join(words) + shared
