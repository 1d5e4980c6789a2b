"""What a joint asks of its fastener, and which way it is driven.

A let-in rail sits on its shoulder and a board on its rails: there a screw only keeps them home. A rail on the face of
its leg, a ledger, a bearer between rails hang on their screws alone.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from typing import Literal

import attrs

from ...frame.faces import AXIS, X, Y, Z, looks_down
from ...layout.joints.meeting import Joint
from ...layout.parts import Part
from ...lengths import TOUCH

Duty = Literal["carries", "hangs", "keeps home", "holds down"]
LOCKED = 60.0
"""Members on edge that cross in slots as deep as this hold each other. [mm] Common practice, no source."""


@attrs.frozen(kw_only=True, eq=False)
class Drive:
    """How a joint is driven: through the head part into the point part, along an axis, up it or down it.

    plane are the other two axes, that along the guest first where it lies in the plane. low and high bound the contact
    on them. [mm]
    """

    joint: Joint
    head: Part
    point: Part
    guest: Part
    duty: Duty
    axis: int
    up: bool
    plane: tuple[int, int]

    @property
    def into_end(self) -> bool:
        """Whether the point goes into end grain."""
        return self.point.slot.axes[0] == self.axis

    @property
    def low(self) -> tuple[float, float]:
        """The contact's low corner in the plane. [mm]"""
        a, b = self.plane
        return float(self.joint.contact.low[a]), float(self.joint.contact.low[b])

    @property
    def high(self) -> tuple[float, float]:
        """The contact's high corner in the plane. [mm]"""
        a, b = self.plane
        return float(self.joint.contact.high[a]), float(self.joint.contact.high[b])

    def q(self, at: float) -> float:
        """A place on the axis as it is met by the point on its way. [mm]"""
        return float(at) if self.up else 0.0 - float(at)


def other_way(drive: Drive) -> tuple[Drive, ...]:
    """A rail or ledger on a face may be driven from behind, through its host; nothing else may."""
    if not drive.joint.how.hangs or drive.joint.how.between or drive.duty != "carries":
        return ()
    return (attrs.evolve(drive, head=drive.point, point=drive.head, up=not drive.up),)


@attrs.frozen
class Spans:
    """Wood along one line of a drive: under the head from face to mate, and where the point goes in. [mm on the way]

    sunk tells that the face is the floor of a cut, which another part covers later.
    """

    face: float
    mate: float
    start: float
    end: float
    sunk: bool

    @property
    def thick(self) -> float:
        """Of the wood under the head, with any gap before its mate. [mm]"""
        return self.start - self.face

    @property
    def room(self) -> float:
        """Of the wood that the point goes into. [mm]"""
        return self.end - self.start


def drive_of(joint: Joint, host: Part, guest: Part) -> Drive | None:
    """How a joint is driven; None where nothing is: it rests, is cut round, or locks itself."""
    how, size = joint.how, joint.contact.size()
    if not how.held:
        return None
    flat = [axis for axis in (X, Y, Z) if size[axis] <= TOUCH]
    if flat:
        axis = flat[0]
        up = _middle(guest, axis) < _middle(host, axis)
    else:
        face = guest.slot.face
        axis, up = AXIS[face], looks_down(face)
        if how.cuts_both and not host.slot.upright and size[axis] > LOCKED:
            return None
    head, point = guest, host
    if how.between:
        head, point, up = host, guest, not up
    grain = guest.slot.axes[0]
    rest = [one for one in (X, Y, Z) if one != axis]
    plane = (rest[0], rest[1]) if grain != rest[1] else (rest[1], rest[0])
    duty = _duty(joint, host, guest, axis)
    return Drive(joint=joint, head=head, point=point, guest=guest, duty=duty, axis=axis, up=up, plane=plane)


def _middle(part: Part, axis: int) -> float:
    return float(part.blank.low[axis] + part.blank.high[axis])


def _duty(joint: Joint, host: Part, guest: Part, axis: int) -> Duty:
    if joint.how.between:
        return "carries"
    if joint.how.hangs:
        if axis != Z:
            return "keeps home" if guest.slot.upright else "carries"
        return "hangs" if host.slot.role.surface else "keeps home"
    return "holds down" if joint.how.lies and not joint.how.shares else "keeps home"


def spans(drive: Drive) -> tuple[Spans, ...]:
    """The different ways in which wood lies along lines through the contact, the middle one first.

    Where the face under the head is whole comes before the floor of a cut.
    """
    found: dict[Spans, None] = {}
    for at in _anchors(drive):
        one = _span(drive, at)
        if one is not None:
            found.setdefault(one)
    return tuple(sorted(found, key=lambda one: one.sunk))


def _anchors(drive: Drive) -> Iterator[tuple[float, float]]:
    shares = (0.5, 0.25, 0.75)
    for a, b in itertools.product(shares, shares):
        (x0, y0), (x1, y1) = drive.low, drive.high
        yield x0 + a * (x1 - x0), y0 + b * (y1 - y0)


def _span(drive: Drive, at: tuple[float, float]) -> Spans | None:
    """Wood on one line: what the head part has next to the contact, and what the point part has behind it."""
    ends = sorted((drive.q(drive.joint.contact.low[drive.axis]), drive.q(drive.joint.contact.high[drive.axis])))
    heads = [(low, high) for low, high in _wood(drive, drive.head, at) if low <= ends[1] + 1 and high >= ends[0] - 1]
    if not heads:
        return None
    face, mate = heads[0]
    points = [(low, high) for low, high in _wood(drive, drive.point, at) if low >= mate - 0.1]
    if not points or points[0][0] > ends[1] + 1:
        return None
    start, end = points[0]
    outside = min(drive.q(drive.head.blank.low[drive.axis]), drive.q(drive.head.blank.high[drive.axis]))
    face, mate, start, end = (round(one, 6) for one in (face, mate, start, end))
    return Spans(face, mate, start, end, sunk=face > outside + TOUCH)


def _wood(drive: Drive, part: Part, at: tuple[float, float]) -> list[tuple[float, float]]:
    """Stretches of a part's wood on a line, in the order in which the point meets them. [mm on the way]"""
    boxes = part.solid if part.taken else (part.blank,)
    found = []
    for box in boxes:
        if all(box.low[n] - TOUCH <= at[m] <= box.high[n] + TOUCH for m, n in enumerate(drive.plane)):
            found.append(sorted((drive.q(box.low[drive.axis]), drive.q(box.high[drive.axis]))))
    joined: list[tuple[float, float]] = []
    for low, high in sorted(found):
        if joined and low <= joined[-1][1] + TOUCH:
            joined[-1] = (joined[-1][0], max(high, joined[-1][1]))
        else:
            joined.append((low, high))
    return joined
