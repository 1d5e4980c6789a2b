"""Carrying and mending: what each sub-assembly weighs, who lifts it, what passes a door, how a part comes out again."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

import attrs

from ...errors import LengthError
from ...layout.layout import Layout
from ...lengths import Length, mm
from ...phrases import listed
from ...sources import Source
from ...tables import Table
from ..weights import POUND, Weights
from .blocking import DIRECTIONS, Blocking
from .order import WHOLE, Move

ONE_PERSON = 23.0
"""Up to so much one person lifts with both hands, close to the body. [kg]"""
ONE_PERSON_SOURCE = Source("NIOSH lifting equation", "its load constant, 23 kg", standing="from memory")
LONG = 1800.0
"""What is longer is carried by two, whatever it weighs. [mm] Common practice, no source."""


@attrs.frozen(kw_only=True)
class Carried:
    """A sub-assembly, or the whole: its parts, what it weighs [kg], its size along the axes [mm], how many carry it."""

    name: str
    parts: tuple[str, ...]
    weight: float
    size: tuple[float, float, float]

    @property
    def people(self) -> int:
        """How many carry it."""
        return 1 if self.weight <= ONE_PERSON and max(self.size) <= LONG else 2


def carried(layout: Layout, piece: int, moves: Sequence[Move], heavy: Weights) -> tuple[Carried, ...]:
    """Sub-assemblies and the whole, with what they weigh."""
    names: dict[str, tuple[str, ...]] = {}
    for move in moves:
        names[move.into] = (*names.get(move.into, ()), *(n for n in move.parts if n not in names.get(move.into, ())))
    parts = {part.identity: part for part in layout.piece(piece)}
    found = []
    for name, own in names.items():
        boxes = [parts[each].blank for each in own]
        x, y, z = (max(b.high[n] for b in boxes) - min(b.low[n] for b in boxes) for n in range(3))
        weight = sum(heavy.parts[parts[each].name] for each in own)
        found.append(Carried(name=name, parts=own, weight=weight, size=(float(x), float(y), float(z))))
    return tuple(found)


def carrying_table(layout: Layout, found: Sequence[Carried]) -> Table:
    """What is carried, and by how many."""
    tape = layout.frame.tape
    unit, factor = ("lb", POUND) if tape.unit == "in" else ("kg", 1.0)
    rows = tuple(
        (one.name, f"{one.weight / factor:.0f}", " × ".join(tape.read(side) for side in one.size), str(one.people))
        for one in found
    )
    notes = (f"One person carries up to {ONE_PERSON / factor:.0f} {unit} ({ONE_PERSON_SOURCE}), close to the body.",)
    columns = ("What", f"Weight ({unit})", "Length × depth × height", "People")
    return Table(f"Carrying: {layout.frame.name}", columns, rows, notes, "lrlr")


def passes(size: Sequence[float], door: tuple[float, float]) -> bool:
    """Whether a box passes a door some way about: two of its sides no larger than the door's. [mm]"""
    return any(a <= door[0] and b <= door[1] for a, b in itertools.permutations(size, 2))


def delivery(
    layout: Layout,
    found: Sequence[Carried],
    *,
    door: tuple[Length, Length],
    car: tuple[Length, Length, Length] | None = None,
) -> Table:
    """Whether the whole passes a door and goes into a car, and what stays unscrewed where it does not.

    Parameters
    ----------
    layout : Layout
    found : sequence of Carried
    door : tuple of length
        Clear width and height.
    car : tuple of length, optional
        Room inside: length, width, height.

    Raises
    ------
    LengthError
        If one is no length.
    """
    if len(door) != 2 or (car is not None and len(car) != 3):
        raise LengthError("A door is (width, height), a car (length, width, height). Give as many lengths.")
    wide, high = (mm(side, what="door") for side in door)
    room = None if car is None else sorted(mm(side, what="car") for side in car)
    rows, fits = [], True
    for one in sorted(found, key=lambda own: own.name != WHOLE):
        through = passes(one.size, (wide, high))
        loads = room is None or all(a <= b for a, b in zip(sorted(one.size), room, strict=True))
        if one.name == WHOLE:
            fits = through and loads
        words = "goes" if through and loads else "does not pass the door" if not through else "does not go into the car"
        rows.append((one.name, words))
    stays = [one.name for one in found if one.name != WHOLE]
    notes = ["Whether it turns corners on the way is not asked: measure them."]
    if not fits:
        notes.insert(
            0,
            f"Leave the long rails unscrewed and carry {listed(stays)} and these by themselves."
            if stays
            else "Carry it in parts and put it together there.",
        )
    return Table(
        f"Delivery: {layout.frame.name}", ("What", "Through the door and into the car"), tuple(rows), tuple(notes)
    )


def comes_off(blocking: Blocking, moves: Sequence[Move], name: str) -> tuple[str, ...]:
    """The parts that come off before one can be taken out of the finished piece, in the order in which they do.

    Screws of its own joints are drawn. Of a panel or a tray that lifts out, it is what comes off that.
    """
    inside = next(
        (set(move.parts) for move in moves if len(move.parts) > 1 and name in move.parts and _lifts(move, moves)), None
    )
    scope = inside or {part for move in moves for part in move.parts}
    close = _in_the_way(blocking, moves, scope, name)
    if _goes(blocking, scope, close, name):
        return close
    there, gone = set(scope), []
    placed = [part for move in moves if len(move.parts) == 1 for part in move.parts if part in scope]
    for part in reversed(placed):
        if blocking.free_ways([name], there - {name}):
            break
        if part != name:
            gone.append(part)
            there.discard(part)
    for part in tuple(gone):
        less = [own for own in gone if own != part]
        if _goes(blocking, scope, less, name):
            gone = less
    return tuple(gone)


def _lifts(move: Move, moves: Sequence[Move]) -> bool:
    """Whether what a move brings lifts out: it goes into the piece when all that stays is in."""
    return move.into == WHOLE and bool(move.steps) and move.unit not in ("", WHOLE) and "/" in move.unit


def _in_the_way(blocking: Blocking, moves: Sequence[Move], scope: set[str], name: str) -> tuple[str, ...]:
    """A part's blockers on its freest way, theirs on theirs, and so on; those that went in last come off first."""
    placed = {part: number for number, move in enumerate(moves) for part in move.parts}
    needed: set[str] = set()
    todo = [name]
    while todo:
        one = todo.pop()
        stays = scope - {one, name} - needed
        met = min((blocking.met([one], stays, way) for way in DIRECTIONS), key=len)
        needed |= set(met)
        todo += met
    return tuple(sorted(needed, key=lambda part: -placed[part]))


def _goes(blocking: Blocking, scope: set[str], order: Sequence[str], name: str) -> bool:
    """Whether parts come off one after the other, and the named one last."""
    there = set(scope)
    for one in (*order, name):
        there.discard(one)
        if not blocking.free_ways([one], there):
            return False
    return True
