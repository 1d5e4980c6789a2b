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
    """Heights of the shoulders over the foot of each leg, by rail and edge. [mm]"""
    for leg in variant.legs:
        for cut in leg.cuts:
            yield Item((leg.identity, cut.mate, "bottom"), cut.box.low[2])
            yield Item((leg.identity, cut.mate, "top"), cut.box.high[2])


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
        Output("marks", marks, ("leg", "rail", "edge"), "mm"),
        Output("lengths", lengths, ("rail",), "mm"),
        Output("volumes", volumes, ("part",), "mm³"),
        Output("weights", weights, ("part",), "kg"),
        Output("findings", findings, ("severity", "kind", "part"), "", False),
    )
}
