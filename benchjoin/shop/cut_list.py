"""The cut list: the parts at their finished sizes, like parts on one line, the longest of each role first.

A line says how many are to be made, and in its note which of its parts are done: together they are all that there are.
"""

from __future__ import annotations

from collections.abc import Sequence

from ..frame.roles import rank
from ..layout.done import to_make
from ..layout.edges import shaped_edges
from ..layout.laid_out import of_a_layout
from ..layout.layout import Layout
from ..layout.parts import Part
from ..phrases import counted
from ..tables import Table
from .called import called
from .done import done_note
from .marks import marks

COLUMNS = ("Part", "Make", "Length", "Width", "Thick", "Stock", "Marks", "Note")


@of_a_layout
def cut_list(layout: Layout) -> Table:
    """Finished parts of all pieces, as a table that shows itself as text, Markdown, CSV and HTML.

    Parts of one kind (one turn in space lays them on each other, notches and all) share a line; sizes are readings
    of the design's tape. Make counts the parts still to be made; sized, marked and cut ones are done, says the note.
    """
    unit = layout.frame.tape.unit
    kinds: dict[int, list[Part]] = {}
    for part in layout.parts:
        kinds.setdefault(part.kind, []).append(part)
    lines = sorted(kinds.values(), key=lambda parts: (rank(parts[0].slot.role), -parts[0].length, parts[0].kind))
    rows = tuple(_row(layout, parts) for parts in lines)
    columns = tuple(f"{name} ({unit})" if name in ("Length", "Width", "Thick") else name for name in COLUMNS)
    numbers: dict[str, tuple[float, ...]] = {"Make [pieces]": tuple(len(to_make(layout.frame, own)) for own in lines)}
    for name, size in (("Length", "length"), ("Width", "width"), ("Thick", "thickness")):
        numbers[f"{name} [mm]"] = tuple(float(getattr(own[0], size)) for own in lines)
    notes = (f"Finished sizes, read to {layout.frame.tape.name}. Add your own allowances for the saw and the planer.",)
    return Table(
        f"Cut list: {layout.frame.name}, make {layout.frame.quantity}", columns, rows, notes, "lrrrrlll", numbers
    )


def parts_table(layout: Layout, piece: int = 1) -> Table:
    """Parts of one piece by their marks, those of one kind on a line, for the sheet that shows them in a picture."""
    unit, read = layout.frame.tape.unit, layout.frame.tape.read
    kinds: dict[int, list[Part]] = {}
    for part in layout.piece(piece):
        kinds.setdefault(part.kind, []).append(part)
    rows = tuple(
        (
            marks(part.mark for part in same),
            called(same)
            + (f", {same[0].handed} hand" if same[0].handed else "")
            + (f"; {done}" if (done := done_note(layout.frame, same)) else ""),
            *(read(size) for size in (same[0].length, same[0].width, same[0].thickness)),
        )
        for _, same in sorted(kinds.items())
    )
    columns = ("Marks", "Part", f"Length ({unit})", f"Width ({unit})", f"Thick ({unit})")
    return Table(f"Parts: {layout.frame.name}", columns, rows, (), "llrrr")


def _row(layout: Layout, parts: Sequence[Part]) -> tuple[str, ...]:
    first, read = parts[0], layout.frame.tape.read
    return (
        called(parts),
        str(len(to_make(layout.frame, parts))),
        read(first.length),
        read(first.width),
        read(first.thickness),
        first.stock.name,
        marks(part.mark for part in parts),
        "; ".join(note for note in (_note(first), done_note(layout.frame, parts)) if note),
    )


def _note(part: Part) -> str:
    shaped = [f"{edge.name} {edge.of.called}" for edge in shaped_edges(part)]
    kinds = ", ".join(dict.fromkeys([*(_count(part, cut.kind) for cut in part.cuts), *shaped]))
    return f"{part.handed} hand, {kinds}" if part.handed else kinds


def _count(part: Part, kind: str) -> str:
    number = sum(cut.kind == kind for cut in part.cuts)
    return counted(number, kind)
