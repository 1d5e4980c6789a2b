"""Fasteners of a layout: for every joint which, how many, how long, where, into which holes, and what they hold.

    choices = {"butt": "No. 10", "foot shelf": "nail 8d", "head rail/back rail": "glue"}
    work = fasten(layout, choices, wood="western larch")
    work.schedule()     # what to buy, and the drills
    work.table()        # joint by joint
    work.holes("back left leg")

Joints that carry are fastened first, so that theirs are the best places; each keeps off those before it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property

import attrs
import numpy as np
import numpy.typing as npt

from ...display import page
from ...errors import FastenerError
from ...findings import Finding, in_order
from ...layout.joints.meeting import Joint
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import TOUCH
from ...phrases import counted
from ...tables import Table
from ...trade.species import Species, species
from ..swelling import board_change
from ..weights import wood_of
from .asked import Choices, asked, choice_for
from .duty import Drive, Duty, drive_of, other_way, spans
from .fastener import NOTHING, Fastener, usual
from .findings import found_in
from .fixing import Driven, Fixing, Hole
from .lists import by_joint, drilling, schedule
from .placing import Placed, place
from .strength import held

FIRST: Mapping[Duty, int] = {"carries": 0, "hangs": 1, "keeps home": 2, "holds down": 3}
"""The order in which joints are fastened."""
DRIVER = 250.0
"""A driver and its bit take up so much before a head. [mm] Common practice, no source."""
BIT = 6.0
"""And so much to each side. [mm] Common practice, no source."""


@attrs.frozen(kw_only=True, repr=False)
class Fastening:
    """How a layout is fastened, joint by joint in every piece, and what was found about it.

    hardwood tells of each part whose wood is known whether it is one.
    """

    layout: Layout
    fixings: tuple[Fixing, ...]
    hardwood: Mapping[str, bool] = attrs.field(factory=dict, hash=False)
    findings: tuple[Finding, ...] = ()

    @cached_property
    def driven(self) -> tuple[Driven, ...]:
        """All fasteners of all pieces."""
        return tuple(one for fixing in self.fixings for one in fixing.driven)

    @cached_property
    def _holes(self) -> Mapping[str, tuple[Hole, ...]]:
        found: dict[str, list[Hole]] = {}
        for one in self.driven:
            hard = self.hardwood.get(one.point, False)
            for hole in one.holes(hardwood=hard):
                found.setdefault(hole.part, []).append(hole)
        return {name: tuple(own) for name, own in found.items()}

    def holes(self, part: str | Part) -> tuple[Hole, ...]:
        """The holes of a part, by itself or by its name.

        Raises
        ------
        AddressError
            If there is no such part.
        """
        name = part.name if isinstance(part, Part) else self.layout.part(part).name
        return self._holes.get(name, ())

    def at(self, joint: Joint) -> Fixing | None:
        """How a joint is fastened; None for one that nothing is driven into by its kind."""
        return self._by_joint.get((joint.piece, joint.host, joint.guest, joint.kind))

    @cached_property
    def _by_joint(self) -> Mapping[tuple[int, str, str, str], Fixing]:
        return {(f.piece, f.host, f.guest, f.drive.joint.kind): f for f in self.fixings}

    def of(self, part: str) -> tuple[Fixing, ...]:
        """The fixings of a part's joints, by its name.

        Raises
        ------
        AddressError
            If there is no such part.
        """
        own = self.layout.part(part)
        return tuple(f for f in self.fixings if f.piece == own.piece and own.identity in (f.host, f.guest))

    def schedule(self, *, spare: float = 0.1) -> Table:
        """What to buy for the batch, with spares, and the drills and stops for each.

        Parameters
        ----------
        spare : float
            Share that is bought over: a tenth, common practice.
        """
        return schedule(self.layout, self.fixings, self.hardwood, spare)

    def drilling(self) -> Table:
        """Each drill with its stops and how many holes, to tick off at the machine."""
        return drilling(self.layout, self.fixings, self.hardwood)

    def table(self) -> Table:
        """Joint by joint, those that are alike in one line."""
        return by_joint(self.layout, self.fixings)

    def _repr_html_(self) -> str:
        return page("fastening_page", self)

    def __repr__(self) -> str:
        joints, count = counted(len(self.fixings), "joint"), counted(len(self.driven), "fastener")
        return f"<Fastening of {self.layout.frame.name}: {joints}, {count}, {counted(len(self.findings), 'finding')}>"


@of_a_layout
def fasten(
    layout: Layout,
    choices: Choices | None = None,
    *,
    wood: str | Species | None = None,
    wettest: float = 18.0,
    driest: float = 9.0,
) -> Fastening:
    """Fasten a layout: a choice and its places for every joint.

    Parameters
    ----------
    layout : Layout
    choices : mapping of str to str or Fastener, optional
        What the maker wants, by kind of joint ("butt"), kind of member ("board"), level ("foot shelf") or part
        ("head rail/back rail", the one that comes to the other); the most specific wins. Without: the usual wood
        screw for the thickness under its head, or a slimmer one where that has no room.
    wood : str or Species, optional
        The wood of all stock that does not say its own; without, nothing is said of what the fasteners hold.
    wettest, driest : float
        Moisture contents between which boards move, for the slots that let them. [%]

    Raises
    ------
    FastenerError
        If a choice or its name is none, or the layout has errors.
    LumberError
        If the tables have no such species.
    MoistureError
        If a content is none.
    """
    if layout.errors():
        raise FastenerError(
            f"{layout.frame.name} cannot be built as it is, so nothing is fastened: {layout.errors()[0].sentence}"
        )
    wanted = asked(layout, choices)
    otherwise = species(wood) if isinstance(wood, str) else wood
    woods = {part.identity: _known(part, otherwise) for part in layout.piece(1)}
    fixings: list[Fixing] = []
    for same in layout.alike:
        own = [_weighed(one, woods) for one in _fastened(layout, same[0], wanted, woods, (wettest, driest))]
        fixings += own
        for piece in same[1:]:
            fixings += [_in_piece(one, piece) for one in own]
    hardwood = {name: own.hardwood for name, own in woods.items() if own is not None}
    found = in_order(found_in(layout, fixings, woods))
    return Fastening(layout=layout, fixings=tuple(fixings), hardwood=hardwood, findings=tuple(found))


def _known(part: Part, otherwise: Species | None) -> Species | None:
    return wood_of(part.slot, otherwise) if part.slot.stock.species or otherwise else None


def _fastened(
    layout: Layout,
    piece: int,
    wanted: Mapping[str, Fastener],
    woods: Mapping[str, Species | None],
    year: tuple[float, float],
) -> list[Fixing]:
    """All joints of a piece, those that carry first."""
    drives = (drive_of(joint, *layout.joined(joint)) for joint in layout.joints_of(piece))
    order = sorted((drive for drive in drives if drive is not None), key=lambda drive: FIRST[drive.duty])
    driven: list[Driven] = []
    found = []
    for drive in order:
        choice = choice_for(drive, wanted)
        placed = _placed(drive, choice, driven, layout.frame.tape.unit)
        if placed is None:
            size = NOTHING if choice is None else choice
            found.append(Fixing(drive=drive, size=size, driven=(), full=False, asked=choice is not None))
            continue
        own = _slotted(placed[0], placed[1], woods[drive.guest.identity], year)
        driven += own
        found.append(
            Fixing(drive=placed[0], size=placed[1].size, driven=own, full=placed[1].full, asked=choice is not None)
        )
    return _covered(layout.piece(piece), found)


def _placed(drive: Drive, choice: Fastener | None, driven: Sequence[Driven], unit: str) -> tuple[Drive, Placed] | None:
    """Where the fasteners of a joint go, driven as usual or from the other side, where that keeps what carries."""
    if choice is not None and not choice.metal:
        return None
    best: tuple[Drive, Placed] | None = None
    for way in (drive, *other_way(drive)):
        found = spans(way)
        if not found:
            continue
        sizes = (choice,) if choice is not None else usual(min(one.thick for one in found), unit)
        one = place(way, sizes, driven, unit)
        if one is not None and (best is None or one.grip > best[1].grip):
            best = (way, one)
        if best is not None and best[1].full:
            break
    return best


def _slotted(drive: Drive, placed: Placed, wood: Species | None, year: tuple[float, float]) -> tuple[Driven, ...]:
    """All but the first fastener across a board in slots as long as the board moves from that one."""
    if drive.duty not in ("holds down", "hangs") or len(placed.driven) < 2:
        return placed.driven
    board = drive.guest if drive.duty == "holds down" else drive.point
    across = board.slot.axes[1]
    first = placed.driven[0]
    return tuple(_with_slot(one, abs(one.at[across] - first.at[across]), wood, year) for one in placed.driven)


def _with_slot(one: Driven, away: float, wood: Species | None, year: tuple[float, float]) -> Driven:
    hole = one.size.clearance()
    if away <= TOUCH or one.size.kind == "nail":
        return one
    moves = one.size.diameter if wood is None else board_change(away, wood, year[1], year[0], "unknown")
    return one if moves <= hole - one.size.diameter else attrs.evolve(one, slot=hole + moves)


def _covered(parts: Sequence[Part], fixings: Sequence[Fixing]) -> list[Fixing]:
    """Fixings with the parts that stand before their heads when all is in its place.

    What lifts out is put together on the bench, so only its own parts stand in its way.
    """
    ends = np.array([[part.blank.low, part.blank.high] for part in parts], dtype=float)
    return [attrs.evolve(one, before=tuple(_before(one, parts, ends))) for one in fixings]


def _before(fixing: Fixing, parts: Sequence[Part], ends: npt.NDArray[np.float64]) -> Iterator[str]:
    ways = [one.reach(max(BIT, one.size.head / 2), DRIVER) for one in fixing.driven]
    if not ways:
        return
    low, high = np.array([way.low for way in ways]), np.array([way.high for way in ways])
    above, below = high[:, None] > ends[None, :, 0] + TOUCH, low[:, None] < ends[None, :, 1] - TOUCH
    hits = np.all(above & below, axis=2)
    own, group = (fixing.drive.head.identity, fixing.drive.point.identity), fixing.drive.guest.slot.group
    for number in np.flatnonzero(hits.any(axis=0)).tolist():
        part = parts[number]
        if part.identity in own or (group and part.slot.group != group):
            continue
        met = [ways[n] for n in np.flatnonzero(hits[:, number]).tolist()]
        if not part.taken or any(way.meet(box) is not None for way in met for box in part.solid):
            yield part.identity


def _weighed(fixing: Fixing, woods: Mapping[str, Species | None]) -> Fixing:
    """A fixing with what it holds, where both woods are known."""
    host, guest = woods[fixing.host], woods[fixing.guest]
    if host is None or guest is None:
        return fixing
    lateral, withdrawal = held(fixing.drive, fixing.driven, host, guest)
    return attrs.evolve(fixing, lateral=lateral if fixing.full or not lateral else 0.0, withdrawal=withdrawal)


def _in_piece(fixing: Fixing, piece: int) -> Fixing:
    """The same in another piece whose wood is alike."""
    joint = attrs.evolve(fixing.drive.joint, piece=piece)
    driven = tuple(attrs.evolve(one, piece=piece) for one in fixing.driven)
    return attrs.evolve(fixing, drive=attrs.evolve(fixing.drive, joint=joint), driven=driven)
