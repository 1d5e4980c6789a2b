"""Lay-on patterns as data: each distinct notch or lap once, and all the places where it is cut.

A pattern is the face from which the wood is taken, some of the part on either side, and over a fold the edge that
shows how deep. Notches are alike where section, height, depth and open ends are the same; a lap of a rail may be
turned end for end, since a rail has no foot.
"""

from __future__ import annotations

from collections.abc import Iterator

import attrs

from ..frame.identity import of_piece
from ..frame.roles import rank
from ..lengths import TOUCH, steady
from ..solids import Box
from .done import is_open
from .joints.meeting import Cut
from .layout import Layout
from .parts import Part, face_up

FOOT_LAND, TOP_LAND, LEAST_LAND = 30.0, 10.0, 20.0
"""How much of the part a pattern covers before and after the notch, and what its words need. [mm]"""
FLAP = 8.0
"""How far the edge goes down past the floor of the notch. [mm]"""


@attrs.frozen(slots=False)
class Use:
    """A place where a pattern is laid: the part and its face, what comes into the notch, its near shoulder. [mm]

    way names the face as the part lies in its set: outer face, end face …
    """

    part: Part
    face: str
    way: str
    mate: str
    at: float


@attrs.frozen(kw_only=True, slots=False)
class LayOn:
    """A pattern in the frame of one face: u along the part, v across the face, w into the wood. [mm]

    cut is the notch, within the part; size the length, width and thickness of the part with that face up; others are
    cuts of the same part that meet the pattern; start and end say how much of the part it covers; turned, that the
    part lies end for end.
    """

    kind: str
    part: Part
    face: str
    size: tuple[float, float, float]
    cut: Box
    others: tuple[Box, ...]
    start: float
    end: float
    turned: bool
    uses: tuple[Use, ...] = ()

    @property
    def depth(self) -> float:
        """How deep the notch is. [mm]"""
        return self.cut.high[2] - self.cut.low[2]

    @property
    def flap(self) -> float:
        """How far the pattern goes down the edge. [mm]"""
        return min(self.size[2], self.depth + FLAP)

    @property
    def folds(self) -> tuple[str, ...]:
        """Edges that show the depth: of a notch the upper one on the page or else the lower, of a half-lap both."""
        open_ = [
            side
            for side, is_open in (
                ("upper", self.cut.high[1] >= self.size[1] - TOUCH),
                ("lower", self.cut.low[1] <= TOUCH),
            )
            if is_open
        ]
        return tuple(open_ if self.kind == "half-lap" else open_[:1])

    @property
    def key(self) -> tuple[object, ...]:
        """What patterns that are the same have in common."""
        across = (self.size[1], self.size[2], *self.cut.low[1:], *self.cut.high[1:])
        along = (self.cut.high[0] - self.cut.low[0], self.cut.low[0] <= TOUCH, self._runs_out)
        return (self.kind, self.part.slot.role.word, *steady(*across, *along))

    @property
    def _runs_out(self) -> bool:
        return self.cut.high[0] >= self.size[0] - TOUCH


def lay_ons(layout: Layout) -> tuple[tuple[LayOn, ...], ...]:
    """Patterns of a layout, each distinct one once: notches alone, half-laps with the half of the mate.

    A place that is marked or cut already is none of theirs, and a pattern with no place left is not there.
    """
    found: dict[tuple[object, ...], LayOn] = {}
    mates: dict[tuple[object, ...], tuple[object, ...]] = {}
    for joint in layout.joints:
        own = [(layout.part(of_piece(joint.piece, cut.part)), cut) for cut in joint.cuts]
        made = [_lay_on(part, cut) for part, cut in own if is_open(layout.frame, part, cut, "mark")]
        for one in made:
            known = found.get(one.key)
            found[one.key] = attrs.evolve(known, uses=(*known.uses, *one.uses)) if known else one
        if len(made) > 1:
            mates.setdefault(made[0].key, made[1].key)
    return tuple(_paired(found, mates))


def _paired(
    found: dict[tuple[object, ...], LayOn], mates: dict[tuple[object, ...], tuple[object, ...]]
) -> Iterator[tuple[LayOn, ...]]:
    drawn: set[tuple[object, ...]] = set()
    for key, one in sorted(found.items(), key=lambda item: rank(item[1].part.slot.role)):
        if key in drawn:
            continue
        mate = mates.get(key)
        pair = [key] if mate is None or mate in drawn else [key, mate]
        drawn.update(pair)
        yield tuple(found[k] for k in pair) if len(pair) > 1 else (one,)


def _lay_on(part: Part, cut: Cut) -> LayOn:
    seen = {other.mate: other for other in part.cuts_on(cut.face)}[cut.mate]
    size, own = seen.size, seen.box.inside(seen.size)
    turned_up = face_up(part, cut.face)
    boxes = [turned_up.local(other.box).inside(size) for other in part.cuts if other is not seen.cut]
    turned = part.slot.role.turns_over and seen.open_end and not seen.open_start
    if turned:  # the part lies end for end, the same face up
        own, *boxes = (box.mirrored(0, size[0]).mirrored(1, size[1]) for box in (own, *boxes))
    before = FOOT_LAND if own.low[0] >= LEAST_LAND else own.low[0]
    after = TOP_LAND if own.low[0] >= LEAST_LAND else FOOT_LAND
    start, end = max(own.low[0] - before, 0.0), min(own.high[0] + after, size[0])
    near = [box for box in boxes if box.low[0] < end - TOUCH and box.high[0] > start + TOUCH]
    return LayOn(
        kind=cut.kind,
        part=part,
        face=cut.face,
        size=size,
        cut=own,
        others=tuple(box.shifted((-start, 0.0, 0.0)) for box in near),
        start=start,
        end=end,
        turned=turned,
        uses=(Use(part, cut.face, seen.called, cut.mate, own.low[0]),),
    )
