"""In the yard: the design laid out again with each stock on offer, side by side; the maker picks, the design follows.

in_the_yard(frame, {"thin": {"rail_stock": thin}, "thick": {"rail_stock": thick}}, boards).table()
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

import attrs

from ...errors import BenchjoinError, BoardError, LumberError
from ...frame.address import alter
from ...frame.frame import Frame, must_be_a_frame
from ...layout.lay_out import lay_out
from ...layout.layout import Layout
from ...tables import ShownAsTable, Table
from ..weights import POUND, weights
from .board import Board, boards_of
from .plan import BoardPlan, board_plan


@attrs.frozen
class Offer:
    """One choice: its name, the design with it, its layout and its plan; or why it does not go."""

    name: str
    frame: Frame | None
    layout: Layout | None
    plan: BoardPlan | None
    why: str = ""


@attrs.frozen(repr=False)
class Yard(ShownAsTable):
    """Choices side by side."""

    frame: Frame
    offers: tuple[Offer, ...]

    def pick(self, name: str) -> Frame:
        """The design with a choice.

        Raises
        ------
        BoardError
            If there is no such choice, or it cannot be built.
        """
        for offer in self.offers:
            if offer.name == name:
                if offer.frame is None:
                    raise BoardError(f'"{name}" cannot be built: {offer.why}')
                return offer.frame
        raise BoardError(f'There is no choice "{name}". There are {", ".join(offer.name for offer in self.offers)}.')

    def table(self) -> Table:
        """Thickness of rails, depth of notches, boards, weight and price of each choice."""
        tape, inch = self.frame.tape, self.frame.tape.unit == "in"
        rows: list[tuple[str, ...]] = []
        for offer in self.offers:
            if offer.layout is None or offer.plan is None:
                rows.append((offer.name, "–", "–", "–", "", "", offer.why))
                continue
            rails = sorted({round(p.thickness, 3) for p in offer.layout.piece(1) if p.slot.role.word == "rail"})
            deep = sorted({round(n.depth, 3) for leg in offer.layout.legs() for n in leg.notches})
            prices = [own.board.price for own in offer.plan.boards]
            price = "" if None in prices else f"{sum(p for p in prices if p is not None):.2f}"
            told = "not all parts are placed" if offer.plan.unplaced else offer.why
            sizes = (
                " to ".join(dict.fromkeys((tape.read(s[0]), tape.read(s[-1])))) if s else "–" for s in (rails, deep)
            )
            count, heavy = str(len(offer.plan.boards)), _weight(offer.layout, inch)
            rows.append((offer.name, *sizes, count, heavy, price, told))
        columns = (
            *("Choice", f"Rails thick ({tape.unit})", f"Notches deep ({tape.unit})", "Boards"),
            *(f"Weight ({'lb' if inch else 'kg'})", "Price", ""),
        )
        return Table(f"In the yard: {self.frame.name}", columns, tuple(rows), (), "lrrrrrl")

    def __repr__(self) -> str:
        return f"<Yard of {self.frame.name}: {len(self.offers)} choices>"


def in_the_yard(
    frame: Frame, choices: Mapping[str, Mapping[str, Any]], boards: Iterable[Board], **options: Any
) -> Yard:
    """Lay a design out and plan its boards with each choice.

    Parameters
    ----------
    frame : Frame
    choices : mapping of str to mapping
        By the name of a choice, new values by their addresses, such as ``{"rail_stock": stock}``.
    boards : iterable of Board
        What is on offer; a board that names a stock is for the choice with that stock.
    **options
        As for `board_plan`.

    Raises
    ------
    BoardError
        If no choice is given.
    """
    must_be_a_frame(frame, "in_the_yard")
    own = boards_of(boards)
    if not choices or not isinstance(choices, Mapping):
        raise BoardError('There is no choice. Write {"larch 1x6": {"rail_stock": stock}}.')
    return Yard(frame, tuple(_offer(frame, name, changes, own, options) for name, changes in choices.items()))


def _offer(
    frame: Frame, name: str, changes: Mapping[str, Any], boards: list[Board], options: Mapping[str, Any]
) -> Offer:
    try:
        new = alter(frame, changes)
        layout = lay_out(new)
        plan = board_plan(layout, boards, **options)
    except BenchjoinError as error:
        return Offer(name, None, None, None, str(error).splitlines()[-1].strip())
    why = layout.errors()[0].sentence if layout.errors() else ""
    return Offer(name, new, layout, plan, why)


def _weight(layout: Layout, inch: bool) -> str:
    try:
        heavy = weights(layout).piece(1)
    except LumberError:
        return ""
    return f"{heavy / POUND:.0f}" if inch else f"{heavy:.1f}"
