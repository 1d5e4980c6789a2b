"""More than is made of wood is a slip, and told at once, before it takes time or memory."""

from __future__ import annotations

import attrs
import numpy as np
import pytest
from stand import STAND

from benchjoin import Bearers, Boards, Clear, Level, Stock, lay_out
from benchjoin.errors import BenchjoinError, DescriptionError, RunError
from benchjoin.sweep import sweep


def carrying(run, **more):
    level = Level("low", front=60, back=60, ends=60, carries=[run])
    stack = [STAND.stack[0], level, *STAND.stack[2:]]
    return attrs.evolve(STAND, quantity=1, length=20000, stack=stack, **more)


@pytest.mark.parametrize("width, gap", [(2, 1), (0.01, 0.01)])
def test_slats_as_thin_as_hairs(width, gap):
    slat = Stock("slat", thickness=10, width=width)
    with pytest.raises(RunError, match=r"low: boards: \d+ would go in, and 1000 are the most"):
        lay_out(carrying(Boards(slat, run="across", gap=gap)))


def test_a_thousand_slats_are_no_slip():
    """By hand: 20,000 in steps of 18 + 2 mm; the last gap is none."""
    layout = lay_out(carrying(Boards(Stock("slat", thickness=10, width=18), run="across", gap=2)))
    assert sum(part.slot.run == "boards" for part in layout.parts) == 1000


def test_bearers_a_hair_apart():
    batten = Stock("batten", thickness=0.1, width=20)
    with pytest.raises(RunError, match=r"\d+ would go in, and 1000 are the most"):
        lay_out(carrying(Bearers(batten, span=0.5)))


def test_more_parts_than_a_yard_of_lumber():
    with pytest.raises(DescriptionError, match="would have 610000 parts in 1000 pieces, and 100000 are the most"):
        lay_out(attrs.evolve(STAND, length=90000, bays=[Clear()] * 300, quantity=1000))


def test_more_variants_than_memory():
    with pytest.raises(BenchjoinError, match="9000000 variants are asked for, and 5000000 are the most"):
        sweep(STAND, {"length": np.linspace(600, 900, 3000), "depth": np.linspace(300, 400, 3000)})
