"""Error budget: what the maker's way of measuring does to the marks, and to the squareness of the frame.

For every shoulder line of the tallest leg, and for four ways of getting there, it adds up what may go wrong: at
worst, and as root sum square. Then it asks what two legs may differ by, since that is what shows: a rail that
is out of level over the length, and diagonals, foot to highest mark, that differ though the legs stand plumb.

    print(error_budget(layout))
    error_budget(layout, Marking(tape_class="I", mark="0.3 mm"))

With legs a length W apart and the highest marks at H and H + δ, the diagonals differ by √(W² + (H + δ)²) − √(W² + H²).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import attrs

from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import INCH, distinct
from ...readings import Tape
from ...tables import ShownAsTable, Table
from .marking_ways import WAYS_OF_MARKING, ErrorTerm, Marking, MarkingWay, error_terms
from .tolerance import root_sum_square, worst


@attrs.frozen(kw_only=True)
class Spread:
    """An error at worst and as root sum square. [± mm]"""

    worst: float
    likely: float


@attrs.frozen(kw_only=True)
class MarkError:
    """What one way of marking does to one mark: the mark's distance from the end, and its errors. [mm]"""

    at: float
    terms: tuple[ErrorTerm, ...]

    @property
    def place(self) -> Spread:
        """How far the mark may be off."""
        sizes = [term.size for term in self.terms]
        return Spread(worst=worst(sizes), likely=root_sum_square(sizes))

    @property
    def between_legs(self) -> Spread:
        """How far the same mark on two legs may differ: each leg's own errors, twice; the shared ones cancel."""
        sizes = [term.size for term in self.terms if not term.shared] * 2
        return Spread(worst=worst(sizes), likely=root_sum_square(sizes))


@attrs.frozen(kw_only=True, repr=False)
class ErrorBudget(ShownAsTable):
    """What each way of marking does to each mark of the leg, and to the frame. [mm]

    leg is the leg it was worked for; span the length over the legs; ways holds the marks from the foot upwards.
    """

    name: str
    leg: str
    tape: Tape
    span: float
    marking: Marking
    own: float
    ways: dict[MarkingWay, tuple[MarkError, ...]] = attrs.field(hash=False)

    def diagonals(self, way: MarkingWay) -> Spread:
        """How far the diagonals from foot to highest mark differ. [mm]"""
        last = self.ways[way][-1]
        off = last.between_legs
        return Spread(
            worst=diagonals_differ(self.span, last.at, off.worst),
            likely=diagonals_differ(self.span, last.at, off.likely),
        )

    def table(self) -> Table:
        """One line for each way of marking: lowest and highest mark, leg to leg, diagonals; worst case and likely."""
        unit = self.tape.unit
        heads = ("Lowest mark", "Highest mark", "Leg to leg", "Diagonals")
        columns = ("Way of marking", *(f"{head}, {what}" for head in heads for what in ("worst", "likely")))
        rows = tuple(self._row(way) for way in self.ways)
        notes = (
            f"Marks of the {self.leg}, {self.tape.say(self.ways_marks[0])} to "
            f"{self.tape.say(self.ways_marks[-1])} over "
            f"the foot; diagonals over {self.tape.say(self.span)}. All errors ± {unit}; likely is the root sum square.",
            f"Tape {self.marking.law}; lines struck ± {self.small(self.own)}, "
            f"strip laid ± {self.small(self.marking.lay)}, print true to {self.marking.stretch:.2%} by its check "
            "bar, parts "
            f"against the stop ± {self.small(self.marking.seat)}: common practice, no source. Put in your own.",
            "Leg to leg is what a level shows; what all legs share lifts every rail alike. Gang the legs and "
            "strike across "
            "them in one go, and nothing is left between them but the square.",
        )
        return Table(f"Error budget: {self.name}", columns, rows, notes, "l" + "r" * 8)

    @property
    def ways_marks(self) -> tuple[float, ...]:
        """Distances of the marks from the foot. [mm]"""
        return tuple(mark.at for mark in next(iter(self.ways.values())))

    def small(self, error: float) -> str:
        """An error in figures: tenths of a millimetre (hundredths below one), or thousandths of an inch."""
        if self.tape.unit == "in":
            return f"{error / INCH:.3f}"
        return f"{error:.2f}" if error < 1 else f"{error:.1f}"

    def _row(self, way: MarkingWay) -> tuple[str, ...]:
        marks = self.ways[way]
        spreads = (marks[0].place, marks[-1].place, marks[-1].between_legs, self.diagonals(way))
        return (way, *(self.small(value) for spread in spreads for value in (spread.worst, spread.likely)))

    def __str__(self) -> str:
        return self.table().text()

    def __repr__(self) -> str:
        return self.table().text()


def diagonals_differ(width: float, height: float, off: float) -> float:
    """By how much the diagonals of a frame differ, if one of its upper corners sits higher than the other. [mm]

    >>> diagonals_differ(400.0, 300.0, 0.0), round(diagonals_differ(400.0, 300.0, 5.0), 3)
    (0.0, 3.016)
    """
    return math.hypot(width, height + off) - math.hypot(width, height)


@of_a_layout
def error_budget(layout: Layout, marking: Marking | None = None, *, piece: int = 1) -> ErrorBudget | None:
    """The error budget of a layout's tallest leg; None where no leg carries a mark.

    Parameters
    ----------
    layout : Layout
    marking : Marking, optional
        How well the maker measures.
    piece : int
        Which piece of the batch.

    Raises
    ------
    AddressError
        If there is no such piece.
    """
    marking = marking or Marking()
    legs = [leg for leg in layout.legs(piece) if _lines(leg)]
    if not legs:
        return None
    leg = max(legs, key=lambda part: (_lines(part)[-1], len(_lines(part))))
    lines, tape = _lines(leg), layout.frame.tape
    own = tape.division / 2 if marking.mark is None else marking.mark
    steps = [high - low for low, high in zip([0.0, *lines], lines, strict=False)]
    boxes = [part.blank for part in legs]
    return ErrorBudget(
        name=layout.frame.name,
        leg=leg.identity,
        tape=tape,
        span=max(box.high[0] for box in boxes) - min(box.low[0] for box in boxes),
        marking=marking,
        own=own,
        ways={
            way: tuple(
                MarkError(at=at, terms=error_terms(way, steps[: number + 1], own, marking))
                for number, at in enumerate(lines)
            )
            for way in WAYS_OF_MARKING
        },
    )


def _lines(leg: Part) -> Sequence[float]:
    """Shoulder lines of a leg from its foot, those within touch taken as one. [mm]"""
    return distinct(edge for notch in leg.notches for edge in notch.edges)
