"""What is bought beside the boards: fasteners, glue, and finish for the area of all parts.

    supplies(layout, fasten(layout), coats=2).table()

Areas are those of the solids; how far finish and glue go is an assumption to change: the tin says it.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator

import attrs

from ..errors import FastenerError, typed
from ..layout.laid_out import of_a_layout
from ..layout.layout import Layout
from ..layout.parts import Part
from ..lengths import INCH
from ..tables import ShownAsTable, Table
from .fasteners.fasten import Fastening

COVERAGE = 10.0
"""A litre of finish covers so much in one coat. [m²] Common practice, no source: the tin says it, and rough wood drinks
more."""
SPREAD = 0.2
"""Glue on a square metre of joint. [kg] Common practice, no source."""
COATS = 2
QUART = 0.946352946
"""A US quart. [l]"""
SQUARE_FOOT = (12 * INCH) ** 2


def area(part: Part) -> float:
    """All faces of a part, ends, notches and shaped edges among them. [mm²]

    The sides of its slabs, its two faces, and the steps from one slab to the next.
    """
    slabs = part.slabs
    sides = sum(slab.region.length * (slab.high - slab.low) for slab in slabs)
    faces = slabs[0].region.area + slabs[-1].region.area
    steps = sum(above.region.symmetric_difference(below.region).area for above, below in itertools.pairwise(slabs))
    return float(sides + faces + steps)


def _shut(layout: Layout) -> float:
    """Faces of all joints that are shut in, both sides of each. [mm²]"""
    total = 0.0
    for joint in layout.joints:
        x, y, z = joint.contact.size()
        total += 2 * max(x * y, y * z, z * x)
    return total


@attrs.frozen(kw_only=True, repr=False)
class Supplies(ShownAsTable):
    """What a batch takes beside its boards.

    painted is the area of all parts, shut in that of the joints in it, glued that of the joints that are glued. [m²]
    """

    layout: Layout
    fastening: Fastening | None
    coats: int
    coverage: float
    painted: float
    shut: float
    glued: float

    @property
    def finish(self) -> float:
        """Finish for all coats; what is shut in takes one. [l]"""
        return (max(self.painted - self.shut, 0.0) * self.coats + min(self.shut, self.painted)) / self.coverage

    @property
    def glue(self) -> float:
        """[kg]"""
        return self.glued * SPREAD

    def table(self) -> Table:
        """One line for each thing."""
        inches = self.layout.frame.tape.unit == "in"
        rows = [*self._metal(), self._finish(inches)]
        if self.glued:
            rows.append(("Glue, outdoor", f"{self.glue * 1000:.0f} g", f"{self.glued:.3f} m² of joints"))
        notes = (
            f"Finish: a litre covers {self.coverage:g} m², {self.coats} coats, one on what is shut in. Glue: "
            f"{SPREAD * 1000:g} g on a square metre. Assumptions, no source: the tin says it.",
        )
        return Table(f"Beside the boards: {self.layout.frame.name}", ("What", "Buy", "For"), tuple(rows), notes, "lrl")

    def _metal(self) -> Iterator[tuple[str, str, str]]:
        if self.fastening is None:
            return
        table = self.fastening.schedule()
        for row in table.rows:
            yield f"{row[0]} × {row[1]}", row[3], f"{row[2]} and spares"

    def _finish(self, inches: bool) -> tuple[str, str, str]:
        if inches:
            return "Finish", f"{self.finish / QUART:.1f} qt", f"{self.painted * 1e6 / SQUARE_FOOT:.0f} sq ft"
        return "Finish", f"{self.finish:.1f} l", f"{self.painted:.1f} m²"

    def __repr__(self) -> str:
        return f"<Supplies of {self.layout.frame.name}: {self.finish:.1f} l of finish for {self.painted:.1f} m²>"


@of_a_layout
def supplies(
    layout: Layout, fastening: Fastening | None = None, *, coats: int = COATS, coverage: float = COVERAGE
) -> Supplies:
    """Fasteners, glue and finish for a batch.

    Parameters
    ----------
    layout : Layout
    fastening : Fastening, optional
        How it is fastened; without, there is only the finish.
    coats : int
        How often all faces are coated.
    coverage : float
        Area that a litre covers in one coat. [m²]

    Raises
    ------
    FastenerError
        If coats or coverage are none.
    """
    if isinstance(coats, bool) or not isinstance(coats, int) or not 1 <= coats <= 20:
        raise FastenerError(f"coats is {typed(coats)}. Give a whole number from 1 to 20.")
    if isinstance(coverage, bool) or not isinstance(coverage, int | float) or not 0.1 <= coverage <= 100:
        raise FastenerError(f"coverage is {typed(coverage)}. Give the square metres of a litre, such as 10.")
    areas: dict[tuple[int, str], float] = {}
    total = 0.0
    for part in layout.parts:
        key = (part.kind, part.role)
        if key not in areas:
            areas[key] = area(part)
        total += areas[key]
    glued = sum(_glued(fastening)) if fastening is not None else 0.0
    return Supplies(
        layout=layout,
        fastening=fastening,
        coats=coats,
        coverage=float(coverage),
        painted=total * 1e-6,
        shut=_shut(layout) * 1e-6,
        glued=glued * 1e-6,
    )


def _glued(fastening: Fastening) -> Iterator[float]:
    for fixing in fastening.fixings:
        if fixing.asked and fixing.size.kind == "glue":
            x, y, z = fixing.drive.joint.contact.size()
            yield max(x * y, y * z, z * x)
