"""Swelling: how much a board of a known wood moves across its width, and by which of two rules that was reckoned.

A species has a total shrinkage, and it or the group that it is sold in a coefficient. Whichever moves more is taken:
bought red oak swells more than the shrinkage of northern red oak says.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Literal

from ..errors import AddressError, typed
from ..trade.species import Direction, Species
from ..wood.movement import coefficient, larger_change

Grain = Literal["flat", "quarter", "unknown"]
DIRECTIONS: Mapping[Grain, tuple[Direction, ...]] = {
    "flat": ("tangential",),
    "quarter": ("radial",),
    "unknown": ("tangential", "radial"),
}
"""How a board of some grain may move across its width; the most of them counts."""
APART = 0.02
"""Two rules that agree to such a part are one: what the printed figures are rounded to. Arithmetic."""


def swelling(width: float, wood: Species, way: Direction, before: float, after: float) -> float:
    """How much a board swells across its width one way of its rings; less than zero where it shrinks. [mm]"""
    total = wood.shrinkage
    shrinkage = total.radial if way == "radial" else total.tangential
    return float(larger_change(width, shrinkage, wood.coefficient(way), before, after, total.start))


def board_change(width: float, wood: Species, before: float, after: float, grain: Grain) -> float:
    """How much a board swells across its width between two moisture contents; less than zero where it shrinks. [mm]

    Raises
    ------
    AddressError
        If there is no such grain.
    """
    if grain not in DIRECTIONS:
        known = tuple(DIRECTIONS)
        raise AddressError(f"There is no grain {typed(grain)}. Choose {', '.join(known)}.", address=grain, known=known)
    return max((swelling(width, wood, way, before, after) for way in DIRECTIONS[grain]), key=abs)


def which_rule(woods: Iterable[Species]) -> tuple[str, ...]:
    """A note for each wood whose coefficient and total shrinkage differ: which of them was taken, and by how much."""
    return tuple(note for wood in dict.fromkeys(woods) for note in [_rule_of(wood)] if note)


def _rule_of(wood: Species) -> str:
    group, total = wood.coefficients, wood.shrinkage
    by_shrinkage = float(coefficient(total.tangential, total.start))
    share = group.tangential / by_shrinkage - 1
    if abs(share) <= APART:
        return ""
    rules = f"its total shrinkage ({total.tangential:g} %)", f"the coefficient of {group.wood or wood.name}"
    less, more = rules if share > 0 else rules[::-1]
    over = max(group.tangential, by_shrinkage) / min(group.tangential, by_shrinkage) - 1
    return f"{wood.name} moves by {more}, {over:.0%} more than by {less}; the larger is taken."
