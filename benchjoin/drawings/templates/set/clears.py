"""The clears of a set in words: what lies between the notches of its legs, so that nobody subtracts."""

from __future__ import annotations

from itertools import groupby

from ....layout.clears import openings
from ....layout.layout import Layout
from ....layout.sets import PartSet
from ....phrases import listed

SEVERAL = 3
"""So many equal clears one above the other are counted."""


def clears_told(layout: Layout, part_set: PartSet) -> str:
    """'Clears, from below: front (22 1/4), back (20 3/4, 12 7/8, 12 7/8).'; nothing for what does not stand."""
    first = part_set.members[0]
    if not first.slot.upright:
        return ""
    read = layout.frame.tape.read
    sides: dict[str, list[str]] = {}
    for side, found in openings(layout.piece(first.piece)).items():
        told = ", ".join(_run(label, len(list(own))) for label, own in groupby(read(each.size) for each in found))
        if told:
            sides.setdefault(told, []).append(side)
    said = ", ".join(f"{listed(own)} ({told})" for told, own in sides.items())
    return f"Clears between rails, from below: {said}. " if said else ""


def _run(label: str, number: int) -> str:
    """Equal clears in a row."""
    return f"{number} of {label}" if number >= SEVERAL else ", ".join([label] * number)
