"""Covering: a picture painted face by face, the nearest first, for parts whose edges are no straight lines.

What `painting` does on a grid is done here with shapes: of each face is seen what no nearer one covers; lines stand
where two surfaces meet. It is slower, and gives the same where all edges are straight.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs
import shapely
from shapely.geometry.base import BaseGeometry

from ...layout.parts import Part
from ...solids import Placement, areas
from .face import Face, faces_of

GRID = 1e-6
"""Shapes are held to this, so that edges that coincide are one. [mm]"""
LEAST = 1e-3
"""Regions that are no larger are rounding. [mm²]"""
NEAR = 1e-4
"""A line that is no farther from a visible one is that line. [mm]"""


@attrs.frozen
class Covered:
    """What is seen of each face, and the outlines of all cuts on the page. [mm]"""

    seen: tuple[Face, ...]
    cuts: BaseGeometry

    def faces(self) -> Iterator[Face]:
        """Each face of which something is seen."""
        yield from self.seen

    def lines(self) -> tuple[BaseGeometry, BaseGeometry]:
        """Visible lines, and those of cut wood that lie behind other wood."""
        rings = [shapely.boundary(face.region) for face in self.seen]
        visible = shapely.normalize(shapely.line_merge(shapely.union_all(rings, grid_size=GRID)))
        wood = shapely.union_all([face.region for face in self.seen], grid_size=GRID)
        hidden = self.cuts.intersection(wood).difference(visible.buffer(NEAR, quad_segs=1))
        bits = [line for line in shapely.get_parts(hidden) if line.length > LEAST]
        return visible, shapely.normalize(shapely.line_merge(shapely.MultiLineString(bits)))


def covered(parts: Sequence[Part], frame: Placement) -> Covered:
    """Parts as an eye sees them whose page is a frame: right, up, and away from it."""
    faces = sorted((face for part in parts for face in faces_of(part, frame)), key=lambda face: face.distance)
    before: BaseGeometry = shapely.Polygon()
    surfaces: dict[tuple[str, str, float], list[Face]] = {}
    for face in faces:
        region = areas(shapely.difference(face.region, before, grid_size=GRID))
        if region.area > LEAST:
            key = (face.part, face.surface, 0.0 if face.surface else round(face.distance, 6))
            surfaces.setdefault(key, []).append(attrs.evolve(face, region=region))
        before = areas(shapely.union(before, face.region, grid_size=GRID))
    whole = (attrs.evolve(own[0], region=_joined(own)) for own in surfaces.values())
    return Covered(tuple(whole), _cuts(parts, frame))


def _joined(faces: Sequence[Face]) -> BaseGeometry:
    """Bits of one surface as one region."""
    if len(faces) == 1:
        return faces[0].region
    return shapely.simplify(shapely.union_all([face.region for face in faces], grid_size=GRID), 0.0)


def _cuts(parts: Sequence[Part], frame: Placement) -> BaseGeometry:
    """Outlines of what is cut out of all parts, within them, but for open sides, where no wood has an edge."""
    rings = []
    for part in parts:
        blank = frame.local(part.blank)
        cuts = [met for cut in part.cuts if (met := frame.local(cut.box).meet(blank)) is not None]
        if cuts:
            wood = shapely.union_all([face.region for face in faces_of(part, frame)]).buffer(NEAR, quad_segs=1)
            rings += [shapely.box(*met.low[:2], *met.high[:2]).exterior.intersection(wood) for met in cuts]
    return shapely.union_all(rings)
