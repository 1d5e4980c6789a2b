"""Putting a layout together: an order that nothing blocks, as steps with their screws, and what goes with it.

    plan = assembly(layout, wood="western larch")
    plan.table()                 # the steps, to tick off
    plan.square()                # diagonals and what they may differ by
    plan.carrying(), plan.delivery(door=("30 in", "78 in"))
    plan.comes_off("bench/front rail")
    plan.hours(Hands(screw=0.8)).table()

The same frame gives the same order. What the maker prescribes wins, where it can be done.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cached_property

import attrs

from ...display import page
from ...errors import AssemblyError, typed
from ...findings import Finding, in_order
from ...layout.laid_out import of_a_layout
from ...layout.layout import Layout
from ...lengths import Length
from ...phrases import listed
from ...sources import COMMON_PRACTICE, STATICS
from ...tables import Table
from ...trade.species import Species, species
from ..budget.marking_ways import Marking
from ..fasteners.fasten import Fastening, fasten
from ..settings.sizing import TICK
from ..weighed import MOISTURE
from ..weights import POUND, weights
from .blocking import Blocking
from .carrying import Carried, carried, carrying_table, comes_off, delivery
from .hours import Hands, Hours, hours
from .order import BEGINS, WHOLE, Begin, Move, order, prescribed
from .square import Diagonal, diagonals, square_table
from .steps import Step, minded, steps, words_of

Order = Begin | Sequence[str]


@attrs.frozen(kw_only=True, eq=False, repr=False, slots=False)
class Assembly:
    """How one piece of a layout goes together.

    begin is how it is begun, moves all moves in their order, steps these as they are told.
    """

    layout: Layout
    piece: int
    work: Fastening | None
    begin: str
    moves: tuple[Move, ...]
    steps: tuple[Step, ...]
    findings: tuple[Finding, ...] = ()

    def table(self) -> Table:
        """The steps, with a box to tick for each."""
        tape = self.layout.frame.tape
        rows = []
        for step in self.steps:
            marks = ", ".join(dict.fromkeys(self.layout.part(name).mark or name for name in step.new))
            clamps = "; ".join(f"{count} to {tape.read(wide)}" for wide, count in step.openings)
            rows.append(
                (TICK, str(step.number), step.title, marks, " ".join(words_of(step, tape)), clamps, minded(step))
            )
        notes = (
            f"Begun {self.begin}. Every notch is tried with its own rail before anything is screwed or glued.",
            "Clamps open so wide over the legs; a driver with its bit takes 250 mm before the head.",
        )
        columns = ("", "Step", "What goes in", "Marks", "Screws", "Clamps", "Before it closes")
        return Table(f"Putting it together: {self.layout.frame.name}", columns, tuple(rows), notes, "crlllll")

    def step_of(self, part: str) -> Step:
        """The step in which a part goes in.

        Raises
        ------
        AddressError
            If there is no such part.
        """
        own = self.layout.part(part).identity
        return next(step for step in self.steps if own in step.new or self._alike(step, own))

    def _alike(self, step: Step, name: str) -> bool:
        own = {move.into for move in self.moves if name in move.parts and len(move.parts) == 1}
        return bool(own & set(step.names)) and step.into != WHOLE

    def moved_from(self, earlier: Assembly) -> Table:
        """Parts that go in at another place of the order than in an earlier one, and those that are new or gone."""
        now, then = ([name for move in one.moves for name in move.parts] for one in (self, earlier))
        now, then = list(dict.fromkeys(now)), list(dict.fromkeys(then))
        kept = [name for name in now if name in then]
        steady = _longest_run([then.index(name) for name in kept])
        jumped = [name for name in kept if then.index(name) not in steady]
        rows = [(name, str(then.index(name) + 1), str(now.index(name) + 1)) for name in jumped]
        rows += [(name, "–", str(now.index(name) + 1)) for name in now if name not in then]
        rows += [(name, str(then.index(name) + 1), "–") for name in then if name not in now]
        notes = ("Places in the order of all parts; what only makes room for another is not told.",)
        return Table(f"Order moved: {self.layout.frame.name}", ("Part", "Was", "Is"), tuple(rows), notes, "lrr")

    def diagonals(self, marking: Marking | None = None) -> tuple[Diagonal, ...]:
        """The diagonals of its faces and its plan."""
        return diagonals(self.layout, piece=self.piece, marking=marking)

    def square(self, marking: Marking | None = None) -> Table:
        """What the diagonals read and may differ by, with room to write."""
        return square_table(self.layout, self.diagonals(marking))

    def carried(self, *, wood: str | Species | None = None) -> tuple[Carried, ...]:
        """Sub-assemblies and the whole with what they weigh.

        Raises
        ------
        LumberError
            If a stock does not say its species and none is given.
        """
        heavy = weights(self.layout, moisture=MOISTURE, wood=wood)
        return carried(self.layout, self.piece, self.moves, heavy)

    def carrying(self, *, wood: str | Species | None = None) -> Table:
        """What is carried, and by how many."""
        return carrying_table(self.layout, self.carried(wood=wood))

    def delivery(
        self,
        *,
        door: tuple[Length, Length],
        car: tuple[Length, Length, Length] | None = None,
        wood: str | Species | None = None,
    ) -> Table:
        """Whether it passes a door (width, height) and goes into a car, and what stays unscrewed where it does not."""
        return delivery(self.layout, self.carried(wood=wood), door=door, car=car)

    @cached_property
    def _blocking(self) -> Blocking:
        return Blocking(self.layout.piece(self.piece))

    def comes_off(self, part: str) -> tuple[str, ...]:
        """What comes off first, in that order, so that a part can be replaced later.

        Raises
        ------
        AddressError
            If there is no such part.
        """
        return comes_off(self._blocking, self.moves, self.layout.part(part).identity)

    def mending(self) -> Table:
        """For each part what comes off before it can be replaced."""
        rows: dict[tuple[str, str], list[str]] = {}
        for part in self.layout.piece(self.piece):
            off = self.comes_off(part.identity)
            words = (
                "nothing" if not off else listed(off) if len(off) <= 4 else f"{listed(off[:3])} and {len(off) - 3} more"
            )
            rows.setdefault((f"{part.role} of {part.level}" if part.level else part.identity, words), []).append(
                part.mark
            )
        cells = tuple((what, ", ".join(dict.fromkeys(marks)), words) for (what, words), marks in rows.items())
        notes = ("Its own screws are drawn, too; what is glued does not come off.",)
        return Table(f"Mending: {self.layout.frame.name}", ("Part", "Marks", "Comes off first"), cells, notes)

    def hours(self, hands: Hands | None = None, *, coats: int = 2, pieces: int | None = None) -> Hours:
        """How long it takes, by the maker's own minutes."""
        return hours(self.layout, self.steps, self.work, hands=hands, coats=coats, pieces=pieces)

    def finish_schedule(self, *, coats: int = 2, hands: Hands | None = None) -> Table:
        """Coats in their order, what is coated before it is put together and what after."""
        own = Hands() if hands is None else hands
        shut = dict.fromkeys(words for step in self.steps for words in step.seal)
        rows = [("1", "before", listed(tuple(shut)) or "end grain", f"{own.drying:g} h")]
        rows += [("1", "before", "undersides and backs that no brush reaches later", f"{own.drying:g} h")]
        rows += [
            (str(n), "after", "all faces; end grain and feet twice", f"{own.drying:g} h") for n in range(1, coats + 1)
        ]
        notes = ("Drying as the tin says; glue does not hold on finish, so keep it off faces that are glued.",)
        return Table(
            f"Finish: {self.layout.frame.name}", ("Coat", "Assembly", "What", "Dries"), tuple(rows), notes, "clll"
        )

    def care_card(self, *, wood: str | Species | None = None) -> Table:
        """A card for its owner: what it weighs, how it is carried, what is looked after."""
        whole = next(one for one in self.carried(wood=wood) if one.name == WHOLE)
        tape = self.layout.frame.tape
        unit, factor = ("lb", POUND) if tape.unit == "in" else ("kg", 1.0)
        outs = [move.unit for move in self.moves if move.into == WHOLE and len(move.parts) > 1 and move.present]
        lifts = [name for name in outs if name not in {step.into for step in self.steps} or "/" in name]
        rows = [
            ("Weighs", f"{whole.weight / factor:.0f} {unit}; {whole.people} to carry it, by its rails, not by its top"),
            ("Stands", "on firm, level ground, fixed to a wall where children climb or a push could tip it"),
            ("Every spring", "wash it, look for loose screws and soft wood at the feet; coat what has gone dull"),
            ("Every autumn", "feet off wet ground or on pads; leaves out of the gaps"),
        ]
        if lifts:
            rows.append(("Lifts out", listed(tuple(lifts))))
        return Table(f"Care: {self.layout.frame.name}", ("", ""), tuple(rows))

    def _repr_html_(self) -> str:
        return page("assembly_page", self)

    def __repr__(self) -> str:
        return (
            f"<Assembly of {self.layout.frame.name}: {self.begin}, {len(self.moves)} moves in {len(self.steps)} steps>"
        )


@of_a_layout
def assembly(
    layout: Layout,
    order: Order | None = None,
    *,
    fastening: Fastening | None = None,
    wood: str | Species | None = None,
    piece: int = 1,
) -> Assembly:
    """Work out how a piece goes together.

    Parameters
    ----------
    layout : Layout
    order : str or sequence of str, optional
        What the maker prescribes: "ends first", "rows first", "part by part", or every part in its order, but those
        that lift out. That of the frame if not given, and where it has none, the one that holds itself and is turned
        least.
    fastening : Fastening, optional
        What is driven, so that every head is reached; the usual screws without.
    wood : str or Species, optional
        The wood of all stock that does not say its own, for the fastening.
    piece : int

    Raises
    ------
    AssemblyError
        If parts hold each other, or what is prescribed cannot be; if the layout has errors.
    AddressError
        If there is no such piece.
    """
    if layout.errors():
        raise AssemblyError(f"{layout.frame.name} cannot be built as it is: {layout.errors()[0].sentence}")
    layout.piece(piece)
    otherwise = species(wood) if isinstance(wood, str) else wood
    work = fasten(layout, wood=otherwise) if fastening is None else fastening
    asked: Order | None = layout.frame.order if order is None else order
    begin, moves = _moves(layout, piece, work, asked)
    told = steps(layout, piece, work, moves)
    found = Assembly(layout=layout, piece=piece, work=work, begin=begin, moves=tuple(moves), steps=told)
    return attrs.evolve(found, findings=in_order(_findings(found)))


def _moves(layout: Layout, piece: int, work: Fastening | None, asked: Order | None) -> tuple[str, list[Move]]:
    if asked is not None and not isinstance(asked, str):
        return "as prescribed", prescribed(layout, piece, work, list(asked))
    if asked is not None:
        if asked not in BEGINS:
            raise AssemblyError(f"{typed(asked)} is no order. Write {', '.join(BEGINS)}, or name every part once.")
        return asked, order(layout, piece, work, asked)
    found: list[tuple[tuple[int, int, int, int], str, list[Move]]] = []
    failed: AssemblyError | None = None
    for number, begin in enumerate(BEGINS):
        try:
            moves = order(layout, piece, work, begin)
        except AssemblyError as error:
            failed = failed or error
            continue
        told = steps(layout, piece, work, moves)
        hidden = sum(len(step.unreached) for step in told)
        held = sum(len(_loose(layout, piece, step)) for step in told)
        found.append(((hidden, held, turns(moves), number), begin, moves))
    if not found and failed is not None:
        raise failed
    _, begun, best = min(found, key=lambda one: one[0])
    return begun, best


def turns(moves: Sequence[Move]) -> int:
    """How often the work is turned: a sub-assembly begun, or a part that comes from another side than the last."""
    found, last = 0, None
    for move in moves:
        here = (move.into, move.way)
        found += last is not None and here != last
        last = here
    return found


def _findings(found: Assembly) -> Iterator[Finding]:
    for step in found.steps:
        for fixing, behind in step.unreached:
            yield Finding(
                severity="warning",
                kind="out of a driver's reach",
                where=fixing.guest,
                parts=(fixing.guest, fixing.host),
                pieces=(found.piece,),
                mates=behind,
                sentence=f"Step {step.number}: the screws of {fixing.guest} in {fixing.host} lie behind "
                f"{listed(behind)}. Drive them from the other side, or put those in later.",
                source=COMMON_PRACTICE,
            )
        loose = _loose(found.layout, found.piece, step)
        if loose:
            yield Finding(
                severity="note",
                kind="held by hand",
                where=listed(tuple(loose)),
                parts=tuple(loose),
                pieces=(found.piece,),
                sentence=f"Step {step.number}: nothing that is in yet holds {listed(tuple(loose))}; clamp or hold it.",
                source=STATICS,
            )


def _loose(layout: Layout, piece: int, step: Step) -> tuple[str, ...]:
    """Parts that go in without a joint to anything that is in."""
    joints = layout.joints_of(piece)
    found: list[str] = []
    for move in step.moves:
        there, own = {*move.present}, {*move.parts}
        met = any({joint.guest, joint.host} & own and {joint.guest, joint.host} & there for joint in joints)
        if there and not met:
            found += move.parts
    return tuple(found)


def _longest_run(places: Sequence[int]) -> set[int]:
    """The most of some places that rise as they are."""
    runs: list[list[int]] = [[]]
    for place in places:
        lower = sorted((run for run in runs if not run or run[-1] < place), key=len)
        runs.append([*lower[-1], place])
    runs.sort(key=len)
    return set(runs[-1])
