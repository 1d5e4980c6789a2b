"""Notches with a dado head on a table saw: the work across the saw, its end against a stop on the gauge's fence.

The near shoulder is cut with the stop as far from the head as the shoulder lies from the end; the far one with the stop
nearer by the width of the head. In between the work slides away from the stop, a little less than a head at a time. At
the far shoulder it stays hard against the stop: sliding would cut past the line.

    end ├──────────────┐▒▒▒▒▒▒▒▒▒▒▒▒┌──────────
        │← near stop →│             │
        │← far stop (far shoulder − head) →│
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs

from ....lengths import TOUCH
from ....readings import Tape
from ..heads import stacks
from ..notching import Notching
from ..shop import Shop
from .operation import Operation, Tool, heights, one_place, passes_for, said, way_down


def why_not(notch: Notching, shop: Shop, tape: Tape) -> str | None:
    """Why the head cannot cut a notch, as the end of a sentence; None where it can."""
    head = shop.dado
    if head is None:
        return "the saw takes no dado head"
    if not notch.across:
        return "the notch stops inside the face, where a head cannot"
    if notch.width < head.pair - TOUCH:
        return f"the notch is {tape.say(notch.width)} wide and the narrowest head cuts {said(head.pair, tape)}"
    if notch.depth > head.deepest + TOUCH:
        return f"the notch is {tape.say(notch.depth)} deep and the head comes up {tape.say(head.deepest)}"
    return None


def tools(notches: Sequence[Notching], shop: Shop) -> tuple[Tool, ...]:
    """Every stack that goes into some notch; with shims only where they make the head as wide as one."""
    widths = {round(notch.width, 6) for notch in notches}
    known = stacks(shop.dado) if shop.dado else ()
    fits = [stack for stack in known if stack.width <= max(widths, default=0.0) + TOUCH]
    own = [stack for stack in fits if not stack.shims or round(stack.width, 6) in widths]
    return tuple(Tool(way="dado head", width=stack.width, stack=stack) for stack in own)


def operations(notches: Sequence[Notching], tool: Tool, shop: Shop, tape: Tape) -> tuple[Operation, ...]:
    """The shoulders of every notch at every height on the way down to its depth."""
    bite = shop.dado.bite if shop.dado else 0.0
    ladder = heights((notch.depth for notch in notches), bite, tape)
    return tuple(
        _within_reach(operation, shop)
        for notch in notches
        for height in way_down(notch.depth, ladder, bite)
        for operation in _shoulders(notch, tool, height, shop, tape)
    )


def _shoulders(notch: Notching, tool: Tool, height: float, shop: Shop, tape: Tape) -> Iterator[Operation]:
    overlap = min(max(shop.overlap, tape.division), tool.width / 2)
    count = passes_for(notch.width, tool.width, overlap)
    near, far = notch.low, notch.high - tool.width
    plain = Operation(notch=notch, tool=tool, height=height, edge="through", passes=count)
    if notch.open_near and notch.open_far:
        yield plain
    elif notch.open_near:
        yield attrs.evolve(plain, edge="far", stop=far)
    elif notch.open_far:
        yield attrs.evolve(plain, edge="near", stop=near)
    elif count == 1 or one_place((near, far), tape)[far] == near:
        yield attrs.evolve(plain, edge="both", stop=near, passes=1)
    else:
        yield attrs.evolve(plain, edge="near", stop=near, passes=count - 1)
        yield attrs.evolve(plain, edge="far", stop=far, passes=1)


def _within_reach(operation: Operation, shop: Shop) -> Operation:
    """The operation, or the same to its line where no stop can stand."""
    if operation.stop is None or shop.stop_nearest - TOUCH <= operation.stop <= shop.stop_reach + TOUCH:
        return operation
    notch = operation.notch
    lines = {"near": (notch.low,), "far": (notch.high,), "both": (notch.low, notch.high)}[operation.edge]
    return attrs.evolve(operation, stop=None, lines=lines)
