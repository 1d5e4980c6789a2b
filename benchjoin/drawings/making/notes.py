"""Notes on a sheet: the findings that concern the parts it shows, and what the sheet says about itself.

Findings name their parts; a sheet asks for those of the parts that it shows, and writes them where it has room. A
finding about another piece is left to the sheets of that piece.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ...drafting.lettering import wrap
from ...drafting.primitives import Drawing, Text
from ...findings import Finding
from ...layout.layout import Layout

TEXT = 2.5
PITCH, BETWEEN = 3.9, 1.2
"""From line to line, and more from note to note. [mm]"""
MOST = 4
"""Findings on a view; where there are more, the rest is left to the sheet of findings."""
WIDEST = 150.0
"""A line of notes is at most so long, to be read. [mm]"""


def concerning(layout: Layout, identities: Iterable[str], piece: int) -> list[Finding]:
    """The findings about parts of one piece, by identity; errors first."""
    shown = set(identities)
    return [
        finding
        for finding in layout.findings
        if shown.intersection(finding.parts) and finding.concerns(piece)
    ]


def told(finding: Finding) -> str:
    """A finding as a note: "Warning: …"."""
    return f"{finding.severity.capitalize()}: {finding.sentence}"


def finding_notes(layout: Layout, identities: Iterable[str], piece: int, most: int = MOST) -> list[str]:
    """Notes for a sheet that shows some parts of a piece."""
    found = concerning(layout, identities, piece)
    more = len(found) - most
    return [*map(told, found[:most]), *([f"{more} more: see the sheet of findings."] if more > 0 else [])]


def counted(notes: Sequence[str]) -> list[str]:
    """What stands for notes that have no room."""
    several = "1 note" if len(notes) == 1 else f"{len(notes)} notes"
    return [f"{several} on these parts: see the sheet of findings."]


def written(notes: Sequence[str], width: float) -> Drawing:
    """Notes one below the other, the first line's top at nought. [mm]"""
    lines, low = [], -TEXT
    for note in notes:
        for line in wrap(note, TEXT, min(width, WIDEST)):
            lines.append(Text((0.0, low), line, TEXT))
            low -= PITCH
        low -= BETWEEN
    return tuple(lines)
