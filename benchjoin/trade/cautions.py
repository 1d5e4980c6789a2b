"""Cautions for the machines, short enough to be read, each with its authority.

They stand on the sheets that are carried to the machine. They are reminders for somebody who knows the machine, not
training: its manual and the rules of the place come first, and the first caution of every list says so.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

import attrs

from ..sources import COMMON_PRACTICE, Source

OSHA_COMBS = Source(
    "29 CFR 1910.213(a)(14)", "combs or jigs where a guard cannot be; never freehand is stricter, and a habit"
)
OSHA_SPREADER = Source("29 CFR 1910.213(c)(2)", "spreader replaced at once after grooving", standing="from memory")

LIGHT = Source("manuals of two makers of table saws", "deep dadoes in several light passes; no depth is printed")
Work = Literal["any machine", "dado head", "crosscut", "rip", "router", "saw and chisel", "drill and driver"]


@attrs.frozen
class Caution:
    """One caution: the work that it belongs to, its words, and its authority."""

    work: Work
    words: str
    source: Source = COMMON_PRACTICE


CAUTIONS: tuple[Caution, ...] = (
    Caution("any machine", "The machine's manual and local rules come first; this only reminds."),
    Caution("any machine", "Eyes, ears and lungs: glasses, muffs, dust drawn off or a mask."),
    Caution("any machine", "Unplug before you change a blade, a head or a bit."),
    Caution("dado head", "Take the insert that is made for the head."),
    Caution("dado head", "Chippers only between both outside blades, teeth staggered."),
    Caution(
        "dado head",
        "Deep notches in several light passes; the saw's manual comes before any bite that is set here.",
        LIGHT,
    ),
    Caution("dado head", "Never freehand: the work against the gauge, held by combs or a jig.", OSHA_COMBS),
    Caution("dado head", "The head comes out through the wood behind the fence: keep thumbs clear of that place."),
    Caution("dado head", "Never the rip fence as a stop for a cut across the grain."),
    Caution("dado head", "Support long legs at the far end; notch no blank below the machine's least length."),
    Caution("dado head", "Guard and riving knife go back at once when the notches are done.", OSHA_SPREADER),
    Caution("crosscut", "Never the rip fence as a stop; the stop stands on the gauge."),
    Caution("crosscut", "The offcut lies free: nothing may trap it between blade, stop and fence."),
    Caution("crosscut", "Support long parts at the far end."),
    Caution("rip", "No blank below the machine's least length."),
    Caution("rip", "Riving knife and guard on; a push stick for what is narrow; stand beside the line of the cut."),
    Caution("rip", "Straight edge to the fence, flat face down; wood that closes on the blade is stopped and wedged."),
    Caution("router", "Clamp work and guide; move against the turn of the bit; let it stop before you lift it."),
    Caution("saw and chisel", "Clamp the work; both hands behind the edge of the chisel."),
    Caution("drill and driver", "Clamp the work, back it up where the drill comes out; no gloves, no loose sleeves."),
    Caution("drill and driver", "A hand behind the place where a point comes out is a hand too many."),
)


def cautions(*works: Work) -> tuple[str, ...]:
    """The words for some kinds of work, those for any machine first.

    >>> cautions("saw and chisel")[-1]
    'Clamp the work; both hands behind the edge of the chisel.'
    """
    return tuple(_words(("any machine", *works)))


def _words(works: Sequence[Work]) -> Iterator[str]:
    for work in works:
        yield from (caution.words for caution in CAUTIONS if caution.work == work)
