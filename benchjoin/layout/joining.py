"""Joining: each guest of a piece comes to its hosts, and its joint says who gives up what."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from ..frame.joints import Butt, CutRound, HalfLap, How, Laid, Notch, Over, Planted, Rests
from ..frame.slots import Slot
from ..lengths import TOUCH
from ..runs import larger, smaller
from ..solids import Box, vector
from .blank import Blank
from .joints import butt, cut_round, half_lap, laid, notch, over, planted, rests
from .joints.meeting import Joint, Meeting, Way

JOINTS: dict[type, Way] = {
    Notch: notch,
    HalfLap: half_lap,
    Butt: butt,
    Planted: planted,
    Over: over,
    Laid: laid,
    Rests: rests,
    CutRound: cut_round,
}
"""A new joint is a file in joints/ and a line here."""


def let_in(slot: Slot, thickness: float, flush: float) -> float:
    """How deep a member of some thickness goes into its hosts, flush being the depth of the thinnest. [mm]"""
    return JOINTS[type(slot.joint)].let_in(slot.joint, thickness, flush)


def join(
    piece: int, hosts: Mapping[str, Blank], guests: Mapping[str, Blank], fit: Callable[[str], float]
) -> Iterator[Joint]:
    """Joints of one piece, guest by guest in the order of description; one that misses a host has none with it."""
    for guest in guests.values():
        for how, names in guest.slot.joints:
            for host in (hosts[name] for name in names if name in hosts):
                yield from _joined(piece, host, guest, how, fit)


def _joined(piece: int, host: Blank, guest: Blank, how: How, fit: Callable[[str], float]) -> Iterator[Joint]:
    overlap = guest.box.meet(host.box)
    contact = overlap if how.shares else touching(guest.box, host.box)
    if contact is not None:
        meeting = Meeting(host=host, guest=guest, overlap=overlap, fit=fit(how.word))
        cuts = JOINTS[type(how)].cuts(how, meeting)
        yield Joint(piece=piece, how=how, host=host.name, guest=guest.name, contact=contact, cuts=cuts)


def touching(a: Box, b: Box) -> Box | None:
    """What two boxes share, a face or more, so that one can be fixed to the other; None where they share less."""
    lows, highs = map(larger, a.low, b.low), map(smaller, a.high, b.high)
    shared = Box(vector(lows), vector(highs))
    gaps = [low - high for low, high in zip(shared.low, shared.high, strict=True)]
    if all(gap <= TOUCH for gap in gaps) and sum(gap > -TOUCH for gap in gaps) <= 1:
        return shared
    return None
