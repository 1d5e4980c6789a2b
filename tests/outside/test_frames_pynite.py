"""Frames of bars against PyNite, a general-purpose finite-element library for frames: the same nodes, bars, hinges,
supports and loads, taken from our result as they stand.
"""

from __future__ import annotations

import numpy as np
import pytest
from designs import DESIGNS
from Pynite import FEModel3D
from Pynite.PhysMember import PhysMember

from benchjoin import Case, Line, Point, Push, Spread, lay_out, strength
from benchjoin.wood.bars import SLACK

PARTED = PhysMember.descritize


@pytest.fixture(autouse=True)
def tied_at_their_ends_only(monkeypatch):
    """PyNite joins members to every node that lies on them; ours meet at their ends only."""

    def own_ends(member):
        nodes = member.model.nodes
        member.model.nodes = {node.name: node for node in (member.i_node, member.j_node)}
        try:
            PARTED(member)
        finally:
            member.model.nodes = nodes

    monkeypatch.setattr(PhysMember, "descritize", own_ends)


WAYS = ("FX", "FY", "FZ", "MX", "MY", "MZ")


def in_pynite(solved):
    """A solved case as a model of PyNite, analysed."""
    model, other = solved.model, FEModel3D()
    for number, node in enumerate(model.nodes):
        other.add_node(f"N{number}", *node.at)
    for number, bar in enumerate(model.bars):
        area = bar.area * (SLACK if number in model.slack else 1.0)
        other.add_material(f"M{number}", bar.stiff, bar.shear, 0.3, 0.0)
        other.add_section(f"S{number}", area, *bar.inertia, bar.torsion)
        other.add_member(f"B{number}", f"N{bar.start}", f"N{bar.end}", f"M{number}", f"S{number}")
        turned_to(other, number, bar)
    held = np.zeros((len(model.nodes), 6), dtype=bool)
    for support in model.supports:
        held[support.node] |= np.array(support.held)
    for number in np.flatnonzero(held.any(axis=1)).tolist():
        other.def_support(f"N{number}", *map(bool, held[number]))
    load(other, *solved.given)
    other.analyze_linear(check_stability=False)
    return other


def load(other, nodal, spread):
    """Loads on nodes and on members."""
    for number, force in nodal.items():
        for way, value in zip(WAYS, force, strict=True):
            if value:
                other.add_node_load(f"N{number}", way, float(value))
    for number, force in spread.items():
        for way, value in zip(WAYS, force, strict=False):
            if value:
                other.add_member_dist_load(f"B{number}", way, value, value)


def turned_to(other, number, bar):
    """PyNite chooses a member's own axes; inertia and hinges are handed over about these."""
    member = other.members[f"B{number}"]
    own = np.abs(member.T()[:3, :3]).argmax(axis=1)  # the axis of the world next to each of its own
    second, third = (bar.axis + 1) % 3, (bar.axis + 2) % 3
    about = {second: bar.inertia[0], third: bar.inertia[1]}
    member.section.Iy, member.section.Iz = about[own[1]], about[own[2]]
    hinges = {
        f"R{'xyz'[n]}{end}": True
        for end, free in (("i", bar.free_start), ("j", bar.free))
        for n in range(3)
        if own[n] in free
    }
    if hinges:
        other.def_releases(f"B{number}", **hinges)


def compare(solved, share=0.02):
    """Movements of all nodes and forces at both ends of all bars of wood, within a share of the largest."""
    other = in_pynite(solved)
    combo = "Combo 1"
    theirs = np.array(
        [
            [getattr(other.nodes[f"N{n}"], way)[combo] for way in ("DX", "DY", "DZ")]
            for n in range(len(solved.model.nodes))
        ]
    )
    ours = solved.solution.moved[:, :3]
    assert np.abs(ours - theirs).max() <= share * np.abs(theirs).max()
    wood = [number for number, bar in enumerate(solved.model.bars) if bar.part]
    felt = np.array([(other.members[f"B{n}"].T().T @ other.members[f"B{n}"].f(combo)).ravel() for n in wood])
    own = solved.solution.forces[wood]
    for kind in (slice(0, 3), slice(3, 6), slice(6, 9), slice(9, 12)):
        assert np.abs(own[:, kind] - felt[:, kind]).max() <= share * np.abs(felt[:, kind]).max()


CASES = {
    "bench": [
        Case("shelves", [Spread("foot shelf", "60 kg"), Spread("bench", "90 kg")]),
        Case("climbing", [Point("bench", "100 kg", along="20 in", across="front edge")], "short"),
        Case("pulled", [Spread("foot shelf", "60 kg"), Push(60, "back")], "short"),
    ],
    "stand": [
        Case("boots", [Spread("boot rack", "80 kg"), Line("seat", "150 kg", start=200, end=1500)]),
        Case("pushed along", [Spread("seat", "80 kg"), Push(150, "right", height=900)], "short"),
    ],
    "rack": [Case("prints", [Spread("tray 2", "20 kg"), Spread("tray 5", "20 kg")])],
    "tools": [Case("hung", [Line("spatulas", "30 kg"), Push(90, "front", height=1000)], "long")],
}


@pytest.mark.parametrize("name", ["tools"])
def test_a_row_of_uprights_feels_and_moves_as_in_pynite(name):
    found = strength(lay_out(DESIGNS[name]), CASES[name], wood="western larch")
    assert [one.tips for one in found.solved] == [False]
    for one in found.solved:
        compare(one)


@pytest.mark.slow
@pytest.mark.parametrize("name", ["bench", "stand", "rack"])
def test_whole_frames_of_the_gallery_feel_and_move_as_in_pynite(name):
    found = strength(lay_out(DESIGNS[name]), CASES[name], wood="western larch", corner_blocks=["butt"])
    assert len(found.solved) == len(CASES[name])
    for one in found.solved:
        assert not one.tips
        compare(one)
