"""Views: what a person sees of the parts from one side, and what is hidden of their joints.

Each part, less its cuts, shows faces at certain distances from the eye. What is visible of a face is its region less
the nearer faces of all parts; the edges of the visible regions are the lines of the view, each once. Edges of notches
and laps that lie behind other wood are hidden lines; other covered edges are left out.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Literal

import attrs
import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from ..layout.parts import Part
from ..lengths import TOUCH
from ..solids import Box, Placement, Vector, cross, slabs

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
    """What is seen: visible regions by part, visible lines, hidden lines of joints; full size, page axes. [mm]"""

    eye: Eye
    faces: tuple[Face, ...]
    visible: BaseGeometry = attrs.field(eq=False)
    hidden: BaseGeometry = attrs.field(eq=False)

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
    shown = _uncovered([face for part in parts for face in faces_of(part, eye)])
    wood = shapely.union_all([face.region for face in shown])
    lines = shapely.union_all([face.region.boundary for face in shown])
    return View(eye, tuple(shown), canonical(lines), canonical(_hidden(parts, eye, wood, lines)))


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


def _uncovered(faces: Sequence[Face]) -> list[Face]:
    """What is left of each face after all nearer ones are taken off; empty ones are dropped."""
    regions = np.array([face.region for face in faces], dtype=object)
    distance = np.array([face.distance for face in faces])
    far, near = shapely.STRtree(regions).query(regions, predicate="intersects")
    covers = distance[near] < distance[far] - TOUCH
    nearer: dict[int, list[int]] = {}
    for behind, front in zip(far[covers], near[covers], strict=True):
        nearer.setdefault(int(behind), []).append(int(front))
    covered = list(nearer)
    masks = np.array([shapely.union_all(regions[nearer[n]]) for n in covered], dtype=object)
    left = regions.copy()
    if covered:
        left[covered] = shapely.difference(regions[covered], masks)
    areas = shapely.area(left)
    return [attrs.evolve(face, region=r) for face, r, a in zip(faces, left, areas, strict=True) if a > TOUCH]


def _hidden(parts: Sequence[Part], eye: Eye, wood: BaseGeometry, visible: BaseGeometry) -> BaseGeometry:
    """Edges of notches and laps that lie behind other wood."""
    found = []
    for part in parts:
        blank = eye.frame.local(part.blank)
        for cut in part.cuts:
            inside = eye.frame.local(cut.box).meet(blank)
            if inside is not None:
                found.append(shapely.box(*inside.low[:2], *inside.high[:2]).boundary)
    if not found:
        return shapely.MultiLineString()
    seen = visible.buffer(TOUCH, quad_segs=1, cap_style="flat", join_style="mitre")
    return shapely.union_all(found).intersection(wood).difference(seen)


def canonical(lines: BaseGeometry) -> BaseGeometry:
    """Lines merged end to end, without points in straight runs, in an order that depends on nothing but themselves."""
    return shapely.normalize(shapely.simplify(shapely.line_merge(lines), TOUCH))
