"""Ties: how a joint passes on what one part feels to another, and what it holds against turning.

What lies on a rail is carried by it and does not stiffen it: what the one passes down is a load on the other. Any other
joint always carries across itself, and it keeps its guest from rolling about its own length. About the host's length
it is a hinge. A board that lies across two rails or more and along the narrow edge of another leans on those. The
third way, in the plane of both, is what keeps a frame upright: shoulders of a closed notch or a
half-lap hold there, so do two fasteners apart in side grain, or a corner block; end-grain screws count as nothing.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Collection, Iterator
from typing import Literal

import attrs

from ...layout.joints.meeting import Joint
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import TOUCH
from ...solids import Vector
from ..fasteners.fasten import Fastening
from ..fasteners.fixing import Fixing

Holds = Literal["", "shoulders", "fasteners", "corner block"]
ACROSS = 1 / 20
"""Elasticity across the grain by that along it: Wood Handbook Table 5-1, about what softwoods have, from memory."""
PLACES = (0.0, 0.25, 0.5, 0.75, 1.0)
"""Where parts that lie along each other are tied, as shares of their contact."""


@attrs.frozen(kw_only=True, eq=False)
class Tie:
    """One place at which a guest is tied to its host. [mm]

    on_host and on_guest are the places on their middle lines, turns the axis of the world about which holds says what
    keeps them from turning; share is how much of the joint it stands for.
    """

    joint: Joint
    host: Part
    guest: Part
    on_host: Vector
    on_guest: Vector
    across: int
    holds: Holds
    fixing: Fixing | None
    share: float = 1.0

    def give(self, elastic: float, density: float) -> float | None:
        """How stiff it is against turning; None where it counts as stiff as the wood. [N·mm/rad]

        Parameters
        ----------
        elastic : float
            Of the guest's wood, along the grain. [N/mm²]
        density : float
            Of the lighter wood. [kg/m³]

        Notes
        -----
        Shoulders press the guest's edges across the grain, over its height, as stiff as `ACROSS` of it along; screws
        and nails slip by EN 1995-1-1 Table 7.1, ``K = ρ^1.5 d^0.8 / 30`` (from memory), each at its distance.
        """
        if self.holds == "shoulders":
            size = self.joint.contact.size()
            wide, deep = size[self.guest.slot.axes[0]], size[self.across]
            high = size[self.host.slot.axes[0]]
            return float(ACROSS * elastic / high * deep * wide**3 / 12)
        if self.holds == "fasteners" and self.fixing is not None:
            slip = density**1.5 * self.fixing.size.diameter**0.8 / 30
            return float(slip * sum(away**2 for away in distances(self.fixing)))
        return None

    @property
    def parallel(self) -> bool:
        """Whether both run the same way."""
        return self.host.slot.axes[0] == self.guest.slot.axes[0]

    @property
    def loose(self) -> bool:
        """Whether nothing holds down what lies on it."""
        return self.joint.how.lies and (self.fixing is None or not self.fixing.driven or self.fixing.withdrawal == 0.0)

    @property
    def band(self) -> tuple[float, float]:
        """Where the guest comes to the host, along the host. [mm]"""
        axis = self.host.slot.axes[0]
        return self.joint.contact.low[axis], self.joint.contact.high[axis]


def ties(layout: Layout, piece: int, fastening: Fastening | None, blocks: Collection[str]) -> Iterator[Tie]:
    """The ties of a piece.

    Parameters
    ----------
    layout : Layout
    piece : int
    fastening : Fastening or None
        What is driven into its joints; without, only shoulders hold.
    blocks : collection of str
        Kinds of joints, levels and parts whose joints have corner blocks.
    """
    carrying = [(joint, *layout.joined(joint)) for joint in layout.joints_of(piece) if joint.how.carries]
    crossings = Counter(
        guest.identity for joint, host, guest in carrying if joint.how.lies and host.slot.axes[0] != guest.slot.axes[0]
    )
    for joint, host, guest in carrying:
        fixing = fastening.at(joint) if fastening is not None else None
        holds = _holds(joint, host, guest, fixing, blocks)
        if host.slot.axes[0] != guest.slot.axes[0]:
            yield _crossing(joint, host, guest, holds, fixing)
        elif not joint.how.lies or crossings[guest.identity] < 2:
            yield from _along(joint, host, guest, fixing)


def _crossing(joint: Joint, host: Part, guest: Part, holds: Holds, fixing: Fixing | None) -> Tie:
    a, b = host.slot.axes[0], guest.slot.axes[0]
    on_host, on_guest = list(_middle(host)), list(_middle(guest))
    on_host[a], on_guest[b] = _middle(guest)[a], _middle(host)[b]
    return Tie(
        joint=joint,
        host=host,
        guest=guest,
        on_host=(on_host[0], on_host[1], on_host[2]),
        on_guest=(on_guest[0], on_guest[1], on_guest[2]),
        across=3 - a - b,
        holds=holds,
        fixing=fixing,
    )


def _along(joint: Joint, host: Part, guest: Part, fixing: Fixing | None) -> Iterator[Tie]:
    axis = host.slot.axes[0]
    low, high = joint.contact.low[axis], joint.contact.high[axis]
    flat = min((n for n in range(3) if n != axis), key=lambda n: joint.contact.high[n] - joint.contact.low[n])
    for share in PLACES:
        at = low + share * (high - low)
        on_host, on_guest = list(_middle(host)), list(_middle(guest))
        on_host[axis] = on_guest[axis] = at
        yield Tie(
            joint=joint,
            host=host,
            guest=guest,
            on_host=(on_host[0], on_host[1], on_host[2]),
            on_guest=(on_guest[0], on_guest[1], on_guest[2]),
            across=flat,
            holds="",
            fixing=fixing,
            share=1 / len(PLACES),
        )


def _middle(part: Part) -> Vector:
    x, y, z = ((a + b) / 2 for a, b in zip(part.blank.low, part.blank.high, strict=True))
    return x, y, z


def _holds(joint: Joint, host: Part, guest: Part, fixing: Fixing | None, blocks: Collection[str]) -> Holds:
    """What keeps a guest from turning on its host in the plane of both."""
    if joint.how.takes_block and {joint.kind, guest.level or "", guest.identity} & set(blocks):
        return "corner block"
    if joint.how.shoulders and _closed(joint, host):
        return "shoulders"
    counts = fixing is not None and fixing.full and not fixing.drive.into_end and fixing.lateral != 0.0
    if counts and fixing is not None and spread(fixing) > TOUCH:
        return "fasteners"
    return ""


def _closed(joint: Joint, host: Part) -> bool:
    """Whether the host's wood stands on both sides of its cut."""
    axis = host.slot.axes[0]
    own = [cut.box for cut in joint.cuts if cut.part == host.identity]
    return all(
        box.low[axis] > host.blank.low[axis] + TOUCH and box.high[axis] < host.blank.high[axis] - TOUCH for box in own
    )


def spread(fixing: Fixing) -> float:
    """Sum of the squares of the distances of its fasteners from their middle, by the furthest. [mm]

    What one holds across times this is the moment that all hold together: those nearer the middle bear less.
    """
    away = distances(fixing)
    most = max(away, default=0.0)
    return sum(one**2 for one in away) / most if most > TOUCH else 0.0


def distances(fixing: Fixing) -> list[float]:
    """How far each of its fasteners is from the middle of all. [mm]"""
    plane = [n for n in range(3) if n != fixing.drive.axis]
    at = [[float(one.at[n]) for n in plane] for one in fixing.driven]
    middle = [sum(own) / len(at) for own in zip(*at, strict=True)]
    return [math.dist(one, middle) for one in at]
