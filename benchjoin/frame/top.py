"""Tops: boards in sections along the length of a level, each fixed or lifting out, as the maker describes them.

>>> from benchjoin.frame.boards import Boards
>>> from benchjoin.frame.stock import Stock
>>> slat = Stock("larch slat", thickness="7/8 in", width="2 1/2 in")
>>> close, spaced = Boards(slat, run="across", gap="1/8 in"), Boards(slat, run="across", gap="1/2 in")
>>> [section.key for section in Top([close, Panel("16 in", boards=spaced, covers="bin"), close]).parts()]
['section 1', 'panel 1', 'section 2']
"""

from __future__ import annotations

import functools
from collections.abc import Mapping, Sequence
from typing import Any, Literal

import attrs

from ..errors import BenchjoinError, typed
from ..runs import larger
from .boards import STOCK, Boards
from .clear import Clear
from .doors import Door, Fault, a_kind, a_length, a_name, kept, one_of, past_doors, refuse
from .edges import Arc
from .limits import few
from .stock import Stock

LIFT = 3.0
"""What a section keeps off its neighbours, so that it lifts out when boards have swollen. [mm] Common practice."""
SCOOP = 20.0
"""How deep a grip is, for the fingers. [mm] Common practice, no source."""
EASE = 2.0
"""What it keeps off what stops it along its boards, for lifting and grit. [mm] Common practice."""
BEARING = 10.0
"""How much of each end of what lifts out rests on wood at least, wherever it was pushed. [mm] Common practice."""


@attrs.frozen
class Panel:
    """A section that lifts out: boards on cleats, which keep it in its place between what carries it. [mm]

    Without a width it shares what is left. cleats is the stock of the two battens under the boards, laid flat; that of
    the boards if not given. clear is kept off the sections beside it, ease off what stops it along its boards, and
    between cleats and what they stand inside. grip is the length of a finger scoop in both its outer edges. covers
    names the bin that comes out through its opening; name is what it is called.
    """

    width: float | None = attrs.field(default=None, converter=a_length("width", optional=True))
    boards: Boards = attrs.field(kw_only=True, converter=a_kind(Boards, "boards", 'Boards(slat, run="across", gap=3)'))
    cleats: Stock | None = attrs.field(
        kw_only=True, default=None, converter=a_kind(Stock, "cleats", STOCK, optional=True)
    )
    clear: float = attrs.field(kw_only=True, default=LIFT, converter=a_length("clear", zero=True))
    ease: float = attrs.field(kw_only=True, default=EASE, converter=a_length("ease", zero=True))
    grip: float | None = attrs.field(kw_only=True, default=None, converter=a_length("grip", optional=True))
    covers: str | None = attrs.field(kw_only=True, default=None, converter=a_name("covers", optional=True))
    name: str | None = attrs.field(kw_only=True, default=None, converter=a_name("name", barred="./", optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Panel", self._faults)

    def _faults(self) -> list[Fault]:
        if self.cleats is not None and self.cleats.width is None:
            return [Fault("cleats", f'"{self.cleats.name}" has no width. Give it one: {STOCK}.')]
        return [Fault("boards", what) for what in _not_lying(self.boards)]

    @property
    def cleat(self) -> Stock:
        """The stock of its cleats."""
        return self.cleats or self.boards.stock

    @property
    def scoop(self) -> Arc | None:
        """The hollow in its outer edges, for the fingers."""
        return None if self.grip is None else past_doors(Arc(SCOOP), length=self.grip)


def _not_lying(boards: Boards) -> list[str]:
    return ["a top lies, and these run up. Write run='across' or run='along'."] if boards.run == "up" else []


def _sections(value: Any) -> Any:
    if isinstance(value, str) or not hasattr(value, "__iter__"):
        raise BenchjoinError(f"sections is {typed(value)}. Write a list of Boards(…), Panel(…) and Clear(…).")
    found = few("sections", value)
    for place, item in enumerate(found):
        if not isinstance(item, Boards | Panel | Clear):
            raise BenchjoinError(f'sections[{place}] is {typed(item)}. Write Boards(slat, run="across", gap=3).')
    if not any(isinstance(item, Boards | Panel) for item in found):
        raise BenchjoinError('sections holds no boards. Write Boards(slat, run="across", gap=3) or Panel(boards=…).')
    return found


_a_row: Door[Sequence[Boards | Panel | Clear], tuple[Boards | Panel | Clear, ...]] = kept("sections", _sections)


@attrs.frozen
class Top:
    """Sections in a run along the length: boards that are fixed, panels that lift out, clears that stay open. [mm]

    A section without a width shares what is left. front, back, left and right are how far the top reaches over what it
    covers; less than nothing stops short. supports is the stock of a bearer on edge under each joint of two sections;
    doubled gives each section one of its own. bearing is how much of each end of what lifts out rests on wood at
    least. name is what it is called in addresses.
    """

    sections: tuple[Boards | Panel | Clear, ...] = attrs.field(converter=_a_row)
    front: float = attrs.field(kw_only=True, default=0.0, converter=a_length("front", signed=True))
    back: float = attrs.field(kw_only=True, default=0.0, converter=a_length("back", signed=True))
    left: float = attrs.field(kw_only=True, default=0.0, converter=a_length("left", signed=True))
    right: float = attrs.field(kw_only=True, default=0.0, converter=a_length("right", signed=True))
    supports: Stock | None = attrs.field(
        kw_only=True, default=None, converter=a_kind(Stock, "supports", STOCK, optional=True)
    )
    doubled: bool = attrs.field(kw_only=True, default=False, converter=one_of("doubled", True, False))
    bearing: float = attrs.field(kw_only=True, default=BEARING, converter=a_length("bearing", zero=True))
    name: str | None = attrs.field(kw_only=True, default=None, converter=a_name("name", barred="./", optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Top", self._faults)

    def _faults(self) -> list[Fault]:
        faults = [
            Fault("sections", what) for item in self.sections if isinstance(item, Boards) for what in _not_lying(item)
        ]
        if self.supports is not None and self.supports.width is None:
            faults.append(Fault("supports", f'"{self.supports.name}" has no width. Give it one: {STOCK}.'))
        keys = [section.key for section in self.parts()]
        twice = next((key for key in keys if keys.count(key) > 1), None)
        if twice:
            faults.append(Fault("sections", f'two sections are called "{twice}". Give each a name of its own.'))
        return faults

    @property
    def key(self) -> str:
        """What addresses call it."""
        return self.name or "deck"

    def parts(self) -> tuple[Section, ...]:
        """Its sections with their names, in order from the left."""
        numbers = {Boards: 0, Panel: 0, Clear: 0}
        words = {Boards: "section", Panel: "panel", Clear: "clear"}
        found = []
        for place, item in enumerate(self.sections):
            numbers[type(item)] += 1
            key = getattr(item, "name", None) or f"{words[type(item)]} {numbers[type(item)]}"
            found.append(Section(self, place, item, key))
        return tuple(found)

    def with_counts(self, counts: Mapping[str, int]) -> Top:
        """The same top with the number of boards written down in some of its sections, by the key of their run."""
        return attrs.evolve(self, sections=[section.with_count(counts) for section in self.parts()])


@attrs.frozen(eq=False)
class Section:
    """One section of a top: its place from the left, what it is of, what it is called."""

    top: Top
    place: int
    of: Boards | Panel | Clear
    key: str

    @property
    def panel(self) -> Panel | None:
        """The panel that it is, if it lifts out."""
        return self.of if isinstance(self.of, Panel) else None

    @property
    def boards(self) -> Boards | None:
        """Its boards, as described."""
        return self.of.boards if isinstance(self.of, Panel) else self.of if isinstance(self.of, Boards) else None

    @property
    def run(self) -> Boards | None:
        """Its boards as a run of the level: with a name of its own, and the reach of the top."""
        boards = self.boards
        if boards is None:
            return None
        front, back = boards.front + self.top.front, boards.back + self.top.back
        clear = larger(self.panel.clear, self.panel.ease) if self.panel and boards.clear is None else boards.clear
        scoop = self.panel.scoop if self.panel else None
        edges = {"edge": boards.edge or scoop, "far_edge": boards.far_edge or scoop}
        return past_doors(boards, name=f"{self.key} board", front=front, back=back, clear=clear, **edges)

    @property
    def width(self) -> float | None:
        """How wide it is; None where it shares what is left. [mm]"""
        return self.of.size if isinstance(self.of, Clear) else self.of.width

    @property
    def share(self) -> float:
        """Its share of what is left."""
        return self.of.weight if isinstance(self.of, Clear) else 1.0

    def group(self, level: str) -> str:
        """What its parts are together, where they lift out together."""
        return f"{level}/{self.key}" if self.panel else ""

    def clear_to(self, other: Section) -> float:
        """What is left between it and a section beside it. [mm]"""
        if isinstance(self.of, Clear) or isinstance(other.of, Clear):
            return 0.0
        panels = [section.panel.clear for section in (self, other) if section.panel]
        gaps = [section.boards.gap or 0.0 for section in (self, other) if section.boards]
        return functools.reduce(larger, panels or gaps)

    def with_count(self, counts: Mapping[str, int]) -> Boards | Panel | Clear:
        """What it is of, with the number of its boards where it is given by the key of their run."""
        count = counts.get(self.run.key) if self.run else None
        if count is None:
            return self.of
        if isinstance(self.of, Panel):
            return attrs.evolve(self.of, boards=attrs.evolve(self.of.boards, count=count))
        return attrs.evolve(self.of, count=count) if isinstance(self.of, Boards) else self.of


@attrs.frozen(eq=False)
class Cleats:
    """The cleats of a panel, as a run of its level. [mm]"""

    stock: Stock
    section: Section
    key: str
    run: Literal["along", "across"]
    solved = False
    count = 2

    @property
    def called(self) -> str:
        """What one of them is called."""
        return self.key


@attrs.frozen(eq=False)
class Supports:
    """The bearers under the joints of a top, as a run of its level. [mm]"""

    stock: Stock
    top: Top
    key: str
    solved = False
    run = "across"

    @property
    def called(self) -> str:
        """What one of them is called."""
        return self.key
