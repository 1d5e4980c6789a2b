"""The frame: one description of a bench, rack or stand, from which everything else follows.

It is frozen data. A new size is a new frame (`alter` in address.py), so a slider, a re-measured leg and a sweep all
take the same road through `layout.lay_out`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from copy import copy
from functools import cached_property
from typing import TYPE_CHECKING, Any, Literal, Self

import attrs

from ..display import page
from ..errors import AddressError, BenchjoinError, NotLaidOut, typed
from ..lengths import Inches, Length
from ..readings import Tape
from .bin import Bin, a_bin
from .carried import carried_slots
from .clear import Clear
from .doors import Door, a_kind, a_length, a_name, a_number, kept, one_of, refuse
from .faults import faults_of
from .finished import Finished, finished
from .fit import Fit, fit
from .governing import EndRails, Overall
from .layers import Around, Counts
from .leg import Leg
from .limits import few
from .measured import Kept, measured
from .pair import Pair
from .slots import Slot, leg_slots, rail_slots
from .stack import Level
from .stock import Stock, titled

Uneven = Literal["narrowest", "own", "widest"]
Corners = Literal["front through", "ends through", "staggered"]


def _tape(value: Any) -> Tape:
    return value if isinstance(value, Tape) else Tape(value)


def _stack(value: Any) -> tuple[Clear | Level, ...]:
    if isinstance(value, str) or not hasattr(value, "__iter__"):
        raise BenchjoinError(f"stack is {typed(value)}. Write a list of Clear(…) and Level(…) from the foot upwards.")
    items = few("stack", value)
    for place, item in enumerate(items):
        if not isinstance(item, Clear | Level):
            raise BenchjoinError(
                f'stack[{place}] is {typed(item)}. Write Clear("7 in") or Level("bench", front="3 1/2 in").'
            )
    return items


def _bays(value: Any) -> tuple[Clear | Pair, ...]:
    """Bays and the pairs between them in turn; where two bays follow each other a plain pair stands between."""
    items = (value,) if isinstance(value, Clear) else value
    if isinstance(items, str) or not hasattr(items, "__iter__"):
        raise BenchjoinError(f"bays is {typed(value)}. Write a list of Clear(…), one for each bay from the left.")
    found: list[Clear | Pair] = []
    for item in few("bays", items):
        if not isinstance(item, Clear | Pair):
            raise BenchjoinError(f'bays holds {typed(item)}. Write a Clear for each bay: [Clear("1000 mm"), Clear()].')
        if found and isinstance(item, Clear) and isinstance(found[-1], Clear):
            found.append(Pair())
        found.append(item)
    turns = [isinstance(item, Clear) == (place % 2 == 0) for place, item in enumerate(found)]
    if not found or not all(turns) or len(found) % 2 == 0:
        raise BenchjoinError(f"bays is {typed(value)}. Begin and end with a Clear; a Pair stands between two of them.")
    return tuple(found)


def _length(value: Length | Overall) -> float | Overall:
    return value if isinstance(value, Overall) else a_length("length")(value)


def _depth(value: Length | Overall | EndRails | None) -> float | Overall | EndRails | None:
    return value if value is None or isinstance(value, Overall | EndRails) else a_length("depth")(value)


def _as_typed(frame: Frame) -> Tape:
    """Inches where any length was typed in inches, else millimetres."""
    given = (frame.length, frame.depth, frame.front, frame.back, frame.rail_stock, frame.stack, frame.bays, frame.fit)
    return Tape("1/16 in" if _any_inches(given) else "1 mm")


_a_tape: Door[Tape | str, Tape] = kept("tape", _tape, takes="Tape | str")
_a_stack: Door[Sequence[Clear | Level], tuple[Clear | Level, ...]] = kept("stack", _stack)
_a_bay: Door[Clear | Sequence[Clear | Pair], tuple[Clear | Pair, ...]] = kept("bays", _bays)


@attrs.frozen(kw_only=True)
class Frame:
    """A frame over its legs, with its stack of levels and clears; lengths in mm or as tape strings.

    It stands on a front and a back row of legs; or, against="wall", on the front row alone, and the wall holds it: then
    it has no back, no depth, and front rails only.

    length and depth are over the legs, or Overall(size), or a depth by EndRails(size); bays are the clears between leg
    pairs from the left, with a Pair between two of them where it is held at a place or has other legs; fit is the
    clearance added to every notch over its rail; tape says how the design reads on paper, in inches where any length
    was typed in inches and else in millimetres, if it is not given; quantity how many are made;
    measured holds sizes found on the wood, by part. uneven says what to do when the rails of one level measure
    differently: size all to the narrowest, mark each notch from its own rail, or cut all notches to the widest and
    accept the gaps. bins are bought things that stand or hang in it and move nothing. finished holds the parts that
    stay as they were sized, marked or cut. order is how it is begun when it is put together, if that is prescribed.

    Raises
    ------
    DescriptionError
        With every fault of the fields, or of the whole, at once.
    """

    name: str = attrs.field(converter=a_name("name"))
    length: float | Overall = attrs.field(converter=_length)
    depth: float | Overall | EndRails | None = attrs.field(default=None, converter=_depth)
    front: Leg = attrs.field(converter=a_kind(Leg, "front", 'Leg(stock, height="35 1/2 in")'))
    back: Leg | None = attrs.field(
        default=None, converter=a_kind(Leg, "back", 'Leg(stock, height="70 in")', optional=True)
    )
    against: Literal["wall"] | None = attrs.field(default=None, converter=one_of("against", None, "wall"))
    rail_stock: Stock = attrs.field(converter=a_kind(Stock, "rail_stock", 'Stock("larch 1x6", thickness="5/8 in")'))
    stack: tuple[Clear | Level, ...] = attrs.field(converter=_a_stack)
    bays: tuple[Clear | Pair, ...] = attrs.field(default=(Clear(),), converter=_a_bay)
    corners: Corners = attrs.field(
        default="front through", converter=one_of("corners", "front through", "ends through", "staggered")
    )
    fit: float | Fit = attrs.field(default=0.0, converter=kept("fit", fit))
    tape: Tape = attrs.field(default=attrs.Factory(lambda own: _as_typed(own), takes_self=True), converter=_a_tape)
    quantity: int = attrs.field(default=1, converter=a_number("quantity", 1, 1000, "3", whole=True))
    measured: Mapping[str, Mapping[str, float]] = attrs.field(
        factory=dict, converter=kept("measured", measured), hash=False
    )
    uneven: Uneven = attrs.field(default="narrowest", converter=one_of("uneven", "narrowest", "own", "widest"))
    bins: tuple[Bin, ...] = attrs.field(default=(), converter=a_bin)
    finished: Mapping[str, Finished] = attrs.field(factory=dict, converter=kept("finished", finished), hash=False)
    order: Literal["ends first", "rows first", "part by part"] | None = attrs.field(
        default=None, converter=one_of("order", None, "ends first", "rows first", "part by part")
    )

    def _repr_html_(self) -> str:
        return page("frame_page", self)

    def __attrs_post_init__(self) -> None:
        refuse(self, titled("Frame", self.name), lambda: faults_of(self))

    if not TYPE_CHECKING:

        def __getattr__(self, name: str) -> Any:
            """Whoever asks a description for what only a layout has is told to lay it out first."""
            if name in LAID_OUT:
                said = f"{titled('Frame', self.name)} is a description, and a layout is meant"
                raise NotLaidOut(f"{said}. Lay it out first: layout = lay_out(frame).", name=name)
            return object.__getattribute__(self, name)

    @property
    def datum(self) -> str:
        """What heights are counted from: the floor, or the feet of a single row, which may hang."""
        return "floor" if self.against is None else "feet"

    def levels(self) -> tuple[Level, ...]:
        """The levels from the foot upwards."""
        return tuple(item for item in self.stack if isinstance(item, Level))

    def pairs(self) -> tuple[str, ...]:
        """Names of the leg pairs from the left: left, middle 1 …, right."""
        return ("left", *(f"middle {n}" for n in range(1, len(self.bays) // 2 + 1)), "right")

    def legs(self) -> tuple[Slot, ...]:
        """Each leg: front row first, from the left."""
        return self._legs

    def rails(self) -> tuple[Slot, ...]:
        """Each rail with its defaults filled in, level by level from the foot."""
        return self._rails

    def carried(self) -> tuple[Slot, ...]:
        """Each bearer and board, level by level from the foot; of a run whose number is worked out, see `counting`."""
        return self._carried

    def slots(self) -> tuple[Slot, ...]:
        """Every member: legs, then rails, then what these carry."""
        return (*self._legs, *self._rails, *self._carried)

    @cached_property
    def _legs(self) -> tuple[Slot, ...]:
        between = (Pair(), *(item for item in self.bays if isinstance(item, Pair)), Pair())
        return leg_slots(self.front, self.back, tuple(zip(self.pairs(), between, strict=True)))

    @cached_property
    def _rails(self) -> tuple[Slot, ...]:
        return rail_slots(self.levels(), self.pairs(), self.rail_stock)

    @cached_property
    def counts(self) -> Counts:
        """What is worked out of the runs whose number follows from their room; nothing in a bare description."""
        return {}

    @cached_property
    def _carried(self) -> tuple[Slot, ...]:
        if not any(level.carries for level in self.levels()):
            return ()
        rails = {level.name: self.rails_of.get(level.name, ()) for level in self.levels()}
        return tuple(carried_slots(Around(self.levels(), rails, self.pairs(), self._legs, self.counts)))

    def with_counts(self, counts: Counts) -> Self:
        """The same frame that knows how many members its runs have; whoever changes it has to count again."""
        known = copy(self)
        object.__setattr__(known, "counts", counts)
        return known

    def as_drawn(self) -> Self:
        """One piece of it, with nothing measured and nothing finished."""
        drawn = copy(self)
        for field, value in (("measured", Kept({})), ("finished", Kept({})), ("quantity", 1)):
            object.__setattr__(drawn, field, value)
        return drawn

    @cached_property
    def carried_of(self) -> Mapping[str, tuple[Slot, ...]]:
        """What each level carries, by its name."""
        return _by_level(self._carried)

    @cached_property
    def rails_of(self) -> Mapping[str, tuple[Slot, ...]]:
        """The rails of each level, by its name."""
        return _by_level(self._rails)

    def fit_of(self, kind: str) -> float:
        """The clearance for a kind of joint. [mm]"""
        return self.fit.of(kind) if isinstance(self.fit, Fit) else self.fit

    def part_names(self) -> tuple[str, ...]:
        """Names of all parts without the piece, in the order of the slots."""
        return tuple(slot.name for slot in self.slots())

    def may_have(self, part: str) -> bool:
        """Whether there is a part of that name, or may be one where the number of a run is not worked out."""
        level, _, member = part.partition("/")
        called, _, number = member.rpartition(" ")
        open_runs = {(own.name, run.called) for own in self.levels() for run in own.runs() if run.solved}
        return part in self.part_names() or ((level, called) in open_runs and number.isdigit() and number[0] != "0")

    def __repr__(self) -> str:
        levels = ", ".join(level.name for level in self.levels())
        size = " × ".join(_told(self, span) for span in (self.length, self.depth) if span is not None)
        held = f", against the {self.against}" if self.against else ""
        return f"<Frame {self.name}: {size}{held}, {levels}; make {self.quantity}>"


def _by_level(slots: Sequence[Slot]) -> Mapping[str, tuple[Slot, ...]]:
    found: dict[str, list[Slot]] = {}
    for slot in slots:
        found.setdefault(slot.level.name if slot.level else "", []).append(slot)
    return {name: tuple(own) for name, own in found.items()}


def _any_inches(thing: Any) -> bool:
    if isinstance(thing, tuple):
        return any(map(_any_inches, thing))
    if attrs.has(type(thing)):
        return any(_any_inches(getattr(thing, field.name)) for field in attrs.fields(type(thing)))
    return isinstance(thing, Inches)


LAID_OUT = (
    *("frame", "parts", "joints", "joints_of", "joined", "sets", "findings"),
    *("lost", "part", "mate", "leg", "set", "piece", "alike", "overall", "errors"),
)
"""What a layout has and a frame does not."""


def _told(frame: Frame, span: float | Overall | EndRails) -> str:
    words = {Overall: "over all", EndRails: "by the end rails"}.get(type(span), "over the legs")
    return f"{frame.tape.say(span if isinstance(span, int | float) else span.size)} {words}"


def must_be_a_frame(frame: object, asked: str) -> None:
    """Refuse what is no frame.

    Raises
    ------
    AddressError
        If it is none.
    """
    if not isinstance(frame, Frame):
        own = " Of a layout it is layout.frame." if hasattr(frame, "findings") else ""
        raise AddressError(f"{asked} was given {typed(frame)}, not a Frame.{own}", address="")
