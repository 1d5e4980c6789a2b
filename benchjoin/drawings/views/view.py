"""Views: what a person sees of the parts from one side, and what is hidden of their joints.

Parts, less their cuts, are painted over each other from the farthest to the nearest, on a grid (`painting`), or where
an edge is shaped face by face (`covering`). The edges of what is
seen are the lines of the view, each once. Edges of notches and laps that lie behind other wood are hidden lines; other
covered edges are left out.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cached_property
from typing import Literal, Protocol

import attrs
import shapely
from shapely.geometry.base import BaseGeometry

from ...layout.parts import Part
from ...solids import Placement, Vector, cross
from .covering import covered
from .face import Face
from .painting import paint
from .parallel import closest

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


class Picture(Protocol):
    """What a way of painting gives: lines, and what is seen of each face."""

    def lines(self) -> tuple[BaseGeometry, BaseGeometry]:
        """Visible lines, and those of cut wood that lie behind other wood."""

    def faces(self) -> Iterable[Face]:
        """Each face of which something is seen."""


@attrs.frozen
class View:
    """What is seen: visible lines, hidden lines of joints, and visible regions by part; full size, page axes. [mm]"""

    eye: Eye
    painted: Picture = attrs.field(eq=False)
    visible: BaseGeometry = attrs.field(eq=False)
    hidden: BaseGeometry = attrs.field(eq=False)
    _less: dict[BaseGeometry, BaseGeometry] = attrs.field(factory=dict, eq=False, init=False, repr=False)

    @cached_property
    def faces(self) -> tuple[Face, ...]:
        """What is seen of each face of each part; it is worked out when it is asked for."""
        return tuple(self.painted.faces())

    @cached_property
    def wood(self) -> BaseGeometry:
        """All wood that is seen, as one region."""
        return shapely.union_all([face.region for face in self.faces])

    def seen_of(self, part: str) -> BaseGeometry:
        """All that is seen of a part, as one region; empty where nothing is."""
        return shapely.union_all([face.region for face in self.faces if face.part == part])

    def less(self, region: BaseGeometry) -> BaseGeometry:
        """All wood that is seen outside a region, which is asked for at one scale after the other."""
        if region not in self._less:
            self._less[region] = self.wood.difference(region)
        return self._less[region]

    @cached_property
    def apart(self) -> float:
        """Least distance between two visible lines that run beside each other. [mm]"""
        return closest(self.visible)

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
    plain = all(part.outline.plain for part in parts)
    painted: Picture = paint(parts, eye.frame) if plain else covered(parts, eye.frame)
    return View(eye, painted, *painted.lines())
