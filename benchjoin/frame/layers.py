"""Layers: what lies on a level, run by run from below, and what stands round it, as the description knows them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import attrs

from .faces import Z
from .slots import Axes, Slot
from .stack import Level


@attrs.frozen
class Counted:
    """How many members a run has by its description.

    widths is how wide each board is drawn, all alike if not told; shares is how many bearers stand in each clear
    between what else holds up the boards. [mm]
    """

    count: int
    widths: tuple[float, ...] = ()
    shares: tuple[int, ...] = ()


Counts = Mapping[tuple[str, str], Counted]
"""By level and key of the run."""


@attrs.frozen(eq=False)
class Around:
    """What stands where a level carries something: the rails of all levels, and legs in their pairs from the left."""

    levels: Sequence[Level]
    rails: Mapping[str, Sequence[Slot]]
    pairs: Sequence[str]
    legs: Sequence[Slot]
    counts: Counts


@attrs.frozen(eq=False)
class Layer:
    """A run that lies already: its slots, the axis that they run along, and how high their tops are drawn. [mm]"""

    slots: tuple[Slot, ...]
    axis: int
    top: float

    @property
    def names(self) -> tuple[str, ...]:
        """Names of its members."""
        return tuple(slot.name for slot in self.slots)


def counted(run: Any, level: Level, counts: Counts) -> Counted:
    """How many members a run has; none where their number is not worked out."""
    if not run.solved:
        return Counted(run.count or len(getattr(run, "at", None) or ()))
    return counts.get((level.name, run.key), Counted(0))


def drawn_top(level: Level, slot: Slot) -> float:
    """How high the top of a rail is drawn over the common edge of its level. [mm]"""
    return slot.of.raised + (slot.width if level.align == "bottoms" else 0.0)  # type: ignore[no-any-return]


def member(run: Any, level: Level, number: int, **more: Any) -> Slot:
    """One member of a run on a level, with what follows from these."""
    own = {"stock": run.stock, "width": run.stock.width or 0.0, "line": number, **more}
    name = f"{level.name}/{run.called} {number}"
    return Slot(name=name, of=run, side="", level=level, run=run.key, number=number, **own)


def lying(axis: int, *, flat: bool) -> Axes:
    """Axes of a bearer that runs along an axis, on edge or on its wide face."""
    return (axis, 1 - axis, Z) if flat else (axis, Z, 1 - axis)


def crossing(layers: Sequence[Layer], axis: int) -> list[Layer]:
    """The layers that run the other way."""
    return [layer for layer in layers if layer.axis == 1 - axis and layer.slots]
