"""The isometric picture: the whole as it stands, and drawn apart so that one sees how rails enter the notches.

Looking from the front left and above: length runs up to the right, depth up to the left, heights upright, all three
at one scale (ISO 5456-3, axes 120 degrees apart); or from anywhere else, for whom walks round it. What covers a face is
every bit of wood on the eye's side of its plane; the faces less what covers them are the picture. They are worked out
on a slanting page (`looking`).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Unpack

import attrs
import numpy as np
import numpy.typing as npt
import shapely
from shapely.geometry.base import BaseGeometry

from ...drafting.linework import Linework
from ...drafting.primitives import Box, Drawing, Line
from ...drafting.sheets.figure import Figure
from ...drafting.sheets.sheet import Sheet
from ...layout import ways_in
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import TOUCH
from ...solids import Placement, Vector, along
from ..making.asked import Asked, OfAPiece, ask
from ..making.fitting import fit_view
from ..making.pieces import named, shown_parts, titled
from .face import Face, faces_of
from .looking import GRID, ISOMETRIC, Look
from .shade import in_shade, shaded
from .strokes import strokes
from .view import Eye

Regions = npt.NDArray[np.object_]
"""An array of shapes."""
LIES = math.cos(math.radians(30.0))
"""How much of a size along an edge is left across it."""
THIN = 0.1
"""The share of all wood that may be thinner than what is called thin."""
LEAST = 0.01
"""Visible regions that are no larger are left out. [mm²]"""
AREAS = (shapely.GeometryType.POLYGON, shapely.GeometryType.MULTIPOLYGON)
"""What a region is made of; lines that are left where faces only touch are no part of it."""
SHORTEST_WAY = sum(Linework().pen("centre").dashes[:3])
"""A way that shows less between the parts is left out: its dashes could not be read. [mm on paper]"""
APART = 0.28
"""How far parts are drawn apart, of the frame's mean size."""


@attrs.frozen
class Picture:
    """Visible regions by part, visible lines, and the regions in shade, in page axes at full size. [mm]

    thin is how thin thin wood is, laps and what they leave among it: its edges are the closest lines.
    """

    faces: tuple[Face, ...]
    lines: BaseGeometry = attrs.field(eq=False)
    shade: Regions = attrs.field(eq=False)
    thin: float

    @property
    def apart(self) -> float:
        """How close the lines of the picture come. [mm]"""
        return self.thin * LIES

    def bounds(self, scale: float) -> Box:
        """The box round the picture at a scale; its shade lies within its lines."""
        left, low, right, high = self.lines.bounds
        return left * scale, low * scale, right * scale, high * scale

    def drawing(self, scale: float) -> Drawing:
        """The picture at a scale, with its shade."""
        return (*shaded(self.shade, scale), *strokes(self.lines, "visible", scale))


def isometric(layout: Layout, **options: Unpack[OfAPiece]) -> Sheet:
    """The isometric picture of one piece; options are paper, house and piece, as `Asked` has them.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    asked = ask(layout, OfAPiece, options)
    title = titled(asked, "Isometric picture")
    seen = picture(layout.piece(asked.piece))

    def draw(scale: float) -> Figure:
        return Figure(name=title, drawing=seen.drawing(scale))

    name = named(asked, "isometric")
    wood = seen.lines.bounds
    return fit_view(asked, draw, name=name, kind="Picture", title=title, free=True, wood=wood, apart=seen.apart)


def exploded(layout: Layout, **options: Unpack[OfAPiece]) -> Sheet:
    """The isometric picture of one piece drawn apart, with the way of each rail to its legs; options as for the other.

    Raises
    ------
    PaperError
        If it does not fit the paper at any scale.
    """
    asked = ask(layout, OfAPiece, options)
    title = titled(asked, "Isometric picture, drawn apart")
    shown = drawn_apart(layout, asked.piece)

    def draw(scale: float) -> Figure:
        return Figure(name=title, drawing=shown.drawing(scale))

    name = named(asked, "exploded")
    wood = shown.lines.bounds
    return fit_view(asked, draw, name=name, kind="Picture", title=title, free=True, wood=wood, apart=shown.apart)


@attrs.frozen
class Apart:
    """The picture of a piece drawn apart, and the ways of its rails; full size. [mm]"""

    picture: Picture
    ways: BaseGeometry = attrs.field(eq=False)

    @property
    def faces(self) -> tuple[Face, ...]:
        """Visible regions by part. [mm]"""
        return self.picture.faces

    @property
    def lines(self) -> BaseGeometry:
        """Visible lines. [mm]"""
        return self.picture.lines

    @property
    def apart(self) -> float:
        """How close the lines of the picture come. [mm]"""
        return self.picture.apart

    def drawing(self, scale: float) -> Drawing:
        """The picture at a scale."""
        return (*self.picture.drawing(scale), *_thin(self.ways, scale))


def drawn_apart(layout: Layout, piece: int) -> Apart:
    """One piece drawn apart."""
    shifts = apart(layout, piece)
    seen = picture([part.moved(shifts[part.identity]) for part in layout.piece(piece)])
    wood = shapely.union_all([face.region for face in seen.faces]).buffer(1e-3)
    ways = list(_ways(layout, shifts, piece))
    return Apart(seen, shapely.union_all(ways).difference(wood) if ways else shapely.MultiLineString())


def _thin(lines: BaseGeometry, scale: float) -> Iterator[Line]:
    """Ways of the parts as chain lines, without the crumbs that are too short for one."""
    for line in strokes(lines, "centre", scale):
        (x0, y0), (x1, y1) = line.points[0], line.points[-1]
        if math.hypot(x1 - x0, y1 - y0) > SHORTEST_WAY:
            yield line


def picture_of(asked: Asked) -> Picture:
    """The picture of the first of the pieces that are alike, which the sheets of a binder share."""
    parts = shown_parts(asked)
    return asked.once(("picture", parts[0].piece), lambda: picture(parts))


def picture(parts: Sequence[Part], look: Look = ISOMETRIC) -> Picture:
    """What is seen of parts."""
    wood = np.array([(b.low, b.high) for part in parts for b in part.solid])
    owners = np.array([part.name for part in parts for _ in part.solid])
    looking = [(face, eye.frame) for eye in look.eyes for part in parts for face in _shown(part, eye)]
    faces = [face for face, _ in looking]
    regions = _joined(faces, _visible(look, faces, [frame for _, frame in looking], wood, owners))
    shown = np.flatnonzero(shapely.area(regions) > LEAST)
    lines = shapely.line_merge(shapely.union_all(shapely.boundary(regions[shown]), grid_size=GRID))
    seen = zip(shown.tolist(), look.upright(regions[shown]), strict=True)
    dark = np.array([in_shade(frame.w) for _, frame in looking])[shown]
    own = tuple(attrs.evolve(faces[n], region=region) for n, region in seen)
    shade = np.array([face.region for face, one in zip(own, dark.tolist(), strict=True) if one], dtype=object)
    return Picture(own, look.upright(lines), shade, float(np.quantile(np.diff(wood, axis=1).min(axis=2), THIN)))


def _shown(part: Part, eye: Eye) -> Iterator[Face]:
    """Faces of a part for an eye; a shaped edge is shown by the eye that looks across it, not along it."""
    for face in faces_of(part, eye.frame):
        if not face.surface or abs(along(eye.frame.w, part.placement.u)) < 0.5:
            yield face


def _joined(faces: Sequence[Face], regions: Regions) -> Regions:
    """The same regions, with all bits of one shaped edge in the place of the first."""
    first: dict[tuple[str, str], int] = {}
    for number, face in enumerate(faces):
        if face.surface:
            kept = first.setdefault((face.part, face.surface), number)
            if kept != number:
                regions[kept] = shapely.union(regions[kept], regions[number], grid_size=GRID)
                regions[number] = shapely.Polygon()
    return regions


def _visible(
    look: Look,
    faces: Sequence[Face],
    frames: Sequence[Placement],
    wood: npt.NDArray[np.float64],
    owners: npt.NDArray[np.str_],
) -> Regions:
    """Faces, each of the eye with its frame, laid on the slanting page and less what covers them.

    All faces are worked out at once: what is asked of the geometry library is asked for arrays.
    """
    regions: Regions = shapely.set_precision(_on_page(look, faces, frames), GRID)
    which, of = shapely.STRtree(shapely.polygons(look.silhouettes(wood))).query(regions, predicate="intersects")
    apart = np.array([not face.surface for face in faces])[which]  # a shaped edge is not covered by its own steps
    apart |= np.array([face.part for face in faces])[which] != owners[of]
    which, near = _before(which[apart], wood[of[apart]], faces, frames)
    covered, counts = np.unique(which, return_counts=True)
    table = np.full((len(covered), counts.max(initial=0)), None)  # a row for each covered face, filled from the left
    table[np.arange(table.shape[1]) < counts[:, None]] = shapely.polygons(look.silhouettes(near))
    covers = shapely.union_all(table, axis=1, grid_size=GRID)
    regions[covered] = shapely.difference(regions[covered], covers, grid_size=GRID)
    return regions


def _before(
    which: npt.NDArray[np.int64], wood: npt.NDArray[np.float64], faces: Sequence[Face], frames: Sequence[Placement]
) -> tuple[npt.NDArray[np.int64], npt.NDArray[np.float64]]:
    """Boxes, shape (n, 2, 3), each less what lies behind the plane of its face, and the numbers of the faces in order.

    What has nothing before its face is left out.
    """
    away = np.array([frame.w for frame in frames])
    planes = np.array([face.distance for face in faces])[:, None] * away
    lows = np.where(away < 0, planes, -np.inf)[which]  # the eye is on the high side
    highs = np.where(away > 0, planes, np.inf)[which]
    near = np.stack([np.maximum(wood[:, 0], lows), np.minimum(wood[:, 1], highs)], axis=1)
    thick = ((near[:, 1] - near[:, 0] > TOUCH) | (away[which] == 0)).all(axis=1)
    which, near = which[thick], near[thick]
    order = np.argsort(which, kind="stable")
    return which[order], near[order]


def _on_page(look: Look, faces: Sequence[Face], frames: Sequence[Placement]) -> Regions:
    """The regions of faces on the slanting page, of areas alone; what a sliver folds over itself there is laid flat."""
    regions = np.array([face.region for face in faces])
    _, owner = shapely.get_coordinates(regions, return_index=True)
    u, v, w = np.array([(frame.u, frame.v, frame.w) for frame in frames])[owner].transpose(1, 0, 2)
    tilts = np.array([face.tilt for face in faces])
    bounds = shapely.bounds(regions)
    middles = np.array([face.distance for face in faces]) - ((bounds[:, :2] + bounds[:, 2:]) / 2 * tilts).sum(axis=1)

    def lay(at: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
        distance = middles[owner, None] + (at * tilts[owner]).sum(axis=1, keepdims=True)
        return look.slant(at[:, :1] * u + at[:, 1:] * v + w * distance)

    laid: Regions = shapely.transform(regions, lay)
    flat = np.isin(shapely.get_type_id(laid), AREAS) & shapely.is_valid(laid)
    laid[~flat] = shapely.buffer(laid[~flat], 0.0)
    return laid


def apart(layout: Layout, piece: int) -> dict[str, Vector]:
    """How far each part is moved when the frame is drawn apart. [mm]"""
    return ways_in.drawn_apart(layout, APART * sum(layout.overall(piece)) / 3, piece)


def _ways(layout: Layout, shifts: dict[str, Vector], piece: int) -> Iterator[BaseGeometry]:
    """From where each rail's end lies to where its leg awaits it; of a run, of its first and its last member alone."""
    between, guests = _between(layout, piece), {part.identity: part for part in layout.piece(piece)}
    for joint in layout.joints_of(piece):
        if joint.guest in between:
            continue
        middle = np.add(joint.contact.low, joint.contact.high) / 2
        ends = [np.add(middle, shifts[name]) for name in (joint.host, joint.guest)]
        slants = np.count_nonzero(abs(np.subtract(*ends)) > TOUCH) > 1  # what a board is cut round is not where it goes
        if math.dist(*ends) > TOUCH and not (slants and guests[joint.guest].slot.run):
            yield shapely.LineString(ISOMETRIC.project(ends))


def _between(layout: Layout, piece: int) -> set[str]:
    """The members of runs but for the first and the last of each."""
    runs: dict[tuple[str | None, str], list[str]] = {}
    for part in layout.piece(piece):
        if part.slot.run:
            runs.setdefault((part.level, part.slot.run), []).append(part.identity)
    return {name for own in runs.values() for name in own[1:-1]}
