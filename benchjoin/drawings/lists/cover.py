"""The cover of a binder: the picture of the piece, its key sizes, and what the maker must know before the first cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Unpack

from ...drafting.lettering import wrap
from ...drafting.primitives import Primitive, Text, bounds, shift
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import draw_rows, set_table
from ...drafting.sheets.sheet import Sheet
from ...frame.roles import Role
from ...layout.layout import Layout
from ...layout.parts import Part
from ...tables import Table
from ..making.asked import Asked, OnPaper, ask
from ..making.fitting import fit_view
from ..making.house import Reader, reader
from ..making.notes import told
from ..views.isometric import picture
from ..views.strokes import strokes

WIDE = 150.0
"""Width of the table and of the notes. [mm]"""
TEXT, PITCH = 3.5, 5.6
MOST_TOLD = 6
"""So many findings are told on the cover; the rest are on their own sheet."""


def cover(layout: Layout, **options: Unpack[OnPaper]) -> Sheet:
    """The cover of one design; options are paper and house, as `Asked` has them.

    Raises
    ------
    PaperError
        If it does not fit the paper.
    """
    (sheet,) = cover_pages(layout, ask(layout, OnPaper, options))
    return sheet


def cover_pages(layout: Layout, asked: Asked) -> Iterator[Sheet]:
    """The cover."""
    seen = picture(layout.piece(1))
    table = key_sizes(layout, reader(layout.frame, asked.house))
    head, rows, widths = set_table(table, WIDE)
    ruled = tuple(draw_rows([head, *rows], widths, table.aligned(), (0.0, 0.0)))
    notes = tuple(_findings(asked))
    title = layout.frame.name

    def draw(scale: float) -> Figure:
        shown = tuple(strokes(seen.lines, "visible", scale))
        x0, y0, x1, _ = bounds(shown)
        left, _, right, top = bounds(ruled)
        below = shift(ruled, (x0 + x1 - left - right) / 2, y0 - 8.0 - top)
        a, low, _, _ = bounds(below)
        return Figure(name=title, drawing=(*shown, *below, *shift(notes, a, low - 6.0)))

    yield fit_view(asked, draw, name="cover", kind="Build binder", title=title, free=True)


def key_sizes(layout: Layout, read: Reader) -> Table:
    """What it is, how large, of what, and how many."""
    frame, unit = layout.frame, layout.frame.tape.unit
    length, depth, height = layout.overall()
    parts = layout.piece(1)
    roles: dict[Role, list[Part]] = {}
    for part in parts:
        roles.setdefault(part.slot.role, []).append(part)
    counts = tuple(
        (role.plural.capitalize(), f"{len(own)}, {_heights(own, read) if own[0].slot.upright else _levels(layout)}")
        for role, own in roles.items()
    )
    rows = (
        ("Over everything", f"{read(length)} long, {read(depth)} deep, {read(height)} high ({unit})"),
        *counts,
        ("Stock", "; ".join(dict.fromkeys(part.stock.name for part in parts))),
        ("Make", str(frame.quantity)),
        ("Read to", frame.tape.name),
    )
    return Table("Key sizes", ("What", "How much"), rows)


def _heights(parts: Sequence[Part], read: Reader) -> str:
    """Of what stands: how high as described, whatever stands finished."""
    return f"{' and '.join(read(height) for height in sorted({part.slot.of.height for part in parts}))} high"


def _levels(layout: Layout) -> str:
    levels = [level.name for level in layout.frame.levels()]
    return f"in {len(levels)} levels: {', '.join(levels)}"


def _findings(asked: Asked) -> Iterator[Primitive]:
    """How many findings there are, and the first ones that drawings write, in words."""
    counts = [(s, sum(f.severity == s for f in asked.findings)) for s in ("error", "warning", "note")]
    counted = ", ".join(f"{n} {s}{'s' * (n != 1)}" for s, n in counts if n) or "none"
    lines: list[tuple[str, bool]] = [(f"Findings: {counted}", True)]
    first = asked.for_drawings[:MOST_TOLD]
    for finding in first:
        lines += [(line, False) for line in wrap(told(finding), 2.5, WIDE)]
        lines.append(("", False))
    more = len(asked.findings) - len(first)
    if more > 0:
        said = f"… and {more} more on the sheet of findings." if first else "See the sheet of findings."
        lines.append((said, False))
    low = 0.0
    for line, bold in lines:
        low -= PITCH if bold else (4.2 if line else 1.6)
        if line:
            yield Text((0.0, low), line, TEXT if bold else 2.5, bold=bold)
