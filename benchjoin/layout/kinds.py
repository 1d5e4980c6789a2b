"""Kinds and hands: which parts are the same piece of wood, and which are mirror images.

Two parts are of one kind when a turn in space lays the wood of one on that of the other: a leg may turn about its
length (its foot stays down), a rail also end for end. A part is handed when its mirror image is another kind, and is
made as well; without one there is nothing to mix it up with. `off` says how much is missing for two parts to be of one
kind, or one the mirror image of the other.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator, Sequence

import numpy as np

from ..lengths import steady
from ..outlines import depths
from ..solids import Box
from .parts import Part

Key = tuple[object, ...]
Boxes = tuple[tuple[float, ...], ...]
Edges = tuple[tuple[float, ...], tuple[float, ...]]
TELLING = 32
"""Intervals of a shaped edge whose ends tell it from others."""


def shape_keys(part: Part) -> tuple[Key, Key]:
    """What a part has in common with all that a turn lays on it, and the same of its mirror image. [mm, to 1 nm]"""
    length, width, thickness = part.size
    taken = _cells([box.inside(part.size) for box in part.local_cuts])
    edges = _edges(part)
    sizes = (*steady(length), *sorted(steady(width, thickness)))
    ends = part.slot.role.turns_over
    own = min(_turns(taken, part.size, edges, end_for_end=ends))
    mirrored = [box.mirrored(1, width) for box in taken]
    other = min(_turns(mirrored, part.size, edges[::-1], end_for_end=ends)) if taken or any(edges) else own
    alike = (part.role, part.stock.name, part.stock.species, sizes)
    return (*alike, own), (*alike, other)


def off(part: Part, other: Part, *, mirrored: bool) -> float:
    """The largest difference between two parts, or one and the mirror image of the other, turned to lie best. [mm]

    Without end where they are not of one stock, or are not cut alike. Shaped edges are not compared.
    """
    own, his = ((each.slot.role.word, each.stock.name, len(each.cuts)) for each in (part, other))
    if own != his:
        return math.inf
    boxes = [box.inside(part.size) for box in part.local_cuts]
    return min(max(_differ(part.size, size), _pairs(boxes, turned)) for size, turned in _ways_up(other, mirrored))


def _ways_up(part: Part, mirrored: bool) -> Iterator[tuple[Sequence[float], list[Box]]]:
    """Every way that a part, or its mirror image, may lie: its sizes, and what is gone of it. [mm]"""
    length, width, thickness = part.size
    taken = [box.inside(part.size) for box in part.local_cuts]
    taken = [box.mirrored(1, width) for box in taken] if mirrored else taken
    quarter = [_quarter(box, thickness) for box in taken]
    for start, wide, thin in ((taken, width, thickness), (quarter, thickness, width)):
        for turned in (start, [box.mirrored(1, wide).mirrored(2, thin) for box in start]):
            yield (length, wide, thin), turned
            if part.slot.role.turns_over:
                yield (length, wide, thin), [box.mirrored(0, length).mirrored(1, wide) for box in turned]


def _pairs(boxes: Sequence[Box], others: Sequence[Box]) -> float:
    """How far a box of either lies from the nearest of the other at most; nought where there are none. [mm]"""
    if not boxes:
        return 0.0
    one, other = (np.array([(*box.low, *box.high) for box in each]) for each in (boxes, others))
    apart = abs(one[:, None] - other[None]).max(axis=2)
    return float(max(apart.min(axis=0).max(), apart.min(axis=1).max()))


def _differ(one: Sequence[float], other: Sequence[float]) -> float:
    return max(abs(a - b) for a, b in zip(one, other, strict=True))


def _edges(part: Part) -> Edges:
    """How far the low and the high edge stand back at even places along the part; nothing of a straight one. [mm]"""
    places = [part.length * n / TELLING for n in range(TELLING + 1)]
    low, high = (
        () if profile is None else steady(*depths(profile, places)) for profile in (part.outline.low, part.outline.high)
    )
    return low, high


def _cells(boxes: Sequence[Box]) -> list[Box]:
    """The wood that cuts take, as boxes that do not depend on which cut takes it: no plane splits it without need."""
    ends = sorted(steady(*box.low, *box.high) for box in boxes)
    if all(one[3] < other[0] for one, other in itertools.pairwise(ends)):  # each stands by itself along the part
        return [Box((a, b, c), (d, e, f)) for a, b, c, d, e, f in ends]
    return list(_on_a_grid(ends))


def _on_a_grid(ends: Sequence[tuple[float, ...]]) -> Iterator[Box]:
    axes = [sorted({end for each in ends for end in (each[n], each[n + 3])}) for n in range(3)]
    places = [{at: number for number, at in enumerate(axis)} for axis in axes]
    taken = np.zeros([len(axis) - 1 for axis in axes], dtype=bool)
    for each in ends:
        taken[tuple(slice(places[n][each[n]], places[n][each[n + 3]]) for n in range(3))] = True
    for n in range(3):
        layers = np.moveaxis(taken, n, 0)
        kept = [True, *(not (a == b).all() for a, b in itertools.pairwise(layers))]
        taken = np.compress(kept, taken, axis=n)
        axes[n] = [at for at, is_kept in zip(axes[n], [*kept, True], strict=True) if is_kept]
    x, y, z = axes
    for a, b, c in np.argwhere(taken).tolist():
        yield Box((x[a], y[b], z[c]), (x[a + 1], y[b + 1], z[c + 1]))


def _turns(
    taken: list[Box], size: tuple[float, float, float], edges: Edges, *, end_for_end: bool
) -> Iterator[tuple[Boxes, Edges]]:
    """What is gone after every turn that lays the blank on itself, wider side of the section first."""
    length, width, thickness = size
    starts = [(taken, width, thickness)] if width >= thickness - 1e-9 or any(edges) else []
    if width <= thickness + 1e-9 and not any(edges):
        starts.append(([_quarter(box, thickness) for box in taken], thickness, width))
    for start, wide, thin in starts:
        half = [box.mirrored(1, wide).mirrored(2, thin) for box in start]
        for turned, (low, high) in ((start, edges), (half, edges[::-1])):
            yield _listed(turned), (low, high)
            if end_for_end:
                yield _listed([box.mirrored(0, length).mirrored(1, wide) for box in turned]), (high[::-1], low[::-1])


def _quarter(box: Box, thickness: float) -> Box:
    """A quarter turn about the length: thickness becomes width."""
    (u0, v0, w0), (u1, v1, w1) = box.low, box.high
    return Box((u0, thickness - w1, v0), (u1, thickness - w0, v1))


def _listed(boxes: Iterable[Box]) -> Boxes:
    return tuple(sorted(steady(*box.low, *box.high) for box in boxes))
