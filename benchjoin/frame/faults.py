"""What is wrong with a frame as a whole, once every field of it is sound: names, heights, runs, bins, wood.

Each fault says where, with the numbers, and what to do; the frame's door tells all of them at once.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

import attrs

from ..lengths import TOUCH
from .boards import Boards
from .clear import Clear
from .doors import Fault
from .faces import X, Y
from .governing import EndRails, Overall
from .identity import piece_of
from .joints import Notch
from .rows import row_faults
from .stack import FLUSH, Level, clear_name
from .top import Panel, Top

if TYPE_CHECKING:
    from .frame import Frame

RESERVED = ("clear below ", "clear above ", "bay ", "middle pair ")
"""How addresses of clears, bays and pairs begin."""


def faults_of(frame: Frame) -> list[Fault]:
    """All that is wrong with a frame as a whole; where its rows or pairs do not suit its rails, that alone."""
    rows = row_faults(frame.against, frame.depth, frame.back, frame.bays, frame.levels())
    return [*rows, *_cross_faults(frame)] or [
        *_stack_faults(frame),
        *_run_faults(frame),
        *_bin_faults(frame),
        *_wood_faults(frame),
    ]


def _another_name(frame: Frame) -> str:
    """What names are kept for addresses, where one of them is refused."""
    begun = ", ".join(own.strip() for own in RESERVED)
    return f"Choose another name: not {', '.join(_fields(frame))}, no number, nor one that begins with {begun}."


def _fields(frame: Frame) -> list[str]:
    return [field.name for field in attrs.fields(type(frame))]


def _cross_faults(frame: Frame) -> Iterator[Fault]:
    for level in frame.levels():
        if level.cross is not None and len(frame.pairs()) < 3:
            yield Fault(
                "stack", f'"{level.name}" has a cross rail, and there is no inner pair. Give the frame two bays.'
            )


def _stack_faults(frame: Frame) -> Iterator[Fault]:
    if not frame.levels():
        yield Fault("stack", 'it has no level. Put at least one in it, for example Level("bench", front="3 1/2 in").')
    seen: set[str] = set()
    taken = {*_fields(frame), *(slot.name for slot in frame.legs())}
    for level in frame.levels():
        if level.name in seen:
            yield Fault("stack", f'two levels are named "{level.name}". Give each level a name of its own.')
        if level.name in taken or level.name.isdigit() or level.name.startswith(RESERVED):
            yield Fault("stack", f'a level is named "{level.name}", which addresses use. {_another_name(frame)}')
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


def _panels(level: Level) -> Iterator[Panel]:
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
        if own.name in {*levels, *_fields(frame)}:
            yield Fault("bins", f'a bin is called "{own.name}", which addresses use. {_another_name(frame)}')
        if own.on is not None and own.on not in levels:
            yield Fault("bins", f'"{own.name}" is on "{own.on}", and levels are {", ".join(levels)}. Name one of them.')
    for level in frame.levels():
        for panel in _panels(level):
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
