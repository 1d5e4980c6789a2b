"""Weights: what the finished parts weigh, notches and all, from their wood and its moisture.

Whoever lifts the bench, or works out whether it tips, asks here.

    weights(layout, moisture=12).total
"""

from __future__ import annotations

from collections.abc import Mapping

import attrs

from ..errors import LumberError
from ..frame.slots import Slot
from ..layout.layout import Layout
from ..tables import ShownAsTable, Table
from ..trade.species import Species, species
from ..wood.weight import density, gravity_at

POUND = 0.45359237
"""One pound. [kg]"""


@attrs.frozen(kw_only=True, repr=False)
class Weights(ShownAsTable):
    """Weight of every part by its name [kg], at a moisture content. [%]"""

    layout: Layout
    moisture: float
    parts: Mapping[str, float]

    @property
    def total(self) -> float:
        """All pieces together. [kg]"""
        return sum(self.parts.values())

    def piece(self, number: int = 1) -> float:
        """One piece. [kg]

        Raises
        ------
        AddressError
            If there is no such piece.
        """
        return sum(self.parts[part.name] for part in self.layout.piece(number))

    def table(self) -> Table:
        """Parts of one piece, heaviest first, and the piece."""
        unit, factor = ("lb", POUND) if self.layout.frame.tape.unit == "in" else ("kg", 1.0)
        found = sorted(self.layout.piece(1), key=lambda part: -self.parts[part.name])
        rows = [(part.identity, f"{self.parts[part.name] / factor:.1f}") for part in found]
        rows.append(("one piece", f"{self.piece() / factor:.1f}"))
        notes = (f"At {self.moisture:g} % moisture content; averages of clear wood, screws not counted.",)
        return Table(f"Weights: {self.layout.frame.name}", ("Part", f"Weight ({unit})"), tuple(rows), notes, "lr")

    def __repr__(self) -> str:
        return f"<Weights of {self.layout.frame.name}: {self.piece():.1f} kg a piece, {self.total:.1f} kg in all>"


def weights(layout: Layout, *, moisture: float = 12.0, wood: str | Species | None = None) -> Weights:
    """Weigh a layout.

    Parameters
    ----------
    layout : Layout
    moisture : float
        Moisture content. [%]
    wood : str or Species, optional
        The wood of all stock that does not say its own.

    Raises
    ------
    LumberError
        If a stock does not say its species and none is given, or the tables have none of that name.
    """
    otherwise = species(wood) if isinstance(wood, str) else wood
    heavy: dict[str, float] = {}
    for slot in layout.frame.slots():
        heavy[slot.name] = weight_of(wood_of(slot, otherwise), moisture)
    parts = {part.name: part.volume * 1e-9 * heavy[part.identity] for part in layout.parts}
    return Weights(layout=layout, moisture=moisture, parts=parts)


def wood_of(slot: Slot, otherwise: Species | None) -> Species:
    """The species of a member's stock, or the other one where it says none.

    Raises
    ------
    LumberError
        If there is neither.
    """
    own = species(slot.stock.species) if slot.stock.species else otherwise
    if own is None:
        raise LumberError(
            f'Stock "{slot.stock.name}" of {slot.name} does not say its species. Give the stock one, or write wood=.'
        )
    return own


def weight_of(wood: Species, moisture: float) -> float:
    """Density of a species at a moisture content. [kg/m³]"""
    shrinkage = wood.shrinkage
    gravity = gravity_at(wood.dry.gravity, shrinkage.volumetric, moisture, known_at=12.0, start=shrinkage.start)
    return float(density(gravity, moisture))
