"""Kinds and hands: which parts are the same piece of wood, and which are mirror images.

Two parts are of one kind when a turn in space lays the wood of one on that of the other: a leg may turn about its
length (its foot stays down), a rail also end for end. A part is handed when its mirror image is another kind, and is
made as well; without one there is nothing to mix it up with.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Sequence

import attrs
import numpy as np

from ..solids import Box
from .parts import Hand, Part

Key = tuple[object, ...]
Boxes = tuple[tuple[float, ...], ...]


def with_kinds(parts: Iterable[Part]) -> tuple[Part, ...]:
    """Parts with their kind (numbered in order of appearance) and hand."""
    found = [(part, shape_key(part), shape_key(part, mirrored=True)) for part in parts]
    numbers: dict[Key, int] = {}
    hands: dict[Key, Hand] = {}
    for _, key, _ in found:
        numbers.setdefault(key, len(numbers) + 1)
    for _, key, mirrored in found:
        if key not in hands:
            other: Hand = "right" if hands.get(mirrored) == "left" else "left"
            hands[key] = other if key != mirrored and mirrored in numbers else ""
    return tuple(attrs.evolve(part, kind=numbers[key], handed=hands[key]) for part, key, _ in found)


def shape_key(part: Part, *, mirrored: bool = False) -> Key:
    """What a part has in common with all that a turn lays on it; of its mirror image, if asked. [mm, to 1 nm]"""
    length, width, thickness = part.size
    boxes = _cells([_clipped(cut, part.size) for cut in part.local_cuts])
    if mirrored:
        boxes = [_flip(b, 1, width) for b in boxes]
    turned = min(_turns(boxes, part.size, end_for_end=part.role != "leg"))
    sizes = (round(length, 6), *sorted((round(width, 6), round(thickness, 6))))
    return (part.role, part.stock, sizes, turned)


def _clipped(box: Box, size: tuple[float, float, float]) -> Box:
    a = tuple(max(low, 0.0) for low in box.low)
    b = tuple(min(high, most) for high, most in zip(box.high, size, strict=True))
    return Box((a[0], a[1], a[2]), (b[0], b[1], b[2]))


def _cells(boxes: Sequence[Box]) -> list[Box]:
    """The wood that cuts take, as boxes that do not depend on which cut takes it: no plane splits it without need."""
    if not boxes:
        return []
    ends = np.array([(box.low, box.high) for box in boxes]).round(6)
    axes = [np.unique(ends[:, :, axis]) for axis in range(3)]
    taken = np.zeros([len(axis) - 1 for axis in axes], dtype=bool)
    for cut in ends:
        taken[tuple(slice(*np.searchsorted(axes[n], cut[:, n])) for n in range(3))] = True
    for n in range(3):
        layers = np.moveaxis(taken, n, 0)
        same = [bool((a == b).all()) for a, b in itertools.pairwise(layers)]
        taken = np.delete(taken, [place + 1 for place, alike in enumerate(same) if alike], axis=n)
        axes[n] = np.delete(axes[n], [place + 1 for place, alike in enumerate(same) if alike])
    low, high = ([axis[places] for axis, places in zip(axes, np.argwhere(taken).T + by, strict=True)] for by in (0, 1))
    corners = zip(zip(*low, strict=True), zip(*high, strict=True), strict=True)
    return [Box((float(a), float(b), float(c)), (float(d), float(e), float(f))) for (a, b, c), (d, e, f) in corners]


def _flip(box: Box, axis: int, size: float) -> Box:
    low, high = list(box.low), list(box.high)
    low[axis], high[axis] = size - box.high[axis], size - box.low[axis]
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _turns(boxes: list[Box], size: tuple[float, float, float], *, end_for_end: bool) -> Iterator[Boxes]:
    """The cuts after every turn that lays the blank on itself, wider side of the section first."""
    length, width, thickness = size
    starts = [(boxes, width, thickness)] if width >= thickness - 1e-9 else []
    if width <= thickness + 1e-9:
        starts.append(([_quarter(b, thickness) for b in boxes], thickness, width))
    for start, wide, thin in starts:
        half = [_flip(_flip(b, 1, wide), 2, thin) for b in start]
        for turned in (start, half):
            yield _listed(turned)
            if end_for_end:
                yield _listed([_flip(_flip(b, 0, length), 1, wide) for b in turned])


def _quarter(box: Box, thickness: float) -> Box:
    """A quarter turn about the length: thickness becomes width."""
    (u0, v0, w0), (u1, v1, w1) = box.low, box.high
    return Box((u0, thickness - w1, v0), (u1, thickness - w0, v1))


def _listed(boxes: Iterable[Box]) -> Boxes:
    return tuple(sorted(tuple(round(x, 6) + 0.0 for x in (*b.low, *b.high)) for b in boxes))
