"""Settings: how the saw, the router or the gauge is set for every notch of a batch, in the order that is quickest.

A setting is one position of stop, fence and height at which several cuts are made: legs of two lengths share it, and
so do the pieces of a batch. Which heads are stacked, and in which order all of it is done, is weighed in the minutes of
the shop, changes against cuts. Every notch is cut the shop's own way where that can be; where not, the next way takes
it and a finding says why.

    found = settings(layout, Shop(stop_reach="1.2 m"))
    print(found)                  # the notches; found.crosscuts and found.rips are the lengths and widths
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

import attrs

from ...findings import Finding, in_order
from ...layout.done import state_of, to_make
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ...readings import Tape
from ...tables import ShownAsTable, Table
from ..done import done_notes
from .checks import setting_findings
from .choosing import chosen
from .gathering import Gathered
from .notching import Notching, notchings
from .setting import Changes, Setting
from .shop import WAYS, Shop, Way, usual_shop
from .sizing import Sizing, crosscuts, rips, sizing_table
from .table import setting_table
from .ways import chisel, head, router
from .ways.operation import Cutting

OF_WAY: Mapping[Way, Cutting] = {"dado head": head, "router": router, "saw and chisel": chisel}


@attrs.frozen(kw_only=True, repr=False)
class Settings(ShownAsTable):
    """All settings of a batch in order, what must be changed for them, and what the maker must know.

    notching are the settings for notches and laps; crosscuts and rips those for the lengths and widths of the cut list.
    sized and cut are notes on what is done: parts that need no stop for their length, and parts whose notches are cut.
    """

    name: str
    tape: Tape
    shop: Shop
    notching: tuple[Setting, ...]
    changes: Changes
    crosscuts: tuple[Sizing, ...]
    rips: tuple[Sizing, ...]
    findings: tuple[Finding, ...]
    sized: tuple[str, ...] = ()
    cut: tuple[str, ...] = ()

    @property
    def cuts(self) -> int:
        """Every pass at every depth, for all notches and laps."""
        return sum(setting.cuts for setting in self.notching)

    @property
    def minutes(self) -> float:
        """All changes and all cuts for the notches and laps, as long as the shop takes for them. [min]"""
        return sum(setting.set_up + setting.cutting for setting in self.notching)

    def table(self) -> Table:
        """The settings for notches and laps, one a line, with a test cut before the first of each head and height."""
        return _noted(setting_table(self.name, self.notching, self.changes, self.tape, self.shop), self.cut)

    def crosscut_table(self) -> Table:
        """The stops for the lengths of the cut list."""
        return _noted(sizing_table(f"Lengths: {self.name}", self.crosscuts, self.tape, self.shop.minutes), self.sized)

    def rip_table(self) -> Table:
        """The fence for the widths of the cut list."""
        return _noted(sizing_table(f"Widths: {self.name}", self.rips, self.tape, self.shop.minutes), self.sized)

    def __str__(self) -> str:
        return self.table().text()

    def __repr__(self) -> str:
        return self.table().text()


@of_a_layout
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
    own = {part.name: part for part in (layout.parts if letter is None else layout.set(letter).members)}
    notches = [notch for notch in notchings(layout, from_top=from_top) if notch.part.name in own]
    taken, refused = _ways(notches, shop, tape)
    found = [chosen(OF_WAY[way], taken[way], shop, tape) for way in WAYS]
    ordered, changes = _in_a_row([tool for tools, _ in found for tool in tools], tried=all(tried for _, tried in found))
    parts = [part for part in to_make(layout.frame, layout.parts) if part.name in own]
    notched = [part for part in own.values() if part.cuts and state_of(layout.frame, part) == "cut"]
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
        sized=done_notes(layout.frame, own.values()),
        cut=done_notes(layout.frame, notched),
    )


def _noted(table: Table, notes: Sequence[str]) -> Table:
    return attrs.evolve(table, notes=(*table.notes, *notes))


def _ways(
    notches: Sequence[Notching], shop: Shop, tape: Tape
) -> tuple[dict[Way, list[Notching]], list[tuple[Notching, str, Way]]]:
    """Which way takes which notch, and why it is not the shop's own where it is another.

    What goes right through, as where a board is cut round a leg, is sawn out by hand in any shop.
    """
    taken: dict[Way, list[Notching]] = {way: [] for way in WAYS}
    refused: list[tuple[Notching, str, Way]] = []
    order = (shop.way, *(way for way in shop.ways if way != shop.way))
    for notch in notches:
        if notch.cut.through:
            taken["saw and chisel"].append(notch)
            continue
        whys = {way: OF_WAY[way].why_not(notch, shop, tape) for way in order}
        way = next(way for way in order if whys[way] is None)
        taken[way].append(notch)
        first = whys[order[0]]
        if first is not None:
            refused.append((notch, first, way))
    return taken, refused


def _in_a_row(tools: Sequence[Gathered], *, tried: bool) -> tuple[tuple[Setting, ...], Changes]:
    """The settings of all tools numbered from 1, and how often everything is set."""
    row = (setting for tool in tools for setting in tool.settings)
    found = tuple(attrs.evolve(setting, number=number) for number, setting in enumerate(row, 1))
    changes = Changes(
        tools=len(tools),
        heights=sum(setting.new_height for setting in found),
        stops=sum(setting.new_stop for setting in found),
        least=sum(tool.least for tool in tools),
        exact=tried and all(tool.exact for tool in tools),
    )
    return found, changes
