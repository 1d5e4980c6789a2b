"""Lists of fasteners: what to buy and to drill with, and joint by joint."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence

from ...layout.layout import Layout
from ...readings import Tape
from ...tables import Table
from ...trade.fasteners import GALVANIZED, STAINLESS, TANNIN
from ..called import several
from ..settings.sizing import TICK
from .fixing import Fixing, Hole
from .strength import CONDITIONS

FINE = {"in": Tape("1/64 in"), "mm": Tape("0.5 mm")}
"""Drills are read by these."""
POUND_FORCE = 4.4482216152605
"""One pound-force. [N]"""


def metal_for(layout: Layout) -> str:
    """What outdoor fasteners of a layout are made of, with the reason."""
    woods = {part.slot.stock.species for part in layout.piece(1)}
    metal = STAINLESS if woods & {*TANNIN} or None in woods else GALVANIZED
    return f"{metal.name}: {metal.reason}"


def schedule(layout: Layout, fixings: Sequence[Fixing], hardwood: Mapping[str, bool], spare: float) -> Table:
    """One line for each kind and length: how many, and drills and their stops."""
    tape, fine = layout.frame.tape, FINE[layout.frame.tape.unit]
    kinds: dict[tuple[str, float], list[tuple[Hole, Hole]]] = {}
    for fixing in fixings:
        for one in fixing.driven:
            head, point = one.holes(hardwood=hardwood.get(one.point, False))
            kinds.setdefault((one.size.name, round(one.length, 4)), []).append((head, point))
    rows = []
    for (name, length), holes in sorted(kinds.items(), key=lambda item: (item[0][0], item[0][1])):
        count = len(holes)
        rows.append(
            (
                name,
                tape.read(length),
                str(count),
                str(count + math.ceil(count * spare)),
                *(_drills(fine, [pair[n] for pair in holes]) for n in (0, 1)),
                _stops(tape, [pair[1] for pair in holes]),
            )
        )
    columns = ("Fastener", f"Length ({tape.unit})", "Count", "With spares", "Through", "Lead", "Lead, deep")
    notes = (
        f"Metal outdoors: {metal_for(layout)}. Common practice, no source.",
        "Through: the drill for the part under the head. Lead: for the part that holds the point; stop it so deep.",
        "Lead holes always near ends; stainless screws shear when they are driven dry into hard wood: a lead hole, wax "
        "on the thread, and by hand at the last. Eye protection.",
    )
    return Table(f"Fasteners: {layout.frame.name}", columns, tuple(rows), notes, "lrrrrrr")


def _drills(fine: Tape, holes: Iterable[Hole]) -> str:
    """The drills of some holes: one as a rule."""
    return ", ".join(dict.fromkeys(fine.read(hole.diameter) for hole in holes))


def _stops(tape: Tape, holes: Sequence[Hole]) -> str:
    """How deep a drill goes: one stop, or from the least to the most."""
    found = sorted(dict.fromkeys(hole.depth for hole in holes))
    ends = dict.fromkeys((tape.read(found[0]), tape.read(found[-1])))
    return " to ".join(ends)


def by_joint(layout: Layout, fixings: Sequence[Fixing]) -> Table:
    """Joints that are fastened alike in one line: what it is, how many, from which part into which, what it holds."""
    unit = layout.frame.tape.unit
    alike: dict[tuple[str, ...], list[Fixing]] = {}
    for fixing in fixings:
        if fixing.piece == 1:
            alike.setdefault(_told(layout, fixing), []).append(fixing)
    force = "lb" if unit == "in" else "N"
    columns = ("Joint", "Asks", "Joints", "Each", "Fastener", "From", "Inside", f"Across ({force})", f"Out ({force})")
    rows = tuple((f"{_where(own)}{key[0]}", key[1], str(len(own)), *key[2:]) for key, own in alike.items())
    return Table(f"Fasteners by joint: {layout.frame.name}", columns, rows, (CONDITIONS,), "llrrllrrr")


def _where(own: Sequence[Fixing]) -> str:
    """The levels of some joints, as the head of a line."""
    levels = list(dict.fromkeys(fixing.drive.guest.level for fixing in own if fixing.drive.guest.level))
    return f"{several(levels)}: " if levels else ""


def _told(layout: Layout, fixing: Fixing) -> tuple[str, ...]:
    tape, drive = layout.frame.tape, fixing.drive
    what = f"{drive.guest.role}, {drive.joint.kind}"
    if not fixing.driven:
        named = fixing.size.name if fixing.asked and not fixing.size.metal else "no room"
        return what, fixing.duty, "–", named, "–", "–", "–", "–"
    one = fixing.driven[0]
    factor = POUND_FORCE if tape.unit == "in" else 1.0
    loads = ["–" if v is None or v != v else f"{v / factor:.0f}" for v in (fixing.lateral, fixing.withdrawal)]
    sized = f"{one.size.name} × {tape.read(one.length)}"
    return what, fixing.duty, str(len(fixing.driven)), sized, drive.head.role, tape.read(one.inside), *loads


def drilling(layout: Layout, fixings: Sequence[Fixing], hardwood: Mapping[str, bool]) -> Table:
    """The drill and its stop: one line for each drill and depth, how many holes of the batch, and a box to tick."""
    tape, fine = layout.frame.tape, FINE[layout.frame.tape.unit]
    holes: dict[tuple[float, float, bool], int] = {}
    for fixing in fixings:
        for one in fixing.driven:
            for hole in one.holes(hardwood=hardwood.get(one.point, False)):
                key = (round(hole.diameter, 4), round(hole.depth, 4), hole.kind == "lead")
                holes[key] = holes.get(key, 0) + 1
    rows = tuple(
        (fine.read(drill), "lead" if lead else "under heads", tape.read(depth), str(count), TICK)
        for (drill, depth, lead), count in sorted(holes.items(), key=lambda item: (item[0][2], *item[0][:2]))
    )
    unit = tape.unit
    notes = ("Holes under heads go through their part: depth is what they go through. Lead holes are stopped.",)
    columns = (f"Drill ({unit})", "Hole", f"Deep ({unit})", "Holes", "Done")
    return Table(f"Drilling: {layout.frame.name}", columns, rows, notes, "rlrrc")
