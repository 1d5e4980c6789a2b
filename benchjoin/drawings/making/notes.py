"""Notes on a sheet: the findings that concern the parts it shows, and what the sheet says about itself.

Findings name their parts; a sheet asks for those of the parts that it shows, and writes them where it has room. A
finding about another piece is left to the sheets of that piece. Notes do not make a drawing smaller: where all have no
room, those of the layout stay, and where these have none either, it is said how many there are.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ...drafting.lettering import wrap
from ...drafting.primitives import Drawing, Text
from ...findings import Finding
from ...phrases import runs
from .asked import Asked

TEXT = 2.5
PITCH, BETWEEN = 3.9, 1.2
"""From line to line, and more from note to note. [mm]"""
MOST = 4
"""Findings on a view; where there are more, the rest is left to the sheet of findings."""
WIDEST = 150.0
"""A line of notes is at most so long, to be read. [mm]"""


def concerning(asked: Asked, identities: Iterable[str], piece: int) -> tuple[Finding, ...]:
    """The findings for drawings about parts of one piece, by identity; errors first."""
    shown = set(identities)
    return tuple(f for f in asked.for_drawings if shown.intersection(f.parts) and f.concerns(piece))


def told(finding: Finding) -> str:
    """A finding as a note: "Warning: …"."""
    return f"{finding.severity.capitalize()}: {finding.sentence}"


def finding_notes(
    asked: Asked, findings: Sequence[Finding], *, brief: bool = False, most: int | None = MOST
) -> list[str]:
    """Notes of the findings about the parts that are shown; in brief, of the layout's own. The others are counted.

    Where a list goes with the sheet it is one note with their numbers.
    """
    if asked.numbered:
        return pointed(asked, findings)
    own = [finding for finding in findings if not brief or finding in asked.layout.findings][:most]
    more = len(findings) - len(own)
    return [*dict.fromkeys(map(told, own)), *([f"{more} more: see the sheet of findings."] if more > 0 else [])]


def pointed(asked: Asked, findings: Sequence[Finding]) -> list[str]:
    """Where findings stand in the list: 'Findings 1 and 3 to 5: see the list.'; in full what has no number yet."""
    own = [finding for finding in findings if finding not in asked.findings]
    numbers = sorted({asked.findings.index(finding) + 1 for finding in findings if finding not in own})
    listed = [f"Finding{'s' * (len(numbers) > 1)} {runs(numbers)}: see the list."] if numbers else []
    return [*dict.fromkeys(map(told, own)), *listed]


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
