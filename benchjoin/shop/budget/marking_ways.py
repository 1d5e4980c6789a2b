"""Ways of marking, and the errors that each one brings: which of them all legs share, and which are each leg's own.

A tape that is too long by a hair is too long on every leg: the rail sits a hair high, and level. A pencil line that is
struck off the mark is off on one leg alone: the rail slopes. So every error says whether it is shared.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Literal

import attrs

from ...frame.doors import a_length, a_number, one_of, refuse
from ...trade.tapes import EU_CLASSES, HB_44, MI_008, us_most

TapeLaw = Literal["I", "II", "III", "US"]
MarkingWay = Literal["tape, mark to mark", "tape, from one end", "printed strip", "stop block"]


@attrs.frozen(kw_only=True)
class Marking:
    """How well the maker measures. Habits of the workshop, no source, but for the class of the tape. [± mm]

    tape_class is the class on the blade, or "US" for a tape by the US handbook; mark how far a line is struck off the
    mark that was meant (half a division of the tape where it is not given); lay how far a strip is laid off the end;
    stretch how much a print may be too long for its length, once its check bar was measured (a fraction); seat how
    far a part stands off its stop; setting how far a stop is set off its figure (as mark, where not given).
    """

    tape_class: TapeLaw = attrs.field(default="II", converter=one_of("tape_class", *EU_CLASSES, "US"))
    mark: float | None = attrs.field(default=None, converter=a_length("mark", zero=True, optional=True))
    lay: float = attrs.field(default=0.25, converter=a_length("lay", zero=True))
    stretch: float = attrs.field(default=0.25 / 150, converter=a_number("stretch", 0.0, 0.1, "0.002"))
    seat: float = attrs.field(default=0.1, converter=a_length("seat", zero=True))
    setting: float | None = attrs.field(default=None, converter=a_length("setting", zero=True, optional=True))

    def __attrs_post_init__(self) -> None:
        refuse(self, "Marking")

    def tape_off(self, length: float, *, from_end: bool) -> float:
        """How much the tape may be off on a length, from its end or between two of its marks. [± mm]"""
        if self.tape_class == "US":
            return us_most(length)
        return EU_CLASSES[self.tape_class].most(length, from_surface=from_end)

    @property
    def law(self) -> str:
        """By which rule the tape is good."""
        return f"by {HB_44}" if self.tape_class == "US" else f"of class {self.tape_class} ({MI_008.document})"


@attrs.frozen(kw_only=True)
class ErrorTerm:
    """One error of a mark: what it is, its size either way, and whether all legs have the same. [± mm]"""

    what: str
    size: float
    shared: bool


Steps = Sequence[float]
"""Distances from mark to mark, from the end of the part to the mark in question. [mm]"""


def _mark_to_mark(steps: Steps, own: float, marking: Marking) -> Iterator[ErrorTerm]:
    """Every step begins at the mark before, so every mark has the errors of all before it and its own."""
    for number, step in enumerate(steps):
        yield ErrorTerm(what="tape", size=marking.tape_off(step, from_end=number == 0), shared=True)
        yield ErrorTerm(what="line struck", size=own, shared=False)


def _from_one_end(steps: Steps, own: float, marking: Marking) -> Iterator[ErrorTerm]:
    """Every mark is read from the end of the part, so it has the error of one reading."""
    yield ErrorTerm(what="tape", size=marking.tape_off(sum(steps), from_end=True), shared=True)
    yield ErrorTerm(what="line struck", size=own, shared=False)


def _printed_strip(steps: Steps, own: float, marking: Marking) -> Iterator[ErrorTerm]:
    """One strip for all: its stretch is shared; laying it down and striking off is each leg's own."""
    yield ErrorTerm(what="stretch of the print", size=marking.stretch * sum(steps), shared=True)
    yield ErrorTerm(what="strip laid", size=marking.lay, shared=False)
    yield ErrorTerm(what="line struck", size=marking.lay, shared=False)


def _stop_block(steps: Steps, own: float, marking: Marking) -> Iterator[ErrorTerm]:
    """The stop is set once: what it is off by is shared; how the part stands against it is each leg's own."""
    set_off = own if marking.setting is None else marking.setting
    yield ErrorTerm(what="tape", size=marking.tape_off(sum(steps), from_end=True), shared=True)
    yield ErrorTerm(what="stop set", size=set_off, shared=True)
    yield ErrorTerm(what="part against the stop", size=marking.seat, shared=False)


WAYS_OF_MARKING: Mapping[MarkingWay, Callable[[Steps, float, Marking], Iterator[ErrorTerm]]] = {
    "tape, mark to mark": _mark_to_mark,
    "tape, from one end": _from_one_end,
    "printed strip": _printed_strip,
    "stop block": _stop_block,
}


def error_terms(way: MarkingWay, steps: Steps, own: float, marking: Marking) -> tuple[ErrorTerm, ...]:
    """The errors of the mark at the end of some steps; own is how far a line may be struck off. [± mm]

    The errors of one tape in several steps are taken as one: the tape is off the same way each time.
    """
    found = tuple(WAYS_OF_MARKING[way](steps, own, marking))
    tape = [term for term in found if term.what == "tape"]
    rest = tuple(term for term in found if term.what != "tape")
    if not tape:
        return rest
    return (ErrorTerm(what="tape", size=sum(term.size for term in tape), shared=True), *rest)
