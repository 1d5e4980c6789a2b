"""Loads and what the wood feels of them: tables, and a picture of each member that is nearest its limit.

A picture shows the wood that is left along the member, seen across the way it bends, and below it how much it bends at
each place.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Unpack

import attrs
import numpy as np

from ...drafting.lettering import wrap
from ...drafting.primitives import Disc, Line, Primitive, Text
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.ruled import PITCH, TEXT
from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ...layout.parts import Part
from ...shop.strength.check import Check, steadily
from ...shop.strength.improving import help_table, would_help
from ...shop.strength.lists import CAUTIONS
from ...shop.strength.result import Strength
from ...shop.strength.section import sections
from ...shop.strength.solved import Felt
from ..making.asked import Asked, OnPaper, ask
from ..making.flowing import Listed, flowing_sheets
from .table_figure import title_lines, titled

PICTURES = 3
"""So many members are pictured."""
CURVE = 16.0
"""Height of the curve of bending. [mm]"""
WOOD = (4.0, 10.0)
"""Height of the wood in a picture, at least and at most. [mm]"""
SIDE = 15.0
"""Left of a picture, and right of it. [mm]"""
ORDINATE = 5.0
"""Between the strokes that fill the curve of bending. [mm]"""
DOT = 0.7
"""Radius of the dot at the worst place. [mm]"""


def strength_sheets(strength: Strength, /, **options: Unpack[OnPaper]) -> tuple[Sheet, ...]:
    """Sheets of a strength: loads, checks, pictures of what is nearest, stability.

    Parameters
    ----------
    strength : Strength
    **options
        paper and house, as `Asked` has them.

    Raises
    ------
    PaperError
        If a row does not fit the paper.
    """
    asked = attrs.evolve(ask(strength.layout, OnPaper, options), strength=strength)
    return flowing_sheets(asked, list(strength_lists(strength.layout, asked)))


def strength_lists(layout: Layout, asked: Asked) -> Iterator[Listed]:
    """The strength that goes with the sheets; nothing where there is none."""
    found = asked.strength
    if found is None:
        return

    def figures(wide: float) -> Sequence[Figure]:
        loads = attrs.evolve(found.loads(), title="Loads")
        near = attrs.evolve(found.table(), title="How near each member and joint is")
        helps = attrs.evolve(help_table(found, would_help(found)), title="What would help")
        steady = attrs.evolve(found.stability(), title="Stability")
        pictures = [_picture(found, check, wide) for check in _pictured(found)]
        shown = [near, helps, steady] if found.solved else [near, steady]
        return [
            *titled(loads, wide, first=CAUTIONS),
            *pictures,
            *(own for table in shown for own in titled(table, wide)),
        ]

    yield Listed(name="strength", title="Strength and stability", figures=figures)


def _pictured(found: Strength) -> list[Check]:
    """The members that bend nearest to their limit, one of each kind, and a leg among them."""
    bent = [one for one in found.checks if one.kind == "bending" and one.moment > 0]
    parts = {part.identity: part for part in found.layout.piece(found.piece)}
    kinds: dict[tuple[str, str], Check] = {}
    for one in bent:
        part = parts[one.part]
        kinds.setdefault((part.role, part.level or part.side), one)
    chosen = list(kinds.values())[:PICTURES]
    legs = [one for key, one in kinds.items() if key[0] == "leg"]
    if legs and legs[0] not in chosen:
        chosen[-1:] = [legs[0]]
    return chosen


def _picture(found: Strength, check: Check, wide: float) -> Figure:
    case = found.case(check.case)
    part = case.framed.chains[check.part].part
    axis = part.slot.axes[0]
    turned = part.placement.u[axis] < 0
    felt = list(case.felt(check.part))
    turn = _turn(felt, part.blank.low[axis], check, axis, part.length, turned)
    scale = float((wide - 2 * SIDE) / part.length)
    height = part.blank.size()[3 - axis - turn]
    tall = min(max(height * scale, WOOD[0]), WOOD[1])
    read = found.layout.frame.tape.read
    size = " × ".join(f"{read(one)}" for one in (height, part.blank.size()[turn]))
    title = f"{check.part}, {check.case}: bends most at {read(check.place)}"
    lines, start = title_lines(title, wide)
    moment, use = steadily(check.moment) / 1000, steadily(check.use)
    words = f"{moment:.1f} N·m there, {use:.2f} of what is worked with; {size} where it is whole."
    words += f" {check.words[0].upper()}{check.words[1:]}." if check.words else ""
    told = wrap(words, TEXT, wide)
    drawing: list[Primitive] = list(lines)
    drawing += [Text((0.0, start - TEXT - PITCH * n), line, TEXT) for n, line in enumerate(told)]
    top = start - PITCH * len(told) - 3.0

    def at(place: float) -> float:
        along = float(place - part.blank.low[axis])
        return SIDE + scale * (part.length - along if turned else along)

    drawing += _wood(part, turn, at, top, tall)
    which = 1 if turn == (axis + 1) % 3 else 2
    drawing += _curve(
        felt, which, at, top - tall - 6.0 - CURVE / 2, SIDE + scale * check.place, lies=not part.slot.upright
    )
    ends = part.slot.role.datum, part.slot.role.end
    low = top - tall - 6.0 - CURVE - 2.0 - TEXT
    drawing += [Text((SIDE, low), ends[0], TEXT), Text((SIDE + scale * part.length, low), ends[1], TEXT, anchor="end")]
    return Figure(name=title, drawing=drawing, shows=(part.name,), breaks=(0.0, low - 3.0))


def _turn(felt: Sequence[Felt], low: float, check: Check, axis: int, length: float, turned: bool) -> int:
    """The axis of the world about which a member bends at its worst place."""
    place = low + (length - check.place if turned else check.place)
    near = [one for one in felt if abs(one.place - place) < 1.0] or list(felt)
    worst = max(near, key=lambda one: max(abs(one.moment[1]), abs(one.moment[2])))
    return (axis + (1 if abs(worst.moment[1]) >= abs(worst.moment[2]) else 2)) % 3


Place = Callable[[float], float]
"""Where a place along a member lies on the paper. [mm]"""


def _wood(part: Part, turn: int, at: Place, top: float, tall: float) -> Iterator[Primitive]:
    """The wood that is left, drawn across the way it bends."""
    axis = part.slot.axes[0]
    across = 3 - axis - turn
    n = 0 if across == (axis + 1) % 3 else 1
    low, size = part.blank.low[across], part.blank.size()[across]

    def up(value: float) -> float:
        return top - tall + tall * (value - low) / size

    high_edge, low_edge = [], []
    for one in sections(part):
        middle, (below, above) = one.middle[n], one.far[n]
        for place in (one.start, one.end):
            high_edge.append((at(place), up(middle + above)))
            low_edge.append((at(place), up(middle - below)))
    yield Line([*high_edge, *reversed(low_edge)], "visible", closed=True)


def _curve(
    felt: Sequence[Felt], which: int, at: Place, middle: float, worst: float, *, lies: bool
) -> Iterator[Primitive]:
    """Bending along the member over its own line; the worst place has a dot.

    which is its own axis about which it bends; what lies has its sag drawn below the line.
    """
    values = np.array([one.moment[which] for one in felt])
    most = float(np.abs(values).max())
    if most <= 0:
        return
    if lies and values[np.abs(values).argmax()] > 0:
        values = -values
    points = [(at(one.place), middle + CURVE / 2 * float(own) / most) for one, own in zip(felt, values, strict=True)]
    points.sort(key=lambda point: point[0])
    x, y = np.array(points).T
    yield Line(((x[0], middle), (x[-1], middle)), "centre")
    yield Line(points, "thin")
    even = np.arange(x[0] + ORDINATE, x[-1], ORDINATE)
    yield from (Line(((a, middle), (a, b)), "shade") for a, b in zip(even, np.interp(even, x, y), strict=True))
    dot = min(points, key=lambda point: (round(abs(point[0] - worst), 6), -abs(point[1] - middle)))
    yield Disc(dot, DOT, filled=True)
