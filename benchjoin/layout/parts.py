"""Parts: blanks with their cuts, each in its own frame, and the notches of a leg in the words of the tape.

A part reads the same to everybody: drawings take its slabs, the cut list its finished size, the page of a set its
faces. `face_up` turns it so that one face looks at the maker, u to the right.
"""

from __future__ import annotations

from functools import cached_property
from typing import Literal

import attrs
from shapely.geometry import Polygon
from shapely.geometry import box as rectangle

from ..frame.identity import of_piece
from ..lengths import TOUCH
from ..solids import Box, Placement, Slab, along, placement, slabs, volume
from .blanks import OUT, Blank
from .joints.meeting import Cut

Role = Literal["leg", "rail"]
Hand = Literal["", "left", "right"]


@attrs.frozen(kw_only=True)
class Housing:
    """A notch in a leg: its edges over the foot, its depth from the face, and the rail that it is for. [mm]

    left and right are its extent across the face as one looks at it with the foot to the left: left is the lower
    edge on the page. open_top and open_foot say where it runs out at an end of the leg.
    """

    bottom: float
    top: float
    depth: float
    face: str
    open_top: bool
    open_foot: bool
    rail: str
    kind: str
    left: float
    right: float


@attrs.frozen(kw_only=True)
class Part:
    """A finished part. Sizes in mm, cuts as boxes in the world.

    side is the row of a leg and the side of a rail; level is a rail's, pair a leg's.
    name is piece and identity ("1/back left leg"), mark the label for the wood ("A3"), handed "left" or "right" where a
    mirror image exists and the part is not its own.
    """

    name: str
    piece: int
    role: Role
    side: str
    stock: str
    blank: Box
    placement: Placement
    marked: str
    cuts: tuple[Cut, ...]
    level: str | None = None
    pair: str = ""
    mark: str = ""
    kind: int = 0
    handed: Hand = ""

    @property
    def identity(self) -> str:
        """The name without the piece."""
        return self.name.partition("/")[2]

    @cached_property
    def size(self) -> tuple[float, float, float]:
        """Finished length, width and thickness in the part's own frame. [mm]"""
        sizes, own = self.blank.size(), self.placement
        u, v, w = (abs(along(sizes, way)) for way in (own.u, own.v, own.w))
        return u, v, w

    @property
    def length(self) -> float:
        """Finished length. [mm]"""
        return self.size[0]

    @property
    def width(self) -> float:
        """Larger side of the section. [mm]"""
        return max(self.size[1:])

    @property
    def thickness(self) -> float:
        """Smaller side of the section. [mm]"""
        return min(self.size[1:])

    @property
    def outline(self) -> Polygon:
        """Outline in the part's own length × width plane. [mm]"""
        length, width, _ = self.size
        return rectangle(0.0, 0.0, length, width)

    @cached_property
    def local_cuts(self) -> tuple[Box, ...]:
        """The cuts in the part's own frame. [mm]"""
        return tuple(self.placement.local(cut.box) for cut in self.cuts)

    @cached_property
    def slabs(self) -> tuple[Slab, ...]:
        """The wood that is left: intervals of thickness from the marked face inwards, a polygon each. [mm]"""
        return slabs(self.outline, self.size[2], self.local_cuts)

    @property
    def volume(self) -> float:
        """Finished volume. [mm³]"""
        return volume(self.slabs)

    @property
    def faces(self) -> tuple[str, ...]:
        """The faces from which it is cut: the marked face first."""
        found = dict.fromkeys(cut.face for cut in self.cuts)
        return tuple(sorted(found, key=lambda face: (face != self.marked, tuple(OUT).index(face))))

    @cached_property
    def notches(self) -> tuple[Housing, ...]:
        """Of a leg: its notches from the foot upwards."""
        found = [self._housing(cut) for cut in self.cuts] if self.role == "leg" else []
        return tuple(sorted(found, key=lambda h: (h.bottom, h.face != self.marked, h.face)))

    def _housing(self, cut: Cut) -> Housing:
        local = face_up(self, cut.face).local(cut.box)
        return Housing(
            bottom=cut.box.low[2],
            top=cut.box.high[2],
            depth=local.high[2] - max(local.low[2], 0.0),
            face=cut.face,
            open_top=cut.box.high[2] >= self.blank.high[2] - TOUCH,
            open_foot=cut.box.low[2] <= self.blank.low[2] + TOUCH,
            rail=cut.mate,
            kind=cut.kind,
            left=local.low[1],
            right=local.high[1],
        )

    def __repr__(self) -> str:
        length, width, thickness = (round(size, 2) for size in (self.length, self.width, self.thickness))
        return f"<Part {self.name} {self.mark}: {length:g} × {width:g} × {thickness:g} mm, {len(self.cuts)} cuts>"


def face_up(part: Part, face: str) -> Placement:
    """The part's frame with one of its faces up: u along the part to the right, v up the page, w into the wood."""
    return placement(part.blank, along=part.placement.u, out=OUT[face])


def part_of(
    blank: Blank,
    piece: int,
    role: Role,
    stock: str,
    cuts: tuple[Cut, ...],
    *,
    side: str,
    level: str | None = None,
    pair: str = "",
) -> Part:
    """A part from its blank and the cuts that joints take from it.

    The marked face of a leg looks outwards; that of a rail is the face from which it is cut, or its outer one.
    """
    marked = blank.marked if role == "leg" or not cuts else cuts[0].face
    return Part(
        name=of_piece(piece, blank.name),
        piece=piece,
        role=role,
        side=side,
        stock=stock,
        blank=blank.box,
        placement=placement(blank.box, along=blank.along, out=OUT[marked]),
        marked=marked,
        cuts=cuts,
        level=level,
        pair=pair,
    )
