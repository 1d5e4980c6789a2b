"""Working heights and reach: what guides for standing work say of the height of a surface by the elbow.

They do not agree, so each band names its source and nothing is taken as the right one.
"""

from __future__ import annotations

from typing import Literal

import attrs

from ..sources import Source

Work = Literal["fine", "light", "heavy"]
ONTARIO = Source(
    "Pheasant & Haslegrave, Bodyspace, 3rd ed. 2006", "as the Ontario MSD guideline gives it", standing="transcribed"
)
AUSTRIA = Source("AUVA leaflet on standing work", "Austria; the wording on its means is ambiguous")
BROCHURE = Source("an actuator maker's brochure on workplaces", "no source named there", standing="secondary")
SAFETY_CENTRE = Source(
    "CCOHS", "reach, as a brochure credits it; the figure's labels were not seen in place", standing="secondary"
)


@attrs.frozen(kw_only=True)
class Band:
    """Heights of a surface over the elbow, from and to; below it negative. [mm]"""

    work: Work
    low: float
    high: float
    source: Source


BANDS: tuple[Band, ...] = (
    Band(work="fine", low=50.0, high=100.0, source=ONTARIO),
    Band(work="fine", low=50.0, high=50.0, source=BROCHURE),
    Band(work="light", low=-100.0, high=-50.0, source=ONTARIO),
    Band(work="light", low=-100.0, high=-50.0, source=AUSTRIA),
    Band(work="heavy", low=-250.0, high=-100.0, source=ONTARIO),
    Band(work="heavy", low=-400.0, high=-150.0, source=AUSTRIA),
    Band(work="heavy", low=-400.0, high=-200.0, source=BROCHURE),
)
REACH = (250.0, 500.0)
"""How far from the body things are that are used all the time, and now and then. [mm] SAFETY_CENTRE."""
ELBOWS: tuple[tuple[str, float], ...] = (("5 of 100 women", 975.0), ("95 of 100 men", 1160.0))
"""Elbow heights without shoes: up to which the shortest, and the tallest, are. [mm]"""
ELBOWS_SOURCE = Source("MIL-STD-1472G, App. B", "as NUREG-0700 Rev. 3 Table 11.4 gives it", standing="transcribed")
