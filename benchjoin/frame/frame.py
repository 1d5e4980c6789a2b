"""The frame: one description of a bench, rack or stand, from which everything else follows.

It is frozen data. A new size is a new frame (`alter` in address.py), so a slider, a re-measured leg and a sweep all
take the same road through `layout.lay_out`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from copy import copy
from functools import cached_property
from typing import TYPE_CHECKING, Any, Literal, Self

import attrs

from ..display import page
from ..errors import AddressError, BenchjoinError, NotLaidOut, typed
from ..lengths import TOUCH, Inches, Length
from ..readings import Tape
from .bin import Bin, a_bin
from .boards import Boards
from .carried import carried_slots
from .clear import Clear
from .doors import Door, Fault, a_kind, a_length, a_name, a_number, kept, one_of, refuse
from .faces import X, Y
from .finished import Finished, finished
from .fit import Fit, fit
from .governing import EndRails, Overall
from .identity import piece_of
from .joints import Notch
from .layers import Around, Counts
from .leg import Leg
from .limits import few
from .measured import Kept, measured
from .pair import Pair
from .rows import row_faults
from .slots import Slot, leg_slots, rail_slots
from .stack import FLUSH, Level, clear_name
from .stock import Stock, titled
from .top import Panel, Top

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
        refuse(self, titled("Frame", self.name), self._faults)

    if not TYPE_CHECKING:

        def __getattr__(self, name: str) -> Any:
            """Whoever asks a description for what only a layout has is told to lay it out first."""
            if name in LAID_OUT:
                said = f"{titled('Frame', self.name)} is a description, and a layout is meant"
                raise NotLaidOut(f"{said}. Lay it out first: layout = lay_out(frame).", name=name)
            return object.__getattribute__(self, name)

    def _faults(self) -> list[Fault]:
        return [*row_faults(self.against, self.depth, self.back, self.bays, self.levels())] or [
            *_stack_faults(self),
            *_run_faults(self),
            *_bin_faults(self),
            *_wood_faults(self),
        ]

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


RESERVED = ("clear below ", "clear above ", "bay ", "middle pair ")
"""How addresses of clears, bays and pairs begin."""


_RESERVED = (
    f"Choose another name: not {', '.join(field.name for field in attrs.fields(Frame))}, no number, nor one that "
    f"begins with {', '.join(own.strip() for own in RESERVED)}."
)
"""What names are kept for addresses, where one of them is refused."""


def _stack_faults(frame: Frame) -> Iterator[Fault]:
    if not frame.levels():
        yield Fault("stack", 'it has no level. Put at least one in it, for example Level("bench", front="3 1/2 in").')
    seen: set[str] = set()
    taken = {field.name for field in attrs.fields(Frame)} | {slot.name for slot in frame.legs()}
    for level in frame.levels():
        if level.name in seen:
            yield Fault("stack", f'two levels are named "{level.name}". Give each level a name of its own.')
        if level.name in taken or level.name.isdigit() or level.name.startswith(RESERVED):
            yield Fault("stack", f'a level is named "{level.name}", which addresses use. {_RESERVED}')
        if level.cross is not None and len(frame.pairs()) < 3:
            yield Fault(
                "stack", f'"{level.name}" has a cross rail, and there is no inner pair. Give the frame two bays.'
            )
        seen.add(level.name)
    for below, above in zip(frame.stack, frame.stack[1:], strict=False):
        if isinstance(below, Clear) and isinstance(above, Clear):
            yield Fault("stack", "two clears follow each other. Write one, or put a level between them.")
    for place, item in enumerate(frame.stack):
        if isinstance(item, Clear) and item.at:
            yield from _reach_faults(frame.stack, place, item.at)
    yield from _height_faults(frame)


def _height_faults(frame: Frame) -> Iterator[Fault]:
    """Legs without a height, where no level or more than one gives it."""
    for field, leg in (("front", frame.front), ("back", frame.back)):
        row = [slot.of for slot in frame.legs() if slot.side == field]
        if leg is None or all(own.height is not None for own in row):
            continue
        flush = [level for level in frame.levels() if level.flush and FLUSH[level.flush] == field]
        if any(own.height is not None for own in row):
            what = "some legs of the row have a height and some have none. Give it to all of them, or to none."
            yield Fault(field, what)
        elif len(flush) != 1:
            many = f"{len(flush)} levels are flush with it" if flush else "no level is flush with it"
            what = f'its height is open, and {many}. Give the height, or write flush="{field} leg top" in one level.'
            yield Fault(field, what)
        elif not _held(frame.stack, flush[0]):
            what = f'its height is open, and nothing says how high "{flush[0].name}" is, which is flush with it. '
            yield Fault(field, what + "Give the height, or say how high the level is by top_at= or top=.")


def _held(stack: Sequence[Clear | Level], level: Level) -> bool:
    """Whether a level has its height without the legs that it is flush with."""
    if (level.bottom, level.top, level.top_at) != (None, None, None):
        return True
    below = stack[: stack.index(level)]
    return not any(isinstance(item, Clear) and item.size is None for item in below)


def _run_faults(frame: Frame) -> Iterator[Fault]:
    """Boards that are to run up to where no rail is."""
    levels = {level.name: level for level in frame.levels()}
    for level, run in ((each, run) for each in frame.levels() for run in each.runs()):
        if isinstance(run, Boards) and run.to is not None:
            upper = levels.get(run.to)
            if upper is None or run.side not in upper.sides():
                what = f'the {run.key} of "{level.name}" run up to "{run.to}", which has no {run.side} rail.'
                yield Fault("stack", f"{what} Name a level that has one.")


def panels(level: Level) -> Iterator[Panel]:
    """The panels of all tops of a level."""
    for item in level.carries:
        if isinstance(item, Top):
            yield from (section for section in item.sections if isinstance(section, Panel))


def _bin_faults(frame: Frame) -> Iterator[Fault]:
    """Bins that one could not tell from each other, or whose level or lid is not there."""
    names, levels = [own.name for own in frame.bins], [level.name for level in frame.levels()]
    for own in frame.bins:
        if names.count(own.name) > 1:
            yield Fault("bins", f'two bins are called "{own.name}". Give each a name of its own.')
        if own.name in {*levels, *(field.name for field in attrs.fields(Frame))}:
            yield Fault("bins", f'a bin is called "{own.name}", which addresses use. {_RESERVED}')
        if own.on is not None and own.on not in levels:
            yield Fault("bins", f'"{own.name}" is on "{own.on}", and levels are {", ".join(levels)}. Name one of them.')
    for level in frame.levels():
        for panel in panels(level):
            if panel.covers is not None and panel.covers not in names:
                known = f"bins are {', '.join(names)}" if names else "there is none"
                what = f'a panel of "{level.name}" covers "{panel.covers}", and {known}. '
                yield Fault("stack", what + "Write it in bins=, or leave covers out.")


def _reach_faults(stack: Sequence[Clear | Level], place: int, side: str) -> Iterator[Fault]:
    """A clear that is measured at one side, where no rail lies on that side below it or above it."""
    name = clear_name(stack, place)
    if side == "surface":
        below = stack[place - 1] if place else None
        if not (isinstance(below, Level) and below.carries):
            what = f"the {name} is measured from what lies on the level below it, and nothing does. Leave at out."
            yield Fault("stack", what)
        return
    rails = [isinstance(item, Level) and side in item.sides() for item in stack]
    low, high = any(rails[:place]), any(rails[place + 1 :])
    if not low and not high:
        yield Fault("stack", f"the {name} is measured at the {side}, and no level beside it has a rail there.")
    elif (place and not low) or (place + 1 < len(stack) and not high):
        where = "below" if not low else "above"
        what = f"the {name} is measured at the {side}, and no rail lies there {where} it. Measure it over the band."
        yield Fault("stack", what)


def _wood_faults(frame: Frame) -> Iterator[Fault]:
    say = frame.tape.say
    widths: dict[str, list[float]] = {}
    depths: dict[str, float] = {}
    for leg in frame.legs():
        widths.setdefault(leg.pair, []).append(leg.size(X))
        depths[leg.pair] = depths.get(leg.pair, 0.0) + leg.size(Y)
    spans = (("length", frame.length, sum(map(max, widths.values()))), ("depth", frame.depth, max(depths.values())))
    for name, given, need in spans:
        if given is not None and not isinstance(given, Overall | EndRails) and need > given + TOUCH:
            yield Fault(
                name, f"the legs alone take {say(need)}, and {say(given)} over them is too little. Make it more."
            )
    if isinstance(frame.depth, EndRails) and not any(slot.side in ("left", "right") for slot in frame.rails()):
        yield Fault("depth", "it is given by the end rails, and there are none. Give it over the legs.")
    for slot in frame.rails():
        thick = slot.thickness
        if isinstance(slot.joint, Notch) and slot.joint.depth is not None and slot.joint.depth > thick + TOUCH:
            what = (
                f"let in {say(slot.joint.depth)}, but the rail is {say(thick)} thick. "
                "Leave the depth out to let it in flush."
            )
            yield Fault(slot.name, what)
    yield from _part_faults(frame)


def _part_faults(frame: Frame) -> Iterator[Fault]:
    """Names in measured and finished that are no parts of the frame."""
    known = frame.part_names()
    ways = {
        "measured": "Take the measurement away, or leave the part in the design.",
        "finished": "Release it first, or leave the part in the design.",
    }
    for field, way in ways.items():
        for address in getattr(frame, field):
            piece, part = piece_of(address)
            if not frame.may_have(part):
                yield Fault(field, f'"{address}" is no part of this frame. Parts are {", ".join(known)}. {way}')
            elif piece is not None and not 1 <= piece <= frame.quantity:
                yield Fault(field, f'"{address}" is of piece {piece}, and the quantity is {frame.quantity}. {way}')


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
