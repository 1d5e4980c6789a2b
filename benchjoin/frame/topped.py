"""Slots of a top: the supports under its joints, the boards of its sections, and the cleats under its panels."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from .boarding import Ground, board_layer, ground
from .faces import X, Y
from .joints import Butt, Planted, Rests
from .layers import Around, Layer, lying, member
from .roles import BEARER, CLEAT, LEDGER
from .stack import Level
from .stock import Stock
from .top import Cleats, Panel, Section, Supports, Top


def top_layers(top: Top, level: Level, around: Around, layers: Sequence[Layer]) -> Iterator[Layer]:
    """The layers of a top from below, on what a level has already."""
    under = [*layers]
    if top.supports is not None:
        under.append(_supports(top, top.supports, level, around, layers))
        yield under[-1]
    for section in top.parts():
        if section.run is None:
            continue
        axis = X if section.run.run == "along" else Y
        on = ground(level, around, under, axis)
        joint = Rests() if section.panel else None
        boards = board_layer(section.run, level, around, on, joint=joint, section=section)
        yield boards
        if section.panel:
            yield _cleats(section, section.panel, level, boards, on)


def _supports(top: Top, stock: Stock, level: Level, around: Around, layers: Sequence[Layer]) -> Layer:
    """One bearer under each joint of two sections, or two; their tops level with the lowest rails that they end at."""
    run = Supports(stock, top, f"{top.key} support")
    rails = tuple(slot.name for slot in around.rails[level.name] if slot.axes[0] == X)
    ledgers = tuple(slot.name for layer in layers if layer.axis == X for slot in layer.slots if slot.role is LEDGER)
    joints = [n for n in range(len(top.sections) - 1)]
    slots = tuple(
        member(
            run,
            level,
            number,
            role=BEARER,
            axes=lying(Y, flat=False),
            true_edge="left",
            joint=Butt(),
            hosts=(*rails, *ledgers),
            under=rails,
            face="top",
            line=line,
        )
        for number, line in enumerate((n for n in joints for _ in range(1 + top.doubled)), 1)
    )
    return Layer(slots, Y, ground(level, around, (), Y).top)


def _cleats(section: Section, panel: Panel, level: Level, boards: Layer, on: Ground) -> Layer:
    """Two cleats under the boards of a panel, square to them."""
    axis = 1 - boards.axis
    run = Cleats(panel.cleat, section, f"{section.key} cleat", "along" if axis == X else "across")
    slots = tuple(
        member(
            run,
            level,
            number,
            role=CLEAT,
            axes=lying(axis, flat=True),
            true_edge="front" if axis == X else "left",
            joint=Planted(),
            hosts=boards.names,
            face="bottom",
            part_of=section,
            group=section.group(level.name),
        )
        for number in (1, 2)
    )
    return Layer(slots, axis, on.top)
