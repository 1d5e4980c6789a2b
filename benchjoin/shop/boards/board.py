"""A board in the rack or the yard: its size as measured, how many there are of it, and what is wrong with it.

>>> Board("B1", length="12 ft", width="5 1/2 in", thickness="1 in", defects=[Defect("split", "0 in", "7 in")]).clear[0]
(177.8, 3657.6)
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import Any, Literal

import attrs

from ...errors import BenchjoinError, BoardError, typed
from ...frame.doors import Door, Fault, a_length, a_name, a_number, kept, one_of, refuse
from ...lengths import TOUCH

_NOMINAL = re.compile(r"(\d{1,2}(?:/4)?)x(\d{1,2})", re.ASCII)
Flaw = Literal["split", "knot", "wane"]
FLAWS = ("split", "knot", "wane")
Where = Literal["across", "near edge", "far edge"]
WHERE = ("across", "near edge", "far edge")


@attrs.frozen
class Defect:
    """A bad stretch of a board, from one end: right across it, or so deep from an edge. [mm]

    No part holds a split or wane. A knot may lie in a part, but not where it is cut, joined or ends.
    """

    kind: Flaw = attrs.field(converter=one_of("kind", *FLAWS))
    start: float = attrs.field(converter=a_length("start", zero=True))
    end: float = attrs.field(converter=a_length("end"))
    where: Where = attrs.field(
        kw_only=True, default="across", converter=one_of("where", "across", "near edge", "far edge")
    )
    deep: float | None = attrs.field(kw_only=True, default=None, converter=a_length("deep", optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Defect", self._faults)

    def _faults(self) -> list[Fault]:
        if self.end <= self.start + TOUCH:
            return [
                Fault("end", f"it ends at {self.end:g} mm, and begins at {self.start:g}. Write from and to in order.")
            ]
        if (self.where == "across") != (self.deep is None):
            return [Fault("deep", "what lies at an edge says how deep it goes, and what goes right across does not.")]
        return []


def _defects(value: Any) -> Any:
    items = (value,) if isinstance(value, Defect) else value
    if isinstance(items, str) or not hasattr(items, "__iter__") or not all(isinstance(i, Defect) for i in items):
        raise BenchjoinError(f'defects is {typed(value)}. Write a list of Defect("knot", "14 in", "16 in").')
    return tuple(sorted(items, key=lambda one: (one.start, one.end)))


def _nominal(value: Any) -> Any:
    if value is None or (isinstance(value, str) and _NOMINAL.fullmatch(value)):
        return value
    raise BenchjoinError(f'nominal is {typed(value)}. Write the name of the section: "2x4" or "5/4x6".')


_bad: Door[Sequence[Defect], tuple[Defect, ...]] = kept("defects", _defects)


@attrs.frozen
class Board:
    """A board by its name, with its size and its defects; stock is what it is of, count how many are alike. [mm]

    A count that is left open means as many as are wanted: that is how a yard is described. stock names the frame's
    stock that it is for; nothing means any of its thickness. price is that of one, nominal the section by which a yard
    counts board feet.
    """

    name: str = attrs.field(converter=a_name("name"))
    length: float = attrs.field(kw_only=True, converter=a_length("length"))
    width: float = attrs.field(kw_only=True, converter=a_length("width"))
    thickness: float = attrs.field(kw_only=True, converter=a_length("thickness"))
    stock: str | None = attrs.field(kw_only=True, default=None, converter=a_name("stock", optional=True))
    count: int | None = attrs.field(
        kw_only=True, default=1, converter=a_number("count", 1, 10000, "4", whole=True, optional=True)
    )
    price: float | None = attrs.field(
        kw_only=True, default=None, converter=a_number("price", 0.0, 1e9, "12.5", optional=True)
    )
    nominal: str | None = attrs.field(kw_only=True, default=None, converter=kept("nominal", _nominal))
    defects: tuple[Defect, ...] = attrs.field(kw_only=True, default=(), converter=_bad)

    def __attrs_post_init__(self) -> None:
        refuse(self, f'Board "{self.name}"', self._faults)

    def _faults(self) -> list[Fault]:
        faults = []
        past = [d for d in self.defects if d.end > self.length + TOUCH]
        if past:
            what = (
                f"a {past[0].kind} ends at {past[0].end:g} mm, and the board at {self.length:g}. Measure from one end."
            )
            faults.append(Fault("defects", what))
        if self.defects and self.count != 1:
            faults.append(Fault("count", "boards with defects are each their own. Give each a name."))
        return faults

    @property
    def inches(self) -> tuple[float, float] | None:
        """Thickness and width by its nominal section, in inches; None where it has none."""
        read = _NOMINAL.fullmatch(self.nominal or "")
        if read is None:
            return None
        whole, _, quarters = read[1].partition("/")
        return float(whole) / (float(quarters) if quarters else 1.0), float(read[2])

    @property
    def clear(self) -> tuple[tuple[float, float], ...]:
        """Stretches without a split or wane right across it. [mm]"""
        bad = [(d.start, d.end) for d in self.defects if d.kind != "knot" and d.where == "across"]
        return stretches(self.length, bad)


def stretches(length: float, bad: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    """What is left of a length between bad intervals. [mm]"""
    found, at = [], 0.0
    for start, end in sorted(bad):
        if start > at + TOUCH:
            found.append((at, start))
        at = max(at, end)
    if at < length - TOUCH:
        found.append((at, length))
    return tuple(found)


def boards_of(given: Iterable[Board]) -> list[Board]:
    """Boards as a list.

    Raises
    ------
    BoardError
        If they are none.
    """
    own = list(given) if isinstance(given, Iterable) else []
    if not own or not all(isinstance(board, Board) for board in own):
        raise BoardError('boards holds no Board. Write Board("rack 1", length="8 ft", width=140, thickness=27).')
    return own
