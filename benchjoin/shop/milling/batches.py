"""Batches: what goes through the planer together, and the blanks that it goes through as.

A batch is all that starts from one section and finishes at one thickness, so the planer is set once for all of it; the
thickest batch comes first and the planer only goes down. Within a batch, parts of one width share the fence. A part
that is shorter than the machines allow stays with its neighbours in one blank until it is cut to length, since a short
piece at the jointer is a hand in danger.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

import attrs

from ...frame.identity import plain
from ...frame.stock import Stock
from ...layout.done import to_make
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import TOUCH, steady
from ...trade.allowances import Milling
from ...trade.states import State


@attrs.frozen(kw_only=True)
class Item:
    """One part to be milled, or a spare leg or test piece that has no part. [mm]"""

    name: str
    mark: str
    length: float
    part: Part | None = None


@attrs.frozen(kw_only=True)
class RoughBlank:
    """Wood at its rough length as it goes through the machines: one item, or several short ones. [mm]

    padded where wood was added only to reach the least length.
    """

    items: tuple[Item, ...]
    length: float
    padded: bool = False


@attrs.frozen(kw_only=True)
class Line:
    """What finishes at one width in a batch; clean is the widest to expect, None where the start has no width. [mm]"""

    width: float
    clean: float | None
    items: tuple[Item, ...]
    blanks: tuple[RoughBlank, ...]

    @property
    def parts(self) -> tuple[Part, ...]:
        """Its parts, without spares and test pieces."""
        return tuple(item.part for item in self.items if item.part is not None)


@attrs.frozen(kw_only=True)
class Batch:
    """All that starts from one section and finishes at one thickness.

    start is None where nobody said from what it is milled, or where it is used as it is sold. clean is the
    thickest to expect. [mm]
    """

    number: int
    stock: Stock
    start: Stock | None
    thickness: float
    clean: float | None
    lines: tuple[Line, ...]

    @property
    def as_bought(self) -> bool:
        """Whether its faces are left as they are sold."""
        return self.start is None and self.stock.state not in (None, "milled")

    @property
    def known(self) -> bool:
        """Whether it is said from what it is taken."""
        return self.start is not None or self.as_bought

    def rough_section(self, practice: Milling) -> tuple[float, float]:
        """Thickness and width of rough stock that should clean up at its sizes. [mm]"""
        widest = max(line.width for line in self.lines)
        return self.thickness + practice.taken("rough"), widest + practice.taken_edges("rough")

    @property
    def state(self) -> State:
        """How its faces are to begin with; as sawn where nobody said."""
        return (self.source.state if self.known else None) or "rough"

    @property
    def source(self) -> Stock:
        """The section that it is taken from, as far as is known."""
        return self.start or self.stock


def make_batches(layout: Layout, practice: Milling, starts: Mapping[str, Stock]) -> tuple[Batch, ...]:
    """Batches of what is still to be made, the thickest first; starts are sections by the name of the stock milled."""
    groups: dict[tuple[Stock, float], list[Part]] = {}
    for part in to_make(layout.frame, layout.parts):
        source = starts.get(part.stock.name) or part.stock.start or part.stock
        groups.setdefault((source, steady(part.slot.thickness)[0]), []).append(part)
    ordered = sorted(groups.items(), key=lambda item: (-item[0][1], item[0][0].name))
    return tuple(_batch(number, parts, practice, starts) for number, (_, parts) in enumerate(ordered, 1))


def _batch(number: int, parts: Sequence[Part], practice: Milling, starts: Mapping[str, Stock]) -> Batch:
    stock = parts[0].stock
    batch = Batch(
        number=number,
        stock=stock,
        start=starts.get(stock.name) or stock.start,
        thickness=parts[0].slot.thickness,
        clean=None,
        lines=(),
    )
    if batch.start is not None:
        clean: float | None = max(0.0, batch.start.thickness - practice.taken(batch.state))
    else:
        clean = stock.thickness if batch.as_bought else None
    widths: dict[float, list[Part]] = {}
    for part in parts:
        widths.setdefault(steady(part.slot.width)[0], []).append(part)
    lines = tuple(
        _line(batch, same, same[0].slot.width, practice, test=number == 0)
        for number, (_, same) in enumerate(sorted(widths.items(), reverse=True))
    )
    return attrs.evolve(batch, clean=clean, lines=lines)


def _line(batch: Batch, parts: Sequence[Part], width: float, practice: Milling, *, test: bool) -> Line:
    items = [Item(name=part.name, mark=part.mark, length=part.length, part=part) for part in parts]
    spares: dict[str, float] = {}
    for part in parts:
        if part.slot.role.spare:
            spares[part.slot.role.spare] = max(part.length, spares.get(part.slot.role.spare, 0.0))
    for name, length in spares.items():
        items += [Item(name=name, mark="", length=length)] * practice.spare_legs
    if test:
        items += [Item(name="test piece", mark="", length=practice.test_length)] * practice.test_pieces
    clean = None
    if batch.source.width is not None and batch.known:
        clean = max(0.0, batch.source.width - (practice.taken_edges(batch.state) if batch.start else 0.0))
    return Line(width=width, clean=clean, items=tuple(items), blanks=tuple(rough_blanks(items, practice)))


def rough_blanks(items: Iterable[Item], practice: Milling) -> Iterator[RoughBlank]:
    """Blanks for some items: each a blank of its own, short ones together until none is below the least length."""
    ordered = sorted(items, key=lambda item: -item.length)
    short = [item for item in ordered if item.length < practice.least - TOUCH]
    for item in ordered[: len(ordered) - len(short)]:
        yield RoughBlank(items=(item,), length=item.length + 2 * practice.end)
    for group in _together(short, practice):
        needed = blank_length(group, practice)
        length = max(needed, practice.least)
        yield RoughBlank(items=tuple(group), length=length, padded=length > needed + TOUCH)


def blank_length(items: Sequence[Item], practice: Milling) -> float:
    """Length of a blank for some items: their lengths, a cut between two, an allowance at each end. [mm]"""
    return sum(item.length for item in items) + (len(items) - 1) * practice.parting + 2 * practice.end


def _together(short: Sequence[Item], practice: Milling) -> list[list[Item]]:
    """Short items in groups that are long enough; what is left over joins the last group."""
    groups: list[list[Item]] = []
    open_group: list[Item] = []
    for item in short:
        open_group.append(item)
        if blank_length(open_group, practice) >= practice.least:
            groups.append(open_group)
            open_group = []
    if open_group and groups:
        groups[-1] += open_group
    elif open_group:
        groups.append(open_group)
    return groups


def known_sizes(layout: Layout, part: Part) -> dict[str, float]:
    """What was measured on a part already, by field. [mm]"""
    found = layout.frame.measured
    return {**found.get(plain(part.identity), {}), **found.get(plain(part.name), {})}
