"""Keeping: parts that have been sized, marked or cut are written down as they are, and stay so.

`keep` gives a new frame in which some parts of a layout are finished. Whatever is measured or changed after that, their
lengths, shoulders and depths do not move; what no longer fits is a finding with its size.
"""

from __future__ import annotations

from collections.abc import Mapping

import attrs

from ..errors import AddressError, typed
from ..frame.boards import Boards
from ..frame.faces import OUT
from ..frame.finished import STATES, Finished, FinishedCut, State
from ..frame.frame import Frame, must_be_a_frame
from ..frame.identity import of_piece, piece_of
from ..frame.slots import Slot
from ..frame.stack import Carried, Level
from ..frame.top import Top
from ..frame.tray import Tray
from ..lengths import TOUCH
from ..solids import Box, Vector, along, placement
from .blank import Blank
from .joints.meeting import Cut
from .laid_out import of_a_layout
from .layout import Layout
from .parts import Part
from .placing.sizes import kept_section, measured_length


@of_a_layout
def keep(layout: Layout, *names: str, state: State = "cut") -> Frame:
    """The frame of a layout with some parts finished as they are in it.

    Parameters
    ----------
    layout : Layout
    names : str
        Parts by name; without a piece, in every piece.
    state : {"sized", "marked", "cut"}
        How far they are: a sized part keeps its length and section, a marked or cut one its shoulders and depths too.
        A part that is further already stays so. A size that was measured before the part was made to another one is
        forgotten: what it is by now stays with the part. How many boards its run has is written down with it.

    Raises
    ------
    AddressError
        If no part is named, a name is no part of the layout, or the state is none of the three.

    Examples
    --------
    ``later = keep(layout, "back left leg", "back right leg", state="cut")``
    """
    if state not in STATES:
        raise AddressError(f"state is {typed(state)}. Choose one of {', '.join(STATES)}.", address=state)
    if not names:
        raise AddressError("keep names no part. Write keep(layout, 'back left leg', state='cut').", address="")
    finished, measured = dict(layout.frame.finished), dict(layout.frame.measured)
    for part in (part for name in names for part in _parts(layout, name)):
        before = finished.get(part.name)
        far = state if before is None else max(state, before.state, key=STATES.index)
        cuts = () if far == "sized" else _cuts(part, before)
        finished[part.name] = done = Finished(far, part.length, part.size[1:], cuts)
        section, every = kept_section(part.slot, done), measured.get(part.identity, {})
        if _still_true(every, section) != every:  # measured for all pieces, and true no more of this one
            del measured[part.identity]
            pieces = (of_piece(number, part.identity) for number in range(1, layout.frame.quantity + 1))
            measured |= {name: {**every, **measured.get(name, {})} for name in pieces}
        measured[part.name] = _still_true(measured.get(part.name, {}), section)
    known = _with_counts(layout.frame, {part.slot for name in names for part in _parts(layout, name) if part.slot.run})
    return attrs.evolve(known, finished=finished, measured={name: own for name, own in measured.items() if own})


def _with_counts(frame: Frame, kept: set[Slot]) -> Frame:
    """A frame in which the number of each run that has kept members is written down, so that it stays."""
    runs = {(slot.level.name, slot.run) for slot in kept if slot.level is not None}
    if not runs & set(frame.counts):
        return frame

    def written(level: Level) -> Level:
        own = [run for run in level.runs() if (level.name, run.key) in runs and isinstance(run, Boards)]
        changed = {run.key: frame.counts[level.name, run.key].count for run in own if run.count is None}
        return attrs.evolve(level, carries=[_written(run, changed) for run in level.carries]) if changed else level

    return attrs.evolve(frame, stack=[written(item) if isinstance(item, Level) else item for item in frame.stack])


def _written(run: Carried, counts: Mapping[str, int]) -> Carried:
    """A run with its number, where it is one of those that are kept."""
    if isinstance(run, Top | Tray):
        return run.with_counts(counts)
    return attrs.evolve(run, count=counts[run.key]) if isinstance(run, Boards) and run.key in counts else run


def release(frame: Frame, *names: str) -> Frame:
    """A frame in which some parts are no longer finished: they were trimmed, or are made again.

    Parameters
    ----------
    frame : Frame
    names : str
        Parts by name; without a piece, in every piece. What was measured on them stays.

    Raises
    ------
    AddressError
        If one of them is not finished.

    Examples
    --------
    ``later = release(frame, "2/bench/left rail")``
    """
    must_be_a_frame(frame, "release")
    finished = dict(frame.finished)
    for name in names:
        piece, identity = piece_of(name) if isinstance(name, str) else (None, "")
        own = [each for each in frame.finished if piece_of(each)[1] == identity and piece in (None, piece_of(each)[0])]
        if not own:
            known = tuple(frame.finished)
            said = f"Finished are {', '.join(known)}." if known else "Nothing is finished in this frame."
            raise AddressError(f"{typed(name)} is not finished. {said}", address=name, known=known)
        for each in own:
            finished.pop(each, None)
    return attrs.evolve(frame, finished=finished)


def _parts(layout: Layout, name: str) -> list[Part]:
    piece, identity = piece_of(name) if isinstance(name, str) else (None, name)
    pieces = range(1, layout.frame.quantity + 1) if piece is None else (piece,)
    return [layout.part(of_piece(number, identity)) for number in pieces]


def _still_true(found: Mapping[str, float], section: Mapping[str, float]) -> dict[str, float]:
    """What of the sizes that were measured on a part holds now that it is finished. [mm]"""
    return {field: size for field, size in found.items() if abs(section.get(field, size) - size) <= TOUCH}


def _cuts(part: Part, before: Finished | None) -> tuple[FinishedCut, ...]:
    sits = {(cut.mate, cut.face): cut.sits for cut in before.cuts} if before else {}
    return tuple(
        FinishedCut(cut.mate, cut.face, cut.kind, _plus(box.low), _plus(box.high), sits.get((cut.mate, cut.face), ""))
        for cut, box in zip(part.cuts, part.local_cuts, strict=True)
    )


def _plus(corner: Vector) -> Vector:
    """A corner whose zeros have no sign: they are written down."""
    u, v, w = (0.0 + size for size in corner)
    return u, v, w


def held(frame: Frame, piece: int, blank: Blank) -> Blank:
    """A member as long as it was measured or finished, from its datum end, or as it is."""
    length = measured_length(frame, blank.slot, piece)
    if length is None:
        return blank
    axis = blank.axis
    return attrs.evolve(blank, box=blank.box.ending(axis, high=blank.box.low[axis] + length))


def held_cuts(frame: Frame, part: Part) -> Part:
    """A part with the cuts that were marked or made in it, and those for mates that came later; or as it is."""
    done = frame.finished.get(part.name)
    if done is None or done.state == "sized":
        return part
    marked = part.slot.marked([cut.face for cut in done.cuts])
    held = attrs.evolve(part, marked=marked, placement=placement(part.blank, along=part.placement.u, out=OUT[marked]))
    boxes = [held.placement.world(_measured(held, done, cut)) for cut in done.cuts]
    made = [
        Cut(part=part.identity, mate=cut.mate, face=cut.face, kind=cut.kind, box=box)
        for cut, box in zip(done.cuts, boxes, strict=True)
    ]
    later = [cut for cut in part.cuts if not any((cut.mate, cut.face) == (c.mate, c.face) for c in made)]
    return attrs.evolve(held, cuts=(*made, *later))


def _measured(part: Part, done: Finished, cut: FinishedCut) -> Box:
    """A cut in its part's frame, where the part measures something else by now than when it was finished.

    Shoulders stay where they are and depths what they are from the cut's own face; a cut that ran out at a face still
    does.
    """
    low, high = list(cut.low), list(cut.high)
    for axis, (was, way) in enumerate(zip(done.section, (part.placement.v, part.placement.w), strict=True), 1):
        more = part.size[axis] - was
        if more and high[axis] >= was - TOUCH:
            high[axis] += more
            if along(OUT[cut.face], way) and low[axis] > TOUCH:
                low[axis] += more
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
