"""Gathering: the operations of one tool as settings, in the order that takes the least time.

Operations that share height and stop (or the lines that they go by) are one setting: legs of two lengths meet in it,
and so do the pieces of a batch. Lengths are shared where they are one place on the machine.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence

import attrs

from ...readings import Tape
from .cheapest_order import Stand, cheapest
from .minutes import Minutes
from .setting import Setting
from .ways.operation import Operation, Tool, one_place

Key = tuple[float, ...]


@attrs.frozen(kw_only=True)
class Gathered:
    """The settings of one tool in order; least are its places of the stop, exact says that every order was tried."""

    settings: tuple[Setting, ...]
    least: int
    exact: bool

    @property
    def tool(self) -> Tool:
        """What cuts."""
        return self.settings[0].tool

    @property
    def cuts(self) -> int:
        """All cuts with the tool."""
        return sum(setting.cuts for setting in self.settings)

    @property
    def minutes(self) -> float:
        """All of it, the change to the tool as well. [min]"""
        return sum(setting.set_up + setting.cutting for setting in self.settings)


@attrs.frozen(kw_only=True)
class _At:
    """Where operations stand once lengths that are one place are one: what is alike here is one setting."""

    height: float
    stop: Key | None
    lines: Key


def gathered(made: Sequence[Operation], minutes: Minutes, tape: Tape) -> Gathered:
    """Settings of some operations with one tool, numbered from 1."""
    groups = _groups(made, tape)
    ladder = sorted({at.height for at in groups})
    stands = [Stand(ladder.index(at.height), at.stop) for at in groups]
    route = cheapest(stands, before=_before(list(groups.values())), height=minutes.height, stop=minutes.stop)
    at, own = list(groups), list(groups.values())
    found = [(at[number], Setting(number=0, operations=tuple(own[number]), costs=minutes)) for number in route.order]
    places = {stand.stop for stand in stands} - {None}
    return Gathered(settings=tuple(_marked(found)), least=len(places), exact=route.exact)


def _groups(made: Sequence[Operation], tape: Tape) -> Mapping[_At, list[Operation]]:
    """Operations by where they stand, heights rising, and within a height the stops."""
    height = one_place((o.height for o in made), tape)
    stop = one_place((o.stop for o in made if o.stop is not None), tape)
    other = one_place((o.other for o in made if o.other is not None), tape)
    line = one_place((at for o in made for at in o.lines), tape)
    found: dict[_At, list[Operation]] = {}
    for o in made:
        pair = tuple(-math.inf if at is None else places[at] for at, places in ((o.stop, stop), (o.other, other)))
        stands = None if o.stop is None and o.other is None else pair
        key = _At(height=height[o.height], stop=stands, lines=tuple(line[at] for at in o.lines))
        found.setdefault(key, []).append(o)
    return dict(sorted(found.items(), key=lambda item: (item[0].height, item[0].stop or (), item[0].lines)))


def _before(groups: Sequence[Sequence[Operation]]) -> set[tuple[int, int]]:
    """Settings of which one goes before the other: the same shoulder of a notch is cut there, less deep."""
    of: dict[tuple[int, str], list[tuple[float, int]]] = {}
    for number, own in enumerate(groups):
        for o in own:
            of.setdefault((id(o.notch), o.edge), []).append((o.height, number))
    down = (sorted(own) for own in of.values())
    pairs = ((first, later) for own in down for (_, first), (_, later) in itertools.pairwise(own))
    return {(first, later) for first, later in pairs if first != later}


def _marked(found: Iterable[tuple[_At, Setting]]) -> Iterator[Setting]:
    """The settings, each saying what is changed before it: a stop may stand from the height before."""
    height, stop = None, None
    for number, (at, setting) in enumerate(found, 1):
        moved = at.stop is not None and at.stop != stop
        yield attrs.evolve(setting, number=number, new_tool=number == 1, new_height=at.height != height, new_stop=moved)
        height, stop = at.height, at.stop if at.stop is not None else stop
