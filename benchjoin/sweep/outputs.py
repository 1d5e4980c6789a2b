"""What a sweep can be asked for: one function for each output, and a line in `OUTPUTS`.

A function looks at a block of variants and gives items: words that name a number, and the number. Lengths are in mm.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

import attrs

from .variant import Variant


@attrs.frozen
class Item:
    """A number under its words, and for findings a sentence."""

    words: tuple[str, ...]
    number: Any
    sentence: str = ""


@attrs.frozen
class Output:
    """An output: its name, the function, what each of the words is, its unit, and what stands where there is none."""

    name: str
    of: Callable[[Variant], Iterator[Item]]
    words: tuple[str, ...]
    unit: str = ""
    otherwise: float | bool = float("nan")


def marks(variant: Variant) -> Iterator[Item]:
    """Shoulders of what each part gives up, by mate: over a leg's foot, else from its datum end. [mm]"""
    for part in variant.built.parts:
        axis = part.slot.axes[0]
        edges = ("bottom", "top") if part.slot.upright else ("near", "far")
        for cut in part.cuts:
            ends = (cut.box.low[axis] - part.blank.low[axis], cut.box.high[axis] - part.blank.low[axis])
            for edge, at in zip(edges, ends, strict=True):
                yield Item((part.identity, cut.mate, edge), at)


def places(variant: Variant) -> Iterator[Item]:
    """Where each board and bearer begins and ends across its run, from the left end or the front. [mm]"""
    for part in variant.built.parts:
        if part.slot.run:
            axis = part.slot.axes[1] if part.slot.upright else 1 - part.slot.axes[0]
            yield Item((part.identity, "near"), part.blank.low[axis])
            yield Item((part.identity, "far"), part.blank.high[axis])


def counts(variant: Variant) -> Iterator[Item]:
    """How many boards or bearers each run of a level has."""
    found: dict[tuple[str, str], int] = {}
    for part in variant.built.parts:
        if part.slot.run:
            key = (part.level or "", part.slot.run)
            found[key] = found.get(key, 0) + 1
    for words, number in found.items():
        yield Item(words, float(number))


def lengths(variant: Variant) -> Iterator[Item]:
    """Finished lengths of the rails. [mm]"""
    for rail in variant.rails:
        yield Item((rail.identity,), rail.length)


def volumes(variant: Variant) -> Iterator[Item]:
    """What is left of each part, notches and laps taken off. [mm³]"""
    for part in variant.built.parts:
        yield Item((part.identity,), part.volume)


def weights(variant: Variant) -> Iterator[Item]:
    """What each part weighs, notches and laps taken off. [kg]"""
    for part in variant.built.parts:
        yield Item((part.identity,), part.volume * 1e-9 * variant.density(part))


def findings(variant: Variant) -> Iterator[Item]:
    """Whether there is a finding, by its severity, its kind and each part that it is about."""
    for found in variant.findings():
        for part in found.parts or (found.where,):
            yield Item((found.severity, found.kind, part), True, found.sentence)


OUTPUTS: Mapping[str, Output] = {
    output.name: output
    for output in (
        Output("marks", marks, ("host", "guest", "edge"), "mm"),
        Output("places", places, ("part", "edge"), "mm"),
        Output("counts", counts, ("level", "run"), "", 0.0),
        Output("lengths", lengths, ("rail",), "mm"),
        Output("volumes", volumes, ("part",), "mm³"),
        Output("weights", weights, ("part",), "kg"),
        Output("findings", findings, ("severity", "kind", "part"), "", False),
    )
}
