"""Shaped edges of parts as they lie: what each is called, what it takes, and how it is told to the maker."""

from __future__ import annotations

from collections.abc import Iterator

import attrs

from ..curves import ArcCurve, Beside, Curve
from ..frame.edges import Edge
from ..lengths import TOUCH
from ..outlines import Cropped, Profile, depths
from ..readings import Tape
from .parts import Part
from .placing.room import highest, lowest

SAMPLES = 16
"""Places of a half that tell whether the other half is like it."""


@attrs.frozen(eq=False)
class ShapedEdge:
    """One shaped edge of a part: its face, how it was described, and its profile. [mm]"""

    part: Part
    face: str
    of: Edge
    profile: Profile

    @property
    def name(self) -> str:
        """What the edge is called: upper edge."""
        return {"top": "upper edge", "bottom": "lower edge"}.get(self.face, f"{self.face} edge")

    @property
    def curves(self) -> tuple[Curve, ...]:
        """Its curves, one in each bay."""
        own = self.profile.whole if isinstance(self.profile, Cropped) else self.profile
        return own.each if isinstance(own, Beside) else (own,)  # type: ignore[return-value]

    @property
    def moved(self) -> float:
        """How much further its curves begin than they say, since the datum end has moved. [mm]"""
        return -self.profile.start if isinstance(self.profile, Cropped) else 0.0

    @property
    def ends(self) -> tuple[tuple[float, float], ...]:
        """Where each of its curves begins and ends from the datum end. [mm]"""
        return tuple((curve.start + self.moved, curve.end + self.moved) for curve in self.curves)

    @property
    def deepest(self) -> float:
        """How far it stands back at most. [mm]"""
        return highest(curve.deepest for curve in self.curves)

    @property
    def radius(self) -> float:
        """The smallest radius of its hollows. [mm]"""
        return lowest(curve.radius for curve in self.curves)

    @property
    def symmetrical(self) -> bool:
        """Whether both halves of the part are alike here, so that half a template does."""
        length = self.part.length
        places = [length * n / (2 * SAMPLES) for n in range(SAMPLES)]
        near, far = depths(self.profile, places), depths(self.profile, [length - at for at in places])
        return all(abs(one - other) < TOUCH for one, other in zip(near, far, strict=True))

    @property
    def of_depth(self) -> float:
        """How deep it was described. [mm]"""
        own = getattr(self.of, "rise", None) or getattr(self.of, "depth", None)
        return self.deepest if own is None else own

    def back_from(self, low: float, high: float) -> float:
        """How far the edge stands back at most between two places along its part. [mm]"""
        step = (high - low) / SAMPLES
        return highest(depths(self.profile, [low + step * n for n in range(SAMPLES + 1)]))

    def told(self, tape: Tape) -> str:
        """It in words: 'lower edge: arc 2 deep, from 3 3/4 to 53 1/4, radius 152 5/8'."""
        say = tape.read
        where = ", ".join(f"{say(start)} to {say(end)}" for start, end in self.ends)
        arcs = [arc for curve in self.curves for arc in (curve.each if isinstance(curve, Beside) else (curve,))]
        radius = f", radius {say(self.radius)}" if all(isinstance(arc, ArcCurve) for arc in arcs) else ""
        return f"{self.name}: {self.of.called} {say(self.deepest)} deep, {where}{radius}"


def shaped_edges(part: Part) -> Iterator[ShapedEdge]:
    """The shaped edges of a part."""
    own = part.slot.of
    said = (
        {"top": "upper_edge", "bottom": "lower_edge"} if hasattr(own, "upper_edge") else {part.slot.true_edge: "edge"}
    )
    for face, profile in part.shaped.items():
        of = getattr(own, said.get(face, "far_edge"), None)
        if of is not None:
            yield ShapedEdge(part, face, of, profile)
