"""Which joints are alike: those of one kind have one detail."""

from __future__ import annotations

from ....frame.faces import AXIS
from ....frame.joints import Laid
from ....layout.joints.meeting import Joint
from ....layout.layout import Layout
from ....layout.on_face import OnFace
from ....layout.parts import Part, face_up


def kinds_of_joints(layout: Layout) -> list[list[Joint]]:
    """Joints that are alike, of one piece of each kind: same kind, same sections, same place in the host's section.

    What only lies on another is no joint to be made: the part drawings show its lines.
    """
    found: dict[tuple[object, ...], list[Joint]] = {}
    for alike in layout.alike:
        for joint in layout.joints_of(alike[0]):
            if not isinstance(joint.how, Laid):
                found.setdefault(_key(layout, joint), []).append(joint)
    return list(found.values())


def _key(layout: Layout, joint: Joint) -> tuple[object, ...]:
    host, guest = layout.joined(joint)
    if not joint.cuts and guest.slot.run:  # it only touches: one detail shows how, wherever it stands
        return (joint.kind, guest.slot.role.word, guest.slot.axes, round(guest.thickness, 6))
    depths = tuple(round(cut.floor - cut.box.low[2], 6) for _, cut in cuts_made(layout, joint))
    sizes = (host.width, host.thickness, guest.thickness, *_place(host, guest, joint))
    return (joint.kind, guest.slot.axes, depths, tuple(round(size, 6) for size in sizes))


def _place(host: Part, guest: Part, joint: Joint) -> tuple[float, ...]:
    """Where the guest lies in the host's section, from the face it goes to and from the nearer of the edges. [mm]"""
    face = guest.slot.face if AXIS[guest.slot.face] != host.slot.axes[0] else host.marked
    turned = face_up(host, face)
    box, wide = turned.local(joint.contact), turned.local(host.blank).size()[1]
    (_, low, near), (_, high, far) = box.low, box.high
    return (*min((low, high), (wide - high, wide - low)), near, far)


def cuts_made(layout: Layout, joint: Joint) -> list[tuple[Part, OnFace]]:
    """The cuts of a joint as they are in its parts: those of finished parts may not be where the joint wants them."""
    cuts = {(c.part, c.mate, c.face): (part, part.on_face(c)) for part in layout.joined(joint) for c in part.cuts}
    return [cuts[c.part, c.mate, c.face] for c in joint.cuts]
