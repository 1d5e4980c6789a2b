"""A layout as lines of text, for recordings: `from recorded import lies, marks, spaced, stood`."""

from __future__ import annotations

from benchjoin.errors import BenchjoinError
from benchjoin.layout.patterns import lay_ons
from benchjoin.layout.spacing import common_lines, spacings
from benchjoin.layout.sticks import sticks
from benchjoin.shop.gaps import board_gaps


def marks(layout):
    """Each set: its members, and of each way up every line with who takes it."""
    read = layout.frame.tape.read
    for one in layout.sets:
        yield f"Set {one.letter}: {one.title}, make {', '.join(one.alike)}"
        for part in one.members:
            yield f"  {part.mark:4}{part.identity}{f', {part.handed} hand' if part.handed else ''}"
        for band in one.bands:
            yield f"  {band.title}: {', '.join(dict.fromkeys(band.faces))}"
            for line in band.lines:
                takers = " ".join(one.members[taker.member].mark for taker in line.takers)
                edges = ", ".join(dict.fromkeys(f"{taker.edge} edge of {taker.mate}" for taker in line.takers))
                yield f"    {read(line.at):>8}  {line.at:10.4f} mm  {takers}: {edges}"
        yield ""


def box(one):
    return " to ".join("(" + ", ".join(f"{place + 0.0:.6g}" for place in at) + ")" for at in (one.low, one.high))


def lies(layout):
    """Parts of the first piece, their cuts, and their joints; of a run the first, the second and the last."""
    parts = layout.piece(1)
    runs = {}
    for part in parts:
        runs.setdefault((part.level, part.slot.run) if part.slot.run else part.identity, []).append(part)
    shown = [part for own in runs.values() for part in dict.fromkeys([*own[:2], own[-1]])]
    for part in shown:
        hand = f", {part.handed}" if part.handed else ""
        yield f"{part.mark} {part.identity}{hand}: {box(part.blank)}, {part.marked} up, true edge {part.slot.true_edge}"
        for cut in part.cuts:
            yield f"  {cut.kind} for {cut.mate} from {cut.face}: {box(cut.box)}"
        for joint in layout.joints_of(1):
            if joint.guest == part.identity:
                yield f"  {joint.kind} {joint.host}: {box(joint.contact)}"
    for pattern in (one for half in lay_ons(layout) for one in half):
        uses = ", ".join(f"{use.part.mark} {use.face} for {use.mate} at {use.at:.6g}" for use in pattern.uses[:3])
        yield f"pattern {pattern.kind} {pattern.start:.6g} to {pattern.end:.6g}, {box(pattern.cut)}: {uses}"
        yield from (f"  beside {box(other)}" for other in pattern.others)


def stood(layout):
    """Sticks: for whom, and their lines."""
    for stick in sticks(layout):
        edges = " ".join(f"{at:.6g}" for at in stick.edges)
        yield f"stick {' '.join(part.mark for part in stick.parts)}, {stick.length:.6g}: {edges}"
        for lane in stick.lanes:
            yield f"  {lane.title}, {' '.join(lane.marks)}: {', '.join(lane.mates)}"


def spaced(layout):
    """Boards of each run: how they are spaced, on which lines they are struck, what the year does to their gaps."""
    for one in spacings(layout.piece(1)):
        told, untold = (" ".join(f"{at:.3f}" for at in places) for places in (one.told, one.untold[:6]))
        yield f"{one.members[0].slot.run}, axis {one.axis}, gap {one.gap:.3f}: {told}; {untold}"
    for part, lines in common_lines(layout.piece(1)).items():
        for line in lines:
            others = ", ".join(other.identity for other in line.others)
            yield f"{part}: on a line with {others}, where {line.first.identity} begins, {line.beyond:.3f} beyond"
    for level in dict.fromkeys(part.level for part in layout.piece(1) if part.slot.run and part.role == "board"):
        try:
            yield board_gaps(layout, level, laid=12, wettest=20, driest=8, wood="western larch").table().text()
        except BenchjoinError as error:
            yield str(error)
