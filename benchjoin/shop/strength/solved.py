"""A case solved: what every part feels along it, where it moves, what each tie and each foot passes on.

A foot does not pull on the floor: where it would, it is let go and the case is solved again, until none does or the
frame falls over; then its feet are held down, so that its wood can be asked all the same.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property

import attrs
import numpy as np

from ...solids import Vector
from ...wood.bars import Model, Solution, solve
from ...wood.movement import Array
from .framing import Bracing, Chain, Framed
from .loads import Case
from .lying import At, Lying, Over
from .section import Section

LIFTS = 0.5
"""A foot that would pull so much on the floor lifts. [N]"""


@attrs.frozen(kw_only=True, eq=False)
class Felt:
    """What a part feels on one side of a place: axial force, shears, twist and bendings, in the axes of the world.

    Of the part's axis and the two after it in turn; pull is positive. section is the wood there. [N, N·mm, mm]
    """

    place: float
    section: Section
    force: Vector
    moment: Vector


@attrs.frozen(kw_only=True, eq=False, slots=False)
class Solved:
    """One case on one piece.

    lifted are feet that leave the floor, slack the numbers of ties whose guest lifts off its host, nodal what was put
    on nodes with what seats pass down. tips tells that it falls over: then it is solved as if its feet were held.
    """

    case: Case
    framed: Framed
    lying: tuple[Lying, ...]
    solution: Solution
    lifted: tuple[str, ...]
    slack: tuple[int, ...]
    nodal: Mapping[int, Array]
    tips: bool

    @property
    def lifting(self) -> tuple[str, ...]:
        """The feet that pull most on the floor, which they cannot."""
        pulls = {
            name: float(self.solution.held[node][2])
            for name, node in self.framed.feet.items()
            if name not in self.lifted
        }
        worst = min(pulls.values(), default=0.0)
        return tuple(name for name, pull in pulls.items() if pull <= worst + LIFTS) if worst < -LIFTS else ()

    @property
    def model(self) -> Model:
        """The model that was solved, with its supports."""
        return self.solution.model

    @cached_property
    def given(self) -> tuple[Mapping[int, Array], dict[int, Vector]]:
        """What was put on the model: on nodes, with what seats passed down to them, and on each mm of bars."""
        return self.nodal, on_model(self.framed, self.lying)[1]

    def felt(self, part: str) -> Iterator[Felt]:
        """What a part feels at both ends of each of its bars, rising along it."""
        chain = self.framed.chains[part]
        axis = chain.part.slot.axes[0]
        turn = [axis, (axis + 1) % 3, (axis + 2) % 3]
        for number in self.framed.bars_of[part]:
            bar, forces = self.model.bars[number], self.solution.forces[number]
            for end, sign, node in ((0, -1.0, bar.start), (6, 1.0, bar.end)):
                own = sign * forces[end : end + 6]
                yield Felt(
                    place=self.model.nodes[node].at[axis],
                    section=self.framed.sections[number],
                    force=(float(own[turn[0]]), float(own[turn[1]]), float(own[turn[2]])),
                    moment=(float(own[3 + turn[0]]), float(own[3 + turn[1]]), float(own[3 + turn[2]])),
                )

    def passed(self, number: int) -> tuple[Array, Array]:
        """Force and moment that a tie passes from guest to host, in the axes of the world. [N, N·mm]"""
        if number in self.framed.seats:
            held = self.solution.held[self.framed.seats[number][0]]
            return -held[:3], -held[3:]
        bar, forces = self.model.bars[self.framed.links[number]], self.solution.forces[self.framed.links[number]]
        tie = self.framed.ties[number]
        to_start = bar.start in self.framed.chains[tie.host.identity].nodes
        if tie.joint.how.between:
            to_start = bar.start not in self.framed.chains[tie.guest.identity].nodes
        own = -forces[0:6] if to_start else -forces[6:12]
        return own[:3], own[3:]

    def sag(self, chain: Chain, axis: int, supports: Sequence[float]) -> tuple[float, float, float]:
        """The most that a part moves along an axis away from the lines between its supports; its span; where. [mm]

        Beyond its outer supports it is measured from the line on through the last two.
        """
        moved = self.solution.moved[list(chain.nodes), axis]
        at = np.array(chain.places)
        held = sorted({chain.index(place) for place in supports})
        if len(held) < 2:
            return 0.0, 0.0, float(at[0])
        line = np.interp(at, at[held], moved[held])
        for edge, near, far in ((at < at[held[0]], held[0], held[1]), (at > at[held[-1]], held[-1], held[-2])):
            slope = (moved[near] - moved[far]) / (at[near] - at[far])
            line = np.where(edge, moved[near] + slope * (at - at[near]), line)
        off = np.abs(moved - line)
        worst = int(np.argmax(np.round(off, 6)))
        ends = np.array([at[0], *at[held], at[-1]])
        after = int(np.searchsorted(ends, at[worst], side="left"))
        low, high = ends[max(after - 1, 0)], ends[min(max(after, 1), len(ends) - 1)]
        reach = 2.0 if (after in (0, 1) and worst < held[0]) or worst > held[-1] else 1.0
        return float(off[worst]), float(reach * (high - low)), float(at[worst])


def on_model(framed: Framed, lying: Sequence[Lying]) -> tuple[dict[int, list[float]], dict[int, Vector]]:
    """What lies on parts as forces on nodes and on each mm of bars."""
    nodal: dict[int, list[float]] = {}
    spread: dict[int, Vector] = {}
    for one in lying:
        if isinstance(one, At):
            chain = framed.chains[one.part]
            node = chain.node(one.place)
            arm = np.subtract(one.at, framed.model.nodes[node].at)
            own = nodal.setdefault(node, [0.0] * 6)
            for n, value in enumerate((*one.force, *np.cross(arm, one.force))):
                own[n] += float(value)
            continue
        for number in framed.bars_of[one.part]:
            if one.start <= framed.middles[number] <= one.end:
                x, y, z = spread.get(number, (0.0, 0.0, 0.0))
                spread[number] = (x + one.force[0], y + one.force[1], z + one.force[2])
    return nodal, spread


Loose = tuple[tuple[str, ...], tuple[int, ...]]
"""Feet that lift, and ties whose guest lifts off its host."""


def solved(
    framed: Framed, case: Case, lying: Sequence[Lying], braced: Sequence[Bracing], models: dict[Loose, Model]
) -> Solved:
    """Solve a case; models keeps those that were factored, by what lifts."""
    feet: tuple[str, ...] = ()
    slack: tuple[int, ...] = ()
    before: tuple[int, ...] = ()
    last: set[int] = set()
    resting = [number for number in framed.seats if framed.ties[number].loose]
    tips = False
    while True:
        if (feet, slack) not in models:
            models[feet, slack] = framed.supported(feet, braced, slack)
        model = models[feet, slack]
        if not model.holds():
            if slack != before:  # what would come loose altogether is kept where it lies
                resting, slack = [number for number in resting if number not in last], before
                continue
            feet, tips = (), True
            continue
        nodal, found = _passed_down(framed, model, lying)
        own = Solved(
            case=case,
            framed=framed,
            lying=tuple(lying),
            solution=found,
            lifted=feet,
            slack=slack,
            nodal=nodal,
            tips=tips,
        )
        if own.lifting and not tips:
            feet, before = tuple(sorted((*feet, *own.lifting))), slack
            continue
        loose = tuple(number for number in resting if number not in slack and own.passed(number)[0][2] > LIFTS)
        if not loose:
            return own
        before, last = slack, set(loose)
        slack = tuple(sorted((*slack, *loose)))


def _passed_down(framed: Framed, model: Model, lying: Sequence[Lying]) -> tuple[Mapping[int, Array], Solution]:
    """What lies on parts, passed down from what lies on others, until nothing more comes."""
    nodal, spread = on_model(framed, lying)
    loads = {node: np.asarray(load) for node, load in nodal.items()}
    given: dict[int, Array] = {}
    while True:
        whole = dict(loads)
        for node, load in given.items():
            whole[node] = whole.get(node, 0.0) + load
        found = solve(model, whole, spread)
        passed: dict[int, Array] = {}
        for seat, host in framed.seats.values():
            passed[host] = passed.get(host, np.zeros(6)) - found.held[seat]
        if all(np.allclose(passed[node], given.get(node, 0.0), atol=1e-3) for node in passed):
            return whole, found
        given = passed


def weight(framed: Framed, densities: Mapping[str, float], gravity: float) -> Iterator[Lying]:
    """The own weight of every part, bar by bar as its wood is; density in kg/m³."""
    for name, numbers in framed.bars_of.items():
        axis = framed.chains[name].part.slot.axes[0]
        for number in numbers:
            bar = framed.model.bars[number]
            low, high = framed.model.nodes[bar.start].at[axis], framed.model.nodes[bar.end].at[axis]
            force = -framed.sections[number].area * densities[name] * 1e-9 * gravity
            yield Over(name, low, high, (0.0, 0.0, force))
