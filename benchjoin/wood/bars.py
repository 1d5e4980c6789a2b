"""A frame of straight bars: nodes, bars with hinges, supports; loads in, movements and forces out.

Bars lie along the axes of the world, which is all that benches need. A bar bends without shear (Euler and Bernoulli):
handbook stiffness is measured on beams, shear and all. Any frame program solves the same model: six movements a node,
section values about each bar's own axes, hinges at one end.

>>> ends = (Node((0.0, 0.0, 0.0)), Node((1000.0, 0.0, 0.0)))
>>> beam = Bar(0, 1, axis=0, area=4000.0, inertia=(1e6, 2e6), torsion=1e6, stiff=10000.0, shear=625.0)
>>> model = Model(ends, (beam,), (Support(0, (True,) * 6),))
>>> round(float(solve(model, {1: (0, 0, -100.0, 0, 0, 0)}).moved[1][2]), 3)  # F L³ / 3 E I
-3.333
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from functools import cached_property
from typing import Any

import attrs
import numpy as np

from ..solids import Vector
from .movement import Array

FREE = 1e-6
"""A trace of stiffness for every movement, so that a mechanism can be told instead of dividing by nought. [N/mm]"""
SLACK = 1e-9
"""What is left of the stiffness of a bar that is slack, along itself."""
LOOSE = 1e-4
"""Less stiffness than this against its easiest movement, and a frame is a mechanism. [N/mm]"""


@attrs.frozen
class Node:
    """A place where bars meet. [mm]"""

    at: Vector


@attrs.frozen(kw_only=True)
class Bar:
    """A straight bar from a node to another that lies further along an axis of the world. [N, mm]

    inertia is about its second and its third axis: a bar along y (1) has z for its second, x for its third. free are
    the axes of the world about which its end turns without a moment, free_start those of its start. part names the
    wood; nothing for a link, which only ties two nodes.
    """

    start: int = attrs.field(kw_only=False)
    end: int = attrs.field(kw_only=False)
    axis: int
    area: float
    inertia: tuple[float, float]
    torsion: float
    stiff: float
    shear: float
    free: tuple[int, ...] = ()
    free_start: tuple[int, ...] = ()
    part: str = ""


@attrs.frozen
class Support:
    """A node that is held: its three movements along, and its three turns about, the axes of the world."""

    node: int
    held: tuple[bool, bool, bool, bool, bool, bool]


@attrs.frozen(slots=False)
class Model:
    """Nodes, bars and supports; slack are numbers of bars that neither pull nor press along themselves."""

    nodes: tuple[Node, ...]
    bars: tuple[Bar, ...]
    supports: tuple[Support, ...]
    slack: tuple[int, ...] = ()

    @cached_property
    def lengths(self) -> Array:
        """Length of each bar. [mm]"""
        at = np.array([node.at for node in self.nodes])
        ends = np.array([(bar.start, bar.end) for bar in self.bars])
        return np.asarray(np.abs(at[ends[:, 1]] - at[ends[:, 0]]).max(axis=1))

    @cached_property
    def stiffness(self) -> Array:
        """Stiffness of each bar in the world, its hinges let go, shape (bars, 12, 12)."""
        found = _stiffness(self.bars, self.lengths, set(self.slack))
        for number, bar in enumerate(self.bars):
            for at in (*(9 + axis for axis in bar.free), *(3 + axis for axis in bar.free_start)):
                _let_go(found[number], at)
        return found

    @cached_property
    def places(self) -> Any:
        """The twelve movements of each bar among those of all nodes, shape (bars, 12)."""
        ends = np.array([(bar.start, bar.end) for bar in self.bars])
        return (6 * ends[:, :, None] + np.arange(6)).reshape(len(self.bars), 12)

    @cached_property
    def matrix(self) -> Any:
        """Stiffness of the whole, sparse."""
        from scipy.sparse import coo_matrix

        rows = np.repeat(self.places, 12, axis=1).ravel()
        columns = np.tile(self.places, (1, 12)).ravel()
        size = 6 * len(self.nodes)
        return coo_matrix((self.stiffness.ravel(), (rows, columns)), shape=(size, size)).tocsc()

    @cached_property
    def loose(self) -> Any:
        """The movements that no support holds and that some bar or other meets."""
        held = np.zeros(6 * len(self.nodes), dtype=bool)
        for support in self.supports:
            held[6 * support.node : 6 * support.node + 6] |= np.array(support.held)
        return np.flatnonzero(~held)

    @cached_property
    def _factors(self) -> Any:
        from scipy.sparse import identity
        from scipy.sparse.linalg import splu

        own = self.matrix[self.loose][:, self.loose]
        return splu((own + FREE * identity(len(self.loose))).tocsc())

    @cached_property
    def easiest(self) -> tuple[float, Array]:
        """How stiff the frame is against its easiest movement, by inverse iteration, and that movement. [N/mm]

        The movement has the shape (nodes, 6), its largest shift being 1 mm.
        """
        own = self.matrix[self.loose][:, self.loose]
        shifts = self.loose % 6 < 3
        found = np.where(shifts, np.cos(np.arange(len(self.loose))), 0.0)
        for _ in range(12):
            found = self._factors.solve(np.where(shifts, found, 0.0))
            found = found / np.abs(found[shifts]).max()
        whole = np.zeros(6 * len(self.nodes))
        whole[self.loose] = found
        return float(found @ (own @ found)) / float(np.sum(found[shifts] ** 2)), whole.reshape(-1, 6)

    def holds(self) -> bool:
        """Whether it stands without giving way to the smallest push."""
        return self.easiest[0] > LOOSE


@attrs.frozen
class Solution:
    """What loads do: movements, shape (nodes, 6); what bars feel at both ends, (bars, 12); supports, (nodes, 6).

    Forces and moments are in the axes of the world: those that the ends of a bar feel. [N, N·mm]
    """

    model: Model
    moved: Array
    forces: Array
    held: Array


def solve(
    model: Model,
    loads: Mapping[int, Sequence[float]] | Mapping[int, Array],
    spread: Mapping[int, Sequence[float]] | None = None,
) -> Solution:
    """Solve a model.

    Parameters
    ----------
    model : Model
        One that holds (`Model.holds`); another gives movements without measure.
    loads : mapping of int to sequence, shape (6,)
        Forces and moments on nodes. [N, N·mm]
    spread : mapping of int to sequence, shape (3,)
        What lies on each mm of a bar, by its number; on bars without hinges. [N/mm]

    Notes
    -----
    The displacement method: bars of length L with fixed ends under q feel q L / 2 and q L² / 12 at them.
    """
    given = np.zeros(6 * len(model.nodes))
    for node, load in loads.items():
        given[6 * node : 6 * node + 6] += np.asarray(load, dtype=float)
    fixed = _fixed(model, spread or {})
    np.subtract.at(given, model.places, fixed)
    moved = np.zeros(len(given))
    moved[model.loose] = model._factors.solve(given[model.loose])
    forces = np.einsum("bij,bj->bi", model.stiffness, moved[model.places]) + fixed
    back = model.matrix @ moved - given
    return Solution(model, moved.reshape(-1, 6), forces, back.reshape(-1, 6))


def _fixed(model: Model, spread: Mapping[int, Sequence[float]]) -> Array:
    """What supports give to bars whose ends are fixed, under a load on each mm, shape (bars, 12)."""
    found = np.zeros((len(model.bars), 12))
    if spread:
        own = list(spread)
        force = np.array([spread[number] for number in own], dtype=float)
        long = model.lengths[own][:, None]
        way = np.eye(3)[[model.bars[number].axis for number in own]]
        turn = np.cross(way, force) * long**2 / 12
        found[own] = np.hstack([-force * long / 2, -turn, -force * long / 2, turn])
    return found


def _stiffness(bars: Sequence[Bar], lengths: Array, slack: Collection[int]) -> Array:
    """Stiffness of bars without hinges in the axes of the world, shape (bars, 12, 12)."""
    found = np.zeros((len(bars), 12, 12))
    axes = np.array([bar.axis for bar in bars])
    values = np.array([(b.stiff * b.area, b.shear * b.torsion, *(b.stiff * i for i in b.inertia)) for b in bars])
    values[list(slack), 0] *= SLACK
    for axis in range(3):
        own = np.flatnonzero(axes == axis)
        if len(own) == 0:
            continue
        x, y, z = axis, (axis + 1) % 3, (axis + 2) % 3
        long, (pull, twist, about_y, about_z) = lengths[own], values[own].T
        part = np.zeros((len(own), 12, 12))
        for at, each in ((x, pull / long), (x + 3, twist / long)):
            part[:, at, at] = part[:, at + 6, at + 6] = each
            part[:, at, at + 6] = part[:, at + 6, at] = -each
        for shift, turn, stiff, sign in ((y, z + 3, about_z, 1.0), (z, y + 3, about_y, -1.0)):
            a, b, c = 12 * stiff / long**3, sign * 6 * stiff / long**2, stiff / long
            where = [shift, turn, shift + 6, turn + 6]
            own_way = np.array([[a, b, -a, b], [b, 4 * c, -b, 2 * c], [-a, -b, a, -b], [b, 2 * c, -b, 4 * c]])
            part[np.ix_(range(len(own)), where, where)] += own_way.transpose(2, 0, 1)
        found[own] = part
    return found


def _let_go(found: Array, at: int) -> None:
    """Take a hinge out of a bar: nothing is felt there, and the others feel less."""
    if found[at, at] <= 0.0:
        return
    found -= np.outer(found[:, at], found[at, :]) / found[at, at]
    found[at, :] = found[:, at] = 0.0
