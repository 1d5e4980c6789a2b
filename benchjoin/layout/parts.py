"""Parts: blanks with their cuts, each in its own frame, and the notches of a leg in the words of the tape.

A part reads the same to everybody: drawings take its slabs, the cut list its finished size, the page of a set its
faces. `face_up` turns it so that one face looks at the maker, u to the right.
"""

from __future__ import annotations

from bisect import bisect_right
from functools import cached_property
from itertools import accumulate
from operator import attrgetter
from typing import TYPE_CHECKING, Any, Literal

import attrs

from ..display import page
from ..frame.faces import AXIS, OPPOSITE, OUT, looks_down
from ..frame.identity import of_piece
from ..frame.slots import Slot
from ..frame.stock import Stock
from ..lengths import TOUCH
from ..outlines import Cropped, Outline, Profile
from ..readings import Tape
from ..solids import Box, Placement, Slab, Vector, along, boxes, placement, slabs
from .blank import Blank
from .joints.meeting import Cut, Joint
from .on_face import Housing, OnFace

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

Hand = Literal["", "left", "right"]


@attrs.frozen(kw_only=True, repr=False, slots=False)
class Part:
    """A finished part. Sizes in mm, cuts as boxes in the world.

    slot is what it is of; marked its marked face, shaped its shaped edges by face, meets the joints to which it is host
    and gives no wood; mark the label for the wood ("A3"), handed "left" or "right" where a mirror image exists and the
    part is not its own.
    """

    slot: Slot = attrs.field(eq=attrgetter("name"))
    piece: int
    blank: Box
    placement: Placement
    marked: str
    cuts: tuple[Cut, ...]
    tape: Tape = attrs.field(eq=False)
    shaped: Mapping[str, Profile] = attrs.field(factory=dict, hash=False)
    meets: tuple[Joint, ...] = attrs.field(default=(), eq=False)
    mark: str = ""
    kind: int = 0
    handed: Hand = ""

    @property
    def identity(self) -> str:
        """The name without the piece."""
        return self.slot.name

    @cached_property
    def name(self) -> str:
        """Piece and identity: "1/back left leg"."""
        return of_piece(self.piece, self.slot.name)

    @property
    def role(self) -> str:
        """The word for what it is: leg, rail."""
        return self.slot.role.word

    @property
    def side(self) -> str:
        """The row of a leg, the side of a rail."""
        return self.slot.side

    @property
    def stock(self) -> Stock:
        """The stock that it is made of, as described."""
        return self.slot.stock

    @property
    def level(self) -> str | None:
        """The name of a rail's level."""
        return self.slot.level.name if self.slot.level else None

    @property
    def pair(self) -> str:
        """The pair of a leg."""
        return self.slot.pair

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

    @cached_property
    def outline(self) -> Outline:
        """Outline in the part's own length × width plane. [mm]"""
        length, width, _ = self.size
        if not self.shaped:
            return Outline(length, width)
        v = self.placement.v
        edges = {way: self.shaped.get(face) for face in self.shaped for way in [OUT[face]]}
        return Outline(length, width, low=edges.get(_minus(v)), high=edges.get(v))

    @cached_property
    def local_cuts(self) -> tuple[Box, ...]:
        """The cuts in the part's own frame. [mm]"""
        return tuple(self.placement.local(cut.box) for cut in self.cuts)

    @cached_property
    def slabs(self) -> tuple[Slab, ...]:
        """The wood that is left: intervals of thickness from the marked face inwards, a polygon each. [mm]"""
        return slabs(self.outline.polygon, self.size[2], self.local_cuts)

    @property
    def volume(self) -> Any:
        """Finished volume, also where sizes are those of many variants. [mm³]"""
        length, width, thick = self.size
        found = boxes(Box((0.0, 0.0, 0.0), (length, width, thick)), self.local_cuts)
        return sum(box.volume() - (0.0 if self.outline.plain else self.outline.lost(box)) for box in found)

    @cached_property
    def taken(self) -> tuple[Box, ...]:
        """Boxes in the world that hold all the wood which its blank has lost, to cuts and to shaped edges."""
        steps = (self.placement.world(step) for step in self.outline.steps(self.size[2]))
        return (*(cut.box for cut in self.cuts), *steps)

    @cached_property
    def solid(self) -> tuple[Box, ...]:
        """The wood that is left as boxes in the world that touch and do not overlap."""
        return boxes(self.blank, self.taken)

    def cropped(self, box: Box) -> Part:
        """The part cut down to a box of the world, its cuts where they were."""
        axis = self.slot.axes[0]
        start = box.low[axis] - self.blank.low[axis]
        length = box.high[axis] - box.low[axis]
        shaped = {
            face: Cropped(edge, start, length, abs(_end(self.blank, face) - _end(box, face)))
            for face, edge in self.shaped.items()
        }
        return self.standing(box, shaped=shaped)

    def moved(self, by: Vector) -> Part:
        """The part somewhere else, cuts and all."""
        cuts = tuple(attrs.evolve(cut, box=cut.box.shifted(by)) for cut in self.cuts)
        return attrs.evolve(self.standing(self.blank.shifted(by)), cuts=cuts)

    def standing(self, box: Box, **more: Any) -> Part:
        """The part with another blank."""
        own = placement(box, along=self.placement.u, out=OUT[self.marked])
        return attrs.evolve(self, blank=box, placement=own, **more)

    @property
    def faces(self) -> tuple[str, ...]:
        """The faces from which it is cut: the marked face first."""
        return self._in_order(cut.face for cut in self.cuts)

    @property
    def marked_faces(self) -> tuple[str, ...]:
        """The faces that carry a mark: those that it is cut from, and those on which something comes to it."""
        return self._in_order(cut.face for cut in (*self.cuts, *self.touches))

    def _in_order(self, faces: Iterable[str]) -> tuple[str, ...]:
        return tuple(sorted(set(faces), key=lambda face: (face != self.marked, tuple(OUT).index(face))))

    @cached_property
    def touches(self) -> tuple[Cut, ...]:
        """Where guests come to wood of one of its long faces and take none of it: each as a cut without depth."""
        found = ((joint, _touched(self.blank, joint.contact)) for joint in self.meets)
        return tuple(
            Cut(part=self.identity, mate=joint.guest, face=face, box=joint.contact, kind=joint.kind)
            for joint, face in found
            if face and AXIS[face] != self.slot.axes[0] and not self._gone(joint.contact)
        )

    @cached_property
    def _rising(self) -> tuple[list[Box], list[float], list[float]]:
        """What is taken, rising along the part; where each begins; the furthest that it or any before it ends. [mm]"""
        axis = self.slot.axes[0]
        rising = sorted((cut.box for cut in self.cuts), key=lambda box: box.low[axis])
        ends = accumulate((box.high[axis] for box in rising), max)
        return rising, [box.low[axis] for box in rising], list(ends)

    def _gone(self, contact: Box) -> bool:
        """Whether a contact lies where a cut has taken the wood away."""
        axis, (rising, starts, ends) = self.slot.axes[0], self._rising
        place = bisect_right(starts, contact.low[axis] + TOUCH) - 1
        while place >= 0 and ends[place] >= contact.high[axis] - TOUCH:
            if _within(contact, rising[place]):
                return True
            place -= 1
        return False

    def marks_on(self, face: str) -> tuple[OnFace, ...]:
        """All that is marked on one face, from the datum end: cuts, and what comes to it and takes no wood."""
        return tuple(sorted((*self.cuts_on(face), *self.touches_on(face)), key=lambda cut: cut.start))

    def touches_on(self, face: str) -> tuple[OnFace, ...]:
        """What comes to one face and takes no wood of it."""
        return tuple(self.on_face(cut) for cut in self.touches if cut.face == face)

    def face_name(self, face: str) -> str:
        """What one of its faces is called: outer face, end face …"""
        return self._faces[face]

    def face_called(self, called: str) -> str:
        """The face that is called so."""
        return next(face for face, name in self._faces.items() if name == called)

    @cached_property
    def _faces(self) -> Mapping[str, str]:
        """What each of its long faces is called."""
        edge, words = self.slot.true_edge, self.slot.role.faces
        return {
            self.marked: words["marked"],
            OPPOSITE[self.marked]: words["opposite"],
            edge: words["true edge"],
            OPPOSITE[edge]: words["far edge"],
        }

    def on_face(self, cut: Cut) -> OnFace:
        """One of its cuts as it is seen on its face."""
        return OnFace(cut, *self._seen(cut))

    def cuts_on(self, face: str) -> tuple[OnFace, ...]:
        """Its cuts from one face, in the order of its joints."""
        return tuple(self.on_face(cut) for cut in self.cuts if cut.face == face)

    @cached_property
    def notches(self) -> tuple[Housing, ...]:
        """Of what stands: its notches from the foot upwards."""
        found = [Housing(cut, *self._seen(cut), tape=self.tape) for cut in self.cuts] if self.slot.upright else []
        return tuple(sorted(found, key=lambda h: (h.bottom, h.face != self.marked, h.face)))

    def _seen(self, cut: Cut) -> tuple[str, Box, Vector]:
        called, turned, size = self._ups[cut.face]
        return called, turned.local(cut.box), size

    @cached_property
    def _ups(self) -> Mapping[str, tuple[str, Placement, Vector]]:
        """For each face that is cut its name, the part's frame with it up, and the part's size in that frame."""
        ups = {face: face_up(self, face) for face in self.marked_faces}
        return {face: (self.face_name(face), up, up.local(self.blank).size()) for face, up in ups.items()}

    def _repr_html_(self) -> str:
        return page("part_page", self)

    def __repr__(self) -> str:
        size = " × ".join(map(self.tape.both, (self.length, self.width, self.thickness)))
        return f"<Part {self.name} {self.mark}: {size}, {len(self.cuts)} cuts>"


def face_up(part: Part, face: str) -> Placement:
    """The part's frame with one of its faces up: u along the part to the right, v up the page, w into the wood."""
    return placement(part.blank, along=part.placement.u, out=OUT[face])


def _touched(host: Box, contact: Box) -> str:
    """The face of a host on which a contact lies, which has no thickness; nothing where it has one."""
    for face, axis in AXIS.items():
        flat = contact.high[axis] - contact.low[axis] <= TOUCH
        if flat and abs(contact.low[axis] - _end(host, face)) <= TOUCH:
            return face
    return ""


def _within(contact: Box, cut: Box) -> bool:
    """Whether a contact lies inside a cut."""
    pairs = zip(contact.low, contact.high, cut.low, cut.high, strict=True)
    return all(low >= start - TOUCH and high <= end + TOUCH for low, high, start, end in pairs)


def _end(box: Box, face: str) -> float:
    """Where a box ends on the side of a face. [mm]"""
    return (box.low if looks_down(face) else box.high)[AXIS[face]]


def _minus(v: Vector) -> Vector:
    return (0.0 - v[0], 0.0 - v[1], 0.0 - v[2])


def part_of(blank: Blank, piece: int, cuts: tuple[Cut, ...], meets: tuple[Joint, ...], tape: Tape) -> Part:
    """A part from its blank and the cuts that joints take from it, read with a tape."""
    marked = blank.slot.marked([cut.face for cut in cuts])
    return Part(
        slot=blank.slot,
        piece=piece,
        blank=blank.box,
        placement=placement(blank.box, along=blank.along, out=OUT[marked]),
        marked=marked,
        cuts=cuts,
        tape=tape,
        shaped=blank.shaped,
        meets=meets,
    )
