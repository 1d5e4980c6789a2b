"""Legs where they stand: a run of leg pairs and bays along the length, outer faces held at the size over the legs."""

from __future__ import annotations

from collections.abc import Sequence

from ...frame.clear import Clear
from ...frame.faces import X, Y
from ...frame.frame import Frame
from ...frame.pair import Pair
from ...frame.slots import Slot
from ...runs import Array, Member, Pin, lay_run, most
from ...solids import Box
from ..blank import Blank
from .site import Over, Site
from .sizes import section


def pair_edges(frame: Frame, over: Over, bays: Sequence[Clear | Pair]) -> Array:
    """Edges of leg pairs and bays along the length, shape (quantity, 2 × pairs). [mm]

    Raises
    ------
    RunError
        If bays and legs do not come out over the length.
    """
    widths: dict[str, list[Array]] = {}
    for slot in frame.legs():
        widths.setdefault(slot.pair, []).append(section(frame, slot).along(slot, X))
    names, say = frame.pairs(), frame.tape.say
    members = [Member(name="left legs", size=most(widths["left"]))]
    pins = [Pin(edge=0, at=0.0, name="the left end")]
    for place, item in enumerate(bays):
        if isinstance(item, Clear):
            members.append(Member(name=f"bay {place // 2 + 1}", size=item.size, share=item.weight))
            continue
        name = names[place // 2 + 1]
        wide = most(widths[name])
        if item.at is not None:
            pins.append(Pin(edge=len(members), at=item.at - wide / 2, name=f"{name} pair (middle at {say(item.at)})"))
        members.append(Member(name=f"{name} legs", size=wide))
    members.append(Member(name="right legs", size=most(widths["right"])))
    end = f"the right end (at {say(float(over.length.flat[0]))})"
    return lay_run(
        "Legs along the length", members, [*pins, Pin(edge=len(members), at=over.length, name=end)], frame.tape
    )


def leg_blank(slot: Slot, site: Site) -> Blank:
    """A leg of one piece where it stands."""
    sizes = section(site.frame, slot)
    wide, deep = site.pick(sizes.along(slot, X)), site.pick(sizes.along(slot, Y))
    low, high = (site.pick(edge) for edge in site.pairs[slot.pair])
    x = {"left": low, "right": high - wide}.get(slot.pair, (low + high - wide) / 2)
    y = 0.0 if slot.side == "front" else site.over[1] - deep
    high = site.pick(site.rises[slot.name].top) if slot.name in site.rises else slot.of.height
    return Blank(slot=slot, box=Box((x, y, 0.0), (x + wide, y + deep, high)))
