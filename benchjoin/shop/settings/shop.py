"""The shop: which machines the maker has, and what they can and cannot do.

Settings ask it how far a stop reaches, how a dado head can be stacked, which bits lie in the drawer. All of it has a
default that a small shop would recognise, and all of it can be said otherwise: `Shop(stop_reach="1.2 m")`, or
`Shop(dado=None)` where the saw takes no dado head, and then the router is the way that is taken.

>>> Shop().way, Shop(dado=None).way, Shop(dado=None, router=None).way
('dado head', 'router', 'saw and chisel')
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any, Literal

import attrs

from ...frame.doors import Fault, a_kind, a_length, one_of, refuse
from ...lengths import INCH
from ...readings import Tape
from ...trade.allowances import Milling
from ...trade.saws import FULL_KERF, NOTCHING
from .heads import DadoHead, lengths_of
from .minutes import Minutes

Way = Literal["dado head", "router", "saw and chisel"]
WAYS: tuple[Way, ...] = ("dado head", "router", "saw and chisel")


def _or_none(convert: Callable[[Any], Any]) -> Callable[[Any], Any]:
    return lambda value: None if value is None else convert(value)


@attrs.frozen(kw_only=True)
class Router:
    """A plunge router that runs along a guide. [mm]

    base is the width of its base across the guide, from edge to edge through the bit; step how deep it goes at once,
    deepest how far its bits reach.
    """

    base: float = attrs.field(default=6 * INCH, converter=a_length("base"))
    bits: tuple[float, ...] = attrs.field(default=(INCH / 4, INCH / 2, INCH * 3 / 4), converter=lengths_of("bits"))
    step: float = attrs.field(default=NOTCHING.step, converter=a_length("step"))
    deepest: float = attrs.field(default=1.5 * INCH, converter=a_length("deepest"))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Router", self._faults)

    def _faults(self) -> Iterator[Fault]:
        if not self.bits:
            yield Fault("bits", "a router without a bit cuts nothing. Give at least one diameter.")
        wide = [bit for bit in self.bits if bit >= self.base]
        if wide:
            yield Fault("bits", f"a bit of {wide[0]:g} mm is no narrower than the base, {self.base:g} mm.")


@attrs.frozen(kw_only=True)
class Shop:
    """The maker's machines and habits. [mm]

    stop_reach is the longest, stop_nearest the shortest distance from the blade or head to the stop on the gauge's
    fence; overlap how far one pass lies over the one before; kerf that of the saw; slices how far the kerfs between two
    shoulders are apart where a chisel takes the wood out; minutes how long things take here; milling the habits that
    hold the least length for each machine, the usual ones of the design's tape if not given; prefer the way to cut
    notches, where not the first that the shop has.
    """

    dado: DadoHead | None = attrs.field(factory=DadoHead, converter=_or_none(a_kind(DadoHead, "dado", "DadoHead()")))
    router: Router | None = attrs.field(factory=Router, converter=_or_none(a_kind(Router, "router", "Router()")))
    stop_reach: float = attrs.field(default=48 * INCH, converter=a_length("stop_reach"))
    stop_nearest: float = attrs.field(default=NOTCHING.nearest, converter=a_length("stop_nearest", zero=True))
    overlap: float = attrs.field(default=NOTCHING.overlap, converter=a_length("overlap", zero=True))
    kerf: float = attrs.field(default=FULL_KERF.width, converter=a_length("kerf"))
    slices: float = attrs.field(default=NOTCHING.slices, converter=a_length("slices"))
    minutes: Minutes = attrs.field(factory=Minutes, converter=a_kind(Minutes, "minutes", "Minutes(stop=1)"))
    milling: Milling | None = attrs.field(default=None, converter=_or_none(a_kind(Milling, "milling", "Milling()")))
    prefer: Way | None = attrs.field(default=None, converter=one_of("prefer", None, *WAYS))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Shop", self._faults)

    def _faults(self) -> Iterator[Fault]:
        if self.stop_nearest >= self.stop_reach:
            yield Fault("stop_reach", f"{self.stop_reach:g} mm is no further than stop_nearest.")
        if self.prefer not in (None, *self.ways):
            yield Fault("prefer", f"there is no {self.prefer} in this shop. It has {', '.join(self.ways)}.")

    @property
    def ways(self) -> tuple[Way, ...]:
        """The ways to cut a notch that this shop has, in the order in which they are tried."""
        own = {"dado head": self.dado is not None, "router": self.router is not None, "saw and chisel": True}
        return tuple(way for way in WAYS if own[way])

    @property
    def way(self) -> Way:
        """The way that is taken where it can be."""
        return self.prefer or self.ways[0]


def usual_shop(tape: Tape) -> Shop:
    """A small shop in round figures of the tape's unit.

    >>> usual_shop(Tape("1 mm")).stop_reach, round(usual_shop(Tape("1/16 in")).stop_reach / 25.4)
    (1200.0, 48)
    """
    if tape.unit == "in":
        return Shop()
    router = Router(base=150, bits=(6, 12, 18), step=6, deepest=40)
    head = DadoHead(deepest=40, bite=20)
    return Shop(dado=head, router=router, stop_reach=1200, stop_nearest=12, overlap=3, kerf=3.2, slices=12)
