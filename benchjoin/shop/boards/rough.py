"""The rough list: the parts still to be made at their rough sizes, grouped by the stop that cuts several.

rough_list(layout).table()
"""

from __future__ import annotations

from collections.abc import Sequence

import attrs

from ...frame.faces import AXIS
from ...layout.done import to_make
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import TOUCH, steady
from ...tables import ShownAsTable, Table
from ...trade.allowances import Milling, usual_milling
from ..called import called
from ..marks import marks

KNOT_CLEAR = 20.0
"""A knot keeps so far off a shoulder, a lap or an end. [mm] Common practice, no source."""


@attrs.frozen(kw_only=True)
class Allowances:
    """What a blank has over its part. [mm]

    end is left on at each end, width and thickness are taken off both sides together.
    """

    end: float = 0.0
    width: float = 0.0
    thickness: float = 0.0

    @classmethod
    def rough(cls, milling: Milling) -> Allowances:
        """What milling takes of boards that are dressed when they are bought."""
        return cls(end=milling.end, width=milling.taken_edges("dressed"), thickness=milling.taken("dressed"))


@attrs.frozen(kw_only=True, eq=False, repr=False)
class Blank:
    """Parts of one kind as they come out of a board: rough sizes, and where no knot may lie along them. [mm]

    sound are intervals from the datum end that hold no knot: ends, shoulders and laps with what keeps clear of them.
    """

    name: str
    parts: tuple[Part, ...]
    stock: str
    length: float
    width: float
    thickness: float
    sound: tuple[tuple[float, float], ...]

    @property
    def count(self) -> int:
        """How many are to be made."""
        return len(self.parts)

    @property
    def turned(self) -> tuple[tuple[float, float], ...]:
        """The same intervals with the blank end for end. [mm]"""
        return tuple(sorted((self.length - high, self.length - low) for low, high in self.sound))


@attrs.frozen(repr=False)
class RoughList(ShownAsTable):
    """The blanks to cut, longest first."""

    layout: Layout
    allow: Allowances
    blanks: tuple[Blank, ...]

    def table(self) -> Table:
        """One line for each kind of blank; those of one length and stock share a stop."""
        tape = self.layout.frame.tape
        read, unit = tape.read, tape.unit
        columns = (
            "Stop",
            "Blanks",
            "Make",
            f"Rough length ({unit})",
            f"Width ({unit})",
            f"Thick ({unit})",
            "Stock",
            "Marks",
        )
        stops: dict[object, int] = {}
        rows = []
        for blank in self.blanks:
            stop = stops.setdefault((blank.stock, steady(blank.length)), len(stops) + 1)
            sizes = (read(blank.length), read(blank.width), read(blank.thickness))
            told = marks(part.mark for part in blank.parts)
            rows.append((str(stop), called(blank.parts), str(blank.count), *sizes, blank.stock, told))
        own = self.allow
        notes = (
            f"Over the finished sizes: {read(own.end)} at each end, {read(own.width)} of width, {read(own.thickness)} "
            "of thickness. Common practice, no source: change it to your wood.",
        )
        return Table(f"Rough list: {self.layout.frame.name}", columns, tuple(rows), notes, "rlrrrrll")

    def __repr__(self) -> str:
        return f"<RoughList of {self.layout.frame.name}: {sum(b.count for b in self.blanks)} blanks>"


@of_a_layout
def rough_list(layout: Layout, allow: Allowances | None = None) -> RoughList:
    """What is still to be made of a layout, at rough sizes.

    Parameters
    ----------
    layout : Layout
    allow : Allowances, optional
        What a blank has over its part; those of milling boards that are bought dressed, if not given. Blanks that were
        milled already take ``Allowances()``, so that nothing is allowed for twice.
    """
    own = Allowances.rough(usual_milling(layout.frame.tape)) if allow is None else allow
    kinds: dict[object, list[Part]] = {}
    for part in to_make(layout.frame, layout.parts):
        key = (part.slot.role.word, part.stock.name, steady(part.length, part.width, part.thickness), _sound(part, own))
        kinds.setdefault(key, []).append(part)
    blanks = [_blank(parts, own) for parts in kinds.values()]
    return RoughList(layout, own, tuple(sorted(blanks, key=lambda b: (b.stock, -b.length, -b.width, b.name))))


def _blank(parts: Sequence[Part], allow: Allowances) -> Blank:
    first = parts[0]
    return Blank(
        name=called(parts),
        parts=tuple(parts),
        stock=first.stock.name,
        length=first.length + 2 * allow.end,
        width=first.width + allow.width,
        thickness=first.thickness + allow.thickness,
        sound=_sound(first, allow),
    )


def _sound(part: Part, allow: Allowances) -> tuple[tuple[float, float], ...]:
    """Intervals of a blank that no knot may lie in. [mm]"""
    axis, start = part.slot.axes[0], part.blank.low[part.slot.axes[0]]
    ends = [0.0, part.length]
    for cut in part.cuts:
        if AXIS[cut.face] != axis:
            ends += [cut.box.low[axis] - start, cut.box.high[axis] - start]
    found: list[tuple[float, float]] = []
    for at in sorted({round(min(max(end, 0.0), part.length), 6) for end in ends}):
        low, high = at + allow.end - KNOT_CLEAR, at + allow.end + KNOT_CLEAR
        if found and low <= found[-1][1] + TOUCH:
            found[-1] = (found[-1][0], high)
        else:
            found.append((low, high))
    return tuple((max(low, 0.0), min(high, part.length + 2 * allow.end)) for low, high in found)
