"""Layers: how high what a level carries lies, member by member from below, told over what its rails are told over.

Heights never hang on the plan: they follow from the widths of rails, the thickness of what lies on them, and what the
description says is under it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import attrs

from ...frame.boards import Boards
from ...frame.faces import Z
from ...frame.frame import Frame
from ...frame.joints import Laid, Notch, Over, Rests
from ...frame.layers import drawn_top
from ...frame.slots import Slot
from ...frame.tray import TrayStop
from ...lengths import TOUCH
from ...runs import Array, least, most
from .sizes import section


@attrs.frozen(eq=False, repr=False, slots=False)
class Rise:
    """Bottom and top of something, each of shape (quantity,). [mm]"""

    bottom: Array
    top: Array


def layers(frame: Frame, level: str, rails: Mapping[str, Rise]) -> dict[str, Rise]:
    """Bottom and top of each member that lies on a level, over what its rails are told over; by name."""
    found: dict[str, Rise] = {}
    bottoms: dict[tuple[object, ...], Array] = {}
    for slot in frame.carried_of.get(level, ()):
        if slot.upright:
            continue
        high = section(frame, slot).along(slot, Z)
        if isinstance(slot.of, Boards):
            key = slot.goes_by
            if key not in bottoms:
                bottoms[key] = _highest(key, rails, found)
            bottom = bottoms[key]
        else:
            bottom = _bearer(frame, slot, high, rails, found)
        found[slot.name] = Rise(bottom, bottom + high)
    return found


def _bearer(frame: Frame, slot: Slot, high: Array, rails: Mapping[str, Rise], found: Mapping[str, Rise]) -> Array:
    """The height of the under face of a bearer: by the rails whose tops are drawn lowest. [mm]"""
    names, joint = slot.goes_by, slot.joint
    if slot.face == "bottom":
        return least(found[name].bottom for name in names) - high
    if isinstance(slot.of, TrayStop):
        return _highest(names, rails, found)
    top = _highest(_lowest_drawn(frame, names, slot, rails), rails, found)
    if isinstance(joint, Laid | Rests):
        return top
    if isinstance(joint, Over):
        return top - (high / 2 if joint.depth is None else joint.depth)
    if isinstance(joint, Notch) and joint.depth is not None:
        return top - joint.depth
    lowered: float = getattr(slot.of, "lowered", 0.0)
    return top - high - lowered


def _lowest_drawn(frame: Frame, names: Sequence[str], slot: Slot, rails: Mapping[str, Rise]) -> Sequence[str]:
    """Of the rails of a level those whose tops are drawn lowest; of others all."""
    if slot.level is None or not all(name in rails for name in names):
        return names
    tops = {name: drawn_top(slot.level, own) for own in frame.rails_of[slot.level.name] for name in [own.name]}
    low = min(tops[name] for name in names)
    return [name for name in names if tops[name] <= low + TOUCH]


def _highest(names: Sequence[str], rails: Mapping[str, Rise], found: Mapping[str, Rise]) -> Array:
    return most((rails[name] if name in rails else found[name]).top for name in names)
