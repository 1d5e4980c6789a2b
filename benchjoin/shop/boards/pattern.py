"""Patterns: what may be cut from one board: sections crosscut one after the other, each ripped to strips side by side.

A section is as long as its longest strip. Between two sections and between two strips goes a kerf. Strips begin where
their section begins. Where a board has knots, sections begin on a fine grid, so that each knot falls between them or
where a part allows it.

         ┌──────────────────────┬───────────┐
         │ strip                │ strip     │
    trim ├────────────────┬─────┼───────────┤ trim
         │ strip          │     │ strip     │
         └────────────────┴─────┴───────────┘
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cached_property
from typing import Any

import attrs
import numpy as np
import numpy.typing as npt

from ...lengths import TOUCH
from .board import Board, stretches
from .fill import best_fill
from .rough import Blank

Floats = npt.NDArray[Any]
GRID = 10.0
"""Sections of a board with knots begin at multiples of this past the beginning of a clear stretch. [mm]"""
TOO_THICK = 8.0
"""No more is planed off a board that is not named for a stock. [mm] Common practice, no source."""


@attrs.frozen(kw_only=True)
class Sawing:
    """The loss at the saw: its kerf, what is trimmed off each end of a board, and off its edges together. [mm]"""

    kerf: float = 3.2
    trim: float = 20.0
    edges: float = 0.0


@attrs.frozen
class Strip:
    """A blank in a section: which, how far its near edge is from that of the board, and whether it lies end for end."""

    kind: int
    low: float
    turned: bool = False


@attrs.frozen
class Section:
    """A crosscut piece of a board: where it begins, how long it is, and its strips. [mm]"""

    start: float
    length: float
    strips: tuple[Strip, ...]


@attrs.frozen
class Pattern:
    """What is cut from one board, by its number: sections in order, and how many blanks of each kind come of it."""

    board: int
    sections: tuple[Section, ...]
    counts: tuple[int, ...]


@attrs.frozen
class Best:
    """A pattern with its value, and whether nothing was left unlooked at."""

    value: float
    pattern: Pattern
    exact: bool


@attrs.frozen
class _Side:
    """Strips side by side, and what they are worth."""

    value: float
    strips: tuple[int, ...]
    exact: bool


@attrs.frozen
class _Chosen:
    """A section that is cut at a place of the grid: its strips, which of them lie end for end, what comes after it."""

    length: float
    strips: tuple[int, ...]
    near: float
    turned: tuple[int, ...]
    after: int


@attrs.frozen(eq=False, slots=False)
class Cutter:
    """One board as it can be cut into kinds of blanks; fits tells the kinds that are of its stock and thin enough."""

    number: int
    board: Board
    blanks: tuple[Blank, ...]
    sawing: Sawing

    @cached_property
    def fits(self) -> tuple[bool, ...]:
        """Which kinds may come of this board at all."""
        return tuple(self._fits(blank) for blank in self.blanks)

    def _fits(self, blank: Blank) -> bool:
        own = self.board
        if own.stock is not None and own.stock != blank.stock:
            return False
        spare = own.thickness - blank.thickness
        thin = spare >= -TOUCH and (own.stock is not None or spare <= TOO_THICK)
        return thin and blank.width <= self.width + TOUCH

    @property
    def width(self) -> float:
        """What is left between its jointed edges. [mm]"""
        return self.board.width - self.sawing.edges

    @cached_property
    def rooms(self) -> tuple[tuple[float, float], ...]:
        """Clear stretches within the trimmed ends. [mm]"""
        trim, length = self.sawing.trim, self.board.length
        ends = [(0.0, trim), (length - trim, length)] if trim else []
        bad = [(d.start, d.end) for d in self.board.defects if d.kind != "knot" and d.where == "across"]
        return stretches(length, [*ends, *bad])

    @cached_property
    def lengths(self) -> tuple[float, ...]:
        """Lengths that a section may have, longest first. [mm]"""
        found = {round(b.length, 6) for b, fits in zip(self.blanks, self.fits, strict=True) if fits}
        return tuple(sorted(found, reverse=True))

    @property
    def plain(self) -> bool:
        """Whether only whole stretches are missing, so that it does not matter where in them a section begins."""
        return all(d.kind != "knot" and d.where == "across" for d in self.board.defects)

    def best(self, values: Sequence[float], *, relaxed: bool = False) -> Best:
        """The pattern of the largest value; relaxed looks past knots and bad edges, for a bound."""
        if self.plain or relaxed:
            return self._in_stretches(values)
        return self._on_the_grid(values)

    def within(self, values: Sequence[float], limits: Sequence[int]) -> Pattern:
        """A pattern of a large value that makes no more of a kind than is wanted: a good one, not the best.

        It takes one section after the other, each out of the best filling with what is still wanted.
        """
        if not self.plain:
            return trimmed(
                self._on_the_grid([v * (n > 0) for v, n in zip(values, limits, strict=True)]).pattern, limits
            )
        left, kerf, sections = list(limits), self.sawing.kerf, list[Section]()
        for start, end in self.rooms:
            at = start
            while True:
                open_ = {round(b.length, 6) for b, n in zip(self.blanks, left, strict=True) if n > 0}
                lengths = [length for length in self.lengths if length in open_ and length <= end - at + TOUCH]
                sides = [self._wanted(values, length, left) for length in lengths]
                worth = [sum(values[n] for n in side) for side in sides]
                found = best_fill(end - at + kerf, [length + kerf for length in lengths], worth)
                chosen = [n for n, count in enumerate(found.counts) if count]
                if not chosen:
                    break
                best = max(chosen, key=lambda n: (worth[n] / lengths[n], -n))
                for n in sides[best]:
                    left[n] -= 1
                sections.append(self._section(at, lengths[best], sides[best], 0.0))
                at += sections[-1].length + kerf
        return self._pattern(sections)

    def _wanted(self, values: Sequence[float], length: float, left: Sequence[int]) -> tuple[int, ...]:
        """Strips side by side, none more often than it is wanted."""
        spare, width, strips = list(left), self.width, list[int]()
        while True:
            kinds = [n for n, fits in enumerate(self.fits) if fits and spare[n] > 0]
            found = self._strips(values, length, kinds, width).strips
            if all(found.count(n) <= spare[n] for n in found):
                return (*strips, *found)
            n = max(found, key=lambda n: (values[n], -n))
            spare[n] -= 1
            strips.append(n)
            width -= self.blanks[n].width + self.sawing.kerf

    def _strips(self, values: Sequence[float], length: float, kinds: Sequence[int], width: float) -> _Side:
        """The best strips side by side in a section."""
        own = [n for n in kinds if self.blanks[n].length <= length + TOUCH]
        kerf = self.sawing.kerf
        sizes = [self.blanks[n].width + kerf for n in own]
        found = best_fill(width + kerf, sizes, [values[n] for n in own])
        strips = tuple(n for n, count in zip(own, found.counts, strict=True) for _ in range(count))
        return _Side(found.value, strips, found.exact)

    def _in_stretches(self, values: Sequence[float]) -> Best:
        kinds = [n for n, fits in enumerate(self.fits) if fits]
        sides = [self._strips(values, length, kinds, self.width) for length in self.lengths]
        kerf, total, exact, sections = self.sawing.kerf, 0.0, all(side.exact for side in sides), list[Section]()
        for start, end in self.rooms:
            found = best_fill(end - start + kerf, [n + kerf for n in self.lengths], [side.value for side in sides])
            total, exact, at = total + found.value, exact and found.exact, start
            for length, side, count in zip(self.lengths, sides, found.counts, strict=True):
                for _ in range(count):
                    sections.append(self._section(at, length, side.strips, 0.0))
                    at += length + kerf
        return Best(total, self._pattern(sections), exact)

    def _section(
        self, start: float, length: float, kinds: Sequence[int], low: float, turned: Sequence[int] = ()
    ) -> Section:
        strips, at = [], low + self.sawing.edges / 2
        for n in sorted(kinds, key=lambda n: (-self.blanks[n].width, n)):
            strips.append(Strip(n, at, n in turned))
            at += self.blanks[n].width + self.sawing.kerf
        longest = max((self.blanks[n].length for n in kinds), default=length)
        return Section(start, longest, tuple(strips))

    def _pattern(self, sections: Sequence[Section]) -> Pattern:
        counts = [0] * len(self.blanks)
        for section in sections:
            for strip in section.strips:
                counts[strip.kind] += 1
        return Pattern(self.number, tuple(sections), tuple(counts))

    @cached_property
    def _starts(self) -> Floats:
        """Places where a section may begin. [mm]"""
        found = [np.arange(start, end, GRID) for start, end in self.rooms]
        return np.unique(np.concatenate(found)) if found else np.zeros(0)

    @cached_property
    def _ends(self) -> Floats:
        """For each start the end of its stretch. [mm]"""
        rooms = np.array(self.rooms)
        ends: Floats = rooms[np.searchsorted(rooms[:, 0], self._starts, side="right") - 1, 1]
        return ends

    @cached_property
    def _allowed(self) -> Floats:
        """For each start and kind: 0 if it may not lie there, 1 as it is, 2 end for end."""
        found = np.zeros((len(self._starts), len(self.blanks)), dtype=np.int8)
        knots = [(d.start, d.end) for d in self.board.defects if d.kind == "knot"]
        for n, blank in enumerate(self.blanks):
            if not self.fits[n]:
                continue
            goes = self._starts + blank.length <= self._ends + TOUCH
            for way, sound in ((2, blank.turned), (1, blank.sound)):
                clear = goes.copy()
                for low, high in sound:
                    for start, end in knots:
                        clear &= ~((self._starts + low < end - TOUCH) & (self._starts + high > start + TOUCH))
                found[clear, n] = way
        return found

    @cached_property
    def _edges(self) -> list[tuple[float, float, float, float]]:
        """Bad edges: from, to, how deep from the near edge, from the far edge. [mm]"""
        return [
            (d.start, d.end, *((d.deep or 0.0, 0.0) if d.where == "near edge" else (0.0, d.deep or 0.0)))
            for d in self.board.defects
            if d.kind != "knot" and d.where != "across"
        ]

    def _on_the_grid(self, values: Sequence[float]) -> Best:
        starts, kerf = self._starts, self.sawing.kerf
        count = len(starts)
        worth = np.zeros(count + 1)
        chosen: list[_Chosen | None] = [None] * (count + 1)
        known: dict[object, _Side] = {}
        for i in range(count - 1, -1, -1):
            worth[i] = worth[i + 1]
            allowed = self._allowed[i]
            kinds = [n for n in np.flatnonzero(allowed).tolist() if values[n] > 1e-12]
            if not kinds:
                continue
            for length in {round(self.blanks[n].length, 6) for n in kinds}:
                near, far = self._spoilt(starts[i], starts[i] + length)
                own = tuple(n for n in kinds if self.blanks[n].length <= length + TOUCH)
                key = (own, length, near, far)
                if key not in known:
                    known[key] = self._strips(values, length, own, self.width - near - far)
                value, strips = known[key].value, known[key].strips
                after = int(np.searchsorted(starts, starts[i] + length + kerf - TOUCH))
                if value + worth[after] > worth[i] + 1e-12:
                    worth[i] = value + worth[after]
                    turned = tuple(n for n in strips if allowed[n] == 2)
                    chosen[i] = _Chosen(length, strips, near, turned, after)
        return Best(float(worth[0]) if count else 0.0, self._pattern(list(self._walk(worth, chosen))), True)

    def _walk(self, worth: Floats, chosen: Sequence[_Chosen | None]) -> Iterator[Section]:
        """The sections that make up the worth of the whole board, in order."""
        i = 0
        while i < len(self._starts):
            own = chosen[i]
            if own is None or worth[i] <= worth[i + 1] + 1e-12:
                i += 1
                continue
            yield self._section(float(self._starts[i]), own.length, own.strips, own.near, own.turned)
            i = own.after

    def _spoilt(self, start: float, end: float) -> tuple[float, float]:
        """How much of both edges is bad between two places. [mm]"""
        met = [(near, far) for a, b, near, far in self._edges if a < end - TOUCH and b > start + TOUCH]
        return max((near for near, _ in met), default=0.0), max((far for _, far in met), default=0.0)


def trimmed(pattern: Pattern, left: Sequence[int]) -> Pattern:
    """A pattern without what is no longer wanted."""
    spare = list(left)
    sections = []
    for section in pattern.sections:
        strips = []
        for strip in section.strips:
            if spare[strip.kind] > 0:
                spare[strip.kind] -= 1
                strips.append(strip)
        if strips:
            sections.append(attrs.evolve(section, strips=tuple(strips)))
    counts = tuple(before - after for before, after in zip(left, spare, strict=True))
    return attrs.evolve(pattern, sections=tuple(sections), counts=counts)
