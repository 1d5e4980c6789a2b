"""Boards as they are cut: each to scale with its sections, strips, bad stretches and offcut, and the order of the cuts.

Crosscuts are read from the end that is measured from, over the board; the marks of what comes of a section stand below
it. Bad stretches are crossed out, offcuts worth keeping have their length. It reads in black only.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Unpack

import attrs

from ...drafting.lettering import shorten, text_width
from ...drafting.primitives import Line, Primitive, Text
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...layout.layout import Layout
from ...shop.boards.plan import KEEP, BoardPlan, CutBoard
from ...trade.cautions import cautions
from ..making.asked import Asked, OnPaper, ask
from ..making.flowing import Listed, flowing_sheets
from .table_figure import titled

TEXT = 2.5
ABOVE, BELOW = 9.5, 5.0
"""Room over a board for its name and the readings, and under it for the marks. [mm]"""
LEAST = 1.6
"""Strips and boards are drawn no narrower: thin ones would run together. [mm]"""


def board_sheets(plan: BoardPlan, **options: Unpack[OnPaper]) -> tuple[Sheet, ...]:
    """Sheets of a board plan: every board as it is cut, then the list of the cuts.

    Parameters
    ----------
    plan : BoardPlan
    **options
        paper and house, as `Asked` has them.

    Raises
    ------
    PaperError
        If a row does not fit the paper.
    """
    asked = attrs.evolve(ask(plan.layout, OnPaper, options), plan=plan)
    return flowing_sheets(asked, list(board_lists(plan.layout, asked)))


def board_lists(layout: Layout, asked: Asked) -> Iterator[Listed]:
    """The plan that goes with the sheets; nothing where there is none."""
    plan = asked.plan
    if plan is None:
        return
    table = attrs.evolve(plan.table(), title="Cuts, board by board")

    def figures(wide: float) -> Sequence[Figure]:
        return [*_drawn(plan, wide), *titled(table, wide, first=cautions("crosscut", "rip"))]

    yield Listed(name="board-plan", title="Board plan", figures=figures)


def _drawn(plan: BoardPlan, wide: float) -> Iterator[Figure]:
    """Each board, those that are cut alike once."""
    longest = max((own.board.length for own in plan.boards), default=1.0)
    scale = (wide - 4.0) / longest
    alike: dict[object, list[CutBoard]] = {}
    for own in plan.boards:
        cuts = tuple((s.start, s.length, tuple((p.mark, p.low, p.turned) for p in s.parts)) for s in own.sections)
        alike.setdefault((own.board.name, cuts), []).append(own)
    for same in alike.values():
        yield Figure(name=f"Board {same[0].name}", drawing=tuple(_board(plan, same, scale)), shows=_shows(same))


def _shows(same: Sequence[CutBoard]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(p.part.identity for own in same for p in own.parts if p.part is not None))


def _board(plan: BoardPlan, same: Sequence[CutBoard], scale: float) -> Iterator[Primitive]:
    own, tape = same[0], plan.layout.frame.tape
    board = own.board
    long, high = board.length * scale, max(board.width * scale, LEAST)
    up = -ABOVE - high
    many = f"{board.name}, {len(same)} alike" if len(same) > 1 else own.name
    size = f"{tape.say(board.length)} × {tape.read(board.width)} × {tape.read(board.thickness)}"
    yield Text((0.0, -TEXT), f"{many}: {size}, {own.used:.0%} used", TEXT, bold=True)
    yield Line(((0.0, up), (long, up), (long, up + high), (0.0, up + high)), "visible", closed=True)
    yield from _sections(own, tape.read, scale, up, high)
    yield from _defects(own, scale, up, high)
    if own.offcut >= KEEP:
        words = shorten(f"keep {tape.say(own.offcut)}", TEXT, own.offcut * scale - 1.0)
        yield Text((long - own.offcut * scale / 2, up - 4.0), words, TEXT, "middle")


def _sections(own: CutBoard, read: Callable[[float], str], scale: float, up: float, high: float) -> Iterator[Primitive]:
    for number, section in enumerate(own.sections):
        x0, x1 = section.start * scale, (section.start + section.length) * scale
        yield Line(((x0, up), (x0, up + high)))
        yield Line(((x1, up), (x1, up + high)))
        after = own.sections[number + 1].start * scale if number + 1 < len(own.sections) else own.board.length * scale
        told = read(section.start)
        if text_width(told, TEXT) < after - x0 - 1.0:
            yield Text((x0, up + high + 1.5), told, TEXT)
        for placed in section.parts:
            y = up + placed.high * scale
            if y < up + high - 0.3:
                yield Line(((x0, y), (x0 + placed.blank.length * scale, y)))
            if placed.blank.length < section.length - 1.0:
                x = x0 + placed.blank.length * scale
                yield Line(((x, up + placed.low * scale), (x, min(y, up + high))))
        marks = ", ".join(f"{p.mark}{'←' if p.turned else ''}" for p in section.parts)
        if words := shorten(marks, TEXT, x1 - x0 - 0.6):
            yield Text(((x0 + x1) / 2, up - 4.0), words, TEXT, "middle")


def _defects(own: CutBoard, scale: float, up: float, high: float) -> Iterator[Line]:
    """A cross over what is bad right across or at an edge."""
    for defect in own.board.defects:
        x0, x1 = defect.start * scale, defect.end * scale
        deep = high if defect.deep is None else max(defect.deep * scale, 0.8)
        low = up + high - deep if defect.where == "far edge" else up
        yield Line(((x0, low), (x1, low + deep)))
        yield Line(((x0, low + deep), (x1, low)))
        if defect.kind != "knot":
            yield Line(((x0, low), (x1, low), (x1, low + deep), (x0, low + deep)), closed=True)
