"""Dado heads: every width that the blades, chippers and shims on hand can be stacked to.

The outside pair is always there; chippers and shims are added one by one. A width that can be stacked in several ways
is stacked from the fewest parts. The settings take what they need from here; the maker makes a test cut, because what
is printed on a chipper and what it cuts are not always the same.

>>> [round(stack.width / 25.4 * 16) for stack in stacks(DadoHead())]
[4, 5, 6, 7, 8, 9, 10, 11, 12, 13]
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import Any

import attrs

from ...errors import BenchjoinError, typed
from ...frame.doors import Fault, a_length, kept, refuse
from ...lengths import INCH, TOUCH, mm
from ...trade.saws import CHIPPERS, NOTCHING, OUTSIDE_PAIR, WIDEST_HEAD

MOST_PARTS = 24
"""No arbor takes more chippers and shims than this, and no one counts them."""


def lengths_of(field: str) -> Any:
    """Converter for a list of lengths, widest first."""

    def convert(value: Any) -> tuple[float, ...]:
        if isinstance(value, str) or not isinstance(value, Iterable):
            raise BenchjoinError(f"{field} is {typed(value)}. Write a list, for example ['1/8 in', '1/16 in'].")
        sizes = tuple(sorted((mm(size, what=f"one of {field}") for size in value), reverse=True))
        if len(sizes) > MOST_PARTS:
            raise BenchjoinError(f"{field} holds {len(sizes)} sizes. {MOST_PARTS} are the most.")
        return sizes

    return kept(field, convert)


@attrs.frozen(kw_only=True)
class DadoHead:
    """A stacked dado head as it lies in its box. [mm]

    pair is the groove of the two outside blades alone, chippers and shims what each part adds; widest is what the
    arbor takes, deepest how far the head comes up through its insert, bite how deep one pass may go.
    """

    pair: float = attrs.field(default=OUTSIDE_PAIR.width, converter=a_length("pair"))
    chippers: tuple[float, ...] = attrs.field(
        default=tuple(part.width for part in CHIPPERS for _ in range(part.count)), converter=lengths_of("chippers")
    )
    shims: tuple[float, ...] = attrs.field(default=(), converter=lengths_of("shims"))
    widest: float = attrs.field(default=WIDEST_HEAD, converter=a_length("widest"))
    deepest: float = attrs.field(default=1.5 * INCH, converter=a_length("deepest"))
    bite: float = attrs.field(default=NOTCHING.bite, converter=a_length("bite"))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Dado head", self._faults)

    def _faults(self) -> Iterator[Fault]:
        if self.widest < self.pair - TOUCH:
            yield Fault("widest", f"the pair alone cuts {self.pair:g} mm, more than the {self.widest:g} mm it may be.")


@attrs.frozen(kw_only=True)
class Stack:
    """A head as it is stacked: how wide it cuts, and its chippers and shims. [mm]"""

    width: float
    pair: float
    chippers: tuple[float, ...] = ()
    shims: tuple[float, ...] = ()

    @property
    def parts(self) -> int:
        """Chippers and shims to put on."""
        return len(self.chippers) + len(self.shims)


@lru_cache(maxsize=64)
def stacks(head: DadoHead) -> tuple[Stack, ...]:
    """Every width that a head can be stacked to, the narrowest first, each from the fewest parts.

    Notes
    -----
    Parts are added one at a time to all sums so far; of two stacks of one width that of fewer shims, then of fewer
    parts, is kept, so the list is complete without trying every subset.
    """
    found: dict[float, Stack] = {round(head.pair, 6): Stack(width=head.pair, pair=head.pair)}
    for name, sizes in (("chippers", head.chippers), ("shims", head.shims)):
        for size in sizes:
            for stack in list(found.values()):
                width = stack.width + size
                more: dict[str, Any] = {name: (*getattr(stack, name), size)}
                longer = attrs.evolve(stack, width=width, **more)
                key = round(width, 6)
                if width <= head.widest + TOUCH and (key not in found or _cost(longer) < _cost(found[key])):
                    found[key] = longer
    return tuple(sorted(found.values(), key=lambda stack: stack.width))


def _cost(stack: Stack) -> tuple[int, int]:
    return len(stack.shims), stack.parts
