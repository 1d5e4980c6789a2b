"""How much of a wood's average strength is worked with, and how far it may sag: stated factors, none of them a design.

Handbook strengths are averages of clear, straight-grained, dry wood that breaks in minutes. What is worked with is
less: the weakest in twenty, knots and sloping grain, time and wet, and a share kept back for what is not known.
"""

from __future__ import annotations

from typing import Literal

import attrs

from ..sources import Source

Strength = Literal["rupture", "crushing", "bearing", "shear"]

VARIATION_SOURCE = Source("Wood Handbook FPL-GTR-282 (2021)", "Table 5-6", standing="from memory")
VARIATION: dict[Strength, float] = {"rupture": 0.16, "crushing": 0.18, "bearing": 0.28, "shear": 0.14}
"""Coefficient of variation of clear wood; rupture in bending, crushing along the grain, bearing across it."""
ONE_IN_TWENTY = 1.645
"""So many deviations below the average lies the weakest in twenty of a normal distribution."""

SOUND: dict[Strength, float] = {"rupture": 0.5, "crushing": 0.65, "bearing": 1.0, "shear": 0.5}
"""What knots, sloping grain and checks leave of clear wood in a middling grade. Common practice, no source."""

TIME_SOURCE = Source("EN 1995-1-1", "Table 3.1, solid timber; as two public files have it", standing="transcribed")
TIME: dict[bool, dict[str, float]] = {
    False: {"permanent": 0.6, "long": 0.7, "medium": 0.8, "short": 0.9, "instant": 1.1},
    True: {"permanent": 0.5, "long": 0.55, "medium": 0.65, "short": 0.7, "instant": 0.9},
}
"""Time under load and wet in one: outdoors (service class 3) or not (1 and 2)."""

MATERIAL = 1.3
"""Divides the strength of solid timber: EN 1995-1-1, base text."""
OVERLOAD = 1.5
"""Divides it once more, where that standard would raise the loads: EN 1990, from memory."""

CREEP_SOURCE = Source("EN 1995-1-1", "Table 3.2, solid timber", standing="from memory")
CREEP: dict[bool, tuple[float, float]] = {False: (0.6, 0.8), True: (0.8, 2.0)}
"""What years add to the sag under a lasting load, as shares of it, least and most: outdoors or not."""

SAG = 200.0
"""A board or rail that sags by more than its span over this looks tired. Common practice, no source."""
OVER_FACTOR = 1.5
"""What holds it down is to be so many times what tips it. Common practice, no source."""
BUCKLING = 2.0
"""Free lengths of legs count so many times where the frame may sway. Common practice, no source."""

STUD_SOURCE = Source("IRC R602.6", "notches in studs: 25 % in bearing walls, 40 % in others")
STUD_NOTCH = (0.25, 0.40)


@attrs.frozen
class Reference:
    """A load that a published test of furniture uses, to stand beside a result; not a design load."""

    words: str
    force: float
    source: Source


SEATING = Source("EN 12520:2024", "as a public file quotes its preview; amendment A1 not read", standing="transcribed")
REFERENCES: tuple[Reference, ...] = (
    Reference("seat or front edge of a domestic seat", 1300.0, SEATING),
    Reference("each empty place of a bench", 750.0, SEATING),
)


def working(average: float, kind: Strength, *, time: str, outdoors: bool, sound: float | None = None) -> float:
    """The stress to work with. [as the average]

    Parameters
    ----------
    average : float
        Average strength of clear dry wood.
    kind : str
        Which strength: "rupture", "crushing", "bearing" or "shear".
    time : str
        How long the load stays.
    outdoors : bool
        Whether it gets wet.
    sound : float, optional
        What knots leave of it; that of `SOUND` without.

    Notes
    -----
    ``average (1 − 1.645 V) sound k_mod / (1.3 · 1.5)``.

    Examples
    --------
    >>> round(working(90.0, "rupture", time="medium", outdoors=True), 2)
    11.05
    """
    left = 1 - ONE_IN_TWENTY * VARIATION[kind]
    knots = SOUND[kind] if sound is None or kind == "bearing" else sound
    return average * left * knots * TIME[outdoors][time] / (MATERIAL * OVERLOAD)
