"""Finished parts: what has been sized, marked or cut in wood, and stays so whatever is measured or changed later.

A part that is *sized* keeps its length and section, one that is *marked* or *cut* keeps its shoulders and depths too.
Places are in the part's own frame: along it from the datum end, across it, into it from the marked face.
`layout.keeping` writes these down from a layout; nobody types them.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any, Literal, get_args

import attrs

from ..errors import BenchjoinError, typed
from ..lengths import mm
from .doors import Fault, a_length, kept, one_of, refuse
from .faces import OUT
from .identity import piece_of, plain
from .measured import Kept

State = Literal["sized", "marked", "cut"]
STATES: tuple[State, ...] = ("sized", "marked", "cut")
Shoulder = Literal["", "near", "far"]
Corner = tuple[float, float, float]
FARTHEST = 100_000.0
"""No place on a part is farther off than the longest length. [mm]"""


def _words(value: Any) -> str:
    if not isinstance(value, str) or not value.isprintable() or len(value) > 200:
        raise BenchjoinError(f"{typed(value)} is no name. Keep it to one line of printable letters.")
    return value


def _place(value: Any) -> Corner:
    x, y, z = map(float, value)
    if not all(math.isfinite(own) and abs(own) <= FARTHEST for own in (x, y, z)):
        raise BenchjoinError(f"{typed(value)} is no place on a part. Write three lengths in mm.")
    return (x, y, z)


def _corner(value: Any) -> Corner:
    try:
        return _place(value)
    except (TypeError, ValueError):
        raise BenchjoinError(f"{typed(value)} is no place on a part. Write three lengths in mm.") from None


def _section(value: Any) -> tuple[float, float]:
    try:
        across, deep = value
    except (TypeError, ValueError):
        raise BenchjoinError(f"{typed(value)} is no section. Write two sizes: (69.8, 38.1).") from None
    return (mm(across, what="a section"), mm(deep, what="a section"))


def _cuts(value: Any) -> tuple[FinishedCut, ...]:
    found = tuple(value) if isinstance(value, tuple | list) else ()
    if not isinstance(value, tuple | list) or not all(isinstance(cut, FinishedCut) for cut in found):
        raise BenchjoinError(f"cuts is {typed(value)}. Write what keep(layout, …) wrote.")
    return found


@attrs.frozen
class FinishedCut:
    """A cut as it was marked: for which mate, from which face, of which kind; its box in the part's own frame. [mm]

    sits is the shoulder that the mate sits on, seen from the datum end; nothing where it lies as its level has it.
    """

    mate: str = attrs.field(converter=kept("mate", _words))
    face: str = attrs.field(converter=one_of("face", *OUT))
    kind: str = attrs.field(converter=kept("kind", _words))
    low: Corner = attrs.field(converter=kept("low", _corner))
    high: Corner = attrs.field(converter=kept("high", _corner))
    sits: Shoulder = attrs.field(default="", converter=one_of("sits", *get_args(Shoulder)))

    def __attrs_post_init__(self) -> None:
        refuse(self, "A cut of a finished part", self._faults)

    def _faults(self) -> list[Fault]:
        thin = any(high - low < 0 for low, high in zip(self.low, self.high, strict=True))
        return [Fault("high", f"{typed(self.high)} lies before {typed(self.low)}. Swap them.")] if thin else []


@attrs.frozen
class Finished:
    """A part as it stands: its state, its length and section, and its cuts (none where it is only sized). [mm]

    section is what it measures across and into its marked face, in its own frame.
    """

    state: State = attrs.field(converter=one_of("state", *STATES))
    length: float = attrs.field(converter=a_length("length"))
    section: tuple[float, float] = attrs.field(converter=kept("section", _section))
    cuts: tuple[FinishedCut, ...] = attrs.field(default=(), converter=kept("cuts", _cuts))

    def __attrs_post_init__(self) -> None:
        refuse(self, "A finished part", self._faults)

    def _faults(self) -> list[Fault]:
        if self.state == "sized" and self.cuts:
            return [Fault("cuts", "it is only sized, and has cuts. Say that it is marked or cut.")]
        sizes = (self.length, *self.section)
        off = [
            cut
            for cut in self.cuts
            if any(high <= 0 or low >= size for low, high, size in zip(cut.low, cut.high, sizes, strict=True))
        ]
        return [Fault("cuts", f"the one for {typed(cut.mate)} lies outside the part.") for cut in off]


def finished(value: Any) -> Mapping[str, Finished]:
    """Converter of Frame.finished: parts of one piece by name; takes its own result, too."""
    if not isinstance(value, Mapping) or not all(isinstance(part, Finished) for part in value.values()):
        raise BenchjoinError(f"finished is {typed(value)}. Write keep(layout, 'back left leg', state='cut').")
    for name in value:
        if piece_of(str(name))[0] is None:
            raise BenchjoinError(f"finished holds {typed(name)}, which says no piece. Write '1/{name}'.")
    return Kept({plain(name): part for name, part in value.items()})
