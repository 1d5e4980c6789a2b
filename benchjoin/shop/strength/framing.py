"""A piece as a frame of bars: the middle line of every part, cut where its section changes, tied where it is joined.

Each part is a chain of nodes along its middle line. A tie is a stiff link from the guest's chain to the host's, with
its hinges at the host; where a butt ends short of the host's middle, a stiff arm goes on from its face. What lies on a
part has seats of its own there, held in space: what they bear is put on the part that carries them.
"""

from __future__ import annotations

import bisect
from collections.abc import Collection, Iterable, Mapping, Sequence
from functools import cached_property
from typing import Literal

import attrs

from ...layout.parts import Part
from ...solids import Vector
from ...trade.species import Species
from ...wood.bars import Bar, Model, Node, Support
from ..weights import weight_of
from .section import Section, sections
from .ties import Tie

ONE_PLACE = 0.5
"""Places along a part that are no further apart are one. [mm]"""
STUB = 5.0
"""A link between middle lines that meet is so long. [mm]"""
PIECES = 8
"""A part is cut into at least so many bars, so that a sag between its ties is seen."""
RIGID = (1e5, 1e5, 1e6)
"""Modulus, area and second moment of a link: some thousand times as stiff as wood. [N/mm², mm², mm⁴]"""
SHEAR = 16.0
"""Elasticity over shear modulus, where that is not known: Wood Handbook, p. 9-5."""

Bracing = Literal["along", "across"]


@attrs.frozen(eq=False, slots=False)
class Chain:
    """The nodes of a part: places along its axis of the world, rising, and their nodes. [mm]"""

    part: Part
    places: tuple[float, ...]
    nodes: tuple[int, ...]

    def node(self, place: float) -> int:
        """The node at a place, which is the nearest of its places."""
        return self.nodes[self.index(place)]

    def index(self, place: float) -> int:
        """Which of its places is at a place."""
        after = bisect.bisect_left(self.places, place)
        near = [n for n in (after - 1, after) if 0 <= n < len(self.places)]
        return min(near, key=lambda n: abs(self.places[n] - place))


@attrs.frozen(kw_only=True, eq=False, slots=False)
class Framed:
    """A piece as a model: chains by part, the sections of bars by number, links by tie, feet by leg.

    seats are, by the number of a tie whose guest lies on its host, the node that is held and that of the host.
    """

    model: Model
    chains: Mapping[str, Chain]
    sections: Mapping[int, Section]
    links: tuple[int, ...]
    ties: tuple[Tie, ...]
    feet: Mapping[str, int]
    seats: Mapping[int, tuple[int, int]]

    @cached_property
    def bars_of(self) -> Mapping[str, tuple[int, ...]]:
        """Numbers of the bars of each part, rising along it."""
        found: dict[str, list[int]] = {name: [] for name in self.chains}
        for number, bar in enumerate(self.model.bars):
            if bar.part:
                found[bar.part].append(number)
        return {name: tuple(own) for name, own in found.items()}

    @cached_property
    def middles(self) -> tuple[float, ...]:
        """The middle of each bar, along its axis. [mm]"""
        nodes = self.model.nodes
        return tuple((nodes[b.start].at[b.axis] + nodes[b.end].at[b.axis]) / 2 for b in self.model.bars)

    def supported(self, lifted: Iterable[str], braced: Collection[Bracing], slack: Iterable[int] = ()) -> Model:
        """The model without the feet that lift, and held sideways at the tops of the legs where it is braced.

        slack are numbers of ties whose guest lies on its host and lifts off it.
        """
        gone = {self.feet[name] for name in lifted}
        held = [
            Support(node, (node not in gone, node not in gone, node not in gone, False, False, True))
            for node in self.feet.values()
        ]
        held += [Support(seat, (True,) * 6) for seat, _ in self.seats.values()]
        along, across = ("along" in braced), ("across" in braced)
        tops = [chain.nodes[-1] for name, chain in self.chains.items() if name in self.feet]
        held += [Support(node, (along, across, False, False, False, False)) for node in tops]
        return attrs.evolve(self.model, supports=tuple(held), slack=tuple(self.links[number] for number in slack))


def framed(
    parts: Sequence[Part],
    ties: Sequence[Tie],
    woods: Mapping[str, Species],
    places: Mapping[str, Iterable[float]],
) -> Framed:
    """Frame a piece.

    Parameters
    ----------
    parts : sequence of Part
        All parts of one piece.
    ties : sequence of Tie
    woods : mapping of str to Species
        The wood of each part, by identity.
    places : mapping of str to iterable of float
        Where loads meet parts, which get nodes there. [mm along the world's axis]
    """
    build = _Building(
        elastic={name: wood.dry.megapascals()["elasticity"] for name, wood in woods.items()},
        densities={name: weight_of(wood, 12.0) for name, wood in woods.items()},
    )
    asked = _places(parts, ties, places)
    chains = {part.identity: build.chain(part, asked[part.identity]) for part in parts}
    links, seats = [], {}
    for number, tie in enumerate(ties):
        to = chains[tie.host.identity].node(tie.on_host[tie.host.slot.axes[0]])
        at = build.node(build.nodes[to].at) if tie.joint.how.lies else to
        if tie.joint.how.lies:
            seats[number] = (at, to)
        links.append(build.tie(tie, chains[tie.guest.identity], at))
    feet = {part.identity: chains[part.identity].nodes[0] for part in parts if part.slot.role.stands}
    model = Model(tuple(build.nodes), tuple(build.bars), ())
    return Framed(
        model=model,
        chains=chains,
        sections=build.sections,
        links=tuple(links),
        ties=tuple(ties),
        feet=feet,
        seats=seats,
    )


def _places(
    parts: Sequence[Part], ties: Sequence[Tie], places: Mapping[str, Iterable[float]]
) -> dict[str, list[float]]:
    """All places along each part at which something begins, ends or meets it."""
    found = {part.identity: list(places.get(part.identity, ())) for part in parts}
    for tie in ties:
        for part, at in ((tie.host, tie.on_host), (tie.guest, tie.on_guest)):
            found[part.identity].append(at[part.slot.axes[0]])
        if not tie.parallel:
            found[tie.host.identity] += tie.band
    return found


@attrs.define
class _Building:
    """Nodes and bars as they are made."""

    elastic: Mapping[str, float]
    densities: Mapping[str, float]
    nodes: list[Node] = attrs.field(factory=list)
    bars: list[Bar] = attrs.field(factory=list)
    sections: dict[int, Section] = attrs.field(factory=dict)

    def density(self, tie: Tie) -> float:
        """Of the lighter wood of a tie. [kg/m³]"""
        return min(self.densities[part.identity] for part in (tie.host, tie.guest))

    def node(self, at: Vector) -> int:
        self.nodes.append(Node(at))
        return len(self.nodes) - 1

    def chain(self, part: Part, asked: Sequence[float]) -> Chain:
        """The nodes and bars of one part."""
        axis, own = part.slot.axes[0], sections(part)
        low, high = part.blank.low[axis], part.blank.high[axis]
        even = [low + n * (high - low) / PIECES for n in range(PIECES + 1)]
        rising = _apart([*asked, low, high, *(at for one in own for at in (one.start, one.end)), *even])
        middle = [(a + b) / 2 for a, b in zip(part.blank.low, part.blank.high, strict=True)]
        nodes = []
        for at in rising:
            middle[axis] = at
            nodes.append(self.node((middle[0], middle[1], middle[2])))
        stiff = self.elastic[part.identity]
        starts = [one.start for one in own]
        for n in range(len(rising) - 1):
            at = (rising[n] + rising[n + 1]) / 2
            here = own[max(bisect.bisect_right(starts, at) - 1, 0)]
            if not here.start <= at <= here.end or not low < at < high:
                self.link(nodes[n], nodes[n + 1], axis)
                continue
            self.sections[len(self.bars)] = here
            self.bars.append(
                Bar(
                    nodes[n],
                    nodes[n + 1],
                    axis=axis,
                    area=here.area,
                    inertia=here.inertia,
                    torsion=here.torsion,
                    stiff=stiff,
                    shear=stiff / SHEAR,
                    part=part.identity,
                )
            )
        return Chain(part, tuple(rising), tuple(nodes))

    def tie(self, tie: Tie, guest: Chain, to: int) -> int:
        """The link of a tie to a node; its number."""
        a, b = tie.host.slot.axes[0], tie.guest.slot.axes[0]
        hinges = {a} | (set() if tie.holds else {tie.across})
        if tie.parallel:
            hinges = {n for n in range(3) if n != a}
            start = guest.node(tie.on_guest[a])
            return self._link_along(start, to, tie.across, hinges)
        if not tie.joint.how.between:
            number = self._link_along(guest.node(tie.on_guest[b]), to, tie.across, hinges)
            give = tie.give(self.elastic[tie.guest.identity], self.density(tie))
            if give is not None:
                bar = self.bars[number]
                long = abs(self.nodes[bar.end].at[bar.axis] - self.nodes[bar.start].at[bar.axis])
                self.bars[number] = attrs.evolve(bar, torsion=give * long / bar.shear)
            return number
        face = min(tie.joint.contact.low[b], guest.places[-1])
        meets = guest.node(max(face, guest.places[0]))
        return self._butt(meets, to, b, hinges)

    def _butt(self, meets: int, to: int, axis: int, hinges: set[int]) -> int:
        """An arm from a guest's end, hinged there, to beside the host's middle line, and the link on from it."""
        at, end = list(self.nodes[meets].at), self.nodes[to].at
        if abs(at[axis] - end[axis]) <= ONE_PLACE:
            return self._link_along(meets, to, None, hinges)
        at[axis] = end[axis]
        beside = self.node((at[0], at[1], at[2]))
        number = self.link(meets, beside, axis, hinges, at=meets)
        self._link_along(beside, to, None, set())
        return number

    def _link_along(self, start: int, to: int, axis: int | None, hinges: set[int]) -> int:
        """A link by steps along the axes of the world, the last one, with the hinges, along the given axis."""
        at, end = list(self.nodes[start].at), self.nodes[to].at
        gaps = [n for n in range(3) if abs(at[n] - end[n]) > ONE_PLACE]
        last = axis if axis is not None else (gaps[-1] if gaps else 0)
        here = start
        for n in gaps:
            if n != last:
                at[n] = end[n]
                beside = self.node((at[0], at[1], at[2]))
                self.link(here, beside, n)
                here = beside
        if abs(at[last] - end[last]) < STUB:
            at[last] = end[last] + STUB
            beside = self.node((at[0], at[1], at[2]))
            if here != start or abs(self.nodes[here].at[last] - at[last]) > ONE_PLACE:
                self.link(here, beside, last)
                here = beside
        return self.link(here, to, last, hinges, at=to)

    def link(self, start: int, end: int, axis: int, hinges: Iterable[int] = (), *, at: int | None = None) -> int:
        """A stiff link between two nodes, with hinges at one of them."""
        turned = self.nodes[start].at[axis] > self.nodes[end].at[axis]
        low, high = (end, start) if turned else (start, end)
        free = tuple(sorted(hinges))
        stiff, area, inertia = RIGID
        self.bars.append(
            Bar(
                low,
                high,
                axis=axis,
                area=area,
                inertia=(inertia, inertia),
                torsion=inertia,
                stiff=stiff,
                shear=stiff,
                free=free if at == high else (),
                free_start=free if at == low and at != high else (),
            )
        )
        return len(self.bars) - 1


def _apart(places: Iterable[float]) -> list[float]:
    """Places, the earlier ones before the later: one that is no further from those before it is left out."""
    found: list[float] = []
    for at in places:
        after = bisect.bisect_left(found, at)
        if all(abs(at - near) > ONE_PLACE for near in found[max(after - 1, 0) : after + 1]):
            found.insert(after, at)
    return found
