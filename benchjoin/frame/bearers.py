"""Bearers and battens: members under the boards of a level, as the maker describes them.

>>> from benchjoin.frame.stock import Stock
>>> batten = Stock("larch batten", thickness="5/8 in", width="1 1/2 in")
>>> Bearers(batten, count=2).upright, Bearers(batten, count=2, flat=True).upright
(38.1, 15.875)
"""

from __future__ import annotations

import itertools
from typing import Any, Literal

import attrs

from ..errors import BenchjoinError, typed
from ..lengths import TOUCH, signed_mm
from .doors import Fault, a_kind, a_length, a_name, a_number, kept, one_of, refuse
from .joints import Butt, HalfLap, Laid, Notch, Over, Planted
from .stock import Stock

BearerJoint = Notch | HalfLap | Over | Butt | Planted | Laid
Crossing = HalfLap | Notch | Over
STOCK = 'Stock("larch batten", thickness="5/8 in", width="1 1/2 in")'


def _places(value: Any) -> Any:
    """Places along the run, rising; one alone may stand without its list."""
    if value is None:
        return None
    items = value if isinstance(value, tuple | list) else (value,)
    if not items:
        raise BenchjoinError('at is empty. Write the middle of each bearer: at=["14 in", "43 in"].')
    found = tuple(signed_mm(item, what="at") for item in items)
    if any(b <= a for a, b in itertools.pairwise(found)):
        raise BenchjoinError("at does not rise. Write the middles of the bearers in order from the datum.")
    return found


def _joint(*kinds: type, field: str) -> Any:
    def convert(value: Any) -> Any:
        if not isinstance(value, kinds):
            raise BenchjoinError(
                f"{field} is {typed(value)}. Write {', '.join(f'{kind.__name__}()' for kind in kinds)}."
            )
        return value

    return kept(field, convert)


@attrs.frozen
class Bearers:
    """Members that cross a level from rail to rail, under its boards or across each other. [mm]

    run says which way they run. They stand by count, with equal clears between them; at places, given by their
    middles from the left end or the front; or as many as keep the boards' clear span to span. flat lays them on their
    wide face; on edge otherwise. joint says how they meet their rails: Butt() between them, their tops lowered by so
    much; Notch() let in from above; Over() notched over them; HalfLap() crossing them, or ending in them; Laid() lying
    on them, or on the bearers that cross below; Planted() fixed inside each rail that runs the same way, as a ledger.
    crossing is how they meet bearers of their level that run the other way at their height. left and right (front and
    back) are how far they reach over the rails that they cross. name is what they are called, where there are several
    runs.
    """

    stock: Stock = attrs.field(converter=a_kind(Stock, "stock", STOCK))
    run: Literal["along", "across"] = attrs.field(
        kw_only=True, default="across", converter=one_of("run", "along", "across")
    )
    count: int | None = attrs.field(
        kw_only=True, default=None, converter=a_number("count", 1, 1000, "8", whole=True, optional=True)
    )
    at: tuple[float, ...] | None = attrs.field(kw_only=True, default=None, converter=kept("at", _places))
    span: float | None = attrs.field(kw_only=True, default=None, converter=a_length("span", optional=True))
    joint: BearerJoint = attrs.field(
        kw_only=True, default=Butt(), converter=_joint(Butt, Notch, Over, HalfLap, Laid, Planted, field="joint")
    )
    crossing: Crossing = attrs.field(
        kw_only=True, default=HalfLap(), converter=_joint(HalfLap, Notch, Over, field="crossing")
    )
    flat: bool = attrs.field(kw_only=True, default=False, converter=one_of("flat", True, False))
    lowered: float = attrs.field(kw_only=True, default=0.0, converter=a_length("lowered", signed=True))
    front: float = attrs.field(kw_only=True, default=0.0, converter=a_length("front", signed=True))
    back: float = attrs.field(kw_only=True, default=0.0, converter=a_length("back", signed=True))
    left: float = attrs.field(kw_only=True, default=0.0, converter=a_length("left", signed=True))
    right: float = attrs.field(kw_only=True, default=0.0, converter=a_length("right", signed=True))
    name: str | None = attrs.field(kw_only=True, default=None, converter=a_name("name", barred="./", optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Bearers", self._faults)

    @property
    def key(self) -> str:
        """What addresses call the run."""
        return self.name or "bearers"

    @property
    def called(self) -> str:
        """What one of them is called."""
        return self.name or "bearer"

    @property
    def solved(self) -> bool:
        """Whether their number follows from the room they have."""
        return self.span is not None

    @property
    def upright(self) -> float:
        """How high one of them is as it lies. [mm]"""
        return self.stock.thickness if self.flat else self.stock.width or 0.0

    @property
    def planted(self) -> bool:
        """Whether they are ledgers, one on each rail that runs their way."""
        return isinstance(self.joint, Planted)

    def _faults(self) -> list[Fault]:
        faults = []
        if self.stock.width is None:
            faults.append(Fault("stock", f'"{self.stock.name}" has no width. Give it one: {STOCK}.'))
            return faults
        given = [field for field in ("count", "at", "span") if getattr(self, field) is not None]
        if self.planted and given:
            faults.append(Fault(given[0], f"a ledger is fixed on each rail that runs its way. Leave {given[0]} out."))
        elif not self.planted and len(given) != 1:
            many = f"{' and '.join(given)} are given" if given else "none of count, at and span is given"
            faults.append(Fault("count", f'{many}. Write one of them: count=2, at=["14 in"] or span="18 in".'))
        if self.lowered and not isinstance(self.joint, Butt | Planted):
            what = f"a bearer with {self.joint.word} lies where its joint has it. Leave lowered out, or let it butt."
            faults.append(Fault("lowered", what))
        return [*faults, *self._too_deep(), *self._too_far()]

    def _too_deep(self) -> list[Fault]:
        """Joints that would take more than there is of the bearer."""
        faults = []
        for field, joint in (("joint", self.joint), ("crossing", self.crossing)):
            deep = joint.depth if isinstance(joint, Notch | Over) else None
            if deep is not None and deep > self.upright - (TOUCH if isinstance(joint, Over) else -TOUCH):
                what = f"{deep:g} mm deep, and the bearer is {self.upright:g} mm high. Make it less deep."
                faults.append(Fault(field, what))
        return faults

    def _too_far(self) -> list[Fault]:
        """Reaches over rails at the sides that it does not run to, or of what ends against them."""
        sides = ("left", "right") if self.run == "across" else ("front", "back")
        given = [side for side in ("front", "back", "left", "right") if getattr(self, side)]
        ends = self.joint.between or self.planted
        return [
            Fault(side, f"it ends at the rails at the {side}, or does not run there. Leave {side} out.")
            for side in given
            if ends or side in sides
        ]
