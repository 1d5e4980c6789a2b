"""Where the cuts of each part of a set lie, as one reads them out at the bench: "A1 A2: 7, 9 3/4; 32, top"."""

from __future__ import annotations

from collections.abc import Sequence

from ....layout.layout import Layout
from ....layout.on_face import OnFace
from ....layout.parts import Part
from ....layout.sets import Band, PartSet
from ..marking import ranges


def read_out(layout: Layout, part_set: PartSet, band: Band, *, lengths: bool) -> list[str]:
    """A line for parts that are cut alike on the face that is up: both shoulders of each cut, from the datum end.

    lengths adds those of the parts, where they do not stand beside them.
    """
    found: dict[str, list[str]] = {}
    for number, part in enumerate(part_set.members):
        cuts = sorted((item.cut for item in band.waste if item.member == number), key=lambda cut: cut.start)
        fine = sorted((item.cut for item in band.touches if item.member == number), key=lambda cut: cut.start)
        told = [_pairs(layout, part, cuts)] if cuts else []
        told += [f"fine lines {_pairs(layout, part, fine)}"] if fine else []
        if told:
            found.setdefault("; ".join(told), []).append(part.mark)
    lines = [f"{ranges(marks)}: {told}." for told, marks in found.items()]
    return [*lines, _lengths(layout, part_set)] if lengths else lines


def _lengths(layout: Layout, part_set: PartSet) -> str:
    """'Top: A1 A2 35 1/2; A3 A4 70.'"""
    found: dict[str, list[str]] = {}
    for part in part_set.members:
        found.setdefault(layout.frame.tape.read(part.length), []).append(part.mark)
    end = part_set.members[0].slot.role.end
    told = "; ".join(f"{ranges(marks)} {length}" for length, marks in found.items())
    return f"{end[0].upper()}{end[1:]}: {told}."


def _pairs(layout: Layout, part: Part, cuts: Sequence[OnFace]) -> str:
    read, role = layout.frame.tape.read, part.slot.role
    return "; ".join(
        f"{role.datum if cut.open_start else read(cut.start)}, {role.end if cut.open_end else read(cut.end)}"
        for cut in cuts
    )
