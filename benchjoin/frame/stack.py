"""The stack: levels and clears from the foot upwards, as a maker adds them up.

>>> Level("bench", front="3 1/2 in", ends="3 1/2 in", flush="front leg top").sides()["left"].width
88.9
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Literal

import attrs

from ..errors import BenchjoinError, typed
from .bearers import Bearers
from .boards import Boards
from .clear import SIDES, Clear, Side
from .doors import Door, Fault, a_length, a_name, kept, one_of, refuse
from .joints import Butt, Laid, Notch, RailJoint
from .ledger import Ledger
from .limits import few
from .rail import Rail, a_rail
from .stock import titled
from .top import Top
from .tray import Tray

FLUSH = {"front leg top": "front", "back leg top": "back"}


Carried = Boards | Bearers | Ledger | Top | Tray
"""What a level may carry."""


def _carries(value: Any) -> tuple[Carried, ...]:
    items = (value,) if isinstance(value, Carried) else value
    if isinstance(items, str) or not hasattr(items, "__iter__"):
        raise BenchjoinError(f"carries is {typed(value)}. Write a list of Bearers(…) and Boards(…) from below.")
    found = few("carries", items)
    for place, item in enumerate(found):
        if not isinstance(item, Carried):
            raise BenchjoinError(
                f"carries[{place}] is {typed(item)}. Write Bearers(batten, count=2) or Boards(slat, gap=8)."
            )
    return found


_a_load: Door[Carried | Sequence[Carried], tuple[Carried, ...]] = kept("carries", _carries)


@attrs.frozen
class Level:
    """The rails that share one height all round the frame, and what they carry. [mm]

    A side is a width, a Rail, or nothing; ends stands for left and right where these are not given. bottom, top
    and flush pin the level, top_at the upper face of what it carries; align says which edges its rails share, but for
    those that are raised. carries names the runs of bearers and boards from below.
    """

    name: str = attrs.field(converter=a_name("name", barred="./"))
    front: Rail | None = attrs.field(kw_only=True, default=None, converter=a_rail("front"))
    back: Rail | None = attrs.field(kw_only=True, default=None, converter=a_rail("back"))
    ends: Rail | None = attrs.field(kw_only=True, default=None, converter=a_rail("ends"))
    left: Rail | None = attrs.field(kw_only=True, default=None, converter=a_rail("left"))
    right: Rail | None = attrs.field(kw_only=True, default=None, converter=a_rail("right"))
    cross: Rail | None = attrs.field(kw_only=True, default=None, converter=a_rail("cross"))
    bottom: float | None = attrs.field(
        kw_only=True, default=None, converter=a_length("bottom", zero=True, optional=True)
    )
    top: float | None = attrs.field(kw_only=True, default=None, converter=a_length("top", optional=True))
    flush: Literal["front leg top", "back leg top"] | None = attrs.field(
        kw_only=True, default=None, converter=one_of("flush", None, *FLUSH)
    )
    top_at: float | None = attrs.field(kw_only=True, default=None, converter=a_length("top_at", optional=True))
    align: Literal["bottoms", "tops"] = attrs.field(
        kw_only=True, default="bottoms", converter=one_of("align", "bottoms", "tops")
    )
    carries: tuple[Carried, ...] = attrs.field(kw_only=True, default=(), converter=_a_load)

    def __attrs_post_init__(self) -> None:
        refuse(self, titled("Level", self.name), self._faults)

    def sides(self) -> dict[Side, Rail]:
        """The rails of this level by side, in the order front, back, left, right, cross."""
        found: dict[Side, Rail | None] = {
            "front": self.front,
            "back": self.back,
            "left": self.left or self.ends,
            "right": self.right or self.ends,
            "cross": self.cross,
        }
        return {side: rail for side, rail in found.items() if rail is not None}

    def runs(self) -> tuple[Boards | Bearers | Ledger, ...]:
        """The runs of boards and bearers that it carries, also those in sections of a top and on trays."""
        found: list[Boards | Bearers | Ledger] = []
        for item in self.carries:
            found += _runs_of(item)
        return tuple(found)

    def _faults(self) -> list[Fault]:
        faults = []
        if not self.sides():
            faults.append(
                Fault("front", 'it has no rail. Give at least one side a width, for example front="3 1/2 in".')
            )
        if self.flush and FLUSH[self.flush] not in self.sides():
            side = FLUSH[self.flush]
            faults.append(Fault("flush", f'"{self.flush}" holds the {side} rail, and there is none. Give {side}=.'))
        if self.top_at is not None and not self.carries:
            what = "it says how high what lies on the level ends, and it carries nothing. Write top=, or carries=."
            faults.append(Fault("top_at", what))
        for side, rail in self.sides().items():
            faults += _rail_faults(side, rail)
        return [*faults, *_carried_faults(self)]


def _runs_of(item: Carried) -> list[Boards | Bearers | Ledger]:
    if isinstance(item, Top):
        return [section.run for section in item.parts() if section.run is not None]
    return [item.slats] if isinstance(item, Tray) else [item]


def _carried_faults(level: Level) -> list[Fault]:
    """What one could not tell from each other, or that has nothing to go to."""
    faults, sides, seen = [], level.sides(), set[str]()
    taken = {*(field.name for field in attrs.fields(Level)), *(f"{side} rail" for side in SIDES)}
    for item in level.carries:
        keys = {item.key, getattr(item, "called", item.key)}
        if isinstance(item, Top):
            keys |= {section.key for section in item.parts()}
        if keys & seen:
            faults.append(Fault("carries", f'two runs are called "{item.key}". Give one a name: name="batten".'))
        elif keys & taken or (item.name or "").isdigit():
            faults.append(Fault("carries", f'a run is called "{item.key}", which addresses use. Choose another name.'))
        seen |= keys
        if isinstance(item, Boards) and item.width is not None:
            what = "the width of boards is that of a section, and these lie in no top. Leave it out, or write Top([…])."
            faults.append(Fault("carries", what))
        needed = _goes_to(item)
        if needed and not any(side in sides for side in needed):
            own = f"supports of the {item.key}" if isinstance(item, Top) else item.key
            what = f"the {own} go to a {' or '.join(needed)} rail, and there is none. Give {needed[0]}=."
            faults.append(Fault("carries", what))
    return faults


def _goes_to(item: Carried) -> tuple[Side, ...]:
    """Sides of the rails that something is joined to; none for what only lies on what is there."""
    if isinstance(item, Boards):
        return (item.side,) if item.run == "up" else ()
    if isinstance(item, Ledger):
        return () if item.on_legs else tuple(side for side in SIDES if side == item.row)
    if isinstance(item, Tray):
        return tuple(side for side in SIDES if side == item.far) if item.stop else ()
    if isinstance(item, Top):
        return ("front", "back") if item.supports is not None else ()
    if isinstance(item.joint, Laid):
        return ()
    return ("front", "back") if (item.run == "across") != item.planted else ("left", "right", "cross")


def clear_name(stack: Sequence[Clear | Level], place: int) -> str:
    """What a clear of a stack is called: by the level below it, or the one above where it is the first."""
    below, above = stack[place - 1] if place else None, stack[place + 1] if place + 1 < len(stack) else None
    if isinstance(below, Level):
        return f"clear above {below.name}"
    return f"clear below {above.name}" if isinstance(above, Level) else "clear"


def default_joint(side: Side) -> RailJoint:
    """Let in flush for long rails, butted for the others."""
    return Notch() if side in ("front", "back") else Butt()


def _rail_faults(side: Side, rail: Rail) -> list[Fault]:
    """What a rail cannot be on its side, with the joint that it has there where it says none."""
    known = ("left", "middle", "right", "outer") if side == "cross" else ("outer", "middle", "inner")
    butts = (rail.joint or default_joint(side)).between
    faults = []
    if rail.face not in known:
        faults.append(Fault(side, f"face is {rail.face!r}. A {side} rail knows {', '.join(known)}."))
    elif side == "cross" and not butts and rail.face in ("outer", "middle"):
        faults.append(
            Fault(side, f"face is {rail.face!r}, where a cross rail can only butt. Write face='left' or face='right'.")
        )
    elif rail.face == "middle" and not butts:
        faults.append(
            Fault(side, "face is 'middle', where a rail can only butt against the legs. Write joint=Butt() with it.")
        )
    if butts and rail.overhang:
        what = f"overhang is {rail.overhang:g} mm, and a {side} rail butts unless it says otherwise. "
        faults.append(Fault(side, what + "Leave the overhang out, or give it a joint, for example joint=Notch()."))
    return faults
