"""A bin: a bought thing that stands or hangs in a frame, must clear the wood and come out; it moves nothing.

>>> Bin("bin", length="14 in", depth="16 in", height="10 in", on="foot shelf").foot
(355.6, 406.4)
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import attrs

from ..errors import BenchjoinError, typed
from ..lengths import TOUCH
from .doors import Door, Fault, a_length, a_name, kept, refuse
from .limits import few


@attrs.frozen
class Bin:
    """A bin by its outside sizes; it stands on a level or on the floor, or hangs by its rim in one. [mm]

    base_length and base_depth are those of its foot, where it tapers. on names the level on which it stands, or in
    which it hangs by a rim that reaches so far over each end; nothing means the floor. at is the middle of it from the
    left end, from_front where its front is from that of the legs; under the panel that covers it, or in the middle, if
    not given.
    """

    name: str = attrs.field(converter=a_name("name", barred="./"))
    length: float = attrs.field(kw_only=True, converter=a_length("length"))
    depth: float = attrs.field(kw_only=True, converter=a_length("depth"))
    height: float = attrs.field(kw_only=True, converter=a_length("height"))
    base_length: float | None = attrs.field(
        kw_only=True, default=None, converter=a_length("base_length", optional=True)
    )
    base_depth: float | None = attrs.field(kw_only=True, default=None, converter=a_length("base_depth", optional=True))
    on: str | None = attrs.field(kw_only=True, default=None, converter=a_name("on", optional=True))
    rim: float | None = attrs.field(kw_only=True, default=None, converter=a_length("rim", optional=True))
    at: float | None = attrs.field(kw_only=True, default=None, converter=a_length("at", optional=True))
    from_front: float | None = attrs.field(
        kw_only=True, default=None, converter=a_length("from_front", signed=True, optional=True)
    )

    def __attrs_post_init__(self) -> None:
        refuse(self, "Bin", self._faults)

    def _faults(self) -> list[Fault]:
        faults = [
            Fault(field, f"{own:g} mm, and the bin is {whole:g} mm there. A bin tapers downwards: make it less.")
            for field, own, whole in zip(
                ("base_length", "base_depth"), self.foot, (self.length, self.depth), strict=True
            )
            if own > whole + TOUCH
        ]
        if self.rim is not None and self.on is None:
            faults.append(Fault("rim", "it hangs by its rim in a level, and none is named. Give on=."))
        return faults

    @property
    def foot(self) -> tuple[float, float]:
        """Length and depth of its foot. [mm]"""
        return self.base_length or self.length, self.base_depth or self.depth


def bins(value: Any) -> tuple[Bin, ...]:
    """Bins, one alone or in a list."""
    items = (value,) if isinstance(value, Bin) else value
    if isinstance(items, str) or not hasattr(items, "__iter__"):
        raise BenchjoinError(f'bins is {typed(value)}. Write a list of Bin("bin", length=…, depth=…, height=…).')
    found = few("bins", items)
    for place, item in enumerate(found):
        if not isinstance(item, Bin):
            raise BenchjoinError(f'bins[{place}] is {typed(item)}. Write Bin("bin", length=…, depth=…, height=…).')
    return found


a_bin: Door[Bin | Sequence[Bin], tuple[Bin, ...]] = kept("bins", bins)
