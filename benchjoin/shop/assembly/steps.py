"""Steps: moves that are alike taken together, with the screws that go in then and what is minded before it closes."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Mapping, Sequence

import attrs

from ...layout.joints.meeting import Joint
from ...layout.layout import Layout
from ...layout.parts import Part
from ...lengths import TOUCH
from ...phrases import listed
from ...readings import Tape
from ...solids import Box
from ..fasteners.fasten import BIT, DRIVER, Fastening
from ..fasteners.fixing import Fixing
from .order import FROM, WHOLE, Move

OPEN_TIME = 10.0
"""Glue takes so long before its joint has to be closed. [min] An assumption: the tin says it."""


@attrs.frozen(kw_only=True, eq=False)
class Step:
    """One step: what goes in, how it comes, the screws that are driven, clamps, glue, and what is finished before.

    names are the sub-assemblies of which it is true, one of them being told; unreached are fixings whose heads no
    driver reaches then, with who is in the way.
    """

    number: int
    title: str
    into: str
    names: tuple[str, ...]
    moves: tuple[Move, ...]
    fixings: tuple[Fixing, ...]
    unreached: tuple[tuple[Fixing, tuple[str, ...]], ...]
    clamps: tuple[tuple[str, float], ...]
    seal: tuple[str, ...]
    glue: bool

    @property
    def new(self) -> tuple[str, ...]:
        """Parts that come in it."""
        return tuple(name for move in self.moves for name in move.parts)

    @property
    def present(self) -> tuple[str, ...]:
        """Parts that are in already."""
        return self.moves[0].present

    @property
    def openings(self) -> tuple[tuple[float, int], ...]:
        """How wide its clamps open [mm], and how many so wide."""
        wide = [round(one, 3) for _, one in self.clamps]
        return tuple((one, wide.count(one)) for one in dict.fromkeys(wide))

    @property
    def way(self) -> str:
        """From where they come, in words; nothing where it begins."""
        return FROM[self.moves[0].way] if self.moves[0].way else ""


def steps(layout: Layout, piece: int, work: Fastening | None, moves: Sequence[Move]) -> tuple[Step, ...]:
    """Steps of an order: moves after each other that are alike, and sub-assemblies that are alike told once."""
    parts = {part.identity: part for part in layout.piece(piece)}
    alike = _alike(parts, moves)
    joints = layout.joints_of(piece)
    driven: set[int] = set()
    found: list[Step] = []
    key = lambda move: (move.into, move.way, move.present == (), _kind(parts, move))  # noqa: E731
    for _, own in itertools.groupby(moves, key=key):
        together = tuple(own)
        names = alike.get(together[0].into, (together[0].into,))
        fixings, unreached = _fixings(parts, work, piece, together, driven)
        if names[0] != together[0].into:
            continue
        found.append(
            Step(
                number=len(found) + 1,
                title=_title(parts, together, names),
                into=together[0].into,
                names=names,
                moves=together,
                fixings=fixings,
                unreached=unreached,
                clamps=tuple(_clamps(parts, joints, together)),
                seal=tuple(_seal(parts, joints, together)),
                glue=any(not fixing.size.metal and fixing.size.kind == "glue" for fixing in fixings),
            )
        )
    return tuple(found)


def _kind(parts: Mapping[str, Part], move: Move) -> str:
    if len(move.parts) > 1:
        return move.unit
    part = parts[move.parts[0]]
    return f"{part.role} {part.level} {part.slot.run}"


def _alike(parts: Mapping[str, Part], moves: Sequence[Move]) -> dict[str, tuple[str, ...]]:
    """Sub-assemblies that are put together of parts of the same kinds in the same order."""
    seen: dict[tuple[tuple[int, str], ...], list[str]] = {}
    for into in dict.fromkeys(move.into for move in moves if move.into != WHOLE):
        own = tuple((parts[name].kind, move.way) for move in moves if move.into == into for name in move.parts)
        seen.setdefault(own, []).append(into)
    return {name: tuple(names) for names in seen.values() for name in names}


def _title(parts: Mapping[str, Part], moves: Sequence[Move], names: Sequence[str]) -> str:
    into = "" if moves[0].into == WHOLE else f"{listed(names)}: "
    if len(moves[0].parts) > 1:
        what = f"the {moves[0].unit}"
    else:
        own = [parts[name] for move in moves for name in move.parts]
        part = own[0]
        plural = part.slot.role.plural if len(own) > 1 else part.slot.role.word
        what = part.identity if len(own) == 1 else f"{len(own)} {plural}" + (f" of {part.level}" if part.level else "")
        if part.slot.role.stands:
            what = listed([one.identity for one in own])
    if not moves[0].present:
        return f"{into}begin with {what}"
    return f"{into}{what} {FROM[moves[0].way]}"


def _fixings(
    parts: Mapping[str, Part], work: Fastening | None, piece: int, moves: Sequence[Move], driven: set[int]
) -> tuple[tuple[Fixing, ...], tuple[tuple[Fixing, tuple[str, ...]], ...]]:
    """Fixings that are driven in a step, each when both its parts are in, and those that cannot be reached then."""
    if work is None:
        return (), ()
    found, unreached = [], []
    for move in moves:
        there = {*move.present, *move.parts}
        for number, fixing in enumerate(work.fixings):
            mine = fixing.piece == piece and number not in driven and {fixing.host, fixing.guest} <= there
            if not mine:
                continue
            driven.add(number)
            found.append(fixing)
            behind = _behind(parts, fixing, there)
            if behind:
                unreached.append((fixing, behind))
    return tuple(found), tuple(unreached)


def _behind(parts: Mapping[str, Part], fixing: Fixing, there: Iterable[str]) -> tuple[str, ...]:
    """Parts that are in and stand before a fixing's heads."""
    ways = [one.reach(max(BIT, one.size.head / 2), DRIVER) for one in fixing.driven]
    own = {fixing.host, fixing.guest}
    return tuple(
        name
        for name in there
        if name in fixing.before and name not in own and any(_meets(way, parts[name]) for way in ways)
    )


def _meets(way: Box, part: Part) -> bool:
    return any(way.meet(box) is not None for box in part.solid)


def _clamps(parts: Mapping[str, Part], joints: Sequence[Joint], moves: Sequence[Move]) -> Iterator[tuple[str, float]]:
    """Clamps that draw butts between legs together: along which guest, and how wide they open. [mm]"""
    to_legs = [joint for joint in joints if joint.how.between and parts[joint.host].slot.role.stands]
    for guest in dict.fromkeys(joint.guest for joint in to_legs):
        own = [joint for joint in to_legs if joint.guest == guest]
        hosts = [joint.host for joint in own]
        if not any(_closes(move, {guest, *hosts}) for move in moves):
            continue
        axis = parts[guest].slot.axes[0]
        ends = [parts[name].blank for name in (guest, *hosts)]
        yield guest, max(box.high[axis] for box in ends) - min(box.low[axis] for box in ends)


def _closes(move: Move, met: set[str]) -> bool:
    """Whether a move brings together parts that are joined: all are in then, and were not before."""
    new, there = set(move.parts), {*move.present, *move.parts}
    return met <= there and bool(met & new) and not met <= new


def _seal(parts: Mapping[str, Part], joints: Sequence[Joint], moves: Sequence[Move]) -> Iterator[str]:
    """What is finished before the step closes it in."""
    single = [move.parts[0] for move in moves if len(move.parts) == 1]
    if any(parts[name].slot.role.stands and parts[name].blank.low[2] < TOUCH for name in single):
        yield "feet and other end grain"
    met = [joint for joint in joints if any(_closes(move, {joint.guest, joint.host}) for move in moves)]
    hows = [joint.how for joint in met if joint.how.held]
    if any(how.between for how in hows):
        yield "end grain that butts"
    if any(how.shares for how in hows):
        yield "floors and shoulders of notches and laps"
    if any(not (how.between or how.shares) for how in hows):
        yield "faces that lie on each other"


def words_of(step: Step, tape: Tape) -> list[str]:
    """What is driven in a step, and how often it is made."""
    found = []
    sizes: dict[str, list[Fixing]] = {}
    for fixing in step.fixings:
        if fixing.driven:
            sizes.setdefault(fixing.size.name, []).append(fixing)
    for name, own in sizes.items():
        lengths = sorted({round(fixing.length, 2) for fixing in own})
        long = " and ".join(f"{tape.read(one)} {tape.unit}" for one in lengths)
        found.append(f"Drive {sum(len(f.driven) for f in own)} × {name}, {long} long.")
    if len(step.names) > 1 and not step.present:
        found.append(f"Make {len(step.names)} of these, one like the other.")
    return found


def minded(step: Step) -> str:
    """What is minded before a step closes."""
    found = [f"first coat: {listed(step.seal)}"] if step.seal else []
    if step.glue:
        found.append(f"glue: close within {OPEN_TIME:g} min (an assumption)")
    return "; ".join(found)
