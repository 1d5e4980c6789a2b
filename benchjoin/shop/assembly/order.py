"""The order: a piece is taken apart, a part or a sub-assembly at a time, and put together the other way about.

What comes off must meet nothing on its way, and no head of a screw that holds it may lie behind what stays: such a
screw is driven before that comes. Boards come off before bearers, bearers before rails, rails before legs; of those
that could, the one like the last, so that parts that are alike go in together.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from typing import Literal

import attrs

from ...errors import AssemblyError
from ...layout.layout import Layout
from ...layout.lifting import LiftOut, lift_outs
from ...layout.parts import Part
from ...layout.ways_in import ways_out
from ...solids import Vector, vector
from ..fasteners.fasten import Fastening
from .blocking import DIRECTIONS, Blocking

Begin = Literal["ends first", "rows first", "part by part"]
BEGINS: tuple[Begin, ...] = ("ends first", "rows first", "part by part")
"""Sub-assemblies to begin with: legs of a pair with what runs between them, or of a row; or none."""
RANK = {"board": 0, "cleat": 1, "tray slat": 0, "ledger": 2, "bearer": 2, "tray side": 2, "rail": 3, "leg": 5}
"""What comes off first; what is not named comes off with the boards."""


@attrs.frozen(kw_only=True)
class Move:
    """One part or sub-assembly that goes in: who, into which assembly, how it comes, and who is in already.

    steps are the moves by which it comes, from where it starts to its place; way the side that it comes from.
    """

    unit: str
    parts: tuple[str, ...]
    into: str
    way: str
    steps: tuple[Vector, ...]
    present: tuple[str, ...]


@attrs.frozen(kw_only=True, eq=False)
class Unit:
    """What is handled as one: a part, or a sub-assembly that is put together first."""

    name: str
    parts: tuple[str, ...]

    @property
    def single(self) -> bool:
        """Whether it is one part."""
        return len(self.parts) == 1


@attrs.frozen(kw_only=True, eq=False)
class Taking:
    """What is asked when something is taken apart."""

    blocking: Blocking
    parts: Mapping[str, Part]
    out: Mapping[str, str]
    heads: Mapping[str, Collection[tuple[str, str]]]
    joined: Mapping[str, Collection[str]]

    def apart(self, units: Sequence[Unit], into: str) -> list[Move]:
        """Moves that put units together, worked out by taking them apart.

        Raises
        ------
        AssemblyError
            If some hold each other.
        """
        left, found = list(units), []
        last = ""
        while len(left) > 1:
            unit, way = self._next(left, last, into)
            left.remove(unit)
            present = tuple(name for own in left for name in own.parts)
            found.append(self._move(unit, into, way, present))
            last = self._kind(unit)
        first = left[0]
        found.append(self._move(first, into, "", ()))
        return found[::-1]

    def _move(self, unit: Unit, into: str, way: str, present: tuple[str, ...]) -> Move:
        steps = (vector(-FAR * own for own in DIRECTIONS[way]),) if way else ()
        return Move(unit=unit.name, parts=unit.parts, into=into, way=way, steps=steps, present=present)

    def _next(self, left: Sequence[Unit], last: str, into: str) -> tuple[Unit, str]:
        """The unit that comes off next, and its way out."""
        legs = sum(self.parts[own.parts[0]].slot.role.stands for own in left)
        everyone = {name for own in left for name in own.parts}
        there = self.blocking.flags(everyone)
        free: list[tuple[tuple[bool, float, bool, int], Unit, str]] = []
        for number, unit in enumerate(left):
            own_way = self.out.get(unit.parts[0], "") if unit.single else ""
            way = self.blocking.first_free(self.blocking.flags(unit.parts), there, own_way)
            if way:
                hidden = bool(self._hidden(unit.parts, everyone.difference(unit.parts)))
                key = (hidden, self._rank(unit, into, legs), self._kind(unit) != last, -number)
                free.append((key, unit, way))
        if not free:
            raise self._held(left)
        free.sort(key=lambda own: own[0])
        seen = [own for own in free if not own[0][0]] or free
        _, unit, way = next((own for own in seen if self._still_joined(left, own[1])), seen[0])
        return unit, way

    def _rank(self, unit: Unit, into: str, legs: int) -> float:
        """What comes off first; of a sub-assembly legs, but the last, come off rails that run between them."""
        if not unit.single:
            return 4.0
        part = self.parts[unit.parts[0]]
        between = (
            part.slot.role.stands
            and legs > 1
            and into != WHOLE
            and any(
                not self.out.get(name) for name in self.joined.get(part.identity, ()) if self.parts[name].role == "rail"
            )
        )
        return 2.5 if between else float(RANK.get(part.role, 0))

    def _still_joined(self, left: Sequence[Unit], gone: Unit) -> bool:
        """Whether what stays hangs together, so that it need not be held by hand."""
        names = {name for own in left if own is not gone for name in own.parts}
        if not names:
            return True
        bound = {name: own.parts for own in left if own is not gone for name in own.parts}
        todo, seen = [min(names)], set[str]()
        while todo:
            name = todo.pop()
            if name not in seen:
                seen.add(name)
                todo += [other for other in (*self.joined.get(name, ()), *bound.get(name, ())) if other in names]
        return names <= seen

    def _hidden(self, moved: Collection[str], stays: Collection[str]) -> tuple[str, ...]:
        """Parts that stay and lie before the heads of screws between what is moved and what stays."""
        inside, there = set(moved), set(stays)
        if not any(name in self.heads for name in moved):
            return ()
        return tuple(
            dict.fromkeys(
                cover
                for name in moved
                for mate, cover in self.heads.get(name, ())
                if mate in there and mate not in inside and cover in there
            )
        )

    def _kind(self, unit: Unit) -> str:
        part = self.parts[unit.parts[0]]
        return f"{part.role} {part.level} {part.side} {part.slot.run}" if unit.single else unit.name

    def _held(self, left: Sequence[Unit]) -> AssemblyError:
        """What to say of units that hold each other: the one that the fewest hold, and by whom on its own way."""
        best: tuple[int, Unit, str, tuple[str, ...]] | None = None
        for unit in left:
            stays = [name for own in left if own is not unit for name in own.parts]
            for way in DIRECTIONS:
                met = self.blocking.met(unit.parts, stays, way)
                if best is None or len(met) < best[0]:
                    best = (len(met), unit, way, met)
        assert best is not None
        _, unit, way, met = best
        return AssemblyError(
            f"{unit.name} cannot be put in: whichever way it comes it meets others, the fewest {FROM[way]}: "
            f"{', '.join(met)}. Make its joint with one of these a notch that is open on that side, end it between "
            "them as a butt, or make one of them in two.",
            part=unit.name,
            blocked=met,
        )


FROM = {way: f"from the {way}" for way in DIRECTIONS} | {"up": "from above", "down": "from below"}
"""Where a part comes from, in words."""
FAR = 10_000.0
"""So far from its place a part is clear of everything. [mm]"""


def order(layout: Layout, piece: int, work: Fastening | None, begin: Begin) -> list[Move]:
    """Moves that put a piece together: sub-assemblies, each by itself, then what they go into, then what lifts out.

    Raises
    ------
    AssemblyError
        If parts hold each other.
    """
    taking, outs = _taking(layout, piece, work)
    loose = {part.identity for out in outs for part in out.parts}
    main = [part for part in layout.piece(piece) if part.identity not in loose]
    units = _units(main, begin)
    moves = []
    for unit in units:
        if not unit.single:
            moves += taking.apart([Unit(name=name, parts=(name,)) for name in unit.parts], unit.name)
    moves += taking.apart(units, WHOLE)
    return [*moves, *_lifted_in(taking, outs, tuple(part.identity for part in main))]


def _lifted_in(taking: Taking, outs: Sequence[LiftOut], present: tuple[str, ...]) -> Iterator[Move]:
    """What lifts out: each is put together by itself, and goes in the way that it comes out."""
    for out in outs:
        names = tuple(part.identity for part in out.parts)
        yield from taking.apart([Unit(name=name, parts=(name,)) for name in names], out.name)
        back = tuple(vector(-own for own in step) for step in reversed(out.moves.steps))
        yield Move(unit=out.name, parts=names, into=WHOLE, way=out.moves.toward, steps=back, present=present)
        present += names


WHOLE = "the piece"
"""What everything goes into in the end."""


def _taking(layout: Layout, piece: int, work: Fastening | None) -> tuple[Taking, tuple[LiftOut, ...]]:
    parts = layout.piece(piece)
    heads: dict[str, list[tuple[str, str]]] = {}
    if work is not None:
        for fixing in work.fixings:
            if fixing.piece == piece:
                for cover in fixing.before:
                    heads.setdefault(fixing.guest, []).append((fixing.host, cover))
                    heads.setdefault(fixing.host, []).append((fixing.guest, cover))
    joined: dict[str, list[str]] = {}
    for joint in layout.joints_of(piece):
        joined.setdefault(joint.host, []).append(joint.guest)
        joined.setdefault(joint.guest, []).append(joint.host)
    words = {vector(map(float, way)): name for name, way in DIRECTIONS.items()}
    out = {name: words.get(vector(map(float, way)), "") for name, way in ways_out(layout, piece).items()}
    taking = Taking(
        blocking=Blocking(parts),
        parts={part.identity: part for part in parts},
        out=out,
        heads=heads,
        joined=joined,
    )
    return taking, lift_outs(parts, layout.joints_of(piece))


def _units(parts: Sequence[Part], begin: Begin) -> list[Unit]:
    """Sub-assemblies and single parts of a piece, as it is begun."""
    legs = [part for part in parts if part.slot.role.stands]
    groups: dict[str, list[str]] = {}
    for leg in legs if begin != "part by part" else []:
        groups.setdefault(leg.pair if begin == "ends first" else leg.side, []).append(leg.identity)
    units, taken = [], set[str]()
    for name, own in groups.items():
        rails = [part.identity for part in parts if part.role == "rail" and _hosts(part) and _hosts(part) <= set(own)]
        if len(own) > 1 and rails:
            told = f"{name} end" if name in ("left", "right") else f"{name} frame"
            units.append(Unit(name=told, parts=(*own, *rails)))
            taken |= {*own, *rails}
    return [*units, *(Unit(name=part.identity, parts=(part.identity,)) for part in parts if part.identity not in taken)]


def _hosts(part: Part) -> set[str]:
    return {name for _, names in part.slot.joints for name in names}


def prescribed(layout: Layout, piece: int, work: Fastening | None, names: Sequence[str]) -> list[Move]:
    """Moves in an order that the maker prescribes, part by part; what lifts out goes in last and is not named.

    Raises
    ------
    AssemblyError
        If a name is no part, or is there twice, or one is missing; at the first part that is blocked.
    """
    taking, outs = _taking(layout, piece, work)
    loose = {part.identity for out in outs for part in out.parts}
    _known([name for name in taking.parts if name not in loose], names)
    moves: list[Move] = []
    present: list[str] = []
    for name in names:
        way = ""
        if present:
            own = taking.out.get(name, "")
            ways = taking.blocking.free_ways([name], present, [own] if own else [])
            if not ways:
                met = {way: taking.blocking.met([name], present, way) for way in DIRECTIONS}
                fewest = min(met, key=lambda way: len(met[way]))
                raise AssemblyError(
                    f"{name} is number {len(present) + 1} of the order that is prescribed, and cannot go in any more: "
                    f"{FROM[fewest]} it meets {', '.join(met[fewest])}. Put it before "
                    f"{'that' if len(met[fewest]) == 1 else 'those'}.",
                    part=name,
                    blocked=met[fewest],
                )
            way = ways[0]
        moves.append(taking._move(Unit(name=name, parts=(name,)), WHOLE, way, tuple(present)))
        present.append(name)
    return [*moves, *_lifted_in(taking, outs, tuple(present))]


def _known(parts: Sequence[str], names: Iterable[str]) -> None:
    given = list(names)
    odd = [name for name in given if name not in parts]
    twice = [name for name in dict.fromkeys(given) if given.count(name) > 1]
    missing = [name for name in parts if name not in given]
    faults = [f"{name!r} is no part of it" for name in odd] + [f"{name} is there twice" for name in twice]
    if missing:
        faults.append(f"{', '.join(missing[:4])}{' and others' if len(missing) > 4 else ''} are missing")
    if faults:
        raise AssemblyError(
            f"The order that is prescribed is none: {'; '.join(faults)}. Name every part once.", known=tuple(parts)
        )
