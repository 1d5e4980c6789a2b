"""What the maker must know: errors, warnings and notes.

Checks return findings; nothing is raised for them. An *error* cannot be built, a *warning* asks the maker to
think again, a *note* is worth knowing. Each says where, with which numbers, in a plain sentence, and on whose
authority.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Literal

import attrs

from .display import page
from .phrases import counted
from .sources import Source

Severity = Literal["error", "warning", "note"]
ORDER: tuple[Severity, ...] = ("error", "warning", "note")


WayKind = Literal["let be", "shim", "move", "take off", "take off what is done", "make again"]


@attrs.frozen
class WayOut:
    """One way out of what was found: what to do, what it costs in words, and which kind of way it is."""

    what: str
    cost: str
    kind: WayKind


@attrs.frozen(kw_only=True)
class Finding:
    """One thing that the maker must know.

    kind is a short name of the check, where the part or parts in words, parts their identities, pieces those of the
    batch that it is about (none named: all), mates the identities of other parts that it speaks of, numbers the sizes
    in mm (or fractions) that the sentence states, at the tape's reading, ways the ways out that are to be weighed, the
    cheapest first.
    """

    severity: Severity
    kind: str
    where: str
    parts: tuple[str, ...] = ()
    pieces: tuple[int, ...] = ()
    mates: tuple[str, ...] = ()
    sentence: str
    numbers: Mapping[str, float] = attrs.field(factory=dict, hash=False)
    source: Source
    ways: tuple[WayOut, ...] = ()

    def concerns(self, piece: int) -> bool:
        """Whether it is about a piece of the batch."""
        return not self.pieces or piece in self.pieces

    def _repr_html_(self) -> str:
        return page("finding_page", self)

    def __str__(self) -> str:
        return f"{self.severity}: {self.sentence} [{self.source}]"


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Errors first, then warnings, then notes; otherwise as found."""
    return tuple(sorted(findings, key=lambda finding: ORDER.index(finding.severity)))


def counts(findings: Iterable[Finding]) -> str:
    """How many of each severity: '1 error, 3 notes'; nothing where there is none."""
    found = [finding.severity for finding in findings]
    return ", ".join(counted(found.count(severity), severity) for severity in ORDER if severity in found)
