"""The board plan: which part comes out of which board, in which order it is cut, and what is left.

    board_plan(layout, boards).table()

It is made at two visits: of boards as bought, with what milling takes (``rough_list``); and of the blanks that really
came, with ``allow=Allowances()``, since nothing is allowed for twice. What is sized, marked or cut is left out.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Sequence
from typing import Literal

import attrs

from ...display import page
from ...errors import BoardError, typed
from ...findings import Finding
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ...layout.parts import Part
from ...phrases import counted, listed
from ...sources import STATICS
from ...tables import Table
from ...trade.allowances import usual_milling
from ..settings.shop import Shop, usual_shop
from .board import Board, boards_of
from .pattern import Cutter, Pattern, Sawing
from .rough import Allowances, Blank, RoughList, rough_list
from .solve import Job, Progress, Solved, solve

Aim = Literal["boards", "cost", "waste"]
AIMS = ("boards", "cost", "waste")
KEEP = 300.0
"""An offcut so long or longer is worth keeping. [mm] Common practice, no source."""


@attrs.frozen(eq=False, repr=False)
class Placed:
    """A part in its board: its blank, where that begins, and whether its datum end lies at the far end. [mm]

    part is None for a spare.
    """

    part: Part | None
    blank: Blank
    start: float
    low: float
    turned: bool

    @property
    def end(self) -> float:
        """Where it ends along the board. [mm]"""
        return self.start + self.blank.length

    @property
    def high(self) -> float:
        """Where it ends across the board. [mm]"""
        return self.low + self.blank.width

    @property
    def mark(self) -> str:
        """What is written on it."""
        return self.part.mark if self.part else "spare"


@attrs.frozen(eq=False, repr=False)
class Crosscut:
    """A section of a board: where it is crosscut, and the parts that are ripped from it. [mm]"""

    start: float
    length: float
    parts: tuple[Placed, ...]


@attrs.frozen(eq=False, repr=False)
class CutBoard:
    """One board as it is cut: its sections in order from the end that is measured from."""

    board: Board
    number: int
    sections: tuple[Crosscut, ...]

    @property
    def name(self) -> str:
        """Its name, with a number where there are several alike."""
        return self.board.name if self.board.count == 1 else f"{self.board.name} no. {self.number}"

    @property
    def parts(self) -> tuple[Placed, ...]:
        """All that comes of it."""
        return tuple(placed for section in self.sections for placed in section.parts)

    @property
    def used(self) -> float:
        """Area of its blanks as a share of its own."""
        area = sum(placed.blank.length * placed.blank.width for placed in self.parts)
        return area / (self.board.length * self.board.width)

    @property
    def offcut(self) -> float:
        """What is left at its far end. [mm]"""
        return self.board.length - max((s.start + s.length for s in self.sections), default=0.0)


@attrs.frozen(kw_only=True, eq=False, repr=False)
class BoardPlan:
    """Boards with their parts, what could not be placed, and how good it is: bound is the least that any plan costs.

    heuristic is what the plain rule came to. bound is None where nothing was proven.
    """

    layout: Layout
    rough: RoughList
    sawing: Sawing
    aim: Aim
    boards: tuple[CutBoard, ...]
    unplaced: tuple[Part | None, ...]
    cost: float
    heuristic: float
    bound: float | None
    stopped: bool
    findings: tuple[Finding, ...]

    @property
    def proven(self) -> bool:
        """Whether no plan is better."""
        return self.bound is not None and self.cost <= self.bound + 1e-6

    def where(self, part: str) -> CutBoard | None:
        """The board that a part comes of, by its name with the piece."""
        return next((b for b in self.boards if any(p.part and p.part.name == part for p in b.parts)), None)

    def table(self) -> Table:
        """One line a section: the board, where it is crosscut, what is ripped from it and which end is the datum."""
        read, unit = self.layout.frame.tape.read, self.layout.frame.tape.unit
        columns = ("Board", f"Crosscut at ({unit})", f"Length ({unit})", f"Rip ({unit})", "Marks", "Datum end")
        rows = []
        for own in self.boards:
            for section in own.sections:
                rips = ", ".join(read(p.blank.width) for p in section.parts)
                told = ", ".join(p.mark for p in section.parts)
                ends = {p.turned for p in section.parts}
                end = "either" if ends == {False} else "far" if ends == {True} else "as drawn"
                rows.append((own.name, read(section.start), read(section.length), rips, told, end))
        return Table(f"Board plan: {self.layout.frame.name}", columns, tuple(rows), (self.told(),), "lrrlll")

    def told(self) -> str:
        """How many boards, how much of them is used, and how good that is."""
        count = counted(len(self.boards), "board")
        used = sum(p.blank.length * p.blank.width for b in self.boards for p in b.parts)
        whole = sum(b.board.length * b.board.width for b in self.boards)
        share = f", {used / whole:.0%} of their face in blanks" if whole else ""
        if self.stopped:
            good = "stopped before its end: the best so far, and the same job may give another plan"
        elif self.bound is None:
            good = "how near to the best is not known"
        elif self.proven:
            good = "proven: no plan takes less"
        else:
            good = f"no plan takes less than {self.bound:g}"
        return f"{count}{share}; {good}. Kerf {self.layout.frame.tape.say(self.sawing.kerf)}."

    def _repr_html_(self) -> str:
        return page("boards_page", self)

    def __repr__(self) -> str:
        return f"<BoardPlan of {self.layout.frame.name}: {self.told()}>"


@of_a_layout
def board_plan(
    layout: Layout,
    boards: Iterable[Board],
    *,
    shop: Shop | None = None,
    allow: Allowances | None = None,
    aim: Aim = "boards",
    spares: int = 0,
    sawing: Sawing | None = None,
    before: BoardPlan | None = None,
    cut: Iterable[str] = (),
    progress: Progress | None = None,
) -> BoardPlan:
    """Plan which parts come out of which boards.

    Parameters
    ----------
    layout : Layout
    boards : iterable of Board
        Those that are there, or, with ``count=None``, those that can be bought.
    shop : Shop, optional
        Gives the kerf; a usual one of the design's tape if not given.
    allow : Allowances, optional
        What a blank has over its part; that of boards that are bought dressed, if not given.
    aim : "boards", "cost" or "waste"
        What is to be least: the number of boards, their price, or the wood in them.
    spares : int
        So many more of each kind of blank.
    sawing : Sawing, optional
        Kerf, trim of ends and of edges, where they are not those of the shop.
    before : BoardPlan, optional
        A plan that is held to: boards that are as they were keep all that comes of them.
    cut : iterable of str
        Names of parts that are cut already, in a plan before; they stay where they are, whatever was found since.
    progress : callable, optional
        Told what is done, and the cost so far; answers False to stop, and the best so far is given.

    Raises
    ------
    BoardError
        If there are no boards, two have one name, a price is wanted and missing, or a part that is cut is in no plan.

    Notes
    -----
    A crosscut comes first, then the rip: two-stage guillotine patterns. The bound is that of the linear programme,
    priced out.
    """
    own = _sound(boards, aim, spares)
    saw = sawing or _sawing(layout, shop)
    rough = rough_list(layout, allow)
    kept = _kept(before, own, set(cut)) if before is not None else []
    done = {placed.part.name for board in kept for placed in board.parts if placed.part is not None}
    strange = [name for name in cut if name not in done]
    if strange:
        raise BoardError(f"{typed(strange[0])} is in no plan before. Give before=, and names with the piece.")
    blanks = [b for b in (_without(blank, done) for blank in rough.blanks) if b.parts or spares]
    rest = _rest(own, kept)
    if not any(blank.parts for blank in blanks):
        blanks, spares = [], 0
    found, placed, left = _solved(blanks, rest, saw, aim, spares, progress)
    spent = sum(_price(b.board, aim) for b in kept)
    plan = BoardPlan(
        layout=layout,
        rough=rough,
        sawing=saw,
        aim=aim,
        boards=(*kept, *placed),
        unplaced=tuple(left),
        cost=sum(_price(b.board, aim) for b in (*kept, *placed)),
        heuristic=spent + (found.heuristic if found else 0.0),
        bound=None if found is None or found.bound is None else spent + found.bound,
        stopped=bool(found and found.stopped),
        findings=(),
    )
    return attrs.evolve(plan, findings=_findings(plan, own, blanks))


def _sound(boards: Iterable[Board], aim: str, spares: int) -> list[Board]:
    own = boards_of(boards)
    names = [board.name for board in own]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice:
        raise BoardError(f'Two boards are called "{twice}". Give each a name of its own.')
    if aim not in AIMS:
        raise BoardError(f"aim is {typed(aim)}. Choose {', '.join(AIMS)}.")
    if aim == "cost" and any(board.price is None for board in own):
        bare = next(board.name for board in own if board.price is None)
        raise BoardError(f'"{bare}" has no price, and the cost is to be least. Give each board its price.')
    if isinstance(spares, bool) or not isinstance(spares, int) or not 0 <= spares <= 100:
        raise BoardError(f"spares is {typed(spares)}. Give a whole number from 0 to 100.")
    return own


def _sawing(layout: Layout, shop: Shop | None) -> Sawing:
    tape = layout.frame.tape
    return Sawing(kerf=(shop or usual_shop(tape)).kerf, trim=usual_milling(tape).end)


def _price(board: Board, aim: str) -> float:
    if aim == "cost":
        return board.price or 0.0
    return 1.0 if aim == "boards" else board.length * board.width * board.thickness * 1e-6


def _without(blank: Blank, done: set[str]) -> Blank:
    return attrs.evolve(blank, parts=tuple(part for part in blank.parts if part.name not in done))


def _kept(before: BoardPlan, boards: Sequence[Board], cut: set[str]) -> list[CutBoard]:
    """Boards of a plan before that are as they were, with all of theirs; of others the parts that are cut."""
    now = {board.name: board for board in boards}
    found = []
    for own in before.boards:
        board = now.get(own.board.name)
        if board == own.board:
            found.append(own)
            continue
        sections = tuple(s for s in own.sections if any(p.part and p.part.name in cut for p in s.parts))
        if sections:
            found.append(attrs.evolve(own, board=board or own.board, sections=sections))
    return found


def _rest(boards: Sequence[Board], kept: Sequence[CutBoard]) -> list[Board]:
    """Boards that are still to be cut: those of which nothing is kept, and what is left of those that are begun."""
    used: dict[str, int] = {}
    for own in kept:
        used[own.board.name] = used.get(own.board.name, 0) + 1
    found = []
    for board in boards:
        taken = used.get(board.name, 0)
        if board.count is None:
            found.append(board)
        elif board.count > taken:
            found.append(attrs.evolve(board, count=board.count - taken))
    return found


def _solved(
    blanks: Sequence[Blank], boards: Sequence[Board], saw: Sawing, aim: str, spares: int, progress: Progress | None
) -> tuple[Solved | None, list[CutBoard], list[Part | None]]:
    demand = tuple(blank.count + spares for blank in blanks)
    if not boards or not blanks:
        return None, [], [part for blank in blanks for part in blank.parts]
    cutters = tuple(Cutter(n, board, tuple(blanks), saw) for n, board in enumerate(boards))
    costs = tuple(_price(board, aim) for board in boards)
    counts = tuple(board.count for board in boards)
    found = solve(Job(cutters=cutters, costs=costs, counts=counts, demand=demand), progress)
    waiting: list[deque[Part | None]] = [deque([*blank.parts, *[None] * spares]) for blank in blanks]
    numbers: dict[str, int] = {}
    placed = []
    for pattern, times in sorted(found.patterns, key=lambda own: (own[0].board, -sum(own[0].counts))):
        for _ in range(times):
            board = boards[pattern.board]
            numbers[board.name] = numbers.get(board.name, 0) + 1
            placed.append(_filled(pattern, board, numbers[board.name], blanks, waiting))
    return found, placed, [part for own in waiting for part in own]


def _filled(
    pattern: Pattern, board: Board, number: int, blanks: Sequence[Blank], waiting: Sequence[deque[Part | None]]
) -> CutBoard:
    """A board with the next parts of each kind in the places of a pattern."""
    sections = []
    for section in sorted(pattern.sections, key=lambda own: own.start):
        parts = tuple(
            Placed(waiting[s.kind].popleft(), blanks[s.kind], section.start, s.low, s.turned) for s in section.strips
        )
        sections.append(Crosscut(section.start, max(p.blank.length for p in parts), parts))
    return CutBoard(board, number, tuple(sections))


def _findings(plan: BoardPlan, boards: Sequence[Board], blanks: Sequence[Blank]) -> tuple[Finding, ...]:
    """Parts that went nowhere, and why."""
    say = plan.layout.frame.tape.say
    found = []
    for blank in blanks:
        left = [part for part in plan.unplaced if part is not None and part in blank.parts]
        if not left:
            continue
        cutters = [Cutter(n, board, (blank,), plan.sawing) for n, board in enumerate(boards)]
        size = f"{say(blank.length)} × {say(blank.width)} × {say(blank.thickness)} of {blank.stock}"
        if not any(cutter.fits[0] for cutter in cutters):
            why = f"no board is of that stock, thick and wide enough. Smallest that would do: {size}"
        elif not any(cutter.best([1.0]).value > 0 for cutter in cutters):
            trim = say(plan.sawing.trim)
            why = f"no board has a clear stretch for it. Smallest that would do: {size}, and {trim} to trim at each end"
        else:
            need = len(left)
            why = f"the boards that it goes into are full. {counted(need, 'more blank')} of {size} would do"
        names = listed([part.name for part in left[:3]])
        sentence = f"{names}{' and others' if len(left) > 3 else ''}: not placed, since {why}."
        found.append(
            Finding(
                severity="error",
                kind="not placed",
                where=blank.name,
                parts=tuple(part.identity for part in left),
                sentence=sentence,
                numbers={"length": blank.length, "width": blank.width, "count": float(len(left))},
                source=STATICS,
            )
        )
    return tuple(found)
