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
from .doors import Fault, a_length, a_name, a_number, kept, one_of, refuse
from .joints import Butt, Laid, Notch, RailJoint
from .rail import Rail, a_rail
from .stock import titled

Side = Literal["front", "back", "left", "right", "cross"]
SIDES: tuple[Side, ...] = ("front", "back", "left", "right", "cross")
FLUSH = {"front leg top": "front", "back leg top": "back"}


@attrs.frozen
class Clear:
    """An open height or space between two members; without a size it shares what is left, by weight. [mm]

    at says where the maker measures it: over the whole band of the levels around it, at one side's rails, or from the
    "surface", the upper face of what the level below carries.
    """

    size: float | None = attrs.field(default=None, converter=a_length("size", zero=True, optional=True))
    weight: float = attrs.field(kw_only=True, default=1.0, converter=a_number("weight", 1e-3, 1e3, "1"))
    at: Side | Literal["surface"] | None = attrs.field(
        kw_only=True, default=None, converter=one_of("at", None, *SIDES, "surface")
    )

    def __attrs_post_init__(self) -> None:
        refuse(self, "Clear")


def _carries(value: Any) -> tuple[Boards | Bearers, ...]:
    items = (value,) if isinstance(value, Boards | Bearers) else value
    if isinstance(items, str) or not hasattr(items, "__iter__"):
        raise BenchjoinError(f"carries is {typed(value)}. Write a list of Bearers(…) and Boards(…) from below.")
    found = tuple(items)
    for place, item in enumerate(found):
        if not isinstance(item, Boards | Bearers):
            raise BenchjoinError(
                f"carries[{place}] is {typed(item)}. Write Bearers(batten, count=2) or Boards(slat, gap=8)."
            )
    return found


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
    flush: str | None = attrs.field(kw_only=True, default=None, converter=one_of("flush", None, *FLUSH))
    top_at: float | None = attrs.field(kw_only=True, default=None, converter=a_length("top_at", optional=True))
    align: Literal["bottoms", "tops"] = attrs.field(
        kw_only=True, default="bottoms", converter=one_of("align", "bottoms", "tops")
    )
    carries: tuple[Boards | Bearers, ...] = attrs.field(kw_only=True, default=(), converter=kept("carries", _carries))

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
            what = "it pins the upper face of what lies on the level, which carries nothing. Write top=, or carries=."
            faults.append(Fault("top_at", what))
        for side, rail in self.sides().items():
            faults += _rail_faults(side, rail)
        return [*faults, *_carried_faults(self)]


def _carried_faults(level: Level) -> list[Fault]:
    """Runs that one could not tell from each other, or that have nothing to go to."""
    faults, sides, seen = [], level.sides(), set[str]()
    taken = {*(field.name for field in attrs.fields(Level)), *(f"{side} rail" for side in SIDES)}
    for run in level.carries:
        if {run.key, run.called} & seen:
            faults.append(Fault("carries", f'two runs are called "{run.key}". Give one a name: name="batten".'))
        elif run.key in taken or (run.name or "").isdigit():
            faults.append(Fault("carries", f'a run is named "{run.name}", which addresses use. Choose another name.'))
        seen |= {run.key, run.called}
        needed = _goes_to(run)
        if needed and not any(side in sides for side in needed):
            what = f"the {run.key} go to a {' or '.join(needed)} rail, and there is none. Give {needed[0]}=."
            faults.append(Fault("carries", what))
    return faults


def _goes_to(run: Boards | Bearers) -> tuple[Side, ...]:
    """Sides of the rails that a run is joined to; none for what only lies on what is there."""
    if isinstance(run, Boards):
        return (run.side,) if run.run == "up" else ()
    if isinstance(run.joint, Laid):
        return ()
    return ("front", "back") if (run.run == "across") != run.planted else ("left", "right", "cross")


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
