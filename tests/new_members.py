"""Members that the package does not have, made of a row of the table, a place and a joint each.

A plank lies across the end rails; where it reaches over a leg, its corner is cut round it. A rail has a lower edge that
rises in a bow. Whatever draws, lists, weighs or checks wood must take them as they are.
"""

from __future__ import annotations

import math
from typing import Any, ClassVar

import attrs

from benchjoin import Butt, Clear, Frame, HalfLap, Leg, Level, Rail, Stock
from benchjoin.frame.faces import X, Y, Z
from benchjoin.frame.joints import How
from benchjoin.frame.roles import Role
from benchjoin.frame.slots import Slot
from benchjoin.layout.blank import Blank
from benchjoin.layout.joining import JOINTS
from benchjoin.layout.joints.meeting import Cut
from benchjoin.layout.placing.place import PLACES, Placing
from benchjoin.layout.placing.rails import rail_blank
from benchjoin.solids import Box

PLANK = Role(
    word="plank",
    plural="planks",
    datum="datum end",
    end="end",
    flush="datum ends",
    low="near shoulder",
    high="far shoulder",
    between="length",
    struck="shoulder",
    faces={"marked": "upper face", "opposite": "lower face", "true edge": "true edge", "far edge": "far edge"},
    sets={"": "planks"},
    whole_set=False,
    turns_over=True,
    mate="leg",
    slim="Rip",
    sized_stock=False,
    spare="",
)


@attrs.frozen
class Plank:
    """A board that lies on the end rails, over the whole length, from a place along the depth. [mm]"""

    start: float
    width: float


@attrs.frozen
class Lying(How):
    """It only lies there."""

    word: ClassVar[str] = "lying"
    lies: ClassVar[bool] = True


@attrs.frozen
class CutRound(How):
    """A corner of the guest is cut round its host, right through."""

    word: ClassVar[str] = "corner"
    shares: ClassVar[bool] = True


class NoWood:
    """How a plank that lies is worked out."""

    @staticmethod
    def let_in(joint, thickness, flush):
        return 0.0

    @staticmethod
    def cuts(joint, meeting):
        return ()


class Corner(NoWood):
    """How a corner is worked out: the guest loses what both want."""

    @staticmethod
    def cuts(joint, meeting):
        guest, host = meeting.guest, meeting.host
        return (Cut(part=guest.name, mate=host.name, face="top", box=meeting.overlap, kind=joint.word),)


@attrs.frozen
class Bow:
    """An edge that rises in the middle by so much, as a parabola does. [mm]"""

    rise: float
    length: Any

    def depth(self, at):
        return 4 * self.rise * at * (self.length - at) / self.length**2

    def area(self, start, end):
        def below(at):
            return 4 * self.rise / self.length**2 * (self.length * at**2 / 2 - at**3 / 3)

        return below(end) - below(start)

    def points(self, sag):
        count = max(2, math.ceil(math.sqrt(self.rise / sag)))
        return [self.length * n / count for n in range(count + 1)]


@attrs.frozen(kw_only=True)
class Decked(Frame):
    """A frame with planks on one level, and a bow under the front rail of another."""

    planks: tuple[Plank, ...] = ()
    on: str = ""

    def slots(self):
        return (*super().slots(), *(self._slot(n, plank) for n, plank in enumerate(self.planks, 1)))

    def _slot(self, number, plank):
        legs = tuple(slot.name for slot in self.legs())
        return Slot(
            name=f"{self.on}/plank {number}",
            role=PLANK,
            of=plank,
            stock=PLANK_STOCK,
            side="",
            axes=(X, Y, Z),
            width=plank.width,
            true_edge="front",
            level=next(level for level in self.levels() if level.name == self.on),
            joint=Lying(),
            hosts=(f"{self.on}/left rail", f"{self.on}/right rail"),
            face="top",
            also=((CutRound(), legs),),
        )


def plank_blank(slot, site):
    """Where a plank lies: on the first of its rails, from end to end."""
    top = site.placed[slot.hosts[0]].box.high[2]
    low, plank = (0.0, slot.of.start, top), slot.of
    return Blank(slot=slot, box=Box(low, (site.over[0], plank.start + plank.width, top + slot.thickness)))


def bowed_rail(slot, site):
    """A rail whose lower edge is bowed where it is the front one of the level "bench"."""
    blank = rail_blank(slot, site)
    return attrs.evolve(blank, shaped={"bottom": Bow(30.0, blank.length)}) if slot.name == BOWED else blank


BOWED = "bench/front rail"


def let_in(monkeypatch):
    """Give the package the rows that these members need."""
    monkeypatch.setitem(PLACES, Plank, Placing(plank_blank))
    monkeypatch.setitem(PLACES, Rail, Placing(bowed_rail, PLACES[Rail].together))
    monkeypatch.setitem(JOINTS, Lying, NoWood)
    monkeypatch.setitem(JOINTS, CutRound, Corner)


PLANK_STOCK = Stock("pine plank", thickness=22, species="eastern white pine")
LEG = Stock("pine leg", thickness=45, width=70, species="eastern white pine")
BOARD = Stock("pine board", thickness=20, species="eastern white pine")

PLAIN = Frame(
    name="Potting bench",
    length=1200,
    depth=500,
    front=Leg(LEG, height=850),
    back=Leg(LEG, height=850),
    rail_stock=BOARD,
    tape="1 mm",
    quantity=2,
    stack=[
        Clear(160),
        Level("shelf", front=70, back=70, ends=70),
        Clear(),
        Level("bench", front=Rail(110, joint=HalfLap()), back=110, ends=Rail(110, joint=Butt()), flush="front leg top"),
    ],
)


def decked():
    """The bench with three planks on its shelf: the first and the last reach over the legs."""
    fields = {field.name: getattr(PLAIN, field.name) for field in attrs.fields(Frame)}
    planks = (Plank(0.0, 120.0), Plank(190.0, 120.0), Plank(380.0, 120.0))
    return Decked(**fields, planks=planks, on="shelf")
