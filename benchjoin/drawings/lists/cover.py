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
from ...phrases import pieces_called
from ...tables import Table
from ..making.asked import Asked, OnPaper, ask
from ..making.fitting import fit_view
from ..making.house import Reader, reader
from ..making.notes import told
from ..making.pieces import whose
from ..views.isometric import picture

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
    title, of = layout.frame.name, whose(layout, 1)

    def draw(scale: float) -> Figure:
        shown = seen.drawing(scale)
        x0, y0, x1, _ = bounds(shown)
        left, _, right, top = bounds(ruled)
        below = shift(ruled, (x0 + x1 - left - right) / 2, y0 - (12.0 if of else 8.0) - top)
        a, low, _, _ = bounds(below)
        said = (Text(((x0 + x1) / 2, y0 - 6.0), f"{of[0].upper()}{of[1:]}", 2.5, "middle"),) if of else ()
        return Figure(name=title, drawing=(*shown, *said, *below, *shift(notes, a, low - 6.0)))

    yield fit_view(asked, draw, name="cover", kind="Build binder", title=title, free=True, apart=seen.apart)


def key_sizes(layout: Layout, read: Reader) -> Table:
    """What it is, how large, of what, and how many."""
    frame = layout.frame
    rows = (
        *_of_pieces(layout, read),
        ("Stock", "; ".join(dict.fromkeys(part.stock.name for part in layout.parts))),
        ("Make", str(frame.quantity)),
        ("Read to", frame.tape.name),
    )
    return Table("Key sizes", ("What", "How much"), rows)


def _of_pieces(layout: Layout, read: Reader) -> Iterator[tuple[str, str]]:
    """Sizes and counts of one piece; where pieces come out unlike, of each kind of them."""
    found: dict[str, dict[str, list[int]]] = {}
    for alike in layout.alike:
        for what, said in _of_piece(layout, alike[0], read):
            found.setdefault(what, {}).setdefault(said, []).extend(alike)
    for what, ways in found.items():
        for said, pieces in ways.items():
            yield (f"{what}, {pieces_called(sorted(pieces))}" if len(pieces) < layout.frame.quantity else what), said


def _of_piece(layout: Layout, piece: int, read: Reader) -> Iterator[tuple[str, str]]:
    length, depth, height = layout.overall(piece)
    over = f"{read(length)} long, {read(depth)} deep, {read(height)} high ({layout.frame.tape.unit})"
    yield "Over everything", over
    roles: dict[Role, list[Part]] = {}
    for part in layout.piece(piece):
        roles.setdefault(part.slot.role, []).append(part)
    for role, own in roles.items():
        how = _heights(own, read) if own[0].slot.upright else _levels(layout)
        yield role.plural.capitalize(), f"{len(own)}, {how}"


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
