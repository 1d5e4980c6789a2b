"""Views: what a person sees of the parts from one side, and what is hidden of their joints.

Parts, less their cuts, are painted over each other from the farthest to the nearest (`painting`). The edges of what is
seen are the lines of the view, each once. Edges of notches and laps that lie behind other wood are hidden lines; other
covered edges are left out. `faces_of` gives the faces of one part that look at an eye, for pictures that lay them on
the page in their own way.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cached_property
from typing import Literal

import attrs
import shapely
from shapely.geometry.base import BaseGeometry

from ...layout.parts import Part
from ...lengths import TOUCH
from ...solids import Box, Placement, Vector, cross, slabs
from .painting import Painted, paint

Seen = Literal["front", "back", "left", "right", "above"]


@attrs.frozen
class Eye:
    """A way of looking: which world directions point right and up on the page, and what the view is called."""

    name: str
    title: str
    right: Vector
    up: Vector

    @property
    def frame(self) -> Placement:
        """Page coordinates of the world: right, up, and away from the eye."""
        x, y, z = cross(self.right, self.up)
        return Placement((0.0, 0.0, 0.0), self.right, self.up, (-x, -y, -z))


EYES: dict[str, Eye] = {
    "front": Eye("front", "Front elevation", (1.0, 0.0, 0.0), (0.0, 0.0, 1.0)),
    "back": Eye("back", "Back elevation", (-1.0, 0.0, 0.0), (0.0, 0.0, 1.0)),
    "left": Eye("left", "Left end", (0.0, -1.0, 0.0), (0.0, 0.0, 1.0)),
    "right": Eye("right", "Right end", (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
    "above": Eye("above", "Plan from above", (1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
}


@attrs.frozen
class Face:
    """A face of a part that looks at the eye: its distance and its region on the page, in mm at full size."""

    part: str
    distance: float
    region: BaseGeometry = attrs.field(eq=False)


@attrs.frozen
class View:
    """What is seen: visible lines, hidden lines of joints, and visible regions by part; full size, page axes. [mm]"""

    eye: Eye
    painted: Painted = attrs.field(eq=False)
    visible: BaseGeometry = attrs.field(eq=False)
    hidden: BaseGeometry = attrs.field(eq=False)

    @cached_property
    def faces(self) -> tuple[Face, ...]:
        """What is seen of each face of each part; it is worked out when it is asked for."""
        return tuple(Face(*found) for found in self.painted.regions())

    @property
    def shows(self) -> tuple[str, ...]:
        """Identities of the parts that are seen."""
        return tuple(dict.fromkeys(face.part.partition("/")[2] for face in self.faces))

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top. [mm]"""
        left, bottom, right, top = self.visible.bounds
        return left, bottom, right, top


def view(parts: Sequence[Part], seen: str | Eye) -> View:
    """The view of parts from one side."""
    eye = EYES[seen] if isinstance(seen, str) else seen
    painted = paint(parts, eye.frame)
    return View(eye, painted, *painted.lines())


def faces_of(part: Part, eye: Eye) -> Iterable[Face]:
    """The faces of one part that look at the eye, the nearest first: wood that has none of its own right before it."""
    frame = eye.frame
    blank = frame.local(part.blank)
    (left, low, near), (right, high, far) = blank.low, blank.high
    whole = shapely.box(left, low, right, high)
    cuts = [_moved(frame.local(cut.box), near) for cut in part.cuts]
    before: BaseGeometry = shapely.Polygon()
    for slab in slabs(whole, far - near, cuts):
        region = slab.region.difference(before)
        if region.area > TOUCH:
            yield Face(part.name, near + slab.low, region)
        before = slab.region


def _moved(box: Box, near: float) -> Box:
    (a, b, c), (d, e, f) = box.low, box.high
    return Box((a, b, c - near), (d, e, f - near))
