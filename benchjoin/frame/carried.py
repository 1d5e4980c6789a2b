"""Slots of what levels carry: bearers and boards, run by run from below, each joined to what it lies on.

What lies under a run is read from the description: the rails and bearers whose tops are drawn at its height carry it,
a rail that stands higher is a stop. Tops are told over the common edge of the level's rails.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping, Sequence

import attrs

from ..lengths import TOUCH
from .bearers import Bearers
from .boards import Boards
from .faces import OPPOSITE, X, Y, Z
from .joints import Butt, CutRound, How, Laid, Notch, Over, Planted
from .roles import BEARER, BOARD
from .slots import Axes, Slot
from .stack import Level

Joints = tuple[tuple[How, tuple[str, ...]], ...]


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


def carried_slots(around: Around) -> Iterator[Slot]:
    """Every bearer and board, level by level from the foot."""
    for level in around.levels:
        layers: list[Layer] = []
        for run in level.carries:
            if isinstance(run, Bearers):
                layer = _bearers(run, level, around, layers)
            elif run.run == "up":
                layer = Layer(tuple(_upright(run, level, around)), Z, 0.0)
            else:
                layer = _boards(run, level, around, layers)
            layers.append(layer)
            yield from layer.slots


def counted(run: Boards | Bearers, level: Level, counts: Counts) -> Counted:
    """How many members a run has; none where their number is not worked out."""
    if not run.solved:
        return Counted(run.count or len(getattr(run, "at", None) or ()))
    return counts.get((level.name, run.key), Counted(0))


def drawn_top(level: Level, slot: Slot) -> float:
    """How high the top of a rail is drawn over the common edge of its level. [mm]"""
    return slot.of.raised + (slot.width if level.align == "bottoms" else 0.0)  # type: ignore[no-any-return]


def _bearers(run: Bearers, level: Level, around: Around, layers: Sequence[Layer]) -> Layer:
    if run.planted:
        return _ledgers(run, level, around)
    axis = Y if run.run == "across" else X
    own = around.rails[level.name]
    rails = [slot for slot in own if slot.axes[0] == 1 - axis] or own  # laid along the only rails that there are
    crossed = [layer for layer in layers if layer.axis == 1 - axis and layer.slots]
    tops = {slot.name: drawn_top(level, slot) for slot in rails}
    joint: How = run.joint
    if isinstance(joint, Laid) and crossed:
        under, least = _names(crossed[-1]), crossed[-1].top
        joints: Joints = ((joint, under),)
    else:
        least = min(tops.values(), default=0.0)
        low = tuple(name for name in tops if tops[name] <= least + TOUCH)
        stops = tuple(name for name in tops if name not in low)
        joints = ((joint, tuple(tops)),) if isinstance(joint, Butt) or not stops else ((joint, low), (Butt(), stops))
        joints = (*joints, *((run.crossing, _names(layer)) for layer in crossed))
    ways = _in_bays(rails, joints) if isinstance(joint, Butt) and axis == X else [joints]
    lines = counted(run, level, around.counts).count
    slots = tuple(
        Slot(
            name=f"{level.name}/{run.called} {number}",
            role=BEARER,
            of=run,
            stock=run.stock,
            side="",
            axes=_lying(axis, flat=run.flat),
            width=run.stock.width or 0.0,
            true_edge="left" if axis == Y else "front",
            level=level,
            joint=own[0][0],
            hosts=own[0][1],
            face="top",
            also=own[1:],
            run=run.key,
            number=number,
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
        Slot(
            name=f"{level.name}/{run.called} {number}",
            role=BEARER,
            of=run,
            stock=run.stock,
            side="",
            axes=_lying(axis, flat=run.flat),
            width=run.stock.width or 0.0,
            true_edge="top",
            pair=pair,
            level=level,
            joint=run.joint,
            hosts=(rail.name,),
            face=OPPOSITE[rail.side],
            run=run.key,
            number=number,
            line=number,
        )
        for number, (rail, pair) in enumerate(found, 1)
    )
    tops = [drawn_top(level, rail) for rail, _ in found]
    return Layer(slots, axis, min(tops, default=0.0) - run.lowered)


def _boards(run: Boards, level: Level, around: Around, layers: Sequence[Layer]) -> Layer:
    axis = X if run.run == "along" else Y
    rails = around.rails[level.name]
    tops = {slot.name: drawn_top(level, slot) for slot in rails}
    crossed = [layer for layer in layers if layer.axis == 1 - axis and layer.slots]
    square = [tops[slot.name] for slot in rails if slot.axes[0] == 1 - axis]
    surface = max((layer.top for layer in crossed), default=min(square or tops.values()))
    under = [name for name, top in tops.items() if abs(top - surface) <= TOUCH]
    for layer in layers:
        if layer.axis != Z and abs(layer.top - surface) <= TOUCH:
            under += _names(layer)
    found = counted(run, level, around.counts)
    slots = tuple(
        Slot(
            name=f"{level.name}/{run.called} {number}",
            role=BOARD,
            of=run,
            stock=run.stock,
            side="",
            axes=(axis, 1 - axis, Z),
            width=found.widths[number - 1] if found.widths else run.stock.width or 0.0,
            true_edge="front" if axis == X else "left",
            level=level,
            joint=Laid(),
            hosts=tuple(under),
            face="top",
            also=((CutRound(run.clear), tuple(leg.name for leg in around.legs)),),
            run=run.key,
            number=number,
            line=number,
        )
        for number in range(1, found.count + 1)
    )
    return Layer(slots, axis, surface + run.stock.thickness)


def _upright(run: Boards, level: Level, around: Around) -> Iterator[Slot]:
    """Boards on the face of the rails of a side, and on those of the level that they run up to, if there is one."""
    own, upper = (
        [slot for slot in around.rails.get(name, ()) if slot.side == run.side] for name in (level.name, run.to or "")
    )
    found = counted(run, level, around.counts)
    long = run.side in ("front", "back")
    for number in range(1, found.count + 1):
        yield Slot(
            name=f"{level.name}/{run.called} {number}",
            role=BOARD,
            of=run,
            stock=run.stock,
            side="",
            axes=(Z, X, Y) if long else (Z, Y, X),
            width=found.widths[number - 1] if found.widths else run.stock.width or 0.0,
            true_edge="left" if long else "front",
            level=level,
            joint=Planted(),
            hosts=tuple(slot.name for slot in (*own, *upper)),
            face=run.side if run.face == "outer" else OPPOSITE[run.side],
            also=((CutRound(run.clear), tuple(leg.name for leg in around.legs)),),
            run=run.key,
            number=number,
            line=number,
        )


def _names(layer: Layer) -> tuple[str, ...]:
    return tuple(slot.name for slot in layer.slots)


def _lying(axis: int, *, flat: bool) -> Axes:
    """Axes of a bearer that runs along an axis, on edge or on its wide face."""
    return (axis, 1 - axis, Z) if flat else (axis, Z, 1 - axis)
