"""Settings: how the saw, the router or the gauge is set for every notch of a batch, in the order that moves the least.

A setting is one position of stop, fence and height at which several cuts are made: legs of two lengths share it, and
so do the pieces of a batch. The heads come first, within a head the heights, within a height the stops. Every notch
is cut the shop's own way where that can be; where not, the next way takes it and a finding says why.

    found = settings(layout, Shop(stop_reach="1.2 m"))
    print(found)                  # the notches; found.crosscuts and found.rips are the lengths and widths
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

import attrs

from ...findings import Finding, in_order
from ...layout.layout import Layout
from ...readings import Tape
from ...tables import Table
from .checks import setting_findings
from .notching import Notching, notchings
from .ordering import fewest_stops, least_stops
from .setting import Changes, Setting
from .shop import WAYS, Shop, Way, usual_shop
from .sizing import Sizing, crosscuts, rips, sizing_table
from .table import setting_table
from .ways import chisel, head, router
from .ways.operation import Cutting, Operation, Place, Tool, place

OF_WAY: Mapping[Way, Cutting] = {"dado head": head, "router": router, "saw and chisel": chisel}


@attrs.frozen(kw_only=True, repr=False)
class Settings:
    """All settings of a batch in order, what must be changed for them, and what the maker must know.

    notching are the settings for notches and laps; crosscuts and rips those for the lengths and widths of the cut list.
    """

    name: str
    tape: Tape
    shop: Shop
    notching: tuple[Setting, ...]
    changes: Changes
    crosscuts: tuple[Sizing, ...]
    rips: tuple[Sizing, ...]
    findings: tuple[Finding, ...]

    def table(self) -> Table:
        """The settings for notches and laps, one a line, with a test cut before the first of each head and height."""
        return setting_table(self.name, self.notching, self.changes, self.tape, self.shop)

    def crosscut_table(self) -> Table:
        """The stops for the lengths of the cut list."""
        return sizing_table(f"Lengths: {self.name}", self.crosscuts, self.tape)

    def rip_table(self) -> Table:
        """The fence for the widths of the cut list."""
        return sizing_table(f"Widths: {self.name}", self.rips, self.tape)

    def __str__(self) -> str:
        return self.table().text()

    def __repr__(self) -> str:
        return self.table().text()

    def _repr_html_(self) -> str:
        return self.table().html()


def settings(
    layout: Layout, shop: Shop | None = None, *, letter: str | None = None, from_top: Collection[str] = ()
) -> Settings:
    """Settings for the notches of a batch, or of one set, and for the sizes of its cut list.

    Parameters
    ----------
    layout : Layout
    shop : Shop, optional
        The maker's machines; a small shop with a table saw, a dado head and a router if not given.
    letter : str, optional
        Only this set.
    from_top : collection of str
        Levels whose notches are set with the top of the leg against the stop. All others go by the foot, so that legs
        of two lengths meet and a leg that is a hair long moves no notch.

    Raises
    ------
    AddressError
        If there is no such set or level.
    """
    tape = layout.frame.tape
    shop = shop or usual_shop(tape)
    own = {part.name for part in (layout.parts if letter is None else layout.set(letter).members)}
    notches = [notch for notch in notchings(layout, from_top=from_top) if notch.part.name in own]
    taken, refused = _ways(notches, shop, tape)
    made = [o for way in WAYS for o in OF_WAY[way].operations(taken[way], shop, tape)]
    ordered, changes = _ordered(made, tape)
    parts = [part for part in layout.parts if part.name in own and part.name not in layout.frame.finished]
    lengths, widths = crosscuts(parts, shop, tape), rips(parts, shop, tape)
    return Settings(
        name=layout.frame.name if letter is None else f"{layout.frame.name}, set {letter}",
        tape=tape,
        shop=shop,
        notching=ordered,
        changes=changes,
        crosscuts=lengths,
        rips=widths,
        findings=in_order(setting_findings(notches, refused, ordered, lengths, shop, tape, layout.frame.quantity)),
    )


def _ways(
    notches: Sequence[Notching], shop: Shop, tape: Tape
) -> tuple[dict[Way, list[Notching]], list[tuple[Notching, str, Way]]]:
    """Which way takes which notch, and why it is not the shop's own where it is another."""
    taken: dict[Way, list[Notching]] = {way: [] for way in WAYS}
    refused: list[tuple[Notching, str, Way]] = []
    order = (shop.way, *(way for way in shop.ways if way != shop.way))
    for notch in notches:
        whys = {way: OF_WAY[way].why_not(notch, shop, tape) for way in order}
        way = next(way for way in order if whys[way] is None)
        taken[way].append(notch)
        first = whys[order[0]]
        if first is not None:
            refused.append((notch, first, way))
    return taken, refused


def _ordered(made: Sequence[Operation], tape: Tape) -> tuple[tuple[Setting, ...], Changes]:
    """Operations gathered into settings, in the order of the fewest changes, numbered from 1."""
    found: list[Setting] = []
    total = Changes()
    for tool in dict.fromkeys(o.tool for o in made):
        own = [o for o in made if o.tool == tool]
        ladder = sorted({place(o.height, tape) for o in own})
        at: list[dict[tuple[object, ...], list[Operation]]] = [{} for _ in ladder]
        for o in own:
            at[ladder.index(place(o.height, tape))].setdefault(_key(o, tape), []).append(o)
        stops = [{key for key in group if key[0] == 0} for group in at]
        order = fewest_stops(stops, before=_before(own, ladder, tape))
        total = total.plus(tool, len(ladder), order.stops, least_stops(stops), exact=order.exact)
        for number, places in order.heights:
            lines = sorted(key for key in at[number] if key[0] == 1)
            for first, key in enumerate((*places, *lines)):
                found.append(Setting.of(at[number][key], number=len(found) + 1, new_height=first == 0))
    return tuple(_marked_changes(found, tape)), total


def _key(operation: Operation, tape: Tape) -> tuple[object, ...]:
    """What two operations share that are one setting: where the stop stands, or which lines they go by."""
    nowhere: Place = (-(10**9), 0)
    at = (operation.stop, operation.other)
    if at != (None, None):
        return (0, *(nowhere if x is None else place(x, tape) for x in at))
    return (1, tuple(place(x, tape) for x in operation.lines))


def _before(own: Sequence[Operation], ladder: Sequence[Place], tape: Tape) -> set[tuple[int, int]]:
    """Heights of which one goes before the other in some notch."""
    of: dict[int, list[int]] = {}
    for o in own:
        of.setdefault(id(o.notch), []).append(ladder.index(place(o.height, tape)))
    return {(low, high) for rungs in of.values() for low in rungs for high in rungs if low < high}


def _marked_changes(found: Sequence[Setting], tape: Tape) -> Iterator[Setting]:
    """The settings, each saying whether its stop is moved: it may stand from the height before."""
    stands: tuple[object, ...] | None = None
    tool: Tool | None = None
    for setting in found:
        key = _key(setting.operations[0], tape)
        moved = key[0] == 0 and (key != stands or setting.tool != tool)
        yield attrs.evolve(setting, new_tool=setting.tool != tool, new_stop=moved)
        stands, tool = (key if key[0] == 0 else stands) if setting.tool == tool or key[0] == 0 else None, setting.tool
