"""Spacing: how far a fastener keeps from edges and ends and from the next one, in diameters.

A rule set says it for fasteners of one kind. Ends lie along the grain, edges across it; an end or edge is loaded where
the fastener pushes towards it.

>>> lead_holes(4.0).end * 4.0, lead_holes(4.0).edge * 4.0
(28.0, 12.0)
"""

from __future__ import annotations

import attrs

from ..sources import COMMON_PRACTICE, Source

EUROCODE_SCREWS = Source("EN 1995-1-1", "Table 8.2, screws to 6 mm at the root, in lead holes", standing="transcribed")
EUROCODE_UNDRILLED = Source("EN 1995-1-1", "Table 8.2, without lead holes", standing="transcribed")
EUROCODE_BOLTS = Source("EN 1995-1-1", "Table 8.4", standing="secondary")


@attrs.frozen(kw_only=True)
class Spacing:
    """Least distances in diameters.

    in_row along the grain, rows across it, end and edge to what the fastener does not push towards, loaded_end and
    loaded_edge to what it does; least_end holds in mm, whatever the diameter.
    """

    name: str
    in_row: float
    rows: float
    end: float
    loaded_end: float
    edge: float
    loaded_edge: float
    least_end: float = 0.0
    source: Source = COMMON_PRACTICE


def lead_holes(diameter: float) -> Spacing:
    """Nails and screws across the grain in lead holes, pushed along the grain or across it, whichever asks for more.

    EN 1995-1-1 Table 8.2.
    """
    return Spacing(
        name="with lead holes",
        in_row=5.0,
        rows=4.0,
        end=7.0,
        loaded_end=12.0,
        edge=3.0,
        loaded_edge=5.0 if diameter < 5 else 7.0,
        source=EUROCODE_SCREWS,
    )


def no_lead_holes(diameter: float, density: float) -> Spacing:
    """Nails driven without lead holes in wood of a characteristic density up to 500. [kg/m³]

    EN 1995-1-1 Table 8.2; heavier wood is always drilled (8.3.1.1).
    """
    if density <= 420:
        return Spacing(
            name="without lead holes",
            in_row=10.0 if diameter < 5 else 12.0,
            rows=5.0,
            end=10.0,
            loaded_end=15.0,
            edge=5.0,
            loaded_edge=7.0 if diameter < 5 else 10.0,
            source=EUROCODE_UNDRILLED,
        )
    return Spacing(
        name="without lead holes",
        in_row=15.0,
        rows=7.0,
        end=15.0,
        loaded_end=20.0,
        edge=7.0,
        loaded_edge=9.0 if diameter < 5 else 12.0,
        source=EUROCODE_UNDRILLED,
    )


def bolts(diameter: float) -> Spacing:
    """Bolts, EN 1995-1-1 Table 8.4: a loaded end is at least 80 mm away."""
    return Spacing(
        name="bolts",
        in_row=5.0,
        rows=4.0,
        end=4.0,
        loaded_end=7.0,
        edge=3.0,
        loaded_edge=4.0,
        least_end=80.0,
        source=EUROCODE_BOLTS,
    )


LIGHT = Spacing(
    name="carries nothing",
    in_row=4.0,
    rows=3.0,
    end=4.0,
    loaded_end=4.0,
    edge=1.5,
    loaded_edge=1.5,
)
"""What only keeps a part in its place, in lead holes. Common practice, no source: nearer, and thin wood splits."""
