"""Blocks: which variants are worked out together, and how a block is taken apart when they do not agree.

Variants lie on a grid, one axis for each address, or in a list, where all addresses share one axis. A block keeps the
places of its variants along each axis: open, as a part of the grid, so that what depends on one address alone is worked
out once for each of its values; or paired up, when the variants that agree do not form a part of a grid.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from functools import cached_property
from typing import Any

import attrs
import numpy as np
import numpy.typing as npt

from .axes import Axis

SIZE = 1 << 15
"""So many variants are worked out together: enough to forget the cost of a step, few enough for the cache."""
Places = npt.NDArray[np.intp]


@attrs.frozen(eq=False)
class Block:
    """Places of variants along each axis, as index arrays that broadcast against each other."""

    places: tuple[Places, ...]

    @cached_property
    def shape(self) -> tuple[int, ...]:
        """How the variants of the block lie."""
        return np.broadcast_shapes(*(own.shape for own in self.places))

    @cached_property
    def key(self) -> tuple[Any, ...]:
        """Index of the block's variants in an array over all of them; slices where they lie side by side."""
        if self.is_open and all(own.size == own.flat[-1] - own.flat[0] + 1 for own in self.places):
            return tuple(slice(int(own.flat[0]), int(own.flat[-1]) + 1) for own in self.places)
        return self.places

    @property
    def is_open(self) -> bool:
        """Whether the block is a part of the grid."""
        return all(own.ndim == len(self.places) for own in self.places)

    def halves(self, mask: npt.NDArray[np.bool_]) -> tuple[Block, Block]:
        """The variants that say yes, and those that say no."""
        along = [axis for axis, size in enumerate(mask.shape) if size > 1]
        if self.is_open and len(along) == 1 and mask.ndim == len(self.places):
            axis, own = along[0], mask.reshape(-1)
            return self._only(axis, own), self._only(axis, ~own)
        full = np.broadcast_to(mask, self.shape)
        paired = [np.broadcast_to(own, self.shape) for own in self.places]
        return Block(tuple(own[full] for own in paired)), Block(tuple(own[~full] for own in paired))

    def apart(self, answers: npt.NDArray[Any]) -> tuple[Block, ...]:
        """The variants of each answer, in one step."""
        return tuple(self.halves(answers == answer)[0] for answer in np.unique(answers)[::-1])

    def _only(self, axis: int, own: npt.NDArray[np.bool_]) -> Block:
        places = list(self.places)
        places[axis] = np.compress(own, places[axis], axis=axis)
        return Block(tuple(places))

    def each(self) -> Iterator[Block]:
        """Blocks of one variant each."""
        for place in zip(*(np.broadcast_to(own, self.shape).reshape(-1) for own in self.places), strict=True):
            yield Block(_open([np.array([at]) for at in place]))


def grid(axes: Sequence[Axis]) -> Iterator[Block]:
    """Blocks of a grid, each of one design, and of no more than SIZE variants."""
    for places in itertools.product(*(_alike(axis.kinds) for axis in axes)):
        yield from _cut(places)


def listed(axes: Sequence[Axis]) -> Iterator[Block]:
    """Blocks of a list, each of one design, and of no more than SIZE variants."""
    codes = np.zeros(len(axes[0].kinds), dtype=np.int64)
    for axis in axes:
        codes = codes * (len(axis.words) + 1) + axis.kinds + 1
    for own in _alike(codes):
        for start in range(0, len(own), SIZE):
            yield Block((own[start : start + SIZE],))


def _alike(kinds: npt.NDArray[np.int64]) -> list[Places]:
    """Places of each kind."""
    if (kinds == kinds[0]).all():
        return [np.arange(len(kinds))]
    return [np.flatnonzero(kinds == kind) for kind in np.unique(kinds)]


def _cut(places: Sequence[Places]) -> Iterator[Block]:
    """Parts of a grid that are small enough, cut along their longest axis."""
    counts = [len(own) for own in places]
    if np.prod(counts, dtype=float) <= SIZE:
        yield Block(_open(places))
        return
    longest = int(np.argmax(counts))
    for half in np.array_split(places[longest], 2):
        yield from _cut([*places[:longest], half, *places[longest + 1 :]])


def _open(places: Sequence[Places]) -> tuple[Places, ...]:
    return tuple(np.ix_(*places))
