"""Random runs of members and clears in exact numbers: `from exact_runs import runs`."""

from __future__ import annotations

import itertools
import math
from fractions import Fraction

import attrs
from hypothesis import strategies as st

SIXTY_FOURTHS = st.integers(1, 64 * 600).map(lambda n: Fraction(n, 64))
"""Sizes that a float holds exactly, so that exact and floating sums can be held against each other. [mm]"""


@attrs.frozen(kw_only=True)
class Run:
    """A run in exact numbers: sizes (None where open), shares, what each clear is less by, and pins by edge. [mm]"""

    sizes: tuple[Fraction | None, ...]
    shares: tuple[Fraction, ...]
    less: tuple[Fraction, ...]
    pins: dict[int, Fraction]

    def given(self):
        """The arguments of `runs.edges`, sizes first."""
        sizes = [math.nan if size is None else float(size) for size in self.sizes]
        return sizes, {
            "shares": [float(share) for share in self.shares],
            "less": [float(step) for step in self.less],
            "pins": {edge: float(at) for edge, at in self.pins.items()},
        }


@st.composite
def runs(draw, *, count=None, spoiled=True):
    """Runs that mostly come out, since their pins are read off true sizes; some spoiled ones have a pin moved."""
    count = draw(st.integers(1, 8)) if count is None else count
    true = draw(st.lists(SIXTY_FOURTHS, min_size=count, max_size=count))
    opened = draw(st.lists(st.booleans(), min_size=count, max_size=count))
    shares = draw(st.lists(st.sampled_from([1, 2, 3, "1/2", "1/3"]).map(Fraction), min_size=count, max_size=count))
    less = draw(st.lists(st.sampled_from([0, 0, 0, "7/64", 30]).map(Fraction), min_size=count, max_size=count))
    edges = [Fraction(0), *itertools.accumulate(true)]
    least = draw(st.sampled_from([0, 1, 1, 2])) if count > 1 else 0
    pinned = draw(st.lists(st.integers(1, count), unique=True, min_size=least, max_size=4))
    pins = {edge: edges[edge] for edge in pinned}
    if spoiled and pinned and draw(st.booleans()):
        pins[pinned[0]] += draw(st.sampled_from([-1, 1])) * draw(SIXTY_FOURTHS)
    sizes = tuple(None if is_open else size for is_open, size in zip(opened, true, strict=True))
    return Run(sizes=sizes, shares=tuple(shares), less=tuple(less), pins=pins)
