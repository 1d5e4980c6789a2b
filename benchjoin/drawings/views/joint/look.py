"""A joint as the eye sees it: leg and rail cut off a little way round it, from the front, one side and above.

The end is taken from the side on which the rail runs off, so that one looks at its cut wood.
"""

from __future__ import annotations

from functools import cached_property

import attrs
import shapely
from shapely.geometry.base import BaseGeometry

from ....frame.faces import OPPOSITE
from ....layout.joints.meeting import Cut, Joint
from ....layout.layout import Layout
from ....layout.parts import Part
from ....lengths import TOUCH
from ....solids import Box
from ..view import EYES, Eye, View, view
from .kinds import cuts_made

AROUND = 0.3
"""How much of leg and rail is shown round the joint, of the larger side of what they share."""
RIGHT_OF = {"front": "right", "right": "back", "back": "left", "left": "front"}
"""Which side one stands at after a step to the right round the piece."""


@attrs.frozen
class Look:
    """A joint as an eye sees it, full size: leg and rail clipped, the box of that, the rail, what the leg loses."""

    eye: Eye
    seen: View
    clip: Box
    rail: Part
    cut: Cut | None

    @cached_property
    def ended(self) -> tuple[BaseGeometry, BaseGeometry]:
        """Visible lines, and those that are only there because the view ends, as long as they run."""
        clip = self.eye.frame.local(self.clip)
        ring = shapely.box(*clip.low[:2], *clip.high[:2]).boundary.buffer(TOUCH)
        visible = self.seen.visible
        return visible.difference(ring), shapely.line_merge(visible.intersection(ring))

    @cached_property
    def wood(self) -> dict[str, tuple[list[BaseGeometry], BaseGeometry]]:
        """What is seen of each part, its largest face first, and of all others."""
        faces = sorted(self.seen.faces, key=lambda face: -face.region.area)
        return {
            name: (
                [face.region for face in faces if face.part == name],
                shapely.union_all([face.region for face in faces if face.part != name]),
            )
            for name in {face.part for face in faces}
        }


Looks = tuple[Look, Look, Look]


def looks_at(layout: Layout, joint: Joint) -> Looks:
    """The joint from the face that the rail goes to, from one side, and from above."""
    leg, rail = layout.joined(joint)
    parts, clip = _clipped(leg, rail)
    cut = next((seen.cut for part, seen in cuts_made(layout, joint) if part is leg), None)
    front, side, above = (Look(eye, view(parts, eye), clip, parts[-1], cut) for eye in _eyes(leg, rail))
    return front, side, above


def _clipped(leg: Part, rail: Part) -> tuple[list[Part], Box]:
    """Leg and rail with their cuts for each other, cut off a little way round the joint, and the box of that.

    Both keep their whole sections: they are cut off along their lengths alone.
    """
    low = [max(a, b) for a, b in zip(leg.blank.low, rail.blank.low, strict=True)]
    high = [min(a, b) for a, b in zip(leg.blank.high, rail.blank.high, strict=True)]
    more = AROUND * max(b - a for a, b in zip(low, high, strict=True))
    for part in (leg, rail):
        for axis in {0, 1, 2} - {part.slot.axes[0]}:
            low[axis] = min(low[axis], part.blank.low[axis])
            high[axis] = max(high[axis], part.blank.high[axis])
    clip = Box((low[0] - more, low[1] - more, low[2] - more), (high[0] + more, high[1] + more, high[2] + more))
    found = []
    for part, mate in ((leg, rail), (rail, leg)):
        box = part.blank.meet(clip)
        if box is not None:
            own = tuple(cut for cut in part.cuts if cut.mate == mate.identity)
            found.append(attrs.evolve(part.cropped(box), cuts=own))
    return found, clip


def _eyes(leg: Part, rail: Part) -> tuple[Eye, Eye, Eye]:
    """The eye that looks at the face the rail goes to, the one on the side where the rail runs off, the one above."""
    lies = rail.slot.face not in EYES
    front = EYES[("front" if rail.slot.long else "left") if lies else rail.slot.face]
    own, mate = front.frame.local(leg.blank), front.frame.local(rail.blank)
    to_the_left = own.low[0] - mate.low[0] > mate.high[0] - own.high[0] + TOUCH
    right = RIGHT_OF[front.name]
    side = EYES[OPPOSITE[right] if to_the_left else right]
    return front, side, Eye("above", "from above", front.right, front.frame.w)
