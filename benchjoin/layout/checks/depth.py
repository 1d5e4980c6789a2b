"""Depth: what notches leave of a leg's section."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

import shapely
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from ...findings import Finding
from ...lengths import TOUCH
from ...sources import COMMON_PRACTICE, STATICS
from ...trade.practice import DEEPEST_NOTCH
from ..blanks import OUT
from ..parts import Housing, Part
from .piece import Piece


def deep_notches(piece: Piece) -> Iterator[Finding]:
    """Notches deeper than half of the leg, told once for each kind of leg."""
    for names, leg in piece.kinds_of_legs():
        through = [(notch, notch.depth / _through(leg, notch.face)) for notch in leg.notches]
        deep = [(notch, part) for notch, part in through if DEEPEST_NOTCH + 1e-9 < part < 1 - 1e-9]
        if deep:
            notch, part = max(deep, key=lambda pair: pair[1])
            rails = ", ".join(dict.fromkeys(n.rail for n, _ in deep))
            yield Finding(
                severity="warning",
                kind="deep notch",
                where=names,
                sentence=f"{names}: notched deeper than half of the leg for {rails}. At {notch.rail} the notch takes "
                f"{piece.say(notch.depth)} of {piece.say(_through(leg, notch.face))} and leaves {1 - part:.0%}. "
                "Take thinner rails, or let them in part-way.",
                numbers={"depth": notch.depth, "left": 1 - part},
                source=COMMON_PRACTICE,
            )


def notches_at_one_height(piece: Piece) -> Iterator[Finding]:
    """Notches from two faces that meet inside a leg, and what is left of its section."""
    for names, leg in piece.kinds_of_legs():
        whole = _section(leg, None).area
        for low, high in _storeys(leg):
            inside = [n for n in leg.notches if _rail_between(piece, n, low, high)]
            if len({n.face for n in inside}) < 2 or not _meet(leg, inside):
                continue
            left = _section(leg, (low + high) / 2).area / whole
            rails = " and ".join(dict.fromkeys(n.rail for n in inside))
            yield Finding(
                severity="warning",
                kind="notches meet",
                where=names,
                sentence=f"{names}: the notches for {rails} meet inside the leg from {piece.say(low)} to "
                f"{piece.say(high)}; {left:.0%} of its section is left there. Raise one of them, or let one butt.",
                numbers={"bottom": low, "top": high, "left": left},
                source=STATICS,
            )


def _rail_between(piece: Piece, notch: Housing, low: float, high: float) -> bool:
    """Whether the rail itself, not only the fit of its notch, reaches into a storey of the leg."""
    rail = piece.parts[notch.rail].blank
    return rail.low[2] < high - TOUCH and rail.high[2] > low + TOUCH and notch.bottom < high - TOUCH and notch.top > low


def leg_cut_in_two(piece: Piece) -> Iterator[Finding]:
    """A leg whose sections on either side of a change share no area."""
    for names, leg in piece.kinds_of_legs():
        storeys = _storeys(leg)
        sections = [_section(leg, (low + high) / 2) for low, high in storeys]
        for (low, _), below, above in zip(storeys[1:], sections, sections[1:], strict=False):
            if below.intersection(above).area <= TOUCH:
                yield Finding(
                    severity="error",
                    kind="leg cut in two",
                    where=names,
                    sentence=f"{names}: nothing holds the leg together at {piece.say(low)} over the foot; what is left "
                    "below shares no wood with what is left above. Let the rails in less deep, or move one.",
                    numbers={"height": low},
                    source=STATICS,
                )
                break


def _through(leg: Part, face: str) -> float:
    """How much wood lies behind a face. [mm]"""
    x, y, _ = leg.blank.size()
    return y if face in ("front", "back") else x


def _storeys(leg: Part) -> list[tuple[float, float]]:
    """Heights between which the section of a leg does not change. [mm]"""
    ends = sorted({leg.blank.low[2], leg.blank.high[2], *(z for n in leg.notches for z in (n.bottom, n.top))})
    inside = [z for z in ends if leg.blank.low[2] <= z <= leg.blank.high[2]]
    return [(a, b) for a, b in itertools.pairwise(inside) if b - a > TOUCH]


def _section(leg: Part, height: float | None) -> BaseGeometry:
    """What is left of a leg at a height, seen from above; the whole of it without one."""
    (x0, y0, _), (x1, y1, _) = leg.blank.low, leg.blank.high
    whole: Polygon = shapely.box(x0, y0, x1, y1)
    if height is None:
        return whole
    cut = [shapely.box(*c.box.low[:2], *c.box.high[:2]) for c in leg.cuts if c.box.low[2] < height < c.box.high[2]]
    return whole.difference(shapely.union_all(cut)) if cut else whole


def _meet(leg: Part, inside: list[Housing]) -> bool:
    """Whether notches from different faces touch or share wood."""
    boxes = [(c.face, shapely.box(*c.box.low[:2], *c.box.high[:2])) for c in leg.cuts if c.face in OUT]
    rails = {n.rail for n in inside}
    near = [(f, b) for (f, b), c in zip(boxes, leg.cuts, strict=True) if c.mate in rails]
    return any(a.distance(b) <= TOUCH for i, (f, a) in enumerate(near) for g, b in near[i + 1 :] if f != g)
