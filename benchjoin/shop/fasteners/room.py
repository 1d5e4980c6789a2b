"""Room for a fastener: the places in a contact that keep its distances from edges, ends, cuts and other fasteners.

Places lie on a lattice that a tape finds from the guest's own end and edge, so that mirrored parts are marked alike.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import cached_property

import attrs
import numpy as np
import numpy.typing as npt

from ...frame.faces import AXIS, Z, looks_down
from ...layout.parts import Part
from ...lengths import INCH, TOUCH
from ...solids import Box
from ...trade.spacing import Spacing
from .duty import Drive, Spans
from .fastener import Fastener
from .fixing import Driven

Points = npt.NDArray[np.float64]
TIP = 3.0
"""A point stays so far inside the wood. [mm] Common practice, no source."""
NARROW = 50.0
"""A contact narrower than this is laid out by the finer marks of the tape. [mm]"""
STEPS = {"in": (INCH / 8, INCH / 16), "mm": (5.0, 1.0)}
"""Places are whole steps from the guest's end and edge: coarse, and fine where it is narrow. [mm]"""


@attrs.frozen(kw_only=True, eq=False)
class Room:
    """The room of one drive for a fastener of a size and length, by a rule set; others are driven already."""

    drive: Drive
    span: Spans
    size: Fastener
    length: float
    rules: Spacing
    others: Sequence[Driven]
    unit: str

    @property
    def inside(self) -> float:
        """How far the point goes in. [mm]"""
        return self.span.room if self.size.through else self.length - self.span.thick

    def lattice(self) -> Points:
        """All places of the contact that may be asked for, as rows. [mm]"""
        (a, b), guest = self.drive.plane, self.drive.guest
        ends = [self._ticks(0, _nearer_end(guest, a, self.drive)), self._ticks(1, _true_edge(guest, b))]
        return np.array([(x, y) for x in ends[0] for y in ends[1]], dtype=float).reshape(-1, 2)

    def _ticks(self, number: int, origin: float) -> Points:
        low, high = self.drive.low[number], self.drive.high[number]
        coarse, fine = STEPS[self.unit]
        step = fine if high - low < NARROW else coarse
        first, last = np.ceil((low - origin) / step - 1e-6), np.floor((high - origin) / step + 1e-6)
        counts = np.arange(first, last + 1)
        return np.asarray(origin + step * counts[np.argsort(np.abs(counts), kind="stable")])

    def free(self) -> Points:
        """The places that keep all distances. [mm]"""
        points = self.lattice()
        if not len(points):
            return points
        drive, span = self.drive, self.span
        keep = self._inside(points, drive.head, span.face, span.mate, head=True)
        keep &= self._inside(points, drive.point, span.start, self._tip(), head=False)
        keep &= self._open(points)
        for other in self.others:
            keep &= self._off(points, other)
        return np.asarray(points[keep])

    def apart(self, points: Points, chosen: Sequence[Sequence[float]]) -> Points:
        """Those of some places that keep their spacing from those chosen already. [mm]"""
        keep = np.ones(len(points), dtype=bool)
        for at in chosen:
            off = np.abs(points - np.asarray(at))
            for part in (self.drive.head, self.drive.point):
                keep &= ~(off < self._spacing(part) - TOUCH).all(axis=1)
        return np.asarray(points[keep])

    def _tip(self) -> float:
        """How far on its way wood is needed: past the point, or right through. [mm on the way]"""
        return self.span.end if self.size.through else self.span.start + self.inside + TIP

    def _spacing(self, part: Part) -> Points:
        """Least distances in a part along both axes of the plane; both of them have to be undercut to be too near."""
        grain = part.slot.axes[0]
        d = self.size.diameter
        return np.array([d * (self.rules.in_row if axis == grain else self.rules.rows) for axis in self.drive.plane])

    def _needs(self, part: Part, *, head: bool) -> Points:
        """Least distances below and above in the plane, as [[a low, a high], [b low, b high]]. [mm]"""
        d, rules, grain = self.size.diameter, self.rules, part.slot.axes[0]
        found = np.empty((2, 2))
        for number, axis in enumerate(self.drive.plane):
            for side in (0, 1):
                pushed = self.drive.duty == "carries" and axis == Z and side == self._pushed(part)
                if axis == grain:
                    least = max(rules.loaded_end * d, rules.least_end) if pushed else rules.end * d
                else:
                    least = (rules.loaded_edge if pushed else rules.edge) * d
                found[number, side] = max(least, self.size.head / 2 if head else 0.0)
        return found

    def _pushed(self, part: Part) -> int:
        """Towards which end of z the fastener pushes a part: the host down, the guest up."""
        return 1 if part is self.drive.guest else 0

    def _inside(self, points: Points, part: Part, first: float, last: float, *, head: bool) -> npt.NDArray[np.bool_]:
        """Whether wood is all round each place as far as asked, from one depth to another."""
        needs = self._needs(part, head=head)
        low, high = points - needs[:, 0], points + needs[:, 1]
        ends, plane = np.array([part.blank.low, part.blank.high], dtype=float), list(self.drive.plane)
        keep = ((low >= ends[0, plane] - TOUCH) & (high <= ends[1, plane] + TOUCH)).all(axis=1)
        for box in part.taken:
            if self._meets(box, first, last):
                corner = np.array([box.low, box.high], dtype=float)[:, plane]
                keep &= ~((high > corner[0] + TOUCH) & (low < corner[1] - TOUCH)).all(axis=1)
        return np.asarray(keep)

    def _meets(self, box: Box, first: float, last: float) -> bool:
        ends = sorted((self.drive.q(box.low[self.drive.axis]), self.drive.q(box.high[self.drive.axis])))
        return ends[1] > first + TOUCH and ends[0] < last - TOUCH

    def _open(self, points: Points) -> npt.NDArray[np.bool_]:
        """Whether nothing of both parts stands before the head, nor before the nut of a bolt."""
        keep = np.ones(len(points), dtype=bool)
        plane, wide = list(self.drive.plane), self.size.head / 2
        for part in (self.drive.head, self.drive.point):
            for box in part.solid if part.taken else (part.blank,):
                before = self._meets(box, -np.inf, self.span.face)
                behind = self.size.through and self._meets(box, self.span.end, np.inf)
                if before or behind:
                    corner = np.array([box.low, box.high], dtype=float)[:, plane]
                    keep &= ~((points + wide > corner[0] + TOUCH) & (points - wide < corner[1] - TOUCH)).all(axis=1)
        return keep

    def _off(self, points: Points, other: Driven) -> npt.NDArray[np.bool_]:
        """Whether each place keeps off a fastener that is driven already."""
        drive, plane = self.drive, list(self.drive.plane)
        end = self.span.face + self.length
        d, e = self.size.diameter, other.size.diameter
        ends = np.array([other.at, other.tip], dtype=float)
        low, high = ends.min(axis=0), ends.max(axis=0)
        first, last = sorted((drive.q(low[drive.axis]), drive.q(high[drive.axis])))
        if last < self.span.face - d - e or first > end + d + e:
            return np.ones(len(points), dtype=bool)
        gap = np.maximum(np.maximum(low[plane] - points, points - high[plane]), 0.0)
        if other.axis != drive.axis:
            along = max(self.span.face - last, first - end, 0.0)
            return np.asarray(np.sqrt((gap**2).sum(axis=1) + along**2) >= (d + e) / 2 + max(d, e) - TOUCH)
        keep = np.ones(len(points), dtype=bool)
        for part in (drive.head, drive.point):
            if part.identity in (other.head, other.point):
                least = self._spacing(part) * (max(d, e) / d)
                keep &= ~(gap < least - TOUCH).all(axis=1)
        return keep


def near(others: Iterable[Driven], box: Box, far: float) -> Iterator[Driven]:
    """Those that come within some distance of a box. [mm]"""
    low, high = np.array(box.low, dtype=float) - far, np.array(box.high, dtype=float) + far
    for other in others:
        ends = np.array([other.at, other.tip], dtype=float)
        if (ends.max(axis=0) >= low).all() and (ends.min(axis=0) <= high).all():
            yield other


def _nearer_end(guest: Part, axis: int, drive: Drive) -> float:
    """The end of the guest that is nearer to the contact. [mm]"""
    low, high = float(guest.blank.low[axis]), float(guest.blank.high[axis])
    middle = (drive.low[0] + drive.high[0]) / 2
    return low if middle <= (low + high) / 2 + TOUCH else high


def _true_edge(guest: Part, axis: int) -> float:
    """The edge of the guest that it is gauged from, if it lies across that axis; its low one otherwise. [mm]"""
    edge = guest.slot.true_edge
    return float((guest.blank.low if AXIS[edge] != axis or looks_down(edge) else guest.blank.high)[axis])


@attrs.frozen(kw_only=True, eq=False)
class Targets:
    """Where the fasteners of a joint would best be, as shares of its contact."""

    drive: Drive

    @cached_property
    def extent(self) -> tuple[float, float]:
        """Of the contact along both axes of the plane. [mm]"""
        return self.drive.high[0] - self.drive.low[0], self.drive.high[1] - self.drive.low[1]

    def at(self, shares: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
        """Places by their shares, turned over where the contact is at the far end of its guest. [mm]"""
        a, guest = self.drive.plane[0], self.drive.guest
        low, high = float(guest.blank.low[a]), float(guest.blank.high[a])
        turned = (self.drive.low[0] + self.drive.high[0]) / 2 > (low + high) / 2 + TOUCH
        return [
            (
                self.drive.low[0] + (1 - x if turned else x) * self.extent[0],
                self.drive.low[1] + y * self.extent[1],
            )
            for x, y in shares
        ]
