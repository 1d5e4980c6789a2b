"""Notches with a router between two guides clamped across the gang.

The base runs along a guide, so the edge of the bit keeps half the base less half the bit from it: that is how far each
guide stands outside its shoulder. Two guides at once fence the router in; the wood between the shoulders goes in passes
from one guide to the other, and the depth in steps.

    offset = (base − bit) / 2;   near guide = low − offset;   far guide = high + offset
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from ....lengths import TOUCH
from ....readings import Tape
from ..notching import Notching
from ..shop import Router, Shop
from .operation import Operation, Tool, edge_of, passes_for, said


def why_not(notch: Notching, shop: Shop, tape: Tape) -> str | None:
    """Why the router cannot cut a notch, as the end of a sentence; None where it can."""
    router = shop.router
    if router is None:
        return "there is no router"
    if notch.width < min(router.bits) - TOUCH:
        return f"the notch is {tape.say(notch.width)} wide and the smallest bit larger, {said(min(router.bits), tape)}"
    if notch.depth > router.deepest + TOUCH:
        return f"the notch is {tape.say(notch.depth)} deep and the bits reach {tape.say(router.deepest)}"
    return None


def offset(base: float, bit: float) -> float:
    """From a shoulder to its guide: half the base less half the bit. [mm]

    >>> offset(6 * 25.4, 25.4 / 2) / 25.4
    2.75
    """
    return (base - bit) / 2


def tools(notches: Sequence[Notching], shop: Shop) -> tuple[Tool, ...]:
    """Every bit that goes into some notch."""
    widest = max((notch.width for notch in notches), default=0.0) + TOUCH
    bits = shop.router.bits if shop.router else ()
    return tuple(Tool(way="router", width=bit) for bit in dict.fromkeys(bits) if bit <= widest)


def operations(notches: Sequence[Notching], tool: Tool, shop: Shop, tape: Tape) -> tuple[Operation, ...]:
    """One operation a notch, between its guides and down in steps of depth."""
    return tuple(_all(notches, shop.router, tool, shop, tape)) if shop.router else ()


def _all(notches: Sequence[Notching], router: Router, tool: Tool, shop: Shop, tape: Tape) -> Iterator[Operation]:
    out = offset(router.base, tool.width)
    overlap = min(max(shop.overlap, tape.division), tool.width / 2)
    for notch in notches:
        yield Operation(
            notch=notch,
            tool=tool,
            height=notch.depth,
            edge=edge_of(notch),
            passes=passes_for(notch.width, tool.width, overlap),
            stop=None if notch.open_near else notch.low - out,
            other=None if notch.open_far else notch.high + out,
            steps=max(1, math.ceil(notch.depth / router.step - TOUCH)),
        )
