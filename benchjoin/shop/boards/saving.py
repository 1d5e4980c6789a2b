"""What would save a board: the plan made anew with a size a little smaller or larger, and where the number drops.

what_saves(layout.frame, yard, {"length": ["55 in", "56 in", "57 in", "58 in"]}).table()
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

import attrs

from ...borrowed import borrowed
from ...errors import BenchjoinError, BoardError
from ...frame.address import alter, value
from ...frame.frame import Frame, must_be_a_frame
from ...layout.lay_out import lay_out
from ...lengths import signed_mm
from ...tables import Table
from .board import Board, boards_of
from .plan import BoardPlan, board_plan


@attrs.frozen
class Tried:
    """One value at an address: the plan that it takes, or why there is none."""

    address: str
    value: Any
    plan: BoardPlan | None
    why: str = ""

    @property
    def boards(self) -> int | None:
        """How many boards it takes; None where it cannot be built or not all parts are placed."""
        return None if self.plan is None or self.plan.unplaced else len(self.plan.boards)


@attrs.frozen(repr=False)
class Savings:
    """Values that were tried, address by address, and how many boards the design takes as it is."""

    frame: Frame
    now: BoardPlan
    tried: tuple[Tried, ...]

    @property
    def saves(self) -> tuple[Tried, ...]:
        """Values with which fewer boards do."""
        return tuple(one for one in self.tried if one.boards is not None and one.boards < len(self.now.boards))

    def table(self) -> Table:
        """One line a value: the boards, the difference, and whether no plan takes less."""
        rows = []
        for one in self.tried:
            told = _told(self.frame, one.value)
            if one.boards is None:
                rows.append((one.address, told, "–", "", one.why or "not all parts are placed"))
                continue
            more = one.boards - len(self.now.boards)
            proven = "proven" if one.plan and one.plan.proven else ""
            rows.append((one.address, told, str(one.boards), f"{more:+d}" if more else "", proven))
        title = f"What would save a board: {self.frame.name}, {len(self.now.boards)} now"
        return Table(title, ("Value", "At", "Boards", "More or less", ""), tuple(rows), (), "lrrrl")

    def plot(self, address: str | None = None, ax: Any = None) -> Any:
        """Boards over the values of an address, the first one's if none is named, as axes of matplotlib.

        Raises
        ------
        MissingLibrary
            If matplotlib is not installed.
        """
        plt = borrowed("matplotlib.pyplot", "Plots")
        own = plt.subplots(layout="constrained")[1] if ax is None else ax
        name = address or self.tried[0].address
        found = [(signed_mm(one.value), one.boards or 0) for one in self.tried if one.address == name and one.boards]
        own.step([at for at, _ in found], [count for _, count in found], where="mid", marker="o")
        own.axhline(len(self.now.boards), linestyle="--")
        own.set_xlabel(f"{name} [mm]")
        own.set_ylabel("boards")
        return own

    def __repr__(self) -> str:
        return f"<Savings of {self.frame.name}: {len(self.saves)} of {len(self.tried)} values save a board>"


def what_saves(frame: Frame, boards: Iterable[Board], over: Mapping[str, Sequence[Any]], **options: Any) -> Savings:
    """Plan boards for a design as it is, and with other values at some addresses, one at a time.

    Parameters
    ----------
    frame : Frame
    boards : iterable of Board
    over : mapping of str to sequence
        Values to try, by address.
    **options
        As for `board_plan`.

    Raises
    ------
    AddressError
        If an address reaches nothing.
    BoardError
        If no values are given.
    """
    must_be_a_frame(frame, "what_saves")
    own = boards_of(boards)
    if not over or not isinstance(over, Mapping) or not any(len(values) for values in over.values()):
        raise BoardError('There is nothing to try. Write values by their addresses: {"length": ["56 in", "57 in"]}.')
    for address in over:
        value(frame, address)
    tried = tuple(_tried(frame, own, address, one, options) for address, values in over.items() for one in values)
    return Savings(frame, board_plan(lay_out(frame), own, **options), tried)


def _tried(frame: Frame, boards: list[Board], address: str, one: Any, options: Mapping[str, Any]) -> Tried:
    try:
        layout = lay_out(alter(frame, {address: one}))
    except BenchjoinError as error:
        return Tried(address, one, None, str(error).splitlines()[-1].strip())
    if layout.errors():
        return Tried(address, one, None, layout.errors()[0].sentence)
    return Tried(address, one, board_plan(layout, boards, **options))


def _told(frame: Frame, one: Any) -> str:
    try:
        return frame.tape.read(signed_mm(one))
    except BenchjoinError:
        return str(one)
