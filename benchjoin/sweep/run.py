"""sweep: a thousand variants of one design through layout and checks, by the same code that lays out one.

    swept = sweep(bench, {"length": ["48 in", "57 in", "66 in"], "bench.front.width": ["3 7/16 in", "3 1/2 in"]})
    swept["marks"]["front left leg", "bench/front rail", "bottom"]        # an array of 3 × 2 heights, mm

Variants are worked out in blocks. In a block all numbers are arrays; where its variants disagree about a question it is
taken apart (blocks.py says how). Every address may vary: numbers inside blocks, anything else as designs of their own.
A variant that cannot be built is NaN and named in `reasons`.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from functools import cache
from typing import Any

import attrs
import numpy as np

from ..errors import AddressError, BenchjoinError, LumberError, typed
from ..frame.address import alter, paths_to
from ..frame.frame import Frame
from ..layout.parts import Part
from ..ranges import Range
from ..shop.weights import weight_of
from ..trade.species import species
from .axes import NUMBER, Axis, axis
from .blocks import Block, grid, listed
from .frames import one_piece, with_numbers
from .many import OneByOne, Split, many
from .outputs import OUTPUTS, Item, Output
from .swept import Arrays, Column, Swept
from .variant import Variant, built_variant

Density = float | Mapping[str, float] | None


HEAVIEST = 2000.0
"""No wood, however wet, is heavier. [kg/m³]"""
VARIANTS = 5_000_000
"""More variants than these are not held in memory."""


def sweep(
    frame: Frame,
    over: Mapping[str, Sequence[Any] | Range],
    want: Sequence[str | Output] = ("marks", "lengths"),
    *,
    together: bool = False,
    piece: int = 1,
    density: Density = None,
) -> Swept:
    """Work out many variants of a frame.

    Parameters
    ----------
    frame : Frame
    over : mapping of str to sequence or Range
        Values by address. All are combined with all, an axis each; or, if they go together, the lists are walked side
        by side along one axis, "variant".
    want : sequence of str or Output
        Any of "marks", "places", "counts", "lengths", "volumes", "weights", "findings", or an Output of your own.
    together : bool
        Whether the lists are walked side by side.
    piece : int
        Which piece of the batch, as if it were made alone.
    density : float or mapping of str to float, optional
        For weights: of all wood, or by the name of the stock; of its species at 12 % moisture if not given. [kg/m³]

    Raises
    ------
    AddressError
        If an address reaches nothing, two reach the same value, or there is no such output or piece.
    LumberError
        If weights are wanted of a stock with neither density nor species.
    BenchjoinError
        If lists that go together differ in length, one is empty, or there are too many variants.
    """
    if piece not in range(1, frame.quantity + 1):
        raise AddressError(f"There is no piece {typed(piece)}. The quantity is {frame.quantity}.", address=piece)
    wanted = [_output(name) for name in want]
    paths_to(frame, over)
    axes = [axis(frame, address, values) for address, values in over.items()]
    if not axes or (together and len({len(own.given) for own in axes}) > 1):
        raise BenchjoinError("Give each address its values, and lists that go together as many each.")
    count = len(axes[0].given) if together else math.prod(len(own.given) for own in axes)
    if count > VARIANTS:
        raise BenchjoinError(
            f"{count} variants are asked for, and {VARIANTS} are the most. Take wider steps, or parts."
        )
    run = _Run(frame, piece, axes, wanted, together, _densities(frame, density, wanted))
    for block in listed(axes) if together else grid(axes):
        run.work_out(block)
    return run.result()


def _output(name: str | Output) -> Output:
    found = name if isinstance(name, Output) else OUTPUTS.get(name)
    if found is None:
        raise AddressError(f"There is no output {typed(name)}. Choose from {', '.join(OUTPUTS)}.", address=name)
    return found


def _densities(frame: Frame, given: Density, wanted: Sequence[Output]) -> Callable[[Part], float]:
    """Density of the wood of any part, by the name of its stock or else by its species. [kg/m³]"""
    by_name = given if isinstance(given, Mapping) else {}
    for own in by_name.values() if isinstance(given, Mapping) else () if given is None else (given,):
        if isinstance(own, bool) or not isinstance(own, int | float) or not 0 < own < HEAVIEST:
            raise LumberError(f"density holds {typed(own)}. Write kilograms in a cubic metre: 450.")
    of_all = given if isinstance(given, int | float) else None
    for slot in frame.slots():
        stock = slot.stock
        known = of_all is not None or stock.name in by_name or stock.species is not None
        if not known and any(output.name == "weights" for output in wanted):
            told = f'Stock "{stock.name}" has neither density nor species. Write density={{"{stock.name}": 450}}.'
            raise LumberError(told)

    @cache
    def of_wood(name: str, kind: str | None) -> float:
        given_here = by_name.get(name) if of_all is None else of_all
        if given_here is not None:
            return given_here
        return weight_of(species(kind), 12.0) if kind else float("nan")

    return lambda part: of_wood(part.stock.name, part.stock.species)


@attrs.define
class _Run:
    """A sweep while it goes on: what the blocks have given so far."""

    frame: Frame
    piece: int
    axes: Sequence[Axis]
    wanted: Sequence[Output]
    together: bool
    density: Callable[[Part], float]
    columns: dict[str, dict[tuple[str, ...], Column]] = attrs.field(factory=dict)
    lost: dict[str, Column] = attrs.field(factory=dict)
    one_by_one: int = 0

    @property
    def shape(self) -> tuple[int, ...]:
        counts = [len(own.given) for own in self.axes]
        return tuple(counts[:1] if self.together else counts)

    def work_out(self, block: Block) -> None:
        """All variants of a block, taken apart as often as they disagree."""
        waiting = [block]
        while waiting:
            block = waiting.pop()
            try:
                self._keep(block, self._items(self._variant(block)))
            except Split as split:
                waiting += block.apart(split.answers)
            except OneByOne:
                waiting_alone = list(block.each())
                self.one_by_one += len(waiting_alone)
                for one in waiting_alone:
                    self._alone(one)
            except BenchjoinError as error:
                wrong = np.asarray(getattr(error, "pieces", True))
                if wrong.all():
                    self._lose(block, str(error))
                else:
                    waiting += block.halves(wrong)

    def _variant(self, block: Block) -> Variant:
        words, numbers = self._values(block)
        designed = alter(self.frame, words) if words else self.frame
        seen = with_numbers(designed, {path: many(found) for path, found in numbers.items()})
        return built_variant(one_piece(seen, self.piece), self.density, single=False)

    def _alone(self, block: Block) -> None:
        """One variant, from its description."""
        words, numbers = self._values(block)
        by_path = {own.path: own.address for own in self.axes}
        changes = {by_path[path]: float(found.flat[0]) for path, found in numbers.items()}
        try:
            frame = one_piece(alter(self.frame, {**words, **changes}), self.piece)
            self._keep(block, self._items(built_variant(frame, self.density, single=True)))
        except BenchjoinError as error:
            self._lose(block, str(error))

    def _values(self, block: Block) -> tuple[dict[str, Any], dict[tuple[Any, ...], Any]]:
        """What is no number by address, and the numbers of the block by path."""
        words: dict[str, Any] = {}
        numbers: dict[tuple[Any, ...], Any] = {}
        for number, own in enumerate(self.axes):
            places = block.places[0 if self.together else number]
            kind = own.kinds[places.flat[0]]
            if kind == NUMBER:
                numbers[own.path] = own.numbers[places]
                continue
            if own.words[kind].reason:
                raise BenchjoinError(own.words[kind].reason)
            words[own.address] = own.words[kind].value
        return words, numbers

    def _items(self, variant: Variant) -> list[tuple[Output, Item]]:
        return [(output, item) for output in self.wanted for item in output.of(variant)]

    def _keep(self, block: Block, items: Sequence[tuple[Output, Item]]) -> None:
        for output, item in items:
            own = self.columns.setdefault(output.name, {})
            column = own.setdefault(item.words, Column(output.otherwise, self.shape, sentence=item.sentence))
            column.put(block, np.asarray(item.number) if np.ndim(item.number) else item.number)

    def _lose(self, block: Block, reason: str) -> None:
        self.lost.setdefault(reason, Column(False, self.shape)).put(block, True)

    def result(self) -> Swept:
        """Everything that was found."""
        reasons = {reason: column.array() for reason, column in self.lost.items()}
        built = np.ones(self.shape, dtype=bool)
        for mask in reasons.values():
            built &= ~mask
        given = {own.address: own.given for own in self.axes}
        return Swept(
            frame=self.frame,
            piece=self.piece,
            axes={"variant": range(self.shape[0])} if self.together else given,
            shape=self.shape,
            built=built,
            reasons=reasons,
            one_by_one=self.one_by_one,
            values=given,
            outputs={out.name: Arrays(out, self.columns.get(out.name, {})) for out in self.wanted},
        )
