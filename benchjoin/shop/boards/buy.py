"""The buy list: how many boards of which length, with spares for what is found in them, and the ways to buy compared.

    buy_list(layout, yard).table()

A yard is boards with an open count: what is on offer, in its standard lengths.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import Any

import attrs

from ...errors import BoardError, typed
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ...tables import ShownAsTable, Table
from ...trade.species import Species, species
from ..fasteners.fasten import Fastening
from ..settings.shop import Shop
from ..supplies import COATS, COVERAGE, Supplies, supplies
from ..weights import POUND, weight_of
from .board import Board, boards_of
from .plan import Aim, BoardPlan, board_plan
from .rough import Allowances
from .solve import Progress

SPARE = 0.12
"""Share of boards that are bought over, for knots and splits: softwood takes 10 to 15 of a hundred. Common practice, no
source."""


@attrs.frozen(kw_only=True)
class Bought:
    """Boards of one kind to buy: how many the plan takes, and how many with the spares."""

    board: Board
    planned: int
    count: int

    @property
    def volume(self) -> float:
        """Of all of them, as they are measured. [m³]"""
        return self.count * self.board.length * self.board.width * self.board.thickness * 1e-9

    @property
    def feet(self) -> float:
        """Board feet of all of them, by the nominal section, or else by the sizes as given, full inches up."""
        full = (float(max(math.ceil(size / 25.4 - 1e-9), 1)) for size in (self.board.thickness, self.board.width))
        thick, wide = self.board.inches or full
        return self.count * thick * wide * self.board.length / 304.8 / 12

    @property
    def price(self) -> float | None:
        """Of all of them, if it is known."""
        return None if self.board.price is None else self.board.price * self.count


@attrs.frozen(kw_only=True)
class Purchase:
    """One way to buy: what it is, the plan that it is for, and its boards."""

    way: str
    plan: BoardPlan
    boards: tuple[Bought, ...]

    @property
    def count(self) -> int:
        """Boards in all."""
        return sum(own.count for own in self.boards)

    @property
    def volume(self) -> float:
        """Wood in all. [m³]"""
        return sum(own.volume for own in self.boards)

    @property
    def price(self) -> float | None:
        """Price of all, if each is known."""
        prices = [own.price for own in self.boards]
        return None if None in prices else sum(price for price in prices if price is not None)


@attrs.frozen(kw_only=True, repr=False)
class BuyList(ShownAsTable):
    """The best way to buy first, then the others that do; spare is the share that is bought over."""

    layout: Layout
    spare: float
    density: float | None
    ways: tuple[Purchase, ...]
    fastening: Fastening | None = None

    def supplies(self, *, coats: int = COATS, coverage: float = COVERAGE) -> Supplies:
        """Fasteners, glue and finish, which join the boards; as for `shop.supplies`."""
        return supplies(self.layout, self.fastening, coats=coats, coverage=coverage)

    @property
    def best(self) -> Purchase:
        """What is bought unless the maker chooses another way."""
        return self.ways[0]

    def table(self) -> Table:
        """The boards of the best way."""
        tape, inch = self.layout.frame.tape, self.layout.frame.tape.unit == "in"
        unit = "Board feet" if inch else "m³"
        rows = []
        for own in self.best.boards:
            board = own.board
            size = f"{tape.read(board.thickness)} × {tape.read(board.width)}"
            wood = f"{own.feet:.1f}" if inch else f"{own.volume:.3f}"
            weight = "" if self.density is None else self._weight(own.volume)
            price = "" if own.price is None else f"{own.price:.2f}"
            counts = (str(own.count), str(own.planned))
            rows.append((board.name, *counts, size, tape.read(board.length), wood, weight, price))
        columns = (
            *("Board", "Buy", "Planned", f"Section ({tape.unit})", f"Length ({tape.unit})", unit),
            *(f"Weight ({'lb' if inch else 'kg'})", "Price"),
        )
        over = f"{self.spare:.0%} over for knots and splits, whole boards up: an assumption, change it."
        notes = (over, self.best.plan.told())
        return Table(f"Buy list: {self.layout.frame.name}", columns, tuple(rows), notes, "lrrrrrrr")

    def compared(self) -> Table:
        """The ways to buy, side by side."""
        rows = []
        for way in self.ways:
            price = "" if way.price is None else f"{way.price:.2f}"
            rows.append((way.way, str(way.count), f"{way.volume:.3f}", price, f"{_used(way.plan):.0%}"))
        columns = ("Way", "Boards", "m³", "Price", "Used")
        return Table(f"Ways to buy: {self.layout.frame.name}", columns, tuple(rows), (), "lrrrr")

    def _weight(self, volume: float) -> str:
        heavy = volume * (self.density or 0.0)
        return f"{heavy / POUND:.0f}" if self.layout.frame.tape.unit == "in" else f"{heavy:.0f}"

    def __repr__(self) -> str:
        return f"<BuyList of {self.layout.frame.name}: {self.best.count} boards, {self.best.way}>"


@of_a_layout
def buy_list(
    layout: Layout,
    yard: Iterable[Board],
    *,
    spare: float = SPARE,
    aim: Aim = "waste",
    wood: str | Species | None = None,
    moisture: float = 19.0,
    shop: Shop | None = None,
    allow: Allowances | None = None,
    progress: Progress | None = None,
    fastening: Fastening | None = None,
) -> BuyList:
    """What to buy for a layout.

    Parameters
    ----------
    layout : Layout
    yard : iterable of Board
        What is on offer, each with an open count, or so many as there are.
    spare : float
        Share of boards that are bought over.
    aim : "boards", "cost" or "waste"
        What is to be least.
    wood : str or Species, optional
        The wood, for the weight as bought.
    moisture : float
        Its moisture content as bought; 19, if not given, the most that dry lumber holds. [%]
    shop, allow, progress
        As for `board_plan`.
    fastening : Fastening, optional
        How it is fastened, for what is bought beside the boards (`supplies`).

    Raises
    ------
    BoardError
        If the share is none, or nothing on offer makes all parts.
    """
    if isinstance(spare, bool) or not isinstance(spare, int | float) or not 0.0 <= spare <= 1.0:
        raise BoardError(f"spare is {typed(spare)}. Give a share from 0 to 1, such as 0.12.")
    offer = boards_of(yard)
    more: dict[str, Any] = {"aim": aim, "shop": shop, "allow": allow, "progress": progress}
    ways = [("as it comes out best", offer), *_others(offer)]
    found = [_purchase(way, board_plan(layout, own, **more), spare) for way, own in ways if own]
    whole = [own for own in found if not own.plan.unplaced]
    if not whole:
        first = found[0].plan.findings[0]
        raise BoardError(f"Nothing on offer makes all parts. {first.sentence}", findings=found[0].plan.findings)
    kind = species(wood) if isinstance(wood, str) else wood
    density = None if kind is None else weight_of(kind, moisture)
    return BuyList(layout=layout, spare=spare, density=density, ways=_distinct(whole), fastening=fastening)


def _others(offer: Sequence[Board]) -> Iterable[tuple[str, list[Board]]]:
    """Of every section the longest alone, and the shortest that is there."""
    sections: dict[object, list[Board]] = {}
    for board in offer:
        sections.setdefault((board.stock, round(board.thickness, 3), round(board.width, 3)), []).append(board)
    if any(len(own) > 1 for own in sections.values()):
        yield "the longest of each", [max(own, key=lambda b: b.length) for own in sections.values()]
        yield "the shortest of each", [min(own, key=lambda b: b.length) for own in sections.values()]


def _purchase(way: str, plan: BoardPlan, spare: float) -> Purchase:
    counts: dict[Board, int] = {}
    for own in plan.boards:
        counts[own.board] = counts.get(own.board, 0) + 1
    boards = tuple(
        Bought(board=board, planned=count, count=math.ceil(count * (1 + spare) - 1e-9))
        for board, count in counts.items()
    )
    return Purchase(way=way, plan=plan, boards=boards)


def _distinct(ways: Sequence[Purchase]) -> tuple[Purchase, ...]:
    """Ways that buy the same once."""
    found: dict[object, Purchase] = {}
    for way in ways:
        found.setdefault(tuple((own.board.name, own.count) for own in way.boards), way)
    return tuple(found.values())


def _used(plan: BoardPlan) -> float:
    whole = sum(own.board.length * own.board.width for own in plan.boards)
    return sum(own.used * own.board.length * own.board.width for own in plan.boards) / whole if whole else 0.0
