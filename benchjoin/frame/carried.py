"""Slots of what levels carry: bearers and boards, run by run from below, each joined to what it lies on.

What lies under a run is read from the description: the rails and bearers whose tops are drawn at its height carry it,
a rail that stands higher is a stop. Tops are told over the common edge of the level's rails.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence

from ..lengths import TOUCH
from .bearers import Bearers
from .boarding import board_layer, ground
from .boards import Boards
from .faces import OPPOSITE, X, Y, Z
from .joints import Butt, CutRound, How, Laid, Notch, Over, Planted
from .layers import Around, Layer, counted, crossing, drawn_top, lying, member
from .ledger import Ledger
from .roles import BEARER, BOARD, LEDGER
from .slots import Slot
from .stack import Carried, Level
from .top import Top
from .topped import top_layers
from .tray import Tray
from .trayed import tray_layers

Joints = tuple[tuple[How, tuple[str, ...]], ...]


def carried_slots(around: Around) -> Iterator[Slot]:
    """Every bearer and board, level by level from the foot."""
    for level in around.levels:
        layers: list[Layer] = []
        for run in level.carries:
            for layer in _layers(run, level, around, layers):
                layers.append(layer)
                yield from layer.slots


def _layers(run: Carried, level: Level, around: Around, layers: Sequence[Layer]) -> Iterator[Layer]:
    if isinstance(run, Top):
        yield from top_layers(run, level, around, layers)
    elif isinstance(run, Tray):
        yield from tray_layers(run, level, around, layers)
    elif isinstance(run, Ledger):
        yield _ledger(run, level, around)
    elif isinstance(run, Bearers):
        yield _bearers(run, level, around, layers)
    elif run.run == "up":
        yield Layer(tuple(_upright(run, level, around)), Z, 0.0)
    else:
        axis = X if run.run == "along" else Y
        yield board_layer(run, level, around, ground(level, around, layers, axis))


def _bearers(run: Bearers, level: Level, around: Around, layers: Sequence[Layer]) -> Layer:
    if run.planted:
        return _ledgers(run, level, around)
    axis = Y if run.run == "across" else X
    own = around.rails[level.name]
    rails = [slot for slot in own if slot.axes[0] == 1 - axis] or own  # laid along the only rails that there are
    crossed = crossing(layers, axis)
    tops = {slot.name: drawn_top(level, slot) for slot in rails}
    joint: How = run.joint
    if isinstance(joint, Laid) and crossed:
        under, least = crossed[-1].names, crossed[-1].top
        joints: Joints = ((joint, under),)
    else:
        least = min(tops.values(), default=0.0)
        low = tuple(name for name in tops if tops[name] <= least + TOUCH)
        stops = tuple(name for name in tops if name not in low)
        joints = ((joint, tuple(tops)),) if joint.between or not stops else ((joint, low), (Butt(), stops))
        joints = (*joints, *((run.crossing, layer.names) for layer in crossed))
    ways = _in_bays(rails, joints) if joint.between and axis == X else [joints]
    lines = counted(run, level, around.counts).count
    slots = tuple(
        member(
            run,
            level,
            number,
            role=BEARER,
            axes=lying(axis, flat=run.flat),
            true_edge="left" if axis == Y else "front",
            joint=own[0][0],
            hosts=own[0][1],
            face="top",
            also=own[1:],
            line=line,
        )
        for number, (line, own) in enumerate(itertools.product(range(1, lines + 1), ways), 1)
    )
    return Layer(slots, axis, least + _over(run))


def _in_bays(rails: Sequence[Slot], joints: Joints) -> list[Joints]:
    """One bearer for each bay where cross rails stand in the way of those that butt."""
    rising = sorted(rails, key=lambda slot: ("left", "cross", "right").index(slot.side))
    if len(rising) < 3:
        return [joints]
    return [((joints[0][0], (a.name, b.name)), *joints[1:]) for a, b in itertools.pairwise(rising)]


def _over(run: Bearers) -> float:
    """How high the top of a bearer lies over what it comes to. [mm]"""
    high, joint = run.upright, run.joint
    if isinstance(joint, Laid):
        return high
    if isinstance(joint, Over):
        return high - (high / 2 if joint.depth is None else joint.depth)
    if isinstance(joint, Notch):
        return 0.0 if joint.depth is None else high - joint.depth
    return -run.lowered


def _ledgers(run: Bearers, level: Level, around: Around) -> Layer:
    """A ledger inside each rail that runs its way, in each bay."""
    axis = X if run.run == "along" else Y
    sides = ("front", "back") if axis == X else ("left", "right")
    found = []
    for side in sides:
        own = [slot for slot in around.rails[level.name] if slot.side == side]
        bays = list(itertools.pairwise(around.pairs)) if axis == X and own else [("", "")] * bool(own)
        found += [(own[n if len(own) > 1 else 0], bay[0]) for n, bay in enumerate(bays)]
    slots = tuple(
        member(
            run,
            level,
            number,
            role=BEARER,
            axes=lying(axis, flat=run.flat),
            true_edge="top",
            pair=pair,
            joint=run.joint,
            hosts=(rail.name,),
            face=OPPOSITE[rail.side],
        )
        for number, (rail, pair) in enumerate(found, 1)
    )
    tops = [drawn_top(level, rail) for rail, _ in found]
    return Layer(slots, axis, min(tops, default=0.0) - run.lowered)


def _ledger(run: Ledger, level: Level, around: Around) -> Layer:
    """A ledger on one rail, in each bay; or on a row of legs, between the rails that cross there."""
    axis = X if run.run == "along" else Y
    rails = around.rails[level.name]
    if run.on_legs:
        hosts = [tuple(leg.name for leg in around.legs if leg.side == run.row)]
        crossing_rails = [slot for slot in rails if slot.side == "cross"]
        found = [(hosts[0], str(n)) for n in range(len(crossing_rails) + 1)]
    else:
        own = [slot for slot in rails if slot.side == run.row]
        bays = list(itertools.pairwise(around.pairs)) if axis == X else [("", "")]
        found = [((own[n if len(own) > 1 else 0].name,), bay[0]) for n, bay in enumerate(bays)]
    slots = tuple(
        member(
            run,
            level,
            number,
            role=LEDGER,
            axes=lying(axis, flat=run.flat),
            true_edge="top",
            pair=pair,
            joint=run.joint,
            hosts=names,
            face=OPPOSITE[run.row],
            under=tuple(slot.name for slot in rails),
        )
        for number, (names, pair) in enumerate(found, 1)
    )
    return Layer(slots, axis, min(drawn_top(level, rail) for rail in rails) - run.lowered)


def _upright(run: Boards, level: Level, around: Around) -> Iterator[Slot]:
    """Boards on the face of the rails of a side, and on those of the level that they run up to, if there is one."""
    own, upper = (
        [slot for slot in around.rails.get(name, ()) if slot.side == run.side] for name in (level.name, run.to or "")
    )
    found = counted(run, level, around.counts)
    long = run.side in ("front", "back")
    for number in range(1, found.count + 1):
        yield member(
            run,
            level,
            number,
            role=BOARD,
            axes=(Z, X, Y) if long else (Z, Y, X),
            width=found.widths[number - 1] if found.widths else run.stock.width or 0.0,
            true_edge="left" if long else "front",
            joint=Planted(),
            hosts=tuple(slot.name for slot in (*own, *upper)),
            face=run.side if run.face == "outer" else OPPOSITE[run.side],
            also=((CutRound(run.clear), tuple(leg.name for leg in around.legs)),),
        )
