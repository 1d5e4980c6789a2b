"""What loads do to a piece: its cases solved, its checks by how near they are, its stability, tables of all that."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

import attrs

from ...display import page
from ...errors import LoadError, typed
from ...findings import Finding
from ...layout.layout import Layout
from ...tables import Table
from .check import Check, Terms, steadily
from .framing import Bracing, Framed
from .lists import by_use, case_table, stability_table
from .loads import Case
from .mechanism import Mechanism
from .solved import Solved
from .stability import Tipping


@attrs.frozen(kw_only=True, eq=False, repr=False, slots=False)
class Strength:
    """What loads do to one piece of a layout.

    solved holds each case, checks the parts and joints by how near they are, tipped the stability of each case,
    mechanisms what nothing keeps upright: then no case is solved.
    """

    layout: Layout
    piece: int
    cases: tuple[Case, ...]
    terms: Terms
    braced: tuple[Bracing, ...]
    walls: tuple[str, ...]
    framed: Framed
    solved: tuple[Solved, ...]
    checks: tuple[Check, ...]
    tipped: tuple[Tipping, ...]
    mechanisms: tuple[Mechanism, ...]
    findings: tuple[Finding, ...] = ()
    asked: Mapping[str, Any] = attrs.field(factory=dict, repr=False)

    @property
    def use(self) -> float:
        """How near the nearest check is: 1 is the limit; NaN where nothing could be solved.

        Sag and what lifts off are told, and do not count.
        """
        known = [one.use for one in self.checks if not math.isnan(one.use) and one.kind not in ("sag", "uplift")]
        return max(known, default=math.nan)

    @property
    def factor(self) -> float:
        """The least factor against tipping over all cases."""
        return min((one.factor for one in self.tipped), default=math.inf)

    def of(self, part: str) -> tuple[Check, ...]:
        """The checks of a part, the nearest first.

        Raises
        ------
        AddressError
            If there is no such part.
        """
        own = self.layout.part(part).identity
        return tuple(one for one in self.checks if own in (one.part, one.mate))

    def case(self, name: str) -> Solved:
        """A case by its name.

        Raises
        ------
        LoadError
            If there is none of that name, or none is solved.
        """
        found = next((one for one in self.solved if one.case.name == name), None)
        if found is None:
            known = ", ".join(one.case.name for one in self.solved) or "none, since nothing keeps the frame upright"
            raise LoadError(f"There is no case {typed(name)}. Solved are {known}.")
        return found

    def table(self, *, most: int = 24) -> Table:
        """Checks by how near they are, so many at most."""
        return by_use(self.layout, self.checks, self.terms, most, solved=bool(self.solved))

    def loads(self) -> Table:
        """The cases and what lies on what."""
        return case_table(self.layout, self.cases, self.terms)

    def stability(self) -> Table:
        """How far each case is from tipping it, at its worst edge."""
        return stability_table(self.layout, self.tipped, self.walls)

    def _repr_html_(self) -> str:
        return page("strength_page", self)

    def __repr__(self) -> str:
        near = "not solved" if math.isnan(self.use) else f"nearest {steadily(self.use):.2f}"
        tips = f"tips at {steadily(self.factor):.2f}"
        return f"<Strength of {self.layout.frame.name}: {len(self.cases)} cases, {near}, {tips}>"
