"""Square: the diagonals of each face and of the plan, what they should read, and by how much they may differ.

Diagonals are taken over the outer corners of the legs: from a foot to the corner over the other foot at the height of
the lower leg. What they may differ by follows from what the marks of two legs may differ by.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import attrs

from ...layout.layout import Layout
from ...layout.parts import Part
from ...tables import Table
from ..budget.error_budget import diagonals_differ, error_budget
from ..budget.marking_ways import Marking, MarkingWay


@attrs.frozen(kw_only=True)
class Diagonal:
    """Both diagonals of a face: from which foot to the top of which leg, its two sides, what it reads. [mm]

    worst is by how much the two may differ if all goes wrong, likely as a root sum square.
    """

    face: str
    start: str
    end: str
    wide: float
    high: float
    reads: float
    worst: float
    likely: float


def diagonals(
    layout: Layout, *, piece: int = 1, marking: Marking | None = None, way: MarkingWay = "tape, mark to mark"
) -> tuple[Diagonal, ...]:
    """The diagonals of every face of a piece and of its plan.

    Parameters
    ----------
    layout : Layout
    piece : int
    marking : Marking, optional
        How well the maker marks.
    way : str
        How the legs were marked, as `error_budget` names it.

    Notes
    -----
    Pythagoras on the outer corners; the difference is that of one corner off by what two legs may differ by,
    ``√(W² + (H + δ)²) − √(W² + H²)``.
    """
    budget = error_budget(layout, marking, piece=piece)
    off = budget.ways[way][-1].between_legs if budget is not None else None
    found = []
    for face, one, other, axis in _faces(layout.legs(piece)):
        wide = max(one.blank.high[axis], other.blank.high[axis]) - min(one.blank.low[axis], other.blank.low[axis])
        high = min(one.length, other.length)
        worst, likely = (diagonals_differ(wide, high, own) for own in (off.worst, off.likely)) if off else (0.0, 0.0)
        found.append(
            Diagonal(
                face=face,
                start=f"foot of {one.identity}",
                end=f"{other.identity}, {'its top' if other.length <= one.length else 'as high'}",
                wide=wide,
                high=high,
                reads=math.hypot(wide, high),
                worst=worst,
                likely=likely,
            )
        )
    corners = layout.legs(piece)
    length = max(leg.blank.high[0] for leg in corners) - min(leg.blank.low[0] for leg in corners)
    depth = max(leg.blank.high[1] for leg in corners) - min(leg.blank.low[1] for leg in corners)
    if len({leg.side for leg in corners}) > 1 and budget is not None and off is not None:
        found.append(
            Diagonal(
                face="plan, at the feet",
                start="outer corner, front left",
                end="outer corner, back right",
                wide=length,
                high=depth,
                reads=math.hypot(length, depth),
                worst=diagonals_differ(length, depth, off.worst),
                likely=diagonals_differ(length, depth, off.likely),
            )
        )
    return tuple(found)


def _faces(legs: Sequence[Part]) -> Iterator[tuple[str, Part, Part, int]]:
    """The faces of a piece by their outer legs, and the axis along each."""
    for side in dict.fromkeys(leg.side for leg in legs):
        row = sorted((leg for leg in legs if leg.side == side), key=lambda leg: leg.blank.low[0])
        if len(row) > 1:
            yield side, row[0], row[-1], 0
    for pair in dict.fromkeys(leg.pair for leg in legs):
        own = sorted((leg for leg in legs if leg.pair == pair), key=lambda leg: leg.blank.low[1])
        if len(own) > 1:
            yield pair if pair not in ("left", "right") else f"{pair} end", own[0], own[-1], 1


def square_table(layout: Layout, found: Sequence[Diagonal]) -> Table:
    """The diagonals, with room to write what they read."""
    read = layout.frame.tape.read
    rows = tuple(
        (one.face, f"{one.start} to {one.end}", read(one.reads), f"{one.worst:.1f} mm", "", "") for one in found
    )
    notes = (
        "Both diagonals of a face read the same when it is square; they may differ by what marks on two legs may "
        "differ by at worst. Draw the longer one together with a clamp from corner to corner, and measure again.",
        "Sight along the top edges for wind: two straight sticks, one over each end, lie in one plane.",
        "On a flat floor all feet stand; where one does not, plane or pad it. On wet ground feet stand on pads.",
    )
    columns = ("Face", "From – to", "Reads", "May differ", "One", "Other")
    return Table(f"Square: {layout.frame.name}", columns, rows, notes, "llrrcc")
