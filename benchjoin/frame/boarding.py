"""Boarding: slots of boards that lie, each on what its level has at their height, and cut round legs.

What lies under a run is read from the description: the rails and bearers whose tops are drawn at its height carry it, a
rail that stands higher is a stop.
"""

from __future__ import annotations

from collections.abc import Sequence

import attrs

from ..lengths import TOUCH
from .boards import Boards
from .faces import X, Y, Z
from .joints import CutRound, How, Laid
from .layers import Around, Layer, counted, crossing, drawn_top, member
from .roles import BOARD
from .stack import Level
from .top import Section


@attrs.frozen(eq=False)
class Ground:
    """What boards that run along an axis lie on: its height over the common edge of the rails, and its names. [mm]"""

    top: float
    names: tuple[str, ...]


def ground(level: Level, around: Around, layers: Sequence[Layer], axis: int) -> Ground:
    """What boards of a level lie on that run along an axis."""
    rails = around.rails[level.name]
    tops = {slot.name: drawn_top(level, slot) for slot in rails}
    square = [tops[slot.name] for slot in rails if slot.axes[0] == 1 - axis]
    crossed = crossing(layers, axis)
    surface = max((layer.top for layer in crossed), default=min(square or tops.values()))
    under = [name for name, top in tops.items() if abs(top - surface) <= TOUCH]
    for layer in layers:
        if layer.axis != Z and abs(layer.top - surface) <= TOUCH:
            under += layer.names
    return Ground(surface, tuple(under))


def board_layer(
    run: Boards, level: Level, around: Around, on: Ground, *, joint: How | None = None, section: Section | None = None
) -> Layer:
    """The boards of a run where they lie: on what carries them, or in a section of a top."""
    axis = X if run.run == "along" else Y
    found = counted(run, level, around.counts)
    legs = tuple(leg.name for leg in around.legs)
    slots = tuple(
        member(
            run,
            level,
            number,
            role=BOARD,
            axes=(axis, 1 - axis, Z),
            width=found.widths[number - 1] if found.widths else run.stock.width or 0.0,
            true_edge="front" if axis == X else "left",
            joint=joint or Laid(),
            hosts=on.names,
            face="top",
            also=((CutRound(run.clear), legs),),
            far=number == found.count,
            part_of=section,
            group=section.group(level.name) if section else "",
        )
        for number in range(1, found.count + 1)
    )
    return Layer(slots, axis, on.top + run.stock.thickness)
