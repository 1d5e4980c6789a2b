"""Slots of a tray: the batten that stops it, its sides, and the slats on these."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs

from ..lengths import TOUCH
from .boarding import Ground, board_layer, ground
from .faces import X, Y
from .joints import HalfLap, Planted, Rests
from .layers import Around, Layer, drawn_top, lying, member
from .roles import BEARER, LEDGER, TRAY_SIDE
from .stack import Level
from .stock import Stock
from .tray import Tray, TraySides, TrayStop


def tray_layers(tray: Tray, level: Level, around: Around, layers: Sequence[Layer]) -> Iterator[Layer]:
    """The layers of a tray from below, on what a level has already."""
    on = _ground(level, around, layers)
    if tray.stop is not None:
        yield _stop(tray, tray.stop, level, around)
    long = _sides(tray, level, X, on)
    short = _sides(tray, level, Y, on, long)
    yield from (long, short)
    sides = Ground(on.top + tray.sides.thickness, (*long.names, *short.names))
    slats = board_layer(tray.slats, level, around, sides)
    own = tuple(attrs.evolve(slot, also=(), group=tray.group(level.name), part_of=tray) for slot in slats.slots)
    yield attrs.evolve(slats, slots=own)


def _ground(level: Level, around: Around, layers: Sequence[Layer]) -> Ground:
    """What a tray rests on: ledgers, where there are any, and what is as high; or else the lowest rails."""
    ledgers = [layer for layer in layers if any(slot.role is LEDGER or slot.of.planted for slot in layer.slots)]
    if not ledgers:
        return ground(level, around, layers, Y)
    top = max(layer.top for layer in ledgers)
    rails = [slot.name for slot in around.rails[level.name] if abs(drawn_top(level, slot) - top) <= TOUCH]
    return Ground(top, (*rails, *(name for layer in ledgers if abs(layer.top - top) <= TOUCH for name in layer.names)))


def _sides(tray: Tray, level: Level, axis: int, on: Ground, lapped: Layer | None = None) -> Layer:
    """The two sides that run along an axis; those that come second are lapped with the first."""
    word = "long side" if axis == X else "short side"
    run = TraySides(tray.sides, tray, f"{tray.key} {word}", "along" if axis == X else "across")
    rests = (Rests(), on.names)
    joint, hosts = (HalfLap(), lapped.names) if lapped else rests
    slots = tuple(
        member(
            run,
            level,
            number,
            role=TRAY_SIDE,
            axes=lying(axis, flat=True),
            true_edge="front" if axis == X else "left",
            joint=joint,
            hosts=hosts,
            face="top",
            also=(rests,) if lapped else (),
            group=tray.group(level.name),
            part_of=tray,
        )
        for number in (1, 2)
    )
    return Layer(slots, axis, on.top + tray.sides.thickness)


def _stop(tray: Tray, stock: Stock, level: Level, around: Around) -> Layer:
    """The batten on the rail at the far end, laid flat."""
    run = TrayStop(stock, tray, f"{tray.key} stop")
    rails = [slot for slot in around.rails[level.name] if slot.side == tray.far]
    slot = member(
        run,
        level,
        1,
        role=BEARER,
        axes=lying(X, flat=False),
        true_edge="bottom",
        joint=Planted(),
        hosts=tuple(rail.name for rail in rails),
        face="top",
        part_of=tray,
    )
    return Layer((slot,), X, max(drawn_top(level, rail) for rail in rails) + (run.stock.width or 0.0))
