"""Where a lay-on pattern goes, in words: its number, for how many cuts it is, and on which parts at which heights."""

from __future__ import annotations

from ....frame.identity import in_short
from ....layout.layout import Layout
from ....layout.patterns import LayOn
from ....phrases import counted
from ..marking import ranges


def told(layout: Layout, one: LayOn, number: int, mate: int | None) -> tuple[str, list[str]]:
    """The title of a pattern, and its list of places."""
    title = f"Pattern {number}, half of a lap with {mate}" if mate else f"Pattern {number}"
    return title, [f"for {counted(len(one.uses), one.kind)}", *_places(layout, one)]


def _places(layout: Layout, one: LayOn) -> list[str]:
    """For each face: on which parts, and for which levels at which height."""
    read = layout.frame.tape.read
    marks: dict[tuple[str, str], list[str]] = {}
    for use in one.uses:
        where = (
            "both ends"
            if one.part.slot.role.turns_over
            else f"{in_short(use.mate, along_length=False)} at {read(use.at)}"
        )
        marks.setdefault((use.way, where), []).append(use.part.mark)
    places: dict[str, list[str]] = {}
    for (way, where), found in marks.items():
        places.setdefault(f"{way} of {ranges(found)}", []).append(where)
    return [f"{whose}: {', '.join(where)}" for whose, where in places.items()]
