"""What the fasteners of a joint hold: values of the Wood Handbook turned into loads to work with.

Not a design: clear wood, dry, one load at a time. The conditions stand in CONDITIONS and on the sheet.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from ...sources import Source
from ...trade.fasteners import END_GRAIN, steel_of
from ...trade.species import Species
from ...wood.holding import lag_withdrawal, lateral, lateral_constant, nail_withdrawal, screw_withdrawal, yield_modes
from .duty import Drive
from .fixing import Driven
from .placing import PENETRATION

WITHDRAWAL_SHARE = 5.5
"""The handbook's ultimate by the code's load to work with, both in lb and in: 15,700 / 2,850. Arithmetic."""
LATERAL_SHARE = 1.6
"""A load at the proportional limit by one to work with, Wood Handbook ch. 8, from memory."""
FULL_DEPTH = 7.0
"""So many diameters in the member with the point ask Eq. 8-13 for; less counts in proportion."""
IN_END = 2 / 3
"""Of a lateral load where the point is in end grain. Wood Handbook ch. 8, from memory."""
CONDITIONS = (
    "Loads to work with, of clear dry wood: withdrawal the handbook's ultimate by 5.5, lateral its load at the "
    "proportional limit by 1.6 or the yield of the screw, whichever is less. None in withdrawal from end grain, two "
    "thirds across it; none across with less than 6 diameters in. Wet or green wood holds less, and so does wood that "
    "dries after assembly. No engineering design: local codes and licensed practice decide where people are carried."
)
SOURCES: tuple[Source, ...] = (
    Source(
        "Wood Handbook FPL-GTR-282 (2021)",
        "ch. 8: Eq. 8-1, 8-10, 8-13 to 8-15, Tables 8-4, 8-5",
        standing="transcribed",
    ),
    END_GRAIN,
)


def yield_share(diameter: float) -> float:
    """The yield of a screw by a load to work with: 2.2 up to 4.3 mm, 3 from 6.35 mm, NDS, from memory."""
    return float(np.clip(10 * diameter / 25.4 + 0.5, 2.2, 3.0))


def held(drive: Drive, driven: Sequence[Driven], host: Species, guest: Species) -> tuple[float, float]:
    """What the fasteners of a joint hold together across and along themselves. [N]

    NaN where the tables have no value for such wood; bolts are held by their washers and have no withdrawal of their
    own, which is nought.
    """
    if not driven:
        return 0.0, 0.0
    one, woods = driven[0], (host, guest)
    if one.size.through:
        return float("nan"), 0.0
    head, point = (host, guest) if drive.head is not drive.guest else (guest, host)
    return len(driven) * _across(drive, one, head, point, woods), len(driven) * _along(drive, one, point)


def _along(drive: Drive, one: Driven, point: Species) -> float:
    if drive.into_end:
        return 0.0
    thread, d = one.size.thread(one.length, one.inside), one.size.diameter
    holds = {"nail": nail_withdrawal, "structural screw": lag_withdrawal}.get(one.size.kind, screw_withdrawal)
    return float(holds(point.dry.gravity, d, thread)) / WITHDRAWAL_SHARE


def _across(drive: Drive, one: Driven, head: Species, point: Species, woods: Sequence[Species]) -> float:
    d = one.size.diameter
    if one.inside < PENETRATION * d - 1e-6:
        return 0.0
    kind = {"nail": "nail", "structural screw": "lag screw"}.get(one.size.kind, "screw")
    limits = [float(lateral(_constant(wood, kind), d, kind=kind)) for wood in woods]
    limit = min(limits) / LATERAL_SHARE * min(1.0, one.inside / (FULL_DEPTH * d))
    modes = yield_modes(d, one.thick, head.dry.gravity, point.dry.gravity, steel_of(d))
    found = min(limit, float(modes.min()) / yield_share(d))
    return found * IN_END if drive.into_end else found


def _constant(wood: Species, kind: str) -> float:
    return float(lateral_constant(wood.dry.gravity, hardwood=wood.hardwood, kind=kind))
