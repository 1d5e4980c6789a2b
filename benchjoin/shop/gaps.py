"""Gaps over the seasons: what is left between boards that lie side by side, as laid, at their wettest and driest.

A slatted shelf that is laid tight in a dry shop closes when it takes up water, and pushes itself off its screws. Wood
that comes wet does the opposite: it only shrinks, and every gap opens. Whoever spaces boards asks here.

    board_gaps(layout, "foot shelf", laid=12, wettest=18, driest=9).table()
    gap_to_lay("2 1/2 in", "western larch", laid=12, wettest=18)
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

import attrs

from ..errors import AddressError, MoistureError, typed
from ..findings import Finding
from ..frame.top import Section
from ..layout.layout import Layout
from ..layout.parts import Part
from ..lengths import TOUCH, Length, mm
from ..phrases import counted, listed
from ..readings import Tape
from ..solids import Box
from ..tables import Table
from ..trade.practice import LEAST_GAP
from ..trade.species import Species, species
from ..wood.gaps import gaps_after, least_gaps
from ..wood.movement import LARGER
from .seasons import FINE
from .swelling import Grain, board_change, which_rule
from .weights import wood_of

WETTEST_LAID = 250.0
"""No wood holds more water than this when it is laid. [% of the dry wood]"""


@attrs.frozen(kw_only=True)
class Gap:
    """One gap between two boards: as laid, at the wettest, at the driest, and the least to lay. [mm]"""

    near: Part
    far: Part
    laid: float
    wettest: float
    driest: float
    to_lay: float


@attrs.frozen(kw_only=True, repr=False)
class BoardGaps:
    """The gaps of a row of boards through the year, at three moisture contents: laid, wettest, driest. [%]

    least is what is asked for at the wettest. [mm] rules tells of woods that two rules give different movements for.
    """

    layout: Layout
    contents: tuple[float, float, float]
    least: float
    gaps: tuple[Gap, ...]
    findings: tuple[Finding, ...]
    rules: tuple[str, ...] = ()

    @property
    def to_lay(self) -> float:
        """The gap that keeps the least between any two of them at their wettest. [mm]"""
        return max(gap.to_lay for gap in self.gaps)

    def table(self) -> Table:
        """One line for the gaps that read alike."""
        tape = FINE[self.layout.frame.tape.unit]
        laid, wettest, driest = self.contents
        columns = (
            "Between",
            "Gaps",
            f"Laid, {laid:g} % ({tape.unit})",
            f"Wettest, {wettest:g} %",
            f"Driest, {driest:g} %",
            f"To lay for {tape.read(self.least)}",
        )
        alike: dict[tuple[str, ...], list[Gap]] = {}
        for gap in self.gaps:
            alike.setdefault((*map(tape.read, (gap.laid, gap.wettest, gap.driest, gap.to_lay)),), []).append(gap)
        rows = tuple((_between(own), str(len(own)), *read) for read, own in alike.items())
        notes = (
            "Boards fixed about the middle of their width; below zero they press on each other. Averages of clear "
            f"wood: {LARGER}. How much is left at the wettest is common practice, no source.",
            *self.rules,
        )
        return Table(f"Gaps through the year: {self.layout.frame.name}", columns, rows, notes, "lrrrrr")

    def __repr__(self) -> str:
        found = counted(len(self.findings), "finding")
        return f"<BoardGaps of {self.layout.frame.name}: {counted(len(self.gaps), 'gap')}, {found}>"


def board_gaps(
    layout: Layout,
    parts: Iterable[Part] | str,
    *,
    laid: float,
    wettest: float,
    driest: float,
    least: Length = LEAST_GAP,
    wood: str | Species | None = None,
    grain: Grain = "unknown",
) -> BoardGaps:
    """What the year does to the gaps between parts of a layout that lie side by side.

    Parameters
    ----------
    layout : Layout
    parts : iterable of Part or str
        The boards, in any order, of one piece or of several; their widths lie along one axis. Or the name of the level
        that carries them, for the first run of boards on it.
    laid, wettest, driest : float
        Moisture contents of the boards when they are laid, and at the ends of the year. Those that are laid may be
        wetter or drier than they will ever be. [%]
    least : float or str
        What is to be left at the wettest; 2 mm if not given, which is common practice. [mm]
    wood : str or Species, optional
        The wood of all stock that does not say its own.
    grain : "flat", "quarter" or "unknown"
        How the boards are sawn; the larger movement where nobody knows.

    Raises
    ------
    AddressError
        If no two of the parts lie side by side, no boards lie on the level, or there is no such grain.
    LumberError
        If a stock does not say its species and none is given, or the tables have none of that name.
    MoistureError
        If the driest is wetter than the wettest, or a content is none.
    """
    _sound(laid, wettest, driest)
    otherwise = species(wood) if isinstance(wood, str) else wood
    keep, fine = mm(least, zero=True, what="least"), FINE[layout.frame.tape.unit]
    boards = _boards_on(layout, parts) if isinstance(parts, str) else parts
    gaps = tuple(
        _through(near, far, otherwise, (laid, wettest, driest), keep, grain) for near, far in _side_by_side(boards)
    )
    if not gaps:
        raise AddressError("No two of these parts lie side by side. Give boards of one row, for example slats.")
    contents = (laid, wettest, driest)
    findings = (*_closing(gaps, contents, keep, fine), *_laid_wet(gaps, contents, fine))
    rules = which_rule(wood_of(part.slot, otherwise) for gap in gaps for part in (gap.near, gap.far))
    return BoardGaps(layout=layout, contents=contents, least=keep, gaps=gaps, findings=findings, rules=rules)


def _boards_on(layout: Layout, level: str) -> list[Part]:
    boards = [part for part in layout.parts if part.slot.run and part.slot.role.surface]
    found = [part for part in boards if part.level == level]
    if not found:
        levels = listed([f'"{name}"' for name in dict.fromkeys(part.level for part in boards)])
        known = f"Boards lie on {levels}." if levels else "No level carries boards."
        raise AddressError(f"No boards lie on {typed(level)}. {known}", address=level)
    first = found[0].slot
    if isinstance(first.part_of, Section):  # a top is one row, its panels and all
        top = first.part_of.top
        return [p for p in found if getattr(p.slot.part_of, "top", None) is top and p.slot.axes == first.axes]
    return [part for part in found if part.slot.run == first.run]


def gap_to_lay(
    width: Length,
    wood: str | Species,
    *,
    laid: float,
    wettest: float,
    least: Length = LEAST_GAP,
    grain: Grain = "unknown",
) -> float:
    """The gap to lay between boards of one width, so that the least is left at their wettest. [mm]

    What can be asked for is as for `board_gaps`, and so is what it raises.
    """
    _sound(laid, wettest, 0.0)
    own = species(wood) if isinstance(wood, str) else wood
    moved = board_change(mm(width, what="width"), own, laid, wettest, grain)
    return float(least_gaps([moved, moved], mm(least, zero=True, what="least"))[0])


def _sound(laid: float, wettest: float, driest: float) -> None:
    if not (0 <= driest <= wettest <= 100 and 0 <= laid <= WETTEST_LAID):
        raise MoistureError(
            f"laid {laid:g} %, wettest {wettest:g} %, driest {driest:g} %: the year runs from the driest to the "
            "wettest, in percent of the dry wood, and what is laid has 0 to 250 %."
        )


def _side_by_side(parts: Iterable[Part]) -> Iterator[tuple[Part, Part]]:
    """Each board with the next one beside it, rising along the axis of their widths; piece by piece."""
    boards = list(parts)
    axes = {part.slot.axes[1] for part in boards}
    if len(axes) > 1:
        raise AddressError("These parts do not lie alike: their widths run along different axes. Give one row.")
    for axis in axes:
        rising = sorted(boards, key=lambda part: (part.piece, part.blank.low[axis]))
        for place, near in enumerate(rising):
            beyond = (far for far in rising[place + 1 :] if far.piece == near.piece)
            far = next((far for far in beyond if _beside(near.blank, far.blank, axis)), None)
            if far is not None:
                yield near, far


def _beside(near: Box, far: Box, axis: int) -> bool:
    """Whether one box lies beyond another along an axis, and beside it along both others."""
    others = (n for n in range(3) if n != axis)
    level = all(min(near.high[n], far.high[n]) - max(near.low[n], far.low[n]) > TOUCH for n in others)
    return level and far.low[axis] >= near.high[axis] - TOUCH


def _through(
    near: Part, far: Part, otherwise: Species | None, contents: tuple[float, float, float], least: float, grain: Grain
) -> Gap:
    axis, (laid, wettest, driest) = near.slot.axes[1], contents
    gap = far.blank.low[axis] - near.blank.high[axis]

    def moved(content: float) -> list[float]:
        return [board_change(b.width, wood_of(b.slot, otherwise), laid, content, grain) for b in (near, far)]

    return Gap(
        near=near,
        far=far,
        laid=gap,
        wettest=float(gaps_after([gap], moved(wettest))[0]),
        driest=float(gaps_after([gap], moved(driest))[0]),
        to_lay=float(least_gaps(moved(wettest), least)[0]),
    )


def _closing(gaps: Sequence[Gap], contents: tuple[float, float, float], least: float, fine: Tape) -> Iterator[Finding]:
    """Gaps that are less than asked for at the wettest, told of the one that closes most."""
    short = [gap for gap in gaps if gap.wettest < least - fine.hair]
    if not short:
        return
    worst, (laid, wettest, _) = min(short, key=lambda gap: gap.wettest), contents
    name, to_lay = worst.near.identity, max(gap.to_lay for gap in short)
    presses = worst.wettest < -fine.hair
    then = (
        f"they press on each other by {fine.say(-worst.wettest)}" if presses else f"{fine.say(worst.wettest)} is left"
    )
    others = f"; so it is with {counted(len(short) - 1, 'more gap')}" if len(short) > 1 else ""
    yield Finding(
        severity="warning",
        kind="gap closes when wet",
        where=name,
        parts=tuple(dict.fromkeys(part.identity for gap in short for part in (gap.near, gap.far))),
        sentence=f"{name} and {worst.far.identity} are laid {fine.say(worst.laid)} apart at {laid:g} %; "
        f"at {wettest:g} % {then}, and {fine.say(least)} was asked for{others}. Lay them {fine.say(to_lay)} apart, "
        "take narrower or quarter-sawn boards, or lay them when they are wetter.",
        numbers={"laid": worst.laid, "wettest": worst.wettest, "least": least, "to lay": to_lay},
        source=LARGER,
    )


def _laid_wet(gaps: Sequence[Gap], contents: tuple[float, float, float], fine: Tape) -> Iterator[Finding]:
    """Boards that are laid wetter than they will be again: what their gaps open to."""
    laid, wettest, driest = contents
    if laid <= wettest:
        return
    most = max(gaps, key=lambda gap: gap.driest - gap.laid)
    yield Finding(
        severity="note",
        kind="laid wet",
        where=most.near.identity,
        parts=tuple(dict.fromkeys(part.identity for gap in gaps for part in (gap.near, gap.far))),
        sentence=f"{most.near.identity} and {most.far.identity} are laid {fine.say(most.laid)} apart at {laid:g} % and "
        f"only shrink: {fine.say(most.wettest)} is left at {wettest:g} %, {fine.say(most.driest)} at {driest:g} %. Lay "
        "them closer, or dry them first.",
        numbers={"laid": most.laid, "wettest": most.wettest, "driest": most.driest},
        source=LARGER,
    )


def _between(gaps: Sequence[Gap]) -> str:
    return f"{gaps[0].near.identity} … {gaps[-1].far.identity}"
