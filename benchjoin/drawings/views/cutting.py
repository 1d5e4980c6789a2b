"""Cutting planes: where a section is taken, shown on a view that looks along it.

A thin chain line through the wood, its ends wide, an arrow at each that looks the way one looks at the section, and the
section's letter (ISO 128-3, from memory). Where it would run through words on its way to an end it is left out.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import attrs

from ...drafting.dimensions.style import arrow
from ...drafting.primitives import Box, Drawing, Line, Primitive, Text, bounds, text_bounds
from .labels import Taken
from .section import LETTER, Cut
from .view import View

END, PAST = 4.0, 1.5
"""Length of a wide end, and how far it begins past the wood. [mm]"""
AIR, SHORTEST = 1.0, 6.0
"""Between the line and words on it, and the shortest stretch between two of them. [mm]"""
ARROW = 5.0
"""From the end of the line to the tip of its arrow. [mm]"""


@attrs.frozen
class Lettered:
    """A section with the letter of its plane."""

    cut: Cut
    letter: str


def planes(look: View, sections: Sequence[Lettered], scale: float, drawing: Drawing) -> Drawing:
    """The planes of horizontal sections on an upright view, with their ends where nothing else is written. [mm]"""
    left, _, right, _ = (edge * scale for edge in look.bounds)
    x0, _, x1, _ = bounds(drawing)
    taken = Taken(drawing)
    words = [text_bounds(item) for item in drawing if isinstance(item, Text)]
    found: list[Primitive] = []
    for one in sections:
        at = one.cut.at * scale
        ends = []
        for edge, far, out in ((left, x0, -1.0), (right, x1, 1.0)):
            places = (edge + out * PAST, far + out * PAST)
            ends.append(next((x for x in places if taken.is_free(_letter(one.letter, x, at, out))), places[-1]))
        found += [Line(((a, at), (b, at)), "centre") for a, b in _between(words, at, *ends)]
        found += _ends(one.letter, at, *ends)
    return tuple(found)


def _between(words: Sequence[Box], at: float, left: float, right: float) -> Iterator[tuple[float, float]]:
    """Stretches of a line across, between the words that lie on it."""
    for low, _, high, _ in sorted(box for box in words if box[1] - AIR < at < box[3] + AIR and box[0] - AIR < right):
        if low - AIR - left >= SHORTEST:
            yield left, low - AIR
        left = max(left, high + AIR)
    if right - left >= SHORTEST:
        yield left, right


def _letter(letter: str, end: float, at: float, out: float) -> Text:
    """The letter beside the arrow of an end."""
    place = (end + out * (END + 1.2), at - ARROW / 2 - LETTER / 2)
    return Text(place, letter, LETTER, "start" if out > 0 else "end")


def _ends(letter: str, at: float, left: float, right: float) -> Iterator[Primitive]:
    """The ends of a plane: one looks down on what it cuts."""
    for end, out in ((left, -1.0), (right, 1.0)):
        tip = end + out * END
        yield Line(((end, at), (tip, at)), "visible")
        yield Line(((tip - out * 0.25, at), (tip - out * 0.25, at - ARROW)))
        yield arrow((tip - out * 0.25, at - ARROW), (0.0, -1.0))
        yield _letter(letter, end, at, out)
