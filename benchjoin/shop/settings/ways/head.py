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
from ..heads import DadoHead, Stack, stacks
from ..notching import Notching
from ..ordering import fewest_stops
from ..shop import Shop
from .operation import Operation, Tool, heights, passes_for, place, said, way_down


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


def operations(notches: Sequence[Notching], shop: Shop, tape: Tape) -> tuple[Operation, ...]:
    """All operations with the one stack that sets the stop least often, then has fewest passes, then fewest parts.

    One head does for all: whatever goes into the narrowest notch goes into every other.
    """
    if shop.dado is None or not notches:
        return ()
    ladder = heights((notch.depth for notch in notches), shop.dado.bite, tape)
    tried = [tuple(_all(notches, stack, ladder, shop, tape)) for stack in _candidates(notches, shop.dado)]
    return min(tried, key=lambda made: _cost(made, ladder, tape))


def _candidates(notches: Sequence[Notching], head: DadoHead) -> list[Stack]:
    """Stacks that go into the narrowest notch; with shims only where they make the head as wide as some notch."""
    widths = {round(notch.width, 6) for notch in notches}
    fits = [stack for stack in stacks(head) if stack.width <= min(widths) + TOUCH]
    return [stack for stack in fits if not stack.shims or round(stack.width, 6) in widths]


def _cost(made: Sequence[Operation], ladder: Sequence[float], tape: Tape) -> tuple[float, ...]:
    places = [{place(o.stop, tape) for o in made if o.stop is not None and o.height == h} for h in ladder]
    stack = made[0].tool.stack
    parts = stack.parts if stack else 0
    return fewest_stops(places).stops, sum(o.passes for o in made), parts, -made[0].tool.width


def _all(
    notches: Sequence[Notching], stack: Stack, ladder: Sequence[float], shop: Shop, tape: Tape
) -> Iterator[Operation]:
    tool = Tool(way="dado head", width=stack.width, stack=stack)
    bite = shop.dado.bite if shop.dado else 0.0
    for notch in notches:
        for height in way_down(notch.depth, ladder, bite, tape):
            for operation in _shoulders(notch, tool, height, shop, tape):
                yield _within_reach(operation, shop)


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
    elif count == 1 or place(near, tape) == place(far, tape):
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
